/**
 * The set-up sheet: target, as found, as set, after run, at the wheels as the car lies; boxes where nothing was read.
 *
 * In    what was wanted and read, the car in plan
 * Out   the laid-out document, one sheet for most cars
 */
import { WHEEL_NAMES, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';
import type { Drawing } from '../questions/drawing-types.ts';
import type { SetUpColumn, SetUpSheetReached } from '../questions/set-up-sheet.ts';
import { plain, type Speech } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { clickRow, readWithTable, said, temperatureWords, wingRows } from './beside-readings.ts';
import { type BoxCell, type BoxColumn, type BoxRow, boxTable } from './box-table.ts';
import { rowsAtWheels } from './floor-rows.ts';
import { bareWords, heightWords, kindWords, lengthSaid, rowWords, wantedWords } from './floor-words.ts';
import { borderOf, type SheetHead, spaceOf } from './frame.ts';
import { type Block, beside, gap, layOut, paragraph } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import type { TextMeasure } from './text-measure.ts';
import { wheelBoxes } from './wheel-boxes.ts';
import { ownWords } from './words.ts';

/** Heights of rows to write in, mm, the most comfortable first: the first with which all stands on one sheet is taken. */
const ROWS = [
  { wheel: 6.8, whole: 5.8 },
  { wheel: 6.4, whole: 5.4 },
  { wheel: 6, whole: 5.1 },
  { wheel: 5.5, whole: 4.8 },
  { wheel: 5, whole: 4.4 },
] as const;

interface Sheet {
  readonly of: SetUpSheetReached;
  readonly speech: Speech;
  readonly width: number;
  readonly row: (typeof ROWS)[number];
  readonly measure: TextMeasure;
}

export interface SetUpSheetMatter {
  readonly is: SetUpSheetReached;
  readonly drawing: Drawing;
}

export function setUpSheetOf(
  matter: SetUpSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { is } = matter;
  const read = is.columns.flatMap(({ read: each }) => (each === undefined ? [] : [each.name]));
  const full: SheetHead = {
    ...head,
    title: 'Set-up sheet',
    of: read.length === 0 ? 'to be written in' : read.join(' · '),
  };
  const { height } = spaceOf(full, is.cautions, measure);
  const tries = ROWS.map((row) => blocksOf(matter, head, row, measure));
  const fits = (blocks: readonly Block[]): boolean =>
    blocks.reduce((sum, block) => sum + block.height, 0) <= height;
  return layOut({ head: full, cautions: is.cautions, blocks: tries.find(fits) ?? tries[0]! }, measure);
}

function blocksOf(
  { is, drawing }: SetUpSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  row: Sheet['row'],
  measure: TextMeasure,
): readonly Block[] {
  const width = borderOf(head.paper).width - 4;
  const sheet: Sheet = { of: is, speech: head.speech, width, row, measure };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  return [
    columnsTable(sheet),
    gap(1.5),
    wheelBoxes(
      {
        columns: [
          { title: '', part: 18.5 },
          { title: 'target', part: 16.5 },
          ...is.columns.map(({ state }) => ({ title: state, part: 11.6 })),
        ],
        wheels: wheelRows(sheet),
        drawing,
        rowHeight: row.wheel,
      },
      width,
      measure,
    ),
    gap(1.5),
    wholeTables(sheet),
    gap(1.5),
    fittedTable(sheet),
    gap(1.5),
    readWithTable(is.columns, row.whole, measure),
    gap(1),
    ...[
      ...(is.note === undefined ? [] : [`Target: ${is.note}.`]),
      ...is.notes,
      SHADED,
      ...patchWords(sheet),
    ].flatMap(small),
  ];
}

const SHADED =
  'Shaded: outside the tolerance of the target, the wedge up where it reads more than the target, down where less. Readings are as pads and gauges showed them; toe positive in, camber negative leaning in.';

/** Which sheets stand in the columns, and how the car was while each was read. */
function columnsTable({ of, row, measure }: Sheet): Block {
  const columns: BoxColumn[] = [
    { title: '', part: 1.1 },
    { title: 'sheet', part: 2.6, align: 'left' },
    { title: 'day', part: 1.3 },
    { title: 'read by', part: 1.3 },
    { title: 'bars', part: 1.3 },
    { title: 'aboard', part: 3, align: 'left' },
    { title: 'fuel, l', part: 0.9 },
    { title: 'air, °C', part: 0.9 },
  ];
  const rows: BoxRow[] = [
    ...of.columns.map(
      ({ state, read }): BoxRow => ({
        name: state,
        cells:
          read === undefined
            ? Array.from({ length: 7 }, () => undefined)
            : [
                said(read.name),
                said(read.on),
                said(read.by),
                said(read.bars === 'connected' ? 'on' : 'off'),
                said(read.aboard.map(({ name, mass }) => `${name} ${plain(mass, 1)} kg`).join(', ')),
                undefined,
                said(temperatureWords(read.airTemperature)),
              ],
      }),
    ),
  ];
  return boxTable({ columns, rows, rowHeight: row.whole }, measure);
}

function wheelRows({ of, speech }: Sheet): Wheels<readonly BoxRow[]> {
  const ids = rowsAtWheels(
    of.sheets,
    of.columns.flatMap(({ values }) => [...values.keys()]),
  );
  return Object.fromEntries(
    WHEEL_NAMES.map((wheel) => [
      wheel,
      ids[wheel].map(
        ({ id, name }): BoxRow => ({
          name: name === undefined ? kindWords(id, speech) : heightWords(name, speech),
          cells: rowCells(of, id, speech),
        }),
      ),
    ]),
  ) as unknown as Wheels<readonly BoxRow[]>;
}

/** Target and what was read; a box for what was not. */
function rowCells(of: SetUpSheetReached, id: string, speech: Speech): (BoxCell | undefined)[] {
  const wanted = of.sheets.wanted.find((each) => each.id === id);
  const target =
    wanted === undefined
      ? of.sheets.wanted.length === 0
        ? undefined
        : { words: '–' }
      : { words: wantedWords(wanted, speech) };
  return [target, ...of.columns.map((column) => readCell(column, id, wanted, speech))];
}

function readCell(
  { values }: SetUpColumn,
  id: string,
  wanted: SetUpSheetReached['sheets']['wanted'][number] | undefined,
  speech: Speech,
): BoxCell | undefined {
  const value = values.get(id);
  if (value === undefined) return undefined;
  const by = wanted === undefined ? 0 : value - wanted.value;
  // a hair of rounding is no breach
  const out = wanted !== undefined && Math.abs(by) > wanted.tolerance * (1 + 1e-6);
  return {
    words: bareWords(id, value, speech),
    ...(out ? { off: by > 0 ? 'high' : 'low' } : {}),
  };
}

/** Readings of the whole car, in two tables side by side. */
function wholeTables({ of, speech, width, row, measure }: Sheet): Block {
  const columns: BoxColumn[] = [
    { title: '', part: 29 },
    { title: 'target', part: 18 },
    ...of.columns.map(({ state }) => ({ title: state, part: 12.8 })),
  ];
  const ids = (all: readonly string[]): BoxRow[] =>
    all.map((id) => ({ name: rowWords(id, speech), cells: rowCells(of, id, speech) }));
  const half = (width - 5) / 2;
  return beside([
    {
      block: boxTable(
        {
          columns,
          rows: [...ids(['cross', 'total', 'frontShare', 'leftShare']), ...wingRows(of.columns)],
          rowHeight: row.whole,
        },
        measure,
      ),
      x: 0,
      width: half,
    },
    {
      block: boxTable(
        {
          columns,
          rows: ids(['rake', 'track.front', 'track.rear', 'wheelbase.left', 'wheelbase.right']),
          rowHeight: row.whole,
        },
        measure,
      ),
      x: half + 5,
      width: half,
    },
  ]);
}

/** Springs, packers and bars as the file has them, with boxes for what is fitted, and for what no file knows. */
function fittedTable({ of, speech, row, measure }: Sheet): Block {
  const columns: BoxColumn[] = [
    { title: '', part: 2.2 },
    ...['front left', 'front right', 'rear left', 'rear right'].map((wheel) => ({
      title: `${wheel}, found`,
      part: 1.75,
    })),
    ...['FL', 'FR', 'RL', 'RR'].map((wheel) => ({ title: `${wheel}, as set`, part: 1.35 })),
  ];
  const none: BoxCell = { words: '–' };
  const written = Array.from({ length: 4 }, () => undefined);
  const ofWheels = (name: string, say: (wheel: WheelName) => string | undefined): BoxRow => ({
    name,
    cells: [
      ...WHEEL_NAMES.map((wheel) => {
        const words = say(wheel);
        return words === undefined ? none : { words };
      }),
      ...written,
    ],
  });
  // what an axle has once stands at its left wheel, what belongs to it at the right one
  const axle =
    (left: (end: 'front' | 'rear') => string | undefined, right: typeof left = () => '') =>
    (wheel: WheelName): string | undefined =>
      (wheel.endsWith('Left') ? left : right)(wheel.startsWith('front') ? 'front' : 'rear');
  const gaps = axle((end) => {
    const gap = of.axles[end].heaveGap;
    return gap === undefined ? undefined : lengthSaid(gap, speech);
  });
  const hasGap = WHEEL_NAMES.some((wheel) => gaps(wheel) !== undefined && gaps(wheel) !== '');
  const rows: BoxRow[] = [
    ofWheels('springs', (wheel) => springWords(of.corners[wheel].spring, speech)),
    ofWheels('packers', (wheel) => {
      const { packers } = of.corners[wheel];
      return packers === undefined ? undefined : lengthSaid(packers, speech);
    }),
    ofWheels(
      'anti-roll bar; blades',
      axle(
        (end) => {
          const { bar } = of.axles[end];
          return bar === undefined ? undefined : `⌀ ${lengthSaid(bar.diameter, speech)}`;
        },
        (end) =>
          of.axles[end].bar?.blades.map((each) => `${plain(fromSI(each, 'deg'), 0)}°`).join(' / ') ?? '',
      ),
    ),
    ...(hasGap ? [ofWheels('heave spring, gap', gaps)] : []),
    clickRow(of.columns),
  ];
  return boxTable({ columns, rows, rowHeight: row.whole }, measure);
}

function springWords(
  spring: SetUpSheetReached['corners'][WheelName]['spring'],
  speech: Speech,
): string | undefined {
  if (spring === undefined) return undefined;
  const coil = spring.kind === 'coil';
  if (spring.rate !== undefined) {
    return ownWords({ value: spring.rate, unit: coil ? 'N/m' : 'N m/rad' }, speech);
  }
  return coil ? `wire ${lengthSaid(spring.wire, speech)}` : `bar ⌀ ${lengthSaid(spring.diameter, speech)}`;
}

function patchWords({ of, speech }: Sheet): readonly string[] {
  const { patch } = of;
  if (patch === undefined) return ['The file tells nothing of the floor: pads are taken as level.'];
  const pads = WHEEL_NAMES.map(
    (wheel, k) => `${['FL', 'FR', 'RL', 'RR'][k]} ${lengthSaid(patch.pads[wheel], speech)}`,
  );
  const slope = (value: number): string => `${plain(fromSI(value, 'deg'), 2)}°`;
  const slopes =
    patch.risesForward === 0 && patch.risesLeft === 0
      ? ''
      : `; floor rises ${slope(patch.risesForward)} forward, ${slope(patch.risesLeft)} to the left`;
  return [
    `Pads above the plane of the floor: ${pads.join(', ')}${slopes}. The target is meant on a level floor: flatpatch set-up counts the difference in.`,
  ];
}
