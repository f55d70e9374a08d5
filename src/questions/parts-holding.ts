/**
 * What a part must hold in its car with the other parts beside it.
 *
 * In    the parts as they were put, a set of each, which of them, what was asked more of the others
 * Out   what is asked of the finder of that part, and after each set of it what lacks
 *
 * A collector behind which another part begins stays where it is: else that part would hang in the air.
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import type { Amendments } from '../gaspath/holding/amend.ts';
import { amongOthers } from '../gaspath/parts/beside.ts';
import type { FixedCollector, RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { askedOfPipes, besidePart } from './part-in-car.ts';
import type { PartPut } from './parts-put.ts';
import { type Holdable, type Holds, heldByFile, primariesHolding } from './primaries-holding.ts';
import { partSets } from './primaries-parts.ts';
import type { ScanInCar } from './primaries-problem.ts';

/** What the parts must hold, and the scans in which it is looked at. */
export interface PartsHold {
  readonly scans: readonly ScanInCar[];
  /** Of a part, by the car that has it alone; what the file says, where it is left out. */
  readonly kinds?: (car: Car, side: BankName) => readonly Holdable[];
}

/** What a part must hold; secondaries and tail stand on no head, and nothing is held of them. */
export const heldOfPart = ({ part }: PartPut, { kinds = heldByFile }: PartsHold): readonly Holdable[] =>
  part.stage === 'primaries' ? kinds(part.car, part.side) : [];

/** Undefined where nothing is to be held of it. */
export function holdOfPart(
  parts: readonly PartPut[],
  solutions: readonly RouteSolution[],
  at: number,
  more: readonly (Amendments | undefined)[],
  hold: PartsHold,
): Holds | undefined {
  const of = parts[at]!;
  const kinds = heldOfPart(of, hold);
  if (kinds.length === 0) return undefined;
  const { car, side } = of.part;
  const sets = partSets(parts, solutions);
  const gas = parts.map((each) => each.gas);
  const { put } = sets[at]!;
  const among = amongOthers(gas, at, put.problem, (k) => solutions[k]);
  const rooms = more.flatMap((each, k) =>
    k === at ? [] : (each?.tools ?? []).flatMap(({ room }) => room.solids),
  );
  const carries = gas.some(({ from }) => from?.includes(at) === true);
  const problem: RouteProblem = { ...among, solids: [...among.solids, ...rooms] };
  return primariesHolding(car, side, hold.scans, put, kinds, {
    problem: carries ? { ...problem, collector: asItStands(problem, solutions[at]!) } : problem,
    ...besidePart(sets, at),
    asked: (hot) => askedOfPipes(hot, sets, at),
  });
}

function asItStands(
  { collector: { n, ringRadius, rows } }: RouteProblem,
  { collector: { origin, axis, ref } }: RouteSolution,
): FixedCollector {
  return { mode: 'fixed', origin, axis, ref, n, ringRadius, ...(rows === undefined ? {} : { rows }) };
}
