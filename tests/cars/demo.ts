/** The demo cars as the tests open them: text, lists beside it, any spec, or the text changed on the way. */
import assert from 'node:assert/strict';
import { readdirSync, readFileSync } from 'node:fs';
import { type Car, type CarSource, readCar } from '../../src/car/read.ts';
import { problemText } from '../../src/measured/problem.ts';
import type { Wheel } from '../../src/questions/index.ts';

const CARS = new URL('../../cars/', import.meta.url);

export const DEMO_CARS: readonly string[] = readdirSync(CARS, { withFileTypes: true })
  .filter((each) => each.isDirectory())
  .map((each) => each.name);

export const WHEELS: readonly Wheel[] = (['front', 'rear'] as const).flatMap((end) =>
  (['left', 'right'] as const).map((side) => ({ end, side })),
);

export function demoSource(name: string, change: (text: string) => string = (text) => text): CarSource {
  const folder = new URL(`${name}/`, CARS);
  const lists = readdirSync(folder).filter((each) => each.endsWith('.csv'));
  return {
    text: change(readFileSync(new URL('car.yaml', folder), 'utf8')),
    file: 'car.yaml',
    files: Object.fromEntries(lists.map((each) => [each, readFileSync(new URL(each, folder), 'utf8')])),
  };
}

/** Opens it; a problem fails the test with its words. */
export function opened(source: CarSource, spec?: string): Car {
  const read = readCar({ ...source, ...(spec === undefined ? {} : { spec }) });
  assert.ok(read.ok, read.ok ? '' : read.problems.map(problemText).join('\n'));
  return read.car;
}

const held = new Map<string, Car>();

/** The car as it stands in the clone, opened once for each spec: what was read of it is never written to. */
export function demo(name: string, spec?: string): Car {
  const key = JSON.stringify([name, spec]);
  const car = held.get(key) ?? opened(demoSource(name), spec);
  held.set(key, car);
  return car;
}

/** Every demo car in every spec. */
export const everyDemo = (): readonly { readonly name: string; readonly car: Car }[] =>
  DEMO_CARS.flatMap((name) =>
    demo(name).specs.map((spec) => ({ name: `${name}, ${spec}`, car: demo(name, spec) })),
  );
