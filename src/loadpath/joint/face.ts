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
  const springs = [
    ...face.studs.map(({ y, z, stiffness, preload }) => ({ y, z, stiffness, rest: preload })),
    ...face.cells.map(({ y, z, stiffness, pressed }) => ({ y, z, stiffness, rest: -pressed })),
    ...face.plates.map(({ y, z, stiffness }) => ({ y, z, stiffness, rest: 0 })),
  ];
  const row = (of: (spring: (typeof springs)[number]) => number): Float64Array =>
    Float64Array.from(springs, of);
  const held = face.studs.length + face.cells.length;
  return {
    face,
    y: row(({ y }) => y),
    z: row(({ z }) => z),
    rest: row(({ rest }) => rest),
    stiffness: row(({ stiffness }) => stiffness),
    ends: [face.studs.length, held],
    reach: Math.max(1e-3, ...springs.map(({ y, z }) => Math.hypot(y, z))),
    preload: face.studs.reduce((sum, { preload }) => sum + preload, 0),
    stiffest: Math.max(...springs.map(({ stiffness }) => stiffness)),
  };
}

/** Force of one spring at an opening: a stud does not push, a cell does not pull, a plate does both. */
function forceAt({ y, z, rest, stiffness, ends }: PackedFace, k: number, q: Opening): Newton {
  const force = rest[k]! + stiffness[k]! * (q[0] + q[1] * y[k]! + q[2] * z[k]!);
  if (k < ends[0]) return Math.max(0, force);
  return k < ends[1] && force > 0 ? 0 : force;
}

interface Balance {
  readonly left: Opening;
  /** k, ky, kz, kyy, kyz, kzz of all that still holds. */
  readonly slope: readonly [number, number, number, number, number, number];
}

/** What holds the face at an opening, less the load: force and two moments; and how it changes.  [JT-1, JT-2] */
function balance(of: PackedFace, load: Parting, q: Opening): Balance {
  let [f, fy, fz] = [-load.pull, -load.byY, -load.byZ];
  let [k, ky, kz, kyy, kyz, kzz] = [0, 0, 0, 0, 0, 0];
  const count = of.y.length;
  for (let i = 0; i < count; i += 1) {
    const force = forceAt(of, i, q);
    // loose: it gives nothing until it is touched again
    if (force === 0 && i < of.ends[1]) continue;
    const [y, z, stiffness] = [of.y[i]!, of.z[i]!, of.stiffness[i]!];
    f += force;
    fy += force * y;
    fz += force * z;
    k += stiffness;
    ky += stiffness * y;
    kz += stiffness * z;
    kyy += stiffness * y * y;
    kyz += stiffness * y * z;
    kzz += stiffness * z * z;
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
  const studs = face.studs.map((_, k) => forceAt(of, k, q));
  // turned round with care: minus naught is no force
  const cells = face.cells.map((_, k) => Math.abs(forceAt(of, ends[0] + k, q)));
  const carried = face.cells.reduce((sum, { pressed }) => sum + pressed, 0);
  const open = face.cells.reduce((sum, { pressed }, k) => sum + (cells[k] === 0 ? pressed : 0), 0);
  return {
    studs,
    cells,
    plates: face.plates.map((_, k) => forceAt(of, ends[1] + k, q)),
    opened: carried === 0 ? 0 : open / carried,
  };
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

/** The ring round a stud in cells of equal area, each with its share of stiffness and of what presses it. */
export function padCells(pad: Pad): FaceCell[] {
  const count = RINGS * SECTORS;
  const [a, b] = [(pad.inner / 2) ** 2, (pad.outer / 2) ** 2];
  return Array.from({ length: count }, (_, k) => {
    const ring = Math.floor(k / SECTORS);
    // halves of each ring's area lie inside and outside this radius
    const radius = Math.sqrt(a + ((ring + 0.5) / RINGS) * (b - a));
    const angle = (2 * Math.PI * ((k % SECTORS) + 0.5)) / SECTORS;
    return {
      y: pad.centre.y + radius * Math.cos(angle),
      z: pad.centre.z + radius * Math.sin(angle),
      stiffness: pad.stiffness / count,
      pressed: pad.pressed / count,
    };
  });
}
