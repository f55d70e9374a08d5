/**
 * A car as the page holds it: opened by the worker, so that a long survey keeps nobody's hand waiting.
 *
 * What crosses from the worker is plain data. The spreads, and the survey that makes them, stay with the worker:
 * figures on the page's own thread are without ±.
 */
import type { Problem } from '../../measured/problem.ts';
import type { Car, openCar } from '../../questions/index.ts';

export type { Problem } from '../../measured/problem.ts';
export type { Car, CarSource } from '../../questions/index.ts';

export type Opened =
  | { readonly ok: true; readonly car: Car; readonly surveyed: boolean }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What is handed to the page of a car that was read. */
export function plainCar(read: ReturnType<typeof openCar>): Opened {
  if (!read.ok) return read;
  const { survey, inputs: _, ...car } = read.car;
  return { ok: true, car: { ...car, inputs: [] }, surveyed: survey !== undefined };
}
