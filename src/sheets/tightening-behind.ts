/** What stands behind a tightening card: each sort of stud, its preload as a band, and the builder's figure beside the file's. */
import type { TightenedSort, TorqueFigure } from '../questions/tightening.ts';
import { bothTorqueWords } from '../questions/wrench-mark.ts';
import { type Block, gap, heading, paragraph } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import { type Card, lengthBoth, numbersOf } from './tightening-words.ts';
import { bothWords } from './words.ts';

const TWO = [
  { title: '', part: 1.5 },
  { title: '', part: 5 },
] as const;

export function tighteningBehind(card: Card): Block[] {
  const { of, width, measure } = card;
  return [
    ...of.sorts.flatMap((sort, k) => [
      {
        ...heading(`Studs ${numbersOf(card, sort)}: ${sort.name}`),
        ...(k === 0 ? { opensSheet: true } : {}),
      },
      ...table(TWO, rowsOf(card, sort), width, measure),
      gap(2),
    ]),
    heading('Notes'),
    ...[of.rule, ROUNDS_WORDS, ...of.notes, BAND_WORDS].flatMap((note) =>
      paragraph(note, { width, size: SIZE.small }, measure),
    ),
  ];
}

const ROUNDS_WORDS =
  'Rounds of 30, 60 and 100 %, then once more round at the full value until no nut moves: common practice of flange makers. What the nut needs to run is set in full in every round. Settings are rounded to the marks of a wrench.';

const BAND_WORDS =
  'The preload is a band: low is the low end of the torque with the high end of friction, settled; high is the high end of the torque with the low end of friction, not yet settled (equations ST-3 to ST-14 of docs/theory/studs.md).';

const row = (...cells: string[]): Row => ({ cells });

function rowsOf(card: Card, sort: TightenedSort): Row[] {
  const { speech } = card;
  const { file, builder, crowfoot, wrench } = sort;
  const torque = (value: number): string => bothTorqueWords(value, speech);
  return [
    row('Stud', `${sort.thread}, ${sort.material}: ${sort.materialMeans}`),
    row('In', `${sort.parent}, ${lengthBoth(sort.engaged, card)} of thread engaged`),
    row(
      'Wrench',
      wrench === undefined
        ? 'not described in the file: the setting is the torque at the nut'
        : `${lengthBoth(wrench, card)} to the middle of the grip, ${crowfoot === undefined ? 'no crowfoot' : `crowfoot ${lengthBoth(crowfoot, card)}, in line`}`,
    ),
    ...(sort.running === 0 ? [] : [row('Nut runs with', `${torque(sort.running)}, within the value`)]),
    row(
      "Builder's figure",
      builder === undefined
        ? 'none in the file'
        : `${builder.text} at the nut, ${builder.lubricant === undefined ? 'NO LUBRICANT NAMED' : `on ${builder.lubricant}`} (${builder.source})`,
    ),
    ...(builder?.figure === undefined ? [] : [row('leaves in the stud', preloadWords(builder.figure, card))]),
    row(
      "The file's figure",
      file === undefined
        ? 'none'
        : `${file.text} on the wrench, ${torque(file.atNut)} at the nut, on ${file.lubricant}`,
    ),
    ...(file === undefined ? [] : [row('leaves in the stud', preloadWords(file, card))]),
    { cells: ['Builder and file', sort.compared], bold: sort.toSet === 'choose' },
  ];
}

function preloadWords({ preload, yieldShare }: TorqueFigure, { speech }: Card): string {
  const force = (value: number): string => bothWords({ value, unit: 'N' }, speech);
  return `${force(preload.low)} low, ${force(preload.middle)} middle, ${force(preload.high)} high; up to ${Math.round(100 * yieldShare)} % of yield while the wrench turns`;
}
