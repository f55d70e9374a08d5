/** Steps of a working as lines of text, down to the readings. */
import { type Reading, spreadWords } from '../measured/reading.ts';
import type { Origin, Step, Term } from '../working/working.ts';

type Readings = Readonly<Record<string, Reading>>;

/** Steps speak SI, so that the numbers put in give the number that came out. */
export function stepLines(step: Step, number: number, readings: Readings): string[] {
  const how = step.kind === 'formula' ? `${step.symbol} = ${step.formula}` : `${step.symbol}: ${step.method}`;
  const limits = step.kind === 'formula' ? step.holds : undefined;
  const residual = step.kind === 'solved' ? step.residual : undefined;
  return [
    '',
    `${number}. ${step.means}`,
    `   ${how}`,
    ...step.terms.map(
      (term) =>
        `     ${term.symbol} = ${si(term.value, term.unit)}  ${term.means}${originWords(term, readings)}`,
    ),
    `   = ${si(step.value, step.unit)}   [${step.source}]`,
    ...(residual === undefined
      ? []
      : [`   closes to ${si(residual.value, residual.unit)} of ${residual.of}`]),
    ...(limits === undefined ? [] : [`   holds: ${limits}`]),
  ];
}

/** All steps of a working, numbered. */
export const workingLines = (of: {
  readonly steps: readonly Step[];
  readonly readings: Readings;
}): string[] => of.steps.flatMap((step, k) => stepLines(step, k + 1, of.readings));

const si = (value: number, unit: string): string =>
  `${Number.isFinite(value) ? String(Number(value.toPrecision(7))).replaceAll('-', '−') : '—'}${unit === '1' ? '' : ` ${unit}`}`;

function originWords(term: Term, readings: Readings): string {
  return term.from === undefined ? '' : ` — ${origin(term.from, readings)}`;
}

function origin(from: Origin, readings: Readings): string {
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
