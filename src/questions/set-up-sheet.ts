/**
 * The set-up sheet: what is wanted beside what was read as found, as set and after the run, and how the car stood there.
 *
 * In    a car; which of its sheets are meant
 * Out   plain data in SI for paper: readings by name, springs, bars and what the floor was; nothing is worked out but
 *       the sums of what was read
 */
import type { Car } from '../car/read.ts';
import { endOf, sideOf, WHEEL_NAMES, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { GAS_TYRE_CAUTION, JACKING_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { type FloorSheetRead, type FloorSheets, floorSheets } from './floor-sheets.ts';
import { readValues } from './read-values.ts';
import { sheetCautions, sheetNotes } from './sheet-notes.ts';

export const SHEET_STATES = ['as found', 'as set', 'after run'] as const;
export type SheetState = (typeof SHEET_STATES)[number];

export interface SetUpSheetAsked {
  /** Names of sheets of the file; each stands in the column of its state. Left out, the last that belong together. */
  readonly read?: readonly string[];
}

/** One column: a sheet that was read, or one that is still to be written by hand. */
export interface SetUpColumn {
  readonly state: SheetState;
  readonly read?: FloorSheetRead & {
    readonly aboard: FloorSheets['aboard'];
    /** Adjusters moved since the sheet before, in words of the file: name and units. */
    readonly moved: readonly { readonly adjuster: string; readonly units: number }[];
  };
  /** By the names of the readings: what was read, and its sums. SI. */
  readonly values: ReadonlyMap<string, number>;
}

/** What carries a wheel, as the file has it. */
export interface CornerFitted {
  readonly spring:
    | { readonly kind: 'coil'; readonly rate: number | undefined; readonly wire: number }
    | { readonly kind: 'bar'; readonly rate: number | undefined; readonly diameter: number }
    | undefined;
  /** Packers under the bump rubber. */
  readonly packers: number | undefined;
}

export interface AxleFitted {
  readonly bar:
    | { readonly kind: string; readonly diameter: number; readonly blades: readonly number[] }
    | undefined;
  readonly heaveGap: number | undefined;
}

export interface SetUpSheetReached {
  readonly reached: true;
  /** Name of the sheet that is wanted, as the file notes it. */
  readonly note: string | undefined;
  readonly sheets: FloorSheets;
  readonly columns: readonly SetUpColumn[];
  readonly corners: Wheels<CornerFitted>;
  readonly axles: Readonly<Record<'front' | 'rear', AxleFitted>>;
  /** Pads above the floor's plane, m, and the floor's slopes, rad; nothing where the file tells nothing of the floor. */
  readonly patch:
    | {
        readonly pads: Wheels<number>;
        readonly risesForward: number;
        readonly risesLeft: number;
      }
    | undefined;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type SetUpSheetAnswer = SetUpSheetReached | { readonly reached: false; readonly message: string };

export function setUpSheet(car: Car, asked: SetUpSheetAsked = {}): SetUpSheetAnswer {
  const { floor } = car.form;
  const numbers = new Numbers(car.values);
  const sheets = floorSheets(car);
  const unknown = (asked.read ?? []).find((name) => !sheets.read.some((each) => each.name === name));
  if (unknown !== undefined) {
    const names = sheets.read.map(({ name }) => `"${name}"`).join(', ');
    return {
      reached: false,
      message: `The file has no sheet "${unknown}" that was read; ${names === '' ? 'it has none' : `it has ${names}`}.`,
    };
  }
  const chosen =
    asked.read === undefined || asked.read.length === 0
      ? lastTogether(sheets.read)
      : sheets.read.filter(({ name }) => asked.read!.includes(name));
  const columns = SHEET_STATES.map((state): SetUpColumn => {
    const read = chosen.findLast((each) => each.state === state);
    if (read === undefined) return { state, values: new Map() };
    const form = floor!.read![read.name]!;
    return {
      state,
      read: {
        ...read,
        aboard: sheets.aboard.map(({ name, mass }) => ({
          name,
          mass: numbers.or(form.aboard?.[name], mass),
        })),
        moved: Object.entries(form.moved ?? {}).map(([adjuster, units]) => ({ adjuster, units })),
      },
      values: readValues(car, read),
    };
  });
  return {
    reached: true,
    note: floor?.sheet?.note,
    sheets,
    columns,
    corners: Object.fromEntries(
      WHEEL_NAMES.map((wheel) => [wheel, fittedAt(car, wheel, numbers)]),
    ) as unknown as Wheels<CornerFitted>,
    axles: { front: axleOf(car, 'front', numbers), rear: axleOf(car, 'rear', numbers) },
    patch:
      floor?.patch === undefined
        ? undefined
        : {
            pads: Object.fromEntries(
              WHEEL_NAMES.map((wheel) => [wheel, numbers.or(floor.patch?.pads?.[wheel], 0)]),
            ) as unknown as Wheels<number>,
            risesForward: numbers.or(floor.patch.risesForward, 0),
            risesLeft: numbers.or(floor.patch.risesLeft, 0),
          },
    notes: notesOf(sheets, columns),
    cautions: [...sheetCautions(lastOf(columns)), JACKING_CAUTION, GAS_TYRE_CAUTION, STANDING_CAUTION],
  };
}

/**
 * The last "as found" with what was set and run after it. A sheet as set before the car was found anew belongs to an
 * earlier day, and would stand beside readings that it did not make.
 */
function lastTogether(read: readonly FloorSheetRead[]): readonly FloorSheetRead[] {
  const from = read.findLastIndex(({ state }) => state === 'as found');
  const since = read.slice(Math.max(0, from));
  const set = since.findLastIndex(({ state }) => state === 'as set');
  // likewise a run before the last setting
  return since.filter(({ state }, k) => state !== 'after run' || k > set);
}

function fittedAt(car: Car, wheel: WheelName, numbers: Numbers): CornerFitted {
  const { coil, bar, bumpRubber } = car.form[endOf(wheel)][sideOf(wheel)];
  const rate = (of: { readonly rate?: Parameters<Numbers['of']>[0] | undefined }): number | undefined =>
    of.rate === undefined ? undefined : numbers.of(of.rate);
  return {
    spring:
      coil !== undefined
        ? { kind: 'coil', rate: rate(coil), wire: numbers.of(coil.wireDiameter) }
        : bar !== undefined
          ? { kind: 'bar', rate: rate(bar), diameter: numbers.of(bar.diameter) }
          : undefined,
    packers: bumpRubber?.packers === undefined ? undefined : numbers.of(bumpRubber.packers),
  };
}

function axleOf(car: Car, end: 'front' | 'rear', numbers: Numbers): AxleFitted {
  const { antiRollBar: bar, heave } = car.form[end];
  return {
    bar:
      bar === undefined
        ? undefined
        : {
            kind: bar.kind,
            diameter: numbers.of(bar.bar.diameter),
            blades: [bar.leftBlade, bar.rightBlade].flatMap((blade) =>
              blade === undefined ? [] : [numbers.of(blade.setting)],
            ),
          },
    heaveGap: heave === undefined ? undefined : numbers.of(heave.gap),
  };
}

const lastOf = (columns: readonly SetUpColumn[]): FloorSheetRead | undefined =>
  columns.findLast(({ read }) => read !== undefined)?.read;

function notesOf(sheets: FloorSheets, columns: readonly SetUpColumn[]): readonly string[] {
  const moved = columns.flatMap(({ state, read }) =>
    (read?.moved.length ?? 0) === 0
      ? []
      : [
          `Moved before "${state}": ${read!.moved.map(({ adjuster, units }) => `${adjuster} ${units > 0 ? '+' : '−'}${Math.abs(units)}`).join(', ')} (units of each adjuster; + longer, tighter, thicker, more).`,
        ],
  );
  return [
    ...(sheets.wanted.length === 0
      ? ['The file has no sheet of what is wanted (floor, sheet): the first column is left to the pen.']
      : []),
    ...columns.flatMap(({ read }) => (read === undefined ? [] : sheetNotes(read, sheets))),
    ...moved,
  ];
}
