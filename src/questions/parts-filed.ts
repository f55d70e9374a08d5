/**
 * A file of several parts put into the car as it is told now: each part checked by itself and against the others.
 *
 * In    a car, the parts of a file, the scans as they lie in the car
 * Out   a set of each part, with what is breached; or why they cannot be put
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { onImage, portMisfits } from './mirrored-bank.ts';
import type { FiledPart } from './parts-file.ts';
import { type PartPut, partsProblem } from './parts-put.ts';
import { type PartSet, partSets } from './primaries-parts.ts';
import type { ScanInCar } from './primaries-problem.ts';

export type PartsFiled =
  | { readonly reached: true; readonly parts: readonly PartFiled[]; readonly notes: readonly string[] }
  | { readonly reached: false; readonly message: string };

export interface PartFiled {
  readonly of: PartSet;
  /** What keeps it from being made: of the set itself, and of an image whose flanges miss the ports. */
  readonly breaches: readonly string[];
}

export function partsFiled(car: Car, filed: readonly FiledPart[], scans: readonly ScanInCar[]): PartsFiled {
  const sides = new Set<BankName>(filed.map((each) => each.bank));
  const [first] = sides;
  if (first === undefined) return { reached: false, message: 'The file has no parts.' };
  const put = partsProblem(car, sides.size === 2 ? 'both' : first, scans);
  if (!put.reached) return put;
  const found: { readonly of: PartPut; readonly set: FiledPart; readonly misfits: readonly string[] }[] = [];
  for (const of of put.parts) {
    const { side, name, title } = of.part;
    const set = filed.find((each) => each.bank === side && each.part === name);
    if (set === undefined) return { reached: false, message: `The file has no set of the ${title}.` };
    const misfits = set.mirrored && of.part.from === undefined ? portMisfits(of, set.solution) : [];
    found.push({ of: set.mirrored ? onImage(of, set.solution) : of, set, misfits });
  }
  const sets = partSets(
    found.map(({ of }) => of),
    found.map(({ set }) => set.solution),
  );
  return {
    reached: true,
    notes: put.notes,
    parts: sets.map((of, k) => ({ of, breaches: [...found[k]!.misfits, ...of.set.breaches] })),
  };
}
