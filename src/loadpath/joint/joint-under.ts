/**
 * A joint of the car under what the car is doing: each stud and its pad, plates, dowels, slip.
 *
 * In    the joint as filed, what acts behind its face
 * Out   the face solved at the low, middle and high end of the preload, cold and warm
 * Axes  the face's own: y to the left, z upward along it; pull parts the bodies
 * Not   bending of the flanges
 *
 * JT-n are the equations of docs/theory/studs.md.
 */
import type { CarForm } from '../../car/read.ts';
import { add, cross, scale, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Kelvin, Metre, Newton } from '../../units/quantity.ts';
import type { Working } from '../../working/working.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import { type Resultant, resultantAt } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import { crankBehind } from './crank.ts';
import {
  type FacePoint,
  forcesIn,
  openingOf,
  type PackedFace,
  packFace,
  padCells,
  padsIn,
  studsAndPlatesIn,
} from './face.ts';
import {
  type FaceFrame,
  forcesBehind,
  frameOf,
  inFace,
  type JointLoad,
  type JointName,
  loadOn,
} from './joint-of-car.ts';
import { type BentPlate, bentPlate } from './plate.ts';
import { rigidShares } from './rigid-face.ts';
import { groupShear, slipMargin } from './shear.ts';
import { type JointForm, type WorkedSort, workedSort } from './stud-of-car.ts';

export const LEVELS = ['low', 'middle', 'high'] as const;
export type Level = (typeof LEVELS)[number];

const levels = <T>(of: (level: Level) => T): Readonly<Record<Level, T>> => ({
  low: of('low'),
  middle: of('middle'),
  high: of('high'),
});

export const WARMTHS = ['cold', 'hot'] as const;
export type Warmth = (typeof WARMTHS)[number];

/** One value for each end of the preload, cold and warm. */
export type Ends<T> = Readonly<Record<Warmth, Readonly<Record<Level, T>>>>;

const ends = <T>(of: (warmth: Warmth, level: Level) => T): Ends<T> => ({
  cold: levels((level) => of('cold', level)),
  hot: levels((level) => of('hot', level)),
});

/** Least and most over both ends of the preload, cold and warm. */
export const boundsOf = (of: Ends<number>): { readonly least: number; readonly most: number } => {
  const all = WARMTHS.flatMap((warmth) => LEVELS.map((level) => of[warmth][level]));
  return { least: Math.min(...all), most: Math.max(...all) };
};

export interface StudUnderLoad {
  readonly name: string;
  readonly place: FacePoint;
  readonly size: { readonly hole: Metre; readonly pad: Metre };
  readonly sort: WorkedSort;
  /** Tension in the stud, cold, by level of the preload. */
  readonly force: Readonly<Record<Level, Newton>>;
  /** Force left on its pad, cold, by level of the preload. */
  readonly pad: Readonly<Record<Level, Newton>>;
  /** Both again, cold and warm. */
  readonly forces: Ends<Newton>;
  readonly pads: Ends<Newton>;
  /** Where its pad has opened, cold, at the low end of the preload: middles of the cells. */
  readonly open: readonly FacePoint[];
  /** Its part of the outside load by the hand method, studs alone. */
  readonly rigid: Newton;
}

export interface PlateUnderLoad {
  readonly name: string;
  /** At the middle preload, cold; and the least and most of all ends. */
  readonly force: Newton;
  readonly least: Newton;
  readonly most: Newton;
  readonly bent?: BentPlate;
}

export interface JointUnderLoad {
  readonly frame: FaceFrame;
  readonly load: JointLoad;
  readonly studs: readonly StudUnderLoad[];
  readonly plates: readonly PlateUnderLoad[];
  /** Part of the face that is open, cold, by level of the preload. */
  readonly opened: Readonly<Record<Level, number>>;
  readonly openedHot: Readonly<Record<Level, number>>;
  /** How much warmer than tightened; naught where the file does not tell. */
  readonly warm: Kelvin;
  /** Friction over what it would have to hold if no dowel helped, at the low preload. */
  readonly slip: number;
  /** Each dowel if friction held nothing. */
  readonly dowels: readonly { readonly name: string; readonly place: FacePoint; readonly force: Newton }[];
}

/** What acts behind the face, about the origin of the car, by a name that tells one load from another. */
export interface Behind {
  readonly name: string;
  readonly of: (numbers: Numbers) => Resultant;
}

/** @throws NoTorque, FaceParted */
export const jointUnder = (
  name: JointName,
  form: JointForm,
  car: CarForm,
  standing: CarStanding,
  numbers: Numbers,
): JointUnderLoad =>
  jointHolding(
    form,
    {
      name: JSON.stringify(standing.doing),
      of: () =>
        resultantAt(ZERO, [
          ...forcesBehind(name, car, standing, numbers),
          ...crankBehind(name, car, standing, numbers),
        ]),
    },
    numbers,
  );

/**
 * With a reading moved, only what leans on it is worked again, and the face begins from where it was.
 *
 * @throws NoTorque, FaceParted
 */
export function jointHolding(
  form: JointForm,
  behind: Behind,
  numbers: Numbers,
  working?: Working,
): JointUnderLoad {
  const { places, frame } = placesOf(form, numbers);
  const load = loadAt(form, behind, numbers);
  const sorts = sortsOf(form, numbers, working);
  const warm = numbers.or(form.warm, 0);
  const cold = levels((level) => solvedAt(form, behind, 'cold', level, numbers));
  const solved = {
    cold,
    hot: form.warm === undefined ? cold : levels((level) => solvedAt(form, behind, 'hot', level, numbers)),
  };
  const rigid = rigidShares(
    form.studs.map((stud, k) => ({ ...places[k]!, stiffness: 1 / sorts[stud.sort]!.stud })),
    load,
  );
  const dowels = (form.dowels ?? []).map((dowel) => ({
    ...inFace(frame, numbers.point(dowel.at)),
    weight: 1,
  }));
  return {
    frame,
    load,
    studs: form.studs.map((stud, k) => ({
      name: stud.name,
      place: places[k]!,
      size: {
        hole: numbers.of(form.sorts[stud.sort]!.hole),
        pad: numbers.of(form.sorts[stud.sort]!.pad),
      },
      sort: sorts[stud.sort]!,
      force: levels((level) => cold[level].studs[k]!),
      pad: levels((level) => cold[level].pads[k]!),
      forces: ends((warmth, level) => solved[warmth][level].studs[k]!),
      pads: ends((warmth, level) => solved[warmth][level].pads[k]!),
      open: cold.low.open[k]!,
      rigid: rigid[k]!,
    })),
    plates: (form.plates ?? []).map((plate, k) => {
      const bent = bentPlate(plate, warm, numbers, working);
      return {
        name: plate.name,
        force: cold.middle.plates[k]!,
        ...boundsOf(ends((warmth, level) => solved[warmth][level].plates[k]!)),
        ...(bent === undefined ? {} : { bent }),
      };
    }),
    opened: levels((level) => cold[level].opened),
    openedHot: levels((level) => solved.hot[level].opened),
    warm,
    slip: slipMargin(
      places.map((place, k) => ({ ...place, normal: cold.low.pads[k]! })),
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

// the path of one of its readings tells a joint and a sort from the others
const placesOf = (
  form: JointForm,
  numbers: Numbers,
): { readonly frame: FaceFrame; readonly places: readonly FacePoint[] } =>
  numbers.part(`face of ${form.friction.path}`, () => {
    const points = form.studs.map(({ at }) => numbers.point(at));
    const frame = frameOf(points);
    return { frame, places: points.map((point) => inFace(frame, point)) };
  });

const loadAt = (form: JointForm, behind: Behind, numbers: Numbers): JointLoad =>
  numbers.part(`load of ${form.friction.path}, ${behind.name}`, () => {
    const { frame } = placesOf(form, numbers);
    return loadOn(frame, movedTo(frame.origin, behind.of(numbers)));
  });

/** A resultant about the origin, told about another point. */
const movedTo = (point: Vec3, { force, moment }: Resultant): Resultant => ({
  force,
  moment: add(moment, cross(scale(point, -1), force)),
});

const sortsOf = (
  form: JointForm,
  numbers: Numbers,
  working?: Working,
): Readonly<Record<string, WorkedSort>> =>
  Object.fromEntries(
    Object.entries(form.sorts).map(([sort, of]) => {
      const work = (record?: Working): WorkedSort =>
        workedSort(sort, of, { warm: form.warm }, numbers, record);
      return [
        sort,
        working === undefined ? numbers.part(`stud of ${of.hole.path}`, () => work()) : work(working),
      ];
    }),
  );

function padOf(form: JointForm, k: number, numbers: Numbers) {
  const { hole, pad } = form.sorts[form.studs[k]!.sort]!;
  return { centre: placesOf(form, numbers).places[k]!, inner: numbers.of(hole), outer: numbers.of(pad) };
}

const cellsAt = (form: JointForm, k: number, numbers: Numbers): readonly FacePoint[] =>
  padCells({ ...padOf(form, k, numbers), stiffness: 0, pressed: 0 }).map(({ y, z }) => ({ y, z }));

/** Middles of the cells of each stud that carry nothing. */
const openCells = (form: JointForm, cells: readonly Newton[], numbers: Numbers): readonly FacePoint[][] => {
  const each = cells.length / form.studs.length;
  return form.studs.map((_, k) => cellsAt(form, k, numbers).filter((_cell, n) => cells[k * each + n] === 0));
};

/** The springs of the face as they are before any load comes. */
const pressedFace = (form: JointForm, warmth: Warmth, level: Level, numbers: Numbers): PackedFace =>
  numbers.part(`springs of ${form.friction.path}, ${warmth}, ${level}`, () => {
    const { places, frame } = placesOf(form, numbers);
    const sorts = sortsOf(form, numbers);
    const pressing = (sort: string): Newton => sorts[sort]![warmth === 'cold' ? 'preload' : 'hot'][level];
    return packFace({
      studs: form.studs.map((stud, k) => ({
        ...places[k]!,
        preload: pressing(stud.sort),
        stiffness: sorts[stud.sort]!.stiffness,
      })),
      cells: form.studs.flatMap((stud, k) =>
        padCells({
          ...padOf(form, k, numbers),
          stiffness: sorts[stud.sort]!.padStiffness,
          pressed: pressing(stud.sort),
        }),
      ),
      plates: (form.plates ?? []).map((plate) => ({
        ...inFace(frame, numbers.point(plate.at)),
        stiffness: numbers.of(plate.stiffness),
      })),
    });
  });

interface SolvedJoint {
  readonly opening: readonly [number, number, number];
  readonly studs: readonly Newton[];
  /** Sum of each stud's cells. */
  readonly pads: readonly Newton[];
  /** Middles of each stud's cells that carry nothing. */
  readonly open: readonly (readonly FacePoint[])[];
  readonly plates: readonly Newton[];
  readonly opened: number;
}

function solvedAt(
  form: JointForm,
  behind: Behind,
  warmth: Warmth,
  level: Level,
  numbers: Numbers,
): SolvedJoint {
  const name = `opening of ${form.friction.path}, ${warmth}, ${level}, ${behind.name}`;
  return numbers.part(name, () => {
    const packed = pressedFace(form, warmth, level, numbers);
    const near = numbers.asFiled(name, (filed) => solvedAt(form, behind, warmth, level, filed));
    const { opening } = openingOf(packed, loadAt(form, behind, numbers), near?.opening);
    const { studs, plates } = studsAndPlatesIn(packed, opening);
    const { pads, opened } = padsIn(packed, opening);
    // most faces are closed, and a spread asks for thousands of them
    const open =
      opened === 0 ? studs.map(() => []) : openCells(form, forcesIn(packed, opening).cells, numbers);
    return { opening, studs, pads, open, plates, opened };
  });
}
