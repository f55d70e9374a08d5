/**
 * Lengths or corners of primaries as made, as CSV.
 *
 * In    a heading row, then a row a pipe: `pipe, length mm, along` (along: outside, inside, side of every bend, or
 *       middle; `u mm` may be added); or a row a point in the order of the flow: `pipe, x mm, y mm, z mm`
 * Out   what was measured of each pipe, SI, or all that is wrong with lines
 */
import { csvRows } from '../measured/csv-rows.ts';
import type { Problem } from '../measured/problem.ts';
import type { MadeBy, MadePipe } from '../questions/index.ts';
import { decimalSignOf, delimiterOf, numberIn } from '../units/list-numbers.ts';
import { sameDimension, toSI, unitNamed } from '../units/unit.ts';
import { BadInput } from './outcome.ts';

const ALONG: readonly MadeBy[] = ['outside', 'side', 'inside', 'middle'];
/** One standard uncertainty of a cord and a tape, and of a co-ordinate, where no `u` is written (common practice, no source). */
const USUAL = { length: 0.0007, point: 0.0003 } as const;

/** @throws BadInput */
export function madePipes(text: string, file: string): readonly MadePipe[] {
  const problems: Problem[] = [];
  const tell = (code: string, message: string, line: number): void => {
    problems.push({ code, message, path: 'what was measured', file, line, column: 1, weight: 'error' });
  };
  const delimiter = delimiterOf(text, 3) ?? ',';
  const read = csvRows(text, delimiter);
  const [heading, ...rows] = read.ok ? read.rows : [];
  if (heading === undefined) {
    tell('made/csv', read.ok ? 'There is nothing in it.' : `The table cannot be read: ${read.why}.`, 1);
    throw new BadInput(problems);
  }
  const columns = heading.cells.map((cell) => /^(\w+)\b\s*[[(]?\s*(.*?)\s*[\])]?$/.exec(cell));
  const find = (name: string): number => columns.findIndex((each) => each?.[1]?.toLowerCase() === name);
  const byLength = find('length') >= 0;
  const wanted = byLength ? ['length'] : ['x', 'y', 'z'];
  const numbers = [...wanted, ...(find('u') >= 0 ? ['u'] : [])];
  const metre = unitNamed('m')!.dimension;
  for (const name of numbers) {
    const unit = unitNamed(columns[find(name)]?.[2] ?? '');
    if (unit === undefined || !sameDimension(unit.dimension, metre))
      tell('made/heading', `The heading needs "${name}" with its unit, such as ${name} mm.`, heading.line);
  }
  if (find('pipe') < 0) tell('made/heading', 'The heading needs "pipe": the cylinder.', heading.line);
  if (byLength && find('along') < 0)
    tell('made/heading', `The heading needs "along": ${ALONG.join(', ')}.`, heading.line);
  const cells = rows.flatMap((row) => numbers.map((name) => row.cells[find(name)] ?? ''));
  const decimal = decimalSignOf(cells, delimiter);
  if (decimal === undefined)
    tell(
      'made/decimal',
      'The commas may part thousands or stand for the decimal sign; write points.',
      heading.line,
    );
  if (problems.length > 0 || decimal === undefined) throw new BadInput(problems);

  const made: MadePipe[] = [];
  for (const { cells: own, line } of rows) {
    const cell = (name: string): string => own[find(name)] ?? '';
    const [first, y, z] = wanted.map((name) => {
      const value = numberIn(cell(name), decimal);
      if (value === undefined) tell('made/number', `${name}: "${cell(name)}" is no number.`, line);
      return value === undefined ? 0 : toSI(value, columns[find(name)]![2]!);
    });
    const said = find('u') < 0 || cell('u') === '' ? undefined : numberIn(cell('u'), decimal);
    const u = said === undefined ? USUAL[byLength ? 'length' : 'point'] : toSI(said, columns[find('u')]![2]!);
    const pipe = cell('pipe');
    if (byLength) {
      const by = ALONG.find((each) => each === cell('along').toLowerCase());
      if (by === undefined) tell('made/along', `"${cell('along')}" is none of ${ALONG.join(', ')}.`, line);
      else made.push({ pipe, length: first!, u, by });
      continue;
    }
    const last = made.at(-1);
    const point = [first!, y!, z!] as const;
    if (last !== undefined && last.pipe === pipe && 'points' in last)
      made[made.length - 1] = { ...last, points: [...last.points, point] };
    else made.push({ pipe, points: [point], u });
  }
  if (problems.length > 0) throw new BadInput(problems);
  return made;
}
