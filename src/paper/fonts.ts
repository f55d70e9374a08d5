/**
 * The fonts on paper, and which of them has which letter.
 *
 * In    text
 * Out   runs of text, each with a font that has all its letters; a letter that no font has is written as its
 *       code, `[U+1F3CE]`, so that nothing is lost without a sign
 *
 * Atkinson Hyperlegible Next sets nearly everything. DejaVu Sans, where it is installed, lends Greek, Cyrillic,
 * Hebrew, Arabic and signs.
 */
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { FontWeight } from '../sheets/page.ts';

const require = createRequire(import.meta.url);

const folderOf = (name: string): string | undefined => {
  try {
    return dirname(require.resolve(`${name}/package.json`));
  } catch {
    return undefined;
  }
};

export interface FontFile {
  readonly name: string;
  readonly path: string;
}

const TEXT_FONT = '@fontsource/atkinson-hyperlegible-next';
const LENDING_FONT = 'dejavu-fonts-ttf';

/** Fonts of a weight in the order in which they are asked for a letter. */
export function fontFiles(weight: FontWeight): FontFile[] {
  const number = weight === 'bold' ? 700 : 400;
  const text = folderOf(TEXT_FONT);
  if (text === undefined) throw new Error(`${TEXT_FONT} is not installed`);
  const lending = folderOf(LENDING_FONT);
  const files = [
    ...['latin', 'latin-ext'].map((part) => ({
      name: `${part}-${number}`,
      path: join(text, 'files', `atkinson-hyperlegible-next-${part}-${number}-normal.woff`),
    })),
    ...(lending === undefined
      ? []
      : [
          {
            name: `signs-${number}`,
            path: join(lending, 'ttf', weight === 'bold' ? 'DejaVuSans-Bold.ttf' : 'DejaVuSans.ttf'),
          },
        ]),
  ];
  return files.filter((file) => existsSync(file.path));
}

export interface Run {
  readonly font: string;
  readonly text: string;
}

/** Whether a font has a letter, by code point. */
export interface Coverage {
  readonly font: string;
  has(codePoint: number): boolean;
}

/** Marks that only change how the letter before them looks. */
const INVISIBLE = /[\uFE00-\uFE0F\u200B-\u200F\u2060\uFEFF]/u;

export function runsOf(text: string, fonts: readonly Coverage[]): Run[] {
  const runs: Run[] = [];
  const put = (font: string, letters: string): void => {
    const last = runs.at(-1);
    if (last !== undefined && last.font === font) runs[runs.length - 1] = { font, text: last.text + letters };
    else runs.push({ font, text: letters });
  };
  for (const letter of text) {
    if (INVISIBLE.test(letter)) continue;
    const point = letter.codePointAt(0)!;
    const current = runs.at(-1)?.font;
    // white space and what both have stays with the run it is in
    const staying = fonts.find((each) => each.font === current && each.has(point));
    const font = letter === ' ' && staying !== undefined ? staying : fonts.find((each) => each.has(point));
    if (font !== undefined) put(font.font, letter);
    else put(fonts[0]!.font, `[U+${point.toString(16).toUpperCase().padStart(4, '0')}]`);
  }
  return runs;
}
