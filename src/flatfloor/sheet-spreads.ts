/**
 * What stands behind ± where it cannot be meant: no spread at all, one larger than the reading, a tolerance that no
 * gauge reads; and a floor that is to be levelled before it is counted with.
 *
 * In    one sheet, or the car file
 * Out   doubts in words
 */
import type { CarForm } from '../car/read.ts';
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { spokenAmount } from '../units/show.ts';
import type { Doubt } from './doubts.ts';
import { readingWords } from './reading-words.ts';
import type { ReadingKind } from './readings.ts';
import { readingsIn, type Sheet, USUAL_TOLERANCE } from './sheet.ts';

const usual = (id: string): number => USUAL_TOLERANCE[id.split('.')[0] as ReadingKind] ?? 0;

/** Parts of the usual tolerance: no pad or gauge reads as fine as the first, no adjuster sets as fine as the second. */
const LEAST_SPREAD = 1e-3;
const LEAST_TOLERANCE = 0.02;

const listed = (ids: readonly string[]): string => ids.map(readingWords).join('; ');

export function spreadsOfSheet({ name, readings }: Sheet): readonly Doubt[] {
  const none = readings.filter(({ id, u }) => u <= LEAST_SPREAD * usual(id));
  // of what cannot be near nothing
  const empty = readings.filter(
    ({ id, value, u }) => /^(weight|height)\./.test(id) && u > Math.abs(value) / 2,
  );
  return [
    ...(none.length === 0
      ? []
      : [
          {
            code: 'sheet/no-spread',
            message: `${name}: ${listed(none.map(({ id }) => id))}: behind ± stands nothing, or less than can be read.`,
            remedy:
              'Write behind ± what pad or gauge may be off; or leave ± out, and the usual spread of the instrument is taken.',
            paths: none.map(({ path }) => path),
            weight: 'error' as const,
          },
        ]),
    ...(empty.length === 0
      ? []
      : [
          {
            code: 'sheet/spread',
            message: `${name}: ${listed(empty.map(({ id }) => id))}: what stands behind ± is more than half of what was read, so that it says nothing.`,
            remedy: 'Write behind ± what the pad or gauge may be off, one standard uncertainty, in its unit.',
            paths: empty.map(({ path }) => path),
            weight: 'warning' as const,
          },
        ]),
  ];
}

/** Tolerances of the sheet wanted that nothing can be set to. */
export function narrowTolerances({ floor }: CarForm): readonly Doubt[] {
  const { note: _, ...kinds } = floor?.sheet ?? {};
  const narrow = readingsIn(kinds).filter(
    ([id, { spread, u }]) => spread.kind === 'stated' && u < LEAST_TOLERANCE * usual(id),
  );
  if (narrow.length === 0) return [];
  return [
    {
      code: 'sheet/tolerance',
      message: `Wanted, ${listed(narrow.map(([id]) => id))}: the tolerance behind ± is nothing, or finer than anything can be set.`,
      remedy:
        'Write how far off is still good, such as 50 % ± 0.3 %; or leave ± out, and the usual one is taken.',
      paths: narrow.map(([, { path }]) => path),
      weight: 'error',
    },
  ];
}

/** Common practice, no source: a floor is packed level first, what is left is counted. */
const PADS_APART = 0.01;
const RISE = 0.01;

export function unevenFloor({ floor }: CarForm, numbers: Numbers): readonly Doubt[] {
  const { patch } = floor ?? {};
  const heights = WHEEL_NAMES.map((wheel) => numbers.or(patch?.pads?.[wheel], 0));
  const apart = Math.max(...heights) - Math.min(...heights);
  const [forward, left] = [numbers.or(patch?.risesForward, 0), numbers.or(patch?.risesLeft, 0)];
  const rise = Math.hypot(forward, left);
  if (apart <= PADS_APART && rise <= RISE) return [];
  const what =
    apart > PADS_APART
      ? `the pads lie ${spokenAmount(apart, 'm', 1)} apart`
      : `the floor rises by ${spokenAmount(rise, 'm', 3)} a metre`;
  return [
    {
      code: 'floor/uneven',
      message: `Floor: ${what}. It is counted with, but what a slope does to tyres and links on the way is not.`,
      remedy: 'Look whether it was meant so; then pack the pads level by the water level, and read again.',
      paths: [apart > PADS_APART ? 'floor.patch.pads' : 'floor.patch'],
      weight: 'warning',
    },
  ];
}
