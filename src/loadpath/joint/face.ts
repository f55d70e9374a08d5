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
import { Matrix, solve } from 'ml-matrix';
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

export interface FaceUnderLoad {
  readonly studs: readonly Newton[];
  readonly cells: readonly Newton[];
  readonly plates: readonly Newton[];
  /** Part of the cells that carried before and are open now, by the force that pressed them. */
  readonly opened: number;
  readonly opening: { readonly at: Metre; readonly perY: number; readonly perZ: number };
  /** Largest of the three equations left over, as a share of the load. */
  readonly residual: number;
}

/** The load is more than anything here can hold. */
export class FaceParted extends Error {
  constructor() {
    super(
      'Nothing holds the two bodies together under this load: no stud or plate is on the side that is pulled.',
    );
    this.name = 'FaceParted';
  }
}

type Opening = readonly [number, number, number];

const apart = (at: FacePoint, [w, perY, perZ]: Opening): number => w + perY * at.y + perZ * at.z;

const studForce = (stud: FaceStud, w: number): Newton => Math.max(0, stud.preload + stud.stiffness * w);
const cellForce = (cell: FaceCell, w: number): Newton => Math.max(0, cell.pressed - cell.stiffness * w);

/** What holds the face at an opening, less the load: force and two moments; and how it changes.  [JT-1, JT-2] */
function balance(face: Face, load: Parting, q: Opening): { readonly left: Opening; readonly slope: Matrix } {
  let [f, fy, fz] = [-load.pull, -load.byY, -load.byZ];
  let [k, ky, kz, kyy, kyz, kzz] = [0, 0, 0, 0, 0, 0];
  // sums in plain numbers: a spread solves the face thousands of times over hundreds of cells
  const put = ({ y, z }: FacePoint, force: Newton, stiffness: NewtonPerMetre): void => {
    f += force;
    fy += force * y;
    fz += force * z;
    k += stiffness;
    ky += stiffness * y;
    kz += stiffness * z;
    kyy += stiffness * y * y;
    kyz += stiffness * y * z;
    kzz += stiffness * z * z;
  };
  for (const stud of face.studs) {
    const force = studForce(stud, apart(stud, q));
    put(stud, force, force > 0 ? stud.stiffness : 0);
  }
  for (const cell of face.cells) {
    const force = cellForce(cell, apart(cell, q));
    put(cell, -force, force > 0 ? cell.stiffness : 0);
  }
  for (const plate of face.plates) put(plate, plate.stiffness * apart(plate, q), plate.stiffness);
  return {
    left: [f, fy, fz],
    slope: new Matrix([
      [k, ky, kz],
      [ky, kyy, kyz],
      [kz, kyz, kzz],
    ]),
  };
}

const MOST_STEPS = 200;
const CLOSED = 1e-10;

/** @throws FaceParted where nothing holds */
export function faceUnder(face: Face, load: Parting): FaceUnderLoad {
  const reach = Math.max(1e-3, ...[...face.studs, ...face.cells].map(({ y, z }) => Math.hypot(y, z)));
  const strength =
    Math.abs(load.pull) +
    Math.hypot(load.byY, load.byZ) / reach +
    face.studs.reduce((sum, { preload }) => sum + preload, 0);
  const size = (left: Opening): number =>
    Math.max(Math.abs(left[0]), Math.abs(left[1]) / reach, Math.abs(left[2]) / reach) / (strength || 1);
  // a trace of every stiffness keeps the step defined where all has come loose for a moment
  const stiffest = Math.max(
    ...[...face.studs, ...face.cells, ...face.plates].map(({ stiffness }) => stiffness),
  );
  const trace = Matrix.diag([1, reach * reach, reach * reach]).mul(1e-9 * stiffest);
  let q: Opening = [0, 0, 0];
  let now = balance(face, load, q);
  for (let step = 0; step < MOST_STEPS && size(now.left) > CLOSED; step += 1) {
    const move = solve(
      Matrix.add(now.slope, trace),
      Matrix.columnVector(now.left.map((each) => -each)),
    ).to1DArray() as unknown as Opening;
    // down the convex energy: the slope along the move must not have turned upward past the end
    const steepness = dot3(now.left, move);
    let part = 1;
    let to = along3(q, move, part);
    let next = balance(face, load, to);
    for (let half = 0; half < 60 && dot3(next.left, move) > -0.5 * steepness; half += 1) {
      part /= 2;
      to = along3(q, move, part);
      next = balance(face, load, to);
    }
    q = to;
    now = next;
    if (Math.max(...q.map(Math.abs)) > 0.2) throw new FaceParted();
  }
  if (size(now.left) > 1e-6) throw new FaceParted();
  const cells = face.cells.map((cell) => cellForce(cell, apart(cell, q)));
  const carried = face.cells.reduce((sum, { pressed }) => sum + pressed, 0);
  const open = face.cells.reduce((sum, { pressed }, k) => sum + (cells[k] === 0 ? pressed : 0), 0);
  return {
    studs: face.studs.map((stud) => studForce(stud, apart(stud, q))),
    cells,
    plates: face.plates.map((plate) => plate.stiffness * apart(plate, q)),
    opened: carried === 0 ? 0 : open / carried,
    opening: { at: q[0], perY: q[1], perZ: q[2] },
    residual: size(now.left),
  };
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
