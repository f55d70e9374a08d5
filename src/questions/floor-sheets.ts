/**
 * The sheets of the flat floor as the car file has them: what is wanted, and what was read, in plain data.
 *
 * In    a car
 * Out   readings by name in SI, with their spread or tolerance; nothing is worked out
 */
import type { Car } from '../car/read.ts';
import { readingsIn, wantedOf } from '../flatfloor/sheet.ts';
import { endOf, sideOf, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { HoldName } from './floor-holds.ts';

type SheetForm = NonNullable<NonNullable<Car['form']['floor']>['read']>[string];

/** An instrument that readings of a sheet were read with. */
export interface SheetInstrument {
  readonly name: string;
  readonly mark?: string | undefined;
  /** Kinds of reading that it read: `weight`, `camber`. */
  readonly kinds: readonly string[];
  readonly due?: string | undefined;
  /** Its check had run out on the day of the sheet. */
  readonly outOfDate: boolean;
}

export type DamperClicks = NonNullable<NonNullable<SheetForm['clicks']>[WheelName]>;

/** What a sheet tells beside its readings; amounts in SI. */
export interface BesideReadings {
  readonly notSo: readonly HoldName[];
  readonly place?: string | undefined;
  readonly airTemperature?: number | undefined;
  readonly floorTemperature?: number | undefined;
  readonly tyres?: string | undefined;
  readonly clicks?: SheetForm['clicks'];
  readonly wings: Readonly<Record<string, number>>;
  readonly instruments: readonly SheetInstrument[];
}

export interface FloorSheetRead extends BesideReadings {
  readonly name: string;
  readonly state: 'as found' | 'as set' | 'after run';
  readonly on?: string | undefined;
  readonly by?: string | undefined;
  readonly note?: string | undefined;
  readonly bars: 'connected' | 'disconnected';
  readonly readings: readonly { readonly id: string; readonly value: number; readonly u: number }[];
}

export interface FloorSheets {
  /** As the sheet wants it; none where the file has no sheet. */
  readonly wanted: readonly {
    readonly id: string;
    readonly value: number;
    readonly tolerance: number;
    readonly stated: boolean;
  }[];
  readonly read: readonly FloorSheetRead[];
  /** Names of the measuring points for heights, and their places in the car, metres. */
  readonly heights: readonly string[];
  readonly heightsAt: Readonly<Record<string, readonly [number, number, number]>>;
  readonly aboard: readonly { readonly name: string; readonly mass: number }[];
  /** Wheels whose droop can be worked out: the file has the damper's open length there. */
  readonly droops: readonly WheelName[];
  /** Instruments of the file, by name, with their class. */
  readonly instruments: Readonly<Record<string, string>>;
}

export function floorSheets(car: Car): FloorSheets {
  const numbers = new Numbers(car.values);
  const { floor } = car.form;
  const heights = Object.entries(floor?.heights ?? {});
  return {
    wanted: wantedOf(car.form, numbers).map(({ id, value, tolerance, stated }) => ({
      id,
      value,
      tolerance,
      stated,
    })),
    read: Object.entries(floor?.read ?? {}).map(([name, sheet]) => ({
      name,
      state: sheet.state,
      on: sheet.on,
      by: sheet.by,
      note: sheet.note,
      bars: sheet.bars ?? 'disconnected',
      ...besideOf(car, sheet),
      readings: [
        ...Object.entries(sheet.pressure ?? {}).flatMap(([wheel, each]) =>
          each === undefined ? [] : [{ id: `pressure.${wheel}`, value: numbers.of(each), u: each.u }],
        ),
        ...readingsIn(sheet.readings).map(([id, each]) => ({ id, value: numbers.of(each), u: each.u })),
      ],
    })),
    heights: heights.map(([name]) => name),
    heightsAt: Object.fromEntries(heights.map(([name, at]) => [name, numbers.point(at)])),
    aboard: Object.entries(floor?.aboard ?? {}).map(([name, { mass }]) => ({ name, mass: numbers.of(mass) })),
    droops: WHEEL_NAMES.filter((wheel) => {
      const { damper, points } = car.form[endOf(wheel)][sideOf(wheel)];
      return damper !== undefined && points.damperRocker !== undefined && points.damperTub !== undefined;
    }),
    instruments: Object.fromEntries(
      Object.entries(car.form.instruments ?? {}).map(([name, of]) => [name, of.class]),
    ),
  };
}

function besideOf(car: Car, sheet: SheetForm): BesideReadings {
  const { notSo, place, airTemperature, floorTemperature, tyres, clicks, wings } = sheet;
  return {
    notSo: notSo ?? [],
    place,
    airTemperature,
    floorTemperature,
    tyres,
    clicks,
    wings: wings ?? {},
    instruments: instrumentsOf(car, sheet),
  };
}

function instrumentsOf(car: Car, { readings, pressure, on }: SheetForm): readonly SheetInstrument[] {
  const kinds = new Map<string, Set<string>>();
  const note = (kind: string, instrument: string | undefined): void => {
    if (instrument !== undefined) kinds.set(instrument, (kinds.get(instrument) ?? new Set()).add(kind));
  };
  for (const each of Object.values(pressure ?? {})) note('pressure', each?.instrument);
  for (const [id, { instrument }] of readingsIn(readings)) note(id.split('.')[0]!, instrument);
  return [...kinds].map(([name, of]) => {
    const { due, mark } = car.form.instruments?.[name] ?? {};
    // days as ISO 8601 writes them stand in the order of their letters
    return { name, mark, kinds: [...of], due, outOfDate: due !== undefined && on !== undefined && due < on };
  });
}
