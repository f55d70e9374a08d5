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
  type Rack,
} from '../gaspath/pipework/index.ts';
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
  /** Straight behind the last bend of each pipe, in the order of the set. */
  readonly runOuts: readonly { readonly pipe: string; readonly length: Metre }[];
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
  const cuts = cutList(pipes, rackOf(exhaust), set.target, {
    flange: 'welded',
    collector: slip ? 'slip' : 'welded',
  });
  const tables = pipes.map((pipe) => ({ pipe: pipe.name, ...bendTable(pipe) }));
  const frame = jigFrame(pipes);
  return {
    racked,
    cuts,
    bends: tables.flatMap(({ rows }) => rows),
    runOuts: tables.map(({ pipe, runOut }) => ({ pipe, length: runOut })),
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
      'Angles are those of the finished pipe: a bender needs what its tube springs back added.',
      `Each pipe is cut to ${(1e3 * set.target).toFixed(1)} mm at its filler, last, when the other pieces are tacked and measured.`,
    ],
  };
}

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;

function rackOf({ rack }: ExhaustForm): Rack {
  if (rack === undefined) return NO_RACK;
  const priced = (price: number | undefined) => (price === undefined ? {} : { price });
  return {
    bends: rack.bends.map(({ name, radius, angle, leg = 0, price }) => ({
      name,
      radius,
      angle,
      legs: [leg, leg],
      ...priced(price),
    })),
    tubes: rack.tubes.map(({ name, length, price }) => ({ name, length, ...priced(price) })),
    kerf: rack.kerf,
    leastPiece: rack.leastPiece,
  };
}
