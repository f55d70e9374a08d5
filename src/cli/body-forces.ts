/** The forces on a body of the car, gear case or tub, as a table and as JSON. */
import type { BodyForcesAnswer, BodyForcesReached } from '../questions/index.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { table } from './print.ts';

/** Newtons, or newton metres, that are nothing but rounding. */
const NOTHING = 1e-3;

/** @param words  what the forces act on, and what the moment of all of them is about */
export function forceTable(
  of: BodyForcesReached,
  words: { readonly on: string; readonly about: string },
  speech: Speech,
): string[] {
  const newtons = (value: number): string =>
    spokenAmount(Math.abs(value) < NOTHING ? 0 : value, 'N', 0, speech);
  const couple = (value: number): string =>
    Math.abs(value) < NOTHING ? '' : spokenAmount(value, 'N m', 1, speech);
  const { force, moment } = of.resultant;
  return table([
    [`On ${words.on}`, 'forward', 'to the left', 'up', 'together', 'couple'],
    ...of.forces.map((each) => [
      each.name,
      ...each.force.map(newtons),
      newtons(each.size),
      couple(each.moment),
    ]),
    ['All of them', ...force.map(newtons), newtons(Math.hypot(...force)), ''],
    [words.about, ...moment.map(couple), '', ''],
  ]);
}

export function forcesOut(of: BodyForcesAnswer) {
  if (!of.reached) return { reached: false as const, message: of.message };
  const { forces, resultant, residual, notes, cautions } = of;
  return {
    reached: true as const,
    forces: forces.map((each) => ({ ...each })),
    resultant,
    residual,
    notes: [...notes],
    cautions: [...cautions],
  };
}
