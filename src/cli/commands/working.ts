/** `flatpatch working`: how one figure came about, step by step, down to the readings. */
import type { Command } from 'commander';
import { nearest } from '../../measured/problem.ts';
import { type Reading, spreadWords } from '../../measured/reading.ts';
import { cornerFigures } from '../../questions/corner.ts';
import { type WorkingReached, workingOf } from '../../questions/working.ts';
import type { Origin, Step, Term } from '../../working/working.ts';
import { readingOut } from '../answers/corner.ts';
import { figureOut, finite } from '../answers/form.ts';
import { askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  mannerOf,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
} from '../command.ts';
import { badAsk, NotReached } from '../outcome.ts';
import { amountText, figureLines } from '../print.ts';
import { askedPosition, atWheel, RACK_HELP, TRAVEL_HELP } from './corner.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly figure: string;
  readonly travel: string;
  readonly rack: string;
}

export function workingCommand(): Command {
  const made = command(
    'working',
    'How a figure was worked out: formulas, numbers put in, where each came from',
    [
      'flatpatch working fenwold-201 --wheel front-left --figure wheelRate',
      'flatpatch working ashgarth-501 --wheel front-right --figure barStress --travel "20 mm"',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption(
      '--figure <id>',
      'name of the figure, such as wheelRate (flatpatch corner --json lists them)',
    )
    .option('--travel <length>', TRAVEL_HELP, '0 mm')
    .option('--rack <length>', RACK_HELP, '0 mm')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const at = atWheel(askedPosition(options), wheel);
  const { car, file: named } = await openCar(file, options);
  const corner = cornerFigures(car, wheel, at);
  if (!corner.reached) throw new NotReached(corner.message);
  const ids = corner.figures.map((each) => each.id);
  if (!ids.includes(options.figure)) {
    const near = nearest(options.figure, ids);
    const hint = near === undefined ? '' : `Did you mean "${near}"? `;
    throw badAsk(
      'asked/figure',
      `There is no figure "${options.figure}" at this corner.`,
      `${hint}There are: ${ids.join(', ')}.`,
    );
  }
  const working = workingOf(car, { wheel, at, figure: options.figure });
  if (!working.reached) throw new NotReached(working.message);
  sayWarnings(car);
  if (options.json) {
    const { figure, steps, readings } = working;
    sayJson({
      ...header('working'),
      car: carOut(car, named),
      wheel,
      at,
      figure: figureOut(figure),
      steps: steps.map(stepOut),
      readings: Object.fromEntries(Object.entries(readings).map(([path, each]) => [path, readingOut(each)])),
    });
    return;
  }
  const doing = `${wheelWords(wheel)} wheel at ${amountText(at.travel, 'm', options.units)}`;
  sayLines([
    ...headLines(car, doing),
    ...figureLines([working.figure], { ...mannerOf(options), shares: true }),
    ...working.steps.flatMap((step, index) => stepLines(step, index + 1, working)),
  ]);
}

function stepOut(step: Step) {
  const terms = step.terms.map((term) => ({ ...term, value: finite(term.value) }));
  return { ...structuredClone(step), value: finite(step.value), terms };
}

/** Steps speak SI, so that the numbers put in give the number that came out. */
function stepLines(step: Step, number: number, working: WorkingReached): string[] {
  const how = step.kind === 'formula' ? `${step.symbol} = ${step.formula}` : `${step.symbol}: ${step.method}`;
  const limits = step.kind === 'formula' ? step.holds : undefined;
  const residual = step.kind === 'solved' ? step.residual : undefined;
  return [
    '',
    `${number}. ${step.means}`,
    `   ${how}`,
    ...step.terms.map(
      (term) =>
        `     ${term.symbol} = ${si(term.value, term.unit)}  ${term.means}${originWords(term, working)}`,
    ),
    `   = ${si(step.value, step.unit)}   [${step.source}]`,
    ...(residual === undefined
      ? []
      : [`   closes to ${si(residual.value, residual.unit)} of ${residual.of}`]),
    ...(limits === undefined ? [] : [`   holds: ${limits}`]),
  ];
}

const si = (value: number, unit: string): string =>
  `${Number.isFinite(value) ? Number(value.toPrecision(7)) : '—'}${unit === '1' ? '' : ` ${unit}`}`;

function originWords(term: Term, working: WorkingReached): string {
  return term.from === undefined ? '' : ` — ${origin(term.from, working.readings)}`;
}

function origin(from: Origin, readings: Readonly<Record<string, Reading>>): string {
  switch (from.kind) {
    case 'reading': {
      const reading = readings[from.path];
      if (reading === undefined) return from.path;
      const stamp = [reading.instrument, reading.by, reading.on]
        .filter((each) => each !== undefined)
        .join(', ');
      return `${from.path}: "${reading.text}"${stamp === '' ? '' : `, ${stamp}`}; ${spreadWords(reading)}`;
    }
    case 'step':
      return 'from above';
    case 'table':
      return `table: ${from.name}`;
    case 'asked':
      return `asked: ${from.what}`;
    case 'constant':
      return from.what;
  }
}
