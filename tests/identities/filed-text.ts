/** The demo car's text as somebody might change it, read, and what is told of it. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { type CarRead, readCar } from '../../src/car/read.ts';
import type { Problem } from '../../src/measured/problem.ts';

export const TEXT = readFileSync(new URL('../../cars/fenwold-201/car.yaml', import.meta.url), 'utf8');

export const read = (text: string, spec?: string): CarRead =>
  readCar({ text, file: 'car.yaml', ...(spec === undefined ? {} : { spec }) });

/** The text with the first find of `what` changed; a test that changes nothing tests nothing. */
export function changed(what: string | RegExp, to: string, text = TEXT): string {
  const result = text.replace(what, to);
  assert.notEqual(result, text, `"${String(what)}" is not in the demo file`);
  return result;
}

export function problemsOf(text: string, spec?: string): readonly Problem[] {
  const result = read(text, spec);
  assert.equal(result.ok, false, 'the file was taken although it is wrong');
  return result.ok ? [] : result.problems;
}

export const lineOf = (text: string, what: string): number =>
  text.slice(0, text.indexOf(what)).split('\n').length;

/** One problem, with this code, at this text of the file. */
export function only(text: string, code: string, at: string): Problem {
  const problems = problemsOf(text);
  assert.deepEqual(
    problems.map((each) => each.code),
    [code],
    JSON.stringify(problems, undefined, 1),
  );
  const [problem] = problems;
  assert.equal(problem!.line, lineOf(text, at));
  assert.ok(problem!.column !== undefined && problem!.column >= 1);
  assert.ok(problem!.message.length > 10);
  return problem!;
}
