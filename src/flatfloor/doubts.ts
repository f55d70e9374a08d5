/**
 * Which reading not to trust: what contradicts the car, the other readings, or itself.
 *
 * In    a sheet, the car as surveyed under the same known changes, the fit of the readings
 * Out   doubts in words, the worst first
 *
 * Each reading's residual is held against its own uncertainty, which is less than that of the reading as far as the
 * reading helped to make the fit. The largest beyond 3.29 is to be read again first; only then the next.  [FF-25]
 *
 * [B] Baarda, A Testing Procedure for Use in Geodetic Networks, 1968: data snooping, w-test, 3.29 at one in a
 *     thousand (from memory)
 */
import { WHEEL_NAMES } from '../loadpath/loads/doing.ts';
import { spokenAmount } from '../units/show.ts';
import type { FloorCar } from './floor-car.ts';
import { type Found, type Hidden, variance } from './found.ts';
import { readingWords } from './reading-words.ts';
import type { Sheet, SheetReading } from './sheet.ts';
import type { FloorStanding } from './stand.ts';

export interface Doubt {
  readonly code: string;
  readonly message: string;
  readonly remedy: string;
  /** Readings that it is about, by their places in the file. */
  readonly paths: readonly string[];
  /** An error must be mended before the sheet is used. */
  readonly weight: 'error' | 'warning';
}

/** Beyond this a residual is one in a thousand, if its uncertainty is what it says.  [B] */
export const DOUBTED = 3.29;

/** What a sheet shows before anything is fitted to it. */
export function doubtsAtSight(
  car: FloorCar,
  sheet: Sheet,
  surveyed: FloorStanding,
  hidden: readonly Hidden[],
): readonly Doubt[] {
  return [
    ...unknownPoints(sheet, surveyed),
    ...emptyPads(sheet),
    ...wrongTotal(sheet, surveyed),
    ...turnedSigns(sheet, surveyed, hidden),
    ...twistedTub(car, sheet),
  ];
}

const readingIn = (sheet: Sheet, id: string): SheetReading | undefined =>
  sheet.readings.find((each) => each.id === id);

function unknownPoints(sheet: Sheet, surveyed: FloorStanding): Doubt[] {
  return sheet.readings
    .filter(({ id }) => !surveyed.readings.has(id))
    .map(({ id, path }) => ({
      code: 'sheet/unknown-reading',
      message: `${sheet.name}: ${readingWords(id)} is read, but the car has no such thing.`,
      remedy: id.startsWith('height.')
        ? 'Name the measuring point under floor, heights, with its place on the tub.'
        : 'The car file must describe what was read, such as the damper whose droop it is.',
      paths: [path],
      weight: 'error' as const,
    }));
}

/** A pad below this carries no wheel, kg. */
const EMPTY_PAD = 5;

/** Pads that carry no wheel. */
export function emptyPads(sheet: Pick<Sheet, 'name' | 'readings'>): Doubt[] {
  return sheet.readings
    .filter(({ id, value }) => id.startsWith('weight.') && value < EMPTY_PAD)
    .map(({ id, value, path }) => ({
      code: 'sheet/empty-pad',
      message: `${sheet.name}: ${readingWords(id)} is ${spokenAmount(value, 'kg', 1)}: the wheel is off its pad, or the pad is not read.`,
      remedy: 'Look at cable and zero of the pad, roll the car off and on, and read again.',
      paths: [path],
      weight: 'error' as const,
    }));
}

/** Kilograms that fuel and driver may be off without anybody knowing: common practice, no source. */
const MASS_KNOWN = 3;

/** Four pads that do not add up to the car. */
export function wrongTotal(sheet: Sheet, surveyed: FloorStanding): Doubt[] {
  const read = WHEEL_NAMES.map((wheel) => readingIn(sheet, `weight.${wheel}`));
  if (read.some((each) => each === undefined)) return [];
  const total = read.reduce((sum, each) => sum + each!.value, 0);
  const known = surveyed.readings.get('total')!.value;
  const u = Math.hypot(MASS_KNOWN, ...read.map((each) => each!.u), total * read[0]!.shared);
  if (Math.abs(total - known) <= DOUBTED * u) return [];
  return [
    {
      code: 'sheet/total',
      message: `${sheet.name}: the four pads add up to ${spokenAmount(total, 'kg', 1)}; the car with what is aboard is ${spokenAmount(known, 'kg', 1)}.`,
      remedy:
        'Put a known mass on each pad in turn; then look whether driver, fuel and ballast are what the sheet says, and write what was aboard.',
      paths: read.map((each) => each!.path),
      weight: 'warning',
    },
  ];
}

/** How badly a reading suits the car as surveyed, in its own spread and what may have moved since. */
function misfit(
  reading: SheetReading,
  value: number,
  surveyed: FloorStanding,
  hidden: readonly Hidden[],
): number {
  const expected = surveyed.readings.get(reading.id)!;
  const moved = hidden.reduce((sum, { change, prior }) => sum + (expected.by[change]! * prior) ** 2, 0);
  // a set-up is seldom further from the survey than this part of what could have been moved
  return (value - expected.value) ** 2 / (reading.u ** 2 + 0.02 * moved);
}

/** How much better the other way must suit before it is asked about. */
const CLEARLY = 14;

function turnedSigns(sheet: Sheet, surveyed: FloorStanding, hidden: readonly Hidden[]): Doubt[] {
  return ['toe', 'toeAtRim', 'camber'].flatMap((kind): Doubt[] => {
    const turned = WHEEL_NAMES.flatMap((wheel) => {
      const reading = readingIn(sheet, `${kind}.${wheel}`);
      if (reading === undefined || Math.abs(reading.value) < 2 * reading.u) return [];
      const gain =
        misfit(reading, reading.value, surveyed, hidden) - misfit(reading, -reading.value, surveyed, hidden);
      return gain > CLEARLY ? [reading] : [];
    });
    if (turned.length === 0) return [];
    return [
      {
        code: 'sheet/sign',
        message: `${sheet.name}: ${turned.map(({ id }) => readingWords(id)).join(', ')}: with the other sign ${turned.length === 1 ? 'it' : 'they'} would suit the car as surveyed far better.`,
        remedy:
          kind === 'camber'
            ? 'Camber is negative where the top leans inboard. Look at the wheel and write it again.'
            : 'Toe is positive in. Strings and plates count opposite ways: look at the wheel and write it again.',
        paths: turned.map(({ path }) => path),
        weight: 'warning',
      },
    ];
  });
}

/** Heights of four points that a stiff tub cannot have: the fourth follows from three.  [FF-26] */
function twistedTub(car: FloorCar, sheet: Sheet): Doubt[] {
  const read = car.heights.flatMap(({ name, at }) => {
    const reading = readingIn(sheet, `height.${name}`);
    return reading === undefined ? [] : [{ name, at, reading }];
  });
  if (read.length !== 4) return [];
  const weights = closure(read.map(({ at }) => at));
  if (weights === undefined) return [];
  const height = (k: number): number => read[k]!.reading.value - read[k]!.at[2];
  const off = weights.reduce((sum, weight, k) => sum + weight * height(k), 0);
  const u = Math.hypot(...weights.map((weight, k) => weight * read[k]!.reading.u));
  if (Math.abs(off) <= DOUBTED * u) return [];
  return [
    {
      code: 'sheet/twisted',
      message: `${sheet.name}: the four heights do not lie in one plane of the tub: the last, as the other three have it, would be ${spokenAmount(off / weights[3]!, 'm', 1)} lower.`,
      remedy:
        'One of the four is misread, or the floor under one of them is not in the plane of the pads. Which one, the four cannot tell: read all again.',
      paths: read.map(({ reading }) => reading.path),
      weight: 'warning',
    },
  ];
}

/** Weights with Σw = Σw x = Σw y = 0, so that a plane of any slope comes to nothing; none for three in a line. */
function closure(at: readonly (readonly [number, number, number])[]): readonly number[] | undefined {
  const area = (i: number, j: number, k: number): number => {
    const [a, b, c] = [at[i]!, at[j]!, at[k]!];
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
  };
  const weights = [area(1, 2, 3), -area(0, 2, 3), area(0, 1, 3), -area(0, 1, 2)];
  return Math.abs(weights[3]!) < 1e-6 ? undefined : weights.map((weight) => weight / Math.abs(weights[3]!));
}

/** What the fit leaves over: the one reading to read again first. */
export function doubtsOfFit(found: Found): readonly Doubt[] {
  const worst = [...found.residuals].sort((a, b) => Math.abs(b.w) - Math.abs(a.w))[0];
  if (worst === undefined || Math.abs(worst.w) <= DOUBTED) return [];
  const { reading, residual, sheet } = worst;
  const unit = found.standing.readings.get(reading.id)!.unit;
  return [
    {
      code: 'sheet/doubted',
      message: `${sheet}: ${readingWords(reading.id)} contradicts the others: it is ${spokenAmount(Math.abs(residual), unit, 2)} ${residual > 0 ? 'more' : 'less'} than they make it, ${Math.abs(worst.w).toFixed(1)} times what its spread allows.`,
      remedy:
        'Read this one again first. Until then the answer leans on a reading that should not be trusted.',
      paths: [reading.path],
      weight: 'warning',
    },
  ];
}

/** Spread of a reading as the fit has it. */
export const fittedSpread = (found: Found, by: Float64Array): number =>
  Math.sqrt(
    variance(
      found.covariance,
      Float64Array.from(found.hidden, ({ change }) => by[change]!),
    ),
  );
