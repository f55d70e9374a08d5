/** Figures of an answer as a table: value with spread, other units, the reading that most of the spread comes from. */
import { type Figure, LOAD_PATH, type Stop } from '../questions/figure.ts';
import type { Speech } from '../units/show.ts';
import { type Block, heading } from './lay-out.ts';
import { LINE, line, SIZE, text } from './page.ts';
import { type Row, table } from './table.ts';
import { shortened, type TextMeasure } from './text-measure.ts';
import { otherWords, ownWords } from './words.ts';

const COLUMNS = [
  { title: 'Figure', part: 3 },
  { title: 'Value ± spread', part: 1.9, align: 'right' as const },
  { title: 'Other units', part: 1.9, align: 'right' as const },
  { title: 'Most of the spread comes from', part: 2.4 },
];

const STOP_WORDS: Readonly<Record<Stop, string>> = {
  tyre: 'Tyre',
  upright: 'Upright',
  links: 'Links',
  rocker: 'Rocker',
  spring: 'Spring',
  case: 'Case',
  studs: 'Studs',
  tub: 'Tub',
};

const quantityOf = (figure: Figure) => ({
  value: figure.value,
  unit: figure.unit,
  ...(figure.spread === undefined ? {} : { u: figure.spread.u }),
});

/** One table a stop of the load path, in the order in which the force passes. */
export function figureTables(
  figures: readonly Figure[],
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block[] {
  return LOAD_PATH.flatMap((stop) => {
    const own = figures.filter((figure) => figure.stop === stop);
    if (own.length === 0) return [];
    return [
      heading(STOP_WORDS[stop]),
      ...table(
        COLUMNS,
        own.map((figure) => figureRow(figure, speech)),
        width,
        measure,
      ),
    ];
  });
}

export function figureRow(figure: Figure, speech: Speech): Row {
  const words = figure.say === undefined ? figure.means : `${figure.means} (${figure.say})`;
  if (!Number.isFinite(figure.value)) return { cells: [words, '—', '', ''] };
  const quantity = quantityOf(figure);
  return {
    cells: [words, ownWords(quantity, speech), otherWords(quantity, speech), worstShare(figure)],
  };
}

function worstShare(figure: Figure): string {
  const { spread } = figure;
  const worst = spread?.shares[0];
  if (spread === undefined || worst === undefined) return '';
  const more = spread.unknown.length === 0 ? '' : `; ${spread.unknown.length} readings could not be moved`;
  return `${worst.label}, ${Math.round(worst.share * 100)}\u00a0%${more}`;
}

/** A few figures large, one below the other. */
export function largeFigures(figures: readonly Figure[], speech: Speech, measure: TextMeasure): Block {
  const row = 9.2;
  return {
    height: figures.length * row,
    marks: (at, width) =>
      figures.flatMap((figure, k) => {
        const y = at.y + k * row;
        const quantity = quantityOf(figure);
        const other = otherWords({ value: figure.value, unit: figure.unit }, speech);
        const value = Number.isFinite(figure.value) ? ownWords(quantity, speech) : '—';
        const fit = (words: string, size: number, part: number): string =>
          shortened(words, { size, weight: 'regular', width: width * part }, measure);
        return [
          text({ x: at.x, y: y + 2.9 }, fit(figure.means, SIZE.label, 1), { size: SIZE.label }),
          text({ x: at.x, y: y + 7.4 }, value, { size: SIZE.figure, weight: 'bold' }),
          text({ x: at.x + width, y: y + 7.4 }, other === '' || other === '—' ? '' : `[${other}]`, {
            size: SIZE.small,
            align: 'right',
          }),
          line({ x: at.x, y: y + 8.6 }, { x: at.x + width, y: y + 8.6 }, { weight: LINE.hair }),
        ];
      }),
  };
}

/** Those of the wanted ids that there are, in that order, then others of rank 1, up to a count. */
export function chosenFigures(
  figures: readonly Figure[],
  wanted: readonly string[],
  count: number,
): Figure[] {
  const first = wanted.flatMap((id) => figures.filter((figure) => figure.id === id));
  const rest = figures.filter((figure) => figure.rank === 1 && !first.includes(figure));
  return [...first, ...rest].filter((figure) => Number.isFinite(figure.value)).slice(0, count);
}
