/** Columns of figures over wheel travel as small curves in the workshop's own units. */
import { printedUnit, type Speech, spokenUnit } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import type { Curve } from './curve.ts';

/** What a sheet needs to know of a corner over its travel. */
export interface TravelColumns {
  /** Metres, bump positive. */
  readonly travel: readonly number[];
  readonly columns: readonly {
    readonly id: string;
    readonly means: string;
    readonly unit: string;
    readonly values: readonly (number | null)[];
  }[];
}

export function travelCurves(
  of: TravelColumns,
  ids: readonly string[],
  at: number | undefined,
  speech: Speech,
): Curve[] {
  const length = spokenUnit('m', speech);
  return ids.flatMap((id) => {
    const column = of.columns.find((each) => each.id === id);
    if (column === undefined || column.values.every((value) => value === null)) return [];
    const unit = spokenUnit(column.unit, speech);
    const printed = printedUnit(unit);
    return [
      {
        title: `${column.means}${printed === '' ? '' : `, ${printed}`}`,
        acrossTitle: `wheel travel, ${length}, bump positive`,
        across: of.travel.map((travel) => fromSI(travel, length)),
        values: column.values.map((value) => (value === null ? null : fromSI(value, unit))),
        ...(at === undefined ? {} : { at: fromSI(at, length) }),
      },
    ];
  });
}
