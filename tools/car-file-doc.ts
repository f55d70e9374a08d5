/**
 * The tables of docs/car-file.md, made from the one description of the car file.
 *
 * In    the page, whose tables stand between `<!-- made: name -->` and `<!-- end: name -->`
 * Out   the page with those tables made anew; the text between them is written by hand and stays
 *
 *   node --import tsx tools/car-file-doc.ts     writes the page
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { carFileSchema, type SchemaNode } from '../src/car/schema.ts';
import { CLAMPED_MATERIALS, FASTENER_MATERIALS } from '../src/materials/fastener-material.ts';
import { LUBRICANTS } from '../src/materials/lubricant.ts';
import { SPRING_MATERIALS } from '../src/materials/spring-material.ts';
import { TUBE_MATERIALS } from '../src/materials/tube-material.ts';
import { INSTRUMENT_CLASSES, type InstrumentClass } from '../src/measured/instrument.ts';
import { plain } from '../src/units/show.ts';
import { fromSI, unitsLike } from '../src/units/unit.ts';

const PAGE = new URL('../docs/car-file.md', import.meta.url);

type Row = readonly string[];

/** Bars and line ends would break a table. */
const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('\n', ' ');

/** A column in which no row says anything is left out. */
function table(head: Row, rows: readonly Row[]): string {
  const said = head.map((_, column) => rows.some((row) => row[column] !== ''));
  return [head, head.map(() => '---'), ...rows]
    .map(
      (row) =>
        `| ${row
          .filter((_, column) => said[column])
          .map(cell)
          .join(' | ')} |`,
    )
    .join('\n');
}

const code = (text: string): string => `\`${text}\``;

const number = (value: number): string => String(Number(value.toPrecision(4)));

/** The node behind `mirrored`: what may stand on the left may stand on the right. */
const at = (...path: string[]): SchemaNode =>
  path.reduce(
    (node, key) =>
      key === '[]' ? node.items! : (node.properties?.[key] ?? (node.additionalProperties as SchemaNode)),
    carFileSchema(),
  );

function what(node: SchemaNode): string {
  const { reading, stated } = node;
  if (stated !== undefined) return `${number(stated.min)} to ${number(stated.max)} ${stated.unit}`.trimEnd();
  if (reading?.kind === 'point') return 'point';
  if (reading !== undefined) {
    const unit = reading.unit === '1' ? '' : ` ${reading.unit}`;
    return `${number(reading.min)} to ${number(reading.max)}${unit}`;
  }
  if (node.enum !== undefined)
    return node.enum.length > 12 ? 'a class from the table below' : node.enum.map(code).join(', ');
  if (node.items?.enum !== undefined) return `list of ${node.items.enum.map(code).join(', ')}`;
  if (node.items !== undefined) return 'list';
  if (node.type === 'integer') return 'a whole number';
  if (node.properties !== undefined) return 'keys';
  if (node.additionalProperties !== undefined && node.type === 'object') return 'names of your own';
  if ('const' in node) return code(String((node as { const: unknown }).const));
  if (node.anyOf !== undefined) return '`yes`, `no`';
  return node.title?.startsWith('day') === true ? 'a day, `2026-03-14`' : 'text';
}

/** One mapping of the file: a row for each key. */
function keys(node: SchemaNode): string {
  const needed = new Set(node.required ?? []);
  return table(
    ['Key', 'Means', 'May be', 'Needed', 'How to measure', 'Usual instrument'],
    Object.entries(node.properties!).map(([key, each]) => [
      code(key),
      each.title ?? (each.reading === undefined ? 'see below' : ''),
      what(each),
      needed.has(key) ? 'yes' : '',
      each.reading?.measure ?? (each.stated === undefined ? '' : (each.description ?? '')),
      each.reading === undefined || each.reading.kind === 'point' ? '' : each.reading.usual,
    ]),
  );
}

function points(): string {
  const node = at('front', 'left', 'points');
  const needed = new Set(node.required ?? []);
  return table(
    ['Key', 'Point', 'Needed', 'How to measure'],
    Object.entries(node.properties!).map(([key, each]) => [
      code(key),
      each.title!,
      needed.has(key) ? 'yes' : '',
      each.description!,
    ]),
  );
}

/** Units in which the trade speaks of each kind. */
const SPOKEN: Readonly<Record<string, string>> = {
  m: 'mm',
  rad: 'deg',
  'N/m': 'N/mm',
  'N m/rad': 'N m/deg',
  Pa: 'Pa',
  'm/s': 'mm/s',
};

function spreadWords(of: InstrumentClass): string {
  const parts = Object.entries(of.fixed)
    .filter(([, value]) => value > 0)
    .map(([si, value]) => `${number(fromSI(value, SPOKEN[si] ?? si))} ${SPOKEN[si] ?? si}`);
  if (of.relative > 0) parts.push(`${number(100 * of.relative)} % of the reading`);
  return parts.length === 0 ? 'none: taken as exact' : parts.join('; ');
}

const instruments = (): string =>
  table(
    ['Class', 'What it is', 'One standard uncertainty of one reading', 'Shared by all its readings'],
    INSTRUMENT_CLASSES.map((each: InstrumentClass) => [
      code(each.name),
      each.means,
      spreadWords(each),
      each.shared > 0 ? `${number(100 * each.shared)} % of the reading` : '',
    ]),
  );

const materials = (): string =>
  table(
    ['Name', 'For', 'What it is', 'Shear modulus'],
    SPRING_MATERIALS.map((each) => [
      code(each.name),
      each.kind,
      each.means,
      `${plain(each.shearModulus.value / 1e9, 1)} GPa`,
    ]),
  );

const fasteners = (): string =>
  table(
    ['Name', 'What it is', 'Proof', 'Yield', 'Strength'],
    FASTENER_MATERIALS.map(({ name, means, proof, yield: yields, strength }) => [
      code(name),
      means,
      ...[proof, yields, strength].map((each) => `${plain(each / 1e6, 0)} MPa`),
    ]),
  );

const clamped = (): string =>
  table(
    ['Name', "Young's modulus", 'Shear strength of its thread'],
    CLAMPED_MATERIALS.map(({ name, youngsModulus, shearStrength }) => [
      code(name),
      `${plain(youngsModulus / 1e9, 0)} GPa`,
      `${plain(shearStrength / 1e6, 0)} MPa`,
    ]),
  );

const lubricants = (): string =>
  table(
    ['Name', 'Friction, low to high', 'From'],
    LUBRICANTS.map(({ name, thread, source, known }) => [
      code(name),
      `${thread.low} to ${thread.high}`,
      `${source} (${known})`,
    ]),
  );

const tubes = (): string =>
  table(
    ['Name', 'What it is', 'Density', 'Growth hot', 'From'],
    TUBE_MATERIALS.map(({ name, means, density, expansion, source, known }) => [
      code(name),
      means,
      `${plain(density, 0)} kg/m³`,
      `${plain(expansion * 1e6, 1)}e-6 1/K`,
      `${source} (${known})`,
    ]),
  );

const KINDS = [
  ['length', 'm'],
  ['angle', 'rad'],
  ['mass', 'kg'],
  ['force', 'N'],
  ['pressure, modulus', 'Pa'],
  ['time', 's'],
  ['torque', 'N m'],
  ['acceleration', 'm/s^2'],
  ['volume', 'm^3'],
  ['speed of turning', 'rad/s'],
  ['power', 'W'],
] as const;

const units = (): string =>
  table(
    ['Kind', 'Units'],
    KINDS.map(([kind, si]) => [
      kind,
      unitsLike(si)
        .filter((name) => si !== 'rad' || !['1', '%', 'share'].includes(name))
        .map(code)
        .join(', '),
    ]),
  );

const TABLES: Readonly<Record<string, () => string>> = {
  file: () => keys(carFileSchema()),
  car: () => keys(at('car')),
  instrument: () => keys(at('instruments', '*')),
  body: () => keys(at('body')),
  brakes: () => keys(at('brakes')),
  brakeSystem: () => keys(at('brakes', 'system')),
  balanceBar: () => keys(at('brakes', 'system', 'bar')),
  axleBrakes: () => keys(at('brakes', 'system', 'front')),
  brakeWear: () => keys(at('brakes', 'system', 'front', 'wear', '[]')),
  brakeSheet: () => keys(at('engine', 'brakeSheet', '[]')),
  pressures: () => keys(at('pressures')),
  axlePressures: () => keys(at('pressures', 'front')),
  gearbox: () => keys(at('gearbox')),
  stockPair: () => keys(at('gearbox', 'stock', '[]')),
  rolling: () => keys(at('rolling')),
  underside: () => keys(at('underside')),
  fuel: () => keys(at('fuel')),
  air: () => keys(at('air')),
  rearWing: () => keys(at('air', 'rearWing')),
  masses: () => keys(at('masses')),
  engine: () => keys(at('engine')),
  lump: () => keys(at('masses', 'case')),
  boltedJoints: () => keys(at('joints')),
  boltedJoint: () => keys(at('joints', 'engineToTub')),
  stud: () => keys(at('joints', 'engineToTub', 'studs', '[]')),
  studSort: () => keys(at('joints', 'engineToTub', 'sorts', '*')),
  builder: () => keys(at('joints', 'engineToTub', 'sorts', '*', 'builder')),
  layer: () => keys(at('joints', 'engineToTub', 'sorts', '*', 'layers', '[]')),
  dowel: () => keys(at('joints', 'engineToTub', 'dowels', '[]')),
  plate: () => keys(at('joints', 'engineToTub', 'plates', '[]')),
  loadCase: () => keys(at('cases', '*')),
  contact: () => keys(at('cases', '*', 'contacts', 'frontLeft')),
  log: () => keys(at('logs', '*')),
  logColumns: () => keys(at('logs', '*', 'columns')),
  logColumn: () => keys(at('logs', '*', 'columns', 'longitudinal')),
  exhaust: () => keys(at('exhaust')),
  exhaustGiven: () => keys(at('exhaust', 'given')),
  exhaustTube: () => keys(at('exhaust', 'tube')),
  exhaustStep: () => keys(at('exhaust', 'tube', 'steps', '[]')),
  exhaustBends: () => keys(at('exhaust', 'bends')),
  exhaustClearances: () => keys(at('exhaust', 'clearances')),
  exhaustBank: () => keys(at('exhaust', 'left')),
  exhaustPort: () => keys(at('exhaust', 'left', 'ports', '[]')),
  exhaustCollector: () => keys(at('exhaust', 'left', 'collector')),
  exhaustCollectors: () => keys(at('exhaust', 'left', 'collectors', '[]')),
  exhaustSecondaries: () => keys(at('exhaust', 'left', 'secondaries')),
  exhaustTail: () => keys(at('exhaust', 'left', 'tail')),
  collectorFree: () => keys(at('exhaust', 'left', 'collector', 'free')),
  collectorRows: () => keys(at('exhaust', 'left', 'collector', 'rows')),
  exhaustRack: () => keys(at('exhaust', 'rack')),
  rackBend: () => keys(at('exhaust', 'rack', 'bends', '[]')),
  rackTube: () => keys(at('exhaust', 'rack', 'tubes', '[]')),
  exhaustFlange: () => keys(at('exhaust', 'flange')),
  flangeBolt: () => keys(at('exhaust', 'flange', 'bolts', '[]')),
  flangeStud: () => keys(at('exhaust', 'flange', 'stud')),
  exhaustHot: () => keys(at('exhaust', 'hot')),
  engineMoves: () => keys(at('exhaust', 'hot', 'engineMoves')),
  keepOut: () => keys(at('exhaust', 'keepOuts', '[]')),
  scan: () => keys(at('exhaust', 'scans', '*')),
  scanDatum: () => keys(at('exhaust', 'scans', '*', 'datums', '[]')),
  tubes,
  axle: () => keys(at('front')),
  corner: () => keys(at('front', 'left')),
  points,
  rod: () => keys(at('front', 'left', 'rod')),
  thread: () => keys(at('front', 'left', 'rod', 'thread')),
  otherThread: () => keys(at('front', 'left', 'rod', 'thread', 'other')),
  adjusters: () => keys(at('front', 'left', 'adjusters')),
  platform: () => keys(at('front', 'left', 'adjusters', 'platform')),
  anchor: () => keys(at('front', 'left', 'adjusters', 'anchor')),
  camberShims: () => keys(at('front', 'left', 'adjusters', 'camberShims')),
  casterShims: () => keys(at('front', 'left', 'adjusters', 'casterShims')),
  tyreSetting: () => keys(at('front', 'left', 'adjusters', 'tyre')),
  floor: () => keys(at('floor')),
  floorAboard: () => keys(at('floor', 'aboard', '*')),
  floorBallast: () => keys(at('floor', 'ballast', '*')),
  shim: () => keys(at('floor', 'shimBox', '[]')),
  floorPatch: () => keys(at('floor', 'patch')),
  floorSheet: () => keys(at('floor', 'sheet')),
  floorRead: () => keys(at('floor', 'read', '*')),
  floorClicks: () => keys(at('floor', 'read', '*', 'clicks', 'frontLeft')),
  wheel: () => keys(at('front', 'left', 'wheel')),
  coil: () => keys(at('front', 'left', 'coil')),
  helper: () => keys(at('front', 'left', 'coil', 'helper')),
  bar: () => keys(at('front', 'left', 'bar')),
  barEnd: () => keys(at('front', 'left', 'bar', 'rockerEnd')),
  damper: () => keys(at('front', 'left', 'damper')),
  damperCurve: () => keys(at('front', 'left', 'damper', 'curve', '[]')),
  bumpRubber: () => keys(at('front', 'left', 'bumpRubber')),
  rubberCurve: () => keys(at('front', 'left', 'bumpRubber', 'curve', '[]')),
  joint: () => keys(at('front', 'left', 'joints', 'upperOuter')),
  member: () => keys(at('front', 'left', 'members', 'rod')),
  screwedEnd: () => keys(at('front', 'left', 'members', 'rod', 'end')),
  spherical: () => keys(at('front', 'left', 'sphericals', 'upperOuter')),
  wheelBearings: () => keys(at('front', 'left', 'wheelBearings')),
  bearing: () => keys(at('front', 'left', 'wheelBearings', 'outer')),
  caliper: () => keys(at('front', 'left', 'wheelBearings', 'caliper')),
  rockerBearings: () => keys(at('front', 'left', 'rockerBearings')),
  steering: () => keys(at('front', 'steering')),
  antiRollBar: () => keys(at('front', 'antiRollBar')),
  roundBar: () => keys(at('front', 'antiRollBar', 'bar')),
  blade: () => keys(at('front', 'antiRollBar', 'leftBlade')),
  heave: () => keys(at('front', 'heave')),
  survey: () => keys(at('survey')),
  surveySet: () => keys(at('survey', 'sets', '*')),
  surveyLength: () => keys(at('survey', 'lengths', '[]')),
  surveyDatum: () => keys(at('survey', 'datum', '[]')),
  spec: () => keys(at('specs', '*')),
  instruments,
  materials,
  fasteners,
  clamped,
  lubricants,
  units,
};

/** The page with its tables made anew; an unknown name is our own mistake. */
export function withTables(page: string): string {
  return page.replace(/<!-- made: (\w+) -->[\s\S]*?<!-- end: \1 -->/g, (_, name: string) => {
    const make = TABLES[name];
    if (make === undefined) throw new Error(`docs/car-file.md asks for a table "${name}" that nobody makes`);
    return `<!-- made: ${name} -->\n${make()}\n<!-- end: ${name} -->`;
  });
}

/** Names of all tables, so that a test can ask whether the page has them. */
export const TABLE_NAMES: readonly string[] = Object.keys(TABLES);

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(PAGE, withTables(readFileSync(PAGE, 'utf8')));
}
