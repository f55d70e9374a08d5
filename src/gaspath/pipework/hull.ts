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
}

const TURN = 2 * Math.PI;

/** How far the disc reaches in a direction. */
const reach = ({ centre, radius }: Disc, angle: Radian): Metre =>
  centre.x * Math.cos(angle) + centre.y * Math.sin(angle) + radius;

/**
 * Outline of the least convex shape round all discs.
 *
 * The disc that reaches furthest in a direction holds the outline there; another takes over where the two reach alike.
 */
export function hullOf(discs: readonly Disc[], use: LineUse): readonly TemplateLine[] {
  const outer = outermost(discs);
  const arcs: TemplateArc[] = [];
  let angle = 0;
  let current = furthest(outer, angle);
  while (angle < TURN) {
    const next = takeover(outer, current, angle);
    const end = Math.min(next?.angle ?? TURN, TURN);
    if (end - angle > 1e-12) arcs.push({ kind: 'arc', use, ...current, from: angle, to: end });
    angle = end;
    if (next !== undefined) current = next.disc;
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
        const apart = Math.hypot(other.centre.x - each.centre.x, other.centre.y - each.centre.y);
        const within = apart + each.radius - other.radius;
        return j !== k && (within < -1e-12 || (within <= 1e-12 && (apart > 1e-12 || j < k)));
      }),
  );

function furthest(discs: readonly Disc[], angle: Radian): Disc {
  // just behind the direction, so that of two alike the one that holds next is taken
  const behind = angle + 1e-9;
  return discs.reduce((a, b) => (reach(b, behind) > reach(a, behind) ? b : a));
}

/** The next disc anticlockwise that reaches further than `from` does. */
function takeover(
  discs: readonly Disc[],
  from: Disc,
  angle: Radian,
): { readonly disc: Disc; readonly angle: Radian } | undefined {
  let best: { disc: Disc; angle: Radian; apart: Metre } | undefined;
  for (const disc of discs) {
    if (disc === from) continue;
    const [x, y] = [disc.centre.x - from.centre.x, disc.centre.y - from.centre.y];
    const apart = Math.hypot(x, y);
    const turn = Math.acos((from.radius - disc.radius) / apart);
    let at = Math.atan2(y, x) - turn;
    while (at < angle + 1e-9) at += TURN;
    const sooner = best === undefined || at < best.angle - 1e-12;
    const further = best !== undefined && Math.abs(at - best.angle) <= 1e-12 && apart > best.apart;
    if (sooner || further) best = { disc, angle: at, apart };
  }
  return best;
}

/** The arc that begins at 0 may be the rest of the one that ends at a full turn. */
function joinedAtStart(arcs: readonly TemplateArc[]): readonly TemplateArc[] {
  const [first, last] = [arcs[0]!, arcs.at(-1)!];
  const same = first.centre === last.centre && first.radius === last.radius;
  if (arcs.length < 2 || !same) return arcs;
  return [{ ...last, to: first.to + TURN }, ...arcs.slice(1, -1)];
}
