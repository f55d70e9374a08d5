/**
 * A proposal as a spec of a car file: what is written under its name, and the file as it would then be.
 *
 * In    the car that the proposal was made for, the part of the file that differs
 * Out   the value that stands under `specs`, or the source with it put in, which nobody has saved
 */
import { edited } from './edit.ts';
import type { Car, CarSource } from './read.ts';
import type { Plain } from './spec.ts';

export interface Proposal {
  readonly changes: Plain;
  readonly note: string;
}

/** The spec as the file has it: starting from the spec that the proposal was made for. */
export function specOf(car: Car, { changes, note }: Proposal): Plain {
  return { ...(car.spec === car.specs[0] ? {} : { from: car.spec }), note, changes };
}

/** The source as if the proposal had been kept under a name; the car is the source's own. */
export const withProposal = (source: CarSource, car: Car, name: string, proposal: Proposal): CarSource => ({
  ...source,
  text: edited(source.text, [{ path: ['specs', name], value: specOf(car, proposal) }]),
  spec: name,
});
