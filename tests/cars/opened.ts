/** A demo car as its file stands, or as a test changes it, with its survey and its scans laid into it. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { type Car, openCar, type ScanInCar, scanForms, scanOf } from '../../src/questions/index.ts';

export interface OpenedCar {
  readonly car: Car;
  readonly scans: readonly ScanInCar[];
}

interface Change {
  readonly spec?: string | undefined;
  readonly change?: (text: string) => string;
}

export function opened(id: string, { spec, change = (text) => text }: Change = {}): OpenedCar {
  const folder = new URL(`../../cars/${id}/`, import.meta.url);
  const text = change(readFileSync(new URL('car.yaml', folder), 'utf8'));
  const surveys = id === 'ashgarth-501' ? ['arm-front.csv', 'arm-rear.csv'] : [];
  const files = Object.fromEntries(
    surveys.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
  );
  const read = openCar({ text, files, ...(spec === undefined ? {} : { spec }) });
  assert.ok(read.ok, JSON.stringify(read.ok ? '' : read.problems));
  const scans = Object.entries(scanForms(read.car)).map(([name, form]) => {
    const is = scanOf(read.car, name, readFileSync(new URL(form.file, folder)));
    assert.ok(is.reached);
    return is;
  });
  return { car: read.car, scans };
}
