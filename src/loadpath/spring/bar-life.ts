/**
 * How long a bar lasts at a stated duty: a band, not a number.
 *
 * In    stress blocks of the duty, the strength and surface of the bar, what presetting left at its skin
 * Out   how many times the whole duty can be repeated, with its spread, and which block uses it up
 * Holds as an order of magnitude. The line in stress against cycles is built from rules of thumb for steel in
 *       shear, not from tests of this bar; nicks, rust, a scriber's mark or a clamp on the shank void it
 *
 * The mean stress counts with what presetting left: −300 MPa at the skin lowers every mean by 300 MPa. Equal
 * damage is summed over the blocks (Palmgren and Miner).
 *
 * [Shigley8]  Shigley's Mechanical Engineering Design, 8th and 9th ed., ch. 6: tables and eq. 6-13 to 6-20
 */
import type { Metre, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

/** How the skin of the bar is finished. */
export type BarSurface = 'as turned' | 'ground' | 'ground and peened';

/** Surface factor a·S^b with S in MPa. Peened: 1.3 times ground, assumed; the others as the table prints them. */
const SURFACE_FACTORS: Readonly<Record<BarSurface, { readonly a: number; readonly b: number }>> = {
  'as turned': { a: 4.51, b: -0.265 },
  ground: { a: 1.58, b: -0.085 },
  'ground and peened': { a: 1.3 * 1.58, b: -0.085 },
};

/** Amplitude, fully reversed, that is borne for a thousand and for a million cycles. */
export interface StressCycleLine {
  readonly thousand: Pascal;
  readonly million: Pascal;
}

/**
 * The line of a bar in torsion, built from rules of thumb: assumed for this bar, not tested.
 *
 * At 10⁶ half the tensile strength, at most 700 MPa, times 0.59 for torsion, 1.24·D^−0.107 for size and the
 * surface factor [Shigley8, tables 6-2 and 6-11 to 6-14, eq. 6-20]; at 10³ a share of 0.77 (that of very strong
 * steel, from memory) of the ultimate shear strength.
 */
export function stressCycleLine(of: {
  readonly tensileStrength: Pascal;
  readonly diameter: Metre;
  readonly surface: BarSurface;
}): StressCycleLine {
  const S = of.tensileStrength / 1e6;
  const { a, b } = SURFACE_FACTORS[of.surface];
  const surface = Math.min(of.surface === 'ground and peened' ? 1.3 : 1, a * S ** b);
  const size = 1.24 * (of.diameter * 1e3) ** -0.107;
  return {
    thousand: 0.77 * ULTIMATE_SHEAR * of.tensileStrength,
    million: 0.59 * surface * size * Math.min(0.5 * of.tensileStrength, 700e6),
  };
}

/** Ultimate shear strength over tensile strength, Shigley10 eq. 10-30 (from memory). */
const ULTIMATE_SHEAR = 0.67;

/** Scatter of like bars in life, and what is not known of the strength itself: both one standard uncertainty. */
export const LIFE_SCATTER = { logLife: 0.25, strength: 0.08 } as const;

export interface DutyBlock {
  readonly what: string;
  /** Skin stress by torque alone, with sign: positive in bump. */
  readonly low: Pascal;
  readonly high: Pascal;
  /** How often in one repeat of the duty. */
  readonly cycles: number;
}

/** A duty written in parts of the stress at full torque. */
export const dutyFromParts = (
  full: Pascal,
  parts: readonly {
    readonly what: string;
    readonly low: Ratio;
    readonly high: Ratio;
    readonly cycles: number;
  }[],
): readonly DutyBlock[] => parts.map((part) => ({ ...part, low: part.low * full, high: part.high * full }));

const exponentOf = formula({
  symbol: 'b',
  means: 'slope of the line of stress against cycles',
  is: '-ln(S_3/S_6)/ln(1000)',
  unit: '1',
  terms: {
    S_3: { unit: 'Pa', means: 'reversed shear amplitude borne for a thousand cycles' },
    S_6: { unit: 'Pa', means: 'reversed shear amplitude borne for a million cycles' },
  },
  source: 'SP-45; Shigley8 eq. 6-14, 6-15',
});

const reversedOf = formula({
  symbol: 'τ_ar',
  means: 'reversed amplitude that does as much harm',
  is: 'τ_a/(1 - τ_m/S_su)',
  unit: 'Pa',
  terms: {
    τ_a: { unit: 'Pa', means: 'alternating shear stress' },
    τ_m: { unit: 'Pa', means: 'size of the mean shear stress, with what presetting left' },
    S_su: { unit: 'Pa', means: 'ultimate shear strength, 0.67 of tensile' },
  },
  source: 'SP-46; Shigley8 eq. 6-46, Goodman',
});

const cyclesOf = formula({
  symbol: 'N',
  means: 'cycles the bar bears at this amplitude',
  is: '1000*exp(ln(τ_ar/S_3)/b)',
  unit: '1',
  terms: {
    τ_ar: { unit: 'Pa', means: 'reversed amplitude that does as much harm' },
    S_3: { unit: 'Pa', means: 'reversed shear amplitude borne for a thousand cycles' },
    b: { unit: '1', means: 'slope of the line of stress against cycles' },
  },
  source: 'SP-47; Shigley8 eq. 6-16',
});

/** Cycles borne at a fully reversed amplitude, on the straight line in logarithms.  [SP-45, SP-47] */
export function cyclesBorne(line: StressCycleLine, amplitude: Pascal, working?: Working): number {
  const b = exponentOf({ S_3: line.thousand, S_6: line.million }, working);
  return cyclesOf({ τ_ar: amplitude, S_3: line.thousand, b }, working);
}

export interface BlockLife {
  readonly block: DutyBlock;
  readonly cyclesToBreak: number;
  /** Part of the damage of the whole duty. */
  readonly share: Ratio;
}

export interface BarLife {
  /** Repeats of the whole duty: middle, and the ends of a band of two standard uncertainties. */
  readonly repeats: { readonly low: number; readonly middle: number; readonly high: number };
  readonly blocks: readonly BlockLife[];
  /** True when a block twists backwards: then a preset bar loses what presetting gave, and the life is a guess. */
  readonly reversed: boolean;
  readonly notes: readonly string[];
}

/**
 * Life at a duty.  [SP-45 to SP-49]
 *
 * The line is carried on below 10⁶ cycles' amplitude without a limit, since a varied load wears one away: small
 * blocks still count.
 */
export function barLife(
  of: {
    readonly tensileStrength: Pascal;
    readonly diameter: Metre;
    readonly surface: BarSurface;
    /** Negative when preset towards bump; 0 for a bar that is not preset. */
    readonly residualAtSkin: Pascal;
    readonly duty: readonly DutyBlock[];
  },
  working?: Working,
): BarLife {
  const line = stressCycleLine(of);
  const S_su = ULTIMATE_SHEAR * of.tensileStrength;
  const b = exponentOf({ S_3: line.thousand, S_6: line.million }, working);
  const lives = of.duty.map((block) => {
    const τ_a = (block.high - block.low) / 2;
    // a mean shear does as much harm one way as the other
    const τ_m = Math.abs((block.high + block.low) / 2 + of.residualAtSkin);
    if (τ_a === 0) return { block, cyclesToBreak: Number.POSITIVE_INFINITY };
    if (τ_m + τ_a >= S_su) return { block, cyclesToBreak: 1 };
    const τ_ar = reversedOf({ τ_a, τ_m, S_su }, working);
    return { block, cyclesToBreak: Math.max(1, cyclesOf({ τ_ar, S_3: line.thousand, b }, working)) };
  });
  const damages = lives.map((each) => each.block.cycles / each.cyclesToBreak);
  const damage = damages.reduce((sum, each) => sum + each, 0);
  const middle = 1 / damage;
  // strength off by a part u moves log life by u/(|b| ln 10)
  const logSpread = Math.hypot(LIFE_SCATTER.logLife, LIFE_SCATTER.strength / (Math.abs(b) * Math.LN10));
  const band = 10 ** (2 * logSpread);
  working?.add({
    kind: 'solved',
    symbol: 'N_d',
    means: 'repeats of the whole duty until the bar breaks, middle of the band',
    method: 'equal damage of all blocks: one over the sum of cycles done over cycles borne',
    value: middle,
    unit: '1',
    source: 'SP-48, SP-49',
    terms: lives.map((each, i) => ({
      symbol: `N_${i + 1}`,
      means: `cycles borne, ${each.block.what}`,
      value: each.cyclesToBreak,
      unit: '1',
    })),
  });
  const reversed = of.duty.some((block) => block.low < 0);
  return {
    repeats: { low: middle / band, middle, high: middle * band },
    blocks: lives.map((each, i) => ({ ...each, share: damage === 0 ? 0 : damages[i]! / damage })),
    reversed,
    notes: [
      'stress against cycles is assumed from rules of thumb, not from tests of this bar',
      ...(reversed && of.residualAtSkin !== 0
        ? ['the duty twists a preset bar backwards: what presetting gave is lost with time']
        : []),
    ],
  };
}
