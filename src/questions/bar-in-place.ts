/** The car with the best bar in the coil's place: the same car that a kept proposal gives, and nobody has saved. */
import { type Proposal, withProposal } from '../car/proposed-spec.ts';
import { type Car, type CarRead, type CarSource, readCar } from '../car/read.ts';
import type { BarProposal } from './bar-for-coil.ts';
import { cornerFigures } from './corner.ts';
import type { Figure } from './figure.ts';

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

/** What is asked first of a bar that is to be made. */
const OF_INTEREST = [
  'wheelRate',
  'rideFrequency',
  'barRate',
  'barTwist',
  'barStress',
  'barStressFullBump',
  'barYieldTwist',
  'barMass',
];

/**
 * Figures of the corner with the best bar in, each with its spread: the car is the proposal's, so what the scale,
 * the points and the modulus leave open is in them. The bar's own sizes have the spread usual for such readings.
 * Empty where the file with the proposal in it does not read.
 */
export function figuresWithBar(source: CarSource, car: Car, proposal: BarProposal): readonly Figure[] {
  const read = carWithBar(source, car, proposal);
  if (!read.ok) return [];
  const answer = cornerFigures(read.car, proposal.wheel, { travel: 0, rack: 0 }, { spread: true });
  return answer.reached ? answer.figures.filter(({ id }) => OF_INTEREST.includes(id)) : [];
}
