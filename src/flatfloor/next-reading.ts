/**
 * The next best reading to take: the one that makes the answer surest.
 *
 * In    the fit of what was read, what the readings will be, the usual spread of each kind of reading
 * Out   readings by what they take off the answer's spread, the best first
 *
 * A reading a of variance u² takes (aᵀC b)²/(aᵀC a + u²) off the variance of an answer b.  [FF-32]
 */
import { instrumentClass, ownUncertainty } from '../measured/instrument.ts';
import { covarianceOf, type Found, variance } from './found.ts';
import type { ReadingKind } from './readings.ts';
import type { Wanted } from './sheet.ts';
import type { FloorStanding } from './stand.ts';

export interface NextReading {
  readonly id: string;
  /** Part of the answer's variance, each answer in its own tolerance, that this reading takes off: 0 to 1. */
  readonly takes: number;
  /** Whether it was read already, and would be read once more. */
  readonly again: boolean;
}

/** Instrument that usually reads each kind. */
const USUAL: Readonly<Partial<Record<ReadingKind, string>>> = {
  weight: 'corner scale',
  height: 'height gauge',
  camber: 'inclinometer',
  toe: 'string line',
  caster: 'inclinometer',
  track: 'tape',
  wheelbase: 'plumb bob',
  droop: 'steel rule',
};

export function nextReadings(
  found: Found,
  wanted: readonly Wanted[],
  after: FloorStanding,
): readonly NextReading[] {
  const slopesIn = (by: Float64Array): Float64Array =>
    Float64Array.from(found.hidden, ({ change }) => by[change]!);
  const answers = wanted.flatMap(({ id, tolerance }) => {
    const reading = after.readings.get(id);
    return reading === undefined ? [] : [slopesIn(reading.by).map((slope) => slope / tolerance)];
  });
  const whole = answers.reduce((sum, answer) => sum + variance(found.covariance, answer), 0);
  const read = new Set(found.residuals.map(({ reading }) => reading.id));
  return [...found.standing.readings.values()]
    .flatMap(({ id, kind, value, unit, by }): NextReading[] => {
      const usual = USUAL[kind];
      if (usual === undefined) return [];
      const u = ownUncertainty(instrumentClass(usual)!, value, unit);
      const a = slopesIn(by);
      const spread = variance(found.covariance, a) + u * u;
      const off = answers.reduce(
        (sum, answer) => sum + covarianceOf(found.covariance, a, answer) ** 2 / spread,
        0,
      );
      return [{ id, takes: whole > 0 ? off / whole : 0, again: read.has(id) }];
    })
    .sort((a, b) => b.takes - a.takes);
}
