/** Moves written in sheets that the car cannot have had: an adjuster that is none, a count past its thread. */
import type { CarForm } from '../car/read.ts';
import type { Adjuster } from '../flatfloor/adjusters.ts';
import { nearest, type Problem } from '../measured/problem.ts';

/** @param adjusters  as surveyed */
export function movedProblems(car: CarForm, adjusters: readonly Adjuster[]): readonly Problem[] {
  const sum = new Map<string, number>();
  const names = adjusters.map(({ name }) => name);
  return Object.entries(car.floor?.read ?? {}).flatMap(([sheet, { moved }]) =>
    Object.entries(moved ?? {}).flatMap(([name, units]): Problem[] => {
      const path = `floor.read.${sheet}.moved.${name}`;
      const adjuster = adjusters.find((each) => each.name === name);
      if (adjuster === undefined) {
        const near = nearest(name, names);
        return [
          {
            code: 'sheet/no-adjuster',
            path,
            message: `${sheet}: "${name}" was moved, but the car has no such adjuster.`,
            remedy: `It has: ${names.join(', ')}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
            weight: 'error',
          },
        ];
      }
      const whole = (sum.get(name) ?? 0) + units;
      sum.set(name, whole);
      const [least, most] = [adjuster.choices[0]!.units, adjuster.choices.at(-1)!.units];
      if (whole >= least - 1e-9 && whole <= most + 1e-9) return [];
      const over = whole > most;
      return [
        {
          code: 'sheet/past-thread',
          path,
          message: `${sheet}: ${name} is moved to ${whole} ${adjuster.unit}s from where it was surveyed; it can go ${over ? `${most} up (${adjuster.stops.up})` : `${-least} down (${adjuster.stops.down})`}.`,
          remedy: 'Count again, and look at the thread before the car is moved.',
          weight: 'error',
        },
      ];
    }),
  );
}
