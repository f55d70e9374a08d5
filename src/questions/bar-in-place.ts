/** The car with the best bar in the coil's place: the same car that a kept proposal gives, and nobody has saved. */
import { type Proposal, withProposal } from '../car/proposed-spec.ts';
import { type Car, type CarRead, type CarSource, readCar } from '../car/read.ts';
import type { BarProposal } from './bar-for-coil.ts';

/** The proposal as a spec could be kept of it. */
export const asSpec = ({ wheel, change }: BarProposal): Proposal => ({
  changes: change,
  note: `torsion bar for the coil, ${wheel.end} ${wheel.side}`,
});

/** Read from a file that has the proposal as a spec of this name, or of one like it where the name is taken. */
export function carWithBar(
  source: CarSource,
  car: Car,
  proposal: BarProposal,
  wanted = 'bar for the coil, not kept',
): CarRead {
  let name = wanted;
  for (let k = 2; car.specs.includes(name); k += 1) name = `${wanted} ${k}`;
  return readCar(withProposal(source, car, name, asSpec(proposal)));
}
