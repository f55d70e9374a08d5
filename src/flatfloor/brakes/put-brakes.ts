/**
 * Figures of the brakes: front share from bores and bar against the loads of the axles, pedal and line pressures,
 * what each axle asks of its tyres, wear.
 *
 * In    the car, decelerations, a speed
 * Out   figures of the car, then deceleration by deceleration, then of each axle
 *
 * BR-n are the equations of docs/theory/brakes.md.
 */
import type { CarForm } from '../../car/read.ts';
import { type CarStanding, carStanding } from '../../loadpath/loads/car-equilibrium.ts';
import { airOf, endOf, STANDING, sideOf, WHEEL_NAMES } from '../../loadpath/loads/doing.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import { type MetrePerSecond, type Newton, type Ratio, STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type FloorNote, type PutFloor, recordedFloor, SAY_PRESSURE } from '../floor-figure.ts';
import {
  type AxleBrake,
  axleBrake,
  type BrakeSystem,
  barFor,
  barShare,
  brakeTorque,
  type End,
  frontShareOf,
  linePressure,
} from './hydraulics.ts';
import { type WearPoint, wornOf } from './wear.ts';

export interface BrakesOn {
  readonly car: CarForm;
  readonly system: BrakeSystem;
  readonly speed: MetrePerSecond;
  /** Decelerations looked at, m/s², positive. */
  readonly decelerations: readonly number[];
}

const ENDS = ['front', 'rear'] as const;

const note = (
  id: string,
  means: string,
  symbol: string,
  unit: string,
  more: Partial<FloorNote> = {},
): FloorNote => ({
  id,
  means,
  symbol,
  unit,
  ...more,
});

const NOTES = {
  share: note('frontShare', 'front share by bores, bar and pads', 'Λ', 'share'),
  perMillimetre: note('perMillimetre', 'front share for a millimetre of the bar', 'Λ_m', 'share'),
  perTurn: note('perTurn', 'front share for a turn of the adjuster', 'Λ_t', 'share'),
  ideal: note('idealShare', 'front share at which both axles ask alike', 'Λ_i', 'share'),
  grip: {
    front: note('frontGrip', 'asked of the front tyres, force over load', 'k_1', '1'),
    rear: note('rearGrip', 'asked of the rear tyres, force over load', 'k_2', '1'),
  },
  bar: note('barForIdeal', 'bar for that share, off the middle towards the front', 'x_i', 'm'),
  pedal: note('pedalForce', 'force on the pedal', 'F_p', 'N'),
  pressure: {
    front: note('frontPressure', 'front line pressure', 'p', 'Pa', { spoken: SAY_PRESSURE }),
    rear: note('rearPressure', 'rear line pressure', 'p', 'Pa', { spoken: SAY_PRESSURE }),
  },
  torque: {
    front: note('frontTorque', 'torque of a front brake', 'T_b', 'N m'),
    rear: note('rearTorque', 'torque of a rear brake', 'T_b', 'N m'),
  },
} as const;

const brakingForce = formula({
  symbol: 'F_b',
  means: 'braking force of all four tyres',
  is: 'm*a_b - D',
  unit: 'N',
  terms: {
    m: { unit: 'kg', means: 'mass of the car' },
    a_b: { unit: 'm/s^2', means: 'deceleration' },
    D: { unit: 'N', means: 'drag at this speed' },
  },
  source: 'BR-6',
  holds: 'engine braking left out: it comes on top at the rear',
});

const idealOf = formula({
  symbol: 'Λ_i',
  means: 'front share at which both axles ask alike of their tyres',
  is: 'N_1/(N_1 + N_2)',
  unit: '1',
  terms: {
    N_1: { unit: 'N', means: 'load of the front axle' },
    N_2: { unit: 'N', means: 'load of the rear axle' },
  },
  source: 'BR-6',
});

const gripOf = (symbol: 'k_1' | 'k_2', share: string, words: string) =>
  formula({
    symbol,
    means: `asked of the ${words} tyres, force over load`,
    is: `${share}*F_b/N`,
    unit: '1',
    terms: {
      Λ: { unit: '1', means: 'front share' },
      F_b: { unit: 'N', means: 'braking force of all four tyres' },
      N: { unit: 'N', means: `load of the ${words} axle` },
    },
    source: 'BR-7',
  });

const GRIP = { front: gripOf('k_1', 'Λ', 'front'), rear: gripOf('k_2', '(1 - Λ)', 'rear') } as const;

const pedalOf = formula({
  symbol: 'F_p',
  means: 'force on the pedal',
  is: 'F_b/(i_p*(f*G_1 + (1 - f)*G_2))',
  unit: 'N',
  terms: {
    F_b: { unit: 'N', means: 'braking force of all four tyres' },
    i_p: { unit: '1', means: 'pedal ratio' },
    f: { unit: '1', means: 'part of the bar’s force on the front cylinder' },
    G_1: { unit: '1', means: 'gain of the front brakes' },
    G_2: { unit: '1', means: 'gain of the rear brakes' },
  },
  source: 'BR-4',
});

const rodForce = (share: string) =>
  formula({
    symbol: 'F_r',
    means: 'force on the rod of this cylinder',
    is: `F_p*i_p*${share}`,
    unit: 'N',
    terms: {
      F_p: { unit: 'N', means: 'force on the pedal' },
      i_p: { unit: '1', means: 'pedal ratio' },
      f: { unit: '1', means: 'part of the bar’s force on the front cylinder' },
    },
    source: 'BR-1',
  });

const ROD = { front: rodForce('f'), rear: rodForce('(1 - f)') } as const;

const perMillimetreOf = formula({
  symbol: 'Λ_m',
  means: 'front share for a millimetre of the bar',
  is: 'Λ*(1 - Λ)/(f*(1 - f)*w)*x_1',
  unit: '1',
  terms: {
    Λ: { unit: '1', means: 'front share' },
    f: { unit: '1', means: 'part of the bar’s force on the front cylinder' },
    w: { unit: 'm', means: 'bar, clevis to clevis' },
    x_1: { unit: 'm', means: 'one millimetre' },
  },
  source: 'BR-8',
});

const perTurnOf = formula({
  symbol: 'Λ_t',
  means: 'front share for a turn of the adjuster',
  is: 'Λ_m*x_t/x_1',
  unit: '1',
  terms: {
    Λ_m: { unit: '1', means: 'front share for a millimetre of the bar' },
    x_t: { unit: 'm', means: 'movement of the bearing for a turn' },
    x_1: { unit: 'm', means: 'one millimetre' },
  },
  source: 'BR-8',
});

/** How a deceleration is called among the figures. */
export const decelerationName = (a: number): string =>
  `${(a / STANDARD_GRAVITY).toFixed(2).replace(/0$/, '')} g`;

export function putBrakes(on: BrakesOn, numbers: Numbers, putting: PutFloor, working?: Working): void {
  const put = recordedFloor(putting, working);
  const { car, system } = on;
  const { bar } = system;
  const w = numbers.of(bar.width);
  const f = barShare({ x_b: numbers.of(bar.offset), w }, working, {
    x_b: fromReading(bar.offset),
    w: fromReading(bar.width),
  });
  const front = namedGain(axleBrake(car, system, 'front', numbers, working), 'G_1', working);
  const rear = namedGain(axleBrake(car, system, 'rear', numbers, working), 'G_2', working);
  const gains = { G_1: front.gain, G_2: rear.gain };
  const Λ = frontShareOf({ f, ...gains }, working);
  put('car', NOTES.share, Λ);
  const millimetre = { x_1: 1e-3 };
  const one = { x_1: { kind: 'constant', what: 'one millimetre' } } as const;
  const Λ_m = perMillimetreOf({ Λ, f, w, ...millimetre }, working, { ...one, w: fromReading(bar.width) });
  put('car', NOTES.perMillimetre, Λ_m);
  if (bar.perTurn !== undefined) {
    const terms = { Λ_m, x_t: numbers.of(bar.perTurn), ...millimetre };
    put('car', NOTES.perTurn, perTurnOf(terms, working, { ...one, x_t: fromReading(bar.perTurn) }));
  }
  for (const a of on.decelerations) {
    putDeceleration(on, a, { f, w, Λ, gains, brakes: { front, rear } }, numbers, put, working);
  }
  for (const end of ENDS) putWear(system, end, numbers, put, working);
}

/** The gain under the name that the sums over both axles have for it. */
function namedGain(brake: AxleBrake, symbol: 'G_1' | 'G_2', working?: Working): AxleBrake {
  working?.add({
    kind: 'solved',
    symbol,
    means: `gain of the ${symbol === 'G_1' ? 'front' : 'rear'} brakes`,
    method: 'as above',
    value: brake.gain,
    unit: '1',
    source: 'BR-4',
    terms: [
      {
        symbol: 'G_b',
        means: 'gain of the axle',
        value: brake.gain,
        unit: '1',
        from: { kind: 'step', symbol: 'G_b' },
      },
    ],
  });
  return brake;
}

interface Found {
  readonly f: Ratio;
  readonly w: number;
  readonly Λ: Ratio;
  readonly gains: { readonly G_1: Ratio; readonly G_2: Ratio };
  readonly brakes: Readonly<Record<End, AxleBrake>>;
}

function putDeceleration(
  { car, system, speed }: BrakesOn,
  a: number,
  { f, w, Λ, gains, brakes }: Found,
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): void {
  const of = decelerationName(a);
  const standing = carStanding(car, { ...STANDING, longitudinal: -a, speed, frontBrakes: Λ }, numbers);
  const [N_1, N_2] = [loadOf(standing, 'front', 'N_1', working), loadOf(standing, 'rear', 'N_2', working)];
  const Λ_i = idealOf({ N_1, N_2 }, working);
  put(of, NOTES.ideal, Λ_i);
  const m = WHEEL_NAMES.reduce((sum, wheel) => sum + numbers.of(car[endOf(wheel)][sideOf(wheel)].scale), 0);
  const F_b = brakingForce({ m, a_b: a, D: airOf(car, speed, numbers).drag }, working, {
    m: { kind: 'constant', what: 'the four wheel scales' },
    a_b: { kind: 'asked', what: 'deceleration' },
    D: { kind: 'constant', what: 'drag by the square of speed, LL-2' },
  });
  put(of, NOTES.grip.front, GRIP.front({ Λ, F_b, N: N_1 }, working, loadOrigin('N_1')));
  put(of, NOTES.grip.rear, GRIP.rear({ Λ, F_b, N: N_2 }, working, loadOrigin('N_2')));
  put(of, NOTES.bar, barFor({ w, Λ_i, ...gains }, working, { w: fromReading(system.bar.width) }));
  const i_p = numbers.of(system.pedal);
  const pedal = { i_p: fromReading(system.pedal) };
  const F_p = pedalOf({ F_b, i_p, f, ...gains }, working, pedal);
  put(of, NOTES.pedal, F_p);
  for (const end of ENDS) {
    const F_r = ROD[end]({ F_p, i_p, f }, working, pedal);
    const p = linePressure({ F_r, A_c: brakes[end].cylinder }, working);
    put(of, NOTES.pressure[end], p);
    const { friction, radius } = system[end];
    const T_b = brakeTorque(
      { μ: numbers.of(friction), p, A_p: brakes[end].pistons, r_b: numbers.of(radius) },
      working,
      { μ: fromReading(friction), r_b: fromReading(radius) },
    );
    put(of, NOTES.torque[end], T_b);
  }
}

const loadOrigin = (symbol: string) => ({ N: { kind: 'step', symbol } as const });

/** Load of an axle in equilibrium, written down under its name. [LL-9] */
function loadOf(standing: CarStanding, end: End, symbol: string, working?: Working): Newton {
  const value = standing.wheels[`${end}Left`].ground[2] + standing.wheels[`${end}Right`].ground[2];
  working?.add({
    kind: 'solved',
    symbol,
    means: `load of the ${end} axle`,
    method: 'equilibrium of the whole car',
    value,
    unit: 'N',
    source: 'LL-9',
    terms: [],
  });
  return value;
}

function putWear(system: BrakeSystem, end: End, numbers: Numbers, put: PutFloor, working?: Working): void {
  const { wear = [], leastPad, leastDisc } = system[end];
  for (const [what, least] of [
    ['pad', leastPad],
    ['disc', leastDisc],
  ] as const) {
    const points = wear.flatMap(({ laps, [what]: thickness }): WearPoint[] =>
      thickness === undefined ? [] : [{ laps, thickness }],
    );
    if (points.length < 2) continue;
    const { rate, left } = wornOf(points, least, numbers, working);
    put(end, note(`${what}Wear`, `${what}: wear of a lap`, 'q', 'm'), rate);
    if (least !== undefined) put(end, note(`${what}Laps`, `${what}: laps left`, 'n_l', '1'), left);
  }
}
