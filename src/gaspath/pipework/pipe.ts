/**
 * A pipe as the shop makes it: straights and bends one behind the other, from the flange on.
 *
 * In    start point and direction, elements, tube, and the larger tubes that follow it where it steps up
 * Out   developed length, weight, and what is wrong with a pipe that cannot be
 * Axes  those of whoever gives the points; right-handed. A bend turns the direction of flow right-handed about its
 *       normal, which is square to the flow
 * Not   ovality of bends
 *
 * PW-n are the equations of docs/theory/pipework.md.
 */
import { cross, dot, length, turned, type Vec3 } from '../../maths/vec3.ts';
import type { Kilogram, KilogramPerCubicMetre, Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

export interface Straight {
  readonly kind: 'straight';
  readonly length: Metre;
}

export interface Bend {
  readonly kind: 'bend';
  /** Of the centreline. */
  readonly radius: Metre;
  /** Change of direction. */
  readonly angle: Radian;
  /** Unit, square to the direction in which the bend begins. */
  readonly normal: Vec3;
}

export type Element = Straight | Bend;

export interface Tube {
  /** Outer diameter. */
  readonly od: Metre;
  readonly wall: Metre;
  readonly density: KilogramPerCubicMetre;
}

/** How a tube of one size goes on in another. */
export interface StepJoin {
  /**
   * `slipped over`: the ends lie in one another over `length`; `swaged`: the tube before is opened over `length` and
   * welded square; `reducer`: a cone of `length` of its own between two welds.
   */
  readonly kind: 'slipped over' | 'swaged' | 'reducer';
  readonly length: Metre;
}

/** From an element on the pipe is of another tube. */
export interface TubeStep {
  /** The first element of the new tube. A reducer is the straight before it. */
  readonly element: number;
  readonly tube: Tube;
  readonly join: StepJoin;
}

export interface Pipe {
  /** What the shop calls it: `1`, `left 3`. */
  readonly name: string;
  /** At the flange. */
  readonly tube: Tube;
  /** In the order of the flow; none where one tube goes through. */
  readonly steps?: readonly TubeStep[];
  /** Flange point and the direction in which the gas leaves it, unit. */
  readonly start: { readonly p: Vec3; readonly d: Vec3 };
  readonly elements: readonly Element[];
}

const arcLength = formula({
  symbol: 'l',
  means: 'length of a bend along its centreline',
  is: 'R*θ',
  unit: 'm',
  terms: {
    R: { unit: 'm', means: 'radius of the centreline' },
    θ: { unit: 'rad', means: 'angle of the bend' },
  },
  source: 'PW-1',
});

const sumOfLengths = formula({
  symbol: 'L',
  means: 'developed length along the centreline',
  is: 'S + A',
  unit: 'm',
  terms: {
    S: { unit: 'm', means: 'all straights together' },
    A: { unit: 'm', means: 'all bends together, along their centrelines' },
  },
  source: 'PW-2',
  holds: 'for bends that are true arcs; lobster-backs are longer (PW-14)',
});

const tubeWeight = formula({
  symbol: 'm',
  means: 'weight of the pipe without flange and weld',
  is: 'π*(D - w)*w*L*ρ',
  unit: 'kg',
  terms: {
    D: { unit: 'm', means: 'outer diameter' },
    w: { unit: 'm', means: 'wall' },
    L: { unit: 'm', means: 'developed length' },
    ρ: { unit: 'kg/m^3', means: 'density' },
  },
  source: 'PW-3',
  holds:
    'bends too: a ring swept along an arc has the volume of its area times the path of its middle (Pappus)',
});

/** Length of one element along its centreline.  [PW-1] */
export const elementLength = (element: Element): Metre =>
  element.kind === 'straight' ? element.length : arcLength({ R: element.radius, θ: element.angle });

/** Σs + ΣRθ.  [PW-1, PW-2] */
export function developedLength(pipe: Pick<Pipe, 'elements'>, working?: Working): Metre {
  let S = 0;
  let A = 0;
  for (const element of pipe.elements) {
    if (element.kind === 'straight') S += element.length;
    else A += arcLength({ R: element.radius, θ: element.angle }, working);
  }
  return sumOfLengths({ S, A }, working);
}

/** Weight of a tube of so much length.  [PW-3] */
export const massOfTube = ({ od, wall, density }: Tube, length: Metre, working?: Working): Kilogram =>
  tubeWeight({ D: od, w: wall, L: length, ρ: density }, working);

export const bendsOf = (pipe: Pick<Pipe, 'elements'>): readonly Bend[] =>
  pipe.elements.filter((each): each is Bend => each.kind === 'bend');

/** What is no tube at all: shorter is rounding of whoever drew the pipe. */
export const NO_LENGTH: Metre = 1e-6;

/** Unit vectors and right angles as a file of nine digits gives them. */
const SQUARE = 1e-6;

/**
 * Everything that keeps this from being a pipe, all at once, as sentences; none where it is one.
 * The rest of the room takes a pipe without faults for granted.
 */
export function pipeFaults(pipe: Pipe): readonly string[] {
  const faults: string[] = [];
  const say = (what: string): number => faults.push(`pipe ${pipe.name}: ${what}`);
  for (const { od, wall, density } of [pipe.tube, ...(pipe.steps ?? []).map(({ tube }) => tube)]) {
    if (!(od > 0)) say('the outer diameter must be more than nothing');
    if (!(wall > 0 && wall < od / 2))
      say('the wall must be more than nothing and less than half the diameter');
    if (!(density > 0)) say('the density must be more than nothing');
  }
  if (!isUnit(pipe.start.d)) say('the direction at the flange must have length 1');
  if (pipe.elements.length === 0) say('it has no straight and no bend');
  let t = pipe.start.d;
  pipe.elements.forEach((element, k) => {
    const where = `element ${k + 1} (${element.kind})`;
    if (element.kind === 'straight') {
      if (!(element.length >= 0 && Number.isFinite(element.length))) say(`${where}: length below nothing`);
      return;
    }
    if (!(element.radius > tubeOf(pipe, k).od / 2))
      say(`${where}: radius must be more than half the diameter, or the inside folds on itself`);
    if (!(element.angle >= 0 && element.angle < 2 * Math.PI)) say(`${where}: angle must be from 0 to 360°`);
    if (!isUnit(element.normal)) say(`${where}: the normal must have length 1`);
    else if (Math.abs(dot(element.normal, t)) > SQUARE)
      say(`${where}: the normal must be square to the flow`);
    else t = turned(t, element.normal, element.angle);
  });
  faults.push(...stepFaults(pipe));
  return faults;
}

/** The tube of an element; of a reducer the one before it. */
export const tubeOf = ({ tube, steps }: Pick<Pipe, 'tube' | 'steps'>, element: number): Tube =>
  steps?.findLast((step) => step.element <= element)?.tube ?? tube;

/** A step stands on straight tube as long as its join, and behind the one before it. */
function stepFaults({ name, elements, steps = [] }: Pipe): string[] {
  const faults: string[] = [];
  steps.forEach(({ element, join: { kind, length: l } }, k) => {
    const say = (what: string): number => faults.push(`pipe ${name}, step ${k + 1}: ${what}`);
    if (!(Number.isInteger(element) && element > (steps[k - 1]?.element ?? 0) && element < elements.length)) {
      say('it must begin at an element behind the first and behind the step before it');
      return;
    }
    const before = elements[element - 1]!;
    if (before.kind !== 'straight' || !(before.length >= l - NO_LENGTH))
      say(`the straight before it must be as long as its join, ${(1e3 * l).toFixed(1)} mm`);
    else if (kind === 'reducer' && Math.abs(before.length - l) > NO_LENGTH)
      say('the straight before it is its reducer and must be as long as that');
    if (kind === 'slipped over' && elements[element]!.kind !== 'straight')
      say('the tube that goes on must begin with a straight, were it of no length, that lies over the other');
  });
  return faults;
}

const isUnit = (v: Vec3): boolean => Math.abs(length(v) - 1) <= SQUARE;

/** From the centre of the tube towards the centre of the bend, unit: the inside of the bend. */
export const inwards = (bend: Bend, t: Vec3): Vec3 => cross(bend.normal, t);
