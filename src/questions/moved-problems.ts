/**
 * Moves written in sheets that the car cannot have had: an adjuster that is none, a count past its thread, shims that
 * were not there.
 *
 * Each sheet's moves are held against the car as the sheets before it have left it.
 */
import type { CarForm } from '../car/read.ts';
import { type Adjuster, adjustersOf } from '../flatfloor/adjusters.ts';
import type { ChangeNames } from '../flatfloor/changes.ts';
import { movedInSheets } from '../flatfloor/sheet.ts';
import { SHIM_UNIT, stacksNow } from '../flatfloor/stacks.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import { spokenAmount } from '../units/show.ts';

/** @param names  of the changes of the prepared car */
export function movedProblems(car: CarForm, names: ChangeNames, numbers: Numbers): readonly Problem[] {
  const moves = movedInSheets(car);
  const sheets = Object.keys(car.floor?.read ?? {});
  if (moves.every((sheet) => Object.keys(sheet).length === 0)) return [];
  const past = sheets.flatMap((sheet, at) => {
    const before = adjustersOf(car, names, numbers, moves.slice(0, at));
    return Object.entries(moves[at]!).flatMap(([name, units]) => problemsOf(sheet, name, units, before));
  });
  const stacks = stacksNow(car, numbers, moves).impossible.map(
    ({ sheet, adjuster, asked, near }): Problem => {
      const name = sheets[sheet]!;
      const mm = (units: number): string => spokenAmount(units * SHIM_UNIT, 'm', 2);
      return {
        code: 'sheet/no-such-stack',
        path: `floor.read.${name}.moved.${adjuster}`,
        message: `${name}: ${adjuster} is moved by ${mm(asked)}, which the shims there and in the box cannot make; the nearest are ${near.map(mm).join(' and ')}.`,
        remedy:
          'Count again; or write under floor, shimBox what was in the box, and what was fitted at the corner.',
        weight: 'error',
      };
    },
  );
  return [...past, ...stacks];
}

function problemsOf(sheet: string, name: string, units: number, before: readonly Adjuster[]): Problem[] {
  const path = `floor.read.${sheet}.moved.${name}`;
  const names = before.map((each) => each.name);
  const adjuster = before.find((each) => each.name === name);
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
  // stacks are held against the pieces that there were
  if (adjuster.kind === 'camber shims' || adjuster.kind === 'caster shims') return [];
  const [least, most] = [adjuster.choices[0]!.units, adjuster.choices.at(-1)!.units];
  if (units >= least - 1e-9 && units <= most + 1e-9) return [];
  const over = units > most;
  return [
    {
      code: 'sheet/past-thread',
      path,
      message: `${sheet}: ${name} is moved by ${units} ${adjuster.unit}s; from where it stood it can go ${over ? `${most} up (${adjuster.stops.up})` : `${-least} down (${adjuster.stops.down})`}.`,
      remedy: 'Count again, and look at the thread before the car is moved.',
      weight: 'error',
    },
  ];
}
