/**
 * The sheets of the flat floor as the car file has them: what is wanted, and what was read, in plain data.
 *
 * In    a car
 * Out   readings by name in SI, with their spread or tolerance; nothing is worked out
 */
import type { Car } from '../car/read.ts';
import { readingsIn, wantedOf } from '../flatfloor/sheet.ts';
import { Numbers } from '../loadpath/numbers.ts';

export interface FloorSheetRead {
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
  };
}
