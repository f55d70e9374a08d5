/**
 * How the car is looked at: a parallel projection, as a drawing has it.
 *
 * In    a view (plan, side, front, rear, or free by two angles) and what must fit into which part of the paper
 * Out   a projection from metres in car axes to pixels on the paper, and back for a hand that drags
 * Axes  car axes ISO 8855; on the paper x to the right, y down
 * Not   perspective: off on a drawing, so that equal lengths look equal
 */
import { cross, dot, scale, type Vec3 } from '../../maths/vec3.ts';

export const VIEWS = ['front', 'rear', 'side', 'plan', 'free', 'car'] as const;
export type View = (typeof VIEWS)[number];

export interface Look {
  /** Unit vectors of the paper in car axes. */
  readonly right: Vec3;
  readonly up: Vec3;
  /** From the paper to the eye. */
  readonly toward: Vec3;
}

/**
 * A view in the round, of one axle (`free`) or of the whole car (`car`), by azimuth (0: from ahead, positive
 * to the car's left) and elevation, rad.
 */
export interface Turn {
  readonly azimuth: number;
  readonly elevation: number;
}

export const FIRST_TURN: Turn = { azimuth: 0.62, elevation: 0.42 };

const UP: Vec3 = [0, 0, 1];

export function lookOf(view: View, turn: Turn, side: 'left' | 'right', wide: boolean): Look {
  const y = side === 'left' ? 1 : -1;
  switch (view) {
    case 'front':
      return facing([1, 0, 0], UP);
    case 'rear':
      return facing([-1, 0, 0], UP);
    case 'side':
      return facing([0, y, 0], UP);
    case 'plan':
      // nose to the left on wide paper, as the side view has it; nose up on tall paper
      return wide ? facing([0, 0, 1], [0, -1, 0]) : facing([0, 0, 1], [1, 0, 0]);
    case 'free':
    case 'car': {
      const { azimuth, elevation } = turn;
      const toward: Vec3 = [
        Math.cos(elevation) * Math.cos(azimuth),
        Math.cos(elevation) * Math.sin(azimuth),
        Math.sin(elevation),
      ];
      const right: Vec3 = [-Math.sin(azimuth), Math.cos(azimuth), 0];
      return { right, up: cross(toward, right), toward };
    }
  }
}

const facing = (toward: Vec3, up: Vec3): Look => ({ toward, up, right: cross(up, toward) });

export interface Area {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** A look with its scale and place on the paper. */
export interface Frame extends Look {
  /** Pixels per metre. */
  readonly scale: number;
  /** Point of the car that stands in the middle of the area. */
  readonly centre: Vec3;
  /** Where that is on the paper. */
  readonly x: number;
  readonly y: number;
}

export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** The frame in which all these points fit into the area, in the middle of it. */
export function framed(look: Look, points: readonly Vec3[], area: Area, zoom = 1): Frame {
  const across = points.map((point) => dot(point, look.right));
  const along = points.map((point) => dot(point, look.up));
  const [left, right] = ends(across);
  const [low, high] = ends(along);
  const fit = Math.min(area.width / Math.max(right - left, 0.1), area.height / Math.max(high - low, 0.1));
  const middle = [scale(look.right, (left + right) / 2), scale(look.up, (low + high) / 2)] as const;
  return {
    ...look,
    scale: fit * zoom,
    centre: [middle[0][0] + middle[1][0], middle[0][1] + middle[1][1], middle[0][2] + middle[1][2]],
    x: area.left + area.width / 2,
    y: area.top + area.height / 2,
  };
}

const ends = (values: readonly number[]): readonly [number, number] =>
  values.length === 0 ? [-1, 1] : [Math.min(...values), Math.max(...values)];

export function projected(frame: Frame, point: Vec3): Spot {
  return {
    x: frame.x + frame.scale * (dot(point, frame.right) - dot(frame.centre, frame.right)),
    y: frame.y - frame.scale * (dot(point, frame.up) - dot(frame.centre, frame.up)),
  };
}

/** The smallest loop round these spots (monotone chain), in order round it. */
export function outline(spots: readonly Spot[]): readonly Spot[] {
  const sorted = [...spots].sort((a, b) => a.x - b.x || a.y - b.y);
  if (sorted.length < 3) return sorted;
  const half = (list: readonly Spot[]): Spot[] => {
    const loop: Spot[] = [];
    for (const spot of list) {
      while (loop.length > 1 && turn(loop.at(-2)!, loop.at(-1)!, spot) <= 0) loop.pop();
      loop.push(spot);
    }
    return loop.slice(0, -1);
  };
  return [...half(sorted), ...half(sorted.reverse())];
}

const turn = (a: Spot, b: Spot, c: Spot): number => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);

export function inside(loop: readonly Spot[], spot: Spot): boolean {
  return loop.length > 2 && loop.every((corner, k) => turn(corner, loop[(k + 1) % loop.length]!, spot) >= 0);
}
