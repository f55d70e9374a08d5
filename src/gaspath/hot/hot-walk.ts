/**
 * A moved line as the checker walks pipes: arcs through its places, in mm.
 *
 * Heat and force leave no straights and no true arcs; three places next to each other fix an arc that lies within a
 * few thousandths of a millimetre of the line between them.
 */
import { add, cross, distance, dot, length, scale, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Piece, Walked } from '../verify/walk.ts';

/** Below this much bow a stretch is straight, mm. */
const BOW = 1e-4;

/** @param points  along the pipe from its flange, an odd number of them, mm */
export function walkThrough(points: readonly Vec3[]): Walked {
  const pieces: Piece[] = [];
  let s = 0;
  for (let k = 0; k + 2 < points.length; k += 2) {
    const piece = stretch(points[k]!, points[k + 1]!, points[k + 2]!, s);
    pieces.push(piece);
    s = piece.to;
  }
  const last = points.at(-1)!;
  return { pieces, length: s, end: last, endDirection: unit(sub(last, points.at(-2)!)), lean: 0 };
}

function stretch(a: Vec3, b: Vec3, c: Vec3, from: number): Piece {
  const ab = sub(b, a);
  const ac = sub(c, a);
  const normal = cross(ab, ac);
  const chord = length(ac);
  const bow = length(normal) / chord;
  if (bow < BOW) {
    const d = scale(ac, 1 / chord);
    return {
      kind: 'straight',
      from,
      to: from + chord,
      p: a,
      d,
      centre: a,
      normal: d,
      radius: 0,
      angle: 0,
    };
  }
  // centre of the circle through three points
  const size = dot(normal, normal);
  const toCentre = scale(
    add(scale(cross(normal, ab), dot(ac, ac)), scale(cross(ac, normal), dot(ab, ab))),
    1 / (2 * size),
  );
  const centre = add(a, toCentre);
  const n = scale(normal, 1 / Math.sqrt(size));
  const radius = distance(a, centre);
  const angle = 2 * Math.asin(Math.min(1, chord / (2 * radius)));
  return {
    kind: 'bend',
    from,
    to: from + radius * angle,
    p: a,
    d: unit(cross(n, sub(a, centre))),
    centre,
    normal: n,
    radius,
    angle,
  };
}
