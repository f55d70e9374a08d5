/**
 * What breaks first at a stud: its thread stripping, the parent's, the shank, or a crack at the first thread.
 *
 * In    thread, engaged length, strengths
 * Out   loads, newtons, and the endurance of a rolled thread
 * Not   the tolerance of the thread (basic sizes: up to some per cent less), inserts
 *
 * ST-n are the equations of docs/theory/studs.md. Shear areas by FED-STD-H28/2B and ISO 16224 on basic sizes (from
 * memory); endurance of rolled threads by VDI 2230 Part 1 (from memory).
 */
import type { Thread } from '../../materials/thread.ts';
import type { Metre, Newton, Pascal, SquareMetre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

const SHEAR_TERMS = {
  L_e: { unit: 'm', means: 'thread engaged' },
  P: { unit: 'm', means: 'pitch' },
  d_2: { unit: 'm', means: 'pitch diameter' },
  D_1: { unit: 'm', means: 'minor diameter of the nut thread' },
  d: { unit: 'm', means: 'major diameter of the stud thread' },
  α: { unit: 'rad', means: 'half the flank angle' },
} as const;

const { d: _, ...STUD_TERMS } = SHEAR_TERMS;
const { D_1: __, ...PARENT_TERMS } = SHEAR_TERMS;

const studShear = formula({
  symbol: 'A_ss',
  means: 'area at which the thread of the stud shears',
  is: 'π*D_1*L_e*(1/2 + (d_2 - D_1)*tan(α)/P)',
  unit: 'm^2',
  terms: STUD_TERMS,
  source: 'ST-16; FED-STD-H28/2B',
});

const parentShear = formula({
  symbol: 'A_sp',
  means: 'area at which the thread of the parent shears',
  is: 'π*d*L_e*(1/2 + (d - d_2)*tan(α)/P)',
  unit: 'm^2',
  terms: PARENT_TERMS,
  source: 'ST-17; FED-STD-H28/2B',
});

export interface ThreadShear {
  readonly stud: SquareMetre;
  readonly parent: SquareMetre;
}

/** Areas at which the two threads shear over an engaged length.  [ST-16, ST-17] */
export function threadShearAreas(thread: Thread, engaged: Metre, working?: Working): ThreadShear {
  const own = { kind: 'table', name: thread.name } as const;
  const sizes = { L_e: engaged, P: thread.pitch, d_2: thread.pitchDiameter, α: thread.flank };
  const from = { P: own, d_2: own, α: own };
  return {
    stud: studShear({ ...sizes, D_1: thread.minor }, working, { ...from, D_1: own }),
    parent: parentShear({ ...sizes, d: thread.major }, working, { ...from, d: own }),
  };
}

/** Shear strength of a steel as part of its tensile strength: 0.6, VDI 2230 (from memory). */
export const SHEAR_OF_TENSION = 0.6;

export interface BreakingLoads {
  /** Shank or thread in tension, whichever is smaller. */
  readonly tension: Newton;
  readonly studThread: Newton;
  readonly parentThread: Newton;
}

export function breakingLoads(of: {
  readonly thread: Thread;
  readonly engaged: Metre;
  readonly tensionArea: SquareMetre;
  readonly studStrength: Pascal;
  readonly parentShearStrength: Pascal;
}): BreakingLoads {
  const areas = threadShearAreas(of.thread, of.engaged);
  return {
    tension: of.tensionArea * of.studStrength,
    studThread: areas.stud * SHEAR_OF_TENSION * of.studStrength,
    parentThread: areas.parent * of.parentShearStrength,
  };
}

const MM = 1e-3;
const MPa = 1e6;

/** Stress amplitude that a thread rolled before heat treatment bears for ever.  [ST-18] */
export const enduranceRolledFirst = (thread: Thread): Pascal => 0.85 * (150 / (thread.major / MM) + 45) * MPa;

/** The same for a thread rolled after heat treatment, which keeps its pressing stress.  [ST-19] */
export const enduranceRolledLast = (of: {
  readonly thread: Thread;
  /** Mean load over the load at 0.2 % lasting strain. */
  readonly meanShare: number;
}): Pascal => (2 - of.meanShare) * enduranceRolledFirst(of.thread);
