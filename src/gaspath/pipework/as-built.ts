/**
 * What was made against what was drawn.
 *
 * In    corner points of a finished pipe with the radii of its bends, or its length by a cord, with their spread
 * Out   its length with its spread, the difference to the drawing, within what a set is equal, and what that is in
 *       degrees of crank and in rpm
 *
 * Standard uncertainties; readings know nothing of each other.
 */
import { distance, dot, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, MetrePerSecond, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { bendsOf, developedLength, type Pipe, tubeOf } from './pipe.ts';

export interface Measured {
  readonly length: Metre;
  /** Standard uncertainty. */
  readonly u: Metre;
}

export interface MeasuredCorners {
  /** Flange, the corner of each bend, mouth. */
  readonly points: readonly Vec3[];
  /** Of the bend at each inner point. */
  readonly radii: readonly Metre[];
  /** Of each co-ordinate, and of each radius. */
  readonly u: { readonly point: Metre; readonly radius: Metre };
}

/** Why these are no corners of a pipe, as sentences. */
export function cornerFaults({ points, radii }: MeasuredCorners): readonly string[] {
  if (points.length < 2) return ['a pipe has at least a flange and a mouth'];
  if (radii.length !== points.length - 2) return ['there must be one radius for each point between the ends'];
  const faults: string[] = [];
  for (let k = 1; k < points.length; k += 1) {
    if (distance(points[k - 1]!, points[k]!) < 1e-6)
      return [`points ${k} and ${k + 1} are the same: a direction cannot be told from them`];
  }
  const T = setbacks(points, radii);
  for (let k = 1; k < points.length; k += 1) {
    const left = distance(points[k - 1]!, points[k]!) - (T[k - 1] ?? 0) - (T[k] ?? 0);
    if (left < 0)
      faults.push(
        `between points ${k} and ${k + 1} the bends want ${(-left * 1e3).toFixed(2)} mm more than there is`,
      );
  }
  return faults;
}

/** R tan(θ/2) at each point; nothing at the ends. */
const setbacks = (points: readonly Vec3[], radii: readonly Metre[]): Metre[] =>
  points.map((_, k) =>
    k === 0 || k === points.length - 1 ? 0 : radii[k - 1]! * Math.tan(turnAt(points, k) / 2),
  );

function turnAt(points: readonly Vec3[], k: number): Radian {
  const before = unit(sub(points[k]!, points[k - 1]!));
  const behind = unit(sub(points[k + 1]!, points[k]!));
  // from the two half sums: as exact for next to nothing as for next to a half turn
  return 2 * Math.atan2(distance(before, behind), Math.sqrt(2 + 2 * dot(before, behind) + 1e-300));
}

const throughCorners = formula({
  symbol: 'L',
  means: 'developed length through corners',
  is: 'P - C',
  unit: 'm',
  terms: {
    P: { unit: 'm', means: 'from point to point' },
    C: { unit: 'm', means: 'what the bends cut off: 2 T − R θ at each corner' },
  },
  source: 'PW-22',
});

function lengthThrough(points: readonly Vec3[], radii: readonly Metre[], working?: Working): Metre {
  const T = setbacks(points, radii);
  let P = 0;
  let C = 0;
  for (let k = 1; k < points.length; k += 1) P += distance(points[k - 1]!, points[k]!);
  for (let k = 1; k < points.length - 1; k += 1) C += 2 * T[k]! - radii[k - 1]! * turnAt(points, k);
  return throughCorners({ P, C }, working);
}

/** Step of the slopes, as part of a reading's spread: small against what is measured, large against rounding. */
const STEP: Metre = 1e-6;

/** Length through measured corners; its spread from each co-ordinate and radius moved by itself.  [PW-22] */
export function lengthByCorners(of: MeasuredCorners, working?: Working): Measured {
  const { points, radii, u } = of;
  const slope = (at: (step: Metre) => Metre): number => (at(STEP) - at(-STEP)) / (2 * STEP);
  let variance = 0;
  points.forEach((point, k) => {
    for (let axis = 0; axis < 3; axis += 1) {
      const moved = (step: Metre): Metre => {
        const p = point.map((value, i) => (i === axis ? value + step : value)) as unknown as Vec3;
        return lengthThrough(
          points.map((each, j) => (j === k ? p : each)),
          radii,
        );
      };
      variance += (slope(moved) * u.point) ** 2;
    }
  });
  radii.forEach((radius, k) => {
    const moved = (step: Metre): Metre =>
      lengthThrough(
        points,
        radii.map((each, j) => (j === k ? radius + step : each)),
      );
    variance += (slope(moved) * u.radius) ** 2;
  });
  return { length: lengthThrough(points, radii, working), u: Math.sqrt(variance) };
}

const alongOutside = formula({
  symbol: 'L',
  means: 'developed length from a cord laid along the bends',
  is: 'C - j*D/2*Θ',
  unit: 'm',
  terms: {
    C: { unit: 'm', means: 'length of the cord' },
    j: { unit: '1', means: 'where it lay: 1 outside of every bend, −1 inside, 0 along the side' },
    D: { unit: 'm', means: 'outer diameter; where the tube steps, the mean of its bends, each by its angle' },
    Θ: { unit: 'rad', means: 'all bends together' },
  },
  source: 'PW-23',
  holds: 'if the cord lies on the same side of every bend; a thick cord counts with its own half thickness',
});

export type CordSide = 'outside' | 'side' | 'inside';

/** Length along the middle from a cord on the skin.  [PW-23] */
export function lengthByCord(
  cord: Measured,
  side: CordSide,
  pipe: Pick<Pipe, 'tube' | 'steps' | 'elements'>,
  working?: Working,
): Measured {
  const Θ = bendsOf(pipe).reduce((sum, bend) => sum + bend.angle, 0);
  const round = pipe.elements.reduce(
    (sum, each, k) => sum + (each.kind === 'bend' ? each.angle * tubeOf(pipe, k).od : 0),
    0,
  );
  const D = Θ === 0 ? pipe.tube.od : round / Θ;
  const j = side === 'outside' ? 1 : side === 'inside' ? -1 : 0;
  return { length: alongOutside({ C: cord.length, j, D, Θ }, working), u: cord.u };
}

const byFilling = formula({
  symbol: 'L',
  means: 'developed length from the water that the pipe holds',
  is: '4*V/(π*d^2)',
  unit: 'm',
  terms: {
    V: { unit: 'm^3', means: 'water that fills it, flange and mouth closed off square' },
    d: { unit: 'm', means: 'bore' },
  },
  source: 'PW-29',
  holds: 'for round tube: a bend that is flattened holds less, and reads short',
});

/** Length from a filling; a bore that is 1 % out puts the length 2 % out, so only like tubes compare.  [PW-29] */
export function lengthByFilling(
  of: {
    readonly volume: { readonly value: number; readonly u: number };
    readonly bore: { readonly value: Metre; readonly u: Metre };
  },
  working?: Working,
): Measured {
  const { volume, bore } = of;
  const length = byFilling({ V: volume.value, d: bore.value }, working);
  const u = length * Math.hypot(volume.u / volume.value, (2 * bore.u) / bore.value);
  return { length, u };
}

export interface AsBuilt {
  readonly pipe: string;
  readonly drawn: Metre;
  readonly made: Measured;
  readonly difference: Measured;
}

export const asBuilt = (pipe: Pipe, made: Measured): AsBuilt => {
  const drawn = developedLength(pipe);
  return { pipe: pipe.name, drawn, made, difference: { length: made.length - drawn, u: made.u } };
};

export interface EqualWithin {
  readonly longest: AsBuilt;
  readonly shortest: AsBuilt;
  /** Longest less shortest, with its spread from these two. */
  readonly within: Measured;
  /** The readings cannot tell this set from one of equal pipes: its range is below two of its spreads. */
  readonly notTold: boolean;
}

const rangeOf = formula({
  symbol: 'ΔL',
  means: 'longest pipe less shortest',
  is: 'L_max - L_min',
  unit: 'm',
  terms: {
    L_max: { unit: 'm', means: 'longest, as made' },
    L_min: { unit: 'm', means: 'shortest, as made' },
  },
  source: 'PW-26',
  holds:
    'where the range is well above its spread; near it the range reads high, since it picks the extremes',
});

/** Within what a set is equal.  [PW-26] */
export function equalWithin(set: readonly AsBuilt[], working?: Working): EqualWithin {
  const longest = set.reduce((a, b) => (b.made.length > a.made.length ? b : a));
  const shortest = set.reduce((a, b) => (b.made.length < a.made.length ? b : a));
  const length = rangeOf({ L_max: longest.made.length, L_min: shortest.made.length }, working);
  const u = longest === shortest ? 0 : Math.hypot(longest.made.u, shortest.made.u);
  return { longest, shortest, within: { length, u }, notTold: length < 2 * u };
}

const waveAngle = formula({
  symbol: 'Δφ',
  means: 'how much later the returning wave is at the valve, in crank angle',
  is: '2*ΔL/c*ω',
  unit: 'rad',
  terms: {
    ΔL: { unit: 'm', means: 'how much longer the pipe is' },
    c: { unit: 'm/s', means: 'speed of sound in the hot gas of the primary' },
    ω: { unit: 'rad/s', means: 'engine speed' },
  },
  source: 'PW-27',
  holds:
    'for a weak wave with no flow: a strong one runs faster, and the gas carries it out and holds it back',
});

/** 2 ΔL/c · ω: crank angle by which the wave comes back later.  [PW-27] */
export const crankAngleOf = (
  longer: Metre,
  at: { readonly sound: MetrePerSecond; readonly speed: number },
  working?: Working,
): Radian => waveAngle({ ΔL: longer, c: at.sound, ω: at.speed }, working);

const speedMoved = formula({
  symbol: 'Δω',
  means: 'how far the speed that this length suits best lies from the other',
  is: '-ω*ΔL/(L + ΔL)',
  unit: 'rad/s',
  terms: {
    ω: { unit: 'rad/s', means: 'speed that the drawn length suits' },
    ΔL: { unit: 'm', means: 'how much longer the pipe is' },
    L: { unit: 'm', means: 'drawn length of the way of the wave, from the valve seat' },
  },
  source: 'PW-28',
  holds: 'while speed times length stays: the wave takes the same crank angle; the intake is left out',
});

/**
 * How far the best speed moves if speed times length stays.  [PW-28]
 *
 * @param of `length` from the valve seat to where the wave turns: the port is part of it, the flange is not its begin
 */
export const bestSpeedMoves = (
  longer: Metre,
  of: { readonly length: Metre; readonly speed: number },
  working?: Working,
): number => speedMoved({ ω: of.speed, ΔL: longer, L: of.length }, working);
