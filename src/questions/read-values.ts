/** What one sheet of the floor says: its readings and, where all that they need was read, their sums. */
import type { Car } from '../car/read.ts';
import { rakeOf, weightSums } from '../flatfloor/read-sums.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { FloorSheetRead } from './floor-sheets.ts';

/** By the names of the readings, SI. */
export function readValues(car: Car, { readings }: FloorSheetRead): ReadonlyMap<string, number> {
  const numbers = new Numbers(car.values);
  const values = new Map(readings.map(({ id, value }) => [id, value]));
  const pads = WHEEL_NAMES.map((wheel) => values.get(`weight.${wheel}`));
  if (pads.every((each) => each !== undefined)) {
    const [frontLeft, frontRight, rearLeft, rearRight] = pads as [number, number, number, number];
    const sums = weightSums({ frontLeft, frontRight, rearLeft, rearRight });
    for (const [name, value] of Object.entries(sums)) values.set(name, value);
  }
  const middle = numbers.point(car.form.rear.left.points.wheelCentre)[0] / 2;
  const points = Object.entries(car.form.floor?.heights ?? {}).map(([name, at]) => ({
    front: numbers.point(at)[0] > middle,
    height: values.get(`height.${name}`),
  }));
  // of some points alone it would be the rake of another car
  if (points.every(({ height }) => height !== undefined)) {
    const of = (front: boolean): number[] =>
      points.flatMap((each) => (each.front === front ? [each.height!] : []));
    const rake = rakeOf(of(true), of(false));
    if (rake !== undefined) values.set('rake', rake);
  }
  return values;
}
