/**
 * Torque and angle readings from a bench, as CSV.
 *
 * In    a heading row `torque N m, angle deg, way` (units in the headings; `way` is on or off and may be left out),
 *       then a row a reading; lines that begin with # are remarks. Columns parted by commas, semicolons or tabs;
 *       decimal commas where only they can be meant
 * Out   the readings in SI, or all that is wrong, with lines
 */
import { type CsvRow, csvRows } from '../measured/csv-rows.ts';
import type { Problem } from '../measured/problem.ts';
import type { BenchAsked } from '../questions/bench-test.ts';
import { type Delimiter, decimalSignOf, delimiterOf, numberIn } from '../units/list-numbers.ts';
import { sameDimension, toSI, unitNamed } from '../units/unit.ts';
import { BadInput } from './outcome.ts';

type Reading = BenchAsked['readings'][number];

/** Torque and angle. */
const LEAST_COLUMNS = 2;

const COLUMNS = { torque: 'N m', angle: 'rad' } as const;

/** @throws BadInput */
export function benchReadings(text: string, file: string): readonly Reading[] {
  const problems: Problem[] = [];
  const tell = (code: string, message: string, line: number, column = 1): void => {
    problems.push({ code, message, path: 'bench readings', file, line, column, weight: 'error' });
  };
  const delimiter = delimiterOf(text, LEAST_COLUMNS) ?? ',';
  const [heading, ...rows] = rowsOf(text, file, delimiter);
  if (heading === undefined) {
    tell('bench/empty', 'There are no readings; the first row is: torque N m, angle deg, way.', 1);
    throw new BadInput(problems);
  }
  const columns = heading.cells.map((cell) => /^(torque|angle|way)\b\s*[[(]?\s*(.*?)\s*[\])]?$/i.exec(cell));
  const find = (name: string): number => columns.findIndex((each) => each?.[1]?.toLowerCase() === name);
  const units = Object.entries(COLUMNS).map(([name, like]) => {
    const at = find(name);
    const unit = columns[at]?.[2] ?? '';
    const known = unitNamed(unit);
    if (at < 0)
      tell('bench/heading', `The heading has no "${name}"; write ${name} and its unit.`, heading.line);
    else if (known === undefined || !sameDimension(known.dimension, unitNamed(like)!.dimension)) {
      tell(
        'bench/unit',
        `The heading "${heading.cells[at]}" needs a unit, such as ${name} ${like === 'rad' ? 'deg' : like}.`,
        heading.line,
      );
    }
    return { at, unit };
  });
  if (problems.length > 0) throw new BadInput(problems);
  const way = find('way');
  const numbers = rows.flatMap(({ cells }) => units.map(({ at }) => cells[at] ?? ''));
  const decimal = decimalSignOf(numbers, delimiter);
  if (decimal === undefined) {
    tell(
      'bench/decimal',
      'The commas may part thousands or stand for the decimal sign, and nothing tells which; write points.',
      heading.line,
    );
    throw new BadInput(problems);
  }
  const readings = rows.map(({ cells, line }): Reading => {
    const [torque, twist] = units.map(({ at, unit }, k) => {
      const cell = cells[at] ?? '';
      const value = numberIn(cell, decimal);
      if (value === undefined) {
        tell(
          'bench/number',
          `"${cell}" is not ${k === 0 ? 'a torque' : 'an angle'}; write a number.`,
          line,
          at + 1,
        );
        return 0;
      }
      return toSI(value, unit);
    });
    const said = way < 0 ? 'on' : (cells[way] ?? '').toLowerCase();
    if (said !== 'on' && said !== 'off')
      tell('bench/way', `"${said}" is no way; write on or off.`, line, way + 1);
    return { torque: torque!, twist: twist!, way: said === 'off' ? 'off' : 'on' };
  });
  if (problems.length > 0) throw new BadInput(problems);
  return readings;
}

function rowsOf(text: string, file: string, delimiter: Delimiter): readonly CsvRow[] {
  const read = csvRows(text, delimiter);
  if (read.ok) return read.rows;
  throw new BadInput([
    {
      code: 'bench/csv',
      message: `The table cannot be read: ${read.why}.`,
      path: 'bench readings',
      file,
      line: read.line ?? 1,
      weight: 'error',
    },
  ]);
}
