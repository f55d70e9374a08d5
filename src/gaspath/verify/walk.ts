/**
 * A pipe walked from its flange, element by element, by turning the direction about each bend's normal.
 *
 * Shares nothing with the finder: what one gets wrong the other shall see.
 */
import { add, along, cross, dot, length, scale, sub, turned, unit, type Vec3 } from '../../maths/vec3.ts';

export interface Piece {
  readonly kind: 'straight' | 'bend';
  /** Length along the pipe at its start and end, mm. */
  readonly from: number;
  readonly to: number;
  readonly p: Vec3;
  readonly d: Vec3;
  readonly centre: Vec3;
  readonly normal: Vec3;
  readonly radius: number;
  readonly angle: number;
}

export interface Walked {
  readonly pieces: readonly Piece[];
  readonly length: number;
  readonly end: Vec3;
  readonly endDirection: Vec3;
  /** By how much the normals lean from square, at worst, as a sine. */
  readonly lean: number;
}

export interface Step {
  readonly kind: 'straight' | 'bend';
  readonly length: number;
  readonly radius: number;
  readonly angle: number;
  readonly normal: Vec3;
}

export function walk(start: { readonly p: Vec3; readonly d: Vec3 }, steps: readonly Step[]): Walked {
  const pieces: Piece[] = [];
  let { p } = start;
  let d = unit(start.d);
  let s = 0;
  let lean = 0;
  for (const step of steps) {
    const long = step.kind === 'straight' ? step.length : step.radius * step.angle;
    const normal = step.kind === 'straight' ? d : unit(step.normal);
    if (step.kind === 'bend')
      lean = Math.max(lean, Math.abs(dot(normal, d)), Math.abs(length(step.normal) - 1));
    const centre = step.kind === 'straight' ? p : along(p, cross(normal, d), step.radius);
    const piece: Piece = {
      kind: step.kind,
      from: s,
      to: s + long,
      p,
      d,
      centre,
      normal,
      radius: step.radius,
      angle: step.angle,
    };
    pieces.push(piece);
    p = pointOn(piece, s + long);
    if (step.kind === 'bend') d = unit(turned(d, normal, step.angle));
    s += long;
  }
  return { pieces, length: s, end: p, endDirection: d, lean };
}

/** Point at a length along the pipe that lies in the piece. */
export function pointOn(piece: Piece, s: number): Vec3 {
  if (piece.kind === 'straight') return along(piece.p, piece.d, s - piece.from);
  if (piece.radius === 0) return piece.p;
  return add(piece.centre, turned(sub(piece.p, piece.centre), piece.normal, (s - piece.from) / piece.radius));
}

export function pointAt(pipe: Walked, s: number): Vec3 {
  const piece = pipe.pieces.find((each) => s <= each.to) ?? pipe.pieces.at(-1)!;
  return pointOn(piece, s);
}

/** Distance from a point to the part of a piece between two lengths along the pipe, in closed form. */
export function toPiece(x: Vec3, piece: Piece, from: number, to: number): number {
  const low = Math.max(from, piece.from);
  const high = Math.min(to, piece.to);
  if (low > high) return Infinity;
  if (piece.kind === 'straight') {
    const t = Math.min(high, Math.max(low, piece.from + dot(sub(x, piece.p), piece.d)));
    return length(sub(x, along(piece.p, piece.d, t - piece.from)));
  }
  // in the plane of the bend, by the angle round its centre
  const arm = sub(x, piece.centre);
  const flat = sub(arm, scale(piece.normal, dot(arm, piece.normal)));
  const first = sub(piece.p, piece.centre);
  const ends = Math.min(length(sub(x, pointOn(piece, low))), length(sub(x, pointOn(piece, high))));
  if (length(flat) < 1e-9 || piece.radius === 0) return ends;
  let turn = Math.atan2(dot(cross(first, flat), piece.normal), dot(first, flat));
  if (turn < 0) turn += 2 * Math.PI;
  const s = piece.from + turn * piece.radius;
  if (s < low || s > high) return ends;
  return Math.min(ends, length(sub(arm, scale(unit(flat), piece.radius))));
}
