/**
 * What one unit of each adjuster does to every reading: the table to use by hand, wide enough for two halves.
 *
 * In    adjusters with their effects in SI
 * Out   blocks; what does not show in the last place is left empty, so that the eye finds what moves
 */
import type { AdjustersReached } from '../questions/adjusters.ts';
import type { Speech } from '../units/show.ts';
import { plain, printedUnit, spokenUnit, unitAfter } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { bareWords, kindOf, kindWords } from './floor-words.ts';
import { type Block, gap, heading, paragraph } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

const LOADS = ['weight', 'cross', 'height', 'rake'];
const ANGLES = ['camber', 'toeAtRim', 'caster'];

const SHORT: Readonly<Record<string, string>> = {
  frontLeft: 'FL',
  frontRight: 'FR',
  rearLeft: 'RL',
  rearRight: 'RR',
};

export function effectTables(
  of: AdjustersReached,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block[] {
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  return [
    { ...heading('What one unit of each adjuster does'), opensSheet: true },
    ...small(EXPLAINED),
    gap(1),
    ...half(of, LOADS, true, speech, width, measure),
    gap(2),
    { ...heading('The same, angles'), opensSheet: of.adjusters.length > 12 },
    ...half(of, ANGLES, false, speech, width, measure),
    gap(1),
    ...of.notes.flatMap(small),
  ];
}

const EXPLAINED =
  'One unit more: rod or link longer, platform or screw tighter, shims thicker, wishbone to more caster, more pressure, more ballast. One unit less does the opposite. Nothing written: less than the last place shows. Left: units that thread, stock or stops leave, less and more.';

function half(
  { readings, adjusters }: AdjustersReached,
  kinds: readonly string[],
  withLeft: boolean,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block[] {
  const shown = readings
    .map((reading, k) => ({ ...reading, k }))
    .filter(({ id }) => kinds.includes(kindOf(id)))
    .filter(({ k }) => adjusters.some(({ effects }) => effects[k] !== 0));
  const columns: Column[] = [
    { title: 'One unit of', part: 4.3 },
    ...(withLeft ? [{ title: 'left − / +', part: 1.3, align: 'right' as const }] : []),
    ...shown.map(({ id }): Column => ({ title: columnWords(id, speech), part: 1, align: 'right' })),
  ];
  const rows: Row[] = adjusters.map(({ name, unit, step, stepUnit, down, up, effects }) => ({
    cells: [
      `${name}, ${unit}${unitSaid(unit, step, stepUnit, speech)}`,
      ...(withLeft ? [`${count(down)} / ${count(up)}`] : []),
      ...shown.map(({ id, k }) => moved(id, effects[k]!, speech)),
    ],
  }));
  return table(columns, rows, width, measure);
}

const columnWords = (id: string, speech: Speech): string => {
  const of = id.slice(id.indexOf('.') + 1);
  const [name, unit] = kindWords(id, speech).split(', ');
  return id.includes('.') ? `${name} ${SHORT[of] ?? of}, ${unit}` : `${name}, ${unit}`;
};

/** What one unit is, where its name does not say it. */
function unitSaid(unit: string, step: number, si: string, speech: Speech): string {
  if (/\d/.test(unit)) return '';
  const spoken = spokenUnit(si, speech);
  const digits = spoken === 'in' ? 4 : 3;
  return ` (${plain(fromSI(step, spoken), digits)}${unitAfter(printedUnit(spoken))})`;
}

/** Units of shims are tenths of a millimetre and may be broken. */
const count = (units: number): string =>
  plain(units, Number.isInteger(Math.round(units * 1e6) / 1e6) ? 0 : 1);

function moved(id: string, value: number, speech: Speech): string {
  const text = bareWords(id, value, speech, 1);
  return Number(text.replace('−', '-')) === 0 ? '' : text;
}
