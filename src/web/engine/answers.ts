/**
 * A car as the page holds it: opened by the worker, so that a long survey keeps nobody's hand waiting.
 *
 * What crosses from the worker is plain data. The spreads, and the survey that makes them, stay with the worker:
 * figures on the page's own thread are without ±.
 */
import type { Problem } from '../../measured/problem.ts';
import { type Car, type CarSource, openCar } from '../../questions/index.ts';

export type { Problem } from '../../measured/problem.ts';
export type { Car, CarSource } from '../../questions/index.ts';

export type Opened =
  | { readonly ok: true; readonly car: Car; readonly surveyed: boolean }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** The last few cars read, by their source: two specs side by side, and the one before. */
const lately: { readonly source: CarSource; readonly read: ReturnType<typeof openCar> }[] = [];
const MOST = 4;

export function readOnce(source: CarSource): ReturnType<typeof openCar> {
  const known = lately.find((each) => sameSource(each.source, source));
  if (known !== undefined) return known.read;
  const read = openCar(source);
  lately.unshift({ source, read });
  lately.length = Math.min(lately.length, MOST);
  return read;
}

export const sameSource = (a: CarSource, b: CarSource): boolean =>
  a.text === b.text && a.spec === b.spec && JSON.stringify(a.files ?? {}) === JSON.stringify(b.files ?? {});

/** What is handed to the page of a car that was read. */
export function plainCar(read: ReturnType<typeof openCar>): Opened {
  if (!read.ok) return read;
  const { survey, inputs: _, ...car } = read.car;
  return { ok: true, car: { ...car, inputs: [] }, surveyed: survey !== undefined };
}
