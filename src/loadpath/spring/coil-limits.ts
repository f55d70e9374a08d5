/**
 * What a coil spring will not stand: buckling, fatigue between two loads, and loss of force with time and heat.
 *
 * In    a coil spring, how it is seated, two forces, the strength of the wire
 * Out   the compression at which it bows, a factor against fatigue, a sentence of caution
 * Not   a life in cycles: a line for long life, not a curve
 *
 * [EN13906-1]  EN 13906-1:2013 (from memory)
 * [Shigley10]  Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed., ch. 10
 * [Bhandari3]  Bhandari, Design of Machine Elements, 3rd ed., ch. 10
 */
import type { Metre, Newton, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type CoilSpring, coilStress, type Origins } from './coil-spring.ts';

/** Seat factor ν of the two ends, EN 13906-1 (from memory): the smaller, the better held. */
export const SEATS = {
  'both ends flat and guided': 0.5,
  'one end flat, one hinged': 0.7,
  'both ends hinged': 1,
  'one end flat and guided, one free': 2,
} as const satisfies Readonly<Record<string, number>>;
export type Seats = keyof typeof SEATS;

export type Buckling =
  | { readonly kind: 'cannot buckle' }
  | { readonly kind: 'buckles'; readonly at: Metre; readonly part: Ratio };

const slenderness = formula({
  symbol: 'q',
  means: 'what stands under the root: the spring can bow only where this is not negative',
  is: '1 - (1 - G/E)/(0.5 + G/E)*(π*D/(ν*L_0))^2',
  unit: '1',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus' },
    E: { unit: 'Pa', means: "Young's modulus" },
    D: { unit: 'm', means: 'mean coil diameter' },
    ν: { unit: '1', means: 'seat factor' },
    L_0: { unit: 'm', means: 'free length' },
  },
  source: 'SP-12; EN13906-1',
});

const bucklingCompression = formula({
  symbol: 's_k',
  means: 'compression at which the spring bows sideways',
  is: 'L_0*0.5/(1 - G/E)*(1 - sqrt(q))',
  unit: 'm',
  terms: {
    L_0: { unit: 'm', means: 'free length' },
    G: { unit: 'Pa', means: 'shear modulus' },
    E: { unit: 'Pa', means: "Young's modulus" },
    q: { unit: '1', means: 'what stands under the root' },
  },
  source: 'SP-13; EN13906-1',
  holds: 'for a spring that stands free; a spring over a damper body or in a sleeve rubs instead',
});

/** Compression at which the spring bows sideways, or that it cannot.  [SP-12, SP-13] */
export function buckling(
  spring: CoilSpring,
  seats: Seats | Ratio,
  working?: Working,
  from?: Origins,
): Buckling {
  const ν = typeof seats === 'number' ? seats : SEATS[seats];
  const shared = { G: spring.shearModulus, E: spring.youngsModulus, L_0: spring.freeLength };
  const q = slenderness({ ...shared, D: spring.meanDiameter, ν }, working, {
    ν: { kind: 'table', name: typeof seats === 'number' ? 'seat factor as given' : `seats: ${seats}` },
    ...from,
  });
  if (q < 0) return { kind: 'cannot buckle' };
  const at = bucklingCompression({ ...shared, q }, working, from);
  return { kind: 'buckles', at, part: at / spring.freeLength };
}

const critical = formula({
  symbol: 'L_cr',
  means: 'free length up to which the spring cannot bow',
  is: 'π*D/ν*sqrt((1 - G/E)/(0.5 + G/E))',
  unit: 'm',
  terms: {
    D: { unit: 'm', means: 'mean coil diameter' },
    ν: { unit: '1', means: 'seat factor' },
    G: { unit: 'Pa', means: 'shear modulus' },
    E: { unit: 'Pa', means: "Young's modulus" },
  },
  source: 'SP-14; Shigley10 eq. 10-12, EN13906-1',
});

/** Free length up to which the spring cannot bow whatever the load.  [SP-14] */
export const criticalFreeLength = (
  spring: Pick<CoilSpring, 'meanDiameter' | 'shearModulus' | 'youngsModulus'>,
  seats: Seats | Ratio,
  working?: Working,
  from?: Origins,
): Metre =>
  critical(
    {
      D: spring.meanDiameter,
      ν: typeof seats === 'number' ? seats : SEATS[seats],
      G: spring.shearModulus,
      E: spring.youngsModulus,
    },
    working,
    from,
  );

const factorOnRepeatedLine = formula({
  symbol: 'f_s',
  means: 'factor on the line between yield and the repeated-load limit',
  is: 'S_sy/(τ_m + τ_a*(S_sy - S_r/2)/(S_r/2))',
  unit: '1',
  terms: {
    S_sy: { unit: 'Pa', means: 'yield in shear' },
    τ_m: { unit: 'Pa', means: 'mean shear stress, direct-shear factor' },
    τ_a: { unit: 'Pa', means: 'alternating shear stress, Wahl factor' },
    S_r: { unit: 'Pa', means: 'greatest stress of a load from nothing that is borne for long life' },
  },
  source: 'SP-15; Bhandari3 eq. 10.21',
  holds: 'for long life in clean, unpitted wire',
});

export interface WireFatigue {
  /** Yield in shear. */
  readonly yieldShear: Pascal;
  /** Greatest shear stress of a load from nothing to full that the wire bears for long life. */
  readonly repeatedLimit: Pascal;
}

/**
 * Factor against fatigue for a force that swings between two values, by the torsion line through yield and the
 * repeated-load limit.  [SP-15]
 *
 * The mean stress carries the direct-shear factor and the alternating part Wahl's, as the source has it.
 */
export function repeatedLoadFactor(
  spring: CoilSpring,
  forces: { readonly low: Newton; readonly high: Newton },
  wire: WireFatigue,
  working?: Working,
): Ratio {
  const τ_m = coilStress(spring, (forces.low + forces.high) / 2, 'direct shear', working);
  const τ_a = coilStress(spring, (forces.high - forces.low) / 2, 'Wahl', working);
  return factorOnRepeatedLine({ S_sy: wire.yieldShear, τ_m, τ_a, S_r: wire.repeatedLimit }, working);
}

const enduranceAtZeroMean = formula({
  symbol: 'S_se',
  means: 'alternating shear limit at no mean stress',
  is: 'S_sa/(1 - S_sm/S_su)',
  unit: 'Pa',
  terms: {
    S_sa: { unit: 'Pa', means: 'alternating part of the tested limit' },
    S_sm: { unit: 'Pa', means: 'mean part of the tested limit' },
    S_su: { unit: 'Pa', means: 'ultimate shear strength, 0.67 of tensile' },
  },
  source: 'SP-16; Shigley10 eq. 10-29 to 10-31',
});

const goodman = formula({
  symbol: 'n_f',
  means: 'factor against fatigue, Goodman line in torsion',
  is: '1/(τ_a/S_se + τ_m/S_su)',
  unit: '1',
  terms: {
    τ_a: { unit: 'Pa', means: 'alternating shear stress' },
    S_se: { unit: 'Pa', means: 'alternating shear limit at no mean stress' },
    τ_m: { unit: 'Pa', means: 'mean shear stress' },
    S_su: { unit: 'Pa', means: 'ultimate shear strength' },
  },
  source: 'SP-17; Shigley10 ch. 10',
});

/** Tested limits of spring wire under 10 mm for long life (Zimmerli), Shigley10 eq. 10-28, 10-29, from memory. */
export const ZIMMERLI = {
  'not peened': { amplitude: 241e6, mean: 379e6 },
  peened: { amplitude: 398e6, mean: 534e6 },
} as const;

/** Factor against fatigue by the Goodman line in torsion, wire limits as tested on small springs.  [SP-16, SP-17] */
export function goodmanFactor(
  spring: CoilSpring,
  forces: { readonly low: Newton; readonly high: Newton },
  wire: { readonly tensileStrength: Pascal; readonly surface: keyof typeof ZIMMERLI },
  working?: Working,
): Ratio {
  const limit = ZIMMERLI[wire.surface];
  const S_su = 0.67 * wire.tensileStrength;
  const τ_m = coilStress(spring, (forces.low + forces.high) / 2, 'EN 13906-1', working);
  const τ_a = coilStress(spring, (forces.high - forces.low) / 2, 'EN 13906-1', working);
  const S_se = enduranceAtZeroMean({ S_sa: limit.amplitude, S_sm: limit.mean, S_su }, working);
  return goodman({ τ_a, S_se, τ_m, S_su }, working);
}

/**
 * What to say about loss of force with time. EN 13906-1 has charts of it by material, stress, heat and hours;
 * they are not reproduced here, so no figure is given.
 */
export function relaxationCaution(of: {
  readonly stress: Pascal;
  readonly tensileStrength: Pascal;
  /** Kelvin. */
  readonly temperature: number;
  readonly hottest: number;
}): string | undefined {
  const part = of.stress / of.tensileStrength;
  const warm = of.temperature > of.hottest;
  if (part < 0.45 && !warm) return undefined;
  const percent = Math.round(part * 100);
  const heat = warm
    ? `It works at ${Math.round(of.temperature - 273.15)} °C, above the ${Math.round(of.hottest - 273.15)} °C usual for this wire. `
    : '';
  return `${heat}Held at ${percent} % of its tensile strength in shear the spring loses length with time and heat: measure free length and rate again after the first runs, and follow the spring maker.`;
}
