/**
 * The order in which a car is read on the pads: holds that must be so before, then one reading after another, and what
 * is left to do before the car is let go.
 *
 * The order is that of the work (common practice, no source): pads and scales, pressures, rack, bars off, what is
 * aboard, settled; heights, caster, camber, wheelbase and track, toe rear before front, bump steer; weights on a car
 * that was settled anew; heights and angles once more where something was moved; droop and springs; bars on, lock nuts,
 * clicks, wings. A car as found is read as it came: nothing of it is undone first, and nothing is set.
 */
import { type FloorSheets, type HoldName, holdWords } from '../../questions/index.ts';
import type { Run } from './run.ts';
import { WHEEL_KEYS } from './words.ts';

/** What a step belongs to, in the order of the work. */
export const GROUPS = [
  'pads',
  'pressures',
  'rack, bars',
  'heights',
  'caster',
  'camber',
  'toe',
  'weights',
  'once more',
  'droop',
  'bars on',
  'nuts',
  'clicks',
  'wings',
] as const;
export type Group = (typeof GROUPS)[number];

export type Step = { readonly group: Group; readonly key: string } & (
  | { readonly what: 'hold'; readonly id: HoldName; readonly says: string }
  | { readonly what: 'bars as found' }
  | { readonly what: 'read'; readonly id: string }
  | { readonly what: 'moved'; readonly pass: number }
  | { readonly what: 'clicks' }
  | { readonly what: 'wings' }
);

export function stepsOf(
  sheets: FloorSheets,
  { state, passes }: Pick<Run, 'state' | 'passes'>,
): readonly Step[] {
  const { heights, aboard, droops } = sheets;
  const known = new Set([
    ...sheets.wanted.map(({ id }) => id),
    ...sheets.read.flatMap(({ readings }) => readings.map(({ id }) => id)),
  ]);
  const kept = (id: string): boolean => known.has(id);
  const found = state === 'as found';
  const steps: Step[] = [];
  const hold = (group: Group, id: HoldName, pass = 0): void => {
    steps.push({ what: 'hold', group, key: `${id} ${pass}`, id, says: holdWords(id, aboard) });
  };
  const take = (group: Group, ids: readonly string[], pass = 0): void => {
    for (const id of ids) steps.push({ what: 'read', group, key: `${id} ${pass}`, id });
  };
  const wheels = (kind: string): string[] => WHEEL_KEYS.map((wheel) => `${kind}.${wheel}`);
  const toe = wheels('toe').some(kept) && !wheels('toeAtRim').some(kept) ? 'toe' : 'toeAtRim';
  const rearFirst = ['rearLeft', 'rearRight', 'frontLeft', 'frontRight'].map((wheel) => `${toe}.${wheel}`);
  const height = heights.map((name) => `height.${name}`);

  hold('pads', 'pads');
  take('pressures', wheels('pressure'));
  hold('rack, bars', 'rack');
  if (found) steps.push({ what: 'bars as found', group: 'rack, bars', key: 'bars as found' });
  else hold('rack, bars', 'bars');
  hold('rack, bars', 'aboard');
  hold('rack, bars', 'settled');
  take('heights', height);
  take('caster', wheels('caster').filter(kept));
  take('camber', wheels('camber').filter(kept));
  take('toe', ['wheelbase.left', 'wheelbase.right', 'track.front', 'track.rear'].filter(kept));
  take('toe', rearFirst.filter(kept));
  if (state === 'as set') hold('toe', 'bump');
  hold('weights', 'again');
  take('weights', wheels('weight'));
  if (state === 'as set') {
    for (let pass = 1; pass <= passes + 1; pass += 1) {
      steps.push({ what: 'moved', group: 'once more', key: `moved ${pass}`, pass });
      if (pass > passes) break;
      hold('once more', 'settled', pass);
      const angles = [...wheels('camber'), ...rearFirst].filter(kept);
      take('once more', [...height, ...angles, ...wheels('weight')], pass);
    }
  }
  take(
    'droop',
    droops.map((wheel) => `droop.${wheel}`),
  );
  if (state === 'as set') hold('droop', 'springs');
  if (!found) {
    hold('bars on', 'links');
    hold('nuts', state === 'as set' ? 'locks' : 'marks');
  }
  steps.push(
    { what: 'clicks', group: 'clicks', key: 'clicks' },
    { what: 'wings', group: 'wings', key: 'wings' },
  );
  return steps;
}
