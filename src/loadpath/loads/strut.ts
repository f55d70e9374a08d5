/**
 * A straight link under its load: stress, and the push at which it buckles.
 *
 * In    a round tube or bar, its length between joint centres, how its ends are held, its own bow
 * Out   areas, critical load, margins
 * Not   dents, welds, the heat beside them; a tube of unknown history carries less
 *
 * Euler above the slenderness at which the critical stress is half the yield, Johnson's parabola below it; with a bow
 * the first-order growth of its bending is added to the push. LL-n are the equations of docs/theory/loads.md.
 */
import type { Metre, Newton, Pascal, Ratio, SquareMetre } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

export interface Strut {
  readonly outside: Metre;
  /** Nothing for a solid bar. */
  readonly bore: Metre;
  /** Between joint centres. */
  readonly length: Metre;
  /** Part of the length that buckles as if pinned: 1 between ball joints. */
  readonly effective: Ratio;
  readonly youngsModulus: Pascal;
  readonly yield: Pascal;
  /** How far its middle stands off the line of its joints, before the load. */
  readonly bow: Metre;
}

type Origins = Readonly<Partial<Record<'D' | 'd' | 'L' | 'E' | 'σ_y' | 'β' | 'w_0' | 'N', Origin>>>;

const TUBE = {
  D: { unit: 'm', means: 'outside diameter' },
  d: { unit: 'm', means: 'bore' },
} as const;

const areaOf = formula({
  symbol: 'A',
  means: 'section of the member',
  is: 'π/4*(D^2 - d^2)',
  unit: 'm^2',
  terms: TUBE,
  source: 'LL-20',
});

const secondMomentOf = formula({
  symbol: 'I',
  means: 'second moment of the section',
  is: 'π/64*(D^4 - d^4)',
  unit: 'm^4',
  terms: TUBE,
  source: 'LL-20',
});

const slendernessOf = formula({
  symbol: 'λ',
  means: 'slenderness',
  is: 'β*L/sqrt(I/A)',
  unit: '1',
  terms: {
    β: { unit: '1', means: 'part of the length that buckles as if pinned' },
    L: { unit: 'm', means: 'length between joint centres' },
    I: { unit: 'm^4', means: 'second moment of the section' },
    A: { unit: 'm^2', means: 'section of the member' },
  },
  source: 'LL-21',
});

const euler = formula({
  symbol: 'N_cr',
  means: 'push at which it buckles (Euler)',
  is: 'π^2*E*A/λ^2',
  unit: 'N',
  terms: {
    E: { unit: 'Pa', means: "Young's modulus" },
    A: { unit: 'm^2', means: 'section of the member' },
    λ: { unit: '1', means: 'slenderness' },
  },
  source: 'LL-22',
  holds: 'above the slenderness at which the stress is half the yield',
});

const johnson = formula({
  symbol: 'N_cr',
  means: 'push at which it buckles (Johnson)',
  is: 'A*σ_y*(1 - σ_y*λ^2/(4*π^2*E))',
  unit: 'N',
  terms: {
    A: { unit: 'm^2', means: 'section of the member' },
    σ_y: { unit: 'Pa', means: 'yield' },
    λ: { unit: '1', means: 'slenderness' },
    E: { unit: 'Pa', means: "Young's modulus" },
  },
  source: 'LL-23',
  holds: 'below the slenderness at which the stress is half the yield',
});

export interface StrutSizes {
  readonly area: SquareMetre;
  readonly slenderness: Ratio;
  /** Slenderness at which Euler and Johnson meet. */
  readonly meeting: Ratio;
  readonly critical: Newton;
}

export function strutSizes(of: Strut, working?: Working, from: Origins = {}): StrutSizes {
  const { outside: D, bore: d, youngsModulus: E, yield: σ_y } = of;
  const A = areaOf({ D, d }, working, from);
  const I = secondMomentOf({ D, d }, working, from);
  const λ = slendernessOf({ β: of.effective, L: of.length, I, A }, working, from);
  const meeting = Math.sqrt((2 * Math.PI ** 2 * E) / σ_y);
  const critical = λ > meeting ? euler({ E, A, λ }, working, from) : johnson({ A, σ_y, λ, E }, working, from);
  return { area: A, slenderness: λ, meeting, critical };
}

const axial = formula({
  symbol: 'σ',
  means: 'stress along the member',
  is: 'N/A',
  unit: 'Pa',
  terms: {
    N: { unit: 'N', means: 'force along the member, tension positive' },
    A: { unit: 'm^2', means: 'section of the member' },
  },
  source: 'LL-24',
});

const withBow = formula({
  symbol: 'σ_b',
  means: 'stress at the hollow side of the bow',
  is: 'C/A + C*w_0/(1 - C/N_cr)*D/(2*I)',
  unit: 'Pa',
  terms: {
    C: { unit: 'N', means: 'push along the member' },
    A: { unit: 'm^2', means: 'section of the member' },
    w_0: { unit: 'm', means: 'bow before the load' },
    N_cr: { unit: 'N', means: 'push at which it buckles' },
    D: { unit: 'm', means: 'outside diameter' },
    I: { unit: 'm^4', means: 'second moment of the section' },
  },
  source: 'LL-25; Timoshenko',
  holds: 'short of buckling, for a bow like half a sine',
});

const pulledShare = formula({
  symbol: 'y',
  means: 'stress over yield',
  is: 'σ/σ_y',
  unit: 'share',
  terms: {
    σ: { unit: 'Pa', means: 'stress along the member' },
    σ_y: { unit: 'Pa', means: 'yield' },
  },
  source: 'LL-24',
});

const pushedShare = formula({
  symbol: 'y',
  means: 'stress over yield',
  is: 'σ_b/σ_y',
  unit: 'share',
  terms: {
    σ_b: { unit: 'Pa', means: 'stress at the hollow side of the bow' },
    σ_y: { unit: 'Pa', means: 'yield' },
  },
  source: 'LL-25',
});

const bucklingShareOf = formula({
  symbol: 'b',
  means: 'push over the push at which it buckles',
  is: 'max(0*N, -N)/N_cr',
  unit: 'share',
  terms: {
    N: { unit: 'N', means: 'force along the member, tension positive' },
    N_cr: { unit: 'N', means: 'push at which it buckles' },
  },
  source: 'LL-22, LL-23',
});

/** Bow under a push: the initial one grown by 1/(1 − N/N_cr).  [LL-25] */
export const grownBow = (bow: Metre, push: Newton, critical: Newton): Metre => bow / (1 - push / critical);

export interface StrutUnderLoad extends StrutSizes {
  /** Along the member, tension positive, without its bow. */
  readonly stress: Pascal;
  /** Greatest stress, bow and all, as a part of the yield; not a number where it buckles. */
  readonly yieldShare: Ratio;
  /** Push over the push at which it buckles; nothing in tension. */
  readonly bucklingShare: Ratio;
}

/** @param force along the member, tension positive */
export function strutUnder(of: Strut, force: Newton, working?: Working, from: Origins = {}): StrutUnderLoad {
  const sizes = strutSizes(of, working, from);
  const { area: A, critical: N_cr } = sizes;
  const stress = axial({ N: force, A }, working, from);
  const bucklingShare = bucklingShareOf({ N: force, N_cr }, working, from);
  if (force >= 0) {
    return {
      ...sizes,
      stress,
      yieldShare: pulledShare({ σ: stress, σ_y: of.yield }, working, from),
      bucklingShare,
    };
  }
  // past the push at which it buckles no bow stands still
  if (bucklingShare >= 1) return { ...sizes, stress, yieldShare: Number.NaN, bucklingShare };
  const I = secondMomentOf({ D: of.outside, d: of.bore }, working, from);
  const σ_b = withBow({ C: -force, A, w_0: of.bow, N_cr, D: of.outside, I }, working, from);
  return { ...sizes, stress, yieldShare: pushedShare({ σ_b, σ_y: of.yield }, working, from), bucklingShare };
}
