/**
 * The face of a bolted joint seen from behind the car, to scale: pads, what of each is still pressed, dowels as crosses.
 *
 * In    studs and dowels on the face (m, y to the left, z up), what stands in and under each
 * Out   one block
 */
import type { Block } from './lay-out.ts';
import { arcPoints, circle, LINE, line, type Mark, type PaperPoint, polyline, SIZE, text } from './page.ts';
import type { TextMeasure } from './text-measure.ts';
import { shortened } from './text-measure.ts';

export interface FaceStudDrawn {
  readonly y: number;
  readonly z: number;
  readonly pad: number;
  readonly hole: number;
  /** Large, in the middle of the pad, in the place of the hole: its number in an order. */
  readonly number?: number;
  /** Part of the pad's area that is filled. */
  readonly filled?: number;
  /** Lines under the pad; the first in bold. */
  readonly below: readonly string[];
  /** Drawn with a thick line: the one that the eye should find first. */
  readonly chief?: boolean;
}

export interface FaceDrawn {
  readonly studs: readonly FaceStudDrawn[];
  readonly dowels: readonly { readonly y: number; readonly z: number }[];
  /** Height that it may take, mm on the paper. */
  readonly height: number;
}

/** Reductions of ISO 5455 with those between them that a scale rule has, the largest drawing first. */
const SCALES = [1, 2, 2.5, 4, 5, 7.5, 10, 15, 20, 25, 50];
const LABEL = SIZE.small * 1.25;
const FOOT = 5;
const NUMBER = { size: 8, least: 5.6 } as const;
const DOWEL = 2;
/** Between a pad and the words beside it. */
const CLEAR = 1.5;

export function faceDrawing(of: FaceDrawn, width: number, measure: TextMeasure): Block {
  const { studs, dowels, height } = of;
  const points = [...studs, ...dowels];
  const extent = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);
  const [wide, high] = [extent(points.map(({ y }) => y)), extent(points.map(({ z }) => z))];
  const lines = Math.max(...studs.map(({ below }) => below.length));
  const pad = Math.max(...studs.map((each) => each.pad));
  const radiusAt = (k: number): number =>
    Math.max((pad * k) / 2, studs.some(({ number }) => number !== undefined) ? NUMBER.least : 0);
  // half of the widest label hangs over the outermost stud
  const labels = Math.max(
    ...studs.flatMap(({ below }) => below.map((each) => measure.width(each, SIZE.small, 'bold'))),
    0,
  );
  const over = (k: number): number => Math.max(2 * radiusAt(k), Math.min(labels, width / 2.4)) / 2;
  const fits = (scale: number): boolean => {
    const k = 1000 / scale;
    return (
      wide * k + 2 * over(k) <= width && high * k + 2 * radiusAt(k) + lines * LABEL + 2 + FOOT + 1 <= height
    );
  };
  const scale = SCALES.find(fits) ?? SCALES.at(-1)!;
  const k = 1000 / scale;
  const radius = radiusAt(k);
  const block = high * k + 2 * radius + lines * LABEL + 2 + FOOT + 1;
  const top = Math.max(...points.map(({ z }) => z));
  const middle = (Math.max(...points.map(({ y }) => y)) + Math.min(...points.map(({ y }) => y))) / 2;
  /** Words stand under a pad, or beside it outward where a dowel is in their way. */
  const lettering = (stud: FaceStudDrawn): Lettering => {
    const deep = (stud.below.length * LABEL + 2 * DOWEL) / k;
    const inTheWay = dowels.some(
      ({ y, z }) =>
        Math.abs(y - stud.y) * k < over(k) &&
        z < stud.z - (radius - DOWEL) / k &&
        z > stud.z - radius / k - deep,
    );
    if (!inTheWay) return { k, room: 2 * over(k) + 4, side: 0 };
    const off = stud.y - middle;
    return { k, room: width / 2 - Math.abs(off) * k - radius - CLEAR, side: off > 0 ? -1 : 1 };
  };
  return {
    height: block,
    marks: (at) => {
      // from behind, the car's left is at the left
      const place = ({ y, z }: { readonly y: number; readonly z: number }): PaperPoint => ({
        x: at.x + width / 2 - (y - middle) * k,
        y: at.y + 1 + radius + (top - z) * k,
      });
      return [
        ...studs.flatMap((stud) => studMarks(stud, place(stud), lettering(stud), measure)),
        ...dowels.flatMap((dowel) => dowelMarks(place(dowel))),
        text(
          { x: at.x, y: at.y + block - 1.4 },
          `From behind the car, the car's left at the left. Scale 1:${scale}. Crosses: dowels.`,
          { size: SIZE.label },
        ),
      ];
    },
  };
}

const dowelMarks = ({ x, y }: PaperPoint): Mark[] => [
  line({ x: x - DOWEL, y }, { x: x + DOWEL, y }, { weight: LINE.thick }),
  line({ x, y: y - DOWEL }, { x, y: y + DOWEL }, { weight: LINE.thick }),
];

interface Lettering {
  /** Millimetres of paper for a metre. */
  readonly k: number;
  readonly room: number;
  /** Under the pad, or to its left or right on the paper. */
  readonly side: -1 | 0 | 1;
}

function studMarks(
  stud: FaceStudDrawn,
  at: PaperPoint,
  { k, room, side }: Lettering,
  measure: TextMeasure,
): Mark[] {
  const pad = (stud.pad * k) / 2;
  const radius = stud.number === undefined ? pad : Math.max(pad, NUMBER.least);
  const outline = stud.chief === true ? LINE.border : LINE.thin;
  const disc = (r: number, fill: number): Mark =>
    polyline(arcPoints({ centre: at, radius: r, from: 0, to: 360 }, 48), { closed: true, weight: 0, fill });
  return [
    disc(radius, 1),
    ...(stud.filled === undefined || stud.filled <= 0 ? [] : [disc(pad * Math.sqrt(stud.filled), 0.7)]),
    circle(at, radius, { weight: outline }),
    ...(stud.number === undefined
      ? [disc((stud.hole * k) / 2, 1), circle(at, (stud.hole * k) / 2)]
      : [
          text({ x: at.x, y: at.y + NUMBER.size * 0.35 }, String(stud.number), {
            size: NUMBER.size,
            weight: 'bold',
            align: 'middle',
          }),
        ]),
    ...stud.below.map((words, row) => {
      const weight = row === 0 ? 'bold' : 'regular';
      const fit = shortened(words, { size: SIZE.small, weight, width: room }, measure);
      const style = { size: SIZE.small, weight } as const;
      if (side === 0)
        return text({ x: at.x, y: at.y + radius + LABEL * (row + 1) }, fit, { ...style, align: 'middle' });
      const y = at.y + SIZE.small * 0.35 + LABEL * (row - (stud.below.length - 1) / 2);
      const align = side < 0 ? 'right' : 'left';
      return text({ x: at.x + side * (radius + CLEAR), y }, fit, { ...style, align });
    }),
  ];
}
