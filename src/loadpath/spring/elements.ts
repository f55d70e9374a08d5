/**
 * Spring elements as the corner feels them: force against compression, or torque against twist, with every
 * place where the law changes named.
 *
 * In    rates, tables, gaps (SI)
 * Out   force, rate, and the sorted kinks a solver has to land on
 * Axes  compression and force positive in bump; twist and torque positive in bump
 * Not   damping, friction, and the curve of a rubber that depends on speed and heat
 *
 * At a kink the rate is that of the side of greater compression. A spring that has come free gives no force: it
 * does not pull. See docs/theory/springs.md, SP-30 to SP-36.
 */
import { pchip } from '../../maths/pchip.ts';
import type {
  Metre,
  Newton,
  NewtonMetre,
  NewtonMetrePerRadian,
  NewtonPerMetre,
  Radian,
} from '../../units/quantity.ts';

export interface Kink {
  readonly at: number;
  readonly what: string;
}

export interface SpringElement {
  readonly kind: string;
  force(compression: Metre): Newton;
  rate(compression: Metre): NewtonPerMetre;
  /** Compressions at which the law changes, sorted. */
  readonly kinks: readonly Kink[];
  /** Compression past which the figures are beyond what was measured, if there is such a place. */
  readonly knownUpTo?: Metre;
}

export interface TorsionSpring {
  readonly kind: string;
  torque(twist: Radian): NewtonMetre;
  rate(twist: Radian): NewtonMetrePerRadian;
  readonly kinks: readonly Kink[];
}

/** Rate taken for what has no spring in it: a coil gone solid, a hard stop. 50 kN/mm, stiff but not endless. */
export const HARD: NewtonPerMetre = 5e7;

/**
 * A straight spring that only pushes: force = rate × (compression − freeAt), nothing below.  [SP-30]
 *
 * `freeAt` is the compression at which it first carries: 0 where compression is counted from its free length,
 * negative where it is fitted with preload.
 */
export function LinearSpring(of: { readonly rate: NewtonPerMetre; readonly freeAt?: Metre }): SpringElement {
  const freeAt = of.freeAt ?? 0;
  return {
    kind: 'coil spring',
    force: (compression) => (compression > freeAt ? of.rate * (compression - freeAt) : 0),
    rate: (compression) => (compression >= freeAt ? of.rate : 0),
    kinks: [{ at: freeAt, what: 'the spring comes free of its seat' }],
  };
}

/**
 * A spring that goes solid: past `solidAt` the coils meet and the rate is that of solid steel.  [SP-31]
 * The wrapped spring's own kinks stay.
 */
export function SolidSpring(of: {
  readonly spring: SpringElement;
  readonly solidAt: Metre;
  readonly solidRate?: NewtonPerMetre;
}): SpringElement {
  const { spring, solidAt } = of;
  const solidRate = of.solidRate ?? HARD;
  return {
    ...spring,
    kind: `${spring.kind} with coil bind`,
    force: (compression) =>
      compression <= solidAt
        ? spring.force(compression)
        : spring.force(solidAt) + solidRate * (compression - solidAt),
    rate: (compression) => (compression < solidAt ? spring.rate(compression) : solidRate),
    kinks: sorted([
      ...spring.kinks.filter((kink) => kink.at < solidAt),
      { at: solidAt, what: 'the coils meet: the spring is solid' },
    ]),
  };
}

/**
 * Main spring and helper one on the other: the series rate until the helper is solid, the main rate alone
 * after.  [SP-32]
 *
 * `helperTravel` is what the helper has from free to solid. Compression is counted from both free.
 */
export function HelperInSeries(of: {
  readonly mainRate: NewtonPerMetre;
  readonly helperRate: NewtonPerMetre;
  readonly helperTravel: Metre;
  readonly freeAt?: Metre;
}): SpringElement {
  const freeAt = of.freeAt ?? 0;
  const together = 1 / (1 / of.mainRate + 1 / of.helperRate);
  const forceSolid = of.helperRate * of.helperTravel;
  const solidAt = freeAt + forceSolid / together;
  return {
    kind: 'main spring and helper',
    force: (compression) => {
      if (compression <= freeAt) return 0;
      if (compression <= solidAt) return together * (compression - freeAt);
      return forceSolid + of.mainRate * (compression - solidAt);
    },
    rate: (compression) => {
      if (compression < freeAt) return 0;
      return compression < solidAt ? together : of.mainRate;
    },
    kinks: [
      { at: freeAt, what: 'the springs come free of their seats' },
      { at: solidAt, what: 'the helper is solid: the main spring works alone' },
    ],
  };
}

/**
 * Bump rubber from its measured table: a smooth rising curve through the points, behind a gap.  [SP-33]
 *
 * `gap` is the travel of the damper before the rubber touches with no packers; `packers` shorten it. The table
 * counts compression of the rubber itself and starts at nothing. Past its last point the curve goes on straight
 * by its last slope; `knownUpTo` tells where that begins, since a real rubber goes up far more steeply there.
 */
export function CurveSpring(of: {
  readonly table: readonly { readonly compression: Metre; readonly force: Newton }[];
  readonly gap: Metre;
  readonly packers?: Metre;
}): SpringElement {
  const touchesAt = of.gap - (of.packers ?? 0);
  const curve = pchip(of.table.map((row) => ({ x: row.compression, y: row.force })));
  const knownUpTo = touchesAt + curve.last.x;
  return {
    kind: 'bump rubber',
    force: (compression) => (compression <= touchesAt ? 0 : curve.value(compression - touchesAt)),
    rate: (compression) => (compression < touchesAt ? 0 : curve.slope(compression - touchesAt)),
    kinks: [
      { at: touchesAt, what: 'the bump rubber touches' },
      { at: knownUpTo, what: 'the end of the bump rubber as measured: beyond it the force is a guess' },
    ],
    knownUpTo,
  };
}

/**
 * Stop that ends the droop travel: pulls back (negative force) below `at`.  [SP-34]
 */
export function DroopStop(of: { readonly at: Metre; readonly stiffness?: NewtonPerMetre }): SpringElement {
  const stiffness = of.stiffness ?? HARD;
  return {
    kind: 'droop stop',
    force: (compression) => (compression < of.at ? stiffness * (compression - of.at) : 0),
    rate: (compression) => (compression < of.at ? stiffness : 0),
    kinks: [{ at: of.at, what: 'the droop stop takes over' }],
  };
}

/** Elements side by side on the same compression: forces and rates add, all kinks are kept.  [SP-35] */
export function Parallel(elements: readonly SpringElement[]): SpringElement {
  const known = elements.flatMap((each) => (each.knownUpTo === undefined ? [] : [each.knownUpTo]));
  return {
    kind: elements.map((each) => each.kind).join(' and '),
    force: (compression) => elements.reduce((sum, each) => sum + each.force(compression), 0),
    rate: (compression) => elements.reduce((sum, each) => sum + each.rate(compression), 0),
    kinks: sorted(elements.flatMap((each) => each.kinks)),
    ...(known.length === 0 ? {} : { knownUpTo: Math.min(...known) }),
  };
}

/**
 * A torsion bar as the rocker feels it: torque = rate × (twist − freeAt), both ways.  [SP-36]
 *
 * A splined bar does not come free: below `freeAt` it is twisted backwards, against the hand of a preset bar.
 * That place is named as a kink so that it is told, though the law does not change there.
 */
export function BarSpring(of: {
  readonly rate: NewtonMetrePerRadian;
  readonly freeAt?: Radian;
}): TorsionSpring {
  const freeAt = of.freeAt ?? 0;
  return {
    kind: 'torsion bar',
    torque: (twist) => of.rate * (twist - freeAt),
    rate: () => of.rate,
    kinks: [{ at: freeAt, what: 'the bar is slack: below this its twist reverses' }],
  };
}

const sorted = (kinks: readonly Kink[]): readonly Kink[] => [...kinks].sort((a, b) => a.at - b.at);
