/**
 * What the shop makes of a set of primaries: pieces from the rack, bends, points for the jig, welds.
 *
 * In    the car, a bank of it, a set that stands
 * Out   cut list, bend table, jig points, cost; what the rack cannot give
 */
import type { BankName, ExhaustForm } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import {
  type BendRow,
  bendTable,
  type Cost,
  type CutList,
  costOf,
  cutList,
  type JigFrame,
  type JigPoint,
  jigFrame,
  jigPoints,
  type Pipe,
  type Rack,
} from '../gaspath/pipework/index.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Metre } from '../units/quantity.ts';
import type { PrimariesSet } from './primaries-set.ts';

export {
  BEND_COLUMNS,
  type Column,
  CUT_COLUMNS,
  type Cut,
  csvOf,
  JIG_COLUMNS,
  type Pipe,
  STOCK_COLUMNS,
  WELD_COLUMNS,
} from '../gaspath/pipework/index.ts';

export interface PrimariesShop {
  /** The car file tells what lies on the shelf; without it no piece has a stock that it comes from. */
  readonly racked: boolean;
  readonly cuts: CutList;
  readonly bends: readonly BendRow[];
  /** Straight behind the last bend of each tube of each pipe, in the order of the set. */
  readonly runOuts: readonly { readonly pipe: string; readonly od: Metre; readonly length: Metre }[];
  readonly jig: { readonly frame: JigFrame; readonly points: readonly JigPoint[] };
  readonly cost: Cost;
  /** What cannot be made so. */
  readonly problems: readonly string[];
  readonly notes: readonly string[];
}

const NO_RACK: Rack = { bends: [], tubes: [], kerf: 0, leastPiece: 0 };

export function primariesShop(car: Car, side: BankName, set: PrimariesSet): PrimariesShop {
  const exhaust = car.form.exhaust!;
  const pipes = set.pipes.map(({ pipe }) => pipe);
  const racked = exhaust.rack !== undefined;
  const slip = exhaust[side]?.collector?.joins === 'slip';
  const cuts = cutList(pipes, rackOf(exhaust, new Numbers(car.values)), set.target, {
    flange: 'welded',
    collector: slip ? 'slip' : 'welded',
  });
  const tables = pipes.map((pipe) => ({ pipe: pipe.name, ...bendTable(pipe) }));
  const frame = jigFrame(pipes);
  return {
    racked,
    cuts,
    bends: tables.flatMap(({ rows }) => rows),
    runOuts: tables.flatMap(({ pipe, runOuts }) => runOuts.map((each) => ({ pipe, ...each }))),
    jig: { frame, points: jigPoints(pipes, frame) },
    cost: costOf(cuts, 0, {}),
    // without a rack all is missing from it, and that is said once
    problems: racked ? cuts.problems.map(capital) : [],
    notes: [
      ...(exhaust[side]?.ports.length === 0
        ? ['What is called flange of a secondary is where it begins: the outlet of its collector.']
        : []),
      ...(racked
        ? []
        : [
            'The car file tells no rack: write stock bends and tube under exhaust, rack. Until then only angles and lengths are listed.',
          ]),
      ...(racked && !cuts.proved
        ? ['The search for the least stock was given up: a little less may do.']
        : []),
      ...stepNotes(cuts, pipes),
      'Angles are those of the finished pipe: a bender needs what its tube springs back added.',
      `Each pipe is cut to ${(1e3 * set.target).toFixed(1)} mm at its filler, last, when the other pieces are tacked and measured.`,
    ],
  };
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;

/** What is done at the steps of the tubes, in words. */
function stepNotes({ reducers }: CutList, pipes: readonly Pipe[]): string[] {
  const size = ({ od, wall }: Pipe['tube']): string =>
    `${(1e3 * od).toFixed(1)} × ${(1e3 * wall).toFixed(1)} mm`;
  const joins = (pipes[0]?.steps ?? []).map(({ join }) => join);
  const lap = joins.find(({ kind }) => kind === 'slipped over');
  const swage = joins.find(({ kind }) => kind === 'swaged');
  return [
    ...(lap === undefined
      ? []
      : [
          `Where a tube is slipped over the one before it, ${(1e3 * lap.length).toFixed(0)} mm of it lie over that one; they are in its length as cut. The feed of its first bend counts from its own end.`,
        ]),
    ...(swage === undefined
      ? []
      : [
          `A swaged end is ${(1e3 * swage.length).toFixed(0)} mm of the tube that is opened; opened, it becomes a little shorter: open it before it is cut to length.`,
        ]),
    ...reducers.map(
      ({ tube, to, length, count }) =>
        `Reducers to fetch: ${count} of ${size(tube)} to ${size(to)}, ${(1e3 * length).toFixed(1)} mm long. They have no price here.`,
    ),
  ];
}

function rackOf({ rack, tube }: ExhaustForm, numbers: Numbers): Rack {
  if (rack === undefined) return NO_RACK;
  const first = numbers.of(tube.outside);
  // in a shop that has told no sizes all on the rack is of the one tube
  const sized = (outside: Metre | undefined) => ({ od: outside ?? first });
  const priced = (price: number | undefined) => (price === undefined ? {} : { price });
  return {
    bends: rack.bends.map(({ name, radius, angle, outside, leg = 0, price }) => ({
      name,
      radius,
      angle,
      legs: [leg, leg],
      ...sized(outside),
      ...priced(price),
    })),
    tubes: rack.tubes.map(({ name, length, outside, price }) => ({
      name,
      length,
      ...sized(outside),
      ...priced(price),
    })),
    kerf: rack.kerf,
    leastPiece: rack.leastPiece,
  };
}
