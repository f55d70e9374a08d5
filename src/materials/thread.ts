/**
 * Screw threads by the name that stands on the drawing: ISO metric, unified (UNC, UNF), Whitworth form (BSW, BSF).
 *
 * In    a designation as the trade writes it: `M10x1.25`, `3/8-24 UNF`, `3/8 BSF`
 * Out   its basic sizes, metres, and half the angle of its flanks
 * Not   classes of fit: basic profile, so a part at the edge of its tolerance has up to a few per cent less
 *
 * [ISO68-1, ISO724]  basic profile and dimensions (from memory): d2 = d − 0.6495 P, D1 = d − 1.0825 P
 * [ISO898-1]         root d3 = d − 1.2269 P and stress area of the mean of d2 and d3 (from memory)
 * [ASME-B1.1]        tensile stress area π/4 (d − 0.9743/n)², root of the UNR form d − 1.1908/n (from memory)
 * [BS84]             parallel screw threads of Whitworth form: depth 0.6403 P (from memory)
 */
import type { Metre, Radian } from '../units/quantity.ts';
import { nearestNames } from './property.ts';

export type ThreadForm = 'ISO metric' | 'unified' | 'Whitworth';

export interface Thread {
  /** As the trade writes it: `M10x1.25`, `3/8-24 UNF`. */
  readonly name: string;
  readonly form: ThreadForm;
  readonly major: Metre;
  readonly pitch: Metre;
  /** Pitch diameter d2, at which the flanks bear. */
  readonly pitchDiameter: Metre;
  /** Minor diameter of the internal thread D1. */
  readonly minor: Metre;
  /** Root of the external thread d3. */
  readonly root: Metre;
  /** Diameter whose circle is the tensile stress area. */
  readonly stressDiameter: Metre;
  /** Half the angle between the flanks. */
  readonly flank: Radian;
}

const INCH = 0.0254;
const DEG = Math.PI / 180;
/** Height of the sharp triangle, in pitches, of a 60° profile. */
const H60 = Math.sqrt(3) / 2;

function metric(name: string, major: Metre, pitch: Metre): Thread {
  const pitchDiameter = major - 0.75 * H60 * pitch;
  const root = major - (17 / 12) * H60 * pitch;
  return {
    name,
    form: 'ISO metric',
    major,
    pitch,
    pitchDiameter,
    minor: major - 1.25 * H60 * pitch,
    root,
    stressDiameter: (pitchDiameter + root) / 2,
    flank: 30 * DEG,
  };
}

function unified(name: string, major: Metre, pitch: Metre): Thread {
  return {
    name,
    form: 'unified',
    major,
    pitch,
    pitchDiameter: major - 0.75 * H60 * pitch,
    minor: major - 1.25 * H60 * pitch,
    root: major - 1.19078 * pitch,
    stressDiameter: major - 0.9743 * pitch,
    flank: 30 * DEG,
  };
}

function whitworth(name: string, major: Metre, pitch: Metre): Thread {
  const depth = 0.640327 * pitch;
  const pitchDiameter = major - depth;
  const root = major - 2 * depth;
  return {
    name,
    form: 'Whitworth',
    major,
    pitch,
    pitchDiameter,
    minor: root,
    root,
    stressDiameter: (pitchDiameter + root) / 2,
    flank: 27.5 * DEG,
  };
}

/** Coarse pitches of ISO 261, mm, for a size written without its pitch. */
const COARSE: Readonly<Record<string, number>> = {
  3: 0.5,
  4: 0.7,
  5: 0.8,
  6: 1,
  7: 1,
  8: 1.25,
  10: 1.5,
  12: 1.75,
  14: 2,
  16: 2,
  18: 2.5,
  20: 2.5,
  22: 2.5,
  24: 3,
};

/** Threads per inch by nominal size. Numbers are ASME B1.1 and BS 84 (from memory). */
const PER_INCH: Readonly<Record<'UNC' | 'UNF' | 'BSW' | 'BSF', Readonly<Record<string, number>>>> = {
  UNC: {
    '#8': 32,
    '#10': 24,
    '#12': 24,
    '1/4': 20,
    '5/16': 18,
    '3/8': 16,
    '7/16': 14,
    '1/2': 13,
    '9/16': 12,
    '5/8': 11,
    '3/4': 10,
  },
  UNF: {
    '#8': 36,
    '#10': 32,
    '#12': 28,
    '1/4': 28,
    '5/16': 24,
    '3/8': 24,
    '7/16': 20,
    '1/2': 20,
    '9/16': 18,
    '5/8': 18,
    '3/4': 16,
  },
  BSW: {
    '3/16': 24,
    '1/4': 20,
    '5/16': 18,
    '3/8': 16,
    '7/16': 14,
    '1/2': 12,
    '9/16': 12,
    '5/8': 11,
    '3/4': 10,
  },
  BSF: {
    '3/16': 32,
    '7/32': 28,
    '1/4': 26,
    '9/32': 26,
    '5/16': 22,
    '3/8': 20,
    '7/16': 18,
    '1/2': 16,
    '9/16': 16,
    '5/8': 14,
    '3/4': 12,
  },
};

function inches(size: string): Metre {
  // a numbered unified size is 0.060 in and 0.013 in for each number
  if (size.startsWith('#')) return (0.06 + 0.013 * Number(size.slice(1))) * INCH;
  const [over, under] = size.split('/');
  return (Number(over) / Number(under)) * INCH;
}

const METRIC = /^M\s?(\d{1,2}(?:\.\d)?)(?:\s?[x×*]\s?(\d(?:\.\d{1,2})?))?$/i;
const BY_INCH = /^(#\d{1,2}|\d{1,2}\/\d{1,2})(?:\s?-\s?(\d{1,2}))?\s?(UNC|UNF|BSW|BSF)$/i;

/** The thread of that name, or undefined where no standard thread is called so. */
export function threadNamed(written: string): Thread | undefined {
  const text = written.trim();
  const m = METRIC.exec(text);
  if (m !== null) {
    const major = Number(m[1]);
    const pitch = m[2] === undefined ? COARSE[String(major)] : Number(m[2]);
    const plausible = major >= 3 && major <= 36 && pitch !== undefined && pitch >= 0.3 && pitch <= major / 4;
    return plausible ? metric(`M${major}x${pitch}`, major / 1000, pitch / 1000) : undefined;
  }
  const i = BY_INCH.exec(text);
  if (i === null) return undefined;
  const [, size, count, series] = i as unknown as [string, string, string | undefined, string];
  const standard = series.toUpperCase() as keyof typeof PER_INCH;
  const perInch = PER_INCH[standard][size];
  if (perInch === undefined || (count !== undefined && Number(count) !== perInch)) return undefined;
  const name = `${size}-${perInch} ${standard}`;
  const make = standard === 'BSW' || standard === 'BSF' ? whitworth : unified;
  return make(name, inches(size), INCH / perInch);
}

const USUAL: readonly string[] = [
  ...['M6x1', 'M8x1.25', 'M8x1', 'M10x1.5', 'M10x1.25', 'M12x1.75', 'M12x1.5', 'M12x1.25'],
  ...Object.entries(PER_INCH).flatMap(([series, sizes]) =>
    Object.entries(sizes).map(([size, perInch]) => `${size}-${perInch} ${series}`),
  ),
];

/** Names most like one that is none, for "did you mean" in an error. */
export const threadsLike = (written: string): readonly string[] => nearestNames(written, USUAL);
