/**
 * The files beside the car file that it names: what must be read before the car can be.
 *
 * In    the text of a car file, which may be wrong in any other respect
 * Out   the names as written, each once; none where the text cannot be read at all
 */
import { parseDocument } from 'yaml';
import { tooDeep } from './depth.ts';
import { lately } from './lately.ts';

type Mapping = Readonly<Record<string, unknown>>;

const mapping = (value: unknown): Mapping =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Mapping) : {};

const surveyFiles = (file: unknown): unknown[] =>
  Object.values(mapping(mapping(mapping(file).survey).sets)).map((set) => mapping(set).file);

const logFiles = (file: unknown): unknown[] =>
  Object.values(mapping(mapping(file).logs)).map((log) => mapping(log).file);

const scanFiles = (file: unknown): unknown[] =>
  Object.values(mapping(mapping(mapping(file).exhaust).scans)).map((scan) => mapping(scan).file);

/** Names of files, of the file's own state and of every spec. */
export interface NamedFiles {
  /** Without these the car cannot be read. */
  readonly survey: readonly string[];
  /** Without these only a row of them cannot be asked for. */
  readonly logs: readonly string[];
  /** Not text: read only when the exhaust is asked about. */
  readonly scans: readonly string[];
}

const NONE: NamedFiles = { survey: [], logs: [], scans: [] };

/** Texts whose names are kept: a floor asks for those of all its cars again and again. */
const MOST = 24;

export const namedFiles = lately(MOST, (a: string, b: string) => a === b, namedIn);

function namedIn(text: string): NamedFiles {
  if (tooDeep(text) !== undefined) return NONE;
  let file: unknown;
  try {
    file = parseDocument(text).toJS({ maxAliasCount: 50 });
  } catch {
    // what is wrong with the text is told when the car is read, here as above
    return NONE;
  }
  const specs = Object.values(mapping(mapping(file).specs)).map((spec) => mapping(spec).changes);
  const names = (of: (file: unknown) => unknown[]): readonly string[] => [
    ...new Set([file, ...specs].flatMap(of).filter((name) => typeof name === 'string')),
  ];
  return { survey: names(surveyFiles), logs: names(logFiles), scans: names(scanFiles) };
}
