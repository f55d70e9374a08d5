/**
 * The bend table: what a bender is set to, bend by bend.
 *
 * In    a pipe
 * Out   feed, rotation and angle of each bend, wall left at its outside, and the run-out behind the last
 * Sign  rotation is positive clockwise seen with the flow, from flange to collector: right-handed about the flow
 * Not   springback: the angle is the angle of the finished pipe, and the shop adds what its tube gives back
 */
import { cross, dot } from '../../maths/vec3.ts';
import type { Metre, Radian, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { stations } from './centreline.ts';
import { type Bend, NO_LENGTH, type Pipe } from './pipe.ts';
import { lapOf, runsOf } from './stepped.ts';

const clockOf = formula({
  symbol: 'φ',
  means: 'rotation from one bend plane to the next',
  is: 'atan2(s, c)',
  unit: 'rad',
  terms: {
    s: { unit: '1', means: '(n1 × n2)·t: normals of the two bends and the direction between them' },
    c: { unit: '1', means: 'n1·n2' },
  },
  source: 'PW-5',
  holds: 'between bends that follow each other with a straight or nothing between them',
});

/** Rotation between two bends along the flow `t` between them, over −180° up to 180°.  [PW-5] */
export function clockAngle(
  first: Bend,
  next: Bend,
  t: readonly [number, number, number],
  working?: Working,
): Radian {
  const s = dot(cross(first.normal, next.normal), t);
  const turn = clockOf({ s, c: dot(first.normal, next.normal) }, working);
  // one half turn, whichever side rounding puts it on
  return turn < -Math.PI + 1e-9 ? Math.PI : turn;
}

const markArc = formula({
  symbol: 'b',
  means: 'the rotation as a length round the skin of the tube, for a tape',
  is: 'D/2*φ',
  unit: 'm',
  terms: {
    D: { unit: 'm', means: 'outer diameter' },
    φ: { unit: 'rad', means: 'rotation' },
  },
  source: 'PW-6',
});

/** How far round the skin a clock mark is from the other, with the sign of the rotation.  [PW-6] */
export const clockMark = (od: Metre, turn: Radian, working?: Working): Metre =>
  markArc({ D: od, φ: turn }, working);

const outsideWall = formula({
  symbol: 'w_o',
  means: 'wall left at the outside of a bend',
  is: 'w*R/(R + D/2)',
  unit: 'm',
  terms: {
    w: { unit: 'm', means: 'wall of the straight tube' },
    R: { unit: 'm', means: 'radius of the centreline' },
    D: { unit: 'm', means: 'outer diameter' },
  },
  source: 'PW-10',
  holds: 'the skin stretches and nothing flows along the tube; a boosted or pushed bend keeps more',
});

const insideWall = formula({
  symbol: 'w_i',
  means: 'wall at the inside of a bend',
  is: 'w*R/(R - D/2)',
  unit: 'm',
  terms: {
    w: { unit: 'm', means: 'wall of the straight tube' },
    R: { unit: 'm', means: 'radius of the centreline' },
    D: { unit: 'm', means: 'outer diameter' },
  },
  source: 'PW-10',
  holds: 'without wrinkles',
});

export interface BentWall {
  readonly outside: Metre;
  readonly inside: Metre;
  /** Part of the wall that is lost at the outside. */
  readonly thinned: Ratio;
  /** Stretch of the outer skin. */
  readonly stretch: Ratio;
  /** Radius over diameter, which the trade calls the D of the bend. */
  readonly dOfBend: Ratio;
}

/** Walls of a bend whose volume stays and whose middle line keeps its length.  [PW-10] */
export function bentWall(
  of: { readonly od: Metre; readonly wall: Metre; readonly radius: Metre },
  working?: Working,
): BentWall {
  const terms = { w: of.wall, R: of.radius, D: of.od };
  const outside = outsideWall(terms, working);
  return {
    outside,
    inside: insideWall(terms, working),
    thinned: 1 - outside / of.wall,
    stretch: of.od / 2 / of.radius,
    dOfBend: of.radius / of.od,
  };
}

export interface BendRow {
  readonly pipe: string;
  readonly bend: number;
  /** Outer diameter of the tube that is bent. */
  readonly od: Metre;
  /** Straight tube before this bend, from the end of the last one; where the tube steps, from its own end as cut. */
  readonly feed: Metre;
  /** From the plane of the bend before; 0 at the first. */
  readonly rotation: Radian;
  readonly angle: Radian;
  readonly radius: Metre;
  readonly wall: BentWall;
}

export interface BendTable {
  readonly rows: readonly BendRow[];
  /** Straight behind the last bend of each tube, in the order of the flow. */
  readonly runOuts: readonly { readonly od: Metre; readonly length: Metre }[];
}

export function bendTable(pipe: Pipe): BendTable {
  const begins = stations(pipe);
  const rows: BendRow[] = [];
  let feed = 0;
  let last: Bend | undefined;
  const runOuts: { od: Metre; length: Metre }[] = [];
  for (const { tube, from, to } of runsOf(pipe)) {
    feed = lapOf(pipe, from);
    for (let k = from; k < to; k += 1) {
      const element = pipe.elements[k]!;
      if (element.kind === 'straight') {
        feed += element.length;
        continue;
      }
      if (element.angle * element.radius < NO_LENGTH) continue;
      rows.push({
        pipe: pipe.name,
        bend: rows.length + 1,
        od: tube.od,
        feed,
        rotation: last === undefined ? 0 : clockAngle(last, element, begins[k]!.t),
        angle: element.angle,
        radius: element.radius,
        wall: bentWall({ ...tube, radius: element.radius }),
      });
      last = element;
      feed = 0;
    }
    runOuts.push({ od: tube.od, length: feed });
  }
  return { rows, runOuts };
}
