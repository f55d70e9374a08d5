/**
 * What each sheet that was read tells beside its readings: wings, clicks, and where and with what it was read.
 *
 * In    the columns of the set-up sheet
 * Out   rows and a table, boxes where nothing was told
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import type { DamperClicks, SheetInstrument } from '../questions/floor-sheets.ts';
import type { SetUpColumn } from '../questions/set-up-sheet.ts';
import { plain } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { type BoxCell, type BoxRow, boxTable } from './box-table.ts';
import type { Block } from './lay-out.ts';
import type { TextMeasure } from './text-measure.ts';

type Columns = readonly SetUpColumn[];

export const temperatureWords = (kelvin: number | undefined): string | undefined =>
  kelvin === undefined ? undefined : plain(fromSI(kelvin, 'degC'), 0);

export const said = (words: string | undefined): BoxCell | undefined =>
  words === undefined || words === '' ? undefined : { words };

/** Wings that any sheet names; front and rear to be written in where none does. */
export function wingRows(columns: Columns): BoxRow[] {
  const named = [...new Set(columns.flatMap(({ read }) => Object.keys(read?.wings ?? {})))];
  return (named.length === 0 ? ['front', 'rear'] : named).map((name) => ({
    name: `wing ${name} °`,
    cells: [
      { words: '–' },
      ...columns.map(({ read }): BoxCell | undefined => {
        const angle = read?.wings[name];
        return angle === undefined ? undefined : { words: plain(fromSI(angle, 'deg'), 1) };
      }),
    ],
  }));
}

/** Clicks as found and as set, bump before rebound; both rows count from one end, or the second says its own. */
export function clickRow(columns: Columns): BoxRow {
  const [found, set] = (['as found', 'as set'] as const).map(
    (state) => columns.find((each) => each.state === state)?.read?.clicks,
  );
  const from = set?.from ?? found?.from;
  const cells = (of: typeof found): (BoxCell | undefined)[] =>
    WHEEL_NAMES.map((wheel) => {
      const words = clickWords(of?.[wheel]);
      return words === '' ? undefined : { words: of!.from === from ? words : `${words} (${of!.from})` };
    });
  return {
    name: from === undefined ? 'dampers, clicks' : `clicks from ${from}`,
    cells: [...cells(found), ...cells(set)],
  };
}

/** `b 6 r 8`, the fast ones behind a stroke. */
function clickWords(clicks: DamperClicks | undefined): string {
  const part = (letter: string, slow: number | undefined, fast: number | undefined): string[] =>
    slow === undefined && fast === undefined
      ? []
      : [`${letter} ${slow ?? '–'}${fast === undefined ? '' : `/${fast}`}`];
  return [
    ...part('b', clicks?.bump, clicks?.fastBump),
    ...part('r', clicks?.rebound, clicks?.fastRebound),
  ].join(' ');
}

/** Where and with what each sheet was read, and who signs for it; boxes where the file does not tell. */
export function readWithTable(columns: Columns, rowHeight: number, measure: TextMeasure): Block {
  return boxTable(
    {
      columns: [
        { title: '', part: 1 },
        { title: 'floor, how levelled', part: 2.3, align: 'left' },
        { title: 'floor, °C', part: 0.9 },
        { title: 'scales; known mass read', part: 2.4, align: 'left' },
        { title: 'gauges', part: 2.6, align: 'left' },
        { title: 'set of tyres', part: 1.6, align: 'left' },
        { title: 'signed', part: 1.3, align: 'left' },
      ],
      rows: columns.map(
        ({ state, read }): BoxRow => ({
          name: state,
          cells: [
            said(read?.place),
            said(temperatureWords(read?.floorTemperature)),
            said(instrumentWords(read?.instruments, true)),
            said(instrumentWords(read?.instruments, false)),
            said(read?.tyres),
            undefined,
          ],
        }),
      ),
      rowHeight,
    },
    measure,
  );
}

/** Scales, or all else: names with what is written on them; a check that ran out is told as overdue. */
const instrumentWords = (all: readonly SheetInstrument[] | undefined, scales: boolean): string | undefined =>
  all
    ?.filter(({ kinds }) => kinds.includes('weight') === scales)
    .map(
      ({ name, mark, outOfDate }) =>
        `${name}${mark === undefined ? '' : `, ${mark}`}${outOfDate ? ', OVERDUE' : ''}`,
    )
    .join('; ');
