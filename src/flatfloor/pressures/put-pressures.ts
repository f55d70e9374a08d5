/**
 * Figures of tyre pressures: what to set cold for a hot target, what moisture does to it, what to bleed to.
 *
 * In    readings of the file and of the question
 * Out   figures, tyre by tyre
 *
 * PR-n are the equations of docs/theory/pressures.md.
 */
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Kelvin, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import { type PutFloor, recordedFloor, SAY_PRESSURE, SAY_TEMPERATURE } from '../floor-figure.ts';
import { putBleed, type ReadNow } from './bleed.ts';
import {
  airVapour,
  coldGauge,
  type Filling,
  filledFor,
  gasOf,
  hotGauge,
  pouredWater,
  receiverVapour,
} from './tyre-gas.ts';
import { airPressureAt, saturationPressure } from './water-vapour.ts';

/** Pressure of the air: read, or by the height. */
export type Around =
  | { readonly kind: 'barometer'; readonly pressure: Reading }
  | { readonly kind: 'height'; readonly seaLevel: Reading; readonly height: Reading };

/** What goes through the valve. */
export type Fill =
  | { readonly kind: 'dry' }
  | { readonly kind: 'compressor'; readonly receiver: Reading; readonly temperature: Reading };

export interface Tyre {
  /** `front`, `rear left`. */
  readonly of: string;
  /** Gauge pressure wanted hot. */
  readonly hot: Reading;
  /** Temperature of the gas hot, or a run from which it is learnt. */
  readonly gas: Reading | LearntRun;
  readonly grown?: Reading;
  readonly volume?: Reading;
  readonly now?: ReadNow;
}

export interface LearntRun {
  readonly cold: Reading;
  readonly at: Reading;
  readonly hot: Reading;
}

export interface PressureReadings {
  readonly air: Reading;
  readonly humidity: Reading;
  /** Temperature of the gas when it is set. */
  readonly set: Reading;
  readonly around: Around;
  /** Where it is set, if that is elsewhere. */
  readonly aroundSet?: Around;
  readonly fill: Fill;
  /** How often the tyre was filled and let down before. */
  readonly purges: number;
  readonly water?: Reading;
  readonly tyres: readonly Tyre[];
}

const NOTES = {
  cold: {
    id: 'coldPressure',
    means: 'cold pressure to set',
    symbol: 'G_c',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  dry: {
    id: 'coldDry',
    means: 'the same, were the tyre dry',
    symbol: 'G_d',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  vapour: {
    id: 'vapourHot',
    means: 'part of water vapour in the hot pressure',
    symbol: 'e_v',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  rise: {
    id: 'rise',
    means: 'rise from cold to hot',
    symbol: 'ΔG',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  tenKelvin: {
    id: 'perTenKelvin',
    means: 'more to set for a tyre 10 K warmer when set',
    symbol: 'G_10',
    unit: 'Pa',
    spoken: SAY_PRESSURE,
  },
  gas: {
    id: 'gasTemperature',
    means: 'temperature of the gas hot, from that run',
    symbol: 'T_h',
    unit: 'K',
    spoken: SAY_TEMPERATURE,
  },
} as const;

const Pa = (means: string) => ({ unit: 'Pa', means });
const K = (means: string) => ({ unit: 'K', means });

const coldIfDry = formula({
  symbol: 'G_d',
  means: 'cold gauge pressure, were the gas dry',
  is: '(G_t + p_t)*β*(T_1/T_2) - p_m',
  unit: 'Pa',
  terms: {
    G_t: Pa('gauge pressure wanted hot'),
    p_t: Pa('pressure of the air at the track'),
    β: { unit: '1', means: 'volume hot over volume cold' },
    T_1: K('temperature of the gas cold'),
    T_2: K('temperature of the gas hot'),
    p_m: Pa('pressure of the air where it is set'),
  },
  source: 'PR-8',
});

const vapourHot = formula({
  symbol: 'e_v',
  means: 'part of water vapour in the hot pressure',
  is: 'min(e_c*(T_2/T_1)/β, p_s)',
  unit: 'Pa',
  terms: {
    e_c: Pa('water as vapour, cold, were nothing to condense'),
    T_2: K('temperature of the gas hot'),
    T_1: K('temperature of the gas cold'),
    β: { unit: '1', means: 'volume hot over volume cold' },
    p_s: Pa('saturation pressure hot'),
  },
  source: 'PR-6',
});

const riseOf = formula({
  symbol: 'ΔG',
  means: 'rise from cold to hot',
  is: 'G_t - G_c',
  unit: 'Pa',
  terms: { G_t: Pa('gauge pressure wanted hot'), G_c: Pa('gauge pressure cold') },
  source: 'PR-7',
});

const perTenKelvin = formula({
  symbol: 'G_10',
  means: 'more to set for a tyre 10 K warmer when set',
  is: '(G_c + p_m)/T_1*10*K_1',
  unit: 'Pa',
  terms: {
    G_c: Pa('gauge pressure cold'),
    p_m: Pa('pressure of the air where it is set'),
    T_1: K('temperature of the gas cold'),
    K_1: K('one kelvin'),
  },
  source: 'PR-8',
});

const gasFromRun = formula({
  symbol: 'T_h',
  means: 'temperature of the gas hot, from a run',
  is: 'T_r*β*(G_2 + p_t)/(G_1 + p_m)',
  unit: 'K',
  terms: {
    T_r: K('temperature of the gas when the tyre was read cold'),
    β: { unit: '1', means: 'volume hot over volume cold' },
    G_2: Pa('gauge pressure read hot'),
    p_t: Pa('pressure of the air at the track'),
    G_1: Pa('gauge pressure read cold'),
    p_m: Pa('pressure of the air where it was set'),
  },
  source: 'PR-10',
  holds: 'while no water condenses in the tyre cold',
});

const leftAfter = formula({
  symbol: 'λ',
  means: 'part of the air of the mounting that is still in the tyre',
  is: '(p_m/p_f)^n',
  unit: '1',
  terms: {
    p_m: Pa('pressure of the air where the tyre is filled'),
    p_f: Pa('what is filled in all'),
    n: { unit: '1', means: 'times the tyre was filled and let down before' },
  },
  source: 'PR-5',
});

const around = (of: Around, numbers: Numbers, working?: Working): Pascal =>
  of.kind === 'barometer'
    ? numbers.of(of.pressure)
    : airPressureAt({ seaLevel: numbers.of(of.seaLevel), height: numbers.of(of.height) }, working, {
        seaLevel: fromReading(of.seaLevel),
        height: fromReading(of.height),
      });

/** Puts the figures of every tyre asked for, in their order. */
export function putPressures(on: PressureReadings, numbers: Numbers, putting: PutFloor, working?: Working) {
  const put = recordedFloor(putting, working);
  const track = around(on.around, numbers, working);
  const where = on.aroundSet === undefined ? track : around(on.aroundSet, numbers, working);
  const air: Kelvin = numbers.of(on.air);
  const humidity: Ratio = numbers.of(on.humidity);
  const inAir = airVapour({ humidity, air, around: where }, working, {
    φ: fromReading(on.humidity),
    air: fromReading(on.air),
  });
  const fillVapour =
    on.fill.kind === 'dry'
      ? 0
      : receiverVapour(
          {
            inAir,
            receiver: numbers.of(on.fill.temperature),
            pressure: where + numbers.of(on.fill.receiver),
          },
          working,
          { receiver: fromReading(on.fill.temperature) },
        );
  const cold: Kelvin = numbers.of(on.set);
  for (const tyre of on.tyres) {
    const grown = tyre.grown === undefined ? 1 : 1 + numbers.of(tyre.grown);
    const target = numbers.of(tyre.hot);
    const hot = hotGas(tyre, { track, where, grown }, numbers, put, working);
    const poured =
      on.water === undefined || tyre.volume === undefined
        ? 0
        : pouredWater({ mass: numbers.of(on.water), T: cold, volume: numbers.of(tyre.volume) }, working, {
            m_w: fromReading(on.water),
            V: fromReading(tyre.volume),
            T_c: fromReading(on.set),
          });
    const fillingAt = (filled: Pascal, record?: Working): Filling => ({
      around: where,
      air,
      humidity,
      fillVapour,
      left: on.purges === 0 ? 1 : leftAfter({ p_m: where, p_f: filled, n: on.purges }, record),
    });
    const at = { cold, hot, grown, around: track };
    const gasAt = (filled: Pascal, record?: Working) =>
      gasOf(fillingAt(filled, record), filled, { inAir, poured }, record);
    const filled = filledFor(target, where, (guess) => hotGauge(gasAt(guess), at));
    working?.add({
      kind: 'solved',
      symbol: 'p_f',
      means: 'what is filled in all, were nothing to condense',
      method: 'secant between two bounds, until the hot gauge reads its target',
      value: filled,
      unit: 'Pa',
      source: 'PR-7',
      terms: [
        { symbol: 'G_t', ...Pa('gauge pressure wanted hot'), value: target, from: fromReading(tyre.hot) },
        { symbol: 'T_2', ...K('temperature of the gas hot'), value: hot, from: gasOrigin(tyre) },
        { symbol: 'T_1', ...K('temperature of the gas cold'), value: cold, from: fromReading(on.set) },
        { symbol: 'β', unit: '1', means: 'volume hot over volume cold', value: grown },
        { symbol: 'p_t', ...Pa('pressure of the air at the track'), value: track },
      ],
      residual: { value: hotGauge(gasAt(filled), at) - target, unit: 'Pa', of: 'hot gauge less target' },
    });
    const gas = gasAt(filled, working);
    const G_c = coldGauge(gas, cold, where, working, fromReading(on.set));
    put(tyre.of, NOTES.cold, G_c);
    const T = { T_1: cold, T_2: hot, β: grown };
    const from = { T_1: fromReading(on.set) };
    if (on.water !== undefined) {
      put(tyre.of, NOTES.dry, coldIfDry({ G_t: target, p_t: track, p_m: where, ...T }, working, from));
    }
    const p_s = saturationPressure(hot, working);
    put(tyre.of, NOTES.vapour, vapourHot({ e_c: gas.water, p_s, ...T }, working, from));
    put(tyre.of, NOTES.rise, riseOf({ G_t: target, G_c }, working, { G_t: fromReading(tyre.hot) }));
    put(tyre.of, NOTES.tenKelvin, perTenKelvin({ G_c, p_m: where, T_1: cold, K_1: 1 }, working, from));
    if (tyre.now !== undefined) {
      putBleed(tyre.of, tyre.now, { target, track, where, cold, hot, grown, gas }, numbers, put, working);
    }
  }
}

/** Where the hot temperature comes from: read, or the step above that learnt it. */
const gasOrigin = ({ gas }: Tyre): Origin =>
  'cold' in gas ? { kind: 'step', symbol: 'T_h' } : fromReading(gas);

function hotGas(
  { of, gas, grown: volume }: Tyre,
  at: { readonly track: Pascal; readonly where: Pascal; readonly grown: Ratio },
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): Kelvin {
  if (!('cold' in gas)) return numbers.of(gas);
  const T_h = gasFromRun(
    {
      T_r: numbers.of(gas.at),
      β: at.grown,
      G_2: numbers.of(gas.hot),
      p_t: at.track,
      G_1: numbers.of(gas.cold),
      p_m: at.where,
    },
    working,
    {
      T_r: fromReading(gas.at),
      G_2: fromReading(gas.hot),
      G_1: fromReading(gas.cold),
      ...(volume === undefined ? { β: { kind: 'constant', what: 'volume taken as it is' } as const } : {}),
    },
  );
  put(of, NOTES.gas, T_h);
  return T_h;
}
