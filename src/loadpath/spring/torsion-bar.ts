/**
 * The torsion bar: a round bar, solid or bored, held at one end and twisted by the rocker.
 *
 * In    diameters, parallel length, how each end runs out into its head, shear modulus (SI)
 * Out   active length, rate, shear at skin, twist, energy, mass
 * Axes  twist and torque positive as the wheel goes into bump
 * Not   bending of the bar (the rocker's bearings must carry what is not torque); the strength of the splines;
 *       see presetting.ts for yield and hand, spline.ts for the anchor, bar-life.ts for fatigue
 *
 * [Gere7]   Gere & Goodno, Mechanics of Materials, 7th ed., ch. 3
 * [Beer]    Beer, Johnston & DeWolf, Mechanics of Materials, ch. 3
 */
import { integral } from '../../maths/quadrature.ts';
import type {
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  Metre4,
  NewtonMetre,
  NewtonMetrePerRadian,
  Pascal,
  Radian,
} from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import type { Origins } from './coil-spring.ts';

/** How the bar runs out into its head: straight to the shoulder, by a cone, or by the arc of a fillet. */
export type EndTransition =
  | { readonly kind: 'none' }
  | { readonly kind: 'taper'; readonly length: Metre; readonly headDiameter: Metre }
  | { readonly kind: 'fillet'; readonly radius: Metre; readonly headDiameter: Metre };

export interface RoundSection {
  readonly diameter: Metre;
  /** 0 for a solid bar. */
  readonly bore: Metre;
}

export interface TorsionBar extends RoundSection {
  /** Length over which the diameter does not change. */
  readonly parallelLength: Metre;
  readonly ends: readonly [EndTransition, EndTransition];
  /** Length of bar that gives as much as both splines together; 0 or left out where it is not known. */
  readonly splineLength?: Metre;
  readonly shearModulus: Pascal;
  readonly density: KilogramPerCubicMetre;
  /** The splined heads, for the mass. */
  readonly heads?: readonly { readonly diameter: Metre; readonly length: Metre }[];
}

const polar = formula({
  symbol: 'J',
  means: 'polar second moment of the bar',
  is: 'π*(D^4 - d^4)/32',
  unit: 'm^4',
  terms: {
    D: { unit: 'm', means: 'diameter of the bar' },
    d: { unit: 'm', means: 'bore of the bar' },
  },
  source: 'SP-18; Gere7 eq. 3-11',
});

/** π(D⁴ − d⁴)/32.  [SP-18] */
export const polarSecondMoment = (section: RoundSection, working?: Working, from?: Origins): Metre4 =>
  polar({ D: section.diameter, d: section.bore }, working, from);

const coneLength = formula({
  symbol: 'L_t',
  means: 'length of bar that gives as much as the cone',
  is: 'l/3*(D/H + (D/H)^2 + (D/H)^3)',
  unit: 'm',
  terms: {
    l: { unit: 'm', means: 'length of the cone' },
    D: { unit: 'm', means: 'diameter of the bar' },
    H: { unit: 'm', means: 'diameter at the head' },
  },
  source: 'SP-20; Gere7 eq. 3-27',
  holds: 'for a solid bar and a slim cone',
});

/** Length along the bar that the transition takes up. */
export function transitionLength(end: EndTransition, diameter: Metre): Metre {
  switch (end.kind) {
    case 'none':
      return 0;
    case 'taper':
      return end.length;
    case 'fillet': {
      const { start, stop } = filletAngles(end, diameter);
      return end.radius * (Math.sin(stop) - Math.sin(start));
    }
  }
}

/**
 * A fillet leaves the bar square to its radius and climbs along the arc: at angle φ it has gone R·sin φ along
 * and R(1 − cos φ) out. It ends where it meets the head's diameter, at the latest after a quarter circle.
 */
function filletAngles(
  end: Extract<EndTransition, { kind: 'fillet' }>,
  diameter: Metre,
): { readonly start: number; readonly stop: number } {
  const rise = Math.max(0, (end.headDiameter - diameter) / 2);
  return { start: 0, stop: Math.acos(Math.max(0, 1 - rise / end.radius)) };
}

/** ∫ g(diameter) along the transition, g being any property of the section there. */
function alongTransition(end: EndTransition, diameter: Metre, g: (at: Metre) => number): number {
  switch (end.kind) {
    case 'none':
      return 0;
    case 'taper':
      return integral((x) => g(diameter + ((end.headDiameter - diameter) * x) / end.length), 0, end.length);
    case 'fillet': {
      const { start, stop } = filletAngles(end, diameter);
      const R = end.radius;
      // in the angle, not in the length: the integrand then stays smooth up to a quarter circle
      return integral((φ) => R * Math.cos(φ) * g(diameter + 2 * R * (1 - Math.cos(φ))), start, stop);
    }
  }
}

/**
 * Length of plain bar with the same give as one end transition: ∫ J_bar/J(x) dx.  [SP-19, SP-20]
 *
 * Closed form for the cone of a solid bar, 24-point quadrature (to rounding) otherwise. One-dimensional: a
 * sharp corner gives a little more than this, so it is the least the transition adds.
 */
export function equivalentLength(
  end: EndTransition,
  section: RoundSection,
  working?: Working,
  from?: Origins,
): Metre {
  if (end.kind === 'none') return 0;
  if (end.kind === 'taper' && section.bore === 0) {
    return coneLength({ l: end.length, D: section.diameter, H: end.headDiameter }, working, from);
  }
  const own = section.diameter ** 4 - section.bore ** 4;
  const value = alongTransition(end, section.diameter, (at) => own / (at ** 4 - section.bore ** 4));
  working?.add({
    kind: 'solved',
    symbol: 'L_t',
    means: `length of bar that gives as much as the ${end.kind === 'taper' ? 'cone' : 'fillet'}`,
    method: 'the integral of J over J along the transition, Gauss and Legendre, 24 points',
    value,
    unit: 'm',
    source: 'SP-19',
    terms: [
      { symbol: 'D', means: 'diameter of the bar', value: section.diameter },
      { symbol: 'd', means: 'bore of the bar', value: section.bore },
      { symbol: 'H', means: 'diameter at the head', value: end.headDiameter },
      end.kind === 'fillet'
        ? { symbol: 'R', means: 'fillet radius', value: end.radius }
        : { symbol: 'l', means: 'length of the cone', value: end.length },
    ].map((term) => {
      const origin = from?.[term.symbol];
      return { ...term, unit: 'm', ...(origin === undefined ? {} : { from: origin }) };
    }),
  });
  return value;
}

const active = formula({
  symbol: 'L_e',
  means: 'active length of the bar',
  is: 'L_p + L_1 + L_2 + L_s',
  unit: 'm',
  terms: {
    L_p: { unit: 'm', means: 'parallel length' },
    L_1: { unit: 'm', means: 'length of bar that gives as much as the first transition' },
    L_2: { unit: 'm', means: 'length of bar that gives as much as the second transition' },
    L_s: { unit: 'm', means: 'length of bar that gives as much as the splines' },
  },
  source: 'SP-21',
});

const SHOULDER = { kind: 'constant', what: 'straight to the shoulder' } as const;

/**
 * Active length: parallel length + what the transitions and the splines add.  [SP-21]
 * Not the length between the splines.
 */
export function activeLength(
  bar: TorsionBar,
  working?: Working,
  from?: Origins,
  ofEnds?: readonly [Origins, Origins],
): Metre {
  const [first, second] = bar.ends.map((end, k) =>
    equivalentLength(end, bar, working, { ...from, ...ofEnds?.[k] }),
  );
  return active({ L_p: bar.parallelLength, L_1: first!, L_2: second!, L_s: bar.splineLength ?? 0 }, working, {
    ...(bar.splineLength === undefined ? { L_s: { kind: 'constant', what: 'splines taken as stiff' } } : {}),
    ...(bar.ends[0].kind === 'none' ? { L_1: SHOULDER } : { L_1: { kind: 'step', symbol: 'L_t' } }),
    ...(bar.ends[1].kind === 'none' ? { L_2: SHOULDER } : { L_2: { kind: 'step', symbol: 'L_t' } }),
    ...from,
  });
}

const rate = formula({
  symbol: 'k_t',
  means: 'torsional rate of the bar',
  is: 'G*J/L_e',
  unit: 'N m/rad',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus of the bar' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
    L_e: { unit: 'm', means: 'active length of the bar' },
  },
  source: 'SP-22; Gere7 eq. 3-15',
  holds: 'below the yield point, and for a bar long against its diameter',
});

/**
 * Torsional rate of the bar, G·J/L_e.  [SP-22]
 *
 * The bar has been checked by its reader: nothing is checked here.
 *
 * @example
 * // 20 mm solid, 600 mm active, 80 GPa: 2094.4 N·m/rad, 36.55 N·m a degree
 */
export const torsionBarRate = (
  bar: TorsionBar,
  working?: Working,
  from?: Origins,
  ofEnds?: readonly [Origins, Origins],
): NewtonMetrePerRadian =>
  rate(
    {
      G: bar.shearModulus,
      J: polarSecondMoment(bar, working, from),
      L_e: activeLength(bar, working, from, ofEnds),
    },
    working,
    from,
  );

const skin = formula({
  symbol: 'τ',
  means: 'shear stress at the skin of the bar',
  is: 'T*D/(2*J)',
  unit: 'Pa',
  terms: {
    T: { unit: 'N m', means: 'torque' },
    D: { unit: 'm', means: 'diameter of the bar' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
  },
  source: 'SP-23; Gere7 eq. 3-13',
  holds: 'on the parallel length, below the yield point; the root of the fillet and of the splines sees more',
});

/** Shear stress at the skin, 16TD/π(D⁴ − d⁴), with the sign of the torque.  [SP-23] */
export const skinStress = (
  section: RoundSection,
  torque: NewtonMetre,
  working?: Working,
  from?: Origins,
): Pascal =>
  skin({ T: torque, D: section.diameter, J: polarSecondMoment(section, working, from) }, working, from);

const twistOf = formula({
  symbol: 'φ',
  means: 'twist of the bar from end to end',
  is: 'T/k_t',
  unit: 'rad',
  terms: {
    T: { unit: 'N m', means: 'torque' },
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
  },
  source: 'SP-24',
});

/** Twist under a torque.  [SP-24] */
export const barTwist = (bar: TorsionBar, torque: NewtonMetre, working?: Working, from?: Origins): Radian =>
  twistOf({ T: torque, k_t: torsionBarRate(bar, working, from) }, working, from);

const energyOf = formula({
  symbol: 'U',
  means: 'energy stored in the bar',
  is: 'T*φ/2',
  unit: 'J',
  terms: { T: { unit: 'N m', means: 'torque' }, φ: { unit: 'rad', means: 'twist of the bar' } },
  source: 'SP-25; Gere7 eq. 3-51',
  holds: 'below the yield point',
});

/** Energy in the bar at a torque, joules: what flies about when it breaks.  [SP-25] */
export const storedEnergy = (
  bar: TorsionBar,
  torque: NewtonMetre,
  working?: Working,
  from?: Origins,
): number => energyOf({ T: torque, φ: barTwist(bar, torque, working, from) }, working, from);

const area = (section: RoundSection): number => (Math.PI / 4) * (section.diameter ** 2 - section.bore ** 2);

const massOf = formula({
  symbol: 'm',
  means: 'mass of the bar',
  is: 'ρ*(π/4*(D^2 - d^2)*L_p + V_e)',
  unit: 'kg',
  terms: {
    ρ: { unit: 'kg/m^3', means: 'density of the bar' },
    D: { unit: 'm', means: 'diameter of the bar' },
    d: { unit: 'm', means: 'bore of the bar' },
    L_p: { unit: 'm', means: 'parallel length' },
    V_e: { unit: 'm^3', means: 'volume of transitions and heads' },
  },
  source: 'SP-28',
  holds: 'with the heads as plain cylinders and the bore right through; splines are not cut away',
});

/** Mass of the bar: parallel length, both transitions, heads as plain cylinders; the bore goes right through.  [SP-28] */
export function barMass(bar: TorsionBar, working?: Working, from?: Origins): Kilogram {
  const { diameter: D, bore: d } = bar;
  const between = bar.ends.reduce(
    (sum, end) => sum + alongTransition(end, D, (at) => area({ diameter: at, bore: d })),
    0,
  );
  const heads = (bar.heads ?? []).reduce(
    (sum, head) => sum + area({ diameter: head.diameter, bore: d }) * head.length,
    0,
  );
  return massOf({ ρ: bar.density, D, d, L_p: bar.parallelLength, V_e: between + heads }, working, from);
}

/** Rate of springs one behind the other on the same torque.  [SP-26] */
export const seriesRate = (rates: readonly NewtonMetrePerRadian[]): NewtonMetrePerRadian =>
  1 / rates.reduce((sum, each) => sum + 1 / each, 0);

/** Rate of springs that share one twist: a bar inside a tube joined at both ends.  [SP-27] */
export const parallelRate = (rates: readonly NewtonMetrePerRadian[]): NewtonMetrePerRadian =>
  rates.reduce((sum, each) => sum + each, 0);

/** Twist from end to end of sections in a row, each with the torque that passes through it.  [SP-26] */
export const twistOfSections = (
  sections: readonly (RoundSection & { readonly length: Metre; readonly torque: NewtonMetre })[],
  shearModulus: Pascal,
): Radian =>
  sections.reduce(
    (sum, each) => sum + (each.torque * each.length) / (shearModulus * polarSecondMoment(each)),
    0,
  );
