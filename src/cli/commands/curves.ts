/** `flatpatch curves`: figures of a corner along its travel, as a table for a spreadsheet. */
import { type Command, Option } from 'commander';
import type { CornerCurves, CurveColumn, HeldBy } from '../../questions/curves.ts';
import { cornerCurves } from '../../questions/curves.ts';
import { type Speech, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { finite } from '../answers/form.ts';
import { askedAmount, askedCount, askedWheel } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  complain,
  header,
  type MannerOptions,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
} from '../command.ts';
import { badAsk, NotReached } from '../outcome.ts';
import { amountText } from '../print.ts';
import { RACK_HELP } from './corner.ts';
import { checkFigure } from './working.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly rack: string;
  readonly from: string;
  readonly to: string;
  readonly count: string;
  readonly figures?: readonly string[];
  readonly separator: ',' | ';' | 'tab';
}

export function curvesCommand(): Command {
  const made = command('curves', 'Figures of a corner along its travel, as CSV or JSON', [
    'flatpatch curves fenwold-201 --wheel front-left > front-left.csv',
    'flatpatch curves ashgarth-501 --wheel front-left --from "-20 mm" --to "30 mm" --count 11 --figures wheelRate barTwist',
    'flatpatch curves fenwold-201 --wheel rear-right --json',
  ]);
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .option('--from <length>', 'lowest travel', '-30 mm')
    .option('--to <length>', 'highest travel', '30 mm')
    .option('--count <number>', 'how many travels, both ends counted', '25')
    .option('--rack <length>', RACK_HELP, '0 mm')
    .option('--figures <ids...>', 'these figures alone, such as wheelRate camber')
    .addOption(
      new Option('--separator <mark>', 'what stands between columns').choices([',', ';', 'tab']).default(','),
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const rack = wheel.end === 'front' ? askedAmount('--rack', options.rack, 'm') : 0;
  const from = askedAmount('--from', options.from, 'm');
  const to = askedAmount('--to', options.to, 'm');
  if (!(to > from)) throw badAsk('asked/range', '--to must be above --from.');
  const count = askedCount('--count', options.count, 2, 10_000);
  const { car, file: named } = await openCar(file, options);
  const curves = cornerCurves(car, wheel, { rack, from, to, count });
  const columns = chosen(curves.columns, options.figures);
  sayWarnings(car);
  if (curves.heldBy.every((each) => each === 'linkage'))
    throw new NotReached('The wheel comes to none of these travels: the linkage ends before.');
  for (const line of heldLines(curves, options.units)) complain(line);
  if (!options.json) {
    sayLines(csv(curves, columns, options.units, options.separator === 'tab' ? '\t' : options.separator));
    return;
  }
  const { travel, heldBy, events, range } = curves;
  sayJson({
    ...header('curves'),
    car: carOut(car, named),
    wheel,
    rack,
    travel: [...travel],
    heldBy: [...heldBy],
    columns: columns.map((each) => ({ ...each, values: [...each.values] })),
    events: [...events],
    range: { ...range, bump: finite(range.bump), droop: finite(range.droop) },
  });
}

function chosen(columns: readonly CurveColumn[], ids: readonly string[] | undefined): readonly CurveColumn[] {
  if (ids === undefined) return columns;
  const known = columns.map((each) => each.id);
  for (const id of ids) checkFigure(id, known);
  return ids.map((id) => columns.find((each) => each.id === id)!);
}

/** Which travels have no row to speak of, and at which a stop carries, in words. */
function heldLines({ travel, heldBy }: CornerCurves, speech: Speech): string[] {
  const runs: { by: HeldBy; from: number; to: number }[] = [];
  travel.forEach((z, k) => {
    const by = heldBy[k];
    const last = runs.at(-1);
    if (last !== undefined && k > 0 && by === last.by && heldBy[k - 1] === by) last.to = z;
    else if (by !== null && by !== undefined) runs.push({ by, from: z, to: z });
  });
  return runs.map(({ by, from, to }) => {
    const mm = (value: number): string => amountText(value, 'm', speech);
    const where = from === to ? `At ${mm(from)}` : `From ${mm(from)} to ${mm(to)}`;
    return by === 'linkage'
      ? `${where} the wheel does not come: these rows are empty.`
      : `${where} the wheel is held by: ${by}. Forces and loads there are those of the stop.`;
  });
}

/** RFC 4180, one heading row with units; an empty cell where there is no value. */
function csv(curves: CornerCurves, columns: readonly CurveColumn[], speech: Speech, mark: string): string[] {
  const all = [{ id: 'travel', means: 'wheel travel', unit: 'm', values: curves.travel }, ...columns];
  const units = all.map((each) => spokenUnit(each.unit, speech));
  const heading = all.map((each, k) => (units[k] === '1' ? each.id : `${each.id} (${units[k]})`));
  const rows = curves.travel.map((_, row) =>
    all.map((each, k) => {
      const value = each.values[row];
      // nine digits: more than any reading supports, few enough that rounding of the machine does not show
      return value === null || value === undefined
        ? ''
        : String(Number(fromSI(value, units[k]!).toPrecision(9)));
    }),
  );
  // beside the travel, so that what a stop carries is not taken for the load of a wheel
  return [
    [heading[0], 'held by', ...heading.slice(1)],
    ...rows.map(([travel, ...rest], k) => [travel, curves.heldBy[k] ?? '', ...rest]),
  ].map((row) => row.join(mark));
}
