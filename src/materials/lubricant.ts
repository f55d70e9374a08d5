/**
 * Friction of threads and nut faces by what is on them.
 *
 * In    a lubricant by a name of this table
 * Out   the band of the coefficient, thread and face apart where it is known apart
 * Not   the paste in the tin: bands of friction classes. A pair measured on the bench rules, and one build uses
 *       one lubricant
 *
 * [VDI2230]  VDI 2230 Part 1:2015, friction classes A to D and what belongs to them (from memory): A 0.04–0.10
 *            solid lubricants as dry films; B 0.08–0.16 greases, pastes, oils; C 0.14–0.24 as delivered, thin
 *            film; D 0.20–0.35 bare, rough
 */
import type { Ratio } from '../units/quantity.ts';
import { type Known, nearestNames } from './property.ts';

export interface FrictionBand {
  readonly low: Ratio;
  readonly middle: Ratio;
  readonly high: Ratio;
}

export interface Lubricant {
  readonly name: string;
  readonly thread: FrictionBand;
  readonly face: FrictionBand;
  readonly source: string;
  readonly known: Known;
}

const band = (low: number, middle: number, high: number): FrictionBand => ({ low, middle, high });

const alike = (name: string, of: FrictionBand, source: string): Lubricant => ({
  name,
  thread: of,
  face: of,
  source,
  known: 'from memory',
});

const B = 'VDI 2230 friction class B, part of its band';

export const LUBRICANTS: readonly Lubricant[] = [
  alike('molybdenum disulphide paste', band(0.08, 0.1, 0.12), B),
  alike('copper paste', band(0.09, 0.12, 0.15), B),
  alike('engine oil', band(0.1, 0.13, 0.16), B),
  alike('grease', band(0.09, 0.12, 0.16), B),
  alike('thread lock, wet', band(0.1, 0.14, 0.18), 'classes B and C of VDI 2230; common practice, no source'),
  alike('dry film lubricant', band(0.05, 0.08, 0.1), 'VDI 2230 friction class A'),
  alike('cadmium plated, dry', band(0.09, 0.13, 0.19), 'classes B and C of VDI 2230'),
  alike('as delivered, dry', band(0.14, 0.18, 0.24), 'VDI 2230 friction class C'),
];

export const lubricant = (name: string): Lubricant | undefined =>
  LUBRICANTS.find((each) => each.name === name.trim().toLowerCase());

export const lubricantsLike = (name: string): readonly string[] =>
  nearestNames(
    name,
    LUBRICANTS.map((each) => each.name),
  );
