/** `flatpatch cases`: every default case at every wheel, as a table for a spreadsheet. */
import { type Command, Option } from 'commander';
import { type LoadCases, loadCases } from '../../questions/index.ts';
import { CASE_ROWS, type CaseRows, caseTable } from '../../sheets/index.ts';
import { figureOut } from '../answers/form.ts';
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
import { NotReached } from '../outcome.ts';

interface Options extends CarOptions, MannerOptions {
  readonly rows: CaseRows;
  readonly spread?: true;
  readonly separator: ',' | ';' | 'tab';
}

export function casesCommand(): Command {
  const made = command(
    'cases',
    'All default load cases at all four wheels, member by member, as CSV or JSON',
    [
      'flatpatch cases fenwold-201 > members.csv',
      'flatpatch cases ashgarth-501 --rows wheels --units in-lbf --separator ";" > wheels.csv',
      'flatpatch cases fenwold-201 --json',
    ],
  );
  return speaking(onCar(made))
    .addOption(
      new Option(
        '--rows <what>',
        'members: a row a case, wheel and member; wheels: a row a case and wheel, a column a figure',
      )
        .choices(CASE_ROWS)
        .default('members'),
    )
    .option('--spread', 'also the spread of each figure, which takes half a minute')
    .addOption(
      new Option('--separator <mark>', 'what stands between columns').choices([',', ';', 'tab']).default(','),
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { car, file: named } = await openCar(file, options);
  const of = loadCases(car, { spread: options.spread === true });
  sayWarnings(car);
  if (of.cases.length === 0) throw new NotReached(of.without[0]!.message);
  for (const { doing, message } of of.without) complain(`${doing.name}: ${message}`);
  if (options.json) {
    sayJson({ ...header('cases'), car: carOut(car, named), ...casesOut(of) });
    return;
  }
  const separator = options.separator === 'tab' ? '\t' : options.separator;
  sayLines(caseTable(of, { rows: options.rows, speech: options.units, separator }));
}

const casesOut = ({ cases, without }: LoadCases) => ({
  cases: cases.map(({ doing, loads }) => ({
    name: doing.name,
    means: doing.means,
    doing: doing.doing,
    wheels: loads.wheels.map(({ wheel, figures }) => ({ wheel, figures: figures.map(figureOut) })),
    notes: [...loads.notes],
  })),
  without: without.map(({ doing, message }) => ({ name: doing.name, message })),
  cautions: [...cases[0]!.loads.cautions],
});
