/**
 * A small curve over wheel travel: frame, few ticks, the line, a mark where the wheel stands.
 *
 * In    numbers as they are spoken (the caller has chosen the units); null where there is no figure
 * Out   one block of fixed height
 */
import { plain } from '../units/show.ts';
import { type Block, beside } from './lay-out.ts';
import { circle, LINE, line, type Mark, type PaperPoint, polyline, rectangle, SIZE, text } from './page.ts';

export interface Curve {
  readonly title: string;
  readonly acrossTitle: string;
  readonly across: readonly number[];
  readonly values: readonly (number | null)[];
  /** Where the wheel stands, on the same scale as `across`. */
  readonly at?: number;
}

export const CURVE_HEIGHT = 46;
const LEFT = 13;
const BOTTOM = 9;
const TOP = 6;

export const curveBlock = (curve: Curve): Block => ({
  height: CURVE_HEIGHT,
  marks: (at, width) => curveMarks(curve, at, width),
});

/** Two curves a row. */
export function curveGrid(curves: readonly Curve[], width: number): Block[] {
  const half = width / 2;
  return Array.from({ length: Math.ceil(curves.length / 2) }, (_, row) =>
    beside(
      curves
        .slice(2 * row, 2 * row + 2)
        .map((curve, k) => ({ block: curveBlock(curve), x: k * half, width: half - 3 })),
    ),
  );
}

function curveMarks(curve: Curve, at: PaperPoint, width: number): Mark[] {
  const box = { x: at.x + LEFT, y: at.y + TOP, width: width - LEFT - 2, height: CURVE_HEIGHT - TOP - BOTTOM };
  const title = text({ x: at.x, y: at.y + 4 }, curve.title, { size: SIZE.small, weight: 'bold' });
  const known = curve.values.filter((value): value is number => value !== null && Number.isFinite(value));
  if (known.length < 2) {
    return [
      title,
      rectangle(box, { weight: LINE.hair }),
      text({ x: box.x + 2, y: box.y + 6 }, 'no figure here', { size: SIZE.small }),
    ];
  }
  const acrossTicks = ticksOver(Math.min(...curve.across), Math.max(...curve.across), 6);
  const highest = topOf(known);
  const upTicks = ticksOver(Math.min(...known), highest, 4);
  const x = scale(Math.min(...curve.across), Math.max(...curve.across), box.x, box.x + box.width);
  const y = scale(upTicks.low, upTicks.high, box.y + box.height, box.y);
  const rises = highest < Math.max(...known);
  const below = rises ? `${curve.acrossTitle} · the line rises out of the frame` : curve.acrossTitle;
  return [
    title,
    rectangle(box, { weight: LINE.thin }),
    ...acrossTicks.ticks
      .filter((tick) => tick >= Math.min(...curve.across) && tick <= Math.max(...curve.across))
      .flatMap((tick) => [
        line(
          { x: x(tick), y: box.y },
          { x: x(tick), y: box.y + box.height },
          { weight: tick === 0 ? LINE.thin : LINE.hair },
        ),
        text({ x: x(tick), y: box.y + box.height + 2.8 }, plain(tick, acrossTicks.digits), {
          size: SIZE.label,
          align: 'middle',
        }),
      ]),
    ...upTicks.ticks.flatMap((tick) => [
      line(
        { x: box.x, y: y(tick) },
        { x: box.x + box.width, y: y(tick) },
        { weight: tick === 0 ? LINE.thin : LINE.hair },
      ),
      text({ x: box.x - 1, y: y(tick) + 0.8 }, plain(tick, upTicks.digits), {
        size: SIZE.label,
        align: 'right',
      }),
    ]),
    text({ x: box.x + box.width / 2, y: box.y + box.height + 6 }, below, {
      size: SIZE.label,
      align: 'middle',
    }),
    ...lines(curve, x, y, upTicks.high),
    ...standing(curve, x, y, upTicks.high),
  ];
}

/** A stop or a solid coil is many times stiffer than all else: the frame then ends at a few times the middle value. */
const STEEP = 4;

function topOf(known: readonly number[]): number {
  const most = Math.max(...known);
  const middle = known.toSorted((a, b) => a - b)[Math.floor(known.length / 2)]!;
  return middle > 0 && most > STEEP * middle ? STEEP * middle : most;
}

/** The line in runs, cut where it leaves the top of the frame and where there is no figure. */
function lines(
  curve: Curve,
  x: (value: number) => number,
  y: (value: number) => number,
  top: number,
): Mark[] {
  const runs: PaperPoint[][] = [[]];
  const { across, values } = curve;
  values.forEach((value, k) => {
    if (value === null || !Number.isFinite(value)) {
      runs.push([]);
      return;
    }
    const before = k === 0 ? null : values[k - 1]!;
    if (before !== null && before > top !== value > top) {
      const part = (top - before) / (value - before);
      runs.at(-1)!.push({ x: x(across[k - 1]! + part * (across[k]! - across[k - 1]!)), y: y(top) });
    }
    if (value <= top) runs.at(-1)!.push({ x: x(across[k]!), y: y(value) });
    else runs.push([]);
  });
  return runs.filter((run) => run.length > 1).map((run) => polyline(run, { weight: LINE.thick }));
}

/** A ring on the line where the wheel stands, by the straight line between the two nearest points. */
function standing(
  curve: Curve,
  x: (value: number) => number,
  y: (value: number) => number,
  top: number,
): Mark[] {
  const { at, across, values } = curve;
  if (at === undefined) return [];
  const after = across.findIndex((each) => each >= at);
  const before = after === 0 ? 0 : after - 1;
  const [low, high] = [values[before], values[after]];
  if (after < 0 || low === null || low === undefined || high === null || high === undefined) return [];
  const run = across[after]! - across[before]!;
  const value = run === 0 ? high : low + ((high - low) * (at - across[before]!)) / run;
  if (value > top) return [];
  return [circle({ x: x(at), y: y(value) }, 1, { weight: LINE.thick })];
}

const scale =
  (low: number, high: number, from: number, to: number) =>
  (value: number): number =>
    from + ((value - low) / (high - low)) * (to - from);

export interface Ticks {
  readonly ticks: readonly number[];
  readonly low: number;
  readonly high: number;
  readonly digits: number;
}

/** Round numbers (1, 2 or 5 times a power of ten) over a range, and the range widened to whole steps. */
export function ticksOver(low: number, high: number, most: number): Ticks {
  const spread =
    high - low > 1e-9 * Math.max(Math.abs(low), Math.abs(high))
      ? high - low
      : Math.max(Math.abs(high), 1) * 0.02;
  const rough = spread / most;
  const ten = 10 ** Math.floor(Math.log10(rough));
  const step = ten * [1, 2, 5, 10].find((each) => each * ten >= rough * (1 - 1e-9))!;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, k) => (first + k) * step);
  return {
    ticks,
    low: first * step,
    high: last * step,
    digits: Math.max(0, -Math.floor(Math.log10(step) + 1e-9)),
  };
}
