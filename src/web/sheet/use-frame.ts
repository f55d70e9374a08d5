/** The frame of the drawing on this paper: what is shown, how large, and the columns left free for the figures. */
import { useMemo } from 'react';
import { add, along, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End } from '../../questions/figure.ts';
import type { Place } from '../place.ts';
import { extent } from '../scene/bodies.ts';
import { type Frame, framed, lookOf, type View } from '../scene/look.ts';
import type { Size } from './use-size.ts';

export interface LabelSize {
  /** In full with words, in short with a number and its unit, or only a balloon with a number to the card's list. */
  readonly kind: 'full' | 'short' | 'balloon';
  readonly column: number;
}

export function labelSize(width: number): LabelSize {
  if (width >= 860) return { kind: 'full', column: 234 };
  if (width >= 560) return { kind: 'short', column: 150 };
  return { kind: 'balloon', column: 44 };
}

/** A view along the car shows one axle; the others show all of it. */
export const onlyEnd = (view: View, end: End): End | undefined =>
  view === 'front' || view === 'rear' ? end : undefined;

interface Wanted {
  readonly place: Pick<Place, 'view' | 'turn' | 'wheel'>;
  readonly standing: Drawing;
  readonly size: Size;
  readonly label: LabelSize;
  readonly zoom: number;
}

export function useFrame({ place, standing, size, label, zoom }: Wanted): Frame {
  const { view, turn, wheel } = place;
  const { width, height } = size;
  const { column } = label;
  const { end, side } = wheel;
  const { azimuth, elevation } = turn;
  return useMemo(() => {
    const wide = width > height;
    const look = lookOf(view, { azimuth, elevation }, side, wide);
    const all = extent(standing, onlyEnd(view, end));
    const points = view === 'free' ? ball(all, look.right, look.up) : all;
    const margin = label.kind === 'balloon' ? 8 : 30;
    const area = {
      left: column + margin,
      top: 20,
      width: Math.max(80, width - 2 * (column + margin)),
      height: Math.max(60, height - 64),
    };
    const whole = framed(look, points, area, zoom);
    // what one looks at closely is the chosen wheel
    const corner = extent({
      ...standing,
      corners: standing.corners.filter((each) => each.wheel.end === end && each.wheel.side === side),
    });
    const near = framed(look, corner, area).centre;
    const part = Math.min(1, Math.max(0, (zoom - 1) / 1.5));
    return { ...whole, centre: add(scale(whole.centre, 1 - part), scale(near, part)) };
  }, [view, azimuth, elevation, side, end, standing, width, height, column, label.kind, zoom]);
}

/** A free view is framed by a ball round the car, so that it keeps its size while it is turned. */
function ball(points: readonly Vec3[], right: Vec3, up: Vec3): readonly Vec3[] {
  const low: Vec3 = [0, 1, 2].map((k) => Math.min(...points.map((point) => point[k]!))) as unknown as Vec3;
  const high: Vec3 = [0, 1, 2].map((k) => Math.max(...points.map((point) => point[k]!))) as unknown as Vec3;
  const middle = scale(add(low, high), 0.5);
  const radius = 0.5 * Math.hypot(...sub(high, low));
  return [
    along(middle, right, radius * 0.86),
    along(middle, right, -radius * 0.86),
    along(middle, up, radius * 0.5),
    along(middle, up, -radius * 0.5),
  ];
}
