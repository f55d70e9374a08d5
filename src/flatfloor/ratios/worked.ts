/** How a change and a top speed came about: both forces where they meet, and what is left between them. */
import type { CarForm } from '../../car/read.ts';
import type { Numbers } from '../../loadpath/numbers.ts';
import type { MetrePerSecond, Newton, Ratio } from '../../units/quantity.ts';
import type { Origin, Working } from '../../working/working.ts';
import { type FloorNote, SAY_SPEED } from '../floor-figure.ts';
import { resistanceAt } from './driving.ts';
import { engineSpeedAt } from './speed.ts';
import { type Driving, thrustAt } from './thrust.ts';

export const CHANGE: FloorNote = {
  id: 'changeSpeed',
  means: 'the next gear pushes harder from',
  symbol: 'v_c',
  unit: 'm/s',
  spoken: SAY_SPEED,
};

export const TOP: FloorNote = {
  id: 'topSpeed',
  means: 'top speed, level and still',
  symbol: 'v_t',
  unit: 'm/s',
  spoken: SAY_SPEED,
};

/** Thrust with the torque written down as what the sheet's curve gives. */
export function thrustWorked(v: MetrePerSecond, i: Ratio, driving: Driving, working?: Working): Newton {
  const ω = engineSpeedAt(v, i, driving.rolling);
  working?.add({
    kind: 'solved',
    symbol: 'T',
    means: 'torque of the engine there',
    method: 'smooth curve through the brake sheet',
    value: driving.torque.value(ω),
    unit: 'N m',
    source: 'RA-6',
    terms: [],
  });
  return thrustAt(v, i, driving, working);
}

/** Both gears' thrust where they meet, then the speed with what is left between them. */
export function workChange(
  v: MetrePerSecond,
  i: Ratio,
  next: Ratio,
  driving: Driving,
  working: Working,
): void {
  const [own, taller] = [i, next].map((each) => thrustWorked(v, each, driving, working));
  const { symbol, means, unit } = CHANGE;
  working.add({
    kind: 'solved',
    symbol,
    means,
    method:
      'thrust of both gears along the speeds, from the limit down; halved until 1e-10 m/s, or the limit',
    value: v,
    unit,
    source: 'RA-8',
    terms: [
      { symbol: 'F', means: 'thrust of this gear there', value: own!, unit: 'N', from: STEP_F },
      { symbol: 'F', means: 'thrust of the next gear there', value: taller!, unit: 'N', from: STEP_F },
    ],
    residual: { value: own! - taller!, unit: 'N', of: 'thrust of this gear less that of the next' },
  });
}

const STEP_F: Origin = { kind: 'step', symbol: 'F' };

/** Thrust and resistance where they meet, then the speed with what is left between them. */
export function workTop(
  v: MetrePerSecond,
  i: Ratio,
  form: CarForm,
  driving: Driving,
  numbers: Numbers,
  working: Working,
): void {
  const F = thrustWorked(v, i, driving, working);
  const R = resistanceAt(v, form, numbers, working);
  const { symbol, means, unit } = TOP;
  working.add({
    kind: 'solved',
    symbol,
    means,
    method:
      'thrust against resistance in each gear, from its end down; halved until 1e-10 m/s, or the gear’s end; the highest',
    value: v,
    unit,
    source: 'RA-9',
    terms: [
      { symbol: 'F', means: 'thrust there', value: F, unit: 'N', from: STEP_F },
      { symbol: 'R', means: 'resistance there', value: R, unit: 'N', from: { kind: 'step', symbol: 'R' } },
    ],
    residual: { value: F - R, unit: 'N', of: 'thrust less resistance' },
  });
}
