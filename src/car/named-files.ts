/**
 * The files beside the car file that it names: what must be read before the car can be.
 *
 * In    the text of a car file, which may be wrong in any other respect
 * Out   the names as written, each once; none where the text cannot be read at all
 */
import { parseDocument } from 'yaml';
import { tooDeep } from './depth.ts';

type Mapping = Readonly<Record<string, unknown>>;

const mapping = (value: unknown): Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Mapping) : {};

const surveyFiles = (file: unknown): unknown[] =>
  Object.values(mapping(mapping(mapping(file).survey).sets)).map((set) => mapping(set).file);

/** Names of the survey's CSV files, of the file's own state and of every spec. */
export function namedFiles(text: string): readonly string[] {
  if (tooDeep(text) !== undefined) return [];
  let file: unknown;
  try {
    file = parseDocument(text).toJS({ maxAliasCount: 50 });
  } catch {
    // what is wrong with the text is told when the car is read, here as above
    return [];
  }
  const specs = Object.values(mapping(mapping(file).specs)).map((spec) => mapping(spec).changes);
  const names = [file, ...specs].flatMap(surveyFiles).filter((name) => typeof name === 'string');
  return [...new Set(names)];
}
