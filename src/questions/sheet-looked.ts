/**
 * A sheet looked over before it is kept: what cannot be used, what is doubted, each with the readings it is about.
 *
 * In    the car file as it stands, the changes that would put the sheet into it
 * Out   what would be said of it by the set-up, and nothing else; nothing is written
 */
import { type Change, edited } from '../car/edit.ts';
import { type CarSource, readCar } from '../car/read.ts';
import { isFloorRefusal } from './floor-refusal.ts';
import { fittedTo } from './sheets-fitted.ts';
import { doubtsOf, sheetsRead } from './sheets-read.ts';

export interface SheetDoubt {
  readonly message: string;
  readonly remedy: string;
  /** Names of readings: `weight.frontLeft`. */
  readonly readings: readonly string[];
  /** An error must be mended before the sheet is used. */
  readonly weight: 'error' | 'warning';
}

/** @param name  of the sheet; what is said of other sheets is left out */
export function sheetLooked(
  source: CarSource,
  name: string,
  changes: readonly Change[],
): readonly SheetDoubt[] {
  const at = `floor.read.${name}.`;
  // a reading's place in the file, as the name that the page knows it by
  const readingsAt = (paths: readonly string[]): string[] =>
    paths.flatMap((path) =>
      path.startsWith(at)
        ? [
            path
              .slice(at.length)
              .replace(/^readings\./, '')
              .replace(/\.is$/, ''),
          ]
        : [],
    );
  const told = (
    all: readonly {
      readonly message: string;
      readonly remedy?: string | undefined;
      readonly paths: readonly string[];
      readonly weight: 'error' | 'warning';
    }[],
  ): readonly SheetDoubt[] =>
    all
      .filter(({ paths }) => paths.some((path) => path.startsWith(at)))
      .map(({ message, remedy, paths, weight }) => ({
        message,
        remedy: remedy ?? '',
        readings: readingsAt(paths),
        weight,
      }));
  const read = readCar({ ...source, text: edited(source.text, changes) });
  if (!read.ok) return told(read.problems.map((each) => ({ ...each, paths: [each.path] })));
  try {
    const all = sheetsRead(read.car);
    if (!all.ok) return told(all.problems.map((each) => ({ ...each, paths: [each.path] })));
    const found = fittedTo(all.is);
    if (typeof found === 'string')
      return [{ message: found, remedy: '', readings: [], weight: 'error' }, ...told(all.is.atSight)];
    return told(doubtsOf(all.is, found));
  } catch (reason) {
    // what the car cannot do is told where the set-up is asked for
    if (isFloorRefusal(reason)) return [];
    throw reason;
  }
}
