/**
 * What a warm tyre is bled to, and what it then reads cold.
 *
 * PR-n are the equations of docs/theory/pressures.md.
 */
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Kelvin, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type PutFloor, SAY_PRESSURE } from '../floor-figure.ts';
import { saturationPressure } from './water-vapour.ts';

/** What the tyre reads now, warm, before it is bled. */
export interface ReadNow {
  readonly pressure: Reading;
  readonly temperature: Reading;
}

const NOTES = {
  bleed: {
    id: 'bleedTo',
    means: 'bleed to, as warm as it is now',
    symbol: 'G_b',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  bled: {
    id: 'toBleed',
    means: 'that is, to let out (below nothing: to add)',
    symbol: 'ΔG_b',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  coldAfter: {
    id: 'coldAfter',
    means: 'then reads at the temperature of setting',
    symbol: 'G_n',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
} as const;

const Pa = (means: string) => ({ unit: 'Pa', means });
const K = (means: string) => ({ unit: 'K', means });

const bleedTo = formula({
  symbol: 'G_b',
  means: 'gauge pressure to bleed to now',
  is: '(G_t + p_t)*(T_n/T_2)*β/β_n - p_t',
  unit: 'Pa',
  terms: {
    G_t: Pa('gauge pressure wanted hot'),
    p_t: Pa('pressure of the air at the track'),
    T_n: K('temperature of the gas now'),
    T_2: K('temperature of the gas hot'),
    β: { unit: '1', means: 'volume hot over volume cold' },
    β_n: { unit: '1', means: 'volume now over volume cold' },
  },
  source: 'PR-9',
  holds: 'while no water condenses at the temperature of now',
});

const lessOf = formula({
  symbol: 'ΔG_b',
  means: 'to let out now',
  is: 'G_n - G_b',
  unit: 'Pa',
  terms: { G_n: Pa('gauge pressure now'), G_b: Pa('gauge pressure to bleed to') },
  source: 'PR-9',
});

const coldAfterBleed = formula({
  symbol: 'G_n',
  means: 'gauge pressure cold after it was bled',
  is: '(1 - x)*q + min(x*q, p_s) - p_m',
  unit: 'Pa',
  terms: {
    x: { unit: '1', means: 'share of water vapour in the tyre' },
    q: Pa('the gas cold, were nothing to condense'),
    p_s: Pa('saturation pressure cold'),
    p_m: Pa('pressure of the air where it is set'),
  },
  source: 'PR-9',
});

const bledGas = formula({
  symbol: 'q',
  means: 'the bled gas cold, were nothing to condense',
  is: '(G_t + p_t)*β*T_1/T_2',
  unit: 'Pa',
  terms: {
    G_t: Pa('gauge pressure wanted hot'),
    p_t: Pa('pressure of the air at the track'),
    β: { unit: '1', means: 'volume hot over volume cold' },
    T_1: K('temperature of the gas cold'),
    T_2: K('temperature of the gas hot'),
  },
  source: 'PR-9',
});

const shareOf = formula({
  symbol: 'x',
  means: 'share of water vapour in the tyre',
  is: 'e_c/(d_c + e_c)',
  unit: '1',
  terms: { e_c: Pa('water as vapour, cold, were nothing to condense'), d_c: Pa('dry gas, cold') },
  source: 'PR-9',
});

export function putBleed(
  of: string,
  now: ReadNow,
  at: {
    readonly target: Pascal;
    readonly track: Pascal;
    readonly where: Pascal;
    readonly cold: Kelvin;
    readonly hot: Kelvin;
    readonly grown: Ratio;
    readonly gas: { readonly dry: Pascal; readonly water: Pascal };
  },
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): void {
  const T_n: Kelvin = numbers.of(now.temperature);
  const { target: G_t, track: p_t, where: p_m, cold: T_1, hot: T_2, grown: β } = at;
  // the tyre has grown as far as it is warm, between cold and hot
  const β_n = 1 + (β - 1) * ((T_n - T_1) / (T_2 - T_1));
  const G_b = bleedTo({ G_t, p_t, T_n, T_2, β, β_n }, working, { T_n: fromReading(now.temperature) });
  put(of, NOTES.bleed, G_b);
  const less = lessOf({ G_n: numbers.of(now.pressure), G_b }, working, {
    G_n: fromReading(now.pressure),
  });
  put(of, NOTES.bled, less);
  const x = shareOf({ e_c: at.gas.water, d_c: at.gas.dry }, working);
  const q = bledGas({ G_t, p_t, β, T_1, T_2 }, working);
  put(of, NOTES.coldAfter, coldAfterBleed({ x, q, p_s: saturationPressure(T_1, working), p_m }, working));
}
