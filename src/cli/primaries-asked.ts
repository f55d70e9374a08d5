/** A bank's primaries as the command line is asked for them: the problem put from car and scans, a set read back. */
import { type Command, Option } from 'commander';
import type { BankName } from '../car/check-exhaust.ts';
import {
  type Car,
  type CarPart,
  type FiledSet,
  type ProblemPut,
  primariesProblem,
  type ScanInCar,
  scanForms,
  scanOf,
  setFiled,
} from '../questions/index.ts';
import { textOf } from './car-argument.ts';
import { type CarOptions, complain } from './command.ts';
import { BadInput, badAsk, NotReached } from './outcome.ts';
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
export interface CheckedSet extends Omit<FiledSet, 'reached' | 'put'> {
  readonly put: Put;
}

/**
 * The set of a file, checked again against the car as its file tells it now, and where the file has several parts
 * against those.
 *
 * @throws BadInput where the file is no set; NotReached where the set does not stand any more
 */
export async function checkedSet(found: Found, options: SetOptions): Promise<CheckedSet> {
  const { car } = found;
  const { bank, part, solution: file } = options;
  askedBank(car, bank);
  const text = await textOf(file);
  const scans = await scansInCar(found, options);
  const is = setFiled(car, { side: bank, part, text }, scans);
  if (is.reached) return { ...is, put: { ...is.put, scans } };
  if (is.what === 'set') {
    throw new NotReached(
      [
        `The set of ${file} does not suit the ${is.title} as the car file tells it now:`,
        ...is.breaches.map((each) => `- ${each}`),
      ].join('\n'),
    );
  }
  if (is.what === 'part') {
    const names = is.names.map((each) => `--part ${each}`).join(', ');
    throw badAsk(
      'asked/part',
      `${file}: ${is.message}`,
      names === '' ? 'Leave --part out.' : `Say which: ${names}.`,
    );
  }
  if (is.what === 'problem') throw new NotReached(is.message);
  throw badAsk('asked/solution', `${file}: ${is.message}`);
}

/** The name of a part in an answer; none where the bank has no other. */
export const partOut = ({ name }: CarPart): { readonly part?: string } =>
  name === undefined ? {} : { part: name };
