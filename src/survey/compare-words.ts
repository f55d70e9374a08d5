/**
 * The comparison of left and right in plain sentences.
 *
 * In    a tested difference in SI, and the way of speaking
 * Out   what stands where, by how much, and how sure; or what would have been seen
 * Axes  difference right − mirrored left: x forward, y towards the middle, z up
 */
import type { Vec3 } from '../maths/vec3.ts';
import { type Speech, show } from '../units/show.ts';
import type { AxisName } from './network.ts';

const WAYS: readonly (readonly [string, string])[] = [
  ['further forward', 'further back'],
  ['further in', 'further out'],
  ['higher', 'lower'],
];

/** Two figures: a bound is no finer than that. */
const bound = (value: number, speech: Speech): string => {
  const { text, unit } = show(value, 'm', speech, value);
  return `${text} ${unit}`;
};

const withSpread = (value: number, u: number, speech: Speech): string => {
  const { text, spread, unit } = show(Math.abs(value), 'm', speech, u);
  return spread === undefined ? `${text} ${unit}` : `${text} ± ${spread} ${unit}`;
};

/** "1 in 10 000" to one figure, no finer than anyone can believe of a normal law. */
export function odds(p: number): string {
  if (p < 1e-9) return 'less than 1 in 1 000 000 000';
  const times = 1 / p;
  const step = 10 ** Math.floor(Math.log10(times));
  return `1 in ${String(Math.round(times / step) * step).replace(/\B(?=(\d{3})+(?!\d))/g, ' ')}`;
}

export interface PairWords {
  readonly name: string;
  readonly difference: Vec3;
  readonly u: Vec3;
  readonly pByAxis: readonly [number, number, number];
  readonly p: number;
  readonly differs: boolean;
  readonly detectable: number;
  readonly heldByDatum: readonly AxisName[];
}

export function pairSentence(pair: PairWords, level: number, speech: Speech = 'mm-N'): string {
  const held =
    pair.heldByDatum.length === 0
      ? ''
      : ` Along ${pair.heldByDatum.join(' and ')} the datum itself sets the pair equal: nothing is tested there.`;
  if (!pair.differs) return `${pair.name}: ${nothingShown(pair.detectable, speech)}.${held}`;
  const least = Math.min(...pair.pByAxis);
  const shown = [0, 1, 2].filter((k) => pair.pByAxis[k]! < level || pair.pByAxis[k] === least);
  const moves = shown.map((k) => {
    const way = WAYS[k]![pair.difference[k]! > 0 ? 0 : 1];
    return `${withSpread(pair.difference[k]!, pair.u[k]!, speech)} ${way}`;
  });
  return (
    `right ${pair.name} stands ${moves.join(' and ')} than the mirrored left one: ` +
    `more than the readings can explain (${odds(pair.p)}).${held}`
  );
}

export interface LengthWords {
  readonly name: string;
  readonly difference: number;
  readonly u: number;
  readonly p: number;
  readonly differs: boolean;
  readonly detectable: number;
}

export function lengthSentence(length: LengthWords, speech: Speech = 'mm-N'): string {
  if (!length.differs) return `${length.name}: ${nothingShown(length.detectable, speech)}.`;
  const longer = length.difference > 0 ? 'left is' : 'right is';
  return (
    `${length.name}: the ${longer} ${withSpread(length.difference, length.u, speech)} longer: ` +
    `more than the readings can explain (${odds(length.p)}).`
  );
}

const nothingShown = (detectable: number, speech: Speech): string =>
  `no difference that the readings can show; a difference above ${bound(detectable, speech)} would have been seen`;
