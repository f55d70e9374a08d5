/**
 * Set-up solved: which adjusters to move, by how many whole units, so that the car reads as its sheet wants it.
 *
 * In    the car as it was found, the sheet wanted, the adjusters with what thread, stops and stock leave
 * Out   moves, the readings afterwards with their spread, what stays out of reach and why
 *
 * The readings are taken as straight in the moves; the moves found are then put in and the car is stood anew, and
 * where it does not read as the straight line had it, the slopes are taken there and the moves found once more.
 * Wanted is a car on a level floor with pads of one height, whatever the floor is that it was read on.
 * [FF-28 to FF-31]
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { fewestMoves, type Place as MovePlace } from '../maths/fewest-moves.ts';
import { leastCost } from '../maths/range-program.ts';
import type { Adjuster, AdjusterKind, Choice } from './adjusters.ts';
import { fittedSpread } from './doubts.ts';
import type { Found } from './found.ts';
import type { FloorState } from './look.ts';
import { reachableWeights } from './reachable.ts';
import { readingWords } from './reading-words.ts';
import type { Wanted } from './sheet.ts';
import { boxHolds, type Shims, type StackChange } from './shims.ts';
import type { Floor, FloorStanding, Reading } from './stand.ts';

export interface Move {
  readonly adjuster: Adjuster;
  readonly choice: Choice;
  readonly words: string;
}

export interface Outcome {
  readonly wanted: Wanted;
  /** What the solver aimed at: the wanted value, or the nearest to it that adjusters can reach. */
  readonly aim: number;
  readonly unit: string;
  readonly before: number;
  readonly after: number;
  /** Standard uncertainty of what will be read, from the readings taken and what is hidden. */
  readonly u: number;
  readonly inTolerance: boolean;
}

export interface SetUp {
  readonly moves: readonly Move[];
  readonly outcomes: readonly Outcome[];
  /** The car afterwards, on a level floor; and as it will be read on the floor that it stands on. */
  readonly level: FloorStanding;
  readonly onThisFloor: FloorStanding;
  /** Whether it is proved that no fewer moves would do; and that as few would not do with less work. */
  readonly proved: boolean;
  readonly leastWork: boolean;
  /** What cannot be reached, and why. */
  readonly outOfReach: readonly string[];
  /** How often the slopes were taken anew. */
  readonly rounds: number;
}

/** Work that one unit of each kind is counted for, where two ways move as many adjusters. */
const WORK: Readonly<Record<AdjusterKind, number>> = {
  rod: 1,
  'track rod': 1,
  platform: 1,
  anchor: 1,
  splines: 12,
  'camber shims': 4,
  'caster shims': 4,
  'drop link': 1,
  pressure: 1,
  ballast: 2,
};

/** The order in which a car is set: shims before toe, rear toe first, heights and weights last. */
const ORDER: readonly AdjusterKind[] = [
  'pressure',
  'ballast',
  'caster shims',
  'camber shims',
  'track rod',
  'splines',
  'anchor',
  'platform',
  'rod',
  'drop link',
];

const MOST_ROUNDS = 4;

/** Part of each tolerance that the moves are sought within: the rest is for the bend of the readings over a move. */
const WITHIN = 0.95;

export interface SetUpAsked {
  readonly found: Found;
  readonly wanted: readonly Wanted[];
  /** Those that may be moved. */
  readonly adjusters: readonly Adjuster[];
  readonly box: readonly Shims[];
}

/** @throws NotSettled, LinkOpen */
export function setUpOf(floor: Floor, asked: SetUpAsked): SetUp {
  const { found, adjusters } = asked;
  const base = levelled(floor, found.standing.state);
  const before = floor.stand(base, found.standing.place);
  const { aims, notes } = aimsOf(floor, asked, before);
  const wanted = asked.wanted.filter(({ id }) => before.readings.has(id));
  let standing = before;
  let chosen: readonly Choice[] = adjusters.map(nothingOf);
  const places = adjusters.map(({ choices, kind }) =>
    choices.map((choice) => ({ x: choice.units, effort: WORK[kind] * choice.effort, choice })),
  );
  let proved = true;
  let leastWork = true;
  let rounds = 0;
  for (; rounds < MOST_ROUNDS; rounds += 1) {
    const problem = straightProblem(wanted, aims, adjusters, chosen, standing);
    const moves = fewestMoves({
      ...problem,
      places,
      // those of the round before do nearly always, and a bound from the first saves the most
      start: places.map((each, k) => each.find(({ choice }) => choice === chosen[k])!),
      together: (places) => boxHolds(asked.box, stacksOf(places)),
    });
    const next = moves.chosen.map((place) => (place as MovePlace & { readonly choice: Choice }).choice);
    proved = moves.proved;
    leastWork = moves.leastEffort;
    const same = next.every((choice, k) => choice === chosen[k]);
    chosen = next;
    if (same) break;
    standing = floor.stand(withMoves(base, adjusters, chosen), standing.place);
    if (wanted.every((each) => ratioOf(each, aims, standing) <= 1)) {
      rounds += 1;
      break;
    }
  }
  const moves = adjusters
    .flatMap((adjuster, k): Move[] =>
      chosen[k]!.units === 0
        ? []
        : [{ adjuster, choice: chosen[k]!, words: adjuster.words(tidy(chosen[k]!.units)) }],
    )
    .sort((a, b) => ORDER.indexOf(a.adjuster.kind) - ORDER.indexOf(b.adjuster.kind) || rearFirst(a, b));
  const outcomes = wanted.map((each): Outcome => {
    const now = standing.readings.get(each.id)!;
    const aim = aims.get(each.id)!;
    return {
      wanted: each,
      aim,
      unit: now.unit,
      before: before.readings.get(each.id)!.value,
      after: now.value,
      u: fittedSpread(found, now.by),
      inTolerance: Math.abs(now.value - each.value) <= each.tolerance * (1 + 1e-6),
    };
  });
  return {
    moves,
    outcomes,
    level: standing,
    onThisFloor: floor.stand(withMoves(found.standing.state, adjusters, chosen), standing.place),
    proved,
    leastWork,
    outOfReach: [...notes, ...blocked({ wanted, aims, adjusters, chosen, standing, proved })],
    rounds,
  };
}

const nothingOf = ({ choices }: Adjuster): Choice => choices.find(({ units }) => units === 0)!;

const tidy = (units: number): number => Math.round(units * 1e6) / 1e6;

const rearFirst = (a: Move, b: Move): number => {
  const rear = ({ adjuster }: Move): number => (adjuster.at.startsWith('rear') ? 0 : 1);
  return rear(a) - rear(b);
};

const stacksOf = (places: readonly MovePlace[]): readonly StackChange[] =>
  places.flatMap((place) => {
    const { stack } = (place as MovePlace & { readonly choice: Choice }).choice;
    return stack === undefined ? [] : [stack];
  });

/** The same car on a level floor with pads of one height. */
function levelled(floor: Floor, state: FloorState): FloorState {
  const { changes: names } = floor.car;
  const changes = Float64Array.from(state.changes);
  for (const wheel of WHEEL_NAMES) changes[names.wheel[wheel].pad] = 0;
  changes[names.car.risesForward] = 0;
  changes[names.car.risesLeft] = 0;
  return { ...state, changes };
}

export function withMoves(
  state: FloorState,
  adjusters: readonly Adjuster[],
  chosen: readonly Choice[],
): FloorState {
  const changes = Float64Array.from(state.changes);
  adjusters.forEach(({ change }, k) => {
    changes[change] = changes[change]! + chosen[k]!.change;
  });
  return { ...state, changes };
}

/** What to aim at: as wanted, but weights as far as adjusters can bring them without ballast.  [FF-29] */
function aimsOf(floor: Floor, { wanted, adjusters }: SetUpAsked, before: FloorStanding) {
  const aims = new Map(wanted.map(({ id, value }) => [id, value]));
  if (adjusters.some(({ kind }) => kind === 'ballast')) return { aims, notes: [] };
  const { weights, notes } = reachableWeights(
    wanted,
    before,
    WHEEL_NAMES.map((wheel) => floor.car.changes.wheel[wheel].rod),
  );
  for (const [id, value] of weights) aims.set(id, value);
  return { aims, notes };
}

const ratioOf = (
  { id, tolerance }: Wanted,
  aims: ReadonlyMap<string, number>,
  standing: FloorStanding,
): number => Math.abs(standing.readings.get(id)!.value - aims.get(id)!) / tolerance;

/** Rows in tolerances, straight about where the chosen moves have brought the car.  [FF-30] */
function straightProblem(
  wanted: readonly Wanted[],
  aims: ReadonlyMap<string, number>,
  adjusters: readonly Adjuster[],
  chosen: readonly Choice[],
  standing: FloorStanding,
): { readonly a: readonly Float64Array[]; readonly d: Float64Array } {
  const a = wanted.map(({ id, tolerance }) => {
    const { by } = standing.readings.get(id) as Reading;
    return Float64Array.from(adjusters, ({ change, step }) => (by[change]! * step) / (WITHIN * tolerance));
  });
  const d = Float64Array.from(wanted, ({ id, tolerance }, i) => {
    const off = (standing.readings.get(id)!.value - aims.get(id)!) / (WITHIN * tolerance);
    return chosen.reduce((sum, { units }, j) => sum - a[i]![j]! * units, off);
  });
  return { a, d };
}

/** Why readings stay out of tolerance: stops, whole units, or what adjusters cannot do.  [FF-31] */
function blocked(at: {
  readonly wanted: readonly Wanted[];
  readonly aims: ReadonlyMap<string, number>;
  readonly adjusters: readonly Adjuster[];
  readonly chosen: readonly Choice[];
  readonly standing: FloorStanding;
  readonly proved: boolean;
}): readonly string[] {
  const { wanted, aims, adjusters, chosen, standing, proved } = at;
  const out = wanted.filter((each) => ratioOf(each, aims, standing) > 1 + 1e-6);
  if (out.length === 0) return [];
  const { a, d } = straightProblem(wanted, aims, adjusters, chosen, standing);
  const ranges = {
    low: Float64Array.from(adjusters, ({ choices }) => choices[0]!.units),
    high: Float64Array.from(adjusters, ({ choices }) => choices.at(-1)!.units),
    cost: Float64Array.from(adjusters, () => 1),
  };
  const names = out.map(({ id }) => id);
  if (leastCost({ a, d, ...ranges }, 1) !== undefined)
    return [
      proved
        ? `${listed(names)}: whole units do not come nearer; half a unit between would.`
        : `${listed(names)}: no whole units were found that come nearer, though not all were tried; half a unit between would.`,
    ];
  const endless = adjusters.map(() => 1e4);
  const free = leastCost(
    { a, d, low: Float64Array.from(endless, (x) => -x), high: Float64Array.from(endless), cost: ranges.cost },
    1,
  );
  if (free === undefined)
    return [
      `${listed(names)}: no position of these adjusters brings ${names.length === 1 ? 'it' : 'them'} within the sheet together with the rest.`,
    ];
  const ends = adjusters.flatMap(({ name, stops }, j) =>
    free.x[j]! > ranges.high[j]! + 1e-6
      ? [`${name} (${stops.up})`]
      : free.x[j]! < ranges.low[j]! - 1e-6
        ? [`${name} (${stops.down})`]
        : [],
  );
  return [`${listed(names)}: stopped by ${ends.join(', ')}.`];
}

const listed = (ids: readonly string[]): string => ids.map(readingWords).join('; ');
