/**
 * What one unit of each adjuster does to every reading of the car: the table to go on by hand.
 *
 * In    adjusters with their effects in SI, names of the readings that are taken of this car
 * Out   blocks; what does not show in the last place is left empty, so that the eye finds what moves
 */
import type { AdjusterRow, AdjustersReached } from '../questions/adjusters.ts';
import type { Speech } from '../units/show.ts';
import { plain, printedUnit, spokenUnit, unitAfter } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { effectWords, isSaid, kindOf, kindWords } from './floor-words.ts';
import { type Block, gap, heading, paragraph } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

/** Kinds in the order of the columns: what the pads and the height gauge show, and what the other gauges show. */
const HALVES = [
  ['weight', 'cross', 'height', 'rake'],
  ['camber', 'toe', 'toeAtRim', 'caster', 'droop', 'track', 'wheelbase'],
] as const;
/** These follow from readings that every sheet has. */
const ALWAYS = ['weight', 'cross', 'height', 'rake', 'camber'];
/** More columns do not leave a figure its room. */
const MOST_COLUMNS = 11;

const PLACES: readonly (readonly [words: string, short: string, key: string])[] = [
  ['front left', 'FL', 'frontLeft'],
  ['front right', 'FR', 'frontRight'],
  ['rear left', 'RL', 'rearLeft'],
  ['rear right', 'RR', 'rearRight'],
];

interface Shown {
  readonly id: string;
  readonly k: number;
}

export function effectTables(
  of: AdjustersReached,
  known: ReadonlySet<string>,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block[] {
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const shown = of.readings
    .map(({ id }, k): Shown => ({ id, k }))
    .filter(({ id }) => isSaid(id) && (known.has(id) || ALWAYS.includes(kindOf(id))));
  const parts = HALVES.flatMap((kinds) =>
    chunks(
      (kinds as readonly string[]).flatMap((kind) => shown.filter(({ id }) => kindOf(id) === kind)),
      MOST_COLUMNS,
    ),
  );
  const moves = (row: AdjusterRow): boolean =>
    shown.some(({ id, k }) => movedWords(id, row.effects[k]!, speech) !== '');
  const idle = of.adjusters.filter((row) => !moves(row)).map(({ name }) => name);
  const adjusters = of.adjusters.filter(moves);
  if (adjusters.length === 0) return of.notes.flatMap(small);
  return [
    { ...heading('What one unit of each adjuster does'), opensSheet: true },
    ...small(EXPLAINED),
    gap(1),
    ...parts.flatMap((columns, k) => [
      ...(k === 0 ? [] : [gap(3)]),
      ...onItsOwn(
        k > 0 && adjusters.length > FEW,
        effects(adjusters, columns, k === 0, speech, width, measure),
      ),
    ]),
    gap(1),
    ...(idle.length === 0 ? [] : small(`Moves nothing as the car stands: ${idle.join(', ')}.`)),
    ...of.notes.flatMap(small),
  ];
}

const EXPLAINED =
  'One unit more: rod or link longer, platform or screw tighter, shims thicker, wishbone to more caster, more pressure, more ballast. One unit less does the opposite. Nothing written: less than the last place shows. Left: units that thread, stock or stops leave, less and more.';

/** So many fit on a sheet beside another table of them. */
const FEW = 14;

const onItsOwn = (opensSheet: boolean, [first, ...rest]: readonly Block[]): readonly Block[] =>
  first === undefined ? [] : [{ ...first, opensSheet }, ...rest];

const chunks = <T>(all: readonly T[], most: number): readonly (readonly T[])[] =>
  all.length === 0 ? [] : [all.slice(0, most), ...chunks(all.slice(most), most)];

function effects(
  adjusters: readonly AdjusterRow[],
  shown: readonly Shown[],
  withLeft: boolean,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block[] {
  const columns: Column[] = [
    { title: 'One unit of', part: 3.7 },
    ...(withLeft ? [{ title: 'left − / +', part: 1.2, align: 'right' as const }] : []),
    ...shown.map(({ id }): Column => ({ title: columnWords(id, speech), part: 1, align: 'right' })),
  ];
  const owners = [...new Set(adjusters.map(({ name }) => ownerOf(name)))];
  const rows = owners.flatMap((owner): Row[] => [
    { cells: [owner, ...columns.slice(1).map(() => '')], bold: true },
    ...adjusters
      .filter(({ name }) => ownerOf(name) === owner)
      .map((row) => ({
        cells: [
          `${row.name.slice(owner.length + 1)}, ${unitWords(row, speech)}`,
          ...(withLeft ? [`${count(row.down)} / ${count(row.up)}`] : []),
          ...shown.map(({ id, k }) => movedWords(id, row.effects[k]!, speech)),
        ],
      })),
  ]);
  return table(columns, rows, width, measure);
}

/** The wheel, or what stands before the first space: `ballast nose` belongs to `ballast`. */
const ownerOf = (name: string): string =>
  PLACES.find(([words]) => name.startsWith(`${words} `))?.[0] ?? name.split(' ')[0]!;

function columnWords(id: string, speech: Speech): string {
  const of = id.slice(id.indexOf('.') + 1);
  const place = id.includes('.') ? ` ${PLACES.find(([, , key]) => key === of)?.[1] ?? shortened(of)}` : '';
  const words = kindWords(id, speech);
  const unit = words.lastIndexOf(' ');
  return `${words.slice(0, unit)}${place}\u00a0${words.slice(unit + 1)}`;
}

/** A measuring point that is called after a wheel is written as the wheels are. */
const shortened = (name: string): string => PLACES.find(([words]) => words === name)?.[1] ?? name;

/** What one unit is: `flat 0.353 mm`; a unit that is an amount says it itself. */
function unitWords({ unit, step, stepUnit }: AdjusterRow, speech: Speech): string {
  if (/\d/.test(unit)) return unit;
  const spoken = spokenUnit(stepUnit, speech);
  const digits = spoken === 'in' ? 4 : spoken === 'kg' || spoken === 'lb' ? 1 : 3;
  return `${unit} ${plain(fromSI(step, spoken), digits)}${unitAfter(printedUnit(spoken))}`;
}

/** Units of shims are tenths of a millimetre and may be broken. */
const count = (units: number): string =>
  plain(units, Number.isInteger(Math.round(units * 1e6) / 1e6) ? 0 : 1);

function movedWords(id: string, value: number, speech: Speech): string {
  const text = effectWords(id, value, speech);
  return Number(text.replace('−', '-')) === 0 ? '' : text;
}
