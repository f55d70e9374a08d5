/** Set-up solved: from the sheets that were read to whole flats and real shims that reach the sheet wanted. */
import type { Car } from '../car/read.ts';
import { type AdjusterKind, adjustersOf } from '../flatfloor/adjusters.ts';
import { type Doubt, doubtsAtSight, doubtsOfFit, fittedSpread } from '../flatfloor/doubts.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import { type Found, foundFrom, type Hidden, hiddenOf } from '../flatfloor/found.ts';
import { type Learnt, learntFrom } from '../flatfloor/learnt.ts';
import { nextReadings } from '../flatfloor/next-reading.ts';
import { readingWords } from '../flatfloor/reading-words.ts';
import type { ReadingKind } from '../flatfloor/readings.ts';
import { setUpOf } from '../flatfloor/set-up.ts';
import {
  movedInSheets,
  type Sheet,
  sheetsOf,
  USUAL_TOLERANCE,
  type Wanted,
  wantedOf,
} from '../flatfloor/sheet.ts';
import { narrowTolerances, spreadsOfSheet, unevenFloor } from '../flatfloor/sheet-spreads.ts';
import { crossedByFit, lonelySigns } from '../flatfloor/slips.ts';
import { stacksNow } from '../flatfloor/stacks.ts';
import { Floor, type FloorStanding } from '../flatfloor/stand.ts';
import { absolutePressures, unitsSlipped } from '../flatfloor/units-slipped.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Problem } from '../measured/problem.ts';
import { spokenAmount } from '../units/show.ts';
import { PRESSURE_CAUTION, SET_UP_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';
import { isFloorRefusal, problemOfDoubt } from './floor-refusal.ts';
import { movedProblems } from './moved-problems.ts';

/** Kinds of adjuster that are moved unless something else is asked: pressures are set first, ballast changes mass. */
export const USUALLY_MOVED: readonly AdjusterKind[] = [
  'rod',
  'track rod',
  'platform',
  'anchor',
  'camber shims',
  'caster shims',
];

export interface SetUpAsked {
  /** Kinds that may be moved. */
  readonly move?: readonly AdjusterKind[];
  /** Adjusters that stay as they are, by name. */
  readonly leave?: readonly string[];
}

export interface SetUpMove {
  readonly adjuster: string;
  readonly kind: AdjusterKind;
  readonly units: number;
  readonly unit: string;
  readonly words: string;
}

export interface SetUpReading {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
  readonly wanted: number;
  readonly tolerance: number;
  readonly toleranceStated: boolean;
  /** On a level floor, before and after; and as the scales and gauges of this floor will show it. */
  readonly before: number;
  readonly after: number;
  readonly willRead: number;
  /** One standard uncertainty of what is forecast. */
  readonly u: number;
  readonly inTolerance: boolean;
}

export interface SetUpReached {
  readonly reached: true;
  readonly sheets: readonly string[];
  readonly doubts: readonly Doubt[];
  readonly moves: readonly SetUpMove[];
  readonly readings: readonly SetUpReading[];
  /** Every reading of the sheets as the fit has it; w is its residual over the residual's own spread. */
  readonly fits: readonly {
    readonly sheet: string;
    readonly id: string;
    readonly words: string;
    readonly unit: string;
    readonly value: number;
    readonly u: number;
    readonly fitted: number;
    readonly w: number;
  }[];
  /** All that can be read, as found and afterwards: on this floor before, on a level one and on this one after. */
  readonly standing: readonly {
    readonly id: string;
    readonly words: string;
    readonly unit: string;
    readonly found: number;
    readonly after: number;
    readonly onThisFloor: number;
    /** One standard uncertainty of the forecast. */
    readonly u: number;
  }[];
  readonly outOfReach: readonly string[];
  /** Whether it is proved that no fewer moves would do. */
  readonly proved: boolean;
  /** Readings to take next, the one that makes the answer surest first. */
  readonly next: readonly {
    readonly id: string;
    readonly words: string;
    readonly takes: number;
    readonly again: boolean;
  }[];
  readonly learnt: readonly Learnt[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type SetUpAnswer =
  | SetUpReached
  | { readonly reached: false; readonly message: string; readonly problems?: readonly Problem[] };

const MOST_NEXT = 3;

export function solveSetUp(car: Car, asked: SetUpAsked = {}): SetUpAnswer {
  const { form } = car;
  const numbers = new Numbers(car.values);
  const refused = (message: string): SetUpAnswer => ({ reached: false, message });
  if (form.floor?.sheet === undefined)
    return refused(
      'The file has no sheet of what is wanted: write it under floor, sheet, each reading with its tolerance behind ±.',
    );
  if (Object.keys(form.floor.read ?? {}).length === 0)
    return refused(
      'The file has no sheet that was read: write one under floor, read, with what pads and gauges showed.',
    );
  try {
    const prepared = floorCarOf(form, numbers);
    const wanted = wantedOf(form, numbers);
    const droops = JSON.stringify(form.floor).includes('"droop"');
    const floor = new Floor(prepared, droops);
    const surveyed = adjustersOf(form, prepared.changes, numbers);
    const problems = movedProblems(form, prepared.changes, numbers);
    if (problems.length > 0)
      return { reached: false, message: 'The sheets move adjusters as they cannot be moved.', problems };
    const sheets = sheetsOf(form, prepared, surveyed, numbers);
    const hidden = hiddenOf(prepared, sheets);
    if (sheets.every(({ readings }) => readings.length === 0))
      return refused(
        'No sheet holds a reading: write what pads and gauges showed under floor, read, readings.',
      );
    const standings = sheets.map((sheet) => floor.stand(sheet.state));
    const uneven = unevenFloor(form, numbers);
    const atSight = [
      ...narrowTolerances(form),
      ...absolutePressures(form, numbers),
      ...uneven,
      ...sheets.flatMap((sheet, k) => {
        const standing = standings[k]!;
        const seen = doubtsAtSight(prepared, sheet, standing, hidden);
        const signs = lonelySigns(sheet, standing, wanted);
        // one sign is asked about once
        const told = new Set(seen.filter(({ code }) => code === 'sheet/sign').flatMap(({ paths }) => paths));
        return [
          ...spreadsOfSheet(sheet),
          // on a floor far out of level weights lie far off for that reason
          ...(uneven.length === 0 ? unitsSlipped(sheet, standing) : []),
          ...seen,
          ...signs.filter(({ paths }) => !paths.every((path) => told.has(path))),
        ];
      }),
    ];
    const errors = atSight.filter(({ weight }) => weight === 'error');
    if (errors.length > 0) {
      return {
        reached: false,
        message: 'The sheets hold readings that cannot be used.',
        problems: errors.map(problemOfDoubt),
      };
    }
    const found = fittedTo(floor, sheets, hidden, standings);
    if (typeof found === 'string') return refused(found);
    const kinds = asked.move ?? USUALLY_MOVED;
    const moves = movedInSheets(form);
    const adjusters = adjustersOf(form, prepared.changes, numbers, moves).filter(
      ({ kind, name }) => kinds.includes(kind) && !(asked.leave ?? []).includes(name),
    );
    const { box } = stacksNow(form, numbers, moves);
    const is = setUpOf(floor, { found, wanted, adjusters, box });
    return {
      reached: true,
      sheets: sheets.map(({ name }) => name),
      doubts: [...atSight, ...crossedByFit(floor, sheets, found, hidden), ...doubtsOfFit(found)],
      moves: is.moves.map(({ adjuster, choice, words }) => ({
        adjuster: adjuster.name,
        kind: adjuster.kind,
        // tenths of shims add up to a hair beside the whole
        units: Math.round(choice.units * 1e6) / 1e6,
        unit: adjuster.unit,
        words,
      })),
      readings: is.outcomes.map((outcome) => ({
        id: outcome.wanted.id,
        words: readingWords(outcome.wanted.id),
        unit: outcome.unit,
        wanted: outcome.wanted.value,
        tolerance: outcome.wanted.tolerance,
        toleranceStated: outcome.wanted.stated,
        before: outcome.before,
        after: outcome.after,
        willRead: is.onThisFloor.readings.get(outcome.wanted.id)!.value,
        u: outcome.u,
        inTolerance: outcome.inTolerance,
      })),
      fits: found.residuals.map(({ sheet, reading, fitted, w }) => ({
        sheet,
        id: reading.id,
        words: readingWords(reading.id),
        unit: found.standing.readings.get(reading.id)!.unit,
        value: reading.value,
        u: reading.u,
        fitted,
        w,
      })),
      standing: [...found.standing.readings.values()].map(({ id, unit, value }) => ({
        id,
        words: readingWords(id),
        unit,
        found: value,
        after: is.level.readings.get(id)!.value,
        onThisFloor: is.onThisFloor.readings.get(id)!.value,
        u: fittedSpread(found, is.onThisFloor.readings.get(id)!.by),
      })),
      outOfReach: is.outOfReach,
      proved: is.proved,
      next: nextReadings(found, wanted, is.level)
        .slice(0, MOST_NEXT)
        .map((next) => ({ ...next, words: readingWords(next.id) })),
      learnt: learntFrom(prepared, found, sheets.length),
      notes: notesOf(
        sheets.length,
        is.moves.map(({ adjuster }) => adjuster.kind),
        unread(sheets, wanted),
      ),
      cautions: [
        SET_UP_CAUTION,
        ...(is.moves.some(({ adjuster }) => adjuster.kind === 'pressure') ? [PRESSURE_CAUTION] : []),
        ...(is.moves.some(({ adjuster }) => adjuster.kind === 'anchor' || adjuster.kind === 'splines')
          ? [WOUND_BAR_CAUTION]
          : []),
        STANDING_CAUTION,
      ],
    };
  } catch (reason) {
    if (isFloorRefusal(reason)) return refused(reason.message);
    throw reason;
  }
}

/** The fit of the sheets; or, where no car can stand so, the reading that is furthest from the survey in words. */
function fittedTo(
  floor: Floor,
  sheets: readonly Sheet[],
  hidden: readonly Hidden[],
  standings: readonly FloorStanding[],
): Found | string {
  try {
    return foundFrom(floor, sheets, hidden);
  } catch (reason) {
    if (!isFloorRefusal(reason)) throw reason;
    const off = sheets.flatMap((sheet, k) =>
      sheet.readings.flatMap((reading) => {
        const expected = standings[k]!.readings.get(reading.id);
        const tolerance = USUAL_TOLERANCE[reading.id.split('.')[0] as ReadingKind];
        if (expected === undefined || tolerance === undefined) return [];
        return [{ sheet, reading, expected, by: Math.abs(reading.value - expected.value) / tolerance }];
      }),
    );
    const worst = off.reduce<(typeof off)[number] | undefined>(
      (most, each) => (most !== undefined && most.by >= each.by ? most : each),
      undefined,
    );
    if (worst === undefined) return reason.message;
    const { sheet, reading, expected } = worst;
    return `No car stands as these sheets have it. Furthest from the survey is ${sheet.name}, ${readingWords(reading.id)}: ${spokenAmount(reading.value, expected.unit, 1)} read, ${spokenAmount(expected.value, expected.unit, 1)} as surveyed. Look at its unit and its decimal point, and read it again.`;
  }
}

const PADS = WHEEL_NAMES.map((wheel) => `weight.${wheel}`);

/** What is wanted and stands in no sheet, nor follows from what does. */
function unread(sheets: readonly Sheet[], wanted: readonly Wanted[]): readonly string[] {
  const read = new Set(sheets.flatMap(({ readings }) => readings.map(({ id }) => id)));
  const heights = [...read].filter((id) => id.startsWith('height.')).length;
  return wanted
    .map(({ id }) => id)
    .filter((id) => {
      if (read.has(id) || id === 'wheelbase' || id.startsWith('ride.')) return false;
      if (['cross', 'frontShare', 'leftShare', 'total'].includes(id))
        return !PADS.every((pad) => read.has(pad));
      if (id === 'rake' || id.startsWith('height.')) return heights < 3;
      if (id.startsWith('toe.')) return !read.has(id.replace('toe.', 'toeAtRim.'));
      if (id.startsWith('toeAtRim.')) return !read.has(id.replace('toeAtRim.', 'toe.'));
      return true;
    });
}

function notesOf(
  sheets: number,
  kinds: readonly AdjusterKind[],
  notRead: readonly string[],
): readonly string[] {
  return [
    ...(notRead.length === 0
      ? []
      : [
          `In no sheet: ${notRead.map(readingWords).join('; ')}. What is told of ${notRead.length === 1 ? 'it' : 'them'} is the survey’s, as far as the others move it: read ${notRead.length === 1 ? 'it' : 'them'} before the spanner.`,
        ]),
    'Pressures first, rack centred, bars off. Do all of the moves, then roll the car, let it settle and read again.',
    ...(kinds.includes('camber shims') || kinds.includes('caster shims')
      ? ['Shims move toe: it is counted in, so do not set toe between.']
      : []),
    ...(sheets < 2
      ? [
          'One sheet cannot tell how stiff tyres and springs really are. Read again after the moves: two sheets with known moves between them can.',
        ]
      : []),
  ];
}
