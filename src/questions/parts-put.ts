/**
 * The parts of one bank or of both, each as a problem for the finder, with what the others are called to it.
 *
 * In    a car with an exhaust, one bank or both, the scans as they lie in the car
 * Out   the parts in the order of the banks; or why one cannot be put
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import { outletOf, type Part } from '../gaspath/parts/part.ts';
import type { Port, Pose, RouteProblem } from '../gaspath/route/problem.ts';
import { add, scale } from '../maths/vec3.ts';
import { collectorName, pipeName } from './part-words.ts';
import { type CarPart, partsOf } from './parts-of-car.ts';
import { type CarStands, type ProblemPut, primariesProblem, type ScanInCar } from './primaries-problem.ts';

export type Put = Extract<ProblemPut, { reached: true }>;

/** Where the ports of its secondaries are not known yet they stand where its collectors are asked for. */
export interface PartPut {
  readonly part: CarPart;
  readonly put: Put;
  /** As the finder knows it. */
  readonly gas: Part;
}

export type PartsPut =
  | { readonly reached: true; readonly parts: readonly PartPut[]; readonly notes: readonly string[] }
  | { readonly reached: false; readonly message: string };

export type Banks = BankName | 'both';

export const sidesOf = (banks: Banks): readonly BankName[] =>
  banks === 'both' ? ['left', 'right'] : [banks];

export function partsProblem(
  car: Car,
  banks: Banks,
  scans: readonly ScanInCar[],
  stands: CarStands = 'runs',
): PartsPut {
  const parts: PartPut[] = [];
  for (const side of sidesOf(banks)) {
    const first = parts.length;
    const own = partsOf(car, side);
    if (own.length === 0) {
      return { reached: false, message: `The car file tells no ${side} bank under exhaust.` };
    }
    for (const part of own) {
      const from = part.from?.map((k) => first + k);
      const outlets = from?.map((k) => askedOutlet(parts[k]!.put.problem));
      const put = primariesProblem(part.car, side, scans, stands, outlets);
      if (!put.reached) return put;
      parts.push({ part, put, gas: gasPart(part, put, from) });
    }
  }
  return { reached: true, parts, notes: [...new Set(parts.flatMap(({ put }) => put.notes))] };
}

/** The outlet as the collector is asked for: where it is free, in the middle of its room. */
function askedOutlet(problem: RouteProblem): Port {
  const { collector } = problem;
  const pose: Pose =
    collector.mode === 'fixed'
      ? collector
      : {
          origin: scale(add(collector.boxMin, collector.boxMax), 0.5),
          axis: collector.axis,
          ref: [0, 0, 0],
        };
  return outletOf(problem, { collector: pose, pipes: [] });
}

const gasPart = (part: CarPart, put: Put, from: readonly number[] | undefined): Part => ({
  name: part.title,
  collector: collectorName(part),
  problem: put.problem,
  pipes: put.cylinders.map((each) => pipeName(part, each)),
  ...(from === undefined ? {} : { from }),
});
