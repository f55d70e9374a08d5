/**
 * The ratio chart: pairs and final drive, speeds and drops, the saw-tooth, thrust against resistance, speeds by
 * engine speed.
 *
 * In    the answer about the gears
 * Out   the laid-out document; what was fitted and who read both wheels' marks stays blank
 */
import type { RatiosReached, ToldFigure } from '../questions/index.ts';
import { plain, type Speech, showIn } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';
import { type Diagram, type DiagramLine, diagram } from './diagram.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, gap, heading, layOut, paragraph } from './lay-out.ts';
import { DASH, LINE, type SheetDocument, SIZE } from './page.ts';
import { type Column, type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';

const SPEED = { 'mm-N': 'km/h', 'in-lbf': 'mph' } as const;
const FORCE = { 'mm-N': 'N', 'in-lbf': 'lbf' } as const;

export function ratioSheet(
  of: RatiosReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const { speech } = head;
  const width = borderOf(head.paper).width - 4;
  const small = (words: string): Block[] => paragraph(words, { width, size: SIZE.small }, measure);
  const blocks: Block[] = [
    heading(`Final drive ${of.final.text}`),
    ...gearTable(of, speech, width, measure),
    gap(1),
    ...chosenWords(of, speech).flatMap(small),
    gap(1),
    diagram(sawTooth(of, speech)),
    ...(of.thrust.length === 0 ? [] : [gap(2), diagram(thrustDiagram(of, speech))]),
    gap(1),
    ...carWords(of, speech).flatMap(small),
    heading(`Road speed by engine speed, ${SPEED[speech]}`),
    ...chartTable(of, speech, width, measure),
    gap(1),
    ...of.notes.flatMap(small),
    ...small('± is one standard uncertainty.'),
  ];
  const full: SheetHead = { ...head, title: 'Ratio chart', of: of.pairs.map(({ text }) => text).join(' · ') };
  return layOut({ head: full, cautions: of.cautions, blocks }, measure);
}

const figureOf = ({ figures }: RatiosReached, of: string, id: string): ToldFigure | undefined =>
  figures.find((each) => each.of === of && each.id === id);

function said(of: RatiosReached, owner: string, id: string, speech: Speech): string {
  const figure = figureOf(of, owner, id);
  if (figure === undefined || !Number.isFinite(figure.value)) return '';
  const unit = figure.spoken?.[speech === 'mm-N' ? 0 : 1] ?? figure.unit;
  const shown = showIn(figure.value, unit, figure.spread?.u);
  return `${shown.text}${shown.spread === undefined ? '' : ` ± ${shown.spread}`}`;
}

function gearTable(of: RatiosReached, speech: Speech, width: number, measure: TextMeasure): Block[] {
  const speed = SPEED[speech];
  const at = `${plain(fromSI(of.at, 'rpm'), 0)} rpm`;
  const columns: Column[] = [
    { title: 'Gear', part: 0.6 },
    { title: 'Pair', part: 1 },
    { title: 'Ratio', part: 0.9, align: 'right' },
    { title: 'Overall', part: 1, align: 'right' },
    { title: `${speed} at ${at}`, part: 1.6, align: 'right' },
    { title: 'Drops to, rpm', part: 1.2, align: 'right' },
    { title: `Next pulls harder from, ${speed}`, part: 1.8, align: 'right' },
    { title: 'at rpm', part: 1.5, align: 'right' },
    { title: 'Marks read', part: 1.2, blank: true },
  ];
  const rows: Row[] = of.pairs.map(({ text }, k) => {
    const gear = `gear ${k + 1}`;
    const cell = (id: string): string => said(of, gear, id, speech);
    return {
      cells: [
        String(k + 1),
        text,
        plain(figureOf(of, gear, 'ratio')!.value, 3),
        plain(figureOf(of, gear, 'overall')!.value, 3),
        cell('speed'),
        cell('after'),
        cell('changeSpeed'),
        cell('changeAt'),
        '',
      ],
      height: 6.4,
    };
  });
  return table(columns, rows, width, measure);
}

function chosenWords({ chosen, targets }: RatiosReached, speech: Speech): string[] {
  const best = chosen?.[0];
  if (best === undefined || targets === undefined) return [];
  const unit = SPEED[speech];
  const speeds = targets.map((each) => plain(fromSI(each, unit), 0)).join(', ');
  return [
    `Nearest set of the stock to ${speeds} ${unit}; misses ${plain(100 * best.miss, 1)} % in the mean. ${best.changed.length === 0 ? 'Nothing to change.' : `To change: gear ${best.changed.join(', ')}.`}`,
  ];
}

function carWords(of: RatiosReached, speech: Speech): string[] {
  const top = said(of, 'car', 'topSpeed', speech);
  if (top === '') return [];
  const power = figureOf(of, 'car', 'peakPower')!.spoken![speech === 'mm-N' ? 0 : 1];
  return [
    `Top speed, level and still: ${top} ${SPEED[speech]} at ${said(of, 'car', 'topAt', speech)} rpm. Most power of the brake sheet ${said(of, 'car', 'peakPower', speech)} ${power} at ${said(of, 'car', 'peakPowerAt', speech)} rpm.`,
  ];
}

/** Engine speed over road speed: up a gear, down at the change, up the next. */
function sawTooth(of: RatiosReached, speech: Speech): Diagram {
  const unit = SPEED[speech];
  const point = (speed: number, engine: number) => ({
    across: fromSI(speed, unit),
    up: fromSI(engine, 'rpm'),
  });
  const gears = of.pairs.map(
    (_, k): DiagramLine => ({
      points: of.chart.map(({ engine, speeds }) => point(speeds[k]!, engine)),
      name: String(k + 1),
    }),
  );
  const drops = of.pairs.slice(0, -1).flatMap((_, k): DiagramLine[] => {
    const [speed, after] = [figureOf(of, `gear ${k + 1}`, 'speed'), figureOf(of, `gear ${k + 1}`, 'after')];
    if (speed === undefined || after === undefined) return [];
    return [
      {
        points: [point(speed.value, of.at), point(speed.value, after.value)],
        weight: LINE.thin,
        dash: DASH.hidden,
      },
    ];
  });
  return {
    acrossTitle: `road speed, ${unit}`,
    upTitle: 'engine speed, rpm',
    lines: [...gears, ...drops],
    height: 68,
  };
}

function thrustDiagram(of: RatiosReached, speech: Speech): Diagram {
  const [unit, force] = [SPEED[speech], FORCE[speech]];
  const points = (list: RatiosReached['resistance']) =>
    list.map((each) => ({ across: fromSI(each.speed, unit), up: fromSI(each.force, force) }));
  return {
    acrossTitle: `road speed, ${unit}`,
    upTitle: `thrust at the ground by gear, and what resists (dashed), ${force}`,
    lines: [
      ...of.thrust.map(
        ({ gear, points: list }): DiagramLine => ({
          points: points(list),
          name: String(gear),
          namedAt: 'first',
        }),
      ),
      { points: points(of.resistance), dash: DASH.hidden, weight: LINE.thin },
    ],
    height: 68,
  };
}

function chartTable(of: RatiosReached, speech: Speech, width: number, measure: TextMeasure): Block[] {
  const columns: Column[] = [
    { title: 'rpm', part: 1 },
    ...of.pairs.map((_, k): Column => ({ title: `gear ${k + 1}`, part: 1, align: 'right' })),
  ];
  const rows: Row[] = of.chart.map(({ engine, speeds }) => ({
    cells: [plain(fromSI(engine, 'rpm'), 0), ...speeds.map((each) => plain(fromSI(each, SPEED[speech]), 0))],
  }));
  return table(columns, rows, width, measure);
}
