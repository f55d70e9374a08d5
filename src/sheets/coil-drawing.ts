/**
 * A helical spring standing free, lying on its side, to scale, with its dimensions.
 *
 * In    wire, mean diameter, coils, free length (m)
 * Out   one block with scale and ruler
 *
 * The coils are drawn as leaning tubes, the front ones over the back ones; ends are not drawn in detail.
 */
import type { Metre } from '../units/quantity.ts';
import type { Speech } from '../units/show.ts';
import { dimension, leader, RULER_HEIGHT, RULER_WORDS, ruler } from './dimension.ts';
import type { Block } from './lay-out.ts';
import { DASH, LINE, line, type Mark, type PaperPoint, polyline, SIZE, text } from './page.ts';
import { shortened, type TextMeasure } from './text-measure.ts';
import { drawnLength, lengthWords, otherWay } from './words.ts';

export interface CoilShape {
  readonly wire: Metre;
  readonly meanDiameter: Metre;
  readonly totalCoils: number;
  readonly freeLength: Metre;
}

const SCALES = [
  { factor: 1, words: '1:1' },
  { factor: 0.5, words: '1:2' },
  { factor: 0.2, words: '1:5' },
] as const;

const HIGHEST = 52;
const SIDE = 30;

export function coilDrawing(
  shape: CoilShape,
  name: string,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block {
  const outside = shape.meanDiameter + shape.wire;
  const { factor, words } =
    SCALES.find(
      (scale) =>
        shape.freeLength * 1000 * scale.factor <= width - 2 * SIDE &&
        outside * 1000 * scale.factor <= HIGHEST,
    ) ?? SCALES.at(-1)!;
  const k = 1000 * factor;
  const half = (outside * k) / 2;
  const title = shortened(
    `Scale ${words}, standing free: ${name}`,
    { size: SIZE.small, weight: 'bold', width },
    measure,
  );
  return {
    height: 2 * half + 34 + RULER_HEIGHT,
    marks: (at) => {
      const axis = at.y + 16 + half;
      const left = at.x + SIDE;
      const right = left + shape.freeLength * k;
      return [
        text({ x: at.x, y: at.y + 4 }, title, {
          size: SIZE.small,
          weight: 'bold',
        }),
        ...strands(shape, { x: left, y: axis }, k),
        line({ x: left - 4, y: axis }, { x: right + 4, y: axis }, { dash: DASH.centre }),
        ...dimension(
          {
            from: { x: left, y: axis + half },
            to: { x: right, y: axis + half },
            runs: 'across',
            at: axis + half + 9,
            words: drawnLength(shape.freeLength, 1, speech),
          },
          measure,
        ),
        ...dimension(
          {
            from: { x: left, y: axis - (shape.meanDiameter * k) / 2 },
            to: { x: left, y: axis + (shape.meanDiameter * k) / 2 },
            runs: 'up',
            at: left - 7,
            words: `Ø${lengthWords(shape.meanDiameter, 1, speech)} mean`,
            below: `[${lengthWords(shape.meanDiameter, 1, otherWay(speech))}]`,
          },
          measure,
        ),
        ...leader(
          {
            tip: { x: right - (shape.wire * k) / 2, y: axis - half },
            knee: { x: right + 3, y: axis - half - 6 },
            words: [`wire Ø${drawnLength(shape.wire, 2, speech)}`],
            to: 'left',
          },
          measure,
        ),
        ...ruler({ x: at.x + 4, y: axis + half + 21 }),
        text({ x: at.x, y: axis + half + 28 }, RULER_WORDS, { size: SIZE.label }),
      ];
    },
  };
}

/** Half-turns as leaning tubes: those at the back first, closed ends as upright ones. */
function strands(shape: CoilShape, start: PaperPoint, k: number): Mark[] {
  const turns = Math.max(2, Math.round(shape.totalCoils));
  const wire = shape.wire * k;
  const R = (shape.meanDiameter * k) / 2;
  const run = shape.freeLength * k - wire;
  const at = (turn: number, side: 1 | -1): PaperPoint => ({
    x: start.x + wire / 2 + (run * turn) / turns,
    y: start.y + side * R,
  });
  const back = Array.from({ length: turns }, (_, i) => tube(at(i + 0.5, -1), at(i + 1, 1), wire));
  const front = Array.from({ length: turns }, (_, i) => tube(at(i, 1), at(i + 0.5, -1), wire));
  return [...back, ...front];
}

function tube(a: PaperPoint, b: PaperPoint, width: number): Mark {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  const h = width / 2;
  return polyline(
    [
      { x: a.x - uy * h - ux * h, y: a.y + ux * h - uy * h },
      { x: b.x - uy * h + ux * h, y: b.y + ux * h + uy * h },
      { x: b.x + uy * h + ux * h, y: b.y - ux * h + uy * h },
      { x: a.x + uy * h - ux * h, y: a.y - ux * h - uy * h },
    ],
    { closed: true, weight: LINE.thin, fill: 1 },
  );
}
