/**
 * Load figures of several wheels; with a reading moved by slopes about the place of the car, and not by making it
 * stand again.
 *
 * A wheel's figures hang on its own corner, and on the rest of the car only through what the ground and the
 * anti-roll bar put on that corner. So with a reading moved the figures are worked anew where it belongs to the
 * corner, and elsewhere follow from how ground and bar change.  [LL-40, LL-42 of docs/theory/loads.md]
 */
import type { CarForm } from '../../car/read.ts';
import { length, type Vec3, ZERO } from '../../maths/vec3.ts';
import { type AxleState, axleSide, axleState, type BarAtWheels } from '../axle-of-car.ts';
import type { CarStanding, WheelStanding } from '../loads/car-equilibrium.ts';
import { type Doing, endOf, sideOf, type WheelName } from '../loads/doing.ts';
import { movedRow } from '../loads/standing-slopes.ts';
import type { Numbers } from '../numbers.ts';
import { putWheelFigures, standingOf } from './loads.ts';
import type { FigureNote, Put } from './note.ts';

/** @throws NotSettled, Unreachable, DegenerateCorner, BarOpen */
export function putWheelLoads(
  car: CarForm,
  wheels: readonly WheelName[],
  doing: Doing,
  numbers: Numbers,
  put: Put,
): void {
  const name = `loads of ${wheels.join(', ')}, car doing ${JSON.stringify(doing)}`;
  const filed = (as: Numbers) =>
    as.part(name, () => {
      const notes: FigureNote[] = [];
      const values: number[] = [];
      const standing = standingOf(car, doing, as);
      for (const wheel of wheels) {
        putWheelFigures(car, standing, wheel, as, (note, value) => {
          notes.push(note);
          values.push(value);
        });
      }
      return { notes, values };
    });
  const before = numbers.asFiled(name, filed) ?? filed(numbers);
  const row = movedRow(name, car, doing, numbers, {
    of: (standing, at) => wheels.flatMap((wheel) => wheelRow(car, standing, wheel, at)),
    moved: (standing, at, asFiled) =>
      wheels.flatMap((wheel) =>
        movedWheelRow(car, wheel, `${wheel}, car doing ${JSON.stringify(doing)}`, {
          standing,
          asFiled,
          numbers: at,
        }),
      ),
  });
  // a slope knows one side of the place at which pull turns into push: past it the car is made to stand
  const values = row === undefined || turnsRound(before.values, row) ? filed(numbers).values : row;
  values.forEach((value, k) => {
    put(before.notes[k]!, value);
  });
}

/** Newtons, and N m, below which a force has no way in which it acts. */
const NO_FORCE = 1e-3;

const turnsRound = (before: readonly number[], now: readonly number[]): boolean =>
  before.some((value, k) => value * now[k]! < 0 && Math.abs(value) > NO_FORCE);

function wheelRow(car: CarForm, standing: CarStanding, wheel: WheelName, numbers: Numbers): number[] {
  const row: number[] = [];
  putWheelFigures(car, standing, wheel, numbers, (_, value) => row.push(value));
  return row;
}

interface AboutWheel {
  /** What ground and bar put on the corner, as filed. */
  readonly put: readonly number[];
  /** Slopes of every figure by each of them. */
  readonly slopes: readonly (readonly number[])[];
}

/** Newtons, metres, N m and the like by which what is put on a corner is moved for slopes. */
const DIFFERENCE = 1e-5;

/** Figures of a wheel with the car at its place and a reading moved.  [LL-42] */
function movedWheelRow(
  car: CarForm,
  wheel: WheelName,
  name: string,
  { standing, asFiled, numbers }: { standing: CarStanding; asFiled: CarStanding; numbers: Numbers },
): readonly number[] {
  const corner = (as: Numbers): readonly number[] =>
    as.part(`corner of ${name}`, () => wheelRow(car, withOwnCorner(car, asFiled, wheel, as), wheel, as));
  const about = numbers.asFiled(`ground and bar of ${name}`, (filed): AboutWheel => {
    corner(filed);
    const put = putOn(asFiled, wheel, asFiled);
    const rowAt = (at: readonly number[]): readonly number[] =>
      wheelRow(car, withPut(asFiled, wheel, at), wheel, filed);
    const slopes = put.map((_, j) => {
      const moved = (by: number) => rowAt(put.map((value, n) => (n === j ? value + by : value)));
      const [above, below] = [moved(DIFFERENCE), moved(-DIFFERENCE)];
      return above.map((value, k) => (value - below[k]!) / (2 * DIFFERENCE));
    });
    return { put, slopes };
  })!;
  const now = putOn(standing, wheel, asFiled);
  const row = [...corner(numbers)];
  about.put.forEach((before, j) => {
    const change = now[j]! - before;
    if (change === 0) return;
    const slopes = about.slopes[j]!;
    for (let k = 0; k < row.length; k += 1) row[k] = row[k]! + slopes[k]! * change;
  });
  return row;
}

/** The car as it stands as filed, but for the readings of one corner. */
function withOwnCorner(car: CarForm, asFiled: CarStanding, wheel: WheelName, numbers: Numbers): CarStanding {
  const [end, side] = [endOf(wheel), sideOf(wheel)];
  const filed = asFiled.axles[end];
  const at = { left: filed.left.state.travel, right: filed.right.state.travel, rack: filed.left.state.rack };
  // a heave element joins the two rockers: what it does hangs on the other corner too
  const axle =
    filed.heave === undefined
      ? { ...filed, [side]: axleSide(car[end], side, at, numbers) }
      : { ...axleState(car[end], at, numbers), ...(filed.bar === undefined ? {} : { bar: filed.bar }) };
  return { ...asFiled, axles: { ...asFiled.axles, [end]: axle } };
}

/**
 * What the rest of the car puts on a corner, in a row: ground, weight and inertia, bar. Torques that nothing takes as
 * filed are left out, since a part that takes them is then another.
 */
function putOn(standing: CarStanding, wheel: WheelName, asFiled: CarStanding): number[] {
  const { travel, at, force, ground, shaft, unsprung } = standing.wheels[wheel];
  const { bar } = standing.axles[endOf(wheel)];
  const filed = asFiled.wheels[wheel];
  return [
    travel,
    ...at,
    ...force,
    ...ground,
    ...unsprung.at,
    ...unsprung.force,
    ...(length(filed.shaft) > 0 ? shaft : []),
    ...(filed.unsprung.moment === undefined ? [] : (unsprung.moment ?? ZERO)),
    ...(bar === undefined
      ? []
      : [bar.torque, bar.twist.byLeft, bar.twist.byRight, ...bar.ends[sideOf(wheel)]]),
  ];
}

/** The car as filed with another such row put on a corner. */
function withPut(asFiled: CarStanding, wheel: WheelName, row: readonly number[]): CarStanding {
  const filed = asFiled.wheels[wheel];
  const values = row.values();
  const next = (): number => values.next().value!;
  const vector = (): Vec3 => [next(), next(), next()];
  const [travel, at, force, ground] = [next(), vector(), vector(), vector()];
  const [carried, weight] = [vector(), vector()];
  const shaft = length(filed.shaft) > 0 ? vector() : filed.shaft;
  const moment = filed.unsprung.moment === undefined ? {} : { moment: vector() };
  const here: WheelStanding = {
    travel,
    at,
    force,
    ground,
    shaft,
    unsprung: { at: carried, force: weight, ...moment },
  };
  const wheels = { ...asFiled.wheels, [wheel]: here };
  const end = endOf(wheel);
  const axle = asFiled.axles[end];
  if (axle.bar === undefined) return { ...asFiled, wheels };
  const [torque, byLeft, byRight] = [next(), next(), next()];
  const bar: BarAtWheels = {
    ...axle.bar,
    torque,
    twist: { ...axle.bar.twist, byLeft, byRight },
    ends: { ...axle.bar.ends, [sideOf(wheel)]: vector() },
  };
  return { ...asFiled, wheels, axles: { ...asFiled.axles, [end]: { ...axle, bar } satisfies AxleState } };
}
