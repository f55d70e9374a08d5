/**
 * How wide words are, and where lines break.
 *
 * In    a measure of the font that will be used, handed in by the shell that has it
 * Out   lines no wider than asked, whatever the text: a word that is wider than the line is cut
 */
import type { FontWeight } from './page.ts';

export interface TextMeasure {
  /** Width in millimetres at a font size in millimetres. */
  width(text: string, size: number, weight: FontWeight): number;
}

export interface Setting {
  readonly size: number;
  readonly weight: FontWeight;
  readonly width: number;
}

/** What may not stand on a sheet: control characters and marks that turn the direction of writing round. */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}]+/gu;

/** One line of plain text: control characters out, runs of white space made one. Thin spaces stay. */
export const printable = (text: string): string =>
  text
    .replace(/[\t\n\r\v\f]+/g, ' ')
    .replace(UNPRINTABLE, '')
    .replace(/ {2,}/g, ' ')
    .trim();

/** The text in lines that fit the width. */
export function wrapped(text: string, setting: Setting, measure: TextMeasure): string[] {
  const fits = (words: string): boolean =>
    measure.width(words, setting.size, setting.weight) <= setting.width;
  const lines: string[] = [];
  let current = '';
  for (const word of printable(text).split(' ')) {
    const longer = current === '' ? word : `${current} ${word}`;
    if (fits(longer)) {
      current = longer;
      continue;
    }
    if (current !== '') lines.push(current);
    current = word;
    while (!fits(current)) {
      const head = longestFitting(current, fits);
      lines.push(head);
      current = current.slice(head.length);
    }
  }
  if (current !== '' || lines.length === 0) lines.push(current);
  return lines;
}

/** As much of one word as fits, at least one letter, never half a surrogate pair. */
function longestFitting(word: string, fits: (words: string) => boolean): string {
  const letters = [...word];
  // doubled until too wide, then halved: a word of thousands of letters is not measured whole for every line
  let high = Math.min(16, letters.length);
  while (high < letters.length && fits(letters.slice(0, high).join('')))
    high = Math.min(2 * high, letters.length);
  let low = 1;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (fits(letters.slice(0, middle).join(''))) low = middle;
    else high = middle - 1;
  }
  return letters.slice(0, low).join('');
}

/** One line; what does not fit is cut and ends in an ellipsis. */
export function shortened(text: string, setting: Setting, measure: TextMeasure): string {
  const whole = printable(text);
  const fits = (words: string): boolean =>
    measure.width(words, setting.size, setting.weight) <= setting.width;
  if (fits(whole)) return whole;
  return `${longestFitting(whole, (head) => fits(`${head}…`))}…`;
}
