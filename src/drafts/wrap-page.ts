/**
 * Templates on paper, in true millimetres, with a ruler that proves the scale.
 *
 * In    a template, the paper
 * Out   one page as large as the template (for a screen or a plotter), or pages of a paper size that are laid one on
 *       the other along numbered join lines
 * Axes  the page's: x to the right, y downwards, millimetres
 */
import {
  boxOf,
  type LineUse,
  type Point2,
  type Template,
  type TemplateLine,
} from '../gaspath/pipework/index.ts';
import { STANDING_CAUTION } from '../questions/cautions.ts';
import {
  LINE,
  line,
  type Mark,
  PAPER,
  type Page,
  type PaperName,
  type PaperPoint,
  type PaperSize,
  polyline,
  SIZE,
  text,
} from '../sheets/page.ts';
import { type TextMeasure, wrapped } from '../sheets/text-measure.ts';
import { insideOf, type Window } from './clip.ts';

const MM_PER_M = 1e3;
const MARGIN = 10;
const HEAD = 8;
const NOTE_LINE = 4;
/** Ruler with its words, and the caution below. */
const FOOT = 26;
const CAUTION_LINE = 3.2;

/** Length of the ruler, mm. */
export const RULER = 100;

const STYLE: Readonly<Record<LineUse, { readonly weight: number; readonly dash?: readonly number[] }>> = {
  cut: { weight: LINE.thick },
  edge: { weight: LINE.thin },
  mark: { weight: LINE.hair, dash: [3, 1.5] },
};

/** Chords of a drawn circle are within this of it, mm. */
const FLATNESS = 0.005;

/** Points of a line, metres; arcs as chords. */
export function pointsOf(drawn: TemplateLine): readonly Point2[] {
  if (drawn.kind === 'polyline') return drawn.closed ? [...drawn.points, drawn.points[0]!] : drawn.points;
  const { centre, radius, from, to } = drawn;
  const step = 2 * Math.acos(1 - Math.min(0.5, FLATNESS / MM_PER_M / radius));
  const count = Math.max(8, Math.ceil((to - from) / step));
  return Array.from({ length: count + 1 }, (_, k) => {
    const angle = from + ((to - from) * k) / count;
    return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
  });
}

interface Canvas {
  readonly width: number;
  readonly height: number;
  readonly marks: readonly Mark[];
}

/** The template alone, its top left corner at the origin. */
function canvasOf(template: Template): Canvas {
  const { min, max } = boxOf(template);
  const at = ({ x, y }: Point2): PaperPoint => ({
    x: (x - min.x) * MM_PER_M,
    y: (max.y - y) * MM_PER_M,
  });
  return {
    width: (max.x - min.x) * MM_PER_M,
    height: (max.y - min.y) * MM_PER_M,
    marks: [
      ...template.lines.map((drawn) => polyline(pointsOf(drawn).map(at), STYLE[drawn.use])),
      ...template.labels.map((label) => text(at(label.at), label.text, { size: SIZE.label })),
    ],
  };
}

const shifted = (mark: Mark, dx: number, dy: number): Mark => {
  const move = ({ x, y }: PaperPoint): PaperPoint => ({ x: x + dx, y: y + dy });
  if (mark.kind === 'polyline') return { ...mark, points: mark.points.map(move) };
  return mark.kind === 'text' ? { ...mark, at: move(mark.at) } : { ...mark, centre: move(mark.centre) };
};

/** 100 mm with a tick every ten, its left end at a point. */
export function ruler(at: PaperPoint): readonly Mark[] {
  const ticks = Array.from({ length: RULER / 10 + 1 }, (_, k) => {
    const x = at.x + 10 * k;
    return line({ x, y: at.y - (k % 5 === 0 ? 4 : 2) }, { x, y: at.y }, { weight: LINE.thin });
  });
  return [
    line(at, { x: at.x + RULER, y: at.y }, { weight: LINE.thin }),
    ...ticks,
    text({ x: at.x, y: at.y + 4 }, '100 mm: measure this line on the print before anything is cut', {
      size: SIZE.small,
    }),
  ];
}

/** Ruler and caution along the bottom of a page. */
function foot({ width, height }: PaperSize, measure: TextMeasure): readonly Mark[] {
  const setting = { size: SIZE.label, weight: 'regular', width: width - 2 * MARGIN } as const;
  const caution = wrapped(STANDING_CAUTION, setting, measure);
  const first = height - MARGIN - CAUTION_LINE * (caution.length - 1);
  return [
    ...ruler({ x: MARGIN, y: first - 10 }),
    ...caution.map((each, k) => text({ x: MARGIN, y: first + CAUTION_LINE * k }, each, { size: SIZE.label })),
  ];
}

function head(template: Template, page: string, width: number, measure: TextMeasure): readonly Mark[] {
  const setting = { size: SIZE.small, weight: 'regular', width } as const;
  const notes = template.notes.flatMap((note) => wrapped(note, setting, measure));
  return [
    text({ x: MARGIN, y: MARGIN + 5 }, `${template.name}${page}`, { size: SIZE.title, weight: 'bold' }),
    ...notes.map((note, k) =>
      text({ x: MARGIN, y: MARGIN + HEAD + NOTE_LINE * (k + 0.8) }, note, { size: SIZE.small }),
    ),
  ];
}

const headHeight = (template: Template, width: number, measure: TextMeasure): number =>
  HEAD +
  NOTE_LINE *
    (template.notes.flatMap((note) => wrapped(note, { size: SIZE.small, weight: 'regular', width }, measure))
      .length +
      1);

/** One page as large as it must be. */
export function onePage(template: Template, measure: TextMeasure): Page {
  const canvas = canvasOf(template);
  const inner = Math.max(canvas.width, RULER + 20);
  const top = MARGIN + headHeight(template, inner, measure);
  const size = {
    width: inner + 2 * MARGIN,
    height: top + canvas.height + FOOT + MARGIN,
  };
  return {
    size,
    marks: [
      ...head(template, '', inner, measure),
      ...canvas.marks.map((mark) => shifted(mark, MARGIN, top)),
      ...foot(size, measure),
    ],
  };
}

/** Both pages of a join show this much of each other, mm. */
export const OVERLAP = 12;

/** Where windows begin along a length, each `most` long, the next overlapping the last. */
function cuts(length: number, most: number): readonly number[] {
  const count = length <= most ? 1 : Math.ceil((length - OVERLAP) / (most - OVERLAP));
  return Array.from({ length: count }, (_, k) => k * (most - OVERLAP));
}

interface Tiling {
  readonly paper: PaperSize;
  readonly top: number;
  readonly window: { readonly width: number; readonly height: number };
  readonly x: readonly number[];
  readonly y: readonly number[];
}

function tiling(paper: PaperSize, canvas: Canvas, template: Template, measure: TextMeasure): Tiling {
  const inner = paper.width - 2 * MARGIN;
  const top = MARGIN + headHeight(template, inner, measure);
  const window = { width: inner, height: paper.height - top - FOOT - MARGIN };
  return { paper, top, window, x: cuts(canvas.width, window.width), y: cuts(canvas.height, window.height) };
}

/** Pages of a paper size, upright or across, whichever takes fewer; each with its own ruler. */
export function tiledPages(template: Template, paper: PaperName, measure: TextMeasure): readonly Page[] {
  const canvas = canvasOf(template);
  const { width, height } = PAPER[paper];
  const ways = [
    { width, height },
    { width: height, height: width },
  ].map((each) => tiling(each, canvas, template, measure));
  const count = ({ x, y }: Tiling): number => x.length * y.length;
  const tiles = ways.reduce((a, b) => (count(b) < count(a) ? b : a));
  const all = count(tiles);
  return tiles.y.flatMap((y, row) =>
    tiles.x.map((x, column): Page => {
      const number = row * tiles.x.length + column + 1;
      const window: Window = {
        x0: x,
        y0: y,
        x1: x + tiles.window.width,
        y1: y + tiles.window.height,
      };
      const marks = [...canvas.marks, ...joins(tiles, canvas)].flatMap((mark) => insideOf(mark, window));
      const page = all === 1 ? '' : `, page ${number} of ${all}`;
      return {
        size: tiles.paper,
        marks: [
          ...head(template, page, tiles.window.width, measure),
          ...marks.map((mark) => shifted(mark, MARGIN - x, tiles.top - y)),
          ...foot(tiles.paper, measure),
        ],
      };
    }),
  );
}

/** A line in the middle of each overlap, with its name and crosses: it is on both pages, and they are laid line on line. */
function joins(tiles: Tiling, { width, height }: Canvas): readonly Mark[] {
  const style = { weight: LINE.hair, dash: [1, 1] } as const;
  const tick = ({ x, y }: PaperPoint): Mark[] => [
    line({ x: x - 3, y }, { x: x + 3, y }, { weight: LINE.hair }),
    line({ x, y: y - 3 }, { x, y: y + 3 }, { weight: LINE.hair }),
  ];
  const across = tiles.x.slice(1).flatMap((begin, k): Mark[] => {
    const x = begin + OVERLAP / 2;
    return [
      line({ x, y: 0 }, { x, y: height }, style),
      ...tick({ x, y: height * 0.25 }),
      ...tick({ x, y: height * 0.75 }),
      text({ x: x + 1, y: height * 0.5 }, `join ${k + 1}`, { size: SIZE.label }),
    ];
  });
  const down = tiles.y.slice(1).flatMap((begin, k): Mark[] => {
    const y = begin + OVERLAP / 2;
    return [
      line({ x: 0, y }, { x: width, y }, style),
      ...tick({ x: width * 0.25, y }),
      ...tick({ x: width * 0.75, y }),
      text({ x: width * 0.5, y: y - 1 }, `join ${String.fromCharCode(65 + k)}`, { size: SIZE.label }),
    ];
  });
  return [...across, ...down];
}
