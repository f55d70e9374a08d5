/** A bank's primaries as the command line is asked for them: the problem put from car and scans, a set read back. */
import { type Command, Option } from 'commander';
import type { BankName } from '../car/check-exhaust.ts';
import {
  type PrimariesSet,
  type ProblemPut,
  primariesBreaches,
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
import { scanBytes } from './scans.ts';
import type { Found } from './tell.ts';

export interface BankOptions extends CarOptions {
  readonly bank: BankName;
}

export interface SetOptions extends BankOptions {
  readonly solution: string;
}

/** With the scans as they lie in the car: the set is looked at among them again. */
export type Put = Extract<ProblemPut, { reached: true }> & { readonly scans: readonly ScanInCar[] };

export const onBank = (of: Command): Command =>
  of.addOption(new Option('--bank <side>', 'which bank').choices(['left', 'right']).makeOptionMandatory());

export const onSet = (of: Command): Command =>
  onBank(of).requiredOption('--solution <file>', 'set of primaries, as flatpatch primaries writes it');

/** @throws BadInput where the car file tells no such bank or a scan cannot be read; NotReached where it cannot be put */
export async function putBank({ car, place }: Found, { bank, files }: BankOptions): Promise<Put> {
  if (car.form.exhaust?.[bank] === undefined) {
    throw badAsk(
      'asked/bank',
      `The car file tells no ${bank} bank.`,
      'Write ports, tube, bends, collector and length under exhaust.',
    );
  }
  const scans: ScanInCar[] = [];
  for (const [name, form] of Object.entries(scanForms(car))) {
    const is = scanOf(car, name, await scanBytes({ ...(place && { place }) }, form.file, files));
    if (!is.reached) throw new BadInput(is.problems);
    for (const doubt of is.doubts) complain(`Mind: scan ${name}: ${doubt}`);
    scans.push(is);
  }
  const put = primariesProblem(car, bank, scans);
  if (!put.reached) throw new NotReached(put.message);
  return { ...put, scans };
}

/**
 * The set of a file, checked again against the car as its file tells it now.
 *
 * @throws BadInput where the file is no set; NotReached where the set does not stand any more
 */
export async function checkedSet(
  found: Found,
  options: SetOptions,
): Promise<{ readonly put: Put; readonly set: PrimariesSet; readonly solution: RouteSolution }> {
  const read = readPrimaries(await textOf(options.solution));
  if (!read.ok) throw badAsk('asked/solution', `${options.solution}: ${read.message}`);
  const put = await putBank(found, options);
  const breaches = primariesBreaches(put.problem, put.cylinders, read.solution);
  if (breaches.length > 0) {
    throw new NotReached(
      [
        `The set of ${options.solution} does not suit the ${options.bank} bank as the car file tells it now:`,
        ...breaches.map((each) => `- ${each}`),
      ].join('\n'),
    );
  }
  const { solution } = read;
  return { put, set: primariesSet(put.problem, put.cylinders, solution), solution };
}
