/** Readings of the flat floor as they stand on paper: short names, the unit of each kind, and how many places it is read to. */
import { plain, printedUnit, type Speech, spokenUnit, unitAfter } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';

interface Said {
  readonly name: string;
  readonly units: readonly [string, string];
  readonly digits: readonly [number, number];
}

const MM: Pick<Said, 'units' | 'digits'> = { units: ['mm', 'in'], digits: [1, 3] };
const DEG: Pick<Said, 'units' | 'digits'> = { units: ['deg', 'deg'], digits: [2, 2] };
const KG: Pick<Said, 'units' | 'digits'> = { units: ['kg', 'lb'], digits: [1, 1] };
const SHARE: Pick<Said, 'units' | 'digits'> = { units: ['%', '%'], digits: [1, 1] };

const KINDS: Readonly<Record<string, Said>> = {
  pressure: { name: 'pressure', units: ['bar', 'psi'], digits: [2, 1] },
  weight: { name: 'weight', ...KG },
  height: { name: 'height', ...MM },
  caster: { name: 'caster', ...DEG },
  camber: { name: 'camber', ...DEG },
  toe: { name: 'toe', ...DEG },
  toeAtRim: { name: 'toe at rim', ...MM },
  droop: { name: 'droop', ...MM },
  total: { name: 'whole', ...KG },
  cross: { name: 'cross weight', ...SHARE },
  frontShare: { name: 'front share', ...SHARE },
  leftShare: { name: 'left share', ...SHARE },
  rake: { name: 'rake', ...MM },
  track: { name: 'track', ...MM },
  wheelbase: { name: 'wheelbase', ...MM },
};

/** The names of the readings that a sheet of the floor has room for. */
export const isSaid = (id: string): boolean => kindOf(id) in KINDS;

export const kindOf = (id: string): string => id.split('.')[0]!;
const placeOf = (id: string): string => id.slice(id.indexOf('.') + 1);

const unitOf = (id: string, speech: Speech): string => KINDS[kindOf(id)]!.units[speech === 'mm-N' ? 0 : 1];
const digitsOf = (id: string, speech: Speech): number => KINDS[kindOf(id)]!.digits[speech === 'mm-N' ? 0 : 1];

/** `camber °`, `track front mm`: name with its unit, for the head of a row or a column. */
export function rowWords(id: string, speech: Speech): string {
  const { name } = KINDS[kindOf(id)]!;
  const of = id.includes('.') ? ` ${placeOf(id)}` : '';
  return `${name}${of} ${printedUnit(unitOf(id, speech))}`;
}

/** The same without the place: where the place is the table itself. */
export const kindWords = (id: string, speech: Speech): string => rowWords(kindOf(id), speech);

/** The height at a measuring point that has no wheel of its own: `ht nose mm`. */
export const heightWords = (name: string, speech: Speech): string =>
  `ht ${name} ${printedUnit(unitOf('height', speech))}`;

/** A value without its unit. @param finer  places more than are read */
export const bareWords = (id: string, value: number, speech: Speech, finer = 0): string =>
  plain(fromSI(value, unitOf(id, speech)), digitsOf(id, speech) + finer);

/** A tolerance or spread: to hundredths where tenths are read, `0.25`, and no nought behind it. */
export function finerWords(id: string, value: number, speech: Speech): string {
  const finer = digitsOf(id, speech) === 1 ? 1 : 0;
  const text = bareWords(id, value, speech, finer);
  return text.endsWith('0') ? text.slice(0, -1) : text;
}

/** What one unit of an adjuster does: a place more than is read, but for inches, which are read to thousandths. */
export const effectWords = (id: string, value: number, speech: Speech): string =>
  bareWords(id, value, speech, digitsOf(id, speech) > 2 ? 0 : 1);

/** `35.0 ±0.5`. */
export const wantedWords = (
  { id, value, tolerance }: { readonly id: string; readonly value: number; readonly tolerance: number },
  speech: Speech,
): string => `${bareWords(id, value, speech)} ±${finerWords(id, tolerance, speech)}`;

/** A number and its unit are not parted at the end of a line. */
const together = (words: string): string => words.replaceAll(' ', '\u00a0');

/** A length in a sentence of the card: hundredths of a millimetre, or thousandths of an inch. */
export function lengthSaid(metres: number, speech: Speech): string {
  const unit = spokenUnit('m', speech);
  return together(`${plain(fromSI(metres, unit), speech === 'mm-N' ? 2 : 3)}${unitAfter(printedUnit(unit))}`);
}

export const pressureSaid = (pascals: number, speech: Speech): string =>
  together(`${bareWords('pressure', pascals, speech)} ${printedUnit(unitOf('pressure', speech))}`);
