/**
 * The adjustment card: the solved set-up as the work of two people at the car, in its order, with what holds first.
 *
 * In    a car, which adjusters may be moved
 * Out   moves with how each is carried out, what must be so before and after, what will be read, and what one unit of
 *       each adjuster does
 *
 * The order of the work is common practice, no source.
 */
import type { Car } from '../car/read.ts';
import { type Act, actOf } from '../flatfloor/act.ts';
import { adjustersOf } from '../flatfloor/adjusters.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import { movedInSheets } from '../flatfloor/sheet.ts';
import { eachWheel, endOf, sideOf, type Wheels } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type AdjustersReached, adjusterTable } from './adjusters.ts';
import { aboardHold, HOLDS } from './floor-holds.ts';
import { type FloorSheetRead, type FloorSheets, floorSheets } from './floor-sheets.ts';
import { readValues } from './read-values.ts';
import { type SetUpAsked, type SetUpMove, type SetUpReached, solveSetUp } from './set-up.ts';

export type { Act } from '../flatfloor/act.ts';
export { tubeWords } from '../flatfloor/way-round.ts';

export interface CardMove extends SetUpMove {
  /** How it is carried out; nothing where the file tells too little to draw it. */
  readonly act: Act | undefined;
  /** Whether a jam nut or lock ring is let go for it. */
  readonly locked: boolean;
}

export interface AdjustmentCardReached {
  readonly reached: true;
  readonly setUp: SetUpReached;
  readonly sheets: FloorSheets;
  /** The sheet that the moves begin from: the last that was read. */
  readonly from: FloorSheetRead;
  /** Its readings and their sums by name, SI. */
  readonly values: ReadonlyMap<string, number>;
  readonly moves: readonly CardMove[];
  /** Gauge pressure at which the moves were worked out, Pa; nothing where neither sheet nor file tells one. */
  readonly pressures: Wheels<number | undefined>;
  readonly before: readonly string[];
  readonly afterwards: readonly string[];
  readonly effects: AdjustersReached;
}

export type AdjustmentCardAnswer =
  | AdjustmentCardReached
  | { readonly reached: false; readonly message: string };

export function adjustmentCard(car: Car, asked: SetUpAsked = {}): AdjustmentCardAnswer {
  const setUp = solveSetUp(car, asked);
  if (!setUp.reached) {
    const why = (setUp.problems ?? []).map(({ message, remedy }) => ` ${message} ${remedy ?? ''}`.trimEnd());
    return { reached: false, message: `${setUp.message}${why.join('')}` };
  }
  const sheets = floorSheets(car);
  const from = sheets.read.at(-1)!;
  const effects = adjusterTable(car, { sheet: from.name });
  if (!effects.reached) return effects;
  const numbers = new Numbers(car.values);
  const moved = movedInSheets(car.form);
  const adjusters = adjustersOf(car.form, floorCarOf(car.form, numbers).changes, numbers, moved);
  const moves = setUp.moves.map((move): CardMove => {
    const adjuster = adjusters.find(({ name }) => name === move.adjuster)!;
    const before = moved.reduce((sum, sheet) => sum + (sheet[move.adjuster] ?? 0), 0);
    const act = actOf(car.form, adjuster, move.units, numbers, before);
    return { ...move, act, locked: isLocked(act) };
  });
  const pressures = eachWheel((wheel) => {
    const surveyed = car.form[endOf(wheel)][sideOf(wheel)].adjusters?.tyre?.pressure;
    return (
      from.readings.find(({ id }) => id === `pressure.${wheel}`)?.value ??
      (surveyed === undefined ? undefined : numbers.of(surveyed))
    );
  });
  const form = car.form.floor!.read![from.name]!;
  const aboard = sheets.aboard.map(({ name, mass }) => ({
    name,
    mass: numbers.or(form.aboard?.[name], mass),
  }));
  return {
    reached: true,
    setUp,
    sheets,
    from,
    values: readValues(car, from),
    moves,
    pressures,
    before: beforeOf(from, aboard),
    afterwards: afterwardsOf(moves, from),
    effects,
  };
}

const LOCKED: readonly (Act['by'] | undefined)[] = ['tube', 'end', 'platform', 'anchor'];

const isLocked = (act: Act | undefined): boolean => LOCKED.includes(act?.by);

function beforeOf(from: FloorSheetRead, aboard: FloorSheets['aboard']): readonly string[] {
  return [
    HOLDS.pads,
    'Pressures first, as below: the moves are worked out at them.',
    HOLDS.rack,
    from.bars === 'disconnected'
      ? HOLDS.bars
      : 'Anti-roll bars are on, as when the car was read, dampers at their softest.',
    aboardHold(aboard),
  ];
}

function afterwardsOf(moves: readonly CardMove[], from: FloorSheetRead): readonly string[] {
  const kinds = moves.map(({ kind }) => kind);
  return [
    HOLDS.locks,
    `Pressures once more. ${HOLDS.settled}`,
    'Read again in this order: heights, caster, camber, toe (rear first), weights. Write it below beside what was forecast, and keep it in the car file as a sheet "as set" with the units moved.',
    ...(kinds.includes('caster shims')
      ? ['Caster was moved: bump steer is read anew, springs out, before the car runs.']
      : []),
    `Droop is read. ${HOLDS.springs}`,
    ...(from.bars === 'disconnected' ? [HOLDS.links] : []),
    'Dampers back to their clicks, wings to their holes; the set-up sheet is signed.',
  ];
}
