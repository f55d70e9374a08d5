/**
 * A set of a file in its car: read, put into the car as it is told now, and checked again, where the file has several
 * parts against those as well.
 *
 * In    a car, the bank, the part of it that is meant where it has several, the text of the file, the scans
 * Out   the set with all that is asked of it; or why there is none
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import type { LookedAt } from './looked-at.ts';
import { partHot, partInCar } from './part-in-car.ts';
import { type FiledPart, isPartsFile, readParts } from './parts-file.ts';
import { partsFiled } from './parts-filed.ts';
import { type CarPart, partsOf } from './parts-of-car.ts';
import { readPrimaries } from './primaries-file.ts';
import type { Holdable } from './primaries-holding.ts';
import { type PrimariesInCar, primariesInCar } from './primaries-in-car.ts';
import { type ProblemPut, primariesProblem, type ScanInCar } from './primaries-problem.ts';
import { type PrimariesSet, primariesBreaches, primariesSet } from './primaries-set.ts';

export interface FiledSet {
  readonly reached: true;
  readonly put: Extract<ProblemPut, { reached: true }>;
  readonly set: PrimariesSet;
  readonly solution: RouteSolution;
  /** The car as whatever is asked of the set is asked of it. */
  readonly car: Car;
  readonly part: CarPart;
  /**
   * The set in its car; undefined where the problem of its car at work cannot be put.
   *
   * @param kinds  what the finder was asked to hold of it, where that is not what the file asks; of a bank that is one part
   */
  readonly looked: (kinds?: readonly Holdable[]) => LookedAt | undefined;
}

/** What is amiss: the file, the part that was named, the problem as the car file tells it, or the set in it. */
export type NoFiledSet =
  | {
      readonly reached: false;
      readonly what: 'file' | 'problem';
      readonly message: string;
    }
  | {
      readonly reached: false;
      readonly what: 'part';
      readonly message: string;
      /** What the parts of the bank are called; none where it is one part. */
      readonly names: readonly string[];
    }
  | {
      readonly reached: false;
      readonly what: 'set';
      /** Of the part that does not stand any more. */
      readonly title: string;
      readonly breaches: readonly string[];
    };

export interface SetOfFile {
  readonly side: BankName;
  readonly part?: string | undefined;
  readonly text: string;
}

const no = (what: 'file' | 'problem', message: string): NoFiledSet => ({ reached: false, what, message });

export function setFiled(car: Car, of: SetOfFile, scans: readonly ScanInCar[]): FiledSet | NoFiledSet {
  const { side, text } = of;
  if (isPartsFile(text)) return amongParts(car, of, scans);
  const [part, ...more] = partsOf(car, side);
  if (more.length > 0) {
    return no('file', `The ${side} bank has several parts, and this is a file of one set alone.`);
  }
  const read = readPrimaries(text);
  if (!read.ok) return no('file', read.message);
  const put = primariesProblem(car, side, scans);
  if (!put.reached) return no('problem', put.message);
  const { solution } = read;
  const breaches = primariesBreaches(put.problem, put.cylinders, solution);
  if (breaches.length > 0) return { reached: false, what: 'set', title: `${side} bank`, breaches };
  return {
    reached: true,
    put,
    set: primariesSet(put.problem, put.cylinders, solution),
    solution,
    car,
    part: part!,
    looked: (kinds) => lookedIn(primariesInCar(car, side, scans, solution, kinds)),
  };
}

const lookedIn = (inCar: PrimariesInCar | undefined): LookedAt | undefined =>
  inCar === undefined ? undefined : { inCar };

function amongParts(
  car: Car,
  { side, part: name, text }: SetOfFile,
  scans: readonly ScanInCar[],
): FiledSet | NoFiledSet {
  const read = readParts(text);
  if (!read.ok) return no('file', read.message);
  const own = read.parts.filter((each) => each.bank === side);
  if (own.length === 0) return no('file', `The file has no set of the ${side} bank.`);
  const is = name === undefined && own.length === 1 ? own[0] : own.find(({ part }) => part === name);
  if (is === undefined) return noPart(side, name, own);
  const filed = partsFiled(car, read.parts, scans);
  if (!filed.reached) return no('problem', filed.message);
  const sets = filed.parts.map((each) => each.of);
  const at = sets.findIndex(({ part }) => part.side === side && part.name === is.part);
  const { of, breaches } = filed.parts[at]!;
  if (breaches.length > 0) return { reached: false, what: 'set', title: of.part.title, breaches };
  return {
    reached: true,
    put: of.put,
    set: of.set,
    solution: of.solution,
    car: of.part.car,
    part: of.part,
    looked: (kinds) => {
      const { stage } = of.part;
      if (stage === 'primaries') return lookedIn(partInCar(sets, at, scans, kinds));
      const hot = partHot(sets, at);
      return hot === undefined ? undefined : { stage, hot };
    },
  };
}

function noPart(side: BankName, name: string | undefined, own: readonly FiledPart[]): NoFiledSet {
  const message =
    own.length === 1
      ? `The ${side} bank is one part: it has no "${name}".`
      : name === undefined
        ? `The file has several parts of the ${side} bank.`
        : `The ${side} bank has no part "${name}".`;
  const names = own.length === 1 ? [] : own.map(({ part }) => part!);
  return { reached: false, what: 'part', message, names };
}
