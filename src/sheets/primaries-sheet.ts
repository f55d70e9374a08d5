/**
 * Sheets of a bank's primaries: the route with its tightest places, the cut list, the bend table with the jig.
 *
 * In    a set that stands, what the shop makes of it
 * Out   the laid-out document; what is measured and who made it stays blank
 */
import type { BankName } from '../car/check-exhaust.ts';
import type { LookedAt } from '../questions/looked-at.ts';
import { passedWords } from '../questions/primaries-front.ts';
import type { PrimariesSet } from '../questions/primaries-set.ts';
import type { Cut, PrimariesShop } from '../questions/primaries-shop.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { inCarBlocks } from './in-car-blocks.ts';
import { type Block, gap, heading, layOut, paragraph } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { primariesView } from './primaries-view.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

export interface PrimariesSheetMatter {
  readonly side: BankName;
  /** Of a bank, where it has several. */
  readonly part?: { readonly title: string; readonly stage: 'primaries' | 'secondaries' | 'tail' };
  readonly set: PrimariesSet;
  readonly shop: PrimariesShop;
  /** What was left out of the problem, such as a bodywork that was not scanned. */
  readonly notes: readonly string[];
  /** Hot, its nuts and the way it comes off, where it was looked at. */
  readonly looked?: LookedAt;
}

interface Sheet {
  readonly of: PrimariesSheetMatter;
  readonly width: number;
  readonly measure: TextMeasure;
  /** A length to the tenth of a millimetre, or to what that is in inches. */
  readonly size: (length: number) => string;
  readonly speech: Speech;
}

const VIEW_HEIGHT = 132;
/** High enough to write in. */
const ROW = 6.4;

export function primariesSheet(
  of: PrimariesSheetMatter,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { speech } = head;
  const width = borderOf(head.paper).width - 4;
  const digits = speech === 'in-lbf' ? 3 : 1;
  const size = (length: number): string => spokenAmount(length, 'm', digits, speech);
  const sheet: Sheet = { of, width, measure, size, speech };
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const { set, shop, side } = of;
  const second = of.part !== undefined && of.part.stage !== 'primaries';
  const order = set.order.map(({ cylinder, inlet }) => `${cylinder} at ${inlet}`).join(', ');
  const blocks: Block[] = [
    primariesView(set, side, { width, height: VIEW_HEIGHT }),
    gap(1),
    ...routeTable(sheet),
    gap(1),
    ...small(
      `Inlets are counted ${set.collector.inRows ? 'row by row' : 'round the ring'}; in firing order ${second ? 'the pipes' : 'the cylinders'} enter ${order}. All ${size(set.target)} ± ${size(set.within)} from ${second ? 'the outlet of its collector' : 'flange'} to ${of.part?.stage === 'tail' ? 'its end' : 'collector inlet'} along the middle; ${spokenAmount(set.mass, 'kg', 2, speech)} without flanges and welds.`,
    ),
    ...(set.passed === 0 ? [] : small(passedWords(set.passed))),
    ...small(tubeWords(set, size)),
    ...of.notes.flatMap(small),
    opening(heading('Cut list')),
    ...cutTable(sheet),
    gap(2),
    ...stockTable(sheet),
    ...shop.problems.flatMap((each) => small(`Cannot be made so: ${each}`)),
    ...shop.notes.flatMap(small),
    opening(heading('Bend table')),
    ...bendRows(sheet),
    gap(1),
    ...small(
      `Straight behind the last bend: ${shop.runOuts.map((each) => `pipe ${each.pipe}${isStepped(set) ? ` in ${size(each.od)}` : ''} ${size(each.length)}`).join(', ')}.`,
    ),
    heading('Jig points'),
    ...small(shop.jig.frame.told),
    gap(1),
    ...jigTable(sheet),
    ...(of.looked === undefined
      ? []
      : [opening(heading('In the car')), ...inCarBlocks(of.looked, { side, width, measure, speech })]),
  ];
  const { title = `${side} bank`, stage = 'primaries' } = of.part ?? {};
  const full = { ...head, title: TITLES[stage], of: title };
  return layOut({ head: full, cautions: set.cautions, blocks }, measure);
}

const TITLES = { primaries: 'Primaries', secondaries: 'Secondaries', tail: 'Tail pipe' } as const;

const isStepped = ({ pipes }: PrimariesSet): boolean => pipes.some(({ tubes }) => tubes.length > 1);

/** The tube, and the larger ones behind it with where they begin. */
function tubeWords({ pipes }: PrimariesSet, size: (length: number) => string): string {
  const [first, ...more] = pipes[0]!.tubes;
  const steps = more.map(({ od, wall }, k) => {
    const places = pipes.map(({ cylinder, tubes }) => `cylinder ${cylinder} ${size(tubes[k + 1]!.from)}`);
    return ` Then ${size(od)} × ${size(wall)}, which begins, from the flange along the middle: ${places.join(', ')}.`;
  });
  return `Tube ${size(first!.od)} × ${size(first!.wall)}.${steps.join('')}`;
}

const opening = (block: Block): Block => ({ ...block, opensSheet: true });

const degrees = (angle: number): string => spokenAmount(angle, 'rad', 1);

const routeColumns = (first: string): readonly Column[] => [
  { title: first, part: 0.9 },
  { title: 'Inlet', part: 0.7 },
  { title: 'Length', part: 1.2, align: 'right' },
  { title: 'Bends', part: 0.7, align: 'right' },
  { title: 'Turned', part: 0.9, align: 'right' },
  { title: 'Tightest, cold', part: 3.4 },
  { title: 'Gap measured', part: 1.4, blank: true },
  { title: 'Length made', part: 1.4, blank: true },
  { title: 'Initials', part: 1.1, blank: true },
];

function routeTable({ of, width, measure, size, speech }: Sheet): Block[] {
  const rows = of.set.pipes.map(
    ({ pipe, inlet, length, bends, turned, tightest }): Row => ({
      height: ROW,
      cells: [
        // of a primary that is its cylinder
        pipe.name,
        String(inlet),
        size(length),
        String(bends),
        spokenAmount(turned, 'rad', 0),
        tightest === undefined
          ? 'nothing near'
          : `${size(tightest.gap)} to ${tightest.against}, at ${tightest.at
              .map((each) =>
                spokenAmount(each, 'm', speech === 'in-lbf' ? 1 : 0, speech).replace(/[^\d−.]+$/, ''),
              )
              .join(', ')}`,
        '',
        '',
        '',
      ],
    }),
  );
  // what begins at a collector is no cylinder's
  const first = of.part === undefined || of.part.stage === 'primaries' ? 'Cylinder' : 'Pipe';
  return table(routeColumns(first), rows, width, measure);
}

const CUTS: readonly Column[] = [
  { title: 'Pipe', part: 0.6 },
  { title: 'Piece', part: 0.6 },
  { title: 'What', part: 2.3 },
  { title: 'Middle', part: 1.3, align: 'right' },
  { title: 'Outside', part: 1.3, align: 'right' },
  { title: 'Inside', part: 1.3, align: 'right' },
  { title: 'Clock', part: 1.1, align: 'right' },
  { title: 'On the skin', part: 1.3, align: 'right' },
  { title: 'From', part: 3.1 },
  { title: 'Cut', part: 0.7, blank: true },
];

const TUBE: Column = { title: 'Tube', part: 1.1, align: 'right' };

const from = ({ from: of }: Cut): string => {
  if (of === undefined) return '';
  const part = 'angle' in of.stock ? `, ${degrees(of.from)} to ${degrees(of.to)}` : '';
  return `${of.stock.name}, no. ${of.number}${part}`;
};

function cutTable({ of, width, measure, size }: Sheet): Block[] {
  // one size throughout is told once
  const stepped = isStepped(of.set);
  const ofTube = ({ tube }: Cut): string[] => (stepped ? [size(tube.od)] : []);
  const columns = stepped ? [...CUTS.slice(0, 2), TUBE, ...CUTS.slice(2)] : CUTS;
  const rows = of.shop.cuts.rows.map((cut): Row => {
    const on = [cut.pipe, String(cut.place), ...ofTube(cut)];
    if (cut.kind === 'straight') {
      return {
        cells: [
          ...on,
          `${cut.filler === undefined ? 'straight' : 'filler: cut last'}${cut.lap > 0 ? `, lap ${size(cut.lap)}` : ''}`,
          size(cut.length),
          '',
          '',
          '',
          '',
          from(cut),
          '',
        ],
      };
    }
    if (cut.kind === 'reducer') {
      const what = `reducer to ${size(cut.to.od)}`;
      return { cells: [...on, what, size(cut.length), '', '', '', '', '', ''] };
    }
    const legs = cut.legs.some((leg) => leg > 0)
      ? `, legs ${cut.legs.map((leg) => (leg > 0 ? size(leg) : '0')).join(' and ')}`
      : '';
    return {
      cells: [
        ...on,
        `${degrees(cut.angle)} on ${size(cut.radius)}${legs}`,
        size(cut.middle),
        size(cut.outside),
        size(cut.inside),
        cut.clock === undefined ? '' : degrees(cut.clock),
        cut.clockArc === undefined ? '' : size(cut.clockArc),
        from(cut),
        '',
      ],
    };
  });
  return table(columns, rows, width, measure, SIZE.label);
}

function stockTable({ of, width, measure }: Sheet): Block[] {
  const { stock, welds } = of.shop.cuts;
  const price = (value: number | undefined): string => (value === undefined ? '' : value.toFixed(2));
  const rows = stock.map(
    (each): Row => ({
      cells: [
        each.name,
        String(each.count),
        price(each.price),
        price(each.price === undefined ? undefined : each.price * each.count),
      ],
    }),
  );
  const columns: readonly Column[] = [
    { title: 'Stock to fetch', part: 3 },
    { title: 'Number', part: 1, align: 'right' },
    { title: 'Price of one', part: 1, align: 'right' },
    { title: 'Price', part: 1, align: 'right' },
  ];
  return [
    ...(rows.length === 0 ? [] : table(columns, rows, width, measure)),
    ...paragraph(`Welds: ${welds.length}.`, { width, size: SIZE.small }, measure),
  ];
}

const BENDS: readonly Column[] = [
  { title: 'Pipe', part: 0.7 },
  { title: 'Bend', part: 1.1 },
  { title: 'Feed', part: 1.2, align: 'right' },
  { title: 'Rotation, clockwise with the flow', part: 1.6, align: 'right' },
  { title: 'Angle', part: 1, align: 'right' },
  { title: 'Radius', part: 1.1, align: 'right' },
  { title: 'Wall left outside', part: 1.3, align: 'right' },
  { title: 'Bent', part: 0.7, blank: true },
];

function bendRows({ of, width, measure, size, speech }: Sheet): Block[] {
  const rows = of.shop.bends.map(
    (row): Row => ({
      cells: [
        row.pipe,
        `${row.bend}${isStepped(of.set) ? ` in ${size(row.od)}` : ''}`,
        size(row.feed),
        degrees(row.rotation),
        degrees(row.angle),
        size(row.radius),
        spokenAmount(row.wall.outside, 'm', speech === 'in-lbf' ? 4 : 2, speech),
        '',
      ],
    }),
  );
  return table(BENDS, rows, width, measure, SIZE.label);
}

const JIG: readonly Column[] = [
  { title: 'Pipe', part: 0.7 },
  { title: 'Point', part: 2 },
  { title: 'x', part: 1.2, align: 'right' },
  { title: 'y', part: 1.2, align: 'right' },
  { title: 'z', part: 1.2, align: 'right' },
  { title: 'Set', part: 0.8, blank: true },
];

function jigTable({ of, width, measure, size }: Sheet): Block[] {
  const rows = of.shop.jig.points.map(
    ({ pipe, what, at }): Row => ({ cells: [pipe, what, ...at.map(size), ''] }),
  );
  return table(JIG, rows, width, measure, SIZE.label);
}
