/** What a set must hold in the car, as it is typed; left out, what the car file says. */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { HOLDABLE, type Holdable, heldByFile, holdableOf } from '../questions/index.ts';
import { badAsk } from './outcome.ts';

export const HOLD_HELP =
  'what a set must hold in the car, of hot, tools, slip, removal, with commas; or all, or none (what the car file says)';

/** @throws BadInput where it is none of them, or the car file does not tell enough to hold it */
export function askedHold(text: string | undefined, car: Car, bank: BankName): readonly Holdable[] {
  if (text === undefined) return heldByFile(car, bank);
  if (text === 'none') return [];
  const given = text.split(',').map((each) => each.trim());
  const all = given.length === 1 && given[0] === 'all';
  const wrong = all ? undefined : given.find((each) => !HOLDABLE.some((kind) => kind === each));
  if (wrong !== undefined) {
    throw badAsk(
      'asked/hold',
      `--hold "${wrong}" is nothing that a set can hold; write of ${HOLDABLE.join(', ')}, or all, or none.`,
    );
  }
  const can = holdableOf(car, bank);
  const cannot = all ? undefined : HOLDABLE.find((each) => given.includes(each) && !can.includes(each));
  if (cannot !== undefined) {
    throw badAsk(
      'asked/hold-untold',
      `Of the ${bank} bank the car file does not tell enough to hold ${cannot}.`,
      cannot === 'slip'
        ? 'Write joins: slip and engaged under its collector.'
        : 'Write stud under exhaust, flange.',
    );
  }
  return can.filter((each) => all || given.includes(each));
}
