/**
 * The gas in a tyre: dry gas and water vapour in a volume that hardly changes, cold and hot.
 *
 * In    what the tyre was filled with, temperatures, pressure of the air around
 * Out   what a gauge reads
 * Holds ideal gas; the whole gas at one temperature; volume grown by a stated share; no leak
 * Not   the temperature itself: that of the gas is between that of the tread and that of the rim, and is learnt
 *       from a run (PR-10)
 *
 * All pressures absolute unless a name says gauge. PR-n are the equations of docs/theory/pressures.md.
 */
import type { Kelvin, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import { saturationPressure } from './water-vapour.ts';

/** What goes through the valve, and what stood in the tyre before. */
export interface Filling {
  /** Absolute pressure of the air where the tyre is filled. */
  readonly around: Pascal;
  /** Temperature of the air there, and how damp it is. */
  readonly air: Kelvin;
  readonly humidity: Ratio;
  /** Share of vapour in what goes through the valve. */
  readonly fillVapour: Ratio;
  /** Part of the air of the mounting that is still in the tyre. */
  readonly left: Ratio;
}

export interface Gas {
  /** Partial pressures at the cold temperature, were all water vapour. */
  readonly dry: Pascal;
  readonly water: Pascal;
}

const vapourInAir = formula({
  symbol: 'x_a',
  means: 'share of water vapour in the air',
  is: 'φ*p_s/p_m',
  unit: '1',
  terms: {
    φ: { unit: 'share', means: 'relative humidity' },
    p_s: { unit: 'Pa', means: 'saturation pressure at the temperature of the air' },
    p_m: { unit: 'Pa', means: 'pressure of the air where the tyre is filled' },
  },
  source: 'PR-3',
});

const vapourThroughCompressor = formula({
  symbol: 'x_f',
  means: 'share of water vapour in what comes out of the receiver',
  is: 'min(x_a, p_s/p_r)',
  unit: '1',
  terms: {
    x_a: { unit: '1', means: 'share of water vapour in the air' },
    p_s: { unit: 'Pa', means: 'saturation pressure at the temperature of the receiver' },
    p_r: { unit: 'Pa', means: 'absolute pressure in the receiver' },
  },
  source: 'PR-4',
  holds: 'the water that condenses stays in the receiver; it is drained',
});

export const airVapour = (
  of: { readonly humidity: Ratio; readonly air: Kelvin; readonly around: Pascal },
  working?: Working,
  from?: { readonly φ?: Origin; readonly air?: Origin; readonly p_m?: Origin },
): Ratio =>
  vapourInAir(
    { φ: of.humidity, p_s: saturationPressure(of.air, working, from?.air), p_m: of.around },
    working,
    {
      ...(from?.φ === undefined ? {} : { φ: from.φ }),
      ...(from?.p_m === undefined ? {} : { p_m: from.p_m }),
    },
  );

export const receiverVapour = (
  of: { readonly inAir: Ratio; readonly receiver: Kelvin; readonly pressure: Pascal },
  working?: Working,
  from?: { readonly receiver?: Origin; readonly pressure?: Origin },
): Ratio =>
  vapourThroughCompressor(
    { x_a: of.inAir, p_s: saturationPressure(of.receiver, working, from?.receiver), p_r: of.pressure },
    working,
    from?.pressure === undefined ? {} : { p_r: from.pressure },
  );

const dryCold = formula({
  symbol: 'd_c',
  means: 'dry gas in the tyre, cold',
  is: 'λ*(1 - x_a)*p_m + (1 - x_f)*(p_f - λ*p_m)',
  unit: 'Pa',
  terms: {
    λ: { unit: '1', means: 'part of the air of the mounting that is still in the tyre' },
    x_a: { unit: '1', means: 'share of vapour in that air' },
    p_m: { unit: 'Pa', means: 'pressure of the air where the tyre is filled' },
    x_f: { unit: '1', means: 'share of vapour in what goes through the valve' },
    p_f: { unit: 'Pa', means: 'what is filled in all, were nothing to condense' },
  },
  source: 'PR-5',
});

const waterCold = formula({
  symbol: 'e_c',
  means: 'water in the tyre as vapour, cold, were nothing to condense',
  is: 'λ*x_a*p_m + x_f*(p_f - λ*p_m) + e_l',
  unit: 'Pa',
  terms: {
    λ: { unit: '1', means: 'part of the air of the mounting that is still in the tyre' },
    x_a: { unit: '1', means: 'share of vapour in that air' },
    p_m: { unit: 'Pa', means: 'pressure of the air where the tyre is filled' },
    x_f: { unit: '1', means: 'share of vapour in what goes through the valve' },
    p_f: { unit: 'Pa', means: 'what is filled in all, were nothing to condense' },
    e_l: { unit: 'Pa', means: 'what the water left in the tyre would press as vapour' },
  },
  source: 'PR-5',
});

const poured = formula({
  symbol: 'e_l',
  means: 'what the water left in the tyre would press as vapour, cold',
  is: 'm_w*R_w*T_c/V',
  unit: 'Pa',
  terms: {
    m_w: { unit: 'kg', means: 'water left in the tyre, of the mounting' },
    R_w: { unit: 'J/kg K', means: 'gas constant of water vapour' },
    T_c: { unit: 'K', means: 'temperature of the gas when it is set' },
    V: { unit: 'm^3', means: 'volume of the gas in the tyre' },
  },
  source: 'PR-5',
});

/** Gas constant of water vapour, J/(kg K): 8.314 462 6 over 0.018 015 27. */
const WATER_GAS_CONSTANT = 461.5227;

/** What water left in the tyre would press as vapour. */
export const pouredWater = (
  of: { readonly mass: number; readonly T: Kelvin; readonly volume: number },
  working?: Working,
  from?: { readonly m_w?: Origin; readonly T_c?: Origin; readonly V?: Origin },
): Pascal =>
  poured({ m_w: of.mass, R_w: WATER_GAS_CONSTANT, T_c: of.T, V: of.volume }, working, {
    R_w: { kind: 'constant', what: 'water vapour' },
    ...from,
  });

/** The gas after filling; `filled` is what the gauge would read were nothing to condense, absolute. */
export const gasOf = (
  filling: Filling,
  filled: Pascal,
  parts: { readonly inAir: Ratio; readonly poured: Pascal },
  working?: Working,
): Gas => {
  const terms = {
    λ: filling.left,
    x_a: parts.inAir,
    p_m: filling.around,
    x_f: filling.fillVapour,
    p_f: filled,
  };
  return { dry: dryCold(terms, working), water: waterCold({ ...terms, e_l: parts.poured }, working) };
};

/** Cold and hot name their parts apart, so that a working can be followed from one to the other. */
const gauge = (symbol: string, means: string, d: string, e: string) =>
  formula({
    symbol,
    means,
    is: `${d} + min(${e}, p_s) - p_a`,
    unit: 'Pa',
    terms: {
      [d]: { unit: 'Pa', means: 'dry gas' },
      [e]: { unit: 'Pa', means: 'water as vapour, were nothing to condense' },
      p_s: { unit: 'Pa', means: 'saturation pressure at the temperature of the gas' },
      p_a: { unit: 'Pa', means: 'pressure of the air around' },
    } as Record<string, { unit: string; means: string }>,
    source: 'PR-7',
    holds: 'ideal gas, all of it at one temperature',
  });

const GAUGE_COLD = gauge('G_c', 'gauge pressure cold', 'd_c', 'e_c');
const GAUGE_HOT = gauge('G_h', 'gauge pressure hot', 'd_h', 'e_h');

const warmed = (symbol: string, means: string) =>
  formula({
    symbol,
    means,
    is: 'p_1*(T_2/T_1)/β',
    unit: 'Pa',
    terms: {
      p_1: { unit: 'Pa', means: 'partial pressure cold' },
      T_2: { unit: 'K', means: 'temperature of the gas hot' },
      T_1: { unit: 'K', means: 'temperature of the gas cold' },
      β: { unit: '1', means: 'volume hot over volume cold' },
    },
    source: 'PR-6',
  });

const DRY_HOT = warmed('d_h', 'dry gas, hot');
const WATER_HOT = warmed('e_h', 'water in the tyre as vapour, hot, were nothing to condense');

/** What the gauge reads cold. [PR-7] */
export const coldGauge = (
  { dry, water }: Gas,
  T: Kelvin,
  around: Pascal,
  working?: Working,
  from?: Origin,
): Pascal =>
  GAUGE_COLD({ d_c: dry, e_c: water, p_s: saturationPressure(T, working, from), p_a: around }, working);

/** What the gauge reads hot. [PR-6, PR-7] */
export function hotGauge(
  { dry, water }: Gas,
  at: { readonly cold: Kelvin; readonly hot: Kelvin; readonly grown: Ratio; readonly around: Pascal },
  working?: Working,
  from?: { readonly hot?: Origin; readonly cold?: Origin; readonly grown?: Origin },
): Pascal {
  const terms = { T_2: at.hot, T_1: at.cold, β: at.grown };
  const origin = {
    ...(from?.hot === undefined ? {} : { T_2: from.hot }),
    ...(from?.cold === undefined ? {} : { T_1: from.cold }),
    ...(from?.grown === undefined ? {} : { β: from.grown }),
  };
  const d_h = DRY_HOT({ p_1: dry, ...terms }, working, origin);
  const e_h = WATER_HOT({ p_1: water, ...terms }, working, origin);
  return GAUGE_HOT(
    { d_h, e_h, p_s: saturationPressure(at.hot, working, from?.hot), p_a: at.around },
    working,
  );
}

/** Closed to this, Pa: a ten-thousandth of what a gauge shows. */
const CLOSED: Pascal = 1e-6;

/**
 * What must be filled for the hot gauge to read its target: the hot reading rises with what is filled, straight but
 * for the corner where water begins to condense, so that steps of the secant between two bounds land on it.
 *
 * @param hotFor  hot gauge for a filling, absolute, cold
 */
export function filledFor(target: Pascal, around: Pascal, hotFor: (filled: Pascal) => Pascal): Pascal {
  let low = around * 0.1;
  let high = around + 2 * Math.max(target, around);
  while (hotFor(high) < target) high *= 2;
  let [atLow, atHigh] = [hotFor(low) - target, hotFor(high) - target];
  for (let step = 0; step < 200 && high - low > CLOSED; step += 1) {
    const secant = low - (atLow * (high - low)) / (atHigh - atLow);
    // the middle every third step: a corner must not hold one bound for ever
    const filled = step % 3 === 2 ? (low + high) / 2 : secant;
    const at = hotFor(filled) - target;
    if (Math.abs(at) < CLOSED) return filled;
    if (at < 0) [low, atLow] = [filled, at];
    else [high, atHigh] = [filled, at];
  }
  return (low + high) / 2;
}
