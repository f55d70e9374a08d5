/**
 * A joint of the car under what the car is doing: resultant on its face, each stud, dowels, slip.
 *
 * In    the joint as filed, the equilibrium of the whole car
 * Out   the resultant at the studs' centre, and the face solved at the low, middle and high end of the preload
 * Axes  the face's own: n forward, y to the left, z upward along it; pull parts the bodies
 * Not   bending of the flanges, of plates across the car
 *
 * JT-n are the equations of docs/theory/studs.md.
 */
import { Matrix, SVD } from 'ml-matrix';
import type { CarForm } from '../../car/read.ts';
import { add, along, cross, dot, scale, sub, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre, Newton } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import type { Working } from '../../working/working.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import { isThrown, WHEEL_NAMES } from '../loads/doing.ts';
import { type AppliedForce, type Resultant, resultantAt } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import { type FacePoint, type FaceUnderLoad, faceUnder, type Parting, padCells } from './face.ts';
import { groupShear, type InPlane, slipMargin } from './shear.ts';
import { type JointForm, type WorkedSort, workedSort } from './stud-of-car.ts';

export type JointName = 'caseToEngine' | 'engineToTub';

export interface FaceFrame {
  readonly origin: Vec3;
  readonly forward: Vec3;
  readonly left: Vec3;
  readonly up: Vec3;
  /** Largest distance of a stud from the plane through them all. */
  readonly uneven: Metre;
}

/** The plane through the studs by least squares, and axes in it.  [JT-7] */
export function frameOf(points: readonly Vec3[]): FaceFrame {
  const origin = scale(
    points.reduce((sum, each) => add(sum, each), ZERO),
    1 / points.length,
  );
  const arms = points.map((each) => sub(each, origin));
  const normal: Vec3 =
    points.length < 3
      ? [1, 0, 0]
      : (new SVD(new Matrix(arms.map((each) => [...each]))).rightSingularVectors.getColumn(
          2,
        ) as unknown as Vec3);
  const forward = unit(scale(normal, normal[0] < 0 ? -1 : 1));
  const across: Vec3 = [0, 1, 0];
  const left = unit(along(across, forward, -dot(across, forward)));
  return {
    origin,
    forward,
    left,
    up: cross(forward, left),
    uneven: Math.max(...arms.map((each) => Math.abs(dot(each, forward)))),
  };
}

/** All that acts on the parts behind a face from outside them, at rest upon what the car is doing.  [JT-8] */
export function forcesBehind(
  joint: JointName,
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
): readonly AppliedForce[] {
  const { masses } = car;
  const rear = WHEEL_NAMES.filter((wheel) => wheel.startsWith('rear'));
  const wheels = rear.flatMap((wheel): AppliedForce[] => {
    const { at, force, unsprung } = standing.wheels[wheel];
    return [{ at, force }, unsprung];
  });
  // the tyre's force with the shaft's torque left in: both ends of the shaft are behind the face
  const { ground, doing } = standing;
  const falling = add(
    add(scale(ground.forward, -doing.longitudinal), scale(ground.left, -doing.lateral)),
    scale(ground.up, -doing.vertical - STANDARD_GRAVITY),
  );
  const carried =
    masses === undefined ? [] : joint === 'caseToEngine' ? [masses.case] : [masses.case, masses.engine];
  const weights = carried.map(({ mass, at }): AppliedForce => {
    const place = numbers.point(at);
    return {
      at: place,
      force: scale(add(falling, thrownAt(standing, car, numbers, place)), numbers.of(mass)),
    };
  });
  return [...wheels, ...weights, standing.airForces[1]!];
}

/**
 * What a strike adds to the inertia of a part: the car is thrown as one stiff body by what the strike puts on it, less
 * what its own acceleration takes.  [JT-9]
 */
function thrownAt(standing: CarStanding, car: CarForm, numbers: Numbers, place: Vec3): Vec3 {
  const { sprung } = standing;
  if (!isThrown(standing.doing)) return ZERO;
  const { force, moment } = resultantAt(sprung.at, [
    ...WHEEL_NAMES.flatMap((wheel): AppliedForce[] => [
      standing.wheels[wheel],
      standing.wheels[wheel].unsprung,
    ]),
    ...standing.airForces,
    standing.sprungForce,
  ]);
  const { rollInertia, pitchInertia } = car.body!;
  const spin: Vec3 = [
    rollInertia === undefined ? 0 : moment[0] / numbers.of(rollInertia),
    pitchInertia === undefined ? 0 : moment[1] / numbers.of(pitchInertia),
    0,
  ];
  const throwing = add(scale(force, 1 / sprung.mass), cross(spin, sub(place, sprung.at)));
  return scale(throwing, -1);
}

export interface JointLoad extends Parting, InPlane {}

/** The resultant told in the face's axes.  [JT-10] */
export function loadOn(frame: FaceFrame, { force, moment }: Resultant): JointLoad {
  return {
    pull: -dot(force, frame.forward),
    byY: dot(moment, frame.up),
    byZ: -dot(moment, frame.left),
    y: dot(force, frame.left),
    z: dot(force, frame.up),
    turning: dot(moment, frame.forward),
  };
}

export const LEVELS = ['low', 'middle', 'high'] as const;
export type Level = (typeof LEVELS)[number];

export interface StudUnderLoad {
  readonly name: string;
  readonly place: FacePoint;
  readonly size: { readonly hole: Metre; readonly pad: Metre };
  readonly sort: WorkedSort;
  /** Tension in the stud, by level of the preload. */
  readonly force: Readonly<Record<Level, Newton>>;
  /** Force left on its pad, by level of the preload. */
  readonly pad: Readonly<Record<Level, Newton>>;
}

export interface JointUnderLoad {
  readonly frame: FaceFrame;
  readonly load: JointLoad;
  readonly studs: readonly StudUnderLoad[];
  readonly plates: readonly { readonly name: string; readonly force: Newton }[];
  /** Part of the face that is open, by level of the preload. */
  readonly opened: Readonly<Record<Level, number>>;
  /** Friction over what it would have to hold if no dowel helped, at the low preload. */
  readonly slip: number;
  /** Each dowel if friction held nothing. */
  readonly dowels: readonly { readonly name: string; readonly place: FacePoint; readonly force: Newton }[];
}

/** @throws NoTorque, FaceParted */
export function jointUnder(
  name: JointName,
  form: JointForm,
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
  working?: Working,
): JointUnderLoad {
  // the path of one of its readings tells this joint and sort from the others
  const { places, frame } = numbers.part(`face of ${form.friction.path}`, () => {
    const places = form.studs.map(({ at }) => numbers.point(at));
    return { places, frame: frameOf(places) };
  });
  const inFace = (place: Vec3): FacePoint => {
    const arm = sub(place, frame.origin);
    return { y: dot(arm, frame.left), z: dot(arm, frame.up) };
  };
  const load = loadOn(frame, resultantAt(frame.origin, forcesBehind(name, car, standing, numbers)));
  const sorts = Object.fromEntries(
    Object.entries(form.sorts).map(([sort, of]) => {
      const work = (record?: Working): WorkedSort =>
        workedSort(sort, of, { warm: form.warm }, numbers, record);
      return [
        sort,
        working === undefined ? numbers.part(`stud of ${of.hole.path}`, () => work()) : work(working),
      ];
    }),
  );
  const at = places.map(inFace);
  const sortOf = (k: number): WorkedSort => sorts[form.studs[k]!.sort]!;
  const plates = (form.plates ?? []).map((plate) => ({
    ...inFace(numbers.point(plate.at)),
    stiffness: numbers.of(plate.stiffness),
  }));
  const solved = (level: Level): { readonly face: FaceUnderLoad; readonly pads: readonly Newton[] } => {
    const cells = form.studs.map((stud, k) => {
      const filed = form.sorts[stud.sort]!;
      return padCells({
        centre: at[k]!,
        inner: numbers.of(filed.hole),
        outer: numbers.of(filed.pad),
        stiffness: sortOf(k).padStiffness,
        pressed: sortOf(k).preload[level],
      });
    });
    const face = faceUnder(
      {
        studs: at.map((place, k) => ({
          ...place,
          preload: sortOf(k).preload[level],
          stiffness: sortOf(k).stiffness,
        })),
        cells: cells.flat(),
        plates,
      },
      load,
    );
    let from = 0;
    const pads = cells.map((own) => {
      const sum = face.cells.slice(from, from + own.length).reduce((all, each) => all + each, 0);
      from += own.length;
      return sum;
    });
    return { face, pads };
  };
  const by = { low: solved('low'), middle: solved('middle'), high: solved('high') };
  const levels = <T>(of: (level: Level) => T): Readonly<Record<Level, T>> => ({
    low: of('low'),
    middle: of('middle'),
    high: of('high'),
  });
  const dowels = (form.dowels ?? []).map((dowel) => ({ ...inFace(numbers.point(dowel.at)), weight: 1 }));
  return {
    frame,
    load,
    studs: form.studs.map((stud, k) => ({
      name: stud.name,
      place: at[k]!,
      size: {
        hole: numbers.of(form.sorts[stud.sort]!.hole),
        pad: numbers.of(form.sorts[stud.sort]!.pad),
      },
      sort: sortOf(k),
      force: levels((level) => by[level].face.studs[k]!),
      pad: levels((level) => by[level].pads[k]!),
    })),
    plates: (form.plates ?? []).map((plate, k) => ({ name: plate.name, force: by.middle.face.plates[k]! })),
    opened: levels((level) => by[level].face.opened),
    slip: slipMargin(
      at.map((place, k) => ({ ...place, normal: by.low.pads[k]! })),
      load,
      numbers.of(form.friction),
    ),
    dowels:
      dowels.length === 0
        ? []
        : groupShear(dowels, load).map(({ y, z }, k) => ({
            name: form.dowels![k]!.name,
            place: { y: dowels[k]!.y, z: dowels[k]!.z },
            force: Math.hypot(y, z),
          })),
  };
}
