/**
 * The adjustment card: the moves of a solved set-up in the order of the work, each adjuster drawn with its arrow, what
 * holds before and after, what will be read beside boxes for what was read, and the table to go on by hand.
 *
 * In    the card as the question answers it, the car in plan
 * Out   the laid-out document
 */
import { WHEEL_NAMES, type Wheels } from '../loadpath/loads/doing.ts';
import type { AdjustmentCardReached } from '../questions/adjustment-card.ts';
import type { Drawing } from '../questions/drawing-types.ts';
import { provedWords } from '../questions/set-up.ts';
import type { Speech } from '../units/show.ts';
import { type BoxCell, type BoxColumn, type BoxRow, boxTable } from './box-table.ts';
import { effectTables } from './effect-table.ts';
import { rowsAtWheels } from './floor-rows.ts';
import {
  bareWords,
  finerWords,
  heightWords,
  isSaid,
  kindWords,
  pressureSaid,
  rowWords,
  wantedWords,
} from './floor-words.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, beside, gap, heading, layOut, paragraph } from './lay-out.ts';
import { moveBlock } from './move-block.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { wheelBoxes } from './wheel-boxes.ts';

/** Letters that are read at arm's length, and rows to write in, mm. */
const HOLD = { letters: 3.4, row: 6.8 } as const;
const ROW = { wheel: 8, whole: 7 } as const;

interface Card {
  readonly of: AdjustmentCardReached;
  readonly drawing: Drawing;
  readonly speech: Speech;
  readonly width: number;
  readonly measure: TextMeasure;
}

export interface AdjustmentCardMatter {
  readonly is: AdjustmentCardReached;
  readonly drawing: Drawing;
}

export function adjustmentCardSheet(
  { is, drawing }: AdjustmentCardMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const width = borderOf(head.paper).width - 4;
  const { speech } = head;
  const card: Card = { of: is, drawing, speech, width, measure };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const blocks: Block[] = [
    ...doubts(card),
    ...holds('Before anything is turned', 'Nothing is turned until this is so', is.before, card),
    gap(1.5),
    pressures(card),
    gap(1.5),
    ...moves(card),
    gap(1.5),
    ...holds('When all of it is done', 'Done, in this order', is.afterwards, card),
    ...forFile(card),
    ...forecast(card),
    gap(1),
    ...is.setUp.notes.flatMap(small),
    ...effectTables(is.effects, knownIds(is), speech, width, measure),
  ];
  const count = is.moves.length;
  const full: SheetHead = {
    ...head,
    title: 'Adjustment card',
    of: `from ${is.from.name} · ${count === 1 ? '1 move' : `${count} moves`}`,
  };
  return layOut({ head: full, cautions: is.setUp.cautions, blocks }, measure);
}

/** What is read of this car, on this sheet or the one that is wanted. */
const knownIds = ({ sheets, values }: AdjustmentCardReached): ReadonlySet<string> =>
  new Set([...sheets.wanted.map(({ id }) => id), ...values.keys()]);

/** Readings that are not trusted stand before all else: a move from a wrong reading is a wrong move. */
function doubts({ of, width, measure }: Card): Block[] {
  const { doubts: all } = of.setUp;
  if (all.length === 0) return [];
  return [
    heading('NOT YET: read these again first'),
    ...all.flatMap(({ message, remedy }) =>
      paragraph(`${message} ${remedy}`, { width, size: SIZE.body, weight: 'bold' }, measure),
    ),
    gap(1.5),
  ];
}

function holds(title: string, column: string, all: readonly string[], { width, measure }: Card): Block[] {
  const columns = [
    { title: '', part: 0.5 },
    { title: column, part: 9 },
    { title: 'Initials', part: 1.3, blank: true },
  ];
  const rows: Row[] = all.map((words, k) => ({ cells: [String(k + 1), words, ''], height: HOLD.row }));
  return [heading(title), ...table(columns, rows, width, measure, HOLD.letters)];
}

const WHEEL_TITLES = ['front left', 'front right', 'rear left', 'rear right'] as const;

function pressures({ of, speech, measure }: Card): Block {
  const set = WHEEL_NAMES.map((wheel): BoxCell | undefined => {
    const value = of.pressures[wheel];
    return value === undefined ? undefined : { words: pressureSaid(value, speech), bold: true };
  });
  return boxTable(
    {
      columns: [
        { title: 'pressures', part: 1.2 },
        ...WHEEL_TITLES.flatMap((wheel): BoxColumn[] => [
          { title: wheel, part: 1 },
          { title: 'read', part: 1 },
        ]),
      ],
      rows: [{ name: 'by gauge', cells: set.flatMap((cell) => [cell, undefined]) }],
      rowHeight: ROW.wheel,
    },
    measure,
  );
}

function moves(card: Card): Block[] {
  const { of, speech, width, measure } = card;
  const { outOfReach } = of.setUp;
  const bold = (words: string): Block[] => paragraph(words, { width, weight: 'bold' }, measure);
  if (of.moves.length === 0) {
    return [
      heading(outOfReach.length === 0 ? 'Nothing need be moved' : 'Nothing that may be moved helps'),
      ...(outOfReach.length === 0
        ? paragraph('All readings that the sheet asks for are within it.', { width }, measure)
        : outOfReach.flatMap(bold)),
    ];
  }
  return [
    heading('Moves: all of them, in this order, then read again'),
    ...of.moves.flatMap((move, k) => [moveBlock(move, k + 1, speech, width, measure)]),
    gap(1),
    ...paragraph(provedWords(of.setUp), { width, size: SIZE.small }, measure),
    ...outOfReach.flatMap(bold),
  ];
}

/** The line that goes into the car file, so that the next sheet knows what was moved before it. */
function forFile({ of, width, measure }: Card): Block[] {
  if (of.moves.length === 0) return [];
  const moved = of.moves.map(({ adjuster, units }) => `${adjuster}: ${Math.round(units * 1e6) / 1e6}`);
  return [
    gap(1),
    ...paragraph(
      `For the car file, under the sheet as set, where all was moved as above: moved: { ${moved.join(', ')} }`,
      { width, size: SIZE.small },
      measure,
    ),
  ];
}

/** What the scales and gauges of this floor will show, at the wheels as the car lies, with boxes beside. */
function forecast(card: Card): Block[] {
  const { of, drawing, speech, width, measure } = card;
  const ids = rowsAtWheels(of.sheets, [...of.values.keys()]);
  const wheels = Object.fromEntries(
    WHEEL_NAMES.map((wheel) => [
      wheel,
      ids[wheel]
        .filter(({ id }) => id !== `pressure.${wheel}`)
        .map(
          ({ id, name }): BoxRow => ({
            name: name === undefined ? kindWords(id, speech) : heightWords(name, speech),
            cells: cells(card, id),
          }),
        ),
    ]),
  ) as unknown as Wheels<readonly BoxRow[]>;
  const whole = ['cross', 'total', 'frontShare', 'leftShare', 'rake'].filter((id) =>
    of.setUp.standing.some((each) => each.id === id),
  );
  const columns = (name: number): readonly BoxColumn[] => [
    { title: '', part: name },
    { title: 'sheet', part: 15 },
    { title: 'before', part: 10 },
    { title: 'will be read', part: 19 },
    { title: 'read', part: 11.5 },
  ];
  return [
    gap(1.5),
    heading('What will then be read, on this floor'),
    wheelBoxes({ columns: columns(20), wheels, drawing, rowHeight: ROW.wheel }, width, measure),
    gap(2),
    wholeTables(card, whole, columns(22)),
    gap(1),
    ...paragraph(FORECAST_WORDS, { width, size: SIZE.small }, measure),
    ...next(card),
  ];
}

/** What belongs to no wheel, in two tables side by side. */
function wholeTables(card: Card, ids: readonly string[], columns: readonly BoxColumn[]): Block {
  const { speech, width, measure } = card;
  const half = (width - 5) / 2;
  const middle = Math.floor(ids.length / 2);
  const tableOf = (own: readonly string[]): Block =>
    boxTable(
      {
        columns,
        rows: own.map((id) => ({ name: rowWords(id, speech), cells: cells(card, id) })),
        rowHeight: ROW.whole,
      },
      measure,
    );
  return beside([
    { block: tableOf(ids.slice(0, middle)), x: 0, width: half },
    { block: tableOf(ids.slice(middle)), x: half + 5, width: half },
  ]);
}

const FORECAST_WORDS =
  'Behind what will be read stands one standard uncertainty, from the readings taken and what they leave open. Shaded: stays outside the sheet. Sheet: on a level floor; what will be read: on the pads as they are.';

function cells({ of, speech }: Card, id: string): (BoxCell | undefined)[] {
  const wanted = of.sheets.wanted.find((each) => each.id === id);
  const before = of.values.get(id);
  const will = of.setUp.standing.find((each) => each.id === id);
  const judged = of.setUp.readings.find((each) => each.id === id);
  const off =
    judged === undefined || judged.inTolerance ? undefined : judged.after > judged.wanted ? 'high' : 'low';
  const none: BoxCell = { words: '–' };
  return [
    wanted === undefined ? none : { words: wantedWords(wanted, speech) },
    before === undefined ? none : { words: bareWords(id, before, speech) },
    will === undefined || !isSaid(id)
      ? none
      : {
          words: `${bareWords(id, will.onThisFloor, speech)} ±${finerWords(id, will.u, speech)}`,
          off,
        },
    undefined,
  ];
}

function next({ of, width, measure }: Card): Block[] {
  const { next: all } = of.setUp;
  if (all.length === 0) return [];
  return paragraph(
    `Readings that would make it surest, the best first: ${all.map(({ words, again }) => `${words}${again ? ', once more' : ''}`).join('; ')}.`,
    { width, size: SIZE.small },
    measure,
  );
}
