/**
 * The question "which bar for the coil" as it is written: on the command line or in an address.
 *
 * In    words by name, amounts with their unit
 * Out   the question, or which word is wrong and why
 */
import { readAmount } from '../units/read.ts';
import type { BarAsked } from './bar-for-coil.ts';

const NAMES = [
  'lengthFrom',
  'lengthTo',
  'diameterFrom',
  'diameterTo',
  'step',
  'bore',
  'overtravel',
  'splines',
  'surface',
  'preset',
  'match',
] as const;
export type BarWordName = (typeof NAMES)[number];

export interface BarWords extends Readonly<Partial<Record<BarWordName, string>>> {
  readonly material: string;
}

export const BAR_SURFACES = ['as turned', 'ground', 'ground and peened'] as const;
export const BAR_MATCHES = ['travel', 'standing'] as const;

export type BarWordsRead =
  | { readonly ok: true; readonly is: BarAsked }
  | { readonly ok: false; readonly at: BarWordName; readonly why: string };

/** Which field of the question a word fills, and with what. */
type Filled = { readonly is: Partial<BarAsked> } | { readonly why: string };
type Reader = (text: string) => Filled;

const amount =
  (field: keyof BarAsked, like: string): Reader =>
  (text) => {
    const read = readAmount(text, like);
    return read.ok ? { is: { [field]: read.is.value } } : { why: read.why };
  };

const oneOf =
  (choices: readonly string[], fill: (chosen: string) => Partial<BarAsked>): Reader =>
  (text) =>
    choices.includes(text) ? { is: fill(text) } : { why: `"${text}" is none of ${choices.join(', ')}` };

const splines: Reader = (text) => {
  const teeth = /^(\d{1,4})\/(\d{1,4})$/.exec(text);
  return teeth === null
    ? { why: `"${text}" is not read; write both numbers of teeth, such as 48/47` }
    : { is: { splines: { rocker: Number(teeth[1]), anchor: Number(teeth[2]) } } };
};

const READERS: Readonly<Record<BarWordName, Reader>> = {
  lengthFrom: amount('lengthFrom', 'm'),
  lengthTo: amount('lengthTo', 'm'),
  diameterFrom: amount('diameterFrom', 'm'),
  diameterTo: amount('diameterTo', 'm'),
  step: amount('diameterStep', 'm'),
  bore: amount('boreRatio', '1'),
  overtravel: amount('overtravel', 'rad'),
  splines,
  surface: oneOf(BAR_SURFACES, (chosen) => ({ surface: BAR_SURFACES.find((each) => each === chosen)! })),
  preset: oneOf(['yes', 'no'], (chosen) => ({ preset: chosen === 'yes' })),
  match: oneOf(BAR_MATCHES, (chosen) => ({
    match: chosen === 'standing' ? 'about standing' : 'the whole travel',
  })),
};

export function readBarWords(words: BarWords): BarWordsRead {
  let asked: BarAsked = { material: words.material };
  for (const at of NAMES) {
    const text = words[at];
    if (text === undefined) continue;
    const filled = READERS[at](text);
    if ('why' in filled) return { ok: false, at, why: filled.why };
    asked = { ...asked, ...filled.is };
  }
  return { ok: true, is: asked };
}
