/**
 * A sheet looked over before it is kept: what cannot be used, what is doubted, each with the readings it is about.
 *
 * In    the car file as it stands, the sheet as it would go into it
 * Out   what would be said of it by the set-up, and nothing else; nothing is written
 */
import { edited } from '../car/edit.ts';
import { type CarSource, readCar } from '../car/read.ts';
import { foundFrom } from '../flatfloor/found.ts';
import { isFloorRefusal } from './floor-refusal.ts';
import { doubtsOf, sheetsRead } from './sheets-read.ts';

export interface SheetDoubt {
  readonly message: string;
  readonly remedy: string;
  /** Names of readings: `weight.frontLeft`. */
  readonly readings: readonly string[];
  /** An error must be mended before the sheet is used. */
  readonly weight: 'error' | 'warning';
}

/** @param sheet  the mapping that is to stand in the file; one of that name there is taken as this one */
export function sheetLooked(source: CarSource, name: string, sheet: unknown): readonly SheetDoubt[] {
  const at = `floor.read.${name}.`;
  // a reading's place in the file, as the name that the page knows it by
  const readingsAt = (paths: readonly string[]): string[] =>
    paths.flatMap((path) => (path.startsWith(at) ? [path.slice(at.length).replace(/^readings\./, '')] : []));
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
  const text = edited(source.text, [{ path: ['floor', 'read', name], value: sheet }]);
  const read = readCar({ ...source, text });
  if (!read.ok) return told(read.problems.map((each) => ({ ...each, paths: [each.path] })));
  try {
    const all = sheetsRead(read.car);
    if (!all.ok) return told(all.problems.map((each) => ({ ...each, paths: [each.path] })));
    return told(doubtsOf(all.is, foundFrom(all.is.floor, all.is.sheets, all.is.hidden)));
  } catch (reason) {
    // what the car cannot do is told where the set-up is asked for
    if (isFloorRefusal(reason)) return [];
    throw reason;
  }
}
