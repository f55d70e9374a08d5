/**
 * Thrust at the ground in each gear, what resists, where to change, how fast at most.
 *
 * In    the brake sheet, ratios, rolling, air, mass
 * Out   forces at any speed; the speed at which two gears push alike; the top speed
 * Holds level road, still air, full throttle, tyres that grip; air as dense as where the drag was read, engine as
 *       strong as on its sheet
 *
 * RA-n are the equations of docs/theory/ratios.md.
 */
import type { SmoothCurve } from '../../maths/pchip.ts';
import type { MetrePerSecond, Newton, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { engineSpeedAt, type Rolling } from './speed.ts';

export interface Driving {
  readonly torque: SmoothCurve;
  readonly rolling: Rolling;
  readonly efficiency: Ratio;
  /** Most that the engine may turn, rad/s. */
  readonly limit: number;
  readonly resistance: (v: MetrePerSecond) => Newton;
}

const thrustOf = formula({
  symbol: 'F',
  means: 'thrust at the ground',
  is: 'T*i*η/(r_0*(1 + κ*v^2))',
  unit: 'N',
  terms: {
    T: { unit: 'N m', means: 'torque of the engine at that speed' },
    i: { unit: '1', means: 'turns of the crank for one of the wheel' },
    η: { unit: '1', means: 'part of the power that comes to the ground' },
    r_0: { unit: 'm', means: 'rolling radius at a walk' },
    κ: { unit: 's^2/m^2', means: 'growth of the tyre over speed squared' },
    v: { unit: 'm/s', means: 'road speed' },
  },
  source: 'RA-6',
});

/** Thrust in a gear at a speed; not a number beyond the brake sheet or the limit. [RA-6] */
export function thrustAt(v: MetrePerSecond, i: Ratio, on: Driving, working?: Working): Newton {
  const ω = engineSpeedAt(v, i, on.rolling);
  const { torque, limit, efficiency, rolling } = on;
  // the limit itself belongs to the gear, and is reached through two roundings
  if (ω < torque.first.x * (1 - 1e-9) || ω > Math.min(limit, torque.last.x) * (1 + 1e-9)) return Number.NaN;
  return thrustOf(
    { T: torque.value(ω), i, η: efficiency, r_0: rolling.radius, κ: rolling.growth, v },
    working,
  );
}

/** Road speeds between which a gear can be used by the brake sheet and the limit. */
export function reachOf(i: Ratio, { torque, limit, rolling }: Driving): readonly [number, number] {
  const at = (ω: number): number => {
    const c = (ω * rolling.radius * (1 - rolling.slip)) / i;
    return (2 * c) / (1 + Math.sqrt(1 - 4 * rolling.growth * c * c));
  };
  return [at(torque.first.x), at(Math.min(limit, torque.last.x))];
}

/** Speeds closer than this are one, m/s. */
const CLOSED = 1e-10;

/** Where f falls through nothing between two speeds of which the first is above and the second below. */
function falling(f: (v: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > CLOSED) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) break;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** Looks in so many steps: no brake sheet has more waves than that. */
const STEPS = 200;

/**
 * Speed at which to change up from one gear to the next: from there on the next pushes harder; the limit where it
 * never does. [RA-8]
 */
export function changeSpeed(lower: Ratio, upper: Ratio, on: Driving): MetrePerSecond {
  const [, end] = reachOf(lower, on);
  const [begin] = reachOf(upper, on);
  const over = (v: number): number => thrustAt(v, lower, on) - thrustAt(v, upper, on);
  // from the limit down: the last speed at which the lower gear still pushes harder
  if (!(over(end) < 0)) return end;
  const step = (end - Math.max(begin, 0)) / STEPS;
  for (let v = end - step; v > begin; v -= step) {
    if (over(v) > 0) return falling(over, v, v + step);
  }
  return Math.max(begin, 0);
}

export interface TopSpeed {
  readonly speed: MetrePerSecond;
  /** Which gear, counted from 0. */
  readonly gear: number;
  /** The engine would turn further, and may not. */
  readonly byLimit: boolean;
}

/** The highest speed that any gear holds. [RA-9] */
export function topSpeed(ratios: readonly Ratio[], on: Driving): TopSpeed {
  const each = ratios.map((i, gear): TopSpeed => {
    const [begin, end] = reachOf(i, on);
    const over = (v: number): number => thrustAt(v, i, on) - on.resistance(v);
    if (over(end) >= 0) return { speed: end, gear, byLimit: true };
    const step = (end - begin) / STEPS;
    for (let v = end - step; v > begin; v -= step) {
      if (over(v) > 0) return { speed: falling(over, v, v + step), gear, byLimit: false };
    }
    return { speed: Number.NaN, gear, byLimit: false };
  });
  const known = each.filter(({ speed }) => Number.isFinite(speed));
  return known.reduce((best, one) => (one.speed > best.speed ? one : best), known[0] ?? each.at(-1)!);
}
