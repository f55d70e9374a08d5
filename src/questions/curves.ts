/** Figures of a corner along its travel, for curves and tables. */
import type { Car } from '../car/read.ts';
import { Unreachable } from '../loadpath/corner/reach.ts';
import { putCornerFigures } from '../loadpath/figures/corner.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Springing } from '../loadpath/springing.ts';
import { sprungCorner } from '../loadpath/sprung-corner.ts';
import type { TravelEvent, Wheel } from './figure.ts';
import { eventsOf, rangeOf, type TravelRange } from './travel-range.ts';

export interface CurveColumn {
  readonly id: string;
  readonly means: string;
  /** SI. */
  readonly unit: string;
  /** One a travel; null where the figure does not exist or the linkage does not reach. */
  readonly values: readonly (number | null)[];
}

/** What holds the wheel where the springs alone do not: forces and loads there are those of a stop. */
export type HeldBy = 'droop stop' | 'bump rubber' | 'solid coil' | 'damper closed' | 'linkage';

export interface CornerCurves {
  readonly travel: readonly number[];
  /** One a travel; null where the springs alone carry. At `linkage` the wheel does not come there. */
  readonly heldBy: readonly (HeldBy | null)[];
  readonly columns: readonly CurveColumn[];
  readonly events: readonly TravelEvent[];
  readonly range: TravelRange;
}

export interface CurvesAsked {
  readonly rack: number;
  readonly from: number;
  readonly to: number;
  /** How many travels, both ends counted; 2 at least. */
  readonly count: number;
}

/** @throws DegenerateCorner */
export function cornerCurves(car: Car, wheel: Wheel, asked: CurvesAsked): CornerCurves {
  const numbers = new Numbers(car.values);
  const axle = car.form[wheel.end];
  const of = sprungCorner(axle, wheel.side, numbers);
  const range = rangeOf(of, asked.rack);
  const step = (asked.to - asked.from) / (asked.count - 1);
  const travel = Array.from({ length: asked.count }, (_, k) => asked.from + k * step);
  const columns = new Map<string, { id: string; means: string; unit: string; values: (number | null)[] }>();
  const heldBy: (HeldBy | null)[] = travel.map(() => null);
  travel.forEach((z, k) => {
    try {
      heldBy[k] = stopAt(of.springing, of.wheelAt(z, asked.rack).compression);
      putCornerFigures(axle, wheel.side, { travel: z, rack: asked.rack }, numbers, (note, value) => {
        const { id, means, unit } = note;
        const column = columns.get(id) ?? { id, means, unit, values: travel.map(() => null) };
        columns.set(id, column);
        column.values[k] = Number.isFinite(value) ? value : null;
      });
    } catch (reason) {
      if (!(reason instanceof Unreachable)) throw reason;
      heldBy[k] = 'linkage';
    }
  });
  return { travel, heldBy, columns: [...columns.values()], events: eventsOf(of, range), range };
}

/** The stop that carries at compression c of the unit; of two that have met, the one that met first. */
function stopAt(springing: Springing, c: number): HeldBy | null {
  const { droopStopAt, rubberAt, coilSolidAt = Number.POSITIVE_INFINITY } = springing;
  const { closedAt = Number.POSITIVE_INFINITY } = springing;
  if (c >= Math.min(coilSolidAt, closedAt)) return coilSolidAt <= closedAt ? 'solid coil' : 'damper closed';
  if (rubberAt !== undefined && c > rubberAt) return 'bump rubber';
  return droopStopAt !== undefined && c < droopStopAt ? 'droop stop' : null;
}
