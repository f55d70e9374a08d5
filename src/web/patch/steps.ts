/**
 * The order in which a car is read on the pads: holds that must be so before, then one reading after another.
 *
 * Pressures first, then steering held straight and bars off, then heights, caster, camber, toe rear before front, and
 * the weights after the car was settled anew (common practice, no source).
 */
import type { FloorSheets } from '../../questions/index.ts';
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
  hold(
    'pads',
    'Pads are level, scales read nought without a wheel, and a known mass was put on one of them.',
  );
  take(wheels('pressure'));
  hold('rack', 'The rack is in the middle by its gauge, and the wheel is held there.');
  hold('bars', 'Drop links of the anti-roll bars are off, dampers at their softest.');
  hold(
    'aboard',
    aboard.length === 0
      ? 'The driver, or the same mass, is in his place; fuel is as on the sheet.'
      : `Aboard, or the same mass in their places: ${aboard.map(({ name, mass }) => `${name} ${mass.toFixed(1)} kg`).join(', ')}.`,
  );
  hold('settled', 'The car was rolled off and on, or bounced at both ends, and came to rest.');
  take(heights.map((name) => `height.${name}`));
  take(wheels('caster').filter(kept));
  take(wheels('camber').filter(kept));
  const toe = wheels('toe').some(kept) && !wheels('toeAtRim').some(kept) ? 'toe' : 'toeAtRim';
  take(['rearLeft', 'rearRight', 'frontLeft', 'frontRight'].map((wheel) => `${toe}.${wheel}`).filter(kept));
  hold('again', 'Rolled off and on once more before the weights; nobody touches the car.');
  take(wheels('weight'));
  return steps;
}
