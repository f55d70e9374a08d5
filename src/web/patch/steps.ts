/**
 * The order in which a car is read on the pads: holds that must be so before, then one reading after another.
 *
 * Pressures first, then steering held straight and bars off, then heights, caster, camber, toe rear before front, and
 * the weights after the car was settled anew (common practice, no source).
 */
import { aboardHold, type FloorSheets, HOLDS } from '../../questions/index.ts';
import { WHEEL_KEYS } from './words.ts';

export type Step =
  | { readonly what: 'hold'; readonly id: string; readonly says: string }
  | { readonly what: 'read'; readonly id: string };

export function stepsOf({ heights, aboard, wanted, read }: FloorSheets): readonly Step[] {
  const known = new Set([
    ...wanted.map(({ id }) => id),
    ...read.flatMap(({ readings }) => readings.map(({ id }) => id)),
  ]);
  const kept = (id: string): boolean => known.has(id);
  const steps: Step[] = [];
  const hold = (id: string, says: string): void => {
    steps.push({ what: 'hold', id, says });
  };
  const take = (ids: readonly string[]): void => {
    for (const id of ids) steps.push({ what: 'read', id });
  };
  const wheels = (kind: string): string[] => WHEEL_KEYS.map((wheel) => `${kind}.${wheel}`);
  hold('pads', HOLDS.pads);
  take(wheels('pressure'));
  hold('rack', HOLDS.rack);
  hold('bars', HOLDS.bars);
  hold('aboard', aboardHold(aboard));
  hold('settled', HOLDS.settled);
  take(heights.map((name) => `height.${name}`));
  take(wheels('caster').filter(kept));
  take(wheels('camber').filter(kept));
  const toe = wheels('toe').some(kept) && !wheels('toeAtRim').some(kept) ? 'toe' : 'toeAtRim';
  take(['rearLeft', 'rearRight', 'frontLeft', 'frontRight'].map((wheel) => `${toe}.${wheel}`).filter(kept));
  hold('again', HOLDS.again);
  take(wheels('weight'));
  return steps;
}
