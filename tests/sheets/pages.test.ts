/** Pages before any shell has touched them: nothing lost, nothing outside the border, every sheet marked. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import fc from 'fast-check';
import { barOrderSheet } from '../../src/sheets/bar-order-sheet.ts';
import { cornerSheet } from '../../src/sheets/corner-sheet.ts';
import { ruler } from '../../src/sheets/dimension.ts';
import { INVENTED } from '../../src/sheets/frame.ts';
import { PAPER, type Page, type PaperName, type SheetDocument } from '../../src/sheets/page.ts';
import { springSheet } from '../../src/sheets/spring-sheet.ts';
import { pageSvg } from '../../src/sheets/svg.ts';
import { shortened, type TextMeasure, wrapped } from '../../src/sheets/text-measure.ts';
import { real } from '../draw.ts';
import { inventedAnswer, inventedCurves, inventedDrawn } from './invented-corner.ts';
import { inventedHead, inventedOrder } from './invented-order.ts';
import { outsideBorder } from './outside-border.ts';

/** Every letter 0.55 of the size wide: near the mean of a sans, and the same everywhere. */
const evenMeasure: TextMeasure = { width: (text, size) => [...text].length * size * 0.55 };

const sheets = (paper: PaperName, car = inventedHead.car): Record<string, SheetDocument> => {
  const head = { ...inventedHead, paper, car };
  const matter = { answer: inventedAnswer, curves: inventedCurves, drawn: inventedDrawn };
  const coil = { wire: 0.0122, meanDiameter: 0.0601, totalCoils: 6.9, freeLength: 0.1348 };
  return {
    'bar-order': barOrderSheet(inventedOrder, head, evenMeasure),
    corner: cornerSheet(matter, head, evenMeasure),
    spring: springSheet(
      {
        answer: inventedAnswer,
        curves: inventedCurves,
        bar: inventedOrder,
        coil,
        readings: [],
        words: [{ what: 'material', is: '300M bar' }],
      },
      head,
      evenMeasure,
    ),
  };
};

const wordsOn = (page: Page): string[] =>
  page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));

for (const paper of ['A4', 'Letter'] as const) {
  test(`${paper}: nothing stands outside the border`, () => {
    for (const [name, sheet] of Object.entries(sheets(paper))) {
      assert.deepEqual(outsideBorder(sheet, paper, evenMeasure), [], name);
    }
  });

  test(`${paper}: every sheet says that it is invented, cautions, and counts itself`, () => {
    for (const sheet of Object.values(sheets(paper))) {
      sheet.pages.forEach((page, index) => {
        const words = wordsOn(page);
        assert.ok(words.includes(INVENTED));
        assert.ok(words.includes('Caution'));
        assert.ok(words.some((each) => each.includes('holds energy')));
        assert.ok(words.some((each) => each.includes('makers')));
        assert.ok(words.includes(`${index + 1} of ${sheet.pages.length}`));
        for (const field of ['Workshop', 'Car', 'Title', 'Spec', 'Date', 'Program', 'Units', 'Initials']) {
          assert.ok(words.includes(field), field);
        }
        assert.ok(words.includes(inventedHead.date) && words.includes(inventedHead.version));
        assert.ok(!words.some((each) => /\bsafe\b/i.test(each)), 'a sheet gives no verdict');
      });
    }
  });
}

test('a car that is not invented has no such mark', () => {
  const sheet = barOrderSheet(inventedOrder, { ...inventedHead, invented: false }, evenMeasure);
  assert.ok(sheet.pages.every((page) => !wordsOn(page).includes(INVENTED)));
});

test('paper sizes are those of ISO 216 (A4, 210 mm by 297 mm) and 8.5 in by 11 in', () => {
  assert.deepEqual(PAPER.A4, { width: 210, height: 297 });
  // 1e-9 mm: a product of decimals
  assert.ok(
    Math.abs(PAPER.Letter.width - 8.5 * 25.4) < 1e-9 && Math.abs(PAPER.Letter.height - 11 * 25.4) < 1e-9,
  );
});

test('the ruler is 100 mm and 3 in long', () => {
  const lengths = ruler({ x: 30, y: 50 }).flatMap((mark) =>
    mark.kind === 'polyline' && mark.points[0]!.y === mark.points[1]!.y
      ? [mark.points[1]!.x - mark.points[0]!.x]
      : [],
  );
  // exact but for the rounding of a sum
  assert.ok(Math.abs(lengths[0]! - 100) < 1e-9 && Math.abs(lengths[1]! - 3 * 25.4) < 1e-9);
});

/** Letters and white space as they come, the odd ones too. */
const anyText = fc.string({ unit: 'grapheme', maxLength: 300 });

test('wrapping fits the width and loses nothing but white space and control characters', () =>
  fc.assert(
    fc.property(anyText, real(4, 200), (text, width) => {
      const lines = wrapped(text, { size: 3, weight: 'regular', width }, evenMeasure);
      for (const each of lines)
        assert.ok([...each].length === 1 || evenMeasure.width(each, 3, 'regular') <= width);
      const bare = (words: string): string => words.replace(/[\s\p{Cc}\p{Cf}\p{Cs}\p{Co}]/gu, '');
      assert.equal(bare(lines.join('')), bare(text));
    }),
  ));

test('shortening fits the width', () =>
  fc.assert(
    fc.property(anyText, real(8, 100), (text, width) => {
      const words = shortened(text, { size: 3, weight: 'regular', width }, evenMeasure);
      assert.ok([...words].length <= 2 || evenMeasure.width(words, 3, 'regular') <= width);
    }),
  ));

test('a very long name is cut in the title block and breaks nothing', () => {
  for (const sheet of Object.values(sheets('A4', 'W'.repeat(5000)))) {
    const cut = wordsOn(sheet.pages[0]!).filter((each) => each.startsWith('WWW'));
    assert.ok(cut.length > 0 && cut.every((each) => each.length < 120));
  }
});

test('long notes go on to a further sheet', () => {
  const answer = {
    ...inventedAnswer,
    notes: Array.from({ length: 200 }, (_, k) => `Note ${k + 1} of the corner.`),
  };
  const sheet = cornerSheet({ answer, curves: inventedCurves }, inventedHead, evenMeasure);
  const words = sheet.pages.flatMap(wordsOn);
  assert.ok(sheet.pages.length >= 4);
  assert.ok(words.includes('Note 1 of the corner.') && words.includes('Note 200 of the corner.'));
});

test('SVG is well formed for hostile words, and as large as the paper', () => {
  const head = { ...inventedHead, car: '<script>alert("&")</script>' };
  const sheet = barOrderSheet(inventedOrder, head, evenMeasure);
  const svg = pageSvg(sheet.pages[0]!, sheet.title);
  assert.ok(svg.includes('width="210mm" height="297mm"'));
  assert.ok(!svg.includes('<script'));
  assert.ok(svg.includes('&lt;script&gt;'));
  assert.ok(!svg.includes('NaN'));
});

/** Numbers to three figures, so that a change in the last digit of a figure is not a change of the sheet. */
const rounded = (words: string): string =>
  words.replace(/\d+(\u2009\d{3})*\.\d+/g, (number) =>
    String(Number(Number(number.replaceAll('\u2009', '')).toPrecision(3))),
  );

for (const name of ['bar-order', 'corner', 'spring']) {
  test(`golden text of the ${name} sheet`, () => {
    const sheet = sheets('A4')[name]!;
    const text = sheet.pages
      .map((page, k) => [`--- sheet ${k + 1}`, ...wordsOn(page).map(rounded)].join('\n'))
      .join('\n');
    const file = new URL(`golden/${name}.txt`, import.meta.url);
    if (process.env.GOLDEN === 'write') writeFileSync(file, `${text}\n`);
    assert.equal(`${text}\n`, readFileSync(file, 'utf8'));
  });
}
