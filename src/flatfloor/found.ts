/**
 * The car as it was found: what must differ from the survey for the readings to be what they are.
 *
 * In    the prepared car, sheets with the spread of each reading
 * Out   the hidden changes with their covariance, and every reading's residual
 *
 * Least squares with priors, Gauss and Newton's steps with the exact derivatives of `stand`. Two or more sheets with
 * known moves between them teach the stiffness of tyres and springs: those are hidden changes like the others, and
 * one sheet alone leaves them where their priors are.  [FF-22 to FF-24]
 *
 * [GW] Ghilani & Wolf, Adjustment Computations, 4th ed., ch. 11 and 21 (from memory)
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { DenseLu } from '../maths/dense-lu.ts';
import { ENDS } from './changes.ts';
import type { FloorCar } from './floor-car.ts';
import type { Place } from './look.ts';
import type { Sheet, SheetReading } from './sheet.ts';
import type { Floor, FloorStanding } from './stand.ts';

/** A change that is not known, with how far it is likely to be from nothing. */
export interface Hidden {
  readonly change: number;
  readonly prior: number;
}

/** Priors of what may have moved since the survey: common practice, no source. */
const PRIOR = {
  rod: 3e-3,
  toe: 4e-3,
  camber: 5e-3,
  caster: 6e-3,
  tyre: 0.12,
  spring: 0.04,
  mass: 3,
  massForward: 3,
  massLeft: 0.5,
  link: 2e-3,
} as const;

/** What is taken as hidden: links, shims, stiffness, a little mass; drop links where a bar was on. */
export function hiddenOf(car: FloorCar, sheets: readonly Sheet[]): readonly Hidden[] {
  const { changes } = car;
  const of = (change: number, prior: number): Hidden => ({ change, prior });
  return [
    ...WHEEL_NAMES.flatMap((wheel) => {
      const at = changes.wheel[wheel];
      return (['rod', 'toe', 'camber', 'caster', 'tyre', 'spring'] as const).map((name) =>
        of(at[name], PRIOR[name]),
      );
    }),
    ...(['mass', 'massForward', 'massLeft'] as const).map((name) => of(changes.car[name], PRIOR[name])),
    ...ENDS.filter(
      (end) => sheets.some(({ state }) => state.bars[end]) && car.axles[end].barRate !== undefined,
    ).map((end) => of(changes.end[end].leftLink, PRIOR.link)),
  ];
}

export interface Residual {
  readonly sheet: string;
  readonly reading: SheetReading;
  readonly fitted: number;
  /** Read less fitted. */
  readonly residual: number;
  /** Standard uncertainty of the residual; nothing where no other reading checks this one. */
  readonly u: number;
  /** Residual over its own uncertainty, and which part of the reading the others check, 0 to 1. */
  readonly w: number;
  readonly checked: number;
}

export interface Found {
  readonly hidden: readonly Hidden[];
  /** The hidden changes, in the order of `hidden`. */
  readonly values: Float64Array;
  /** Their covariance, by rows. */
  readonly covariance: readonly Float64Array[];
  readonly residuals: readonly Residual[];
  /** Sum of squares of what is left, priors and readings, in their own uncertainties. */
  readonly chiSquared: number;
  /** The car under the last sheet. */
  readonly standing: FloorStanding;
}

const MOST_STEPS = 8;
/** Parts of a prior below which a step is no step: the next would be its square. */
const SETTLED = 1e-3;

/** @throws NotSettled, LinkOpen */
export function foundFrom(
  floor: Floor,
  sheets: readonly Sheet[],
  hidden: readonly Hidden[] = hiddenOf(floor.car, sheets),
): Found {
  const n = hidden.length;
  const values = new Float64Array(n);
  const places: (Place | undefined)[] = sheets.map(() => undefined);
  const lu = new DenseLu(n);
  for (let tries = 0; ; tries += 1) {
    const standings = sheets.map((sheet, k) => {
      const standing = standingWith(floor, sheet, hidden, values, places[k]);
      places[k] = standing.place;
      return standing;
    });
    const rows = rowsOf(sheets, standings, hidden);
    const right = normalEquations(rows, hidden, values, lu);
    if (!lu.factor())
      throw new Error('the normal equations of the sheets are singular in spite of their priors');
    const step = lu.solve(right);
    const longest = step.reduce((most, each, k) => Math.max(most, Math.abs(each) / hidden[k]!.prior), 0);
    if (longest < SETTLED || tries >= MOST_STEPS) {
      return summed({ hidden, values, rows, lu, standing: standings.at(-1)! });
    }
    for (let k = 0; k < n; k += 1) values[k] = values[k]! + step[k]!;
  }
}

/** The car under a sheet with the hidden changes put in. */
function standingWith(
  floor: Floor,
  sheet: Pick<Sheet, 'state' | 'readings'>,
  hidden: readonly Hidden[],
  values: Float64Array,
  from?: Place,
): FloorStanding {
  const changes = Float64Array.from(sheet.state.changes);
  hidden.forEach(({ change }, k) => {
    changes[change] = changes[change]! + values[k]!;
  });
  return floor.stand(
    { ...sheet.state, changes },
    from,
    sheet.readings.some(({ id }) => id.startsWith('droop.')),
  );
}

interface Row {
  readonly sheet: string;
  readonly reading: SheetReading;
  readonly fitted: number;
  /** By the hidden changes. */
  readonly slopes: Float64Array;
}

const rowsOf = (
  sheets: readonly Sheet[],
  standings: readonly FloorStanding[],
  hidden: readonly Hidden[],
): readonly Row[] =>
  sheets.flatMap(({ name, readings }, k) =>
    readings.flatMap((reading): Row[] => {
      const now = standings[k]!.readings.get(reading.id);
      if (now === undefined) return [];
      const slopes = Float64Array.from(hidden, ({ change }) => now.by[change]!);
      return [{ sheet: name, reading, fitted: now.value, slopes }];
    }),
  );

/** N = AᵀPA + priors into the factor's matrix; the right-hand side is returned.  [FF-23] */
function normalEquations(
  rows: readonly Row[],
  hidden: readonly Hidden[],
  values: Float64Array,
  lu: DenseLu,
): Float64Array {
  const n = hidden.length;
  const right = new Float64Array(n);
  lu.a.fill(0);
  hidden.forEach(({ prior }, k) => {
    lu.a[k * n + k] = prior ** -2;
    right[k] = -values[k]! * prior ** -2;
  });
  for (const { reading, fitted, slopes } of rows) {
    const weight = reading.u ** -2;
    for (let i = 0; i < n; i += 1) {
      const part = weight * slopes[i]!;
      if (part === 0) continue;
      right[i] = right[i]! + part * (reading.value - fitted);
      for (let j = 0; j < n; j += 1) lu.a[i * n + j] = lu.a[i * n + j]! + part * slopes[j]!;
    }
  }
  return right;
}

function summed(of: {
  readonly hidden: readonly Hidden[];
  readonly values: Float64Array;
  readonly rows: readonly Row[];
  readonly lu: DenseLu;
  readonly standing: FloorStanding;
}): Found {
  const { hidden, values, rows, lu, standing } = of;
  const covariance = hidden.map((_, k) => lu.solve(Float64Array.from(hidden, (__, i) => (i === k ? 1 : 0))));
  const residuals = rows.map(({ sheet, reading, fitted, slopes }): Residual => {
    const residual = reading.value - fitted;
    const ofFit = variance(covariance, slopes);
    const checked = Math.max(0, 1 - ofFit / reading.u ** 2);
    const u = Math.sqrt(checked) * reading.u;
    return { sheet, reading, fitted, residual, u, w: checked > 1e-6 ? residual / u : 0, checked };
  });
  const chiSquared =
    residuals.reduce((sum, { residual, reading }) => sum + (residual / reading.u) ** 2, 0) +
    hidden.reduce((sum, { prior }, k) => sum + (values[k]! / prior) ** 2, 0);
  return { hidden, values, covariance, residuals, chiSquared, standing };
}

/** aᵀ C a */
export const variance = (covariance: readonly Float64Array[], slopes: Float64Array): number =>
  covarianceOf(covariance, slopes, slopes);

/** aᵀ C b */
export const covarianceOf = (covariance: readonly Float64Array[], a: Float64Array, b: Float64Array): number =>
  covariance.reduce(
    (sum, row, i) => sum + (a[i] === 0 ? 0 : a[i]! * row.reduce((part, each, j) => part + each * b[j]!, 0)),
    0,
  );
