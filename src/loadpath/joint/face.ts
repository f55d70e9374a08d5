/**
 * A bolted face between two stiff bodies, in contact only where it is pressed: where it opens is found.
 *
 * In    studs with their preloads, cells of the face with the force that presses them, plates that only pull and
 *       push, and what would part the bodies
 * Out   tension of each stud, force of each cell, plate forces, how far the face has opened
 * Axes  in the plane of the face: y and z; w is how far the bodies move apart, square to it. Pull positive. Moments
 *       turn as the gradient of w does: `byY` is Σ force × y
 * Not   bending of the flanges; the bodies stay flat
 *
 * A stud gives k_S·w more than its preload, a cell k·w less than its share of it and nothing once it is open. That is a
 * convex energy of three unknowns (w at the origin and its two slopes), so there is one answer and Newton with a line
 * search finds it. JT-n are the equations of docs/theory/studs.md.
 */
import type { Metre, Newton, NewtonMetre, NewtonPerMetre } from '../../units/quantity.ts';

export interface FacePoint {
  readonly y: Metre;
  readonly z: Metre;
}

export interface FaceStud extends FacePoint {
  readonly preload: Newton;
  readonly stiffness: NewtonPerMetre;
}

export interface FaceCell extends FacePoint {
  /** Force that presses it before the load comes. */
  readonly pressed: Newton;
  readonly stiffness: NewtonPerMetre;
}

/** A plate or link: pulls and pushes, without preload. */
export interface FacePlate extends FacePoint {
  readonly stiffness: NewtonPerMetre;
}

export interface Face {
  readonly studs: readonly FaceStud[];
  readonly cells: readonly FaceCell[];
  readonly plates: readonly FacePlate[];
}

export interface Parting {
  readonly pull: Newton;
  readonly byY: NewtonMetre;
  readonly byZ: NewtonMetre;
}

/** The load is more than anything here can hold; tells where the face parts. */
export class FaceParted extends Error {
  constructor(opening: Opening) {
    super(
      `Nothing holds the two bodies together under this load: no stud or plate with preload is ${sidePulled(opening)}, which is pulled.`,
    );
    this.name = 'FaceParted';
  }
}

/** In the words of who stands behind the car: the side towards which the bodies part most. */
function sidePulled([, perY, perZ]: Opening): string {
  const steep = Math.hypot(perY, perZ);
  if (!(steep > 0)) return 'in the face';
  const sides = [
    ...(Math.abs(perZ) > 0.4 * steep ? [perZ > 0 ? 'upper' : 'lower'] : []),
    ...(Math.abs(perY) > 0.4 * steep ? [perY > 0 ? 'left' : 'right'] : []),
  ];
  return `on the ${sides.join(' ')} side`;
}

/** How far the bodies part: at the origin, and its slopes over y and z. */
export type Opening = readonly [at: Metre, perY: number, perZ: number];

const CLOSED_FACE: Opening = [0, 0, 0];

/** Springs of the face in rows of plain numbers: a spread solves it thousands of times over hundreds of cells. */
export interface PackedFace {
  readonly face: Face;
  readonly y: Float64Array;
  readonly z: Float64Array;
  /** Force at no opening: tension positive, so that of a cell is negative. */
  readonly rest: Float64Array;
  readonly stiffness: Float64Array;
  /** Where studs end and cells begin, and where cells end and plates begin. */
  readonly ends: readonly [studs: number, cells: number];
  readonly reach: Metre;
  readonly preload: Newton;
  readonly stiffest: NewtonPerMetre;
}

export function packFace(face: Face): PackedFace {
  const held = face.studs.length + face.cells.length;
  const row = (): Float64Array => new Float64Array(held + face.plates.length);
  const [y, z, rest, stiffness] = [row(), row(), row(), row()];
  let count = 0;
  let reach: Metre = 1e-3;
  let stiffest: NewtonPerMetre = Number.NEGATIVE_INFINITY;
  const add = (spring: FacePlate, force: Newton): void => {
    y[count] = spring.y;
    z[count] = spring.z;
    rest[count] = force;
    stiffness[count] = spring.stiffness;
    reach = Math.max(reach, Math.hypot(spring.y, spring.z));
    stiffest = Math.max(stiffest, spring.stiffness);
    count += 1;
  };
  for (const stud of face.studs) add(stud, stud.preload);
  for (const cell of face.cells) add(cell, -cell.pressed);
  for (const plate of face.plates) add(plate, 0);
  return {
    face,
    y,
    z,
    rest,
    stiffness,
    ends: [face.studs.length, held],
    reach,
    preload: face.studs.reduce((sum, { preload }) => sum + preload, 0),
    stiffest,
  };
}

/** Force of one spring at an opening: a stud does not push, a cell does not pull, a plate does both. */
function forceAt(of: PackedFace, k: number, q: Opening): Newton {
  const force = of.rest[k]! + of.stiffness[k]! * (q[0] + q[1] * of.y[k]! + q[2] * of.z[k]!);
  if (k < of.ends[0]) return Math.max(0, force);
  return k < of.ends[1] && force > 0 ? 0 : force;
}

interface Balance {
  readonly left: Opening;
  /** k, ky, kz, kyy, kyz, kzz of all that still holds. */
  readonly slope: readonly [number, number, number, number, number, number];
}

/** What holds the face at an opening, less the load: force and two moments; and how it changes.  [JT-1, JT-2] */
function balance(of: PackedFace, load: Parting, [at, perY, perZ]: Opening): Balance {
  const { y: ys, z: zs, rest, stiffness, ends } = of;
  const [studs, held] = ends;
  let f = -load.pull;
  let fy = -load.byY;
  let fz = -load.byZ;
  let k = 0;
  let ky = 0;
  let kz = 0;
  let kyy = 0;
  let kyz = 0;
  let kzz = 0;
  for (let i = 0; i < ys.length; i += 1) {
    const y = ys[i]!;
    const z = zs[i]!;
    const s = stiffness[i]!;
    const force = rest[i]! + s * (at + perY * y + perZ * z);
    // loose: it gives nothing until it is touched again
    if (i < studs ? force <= 0 : i < held && force >= 0) continue;
    f += force;
    fy += force * y;
    fz += force * z;
    k += s;
    ky += s * y;
    kz += s * z;
    kyy += s * y * y;
    kyz += s * y * z;
    kzz += s * z * z;
  }
  return { left: [f, fy, fz], slope: [k, ky, kz, kyy, kyz, kzz] };
}

/** Step that would balance the face if nothing came loose: three equations by their cofactors. */
function stepOf({ left, slope }: Balance, reach: Metre, trace: number): Opening {
  // a trace of every stiffness keeps the step defined where all has come loose for a moment
  const [b, c, e] = [slope[1], slope[2], slope[4]];
  const [a, d, f] = [slope[0] + trace, slope[3] + trace * reach * reach, slope[5] + trace * reach * reach];
  const [A, B, C] = [d * f - e * e, c * e - b * f, b * e - c * d];
  const [D, E, F] = [a * f - c * c, b * c - a * e, a * d - b * b];
  const determinant = a * A + b * B + c * C;
  const [x, y, z] = left;
  return [
    -(A * x + B * y + C * z) / determinant,
    -(B * x + D * y + E * z) / determinant,
    -(C * x + E * y + F * z) / determinant,
  ];
}

const MOST_STEPS = 200;
const CLOSED = 1e-10;
/** No two parts of a car are this far apart and still joined, m. */
const PARTED: Metre = 0.2;

/**
 * @param from  where to begin: the answer for a load or preload close by
 * @throws FaceParted where nothing holds
 */
export function openingOf(of: PackedFace, load: Parting, from: Opening = CLOSED_FACE): SolvedFace {
  const { reach } = of;
  const strength = Math.abs(load.pull) + Math.hypot(load.byY, load.byZ) / reach + of.preload;
  const size = ([f, fy, fz]: Opening): number =>
    Math.max(Math.abs(f), Math.abs(fy) / reach, Math.abs(fz) / reach) / (strength || 1);
  const trace = 1e-9 * of.stiffest;
  let q = from;
  let now = balance(of, load, q);
  for (let step = 0; step < MOST_STEPS && size(now.left) > CLOSED; step += 1) {
    const move = stepOf(now, reach, trace);
    // down the convex energy: the slope along the move must not have turned upward past the end
    const steepness = dot3(now.left, move);
    let part = 1;
    let to = along3(q, move, part);
    let next = balance(of, load, to);
    for (let half = 0; half < 60 && dot3(next.left, move) > -0.5 * steepness; half += 1) {
      part /= 2;
      to = along3(q, move, part);
      next = balance(of, load, to);
    }
    q = to;
    now = next;
    if (Math.max(...q.map(Math.abs)) > PARTED) throw new FaceParted(q);
  }
  const residual = size(now.left);
  if (residual > 1e-6) throw new FaceParted(q);
  return { opening: q, residual };
}

export interface SolvedFace {
  readonly opening: Opening;
  /** Largest of the three equations left over, as a share of the load. */
  readonly residual: number;
}

/** Forces of studs, cells and plates in their order, at an opening. */
export function forcesIn(of: PackedFace, q: Opening): FaceForces {
  const { face, ends } = of;
  // turned round with care: minus naught is no force
  const cells = face.cells.map((_, k) => Math.abs(forceAt(of, ends[0] + k, q)));
  const carried = face.cells.reduce((sum, { pressed }) => sum + pressed, 0);
  const open = face.cells.reduce((sum, { pressed }, k) => sum + (cells[k] === 0 ? pressed : 0), 0);
  return {
    ...studsAndPlatesIn(of, q),
    cells,
    opened: carried === 0 ? 0 : open / carried,
  };
}

export const studsAndPlatesIn = (of: PackedFace, q: Opening): Pick<FaceForces, 'studs' | 'plates'> => ({
  studs: of.face.studs.map((_, k) => forceAt(of, k, q)),
  plates: of.face.plates.map((_, k) => forceAt(of, of.ends[1] + k, q)),
});

/** Sum of the cells of each pad, where every stud has as many, and the part that is open: `forcesIn` in short. */
export function padsIn(of: PackedFace, q: Opening): Pick<FaceForces, 'opened'> & { readonly pads: Newton[] } {
  const { rest, ends } = of;
  const each = (ends[1] - ends[0]) / ends[0];
  const pads: Newton[] = [];
  let carried = 0;
  let open = 0;
  for (let i = ends[0]; i < ends[1]; ) {
    let sum = 0;
    for (const end = i + each; i < end; i += 1) {
      const force = forceAt(of, i, q);
      sum -= force;
      carried -= rest[i]!;
      if (force === 0) open -= rest[i]!;
    }
    pads.push(sum);
  }
  return { pads, opened: carried === 0 ? 0 : open / carried };
}

export interface FaceForces {
  readonly studs: readonly Newton[];
  readonly cells: readonly Newton[];
  readonly plates: readonly Newton[];
  /** Part of the cells that carried before and are open now, by the force that pressed them. */
  readonly opened: number;
}

export interface FaceUnderLoad extends FaceForces {
  readonly opening: { readonly at: Metre; readonly perY: number; readonly perZ: number };
  readonly residual: number;
}

/** @throws FaceParted where nothing holds */
export function faceUnder(face: Face, load: Parting): FaceUnderLoad {
  const packed = packFace(face);
  const { opening, residual } = openingOf(packed, load);
  const [at, perY, perZ] = opening;
  return { ...forcesIn(packed, opening), opening: { at, perY, perZ }, residual };
}

const dot3 = (a: Opening, b: Opening): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const along3 = (a: Opening, b: Opening, k: number): Opening => [
  a[0] + k * b[0],
  a[1] + k * b[1],
  a[2] + k * b[2],
];

export interface Pad {
  readonly centre: FacePoint;
  /** Diameters of the ring that bears. */
  readonly inner: Metre;
  readonly outer: Metre;
  readonly stiffness: NewtonPerMetre;
  readonly pressed: Newton;
}

const RINGS = 3;
const SECTORS = 16;
/** Part of a ring's area inside the middle of each cell, and the way in which the cell lies. */
const CELLS = Array.from({ length: RINGS * SECTORS }, (_, k) => {
  const angle = (2 * Math.PI * ((k % SECTORS) + 0.5)) / SECTORS;
  // halves of each ring's area lie inside and outside this radius
  return {
    within: (Math.floor(k / SECTORS) + 0.5) / RINGS,
    y: Math.cos(angle),
    z: Math.sin(angle),
  };
});

/** The ring round a stud in cells of equal area, each with its share of stiffness and of what presses it. */
export function padCells({ centre, inner, outer, stiffness, pressed }: Pad): FaceCell[] {
  const [a, b] = [(inner / 2) ** 2, (outer / 2) ** 2];
  return CELLS.map(({ within, y, z }) => {
    const radius = Math.sqrt(a + within * (b - a));
    return {
      y: centre.y + radius * y,
      z: centre.z + radius * z,
      stiffness: stiffness / CELLS.length,
      pressed: pressed / CELLS.length,
    };
  });
}
