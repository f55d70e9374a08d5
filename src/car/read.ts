/**
 * From the text of a car file to a car: everything that is wrong told at once, with line and column.
 *
 * In    the text of `car.yaml`, the texts of the files it names, and which spec is meant
 * Out   a car whose readings are numbered, or the list of problems
 */
import { type Document, LineCounter, parseDocument } from 'yaml';
import type { z } from 'zod';
import { nearest, type Problem } from '../measured/problem.ts';
import type { Reading } from '../measured/reading.ts';
import type { SpreadInput } from '../measured/spread.ts';
import { checkCar } from './check.ts';
import { instrumentSpreads } from './check-parts.ts';
import { DEEPEST, tooDeep } from './depth.ts';
import type { FieldNotes } from './field.ts';
import { CAR_FILE_VERSION, carFile, type RawCar } from './form/car.ts';
import { formWords, MISSING } from './form-words.ts';
import { type Locator, locator } from './locate.ts';
import { type Placed, placeReadings } from './place.ts';
import { keysAt, type Path, schemaAt } from './schema.ts';
import { expandMirrored, mergePatch, openMirrored, specChain } from './spec.ts';
import { spreadInputs } from './spread-inputs.ts';
import { type SurveyOutcome, surveyOf } from './surveyed.ts';
import { withTableModuli } from './table-values.ts';
import { upgrade } from './upgrade.ts';
import { unfoldingWords, yamlWords } from './yaml-words.ts';

export interface CarSource {
  /** The text of car.yaml. */
  readonly text: string;
  /** Name of the file, for messages. */
  readonly file?: string;
  /** Texts of the files that it names, by name. */
  readonly files?: Readonly<Record<string, string>>;
  /** The spec meant; left out, the file as it stands. */
  readonly spec?: string;
}

export type CarForm = Placed<RawCar>;

export interface Car {
  readonly form: CarForm;
  /** Name of the spec that this is. */
  readonly spec: string;
  /** Names of all specs of the file, the file's own state first. */
  readonly specs: readonly string[];
  readonly readings: readonly Reading[];
  /** The readings' values, SI, by index. */
  readonly values: Float64Array;
  /** What moves when the readings move: the inputs of every spread. */
  readonly inputs: readonly SpreadInput[];
  /** What the survey came to, when the file has one. */
  readonly survey?: SurveyOutcome;
  readonly warnings: readonly Problem[];
}

export type CarRead =
  | { readonly ok: true; readonly car: Car }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What the file itself is called when it gives its own state no name. */
export const AS_FILED = 'as filed';

/** A file longer than this is no car file; a mesh belongs beside it. */
const LONGEST_FILE = 4_000_000;

/** Errors of the writing that are told at once. */
const MOST_YAML_ERRORS = 10;

export function readCar(source: CarSource): CarRead {
  const problems: Problem[] = [];
  const lines = new LineCounter();
  if (source.text.length > LONGEST_FILE) {
    return failed([
      {
        ...bare(
          'file/too-long',
          'The file is longer than any car file; a mesh or log belongs in a file of its own beside it.',
        ),
        ...named(source),
      },
    ]);
  }
  const deep = tooDeep(source.text);
  if (deep !== undefined) {
    return failed([
      {
        ...bare(
          'file/too-deep',
          `From here on the file nests more than ${DEEPEST} deep, as no car file does.`,
        ),
        remedy: 'Look for a bracket that is opened and never closed.',
        ...named(source),
        ...deep,
      },
    ]);
  }
  const document = parseDocument(source.text, { lineCounter: lines, prettyErrors: false, uniqueKeys: true });
  // what comes after the first few is mostly said because of them
  for (const error of document.errors.slice(0, MOST_YAML_ERRORS)) {
    const { line, col } = lines.linePos(error.pos[0]);
    const { message, remedy } = yamlWords(error.code, source.text.slice(error.pos[0], error.pos[0] + 200));
    problems.push({ ...bare('file/yaml', `${message}.`), remedy, ...named(source), line, column: col });
  }
  if (problems.length > 0) return failed(problems);
  return read(source, document, lines);
}

function read(source: CarSource, document: Document, lines: LineCounter): CarRead {
  let plain: unknown;
  try {
    plain = document.toJS({ maxAliasCount: 50 });
  } catch (reason) {
    return failed([
      {
        ...bare('file/yaml', `The file cannot be unfolded: ${unfoldingWords(reason)}.`),
        ...named(source),
      },
    ]);
  }
  if (typeof plain !== 'object' || plain === null || Array.isArray(plain)) {
    return failed([
      {
        ...bare(
          'file/empty',
          'This is not a car file: it must be a list of keys, starting with flatpatch: 1.',
        ),
        remedy: 'docs/car-file.md shows a whole file.',
        ...named(source),
        line: 1,
        column: 1,
      },
    ]);
  }
  const upgraded = upgrade(plain as Record<string, unknown>);
  if (!upgraded.ok) {
    const here = locator(document, lines, [], []).valueAt(['flatpatch']);
    return failed([{ ...bare('file/version', upgraded.why), path: 'flatpatch', ...named(source), ...here }]);
  }
  const specs = specsOf(upgraded.file);
  const own = typeof upgraded.file.spec === 'string' ? upgraded.file.spec : AS_FILED;
  const wanted = source.spec ?? own;
  const chain = wanted === own ? { names: [] } : specChain(specs, wanted);
  if (chain.error !== undefined) {
    const near = nearest(wanted, [own, ...Object.keys(specs)]);
    return failed([
      {
        ...bare('spec/unknown', `The car has no such spec: ${chain.error}.`),
        remedy: `It has: ${[own, ...Object.keys(specs)].join(', ')}.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
        ...named(source),
      },
    ]);
  }
  const patched = chain.names.reduce<unknown>((car, name) => {
    const changes = specs[name]!.changes ?? {};
    return mergePatch(openMirrored(car, changes), changes);
  }, upgraded.file);
  const mirrored = expandMirrored(patched);
  const where = locator(document, lines, chain.names, mirrored.taken);
  const problems: Problem[] = mirrored.empty.map((path) => ({
    ...bare(
      'mirror/nothing-there',
      `${placeWords(path)}: says "mirrored", but there is nothing on the left to take.`,
    ),
    path: path.join('.'),
    ...named(source),
    ...where.valueAt(path),
  }));
  const parsed = carFile.safeParse(mirrored.car, { error: formWords });
  if (!parsed.success) {
    // what is wrong on a mirrored side stands on the left and is told there
    const own = parsed.error.issues.filter(
      (issue) => !mirrored.taken.some(({ path }) => startsWith(issue.path as Path, path)),
    );
    problems.push(...own.flatMap((issue) => problemsOf(issue, where, source)));
  }
  // every spec is checked, so that a slip in a proposal is told when it is made and not when it is opened
  for (const name of Object.keys(specs)) {
    const other = specChain(specs, name);
    if (other.error !== undefined) {
      problems.push({
        ...bare('spec/chain', `Spec "${name}": ${other.error}.`),
        path: `specs.${name}.from`,
        ...named(source),
        ...where.valueAt(['specs', name]),
      });
    }
  }
  if (!parsed.success || problems.length > 0) return failed(problems);
  return assemble(source, parsed.data, mirrored.taken, where, {
    own,
    wanted,
    all: [own, ...Object.keys(specs)],
  });
}

function assemble(
  source: CarSource,
  raw: RawCar,
  taken: ReturnType<typeof expandMirrored>['taken'],
  where: Locator,
  spec: { readonly own: string; readonly wanted: string; readonly all: readonly string[] },
): CarRead {
  const survey = surveyOf(
    raw,
    source.files ?? {},
    taken.map(({ path }) => path.join('.')),
  );
  const placing = withTableModuli(placeReadings(raw, raw.instruments ?? {}, taken, survey.pointAt));
  const located = (problem: Problem): Problem => ({
    ...problem,
    ...(problem.file === undefined
      ? {
          ...named(source),
          ...where.valueAt(problem.path === '' ? [] : problem.path.split('.').map(pathKey)),
        }
      : {}),
  });
  const found = [
    ...survey.problems,
    ...instrumentSpreads(raw),
    ...placing.unknownInstruments.map(({ path, name }): Problem => {
      const near = nearest(name, Object.keys(raw.instruments ?? {}));
      return {
        ...bare(
          'instrument/unknown',
          `${placeWords(path)}: was read with "${name}", which is not among the instruments.`,
        ),
        remedy: `Add it under instruments with its class.${near === undefined ? '' : ` Did you mean "${near}"?`}`,
        path: path.join('.'),
      };
    }),
    ...checkCar(placing.car),
  ]
    .filter((problem, _, all) => !toldOnTheLeft(problem, all, taken))
    .map(located);
  const errors = found.filter((problem) => problem.weight === 'error');
  if (errors.length > 0) return failed(errors);
  return {
    ok: true,
    car: {
      form: placing.car,
      spec: spec.wanted,
      specs: spec.all,
      readings: placing.readings,
      values: placing.values,
      inputs: spreadInputs(placing.readings, survey.outcome),
      ...(survey.outcome === undefined ? {} : { survey: survey.outcome }),
      warnings: found.filter((problem) => problem.weight === 'warning'),
    },
  };
}

/** What a mirrored part has wrong is told where it is written, once. */
function toldOnTheLeft(
  problem: Problem,
  all: readonly Problem[],
  taken: readonly { readonly path: Path; readonly from: Path }[],
): boolean {
  const mirror = taken.find(
    ({ path }) => problem.path === path.join('.') || problem.path.startsWith(`${path.join('.')}.`),
  );
  if (mirror === undefined) return false;
  const twin = mirror.from.join('.') + problem.path.slice(mirror.path.join('.').length);
  return all.some((other) => other.code === problem.code && other.path === twin);
}

const startsWith = (path: Path, head: Path): boolean => head.every((key, index) => key === path[index]);

const pathKey = (part: string): string | number => (/^\d+$/.test(part) ? Number(part) : part);

const failed = (problems: readonly Problem[]): CarRead => ({ ok: false, problems });

const bare = (code: string, message: string): Problem => ({ code, message, path: '', weight: 'error' });

const named = (source: CarSource): { file?: string } =>
  source.file === undefined ? {} : { file: source.file };

function specsOf(
  file: Readonly<Record<string, unknown>>,
): Record<string, { from?: string; changes?: unknown }> {
  const { specs } = file;
  if (typeof specs !== 'object' || specs === null || Array.isArray(specs)) return {};
  return Object.fromEntries(
    Object.entries(specs).filter(([, each]) => typeof each === 'object' && each !== null),
  );
}

/** The place in the trade's words: `Front left, bar diameter`. */
export function placeWords(path: Path): string {
  const [end, side, ...rest] = path;
  const corner = (end === 'front' || end === 'rear') && (side === 'left' || side === 'right');
  const title = schemaAt(path)?.title;
  const tail = title ?? (corner ? rest : path).join(', ');
  const head = corner
    ? `${capital(String(end))} ${side}`
    : end === 'front' || end === 'rear'
      ? capital(end)
      : '';
  if (head === '') return tail === '' ? 'The file' : capital(tail);
  return tail === '' || path.length <= 2 ? head : `${head}, ${tail}`;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

function problemsOf(issue: z.core.$ZodIssue, where: Locator, source: CarSource): Problem[] {
  const path = issue.path as Path;
  const base = { path: path.join('.'), weight: 'error', ...named(source) } as const;
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => {
      const near = nearest(key, keysAt(path));
      return {
        ...base,
        code: 'field/unknown-key',
        path: [...path, key].join('.'),
        message: `${placeWords(path)} has "${key}", which is not a key here.`,
        remedy:
          near === undefined ? `What may stand here: ${keysAt(path).join(', ')}.` : `Did you mean "${near}"?`,
        ...where.keyAt([...path, key]),
      };
    });
  }
  const params = (issue.code === 'custom' ? issue.params : undefined) as
    | { code?: string; notes?: FieldNotes }
    | undefined;
  const at = where.valueAt(path);
  if (params?.notes !== undefined) {
    return [
      {
        ...base,
        code: params.code ?? 'field/form',
        message:
          params.code === 'field/missing'
            ? `${placeWords(path)} is missing (key ${String(path.at(-1))}).`
            : `${placeWords(path)} ${issue.message}.`,
        remedy: params.notes.measure,
        ...at,
      },
    ];
  }
  const options = schemaAt(path)?.enum;
  if (issue.code === 'invalid_value' && options !== undefined) {
    return [
      {
        ...base,
        code: 'field/choice',
        message: `${placeWords(path)} must be one of: ${options.join(', ')}.`,
        ...at,
      },
    ];
  }
  const missing = issue.message === MISSING;
  return [
    {
      ...base,
      code: missing ? 'field/missing' : 'field/form',
      message: missing
        ? `${placeWords(path)} is missing (key ${String(path.at(-1))}).`
        : `${placeWords(path)} ${issue.message}.`,
      ...(missing && keysAt(path).length > 0 ? { remedy: `It holds: ${keysAt(path).join(', ')}.` } : {}),
      ...at,
    },
  ];
}

export { CAR_FILE_VERSION };
