/** How well the car is known: how many readings, and how many whose spread is only what is usual. */
import type { Car } from '../car/read.ts';

export interface StateOfReadings {
  readonly total: number;
  /** With a spread stated in the file, or read with an instrument that the file describes. */
  readonly stated: number;
  /** Spread only by what is usual for such a reading. */
  readonly usual: number;
  /** Readings of the left that also stand for the right. */
  readonly mirrored: number;
}

export function stateOfReadings(car: Car): StateOfReadings {
  const usual = car.readings.filter((reading) => reading.spread.kind === 'usual').length;
  return {
    total: car.readings.length,
    stated: car.readings.length - usual,
    usual,
    mirrored: countMirrored(car.form),
  };
}

function countMirrored(node: unknown): number {
  if (typeof node !== 'object' || node === null) return 0;
  if ('index' in node && 'mirrored' in node) return node.mirrored === true ? 1 : 0;
  return Object.values(node).reduce<number>((sum, each) => sum + countMirrored(each), 0);
}
