/** Keeps a proposal as a spec in the car file that it was made for. */

import { type Proposal, specOf } from '../car/proposed-spec.ts';
import type { Car } from '../car/read.ts';
import { AS_FILED } from '../car/read.ts';
import { saveChanges } from '../workshop/save.ts';
import type { FoundCar } from './car-argument.ts';
import { complain } from './command.ts';
import { BadInput, badAsk } from './outcome.ts';

export interface Kept extends Proposal {
  readonly name: string;
}

/** @throws BadInput where there is no file to keep it in, the name is taken, or another hand changed the file */
export async function keepAsSpec(
  found: FoundCar & { readonly car: Car },
  { name, ...proposal }: Kept,
): Promise<void> {
  const { car, place } = found;
  if (place === undefined)
    throw badAsk('keep/no-file', 'A car from standard input has no file to keep a spec in.');
  if (name === AS_FILED || car.specs.includes(name)) {
    throw badAsk('keep/name-taken', `The car has a spec "${name}" already; choose another name.`);
  }
  const saved = await saveChanges({
    ...place,
    changes: [{ path: ['specs', name], value: specOf(car, proposal) }],
  });
  if (saved.kind === 'refused') throw new BadInput(saved.problems);
  if (saved.kind === 'changed meanwhile') {
    throw badAsk('keep/changed', `${found.file} was changed by another hand meanwhile; nothing was written.`);
  }
  complain(`${found.file}: kept as spec "${name}".`);
}
