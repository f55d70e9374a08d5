/**
 * Who may import whom, and what the pure rooms may not touch.
 *
 * In    the sources under src/
 * Out   a list of breaches, each with file and what was reached for
 *
 * Imports are read by TypeScript's own scanner, so that type-only imports, re-exports and import() count too.
 */
import { readdirSync, readFileSync } from 'node:fs';
import { join, posix, relative, sep } from 'node:path';
import ts from 'typescript';

interface Room {
  /** Rooms that it may import, beside itself. */
  readonly rooms: readonly string[];
  /** Packages that it may import; a path below a package counts as the package. */
  readonly packages: readonly string[];
  /** Computes from what it is handed: no clock, chance, files, network, page. */
  readonly pure: boolean;
}

const GROUND = ['units', 'maths', 'geometry', 'materials', 'measured', 'working'] as const;

const pure = (rooms: readonly string[], packages: readonly string[] = []): Room => ({
  rooms,
  packages,
  pure: true,
});
const shell = (rooms: readonly string[], packages: readonly string[]): Room => ({
  rooms,
  packages,
  pure: false,
});

const DOOR = [...GROUND, 'survey', 'car', 'loadpath', 'flatfloor', 'gaspath', 'questions'] as const;

export const ROOMS: Readonly<Record<string, Room>> = {
  units: pure([]),
  maths: pure([], ['ml-matrix']),
  geometry: pure(['units', 'maths'], ['ml-matrix']),
  materials: pure(['units', 'maths']),
  measured: pure(['units', 'maths'], ['csv-parse']),
  working: pure(['units']),
  survey: pure(['units', 'maths', 'geometry', 'materials', 'measured', 'working'], ['ml-matrix']),
  // a log of the car at work, as a table of numbers
  logged: pure(['units', 'maths', 'measured']),
  // a surface as a scanner gives it
  scan: pure(['units', 'maths', 'geometry', 'measured'], ['zod']),
  car: pure([...GROUND, 'survey'], ['yaml', 'zod']),
  loadpath: pure([...GROUND, 'car'], ['ml-matrix']),
  // set-up on four pads
  flatfloor: pure([...GROUND, 'car', 'loadpath']),
  // routing and cutting of the exhaust
  gaspath: pure([...GROUND, 'car'], ['ml-matrix']),
  questions: pure(
    [...GROUND, 'survey', 'logged', 'scan', 'car', 'loadpath', 'flatfloor', 'gaspath'],
    ['zod'],
  ),
  sheets: pure(DOOR),
  // the workshop's folder on disk: what car files there are, reading them, saving them
  workshop: shell(['units', 'measured', 'car'], ['node', 'yaml']),
  paper: shell(['units', 'measured', 'car', 'questions', 'sheets'], ['node', 'pdfkit']),
  // drawings and solids for other programs and for the cutting table: wraps, DXF, STEP, STL, GLB
  drafts: shell(
    ['units', 'maths', 'gaspath', 'questions', 'sheets', 'paper'],
    ['node', 'pdfkit', '@tarikjabiri/dxf', 'replicad', 'replicad-opencascadejs'],
  ),
  server: shell(
    ['units', 'measured', 'car', 'questions', 'sheets', 'paper', 'workshop'],
    ['node', 'hono', '@hono/node-server'],
  ),
  cli: shell(
    ['units', 'measured', 'working', 'car', 'questions', 'sheets', 'paper', 'drafts', 'workshop', 'server'],
    ['node', 'commander', 'zod'],
  ),
  web: shell(
    ['units', 'maths', 'geometry', 'measured', 'working', 'car', 'questions', 'sheets'],
    [
      'react',
      'react-dom',
      'three',
      'uplot',
      '@fontsource/atkinson-hyperlegible-next',
      '@fontsource/atkinson-hyperlegible-mono',
    ],
  ),
};

/** Names that reach for the clock, for chance or for the world outside. */
const FORBIDDEN: readonly { readonly name: string; readonly pattern: RegExp }[] = [
  { name: 'Math.random', pattern: /\bMath\s*(?:\.\s*random|\[)/ },
  { name: 'Date.now', pattern: /\bDate\s*\.\s*now\b/ },
  { name: 'new Date()', pattern: /\bnew\s+Date\b(?!\s*\(\s*[^)\s])/ },
  { name: 'process', pattern: /\bprocess\s*[.[]/ },
  { name: 'performance', pattern: /\bperformance\s*\./ },
  { name: 'fetch', pattern: /\bfetch\s*\(/ },
  { name: 'crypto', pattern: /\bcrypto\s*\./ },
  { name: 'eval', pattern: /\beval\s*\(|\bnew\s+Function\b/ },
  { name: 'import.meta', pattern: /\bimport\s*\.\s*meta\b/ },
];

export interface Source {
  /** From the repository's root, with forward slashes: `src/units/unit.ts`. */
  readonly path: string;
  readonly text: string;
}

export interface Breach {
  readonly path: string;
  readonly what: string;
}

/** All sources below a folder of the repository. */
export function sourcesUnder(root: string, folder = 'src'): readonly Source[] {
  return readdirSync(join(root, folder), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && /\.(ts|tsx)$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
    .sort()
    .map((file) => ({ path: relative(root, file).split(sep).join('/'), text: readFileSync(file, 'utf8') }));
}

export function breaches(sources: readonly Source[]): readonly Breach[] {
  return sources.flatMap((source) => {
    const name = source.path.split('/')[1]!;
    const room = ROOMS[name];
    if (room === undefined)
      return [{ path: source.path, what: `there is no room "${name}" in tools/rooms.ts` }];
    return [
      ...importsOf(source).flatMap((specifier) => forbiddenImport(source.path, name, room, specifier)),
      ...(room.pure ? reachesOut(source) : []),
    ];
  });
}

const importsOf = (source: Source): readonly string[] =>
  ts.preProcessFile(source.text, true, true).importedFiles.map((each) => each.fileName);

function forbiddenImport(path: string, own: string, room: Room, specifier: string): Breach[] {
  if (!specifier.startsWith('.')) {
    const packageName = specifier.startsWith('node:')
      ? 'node'
      : specifier
          .split('/')
          .slice(0, specifier.startsWith('@') ? 2 : 1)
          .join('/');
    return room.packages.includes(packageName)
      ? []
      : [{ path, what: `${own} may not import the package ${specifier}` }];
  }
  const target = posix.join(posix.dirname(path), specifier).split('/');
  // styles, pictures and fonts of the page are no code
  if (own === 'web' && /\.(css|svg|woff2?)$/.test(specifier)) return [];
  if (target[0] !== 'src') return [{ path, what: `imports ${specifier}, which is outside src` }];
  const other = target[1]!;
  return other === own || room.rooms.includes(other)
    ? []
    : [{ path, what: `${own} may not import ${other} (${specifier})` }];
}

/** The text without comments and without the contents of strings, so that words in them do not count. */
function bareCode(text: string, jsx: boolean): string {
  const file = ts.createSourceFile(jsx ? 'x.tsx' : 'x.ts', text, ts.ScriptTarget.Latest, true);
  const pieces: string[] = [];
  const walk = (node: ts.Node): void => {
    const children = node.getChildren(file);
    if (children.length > 0) children.forEach(walk);
    else if (!ts.isStringLiteralLike(node) && !ts.isRegularExpressionLiteral(node))
      pieces.push(node.getText(file));
  };
  walk(file);
  return pieces.join(' ');
}

function reachesOut(source: Source): Breach[] {
  const code = bareCode(source.text, source.path.endsWith('x'));
  return FORBIDDEN.filter(({ pattern }) => pattern.test(code)).map(({ name }) => ({
    path: source.path,
    what: `reaches for ${name}; a pure room is handed what it needs`,
  }));
}

/** Files so long that they must be split, and are no tables. */
export const LONGEST = 400;

/** Long because they are one table: rows, not logic. */
export const TABLES: readonly string[] = [];

export function tooLong(sources: readonly Source[]): readonly Breach[] {
  return sources
    .map(({ path, text }) => ({ path, lines: text.split('\n').length - 1 }))
    .filter(({ path, lines }) => lines > LONGEST && !TABLES.includes(path))
    .map(({ path, lines }) => ({ path, what: `has ${lines} lines; split it at ${LONGEST}` }));
}
