/**
 * A band laid round discs: the outline of port shapes and flange plates, in arcs and straight lines.
 *
 * In    discs, by centre and radius
 * Out   the outline anticlockwise: arcs of the discs that it touches and lines between them
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { type LineUse, onArc, type Point2, type TemplateArc, type TemplateLine } from './template.ts';

export interface Disc {
  readonly centre: Point2;
  readonly radius: Metre;
  /** Directions in which it counts, within 0 to 2π; all where left out. A half disc counts over half a turn. */
  readonly over?: readonly [Radian, Radian];
}

const TURN = 2 * Math.PI;

/** Of a direction: apart from rounding, and far below what a drawing shows. */
const HAIR: Radian = 1e-9;

/** How far the disc reaches in a direction. */
export function reach({ centre, radius, over }: Disc, angle: Radian): Metre {
  const counts = over === undefined || (angle >= over[0] && angle <= over[1]);
  return counts ? centre.x * Math.cos(angle) + centre.y * Math.sin(angle) + radius : -Infinity;
}

/**
 * Outline of the least convex shape round all discs.
 *
 * The disc that reaches furthest in a direction holds the outline there; another takes over where the two reach alike.
 */
export function hullOf(discs: readonly Disc[], use: LineUse): readonly TemplateLine[] {
  const outer = outermost(discs);
  const arcs: TemplateArc[] = [];
  let angle = 0;
  while (angle < TURN) {
    const current = furthest(outer, angle);
    const end = nextChange(outer, current, angle);
    const { centre, radius } = current;
    arcs.push({ kind: 'arc', use, centre, radius, from: angle, to: end });
    angle = end;
  }
  const joined = joinedAtStart(arcs);
  return joined.flatMap((arc, k): TemplateLine[] => {
    const after = joined[(k + 1) % joined.length]!;
    const [a, b] = [onArc(arc, arc.to), onArc(after, after.from)];
    const line: TemplateLine = { kind: 'polyline', use, closed: false, points: [a, b] };
    return Math.hypot(b.x - a.x, b.y - a.y) > 1e-9 ? [arc, line] : [arc];
  });
}

/** Without discs that lie within another. */
const outermost = (discs: readonly Disc[]): readonly Disc[] =>
  discs.filter(
    (each, k) =>
      !discs.some((other, j) => {
        if (j === k || other.over !== undefined) return false;
        const apart = Math.hypot(other.centre.x - each.centre.x, other.centre.y - each.centre.y);
        const within = apart + each.radius - other.radius;
        return within < -1e-12 || (within <= 1e-12 && (apart > 1e-12 || j < k));
      }),
  );

function furthest(discs: readonly Disc[], angle: Radian): Disc {
  // just behind the direction, so that of two alike the one that holds next is taken
  const behind = angle + HAIR;
  return discs.reduce((a, b) => (reach(b, behind) > reach(a, behind) ? b : a));
}

/** Where another disc reaches further for the first time: where two reach alike, or where one begins or ends to count. */
function nextChange(discs: readonly Disc[], from: Disc, angle: Radian): Radian {
  const changes = discs.flatMap((disc): Radian[] => {
    const ends = disc.over === undefined ? [] : [...disc.over];
    if (disc === from) return ends;
    const [x, y] = [disc.centre.x - from.centre.x, disc.centre.y - from.centre.y];
    const share = (from.radius - disc.radius) / Math.hypot(x, y);
    // one within the other: they never reach alike
    if (!(Math.abs(share) <= 1)) return ends;
    const alike = Math.atan2(y, x) - Math.acos(share);
    return [...ends, alike - TURN, alike, alike + TURN];
  });
  const next = changes
    .filter((each) => each > angle + 2 * HAIR && each < TURN - 2 * HAIR)
    .sort((a, b) => a - b)
    .find((each) => furthest(discs, each) !== from);
  return next ?? TURN;
}

/** The arc that begins at 0 may be the rest of the one that ends at a full turn. */
function joinedAtStart(arcs: readonly TemplateArc[]): readonly TemplateArc[] {
  const [first, last] = [arcs[0]!, arcs.at(-1)!];
  const same = first.centre === last.centre && first.radius === last.radius;
  if (arcs.length < 2 || !same) return arcs;
  return [{ ...last, to: first.to + TURN }, ...arcs.slice(1, -1)];
}
