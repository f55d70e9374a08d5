/** A bank's primaries as the command line is asked for them: the problem put from car and scans, a set read back. */
import { type Command, Option } from 'commander';
import type { BankName } from '../car/check-exhaust.ts';
import {
  type Car,
  type CarPart,
  isPartsFile,
  type PrimariesInCar,
  type PrimariesSet,
  type ProblemPut,
  partsOf,
  primariesBreaches,
  primariesInCar,
  primariesProblem,
  primariesSet,
  type RouteSolution,
  readPrimaries,
  type ScanInCar,
  scanForms,
  scanOf,
} from '../questions/index.ts';
import { textOf } from './car-argument.ts';
import { type CarOptions, complain } from './command.ts';
import { BadInput, badAsk, NotReached } from './outcome.ts';
import { checkedPart } from './parts-asked.ts';
import { scanBytes } from './scans.ts';
import type { Found } from './tell.ts';

export interface BankOptions extends CarOptions {
  readonly bank: BankName;
}

export interface SetOptions extends BankOptions {
  readonly part?: string;
  readonly solution: string;
}

/** With the scans as they lie in the car: the set is looked at among them again. */
export type Put = Extract<ProblemPut, { reached: true }> & { readonly scans: readonly ScanInCar[] };

export const onBank = (of: Command): Command =>
  of.addOption(new Option('--bank <side>', 'which bank').choices(['left', 'right']).makeOptionMandatory());

export const onSet = (of: Command): Command =>
  onBank(of)
    .requiredOption('--solution <file>', 'set of primaries, as flatpatch primaries writes it')
    .option(
      '--part <name>',
      'which part of the bank, where it has several: the name of a collector, primaries, secondaries or tail',
    );

/** @throws BadInput where a scan cannot be read */
export async function scansInCar(
  { car, place }: Found,
  { files }: Pick<CarOptions, 'files'>,
): Promise<readonly ScanInCar[]> {
  const scans: ScanInCar[] = [];
  for (const [name, form] of Object.entries(scanForms(car))) {
    const is = scanOf(car, name, await scanBytes({ ...(place && { place }) }, form.file, files));
    if (!is.reached) throw new BadInput(is.problems);
    for (const doubt of is.doubts) complain(`Mind: scan ${name}: ${doubt}`);
    scans.push(is);
  }
  return scans;
}

/** @throws BadInput where the car file tells no such bank */
export function askedBank(car: Car, bank: BankName): void {
  if (car.form.exhaust?.[bank] !== undefined) return;
  throw badAsk(
    'asked/bank',
    `The car file tells no ${bank} bank.`,
    'Write ports, tube, bends, collector and length under exhaust.',
  );
}

/** @throws BadInput where the car file tells no such bank or a scan cannot be read; NotReached where it cannot be put */
export async function putBank(found: Found, options: BankOptions): Promise<Put> {
  const { bank } = options;
  askedBank(found.car, bank);
  const scans = await scansInCar(found, options);
  const put = primariesProblem(found.car, bank, scans);
  if (!put.reached) throw new NotReached(put.message);
  return { ...put, scans };
}

/** A set of a file that stands in its car. */
export interface CheckedSet {
  readonly put: Put;
  readonly set: PrimariesSet;
  readonly solution: RouteSolution;
  /** The car as whatever is asked of the set is asked of it. */
  readonly car: Car;
  readonly part: CarPart;
  /** Undefined of secondaries. */
  readonly inCar: () => PrimariesInCar | undefined;
}

/**
 * The set of a file, checked again against the car as its file tells it now, and where the file has several parts
 * against those.
 *
 * @throws BadInput where the file is no set; NotReached where the set does not stand any more
 */
export async function checkedSet(found: Found, options: SetOptions): Promise<CheckedSet> {
  const { car } = found;
  const { bank, solution: file } = options;
  askedBank(car, bank);
  const text = await textOf(file);
  const parts = partsOf(car, bank);
  if (isPartsFile(text)) return checkedPart(found, options, text, await scansInCar(found, options));
  if (parts.length > 1) {
    throw badAsk(
      'asked/solution',
      `${file}: the ${bank} bank has several parts, and this is a file of one set alone.`,
      'Name the file that flatpatch primaries wrote for all of them.',
    );
  }
  const read = readPrimaries(text);
  if (!read.ok) throw badAsk('asked/solution', `${file}: ${read.message}`);
  const put = await putBank(found, options);
  const breaches = primariesBreaches(put.problem, put.cylinders, read.solution);
  if (breaches.length > 0) throw doesNotSuit(file, `${bank} bank`, breaches);
  const { solution } = read;
  return {
    put,
    set: primariesSet(put.problem, put.cylinders, solution),
    solution,
    car,
    part: parts[0]!,
    inCar: () => primariesInCar(car, bank, put.scans, solution),
  };
}

export const doesNotSuit = (file: string, title: string, breaches: readonly string[]): NotReached =>
  new NotReached(
    [
      `The set of ${file} does not suit the ${title} as the car file tells it now:`,
      ...breaches.map((each) => `- ${each}`),
    ].join('\n'),
  );

/** The name of a part in an answer; none where the bank has no other. */
export const partOut = ({ name }: CarPart): { readonly part?: string } =>
  name === undefined ? {} : { part: name };
