/** A car read beside the page, and its scans laid into it: what every worker of the gas path begins with. */
import { type Car, openCar, type ScanInCar, scanForms, scanOf } from '../../questions/index.ts';
import type { CarSource } from '../engine/answers.ts';
import type { ScanBytes } from './fetch-scans.ts';

export type Laid =
  | {
      readonly ok: true;
      readonly car: Car;
      readonly scans: readonly ScanInCar[];
      readonly doubts: readonly string[];
    }
  | { readonly ok: false; readonly messages: readonly string[] };

export function layScans(source: CarSource, bytes: ScanBytes): Laid {
  const read = openCar(source);
  if (!read.ok) return { ok: false, messages: read.problems.map(({ message }) => message) };
  const { car } = read;
  const scans: ScanInCar[] = [];
  const doubts: string[] = [];
  for (const name of Object.keys(scanForms(car))) {
    const is = scanOf(car, name, bytes[name]);
    if (!is.reached) {
      const messages = is.problems.map(({ message, remedy }) => `Scan ${name}: ${message} ${remedy ?? ''}`);
      return { ok: false, messages };
    }
    scans.push(is);
    doubts.push(...is.doubts.map((each) => `Scan ${name}: ${each}`));
  }
  return { ok: true, car, scans, doubts };
}
