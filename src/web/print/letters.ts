/**
 * How wide the letters of the sheet are, measured by the page, which has the fonts, for the worker, which has none.
 *
 * In    a canvas with the sheet's fonts
 * Out   widths as plain data, and a measure made from them
 * Not   kerning: a line comes out a hair longer than it prints
 */
import type { TextMeasure } from '../../sheets/index.ts';

/** Widths of single letters over the size of the font, by weight. */
export type Letters = Readonly<Record<'regular' | 'bold', Readonly<Record<string, number>>>>;

const SIZE = 100;
const FONT: Readonly<Record<'regular' | 'bold', string>> = {
  regular: `400 ${SIZE}px "Atkinson Hyperlegible Next", "DejaVu Sans", sans-serif`,
  bold: `700 ${SIZE}px "Atkinson Hyperlegible Next", "DejaVu Sans", sans-serif`,
};

/** Latin letters with their accents, Greek, and the signs of the trade. */
const RANGES = [
  [0x20, 0x24f],
  [0x370, 0x3ff],
  [0x2000, 0x2044],
  [0x2070, 0x2099],
  [0x2190, 0x2199],
  [0x2200, 0x2265],
] as const;

/** Wider than nearly every letter: what is not in the list must not run over the edge. */
const WIDEST = 1.05;

export async function measuredLetters(): Promise<Letters> {
  await Promise.all(Object.values(FONT).map((font) => document.fonts.load(font)));
  const pen = document.createElement('canvas').getContext('2d')!;
  const of = (font: string): Record<string, number> => {
    pen.font = font;
    const widths: Record<string, number> = {};
    for (const [from, to] of RANGES) {
      for (let code = from; code <= to; code += 1) {
        const letter = String.fromCodePoint(code);
        widths[letter] = pen.measureText(letter).width / SIZE;
      }
    }
    return widths;
  };
  return { regular: of(FONT.regular), bold: of(FONT.bold) };
}

export const measureOf = (letters: Letters): TextMeasure => ({
  width: (text, size, weight) => {
    let sum = 0;
    for (const letter of text) sum += letters[weight][letter] ?? WIDEST;
    return sum * size;
  },
});
