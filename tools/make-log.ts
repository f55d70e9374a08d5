/**
 * The invented log of the demo car fenwold-201: one lap of no circuit, made from a speed profile and a row of bends.
 *
 * In    nothing; every number stands here
 * Out   cars/fenwold-201/lap.csv, with a gap in time and a few empty cells, as logs have them
 *
 *   node --import tsx tools/make-log.ts
 */
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const OUT = fileURLToPath(new URL('../cars/fenwold-201/lap.csv', import.meta.url));
const STEP = 0.05;
const LENGTH = 62;
const g = 9.80665;

/** Seconds and km/h between which the speed goes smoothly. */
const SPEED: readonly (readonly [number, number])[] = [
  [0, 208],
  [6, 252],
  [9.4, 112],
  [11.5, 118],
  [17, 226],
  [19.5, 148],
  [22.5, 160],
  [27, 231],
  [29.2, 176],
  [33, 184],
  [39, 246],
  [42.6, 92],
  [45, 98],
  [49, 174],
  [51, 131],
  [54, 142],
  [62, 208],
];

/** Seconds of a bend, and its peak in g; to the left positive. */
const BENDS: readonly (readonly [number, number, number])[] = [
  [8.6, 12.6, -1.72],
  [18.6, 23.6, 2.05],
  [28.4, 34.4, -2.21],
  [41.8, 46.4, 1.58],
  [50.2, 52.4, -1.74],
  [52.6, 55.6, 1.83],
];

/** A dip and a crest: middle in seconds, half length, g. */
const ROAD: readonly (readonly [number, number, number])[] = [
  [14.2, 0.5, 0.82],
  [36.6, 0.6, 1.31],
  [37.8, 0.5, -0.44],
];

const speedAt = (t: number): number => {
  const k = Math.max(
    0,
    SPEED.findLastIndex(([from]) => from <= t),
  );
  const [[t0, v0], [t1, v1]] = [SPEED[k]!, SPEED[Math.min(k + 1, SPEED.length - 1)]!];
  const part = t1 === t0 ? 0 : Math.min(1, (t - t0) / (t1 - t0));
  return (v0 + (v1 - v0) * part * part * (3 - 2 * part)) / 3.6;
};

const hump = (t: number, middle: number, half: number): number =>
  Math.abs(t - middle) > half ? 0 : Math.cos(((t - middle) / half) * (Math.PI / 2)) ** 2;

const lateralAt = (t: number): number =>
  BENDS.reduce((sum, [from, to, peak]) => sum + peak * hump(t, (from + to) / 2, (to - from) / 2), 0);

/** What shakes a sensor: two sines that never meet, no chance in it. */
const shake = (t: number, size: number): number =>
  size * (Math.sin(2 * Math.PI * 7.3 * t) + 0.6 * Math.sin(2 * Math.PI * 11.9 * t + 1));

const rows: string[] = [];
for (let k = 0; k * STEP <= LENGTH; k += 1) {
  const t = k * STEP;
  // the logger dropped out for a third of a second
  if (t > 24.31 && t < 24.66) continue;
  const v = speedAt(t);
  const ax = (speedAt(t + 0.05) - speedAt(t - 0.05)) / 0.1 / g + shake(t, 0.02);
  const ay = lateralAt(t) + shake(t + 3, 0.03);
  const az =
    1 + ROAD.reduce((sum, [at, half, peak]) => sum + peak * hump(t, at, half), 0) + shake(t + 5, 0.05);
  // wheelbase 2.9 m, steering arm 0.1 m
  const rack = ((lateralAt(t) * g) / v ** 2) * 2.9 * 100;
  const empty = t > 47.02 && t < 47.18;
  rows.push(
    [
      t.toFixed(2),
      (v * 3.6).toFixed(1),
      ax.toFixed(3),
      empty ? '' : ay.toFixed(3),
      az.toFixed(3),
      rack.toFixed(2),
    ].join(','),
  );
}
const head = [
  '# An invented lap of no circuit, made by tools/make-log.ts',
  'Time,Speed,Acc forward,Acc left,Acc up,Rack',
];
writeFileSync(OUT, `${[...head, ...rows].join('\n')}\n`);
