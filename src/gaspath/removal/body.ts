/**
 * What is taken off the car as one: balls along its pipes, round its flange plates and over its collector. mm.
 *
 * Balls of the tube's own radius, 6 mm apart, lie within 0.2 mm of its skin.
 */
import { add, along, cross, scale, turned, unit, type Vec3 } from '../../maths/vec3.ts';
import { radiusAt, sizesOf, type Thick } from '../verify/sizes.ts';
import { pointAt, type Walked } from '../verify/walk.ts';

export interface Ball {
  readonly at: Vec3;
  readonly r: number;
}

export interface Body {
  readonly name: string;
  readonly balls: readonly Ball[];
}

/** A flange plate: its middle at the outer face, out along the port. */
export interface Plate {
  readonly at: Vec3;
  readonly axis: Vec3;
  readonly thick: number;
  /** Discs whose outsides the outline runs round: the port with its land, each hole with its land. */
  readonly discs: readonly { readonly at: Vec3; readonly r: number }[];
}

const APART = 6;
const ROUND = 10;

export const ballsOfPipe = (path: Walked, thick: Thick): readonly Ball[] => {
  const sizes = sizesOf(thick, path.length);
  const count = Math.max(1, Math.ceil(path.length / APART));
  return Array.from({ length: count + 1 }, (_, k) => ({
    at: pointAt(path, (path.length * k) / count),
    r: radiusAt(sizes, (path.length * k) / count),
  }));
};

export function ballsOfPlate({ axis, thick, discs }: Plate): readonly Ball[] {
  const r = thick / 2;
  return discs.flatMap(({ at, r: out }) => ring(along(at, axis, -r), axis, Math.max(0, out - r), r));
}

/** The skin of a cylinder: rings of small balls within it. */
export function ballsOfDrum(from: Vec3, axis: Vec3, long: number, radius: number): readonly Ball[] {
  const r = 4;
  const rings = Math.max(2, Math.ceil(long / (3 * APART)));
  return Array.from({ length: rings + 1 }, (_, k) =>
    ring(along(from, axis, r + ((long - 2 * r) * k) / rings), axis, radius - r, r),
  ).flat();
}

function ring(middle: Vec3, axis: Vec3, radius: number, r: number): Ball[] {
  const u = unit(cross(axis, Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  return Array.from({ length: ROUND }, (_, k) => ({
    at: add(middle, scale(turned(u, axis, (2 * Math.PI * k) / ROUND), radius)),
    r,
  }));
}
