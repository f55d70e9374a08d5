/**
 * The coil spring: round wire, cylindrical, in compression.
 *
 * In    wire, mean diameter, coils, ends, free length, moduli (SI); a rate or a solid length that was measured
 *       stands in place of the computed one
 * Out   rate, index, corrected shear stress, solid length, surge frequency, mass
 * Axes  compression and force positive as the spring is pressed together
 * Not   conical or progressive springs; side load of a bent seat; see coil-limits.ts for buckling, fatigue, set
 *
 * [EN13906-1]  EN 13906-1:2013, cylindrical helical springs, compression springs (from memory)
 * [Shigley10]  Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed., ch. 10
 * [Wahl]       Wahl, Mechanical Springs, 2nd ed., 1963 (from memory)
 */
import type {
  Hertz,
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  Newton,
  NewtonPerMetre,
  Pascal,
  Ratio,
} from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

/** How the ends are made. It rules how many coils work and how short the spring goes. */
export type CoilEnds = 'open' | 'open and ground' | 'closed' | 'closed and ground';

export interface CoilSpring {
  readonly wire: Metre;
  /** Diameter of the wire's centre line: outside diameter less one wire. */
  readonly meanDiameter: Metre;
  readonly activeCoils: Ratio;
  readonly ends: CoilEnds;
  readonly freeLength: Metre;
  readonly shearModulus: Pascal;
  readonly youngsModulus: Pascal;
  readonly density: KilogramPerCubicMetre;
  /** From the spring press; rules over G·d⁴/8D³n when given. */
  readonly measuredRate?: NewtonPerMetre;
  readonly measuredSolidLength?: Metre;
  /** Coils from end to end as counted; rules over what the ends are worth by the book. */
  readonly countedCoils?: Ratio;
}

/** Where each symbol's value came from, for the working. */
export type Origins = Readonly<Record<string, Origin>>;

export const DEAD_COILS: Readonly<Record<CoilEnds, number>> = {
  open: 0,
  'open and ground': 1,
  closed: 2,
  'closed and ground': 2,
};

/** Coils counted from end to end. */
export const totalCoils = (spring: CoilSpring): Ratio =>
  spring.countedCoils ?? spring.activeCoils + DEAD_COILS[spring.ends];

const rate = formula({
  symbol: 'R',
  means: 'rate of the coil spring',
  is: 'G*d^4/(8*D^3*n)',
  unit: 'N/m',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus of the wire' },
    d: { unit: 'm', means: 'wire diameter' },
    D: { unit: 'm', means: 'mean coil diameter' },
    n: { unit: '1', means: 'working coils' },
  },
  source: 'SP-1; EN13906-1',
  holds: 'for index 4 to 20, small helix angle, and while no coil lies on its neighbour',
});

/**
 * Rate of the spring: as measured when the car file has it, else G·d⁴/8D³n.  [SP-1]
 *
 * A working gets the measured rate as it stands; the computed one may be asked for with `computedRate`.
 */
export function coilRate(spring: CoilSpring, working?: Working, from?: Origins): NewtonPerMetre {
  if (spring.measuredRate === undefined) return computedRate(spring, working, from);
  working?.add({
    kind: 'solved',
    symbol: 'R',
    means: 'rate of the coil spring',
    method: 'as measured on the press',
    value: spring.measuredRate,
    unit: 'N/m',
    source: 'SP-1',
    terms: [],
  });
  return spring.measuredRate;
}

/** G·d⁴/8D³n, whether or not a rate was measured.  [SP-1] */
export function computedRate(spring: CoilSpring, working?: Working, from?: Origins): NewtonPerMetre {
  return rate(
    { G: spring.shearModulus, d: spring.wire, D: spring.meanDiameter, n: spring.activeCoils },
    working,
    from,
  );
}

const index = formula({
  symbol: 'w',
  means: 'spring index',
  is: 'D/d',
  unit: '1',
  terms: { D: { unit: 'm', means: 'mean coil diameter' }, d: { unit: 'm', means: 'wire diameter' } },
  source: 'SP-2; EN13906-1',
});

/** Mean diameter over wire: 4 to 20 is what can be coiled and what the formulas hold for.  [SP-2] */
export const springIndex = (spring: CoilSpring, working?: Working, from?: Origins): Ratio =>
  index({ D: spring.meanDiameter, d: spring.wire }, working, from);

/**
 * Which correction a stress carries. `EN 13906-1` (the same as Bergsträsser's) and `Wahl` are for stress at the
 * inside of the coil, where cracks start; they differ by 1.4 % at index 4. `direct shear` is for a load that
 * stands still and for set-removed springs; `none` is plain torsion.
 */
export type StressFactor = 'EN 13906-1' | 'Wahl' | 'direct shear' | 'none';

const INDEX_TERM = { w: { unit: '1', means: 'spring index' } } as const;

const FACTORS = {
  'EN 13906-1': formula({
    symbol: 'k',
    means: 'stress factor for the curve of the wire, EN 13906-1 (Bergsträsser)',
    is: '(w + 0.5)/(w - 0.75)',
    unit: '1',
    terms: INDEX_TERM,
    source: 'SP-3; EN13906-1',
  }),
  Wahl: formula({
    symbol: 'k',
    means: 'stress factor for the curve of the wire, Wahl',
    is: '(4*w - 1)/(4*w - 4) + 0.615/w',
    unit: '1',
    terms: INDEX_TERM,
    source: 'SP-4; Wahl',
  }),
  'direct shear': formula({
    symbol: 'k',
    means: 'stress factor for direct shear alone',
    is: '1 + 0.5/w',
    unit: '1',
    terms: INDEX_TERM,
    source: 'SP-5; Shigley10 eq. 10-3',
  }),
};

/** Correction of the torsion stress at this index.  [SP-3 to SP-5] */
export const stressFactor = (kind: StressFactor, w: Ratio, working?: Working): Ratio =>
  kind === 'none' ? 1 : FACTORS[kind]({ w }, working);

const stress = formula({
  symbol: 'τ',
  means: 'shear stress in the wire',
  is: 'k*8*F*D/(π*d^3)',
  unit: 'Pa',
  terms: {
    k: { unit: '1', means: 'stress factor' },
    F: { unit: 'N', means: 'force on the spring' },
    D: { unit: 'm', means: 'mean coil diameter' },
    d: { unit: 'm', means: 'wire diameter' },
  },
  source: 'SP-6; EN13906-1',
  holds: 'below the yield point',
});

/** Shear stress at the inside of the coil under a force, with the factor that is named.  [SP-6] */
export function coilStress(
  spring: CoilSpring,
  force: Newton,
  factor: StressFactor = 'EN 13906-1',
  working?: Working,
  from?: Origins,
): Pascal {
  const k = stressFactor(factor, springIndex(spring, working, from), working);
  return stress({ k, F: force, D: spring.meanDiameter, d: spring.wire }, working, from);
}

/** What is added to the total coils, in wires, to get the solid length. */
const SOLID_EXTRA: Readonly<Record<CoilEnds, number>> = {
  open: 1,
  'open and ground': 0,
  closed: 1.5,
  'closed and ground': 0,
};

const solid = formula({
  symbol: 'L_c',
  means: 'solid length',
  is: '(n_t + e)*d',
  unit: 'm',
  terms: {
    n_t: { unit: '1', means: 'coils from end to end' },
    e: { unit: '1', means: 'wires added by ends that are not ground' },
    d: { unit: 'm', means: 'wire diameter' },
  },
  source: 'SP-7; EN13906-1 (closed), Shigley10 table 10-1 (open)',
  holds: 'to about the tolerance of the wire times the coils; measure it where the margin is small',
});

/** Length with all coils touching: measured when the file has it, else from coils and ends.  [SP-7] */
export function solidLength(spring: CoilSpring, working?: Working, from?: Origins): Metre {
  if (spring.measuredSolidLength !== undefined) return spring.measuredSolidLength;
  return solid({ n_t: totalCoils(spring), e: SOLID_EXTRA[spring.ends], d: spring.wire }, working, {
    e: { kind: 'table', name: `ends ${spring.ends}` },
    ...from,
  });
}

const gaps = formula({
  symbol: 'S_a',
  means: 'least sum of the gaps between working coils at the shortest working length',
  is: 'c*n*(0.0015*D^2/d + 0.1*d)',
  unit: 'm',
  terms: {
    c: { unit: '1', means: '1 for a load that stands still, 1.5 for one that moves' },
    n: { unit: '1', means: 'working coils' },
    D: { unit: 'm', means: 'mean coil diameter' },
    d: { unit: 'm', means: 'wire diameter' },
  },
  source: 'SP-8; EN13906-1 (from memory)',
  holds: 'for cold-coiled springs',
});

/** Gap that must be left before the coils meet. On a car the load always moves.  [SP-8] */
export const leastGaps = (
  spring: CoilSpring,
  load: 'still' | 'moving' = 'moving',
  working?: Working,
  from?: Origins,
): Metre =>
  gaps(
    { c: load === 'moving' ? 1.5 : 1, n: spring.activeCoils, D: spring.meanDiameter, d: spring.wire },
    working,
    from,
  );

/** Compression left before the coils meet; negative when the spring would have to be shorter than solid. */
export const coilBindMargin = (spring: CoilSpring, compression: Metre): Metre =>
  spring.freeLength - solidLength(spring) - compression;

const forceSolid = formula({
  symbol: 'F_c',
  means: 'force to press the spring solid',
  is: 'R*(L_0 - L_c)',
  unit: 'N',
  terms: {
    R: { unit: 'N/m', means: 'rate of the coil spring' },
    L_0: { unit: 'm', means: 'free length' },
    L_c: { unit: 'm', means: 'solid length' },
  },
  source: 'SP-9; EN13906-1',
});

/** Force at solid length, by the straight law.  [SP-9] */
export const solidForce = (spring: CoilSpring, working?: Working, from?: Origins): Newton =>
  forceSolid(
    {
      R: coilRate(spring, working, from),
      L_0: spring.freeLength,
      L_c: solidLength(spring, working, from),
    },
    working,
    from,
  );

/** Stress at solid length. Static stress: the direct-shear factor unless another is asked for. */
export const solidStress = (
  spring: CoilSpring,
  factor: StressFactor = 'direct shear',
  working?: Working,
  from?: Origins,
): Pascal => coilStress(spring, solidForce(spring, working, from), factor, working, from);

const surge = formula({
  symbol: 'f_e',
  means: 'surge frequency, both ends held',
  is: 'd/(2*π*n*D^2)*sqrt(G/(2*ρ))',
  unit: 'Hz',
  terms: {
    d: { unit: 'm', means: 'wire diameter' },
    n: { unit: '1', means: 'working coils' },
    D: { unit: 'm', means: 'mean coil diameter' },
    G: { unit: 'Pa', means: 'shear modulus of the wire' },
    ρ: { unit: 'kg/m^3', means: 'density of the wire' },
  },
  source: 'SP-10; EN13906-1 gives the same within 0.03 %',
});

/** First frequency of the wave that runs along the coils.  [SP-10] */
export const surgeFrequency = (spring: CoilSpring, working?: Working, from?: Origins): Hertz =>
  surge(
    {
      d: spring.wire,
      n: spring.activeCoils,
      D: spring.meanDiameter,
      G: spring.shearModulus,
      ρ: spring.density,
    },
    working,
    from,
  );

const wireMass = formula({
  symbol: 'm',
  means: 'mass of the coil spring',
  is: 'ρ*π*d^2/4*π*D*n_t',
  unit: 'kg',
  terms: {
    ρ: { unit: 'kg/m^3', means: 'density of the wire' },
    d: { unit: 'm', means: 'wire diameter' },
    D: { unit: 'm', means: 'mean coil diameter' },
    n_t: { unit: '1', means: 'coils from end to end' },
  },
  source: 'SP-11',
  holds: 'to about 1 %: the rise of the helix and the ground ends are left out, and pull opposite ways',
});

/** Mass of the wire, seats and platforms not counted.  [SP-11] */
export const coilMass = (spring: CoilSpring, working?: Working, from?: Origins): Kilogram =>
  wireMass(
    { ρ: spring.density, d: spring.wire, D: spring.meanDiameter, n_t: totalCoils(spring) },
    working,
    from,
  );
