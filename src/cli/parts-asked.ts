/** One part of a file of several, checked against the car and against the other parts of the file. */
import {
  type FiledPart,
  onImage,
  type PartPut,
  type PartSet,
  partInCar,
  partSets,
  partsProblem,
  portMisfits,
  readParts,
  type ScanInCar,
  sidesOf,
} from '../questions/index.ts';
import { badAsk, NotReached } from './outcome.ts';
import { type CheckedSet, doesNotSuit, type SetOptions } from './primaries-asked.ts';
import type { Found } from './tell.ts';

/** @throws BadInput where the file has no such part; NotReached where a set does not stand any more */
export function checkedPart(
  { car }: Found,
  { bank, part: name, solution: file }: SetOptions,
  text: string,
  scans: readonly ScanInCar[],
): CheckedSet {
  const read = readParts(text);
  if (!read.ok) throw badAsk('asked/solution', `${file}: ${read.message}`);
  const banks = sidesOf('both').filter((side) => read.parts.some((each) => each.bank === side));
  if (!banks.includes(bank)) throw badAsk('asked/solution', `${file} has no set of the ${bank} bank.`);
  const put = partsProblem(car, banks.length === 2 ? 'both' : bank, scans);
  if (!put.reached) throw new NotReached(put.message);
  const misfits: string[] = [];
  const filed = put.parts.map((of): { readonly of: PartPut; readonly set: FiledPart } => {
    const { side, name: called, title } = of.part;
    const set = read.parts.find((each) => each.bank === side && each.part === called);
    if (set === undefined) {
      throw doesNotSuit(file, title, ['The file has no set of it.']);
    }
    if (!set.mirrored) return { of, set };
    if (of.part.from === undefined && side === bank) misfits.push(...portMisfits(of, set.solution));
    return { of: onImage(of, set.solution), set };
  });
  const sets = partSets(
    filed.map(({ of }) => of),
    filed.map(({ set }) => set.solution),
  );
  const at = asked(sets, bank, name, file);
  const is = sets[at]!;
  const breaches = [...misfits, ...is.set.breaches];
  if (breaches.length > 0) throw doesNotSuit(file, is.part.title, breaches);
  return {
    put: { ...is.put, scans },
    set: is.set,
    solution: is.solution,
    car: is.part.car,
    part: is.part,
    inCar: () => partInCar(sets, at, scans),
  };
}

function asked(sets: readonly PartSet[], bank: string, name: string | undefined, file: string): number {
  const own = sets.flatMap(({ part }, k) => (part.side === bank ? [{ part, k }] : []));
  const is = name === undefined && own.length === 1 ? own[0] : own.find(({ part }) => part.name === name);
  if (is !== undefined && (name !== undefined || own.length === 1)) return is.k;
  const names = own.map(({ part }) => `--part ${part.name}`).join(', ');
  throw badAsk(
    'asked/part',
    own.length === 1
      ? `The ${bank} bank is one part: it has no "${name}".`
      : name === undefined
        ? `${file} has several parts of the ${bank} bank.`
        : `The ${bank} bank has no part "${name}".`,
    own.length === 1 ? 'Leave --part out.' : `Say which: ${names}.`,
  );
}
