/**
 * What is wrong with the form of a car file, in the workshop's words, where the field itself has none of its own.
 *
 * In    an issue as the form's checker raises it
 * Out   the words behind the name of the place: `is nothing; its keys should stand below it`
 */
import type { z } from 'zod';

/** Told where nothing stands at all. */
export const MISSING = 'is missing';

/** What a value is, to one who writes the file. */
export function kindWords(value: unknown): string {
  if (value === undefined || value === null) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'keys with values';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'string' ? `"${value.slice(0, 40)}"` : String(value);
}

const WANTED: Readonly<Record<string, string>> = {
  object: 'its keys should stand below it',
  record: 'names with what they mean should stand below it',
  array: 'a list should stand here, a line with a dash for each',
  string: 'text should stand here',
  number: 'a number should stand here',
  int: 'a whole number should stand here',
  boolean: 'yes or no should stand here',
};

/** For zod's `error` of one parse; what the form says of itself goes before it. */
export function formWords(issue: z.core.$ZodRawIssue): string {
  if (issue.code === 'invalid_type') {
    if (issue.input === undefined) return MISSING;
    return `is ${kindWords(issue.input)}; ${WANTED[issue.expected] ?? 'something else should stand here'}`;
  }
  if (issue.code === 'invalid_value') return `is ${kindWords(issue.input)}; ${choiceWords(issue.values)}`;
  if (issue.code === 'too_small') return `has too little: at least ${issue.minimum} should stand here`;
  if (issue.code === 'too_big') return `has too much: at most ${issue.maximum} should stand here`;
  return `is ${kindWords(issue.input)}, which cannot be here`;
}

const choiceWords = (values: readonly unknown[]): string =>
  values.length === 1 ? `it must be ${String(values[0])}` : `it must be one of: ${values.join(', ')}`;
