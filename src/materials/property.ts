/**
 * A property of a material, with where it stands in print and how well it is known.
 *
 * In    rows typed by hand from data sheets and standards
 * Out   value and, where the sources differ or a range is printed, its low and high ends, all SI
 */

import { editDistance } from '../maths/edit-distance.ts';

/** Whether the figure was read in the source named, is remembered from it, or is our own assumption. */
export type Known = 'seen' | 'from memory' | 'assumed';

export interface Property {
  readonly value: number;
  readonly low?: number;
  readonly high?: number;
  readonly source: string;
  readonly known: Known;
}

export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Names most like the one that was asked for, nearest first: for "did you mean" in an error. */
export function nearestNames(asked: string, names: readonly string[], count = 3): readonly string[] {
  const plain = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, '');
  const wanted = plain(asked);
  const score = (name: string): number => {
    const has = wanted !== '' && (plain(name).includes(wanted) || wanted.includes(plain(name)));
    return editDistance(wanted, plain(name)) - (has ? 100 : 0);
  };
  return [...names].sort((a, b) => score(a) - score(b)).slice(0, count);
}
