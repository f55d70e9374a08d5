/** The frame of the drawing on this paper: what is shown, how large, and the columns left free for the figures. */
import { useMemo } from 'react';
import { add, along, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Wheel } from '../../questions/figure.ts';
import type { Place } from '../place.ts';
import { extent } from '../scene/bodies.ts';
import { type Area, type Frame, framed, type Look, lookOf, type View } from '../scene/look.ts';
import type { Sides } from './lay-labels.ts';
import type { Size } from './use-size.ts';

export interface LabelSize {
  /** In full with words, in short with a number and its unit, or only a balloon with a number to the card's list. */
  readonly kind: 'full' | 'short' | 'balloon' | 'none';
  readonly column: number;
}

export function labelSize(width: number): LabelSize {
  if (width >= 700) return { kind: 'full', column: 248 };
  if (width >= 480) return { kind: 'short', column: 172 };
  return { kind: 'balloon', column: 56 };
}

/** A view along the car, or of the axle in the round, shows one axle; the others show all of it. */
export const onlyEnd = (view: View, end: End): End | undefined =>
  view === 'front' || view === 'rear' || view === 'free' ? end : undefined;

interface Wanted {
  readonly place: Pick<Place, 'view' | 'turn' | 'wheel'>;
  readonly standing: Drawing;
  readonly size: Size;
  readonly label: LabelSize;
  /** How many figures stand on it: few go into one column, on the side of the chosen wheel. */
  readonly figures: number;
  readonly zoom: number;
}

export interface FramedPaper {
  readonly frame: Frame;
  readonly sides: Sides;
}

/** Height of a label with its gap, by kind. */
const ROW = { full: 88, short: 56, balloon: 54, none: 0 } as const;

export function useFrame({ place, standing, size, label, figures, zoom }: Wanted): FramedPaper {
  const { view, turn, wheel } = place;
  const { width, height } = size;
  const { end, side } = wheel;
  const { azimuth, elevation } = turn;
  return useMemo(() => {
    const look = lookOf(view, { azimuth, elevation }, side, width > height);
    const all = extent(standing, onlyEnd(view, end));
    const chosen = ofWheel(standing, { end, side });
    const sides = figures * ROW[label.kind] > height ? 'both' : sideOf(look, all, chosen);
    const area = areaOf(size, label, sides, view);
    const whole = framed(look, view === 'free' || view === 'car' ? ball(all, look) : all, area, zoom);
    // what one looks at closely is the chosen wheel
    const near = framed(look, chosen, area).centre;
    const part = Math.min(1, Math.max(0, (zoom - 1) / 1.5));
    return { frame: { ...whole, centre: add(scale(whole.centre, 1 - part), scale(near, part)) }, sides };
  }, [view, azimuth, elevation, side, end, standing, size, width, height, label, figures, zoom]);
}

const ofWheel = (drawing: Drawing, { end, side }: Wheel): readonly Vec3[] =>
  extent({
    ...drawing,
    corners: drawing.corners.filter((each) => each.wheel.end === end && each.wheel.side === side),
  });

const mean = (points: readonly Vec3[], axis: Vec3): number =>
  points.reduce((sum, point) => sum + dot(point, axis), 0) / Math.max(points.length, 1);

const sideOf = (look: Look, all: readonly Vec3[], chosen: readonly Vec3[]): Sides =>
  mean(chosen, look.right) >= mean(all, look.right) ? 'right' : 'left';

function areaOf({ width, height }: Size, { kind, column }: LabelSize, sides: Sides, view: View): Area {
  const margin = kind === 'balloon' || kind === 'none' ? 12 : 34;
  const left = sides === 'right' ? margin : column + margin;
  const right = sides === 'left' ? margin : column + margin;
  return {
    left,
    top: 18,
    width: Math.max(80, width - left - right),
    height: Math.max(60, height - (view === 'front' || view === 'rear' ? 82 : 56)),
  };
}

/** A free view is framed by a ball round the car, so that it keeps its size while it is turned. */
function ball(points: readonly Vec3[], { right, up }: Look): readonly Vec3[] {
  const bound = (of: (...values: number[]) => number): Vec3 => {
    const at = (k: 0 | 1 | 2): number =>
      points.reduce((held, point) => of(held, point[k]), points[0]?.[k] ?? 0);
    return [at(0), at(1), at(2)];
  };
  const low = bound(Math.min);
  const high = bound(Math.max);
  const middle = scale(add(low, high), 0.5);
  const radius = 0.5 * Math.hypot(...sub(high, low));
  return [
    along(middle, right, radius * 0.86),
    along(middle, right, -radius * 0.86),
    along(middle, up, radius * 0.5),
    along(middle, up, -radius * 0.5),
  ];
}
