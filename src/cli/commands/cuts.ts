/** `flatpatch cuts`: what the shop cuts and bends for a set of primaries. */
import { type Command, Option } from 'commander';
import {
  BEND_COLUMNS,
  type Column,
  CUT_COLUMNS,
  type Cut,
  csvOf,
  JIG_COLUMNS,
  type PrimariesSet,
  type PrimariesShop,
  primariesShop,
  STOCK_COLUMNS,
  WELD_COLUMNS,
} from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import {
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  tailLines,
} from '../command.ts';
import { columnLines, sizeText } from '../pipe-words.ts';
import { checkedSet, onSet, partOut, type SetOptions } from '../primaries-asked.ts';
import { remarkLines } from '../print.ts';
import { tell } from '../tell.ts';

const MM = { unit: 'mm', digits: 1 } as const;

/** The cut list as a terminal has room for it; the CSV has each figure in a column of its own. */
const CUT_WORDS = (speech: Speech, stepped: boolean): readonly Column<Cut>[] => {
  const length = sizeText(speech);
  return [
    { head: 'pipe', of: ({ pipe }) => pipe },
    { head: 'piece', of: ({ place }) => place },
    {
      head: 'what',
      of: (cut) =>
        cut.kind === 'bend'
          ? `bend ${degrees(cut.angle)} on ${length(cut.radius)}`
          : cut.kind === 'reducer'
            ? `reducer to ${length(cut.to.od)}`
            : `${cut.filler === undefined ? 'straight' : 'filler'}${cut.lap > 0 ? `, ${length(cut.lap)} of it lap` : ''}`,
    },
    ...(stepped ? [{ head: 'tube', ...MM, of: ({ tube }: Cut) => tube.od }] : []),
    { head: 'length', ...MM, of: (cut) => (cut.kind === 'bend' ? cut.middle : cut.length) },
    { head: 'outside', ...MM, of: (cut) => (cut.kind === 'bend' ? cut.outside : undefined) },
    { head: 'inside', ...MM, of: (cut) => (cut.kind === 'bend' ? cut.inside : undefined) },
    {
      head: 'clock',
      of: (cut) => (cut.kind === 'bend' && cut.clock !== undefined ? degrees(cut.clock) : undefined),
    },
    { head: 'on the skin', ...MM, of: (cut) => (cut.kind === 'bend' ? cut.clockArc : undefined) },
    {
      head: 'legs kept',
      of: (cut) =>
        cut.kind === 'bend' && cut.legs.some((leg) => leg > 0)
          ? cut.legs.map((leg) => (leg > 0 ? length(leg) : '0')).join(' + ')
          : undefined,
    },
    {
      head: 'from',
      of: ({ from }) => {
        if (from === undefined) return undefined;
        const ends = 'angle' in from.stock ? [from.from, from.to].map(degrees) : [];
        return `${from.stock.name}, no. ${from.number}${ends.length === 0 ? '' : `, ${ends.join(' to ')}`}`;
      },
    },
  ];
};

/** Pipes of more than one size of tube. */
const isStepped = ({ pipes }: PrimariesSet): boolean => pipes.some(({ tubes }) => tubes.length > 1);

const degrees = (angle: number): string => `${((angle * 180) / Math.PI).toFixed(1)}°`.replace('-', '−');

const TABLES = {
  cuts: ({ cuts }) => csvOf(CUT_COLUMNS, cuts.rows),
  bends: ({ bends }) => csvOf(BEND_COLUMNS, bends),
  jig: ({ jig }) => csvOf(JIG_COLUMNS, jig.points),
  stock: ({ cuts }) => csvOf(STOCK_COLUMNS, cuts.stock),
  welds: ({ cuts }) => csvOf(WELD_COLUMNS, cuts.welds),
} as const satisfies Readonly<Record<string, (of: PrimariesShop) => string>>;

type TableName = keyof typeof TABLES;

interface Options extends SetOptions, MannerOptions {
  readonly csv?: TableName;
}

export function cutsCommand(): Command {
  const made = command(
    'cuts',
    'What the shop cuts and bends for a set of primaries: cut list, bend table, jig points, welds, stock',
    [
      'flatpatch primaries ashgarth-501 --bank left --solution left.json && flatpatch cuts ashgarth-501 --bank left --solution left.json --csv bends > bends.csv',
    ],
  );
  return speaking(onSet(onCar(made)))
    .addOption(
      new Option('--csv <table>', 'one table alone, for a spreadsheet; mm and degrees').choices(
        Object.keys(TABLES),
      ),
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  await tell(file, options, async (found) => {
    const { car } = found;
    const { set, car: of, part } = await checkedSet(found, options);
    const shop = primariesShop(of, options.bank, set);
    const { csv } = options;
    return {
      json: {
        ...header('cuts'),
        car: carOut(car, found.file),
        bank: options.bank,
        ...partOut(part),
        ...shopOut(shop),
        cautions: [...set.cautions],
      },
      lines: () =>
        csv !== undefined
          ? [TABLES[csv](shop).trimEnd()]
          : [
              ...headLines(car, `shop list of the ${part.title}`),
              ...shopLines(shop, set, options.units),
              ...tailLines(shop.notes, set.cautions),
            ],
      refusal: undefined,
    };
  });
}

function shopLines(shop: PrimariesShop, set: PrimariesSet, speech: Speech): string[] {
  const { cuts, bends, jig, cost, runOuts } = shop;
  const length = sizeText(speech);
  const count = (pipe: string): number => cuts.welds.filter((weld) => weld.pipe === pipe).length;
  const straight = cuts.rows.flatMap((row) => (row.kind === 'straight' ? [row.length] : []));
  return [
    '',
    'Cut list, along the flow; clock from the bend before, clockwise seen with the flow',
    ...columnLines(CUT_WORDS(speech, isStepped(set)), cuts.rows, speech),
    '',
    ...(cuts.stock.length === 0
      ? [
          `${straight.length} straights, ${length(straight.reduce((sum, each) => sum + each, 0))} together; bends together ${(
            (cuts.rows.reduce((sum, row) => sum + (row.kind === 'bend' ? row.angle : 0), 0) * 180) / Math.PI
          ).toFixed(0)}°.`,
        ]
      : [
          'Stock to fetch',
          ...columnLines(STOCK_COLUMNS, cuts.stock, speech),
          `Stock comes to ${cost.stock.toFixed(2)} in the shop's money${cuts.stock.some(({ price }) => price === undefined) ? ', without what has no price' : ''}.`,
        ]),
    `Welds: ${set.pipes.map(({ pipe }) => `pipe ${pipe.name} ${count(pipe.name)}`).join(', ')}; ${cuts.welds.length} together.`,
    ...remarkLines('What cannot be made so', shop.problems),
    '',
    'Bend table',
    ...columnLines(BEND_COLUMNS, bends, speech),
    `Straight behind the last bend: ${runOuts.map((each) => `pipe ${each.pipe}${isStepped(set) ? ` in ${length(each.od)}` : ''} ${length(each.length)}`).join(', ')}.`,
    '',
    'Jig points',
    jig.frame.told,
    ...columnLines(JIG_COLUMNS, jig.points, speech),
  ];
}

const shopOut = ({ racked, cuts, bends, runOuts, jig, cost, problems, notes }: PrimariesShop) => ({
  racked,
  pieces: cuts.rows.map((row) => ({
    pipe: row.pipe,
    place: row.place,
    kind: row.kind,
    od: row.tube.od,
    length: row.kind === 'bend' ? row.middle : row.length,
    ...(row.kind === 'bend'
      ? {
          radius: row.radius,
          angle: row.angle,
          outside: row.outside,
          inside: row.inside,
          clock: row.clock ?? null,
          legs: [...row.legs],
        }
      : row.kind === 'straight'
        ? { filler: row.filler !== undefined, ...(row.lap > 0 ? { lap: row.lap } : {}) }
        : {}),
    ...(row.from === undefined
      ? {}
      : {
          stock: row.from.stock.name,
          number: row.from.number,
          from: row.from.from,
          to: row.from.to,
        }),
  })),
  stock: cuts.stock.map(({ name, count, price }) => ({ name, count, price: price ?? null })),
  cost: cost.stock,
  welds: cuts.welds.map(({ pipe, what, s, p }) => ({ pipe, what, from: s, at: [...p] })),
  bends: bends.map(({ pipe, bend, od, feed, rotation, angle, radius, wall }) => ({
    pipe,
    bend,
    od,
    feed,
    rotation,
    angle,
    radius,
    wallOutside: wall.outside,
  })),
  runOuts: runOuts.map(({ pipe, od, length }) => ({ pipe, od, length })),
  jig: {
    told: jig.frame.told,
    points: jig.points.map(({ pipe, what, at }) => ({ pipe, what, at: [...at] })),
  },
  problems: [...problems],
  notes: [...notes],
});
