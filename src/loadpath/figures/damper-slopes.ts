/** Slopes of the measured damper curves below and above their knee, and what they make at the wheels of an axle. */
import type { AxleSide, AxleState } from '../axle-of-car.ts';
import { damper, knee } from '../damper.ts';
import type { Numbers } from '../numbers.ts';

export interface DamperSlopes {
  readonly low: number;
  readonly high: number;
}

const mean = (a: number, b: number): number => (a + b) / 2;

/** Mean of bump and rebound; undefined where no curve was measured. N s/m at the damper. */
export const damperSlopes = (side: AxleSide, numbers: Numbers): DamperSlopes | undefined =>
  numbers.part(`damper slopes of ${side.of.form.scale.path}`, () => slopesOf(side, numbers));

function slopesOf(side: AxleSide, numbers: Numbers): DamperSlopes | undefined {
  const curve = side.of.form.damper?.curve;
  if (curve === undefined) return undefined;
  const points = (force: 'bump' | 'rebound') =>
    curve
      .map((row) => ({ velocity: numbers.of(row.velocity), force: numbers.of(row[force]) }))
      .filter((point) => point.velocity > 0);
  const [bump, rebound] = [points('bump'), points('rebound')];
  if (bump.length === 0) return undefined;
  const knees = [knee(bump), knee(rebound)];
  if (knees[0] !== undefined && knees[1] !== undefined) {
    return {
      low: (knees[0].lowSpeed + knees[1].lowSpeed) / 2,
      high: (knees[0].highSpeed + knees[1].highSpeed) / 2,
    };
  }
  // too few points for a knee: the line from the origin to the first of them, and the slope between the last two
  const law = damper({ bump, rebound });
  const first = mean(law.secant(bump[0]!.velocity), law.secant(-rebound[0]!.velocity));
  const last = (points: typeof bump): number => {
    const [from, to] = points.slice(-2);
    return to === undefined ? first : (to.force - from!.force) / (to.velocity - from!.velocity);
  };
  return { low: first, high: mean(last(bump), last(rebound)) };
}

/** Damping of an axle in heave, N s/m: Σ c r². Undefined where a curve or a unit is missing on a side. */
export function axleDamping({ left, right }: AxleState, numbers: Numbers): DamperSlopes | undefined {
  const [l, r] = [damperSlopes(left, numbers), damperSlopes(right, numbers)];
  if (l === undefined || r === undefined) return undefined;
  const at = (speed: keyof DamperSlopes): number =>
    l[speed] * left.now.ratios.unit ** 2 + r[speed] * right.now.ratios.unit ** 2;
  return { low: at('low'), high: at('high') };
}
