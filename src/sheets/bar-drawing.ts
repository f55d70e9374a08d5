/**
 * The dimensioned drawing of a torsion bar: rocker end on the left, shank interrupted, view on the rocker end.
 *
 * In    the bar as ordered
 * Out   one block, at a scale of ISO 5455 that is printed beside it, with a ruler to prove it
 *
 * Interrupted view with zigzag lines after ISO 128; splines in the simplified way of ISO 6413, the root as a
 * thin line (both from memory).
 */
import { transitionLength } from '../loadpath/spring/torsion-bar.ts';
import type { Metre } from '../units/quantity.ts';
import type { Speech } from '../units/show.ts';
import { BAR_TOLERANCE, type BarShape, endsOf, type OrderedHead } from './bar-order.ts';
import {
  BREAK,
  headDiameter,
  headLength,
  type Lengths,
  outline,
  type Parts,
  type Profile,
  radiusAt,
} from './bar-outline.ts';
import { dimension, leader, RULER_HEIGHT, RULER_WORDS, ruler } from './dimension.ts';
import type { Block } from './lay-out.ts';
import {
  arc,
  arrowhead,
  circle,
  DASH,
  LINE,
  line,
  type Mark,
  type PaperPoint,
  polyline,
  SIZE,
  text,
} from './page.ts';
import { shortened, type TextMeasure } from './text-measure.ts';
import { drawnLength, lengthWords, otherWay } from './words.ts';

const SCALES = [
  { factor: 1, words: '1:1' },
  { factor: 0.5, words: '1:2' },
  { factor: 0.2, words: '1:5' },
  { factor: 0.1, words: '1:10' },
] as const;

/** Left for dimensions beside the bar. */
const MARGIN = 24;
const STUB = 16;
/** Room over the bar for leaders. */
const ABOVE = 18;
const END_VIEW = 34;

export interface BarToDraw {
  readonly shape: BarShape;
  /** What stands over the drawing beside the scale. */
  readonly name: string;
  /** True on an order: the dimensions then carry the tolerances of the order. */
  readonly toleranced: boolean;
}

export function barDrawing(of: BarToDraw, speech: Speech, width: number, measure: TextMeasure): Block {
  const { shape: order, name, toleranced } = of;
  const [first, second] = endsOf(order).map((end) => transitionLength(end, order.diameter));
  const lengths = {
    first: first!,
    second: second!,
    rockerHead: headLength(order.rockerEnd, order.diameter),
    anchorHead: headLength(order.anchorEnd, order.diameter),
  };
  const ends = (lengths.first + lengths.second + lengths.rockerHead + lengths.anchorHead) * 1000;
  const room = width - MARGIN * 2 - END_VIEW;
  const scale =
    SCALES.find(({ factor }) => ends * factor + 2 * STUB + BREAK <= room && greatest(order) * factor <= 60) ??
    SCALES.at(-1)!;
  const k = 1000 * scale.factor;
  const title = shortened(
    `Scale ${scale.words}, shank interrupted: ${name}`,
    { size: SIZE.small, weight: 'bold', width },
    measure,
  );
  const half = Math.max(8, (greatest(order) * scale.factor) / 2);
  const height = 2 * half + ABOVE + 25.5 + RULER_HEIGHT + 4;
  return {
    height,
    marks: (at) => {
      const axis = at.y + ABOVE + half;
      const start = at.x + MARGIN;
      const parts = outline(order, lengths, k, room);
      const place = (x: number, r: number): PaperPoint => ({ x: start + x, y: axis + r });
      return [
        ...partMarks(parts.left, place, 'right'),
        ...partMarks(parts.right, place, 'left'),
        ...axisAndBore(order, parts, place, k),
        ...splineMarks(order, lengths, parts, place, k),
        ...dimensions({ order, toleranced, lengths, parts, place, half, k, speech }, measure),
        ...endView(order, { x: at.x + width - END_VIEW / 2 + 2, y: axis }, k),
        text({ x: at.x, y: at.y + 4 }, title, {
          size: SIZE.small,
          weight: 'bold',
        }),
        ...ruler({ x: at.x + 4, y: at.y + height - 8 }),
        text({ x: at.x, y: at.y + height - 1 }, RULER_WORDS, { size: SIZE.label }),
      ];
    },
  };
}

const greatest = (order: BarShape): number =>
  1000 * Math.max(...[order.rockerEnd, order.anchorEnd].map((head) => headDiameter(head, order.diameter)));

type Place = (x: number, r: number) => PaperPoint;

function partMarks(profile: readonly Profile[], place: Place, broken: 'left' | 'right'): Mark[] {
  const upper = profile.map(({ x, r }) => place(x, -r));
  const lower = profile.map(({ x, r }) => place(x, r));
  const last = profile.at(-1)!;
  const first = profile[0]!;
  const edge = broken === 'right' ? 1 : -1;
  const steps = profile.slice(1, -1).filter((each) => each.r > last.r + 0.2);
  const shoulder = steps.at(-1);
  return [
    polyline([...upper.toReversed(), ...lower], { weight: LINE.thick }),
    line(place(first.x, -first.r), place(first.x, first.r), { weight: LINE.thick }),
    ...(shoulder === undefined
      ? []
      : [
          line(place(headEdge(profile).x, -first.r), place(headEdge(profile).x, first.r), {
            weight: LINE.thin,
          }),
        ]),
    polyline(
      [
        place(last.x, -last.r - 2),
        place(last.x, -1.5),
        place(last.x + 1.2 * edge, -0.6),
        place(last.x - 1.2 * edge, 0.6),
        place(last.x, 1.5),
        place(last.x, last.r + 2),
      ],
      { weight: LINE.thin },
    ),
  ];
}

const headEdge = (profile: readonly Profile[]): Profile => profile[1]!;

function axisAndBore(order: BarShape, parts: Parts, place: Place, k: number): Mark[] {
  const [stop, start] = [parts.left.at(-1)!.x, parts.right.at(-1)!.x];
  const bore = (order.bore * k) / 2;
  const hidden = { weight: LINE.thin, dash: DASH.hidden };
  return [
    line(place(-4, 0), place(parts.whole + 4, 0), { dash: DASH.centre }),
    ...(bore === 0
      ? []
      : [-bore, bore].flatMap((r) => [
          line(place(0, r), place(stop, r), hidden),
          line(place(start, r), place(parts.whole, r), hidden),
        ])),
  ];
}

/** Root of the splines as a thin line along the head; its depth is only indicated. */
function splineMarks(order: BarShape, lengths: Lengths, parts: Parts, place: Place, k: number): Mark[] {
  const root = (head: OrderedHead, from: number, run: number): Mark[] =>
    head.splines === undefined
      ? []
      : [-1, 1].map((sign) => {
          const r = sign * 0.46 * headDiameter(head, order.diameter) * k;
          return line(place(from, r), place(from + run, r));
        });
  return [
    ...root(order.rockerEnd, 0, lengths.rockerHead * k),
    ...root(order.anchorEnd, parts.whole - lengths.anchorHead * k, lengths.anchorHead * k),
  ];
}

interface Drawn {
  readonly order: BarShape;
  readonly toleranced: boolean;
  readonly lengths: Lengths;
  readonly parts: Parts;
  readonly place: Place;
  readonly half: number;
  readonly k: number;
  readonly speech: Speech;
}

const BLANK = '______';

function dimensions(drawn: Drawn, measure: TextMeasure): Mark[] {
  const { order, toleranced, lengths, parts, place, half, k, speech } = drawn;
  const length = (metres: Metre, decimals: number): string => drawnLength(metres, decimals, speech);
  const tolerance = (metres: Metre): string => (toleranced ? ` ±${lengthWords(metres, 2, speech)}` : '');
  const parallel = {
    from: place((lengths.rockerHead + lengths.first) * k, (order.diameter * k) / 2),
    to: place(parts.whole - (lengths.anchorHead + lengths.second) * k, (order.diameter * k) / 2),
  };
  const below = place(0, half + 9).y;
  const axisX = (place(0, 0).x + place(parts.whole, 0).x) / 2;
  return [
    ...dimension(
      {
        ...parallel,
        runs: 'across',
        at: below,
        words: `${length(order.parallelLength, 1)}${tolerance(BAR_TOLERANCE.length)}`,
      },
      measure,
    ),
    ...headDimensions(drawn, 'rocker', below, measure),
    ...headDimensions(drawn, 'anchor', below, measure),
    ...leader(
      {
        tip: { x: parts.left.at(-1)!.x + place(0, 0).x - 4, y: place(0, (-order.diameter * k) / 2).y },
        knee: { x: axisX - 8, y: place(0, -half - 9).y },
        words: [`Ø${length(order.diameter, 2)}${tolerance(BAR_TOLERANCE.diameter)}`],
        to: 'left',
      },
      measure,
    ),
    ...(order.bore === 0
      ? []
      : leader(
          {
            tip: { x: parts.right.at(-1)!.x + place(0, 0).x + 4, y: place(0, (order.bore * k) / 2).y },
            knee: { x: axisX + 8, y: place(0, -half - 9).y },
            words: [`bore Ø${length(order.bore, 2)}${tolerance(BAR_TOLERANCE.bore)} through`],
            to: 'right',
          },
          measure,
        )),
  ];
}

/** Diameter at the side, length below, transition by a leader above. */
function headDimensions(
  drawn: Drawn,
  which: 'rocker' | 'anchor',
  below: number,
  measure: TextMeasure,
): Mark[] {
  const { order, lengths, parts, place, half, k, speech } = drawn;
  const rocker = which === 'rocker';
  const head = rocker ? order.rockerEnd : order.anchorEnd;
  const run = (rocker ? lengths.rockerHead : lengths.anchorHead) * k;
  const far = rocker ? 0 : parts.whole;
  const near = rocker ? run : parts.whole - run;
  const r = (headDiameter(head, order.diameter) * k) / 2;
  const sized = (metres: Metre | undefined, decimals: number): string =>
    metres === undefined ? BLANK : drawnLength(metres, decimals, speech);
  const knee = { x: place(near, 0).x + (rocker ? 2 : -2), y: place(0, -half - 4).y };
  const into = rocker ? lengths.first : lengths.second;
  const tip = place(near + (rocker ? 1 : -1) * into * k * 0.6, 0);
  const shape =
    head.size === undefined || head.form === 'square'
      ? 'square shoulder'
      : head.form === 'radius'
        ? `R ${sized(head.size, 1)}`
        : `taper ${sized(head.size, 1)} long`;
  return [
    ...dimension(
      {
        from: place(far, -r),
        to: place(far, r),
        runs: 'up',
        at: place(far, 0).x + (rocker ? -7 : 7),
        words: `Ø${head.headDiameter === undefined ? BLANK : lengthWords(head.headDiameter, 2, speech)}`,
        ...(head.headDiameter === undefined
          ? {}
          : { below: `[${lengthWords(head.headDiameter, 2, otherWay(speech))}]` }),
      },
      measure,
    ),
    ...dimension(
      {
        from: place(far, r),
        to: place(near, r),
        runs: 'across',
        at: below + 8,
        words: `${sized(head.length, 1)}`,
      },
      measure,
    ),
    ...leader(
      {
        tip: { x: tip.x, y: place(0, -radiusAt(head, order, into * 0.4) * k).y },
        knee: { x: knee.x + (rocker ? 2 : -2), y: knee.y },
        words: [shape],
        to: rocker ? 'left' : 'right',
      },
      measure,
    ),
    text({ x: (place(far, 0).x + place(near, 0).x) / 2, y: place(0, half + 22.5).y }, `${which} end`, {
      size: SIZE.small,
      weight: 'bold',
      align: 'middle',
    }),
    text(
      { x: (place(far, 0).x + place(near, 0).x) / 2, y: place(0, half + 26).y },
      head.splines === undefined ? 'splines: ____' : `${head.splines} splines`,
      { size: SIZE.small, align: 'middle' },
    ),
  ];
}

const HAND_WORDS = {
  left: 'left hand in bump',
  right: 'right hand in bump',
  'not preset': 'not preset',
  'not known': 'no anchor, no hand',
} as const;

/** Seen on the face of the rocker end, with the arrow of the working hand. */
function endView(order: BarShape, centre: PaperPoint, k: number): Mark[] {
  const r = (headDiameter(order.rockerEnd, order.diameter) * k) / 2;
  const sweep = r + 3;
  // right hand: seen on the rocker end's face, bump turns that end anticlockwise
  const right = order.hand === 'right';
  const arrow =
    order.hand === 'not preset' || order.hand === 'not known'
      ? []
      : [
          arc({ centre, radius: sweep, from: 30, to: 150 }),
          arrowhead(
            {
              x: centre.x + sweep * Math.cos(((right ? 150 : 30) * Math.PI) / 180),
              y: centre.y - sweep * Math.sin((30 * Math.PI) / 180),
            },
            right ? 240 : 300,
          ),
        ];
  return [
    circle(centre, r, { weight: LINE.thick }),
    ...(order.bore === 0 ? [] : [circle(centre, (order.bore * k) / 2, { weight: LINE.thick })]),
    ...(order.rockerEnd.splines === undefined ? [] : [circle(centre, 0.92 * r)]),
    line({ x: centre.x - r - 2, y: centre.y }, { x: centre.x + r + 2, y: centre.y }, { dash: DASH.centre }),
    line({ x: centre.x, y: centre.y - r - 2 }, { x: centre.x, y: centre.y + r + 2 }, { dash: DASH.centre }),
    ...arrow,
    text({ x: centre.x, y: centre.y + r + 6 }, 'on rocker end', { size: SIZE.label, align: 'middle' }),
    text({ x: centre.x, y: centre.y + r + 9.2 }, HAND_WORDS[order.hand], {
      size: SIZE.label,
      align: 'middle',
      weight: 'bold',
    }),
  ];
}
