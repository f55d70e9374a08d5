/**
 * What stands about a bank when hands and tools come to it: pipes, solids, bodywork; distances of points to each. mm.
 *
 * The distances are those of the checker, so that a tool is held to the same surfaces as a pipe.
 */
import { add, distance, length, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem, Solid } from '../route/problem.ts';
import { outside, Skin } from '../verify/obstacles.ts';
import { sizesOf, type Thick } from '../verify/sizes.ts';
import { toPiece, type Walked } from '../verify/walk.ts';

export interface Thing {
  readonly name: string;
  /** Distance from a point to its surface; nought inside. Exact below `most`, else at least that. */
  readonly from: (x: Vec3, most: number) => number;
  /** A ball that holds it; without one it may be anywhere. */
  readonly ball?: { readonly middle: Vec3; readonly radius: number };
  /** Flanges sit on it. */
  readonly carriesFlange: boolean;
}

export const pipeThing = (name: string, path: Walked, thick: Thick): Thing => {
  const ends = path.pieces.flatMap((piece) => [piece.p]);
  const middle = scale(ends.reduce(add), 1 / ends.length);
  const sizes = sizesOf(thick, path.length);
  return {
    name,
    from: (x) => {
      let best = Infinity;
      for (const { from, to, radius } of sizes)
        for (const piece of path.pieces)
          if (piece.to >= from && piece.from <= to)
            best = Math.min(best, toPiece(x, piece, from, to) - radius);
      return Math.max(0, best);
    },
    // no point of a pipe is farther from one of its joints than it is long
    ball: {
      middle,
      radius:
        Math.max(...sizes.map(({ radius }) => radius)) +
        Math.max(...path.pieces.map(({ p, from, to }) => distance(p, middle) + (to - from))),
    },
    carriesFlange: false,
  };
};

export const solidThing = (name: string, solid: Solid): Thing => ({
  name,
  from: (x) => outside(solid, x),
  ball:
    solid.kind === 'box'
      ? { middle: solid.center, radius: length(solid.half) }
      : {
          middle: scale(add(solid.a, solid.b), 0.5),
          radius: length(sub(solid.a, solid.b)) / 2 + 1.5 * solid.r,
        },
  carriesFlange: solid.flangeExempt === true,
});

/** Cells of the bodywork, mm; a coarser net asks more triangles, a finer one more cells. */
const CELL = 20;
/** Nothing of a car is farther from its ports than this when a pipe is on its way out, mm. */
const FAR = 800;

export function shellThing({ shell, bounds: { min, max } }: RouteProblem): readonly Thing[] {
  if (shell.triangles.length === 0) return [];
  const far = (v: Vec3, by: number): Vec3 => [v[0] + by, v[1] + by, v[2] + by];
  const skin = new Skin(shell, far(min, -FAR), far(max, FAR), CELL);
  return [{ name: 'the bodywork', from: (x, most) => skin.nearest(x, most), carriesFlange: false }];
}

export const solidThings = ({ solids }: RouteProblem): readonly Thing[] =>
  solids.map((solid, k) => solidThing(solid.name ?? `solid ${k + 1}`, solid));
