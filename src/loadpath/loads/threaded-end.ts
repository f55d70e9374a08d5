/**
 * The screwed end of a link: pull or push over the root of its thread, and over what strips it.
 *
 * In    thread, engaged length, yield of the shank, shear strength of what it is screwed into, the force
 * Out   shares of yield and of stripping
 * Not   bending of the shank (a joint at the end of its swing bends it), fatigue, a loose jam nut: it is taken as tight
 *
 * Thread areas as for studs (ST-16, ST-17). LL-n are the equations of docs/theory/loads.md.
 */
import type { Thread } from '../../materials/thread.ts';
import type { Metre, Newton, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import { SHEAR_OF_TENSION, threadShearAreas } from '../stud/strength.ts';

export interface ScrewedEnd {
  readonly thread: Thread;
  readonly engaged: Metre;
  readonly yield: Pascal;
  readonly parentShearStrength: Pascal;
}

const rootArea = formula({
  symbol: 'A_3',
  means: 'area at the root of the thread',
  is: 'π/4*d_3^2',
  unit: 'm^2',
  terms: { d_3: { unit: 'm', means: 'root of the thread' } },
  source: 'LL-38',
});

const rootShare = formula({
  symbol: 'y_3',
  means: 'stress at the root of the thread over yield',
  is: 'abs(N)/(A_3*σ_3)',
  unit: 'share',
  terms: {
    N: { unit: 'N', means: 'force along the member, tension positive' },
    A_3: { unit: 'm^2', means: 'area at the root of the thread' },
    σ_3: { unit: 'Pa', means: 'yield of the screwed shank' },
  },
  source: 'LL-38',
  holds: 'force along the shank alone, jam nut tight',
});

const stripShare = formula({
  symbol: 's_3',
  means: 'force over what strips the thread',
  is: 'abs(N)/min(κ*σ_3*A_ss, τ_p*A_sp)',
  unit: 'share',
  terms: {
    N: { unit: 'N', means: 'force along the member, tension positive' },
    κ: { unit: '1', means: 'shear over tension, steel' },
    σ_3: { unit: 'Pa', means: 'yield of the screwed shank' },
    A_ss: { unit: 'm^2', means: 'area at which the thread of the shank shears' },
    τ_p: { unit: 'Pa', means: 'shear strength of what it is screwed into' },
    A_sp: { unit: 'm^2', means: 'area at which the thread of the parent shears' },
  },
  source: 'LL-39',
});

export type EndOrigins = Readonly<Partial<Record<'N' | 'σ_3' | 'd_3' | 'τ_p' | 'L_e', Origin>>>;

export interface ScrewedEndUnderLoad {
  readonly yieldShare: Ratio;
  readonly stripShare: Ratio;
}

/** @param force along the member, tension positive */
export function screwedEndUnder(
  of: ScrewedEnd,
  force: Newton,
  working?: Working,
  from: EndOrigins = {},
): ScrewedEndUnderLoad {
  const A_3 = rootArea({ d_3: of.thread.root }, working, from);
  const yieldShare = rootShare({ N: force, A_3, σ_3: of.yield }, working, from);
  const { stud: A_ss, parent: A_sp } = threadShearAreas(of.thread, of.engaged, working);
  const strip = stripShare(
    { N: force, κ: SHEAR_OF_TENSION, σ_3: of.yield, A_ss, τ_p: of.parentShearStrength, A_sp },
    working,
    { ...from, κ: { kind: 'constant', what: '0.6, as for studs' } },
  );
  return { yieldShare, stripShare: strip };
}
