/**
 * The centreline of a pipe in space.
 *
 * In    a pipe
 * Out   where each element begins and how it points, the place at any length from the flange, the corners of bends
 * Axes  those of the pipe
 */
import { add, along, sub, turned, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type Bend, type Element, elementLength, inwards, type Pipe } from './pipe.ts';

export interface Place {
  readonly p: Vec3;
  /** Direction of flow, unit. */
  readonly t: Vec3;
}

export interface Station extends Place {
  /** From the flange along the centreline. */
  readonly s: Metre;
}

/** The place a given length into an element that begins at `from`. */
export function into(element: Element, from: Place, l: Metre): Place {
  if (element.kind === 'straight') return { p: along(from.p, from.t, l), t: from.t };
  const turn = element.radius === 0 ? 0 : l / element.radius;
  const centre = along(from.p, inwards(element, from.t), element.radius);
  return {
    p: add(centre, turned(sub(from.p, centre), element.normal, turn)),
    t: turned(from.t, element.normal, turn),
  };
}

/** Where each element begins, and last where the pipe ends: one more than there are elements. */
export function stations(pipe: Pick<Pipe, 'start' | 'elements'>): readonly Station[] {
  const found: Station[] = [{ p: pipe.start.p, t: pipe.start.d, s: 0 }];
  for (const element of pipe.elements) {
    const from = found.at(-1)!;
    const l = elementLength(element);
    found.push({ ...into(element, from, l), s: from.s + l });
  }
  return found;
}

export const mouth = (pipe: Pick<Pipe, 'start' | 'elements'>): Station => stations(pipe).at(-1)!;

/** The place `s` from the flange; before it and behind the mouth the pipe goes on straight. */
export function placeAt(pipe: Pick<Pipe, 'start' | 'elements'>, s: Metre): Place {
  const begins = stations(pipe);
  const end = begins.at(-1)!;
  if (s >= end.s) return { p: along(end.p, end.t, s - end.s), t: end.t };
  if (s <= 0) return { p: along(pipe.start.p, pipe.start.d, s), t: pipe.start.d };
  const k = begins.findLastIndex((each) => each.s <= s);
  return into(pipe.elements[k]!, begins[k]!, s - begins[k]!.s);
}

/** Centre of the arc of a bend that begins at `from`. */
export const arcCentre = (bend: Bend, from: Place): Vec3 => along(from.p, inwards(bend, from.t), bend.radius);

const tangentLength = formula({
  symbol: 'T',
  means: 'from where a bend begins to its corner',
  is: 'R*tan(θ/2)',
  unit: 'm',
  terms: {
    R: { unit: 'm', means: 'radius of the centreline' },
    θ: { unit: 'rad', means: 'angle of the bend' },
  },
  source: 'PW-11',
  holds: 'below 180°, where the two straights still meet',
});

/** R tan(θ/2): from the begin of a bend to the point where its two straights meet.  [PW-11] */
export const setback = (of: { readonly radius: Metre; readonly angle: Radian }, working?: Working): Metre =>
  tangentLength({ R: of.radius, θ: of.angle }, working);

/** Beyond this a corner lies so far out that no jig has it: more than 3.7 radii. */
export const MOST_CORNER: Radian = (150 * Math.PI) / 180;

/** Where the straights before and behind a bend would meet; none for a bend that nearly turns back. */
export const cornerOf = (bend: Bend, from: Place): Vec3 | undefined =>
  bend.angle > MOST_CORNER ? undefined : along(from.p, from.t, setback(bend));
