/**
 * The four weights that adjusters can bring about: of four, three are fixed by the car itself.
 *
 * In    the weights wanted, the car as it stands
 * Out   the nearest weights that can be had, and in words what cannot
 *
 * Total and the two moments are mass and its place, which no rod changes; so weights move along one pattern, the
 * cross alone.  [FF-29]
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { spokenAmount } from '../units/show.ts';
import type { Wanted } from './sheet.ts';
import type { FloorStanding } from './stand.ts';

export interface ReachableWeights {
  readonly weights: ReadonlyMap<string, number>;
  readonly notes: readonly string[];
}

/** Signs of the cross: right front and left rear together. */
const CROSS = [-1, 1, 1, -1] as const;

/** @param rods  the rods' changes, in the order of the wheels */
export function reachableWeights(
  wanted: readonly Wanted[],
  now: FloorStanding,
  rods: readonly number[],
): ReachableWeights {
  const four = WHEEL_NAMES.map((wheel) => wanted.find(({ id }) => id === `weight.${wheel}`));
  if (four.some((each) => each === undefined)) return { weights: new Map(), notes: [] };
  const asked = four.map((each) => each!.value);
  const have = WHEEL_NAMES.map((wheel) => now.readings.get(`weight.${wheel}`)!.value);
  // how the weights move when one rod moves: the pattern of the cross, whatever the tracks are
  const pattern = patternOf(now, rods);
  const total = (of: readonly number[]): number => of.reduce((sum, each) => sum + each, 0);
  const cross = (of: readonly number[]): number => of[1]! + of[2]!;
  const share = cross(asked) / total(asked);
  const by = (share * total(have) - cross(have)) / (pattern[1]! + pattern[2]!);
  const reached = have.map((each, k) => each + by * pattern[k]!);
  const off = reached.map((each, k) => asked[k]! - each);
  if (off.every((each, k) => Math.abs(each) <= four[k]!.tolerance)) {
    return { weights: new Map(WHEEL_NAMES.map((wheel, k) => [`weight.${wheel}`, asked[k]!])), notes: [] };
  }
  const kg = (value: number): string => `${value > 0 ? '+' : ''}${spokenAmount(value, 'kg', 1)}`;
  const front = (of: readonly number[]): number => of[0]! + of[1]!;
  const left = (of: readonly number[]): number => of[0]! + of[2]!;
  return {
    weights: new Map(WHEEL_NAMES.map((wheel, k) => [`weight.${wheel}`, reached[k]!])),
    notes: [
      `The four weights wanted cannot all be had: adjusters move the cross alone. The whole (wanted ${kg(total(asked) - total(have))}), the front axle (${kg(front(asked) - front(have))}) and the left side (${kg(left(asked) - left(have))}) change with mass and its place only: driver, fuel, ballast. The sheet's cross of ${(100 * share).toFixed(2)} % is aimed at instead.`,
    ],
  };
}

/** Weight moved at each wheel by lengthening rods crosswise, of length one. */
function patternOf(now: FloorStanding, rods: readonly number[]): readonly number[] {
  const moved = WHEEL_NAMES.map((wheel) => {
    const { by } = now.readings.get(`weight.${wheel}`)!;
    return rods.reduce((sum, change, k) => sum + CROSS[k]! * by[change]!, 0);
  });
  const size = Math.hypot(...moved);
  return moved.map((each) => each / size);
}
