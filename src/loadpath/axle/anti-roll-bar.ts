/**
 * Anti-roll bars: U-bar and T-bar, worked by drop links from the rockers.
 *
 * In    the bar's points at the surveyed position; the rocker ends of the drop links as they move
 * Out   the bar's twist by both wheels' travel, the angles of its arms
 * Axes  ISO 8855, fixed to the tub. U-bar: arm angles positive as their wheel goes into bump, twist is left less
 *       right. T-bar: twist of the stem positive as the left wheel goes into bump
 * Not   the bar's rate (`barRate` puts arms and bar in series), bearings' friction, play
 *
 * LP-n are the equations of docs/theory/load-path.md.
 */
import {
  add,
  along,
  cross,
  distance,
  dot,
  length,
  scale,
  sub,
  turned,
  turnedAbout,
  unit,
  type Vec3,
} from '../../maths/vec3.ts';
import type { Metre, NewtonMetrePerRadian, Radian } from '../../units/quantity.ts';
import type { VecAlong } from '../corner/solve.ts';
import type { Pair } from './pair.ts';

/** A drop link does not reach, or the search for the bar's position did not settle. */
export class BarOpen extends Error {
  readonly link: 'left' | 'right' | 'both';
  readonly facts: Readonly<Record<string, number>>;
  constructor(link: 'left' | 'right' | 'both', facts: Readonly<Record<string, number>>) {
    super(`The ${link === 'both' ? 'drop links do' : `${link} drop link does`} not reach at this travel.`);
    this.name = 'BarOpen';
    this.link = link;
    this.facts = facts;
  }
}

/** A drop link: where it stood on its rocker at the survey, and its length if that was changed since. */
export interface DropLink {
  readonly rockerEnd: Vec3;
  readonly barEnd: Vec3;
  /** Absent: the distance of the two surveyed ends. */
  readonly length?: Metre;
}

export interface UBarGeometry {
  readonly axisPoint: Vec3;
  /** Unit, either way round. */
  readonly axisDirection: Vec3;
  readonly left: DropLink;
  readonly right: DropLink;
}

/** An arm's angle from the surveyed position and its derivatives by its own wheel's travel. */
export interface ArmAngle {
  readonly value: Radian;
  readonly perTravel: number;
  readonly perTravel2: number;
}

/** Where the drop links now meet the bar. */
export interface BarEnds {
  readonly left: Vec3;
  readonly right: Vec3;
}

export interface UBarState {
  readonly left: ArmAngle;
  readonly right: ArmAngle;
  readonly twist: Pair;
  readonly ends: BarEnds;
}

const linkLength = (link: DropLink): Metre => link.length ?? distance(link.rockerEnd, link.barEnd);

/** An arm turning about the bar's axis, its end at a fixed distance from a moving point.  LP-4 to LP-6 */
function armAngle(
  side: 'left' | 'right',
  bar: UBarGeometry,
  end: VecAlong,
): ArmAngle & { readonly at: Vec3 } {
  const link = bar[side];
  const a = unit(bar.axisDirection);
  const foot = along(bar.axisPoint, a, dot(sub(link.barEnd, bar.axisPoint), a));
  const r0 = sub(link.barEnd, foot);
  const q0 = cross(a, r0);
  const w = sub(end.value, foot);
  const d = linkLength(link);
  const A = dot(w, r0);
  const B = dot(w, q0);
  const C = (dot(r0, r0) + dot(w, w) - d * d) / 2;
  const square = A * A + B * B - C * C;
  if (!(square > 0)) throw new BarOpen(side, { armLength: length(r0), linkLength: d, outBy: -square });
  // the branch is that of the surveyed arm
  const D = Math.sign(dot(q0, sub(link.rockerEnd, foot))) * Math.sqrt(square);
  const value = Math.atan2(B * C - A * D, A * C + B * D);
  const r = turned(r0, a, value);
  const e = cross(a, r);
  const at = add(foot, r);
  const u = sub(at, end.value);
  const arm = dot(u, e);
  const perTravel = dot(u, end.perTravel) / arm;
  const relative = along(scale(e, perTravel), end.perTravel, -1);
  const turning = along(end.perTravel2, r, perTravel * perTravel);
  return { value, perTravel, perTravel2: (dot(u, turning) - dot(relative, relative)) / arm, at };
}

/**
 * A U-bar at the places where the rockers now hold its drop links. Twist by LP-33.
 * Which way round is positive is taken from the arms' movement there; forces and stiffness do not hang on it.
 */
export function solveUBar(bar: UBarGeometry, leftEnd: VecAlong, rightEnd: VecAlong): UBarState {
  const leftRaw = armAngle('left', bar, leftEnd);
  const rightRaw = armAngle('right', bar, rightEnd);
  const sign = Math.sign(leftRaw.perTravel + rightRaw.perTravel) || 1;
  const turnedTo = (q: ArmAngle): ArmAngle => ({
    value: sign * q.value,
    perTravel: sign * q.perTravel,
    perTravel2: sign * q.perTravel2,
  });
  const left = turnedTo(leftRaw);
  const right = turnedTo(rightRaw);
  return {
    left,
    right,
    twist: {
      value: left.value - right.value,
      byLeft: left.perTravel,
      byRight: -right.perTravel,
      byLeft2: left.perTravel2,
      byRight2: -right.perTravel2,
      byBoth: 0,
    },
    ends: { left: leftRaw.at, right: rightRaw.at },
  };
}

export interface TBarGeometry {
  /** The axis about which the whole T nods; unit direction, either way round. */
  readonly nodPoint: Vec3;
  readonly nodDirection: Vec3;
  /** The stem, about which the cross-arm twists; a point on it and its unit direction. */
  readonly stemPoint: Vec3;
  readonly stemDirection: Vec3;
  /** Bar ends: the two ends of the cross-arm. */
  readonly left: DropLink;
  readonly right: DropLink;
}

export interface TBarState {
  /** Rotation of the T about its nod axis from the surveyed position, positive as both wheels go into bump. */
  readonly nod: Pair;
  /** Twist of the stem. */
  readonly twist: Pair;
  readonly ends: BarEnds;
  readonly iterations: number;
}

/** Newton is done when both links are right to this; the T's sizes are tenths of a metre. */
const LINK_TOLERANCE: Metre = 1e-13;

/** A cross-arm end with its derivatives by nod ν and twist τ.  LP-34 */
function crossArmEnd(bar: TBarGeometry, end: Vec3, nod: Radian, twist: Radian) {
  const a = unit(bar.nodDirection);
  const s = unit(bar.stemDirection);
  const place = turnedAbout(turnedAbout(end, bar.stemPoint, s, twist), bar.nodPoint, a, nod);
  const stem = turned(s, a, nod);
  const onStem = turnedAbout(bar.stemPoint, bar.nodPoint, a, nod);
  const byNod = cross(a, sub(place, bar.nodPoint));
  const byTwist = cross(stem, sub(place, onStem));
  return {
    place,
    byNod,
    byTwist,
    byNod2: cross(a, byNod),
    byTwist2: cross(stem, byTwist),
    byBoth: cross(a, byTwist),
  };
}

/** The solution of [a b; c d] x = (p, q). */
function solve2(
  m: readonly [number, number, number, number],
  p: number,
  q: number,
): readonly [number, number] {
  const det = m[0] * m[3] - m[1] * m[2];
  return [(p * m[3] - m[1] * q) / det, (m[0] * q - m[2] * p) / det];
}

/**
 * A T-bar at the places where the rockers now hold its drop links: Newton on nod and twist, then the derivatives
 * of both by the two travels from the two link constraints.  LP-34 to LP-36
 */
export function solveTBar(bar: TBarGeometry, leftEnd: VecAlong, rightEnd: VecAlong): TBarState {
  const dL = linkLength(bar.left);
  const dR = linkLength(bar.right);
  let nod = 0;
  let twist = 0;
  for (let iterations = 1; iterations <= 30; iterations++) {
    const L = crossArmEnd(bar, bar.left.barEnd, nod, twist);
    const R = crossArmEnd(bar, bar.right.barEnd, nod, twist);
    const uL = sub(L.place, leftEnd.value);
    const uR = sub(R.place, rightEnd.value);
    const J = [dot(uL, L.byNod), dot(uL, L.byTwist), dot(uR, R.byNod), dot(uR, R.byTwist)] as const;
    const fL = (dot(uL, uL) - dL * dL) / 2;
    const fR = (dot(uR, uR) - dR * dR) / 2;
    if (Math.abs(fL) <= LINK_TOLERANCE * dL && Math.abs(fR) <= LINK_TOLERANCE * dR) {
      const rates = tBarRates(J, { L, R, uL, uR, leftEnd, rightEnd }, nod, twist);
      return { ...rates, ends: { left: L.place, right: R.place }, iterations };
    }
    const [dNod, dTwist] = solve2(J, -fL, -fR);
    if (!Number.isFinite(dNod + dTwist)) throw new BarOpen('both', { nod, twist, iterations });
    // half a radian at most: the branch of the surveyed position is followed, not jumped
    const cut = Math.min(1, 0.5 / Math.max(Math.abs(dNod), Math.abs(dTwist)));
    nod += cut * dNod;
    twist += cut * dTwist;
  }
  throw new BarOpen('both', { nod, twist, iterations: 30 });
}

interface TBarEnds {
  readonly L: ReturnType<typeof crossArmEnd>;
  readonly R: ReturnType<typeof crossArmEnd>;
  readonly uL: Vec3;
  readonly uR: Vec3;
  readonly leftEnd: VecAlong;
  readonly rightEnd: VecAlong;
}

/** First and second derivatives of nod and twist by differentiating u·u = d² twice.  LP-35, LP-36 */
function tBarRates(
  J: readonly [number, number, number, number],
  ends: TBarEnds,
  nod: Radian,
  twist: Radian,
): { nod: Pair; twist: Pair } {
  const { L, R, uL, uR, leftEnd, rightEnd } = ends;
  const still: Vec3 = [0, 0, 0];
  const first = {
    left: solve2(J, dot(uL, leftEnd.perTravel), 0),
    right: solve2(J, 0, dot(uR, rightEnd.perTravel)),
  };
  /** Right-hand side of one link for the second derivative in directions i and j. */
  const side = (
    E: TBarEnds['L'],
    u: Vec3,
    i: { turn: readonly [number, number]; end: Vec3 },
    j: { turn: readonly [number, number]; end: Vec3 },
    end2: Vec3,
  ): number => {
    const velocity = (q: typeof i): Vec3 =>
      sub(along(scale(E.byNod, q.turn[0]), E.byTwist, q.turn[1]), q.end);
    const bent = add(
      along(scale(E.byNod2, i.turn[0] * j.turn[0]), E.byTwist2, i.turn[1] * j.turn[1]),
      scale(E.byBoth, i.turn[0] * j.turn[1] + i.turn[1] * j.turn[0]),
    );
    return -dot(velocity(i), velocity(j)) - dot(u, sub(bent, end2));
  };
  const second = (i: 'left' | 'right', j: 'left' | 'right'): readonly [number, number] => {
    const moves = (which: 'left' | 'right', end: 'left' | 'right', q: VecAlong) => ({
      turn: first[which],
      end: which === end ? q.perTravel : still,
    });
    const end2 = (end: 'left' | 'right', q: VecAlong): Vec3 =>
      i === end && j === end ? q.perTravel2 : still;
    return solve2(
      J,
      side(L, uL, moves(i, 'left', leftEnd), moves(j, 'left', leftEnd), end2('left', leftEnd)),
      side(R, uR, moves(i, 'right', rightEnd), moves(j, 'right', rightEnd), end2('right', rightEnd)),
    );
  };
  const ll = second('left', 'left');
  const rr = second('right', 'right');
  const lr = second('left', 'right');
  const pair = (n: 0 | 1, value: number, sign: number): Pair => ({
    value: sign * value,
    byLeft: sign * first.left[n],
    byRight: sign * first.right[n],
    byLeft2: sign * ll[n],
    byRight2: sign * rr[n],
    byBoth: sign * lr[n],
  });
  const up = Math.sign(first.left[0] + first.right[0]) || 1;
  const over = Math.sign(first.left[1] - first.right[1]) || 1;
  return { nod: pair(0, nod, up), twist: pair(1, twist, over) };
}

/** A flexible arm: stiffness of its end, and the arm's length square to the bar's axis. */
export interface FlexibleArm {
  readonly tipStiffness: number;
  readonly armLength: Metre;
}

/** Bar and arms in series, about the bar's axis: 1/k = 1/k_bar + Σ 1/(k_tip r²).  LP-37 */
export function barRate(bar: {
  readonly torsion: NewtonMetrePerRadian;
  readonly arms?: readonly FlexibleArm[];
}): NewtonMetrePerRadian {
  const give = (bar.arms ?? []).reduce((sum, arm) => sum + 1 / (arm.tipStiffness * arm.armLength ** 2), 0);
  return 1 / (1 / bar.torsion + give);
}
