/** Stops of the flat floor at the pads: what each is, which readings stand on the drawing there, and how they are said. */
import { plain, printedUnit, type Speech, spokenUnit, unitAfter } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';

export const PAD_STOPS = ['pressures', 'heights', 'weights', 'angles', 'changes'] as const;
export type PadStop = (typeof PAD_STOPS)[number];

export const PAD_WORDS: Readonly<Record<PadStop, { readonly title: string; readonly is: string }>> = {
  pressures: {
    title: 'Pressures',
    is: 'Tyres as they stand on the pads: their pressure is their spring, and comes before all else.',
  },
  heights: {
    title: 'Heights',
    is: 'How high the tub stands at the places where a gauge is put, and its rake.',
  },
  weights: {
    title: 'Weights',
    is: 'What each wheel carries on its pad (corner weights). Cross weight: right front and left rear of the whole.',
  },
  angles: {
    title: 'Angles',
    is: 'Caster, camber and toe of each wheel, as gauge, plates and strings read them; droop, track and wheelbase where they were read.',
  },
  changes: {
    title: 'Changes',
    is: 'What to turn, shim or move in one go to bring all readings onto the sheet, and what will then be read.',
  },
};

/** Kinds of reading that stand at the wheels of a stop; the first is the large one. */
export const KINDS_AT: Readonly<Record<PadStop, readonly string[]>> = {
  pressures: ['pressure'],
  heights: ['height'],
  weights: ['weight'],
  angles: ['camber', 'toeAtRim', 'toe', 'caster', 'droop', 'track', 'wheelbase'],
  changes: [],
};

/** The stop at which a reading stands on the drawing. */
export const stopOf = (id: string): PadStop =>
  PAD_STOPS.find((stop) => KINDS_AT[stop].includes(kindOf(id))) ?? 'weights';

/** How each kind is typed and shown: unit by the way of speaking, places, and the step of the stepper. */
export const TYPED: Readonly<
  Record<
    string,
    {
      readonly name: string;
      readonly si: string;
      readonly units: readonly [string, string];
      readonly digits: readonly [number, number];
      readonly step: readonly [number, number];
    }
  >
> = {
  pressure: { name: 'pressure', si: 'Pa', units: ['bar', 'psi'], digits: [2, 1], step: [0.01, 0.1] },
  height: { name: 'height', si: 'm', units: ['mm', 'in'], digits: [1, 3], step: [0.1, 0.005] },
  weight: { name: 'weight', si: 'kg', units: ['kg', 'lb'], digits: [1, 1], step: [0.1, 0.2] },
  camber: { name: 'camber', si: 'rad', units: ['deg', 'deg'], digits: [2, 2], step: [0.05, 0.05] },
  caster: { name: 'caster', si: 'rad', units: ['deg', 'deg'], digits: [2, 2], step: [0.05, 0.05] },
  toe: { name: 'toe', si: 'rad', units: ['deg', 'deg'], digits: [2, 2], step: [0.01, 0.01] },
  toeAtRim: { name: 'toe over the rim', si: 'm', units: ['mm', 'in'], digits: [1, 3], step: [0.1, 0.005] },
  droop: { name: 'droop', si: 'm', units: ['mm', 'in'], digits: [1, 3], step: [0.5, 0.02] },
  track: { name: 'track', si: 'm', units: ['mm', 'in'], digits: [1, 3], step: [0.5, 0.02] },
  wheelbase: { name: 'wheelbase', si: 'm', units: ['mm', 'in'], digits: [1, 3], step: [0.5, 0.02] },
};

export const WHEEL_WORDS = {
  frontLeft: 'front left',
  frontRight: 'front right',
  rearLeft: 'rear left',
  rearRight: 'rear right',
} as const;
export type WheelKey = keyof typeof WHEEL_WORDS;
export const WHEEL_KEYS = Object.keys(WHEEL_WORDS) as readonly WheelKey[];

/** `weight.frontLeft`, in words; a measuring point has its own name. */
export function placeWords(id: string): string {
  const of = id.slice(id.indexOf('.') + 1);
  return WHEEL_WORDS[of as WheelKey] ?? of;
}

export const kindOf = (id: string): string => id.split('.')[0]!;

/** A reading as it is said at a wheel, in the way of speaking. @param value SI */
export function said(kind: string, value: number, speech: Speech): string {
  const { units, digits } = TYPED[kind]!;
  const k = speech === 'mm-N' ? 0 : 1;
  return `${plain(fromSI(value, units[k]), digits[k])}${unitAfter(printedUnit(units[k]))}`;
}

/** A spread or tolerance behind a reading: a place more, its unit left out. */
export function bare(kind: string, value: number, speech: Speech): string {
  const { units, digits } = TYPED[kind]!;
  const k = speech === 'mm-N' ? 0 : 1;
  return plain(fromSI(value, units[k]), digits[k] + 1);
}

/** An amount of any reading in words, of a kind that is typed here or not. @param fine  a place more, its unit left out */
export function amountWords(id: string, value: number, si: string, speech: Speech, fine = false): string {
  const kind = kindOf(id);
  if (kind in TYPED) return fine ? bare(kind, value, speech) : said(kind, value, speech);
  const unit = spokenUnit(si, speech);
  const digits = (si === 'm' && speech === 'in-lbf' ? 3 : 1) + (fine ? 1 : 0);
  const text = plain(fromSI(value, unit), digits);
  return fine ? text : `${text}${unitAfter(printedUnit(unit))}`;
}
