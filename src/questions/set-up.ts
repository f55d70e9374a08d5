/** Set-up solved: from the sheets that were read to whole flats and real shims that reach the sheet wanted. */
import type { Car } from '../car/read.ts';
import { type AdjusterKind, adjustersOf } from '../flatfloor/adjusters.ts';
import { type Doubt, fittedSpread } from '../flatfloor/doubts.ts';
import { type Learnt, learntFrom } from '../flatfloor/learnt.ts';
import { nextReadings } from '../flatfloor/next-reading.ts';
import { readingWords } from '../flatfloor/reading-words.ts';
import { setUpOf } from '../flatfloor/set-up.ts';
import { movedInSheets } from '../flatfloor/sheet.ts';
import { stacksNow } from '../flatfloor/stacks.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import { PRESSURE_CAUTION, SET_UP_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';
import { isFloorRefusal } from './floor-refusal.ts';
import { floorSheets } from './floor-sheets.ts';
import { sheetCautions, sheetNotes } from './sheet-notes.ts';
import { fittedTo, unread } from './sheets-fitted.ts';
import { doubtsOf, sheetsRead } from './sheets-read.ts';

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
  /** Whether it is proved that no fewer moves would do; and that as few would not do with less work. */
  readonly proved: boolean;
  readonly leastWork: boolean;
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

/** What is known of there being a shorter way. */
export const provedWords = ({ proved, leastWork }: Pick<SetUpReached, 'proved' | 'leastWork'>): string =>
  leastWork
    ? 'With fewer moves the sheet is not reached, nor with as few and less work.'
    : proved
      ? 'With fewer moves the sheet is not reached.'
      : 'That fewer moves would not do is not proved.';

/** Where there are no moves: whether none is wanted, or none is left that would help. */
export const nothingWords = ({ outOfReach }: Pick<SetUpReached, 'outOfReach'>): string =>
  outOfReach.length === 0
    ? 'Nothing need be moved: all readings are within the sheet.'
    : 'Nothing that may be moved brings readings nearer to the sheet; what stands in the way is told below.';

const MOST_NEXT = 3;

export function solveSetUp(car: Car, asked: SetUpAsked = {}): SetUpAnswer {
  const { form } = car;
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
    const read = sheetsRead(car);
    if (!read.ok) {
      const { message, problems } = read;
      return { reached: false, message, ...(problems.length > 0 && { problems }) };
    }
    const { prepared, floor, numbers, wanted, sheets } = read.is;
    const found = fittedTo(read.is);
    if (typeof found === 'string') return refused(found);
    const kinds = asked.move ?? USUALLY_MOVED;
    const moves = movedInSheets(form);
    const all = adjustersOf(form, prepared.changes, numbers, moves);
    const names = all.map(({ name }) => name);
    const strange = asked.leave?.find((name) => !names.includes(name));
    if (strange !== undefined) {
      const near = nearest(strange, names);
      return refused(
        `The car has no adjuster "${strange}" that could be left as it is.${near === undefined ? '' : ` Did you mean "${near}"?`} It has: ${names.join(', ')}.`,
      );
    }
    const adjusters = all.filter(
      ({ kind, name }) => kinds.includes(kind) && !(asked.leave ?? []).includes(name),
    );
    const told = floorSheets(car);
    const { box } = stacksNow(form, numbers, moves);
    const is = setUpOf(floor, { found, wanted, adjusters, box });
    return {
      reached: true,
      sheets: sheets.map(({ name }) => name),
      doubts: doubtsOf(read.is, found),
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
      leastWork: is.leastWork,
      next: nextReadings(found, wanted, is.level)
        .slice(0, MOST_NEXT)
        .map((next) => ({ ...next, words: readingWords(next.id) })),
      learnt: learntFrom(prepared, found, sheets.length),
      notes: [
        ...told.read.flatMap((each) => sheetNotes(each, told)),
        ...notesOf(
          sheets.length,
          is.moves.map(({ adjuster }) => adjuster.kind),
          unread(sheets, wanted),
        ),
      ],
      cautions: [
        ...sheetCautions(told.read.at(-1)),
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
