/** Load sheets, joint sheet and tightening card before any shell has touched them, from answers made by hand. */
import assert from 'node:assert/strict';
import { readFileSync, writeFileSync } from 'node:fs';
import { test } from 'node:test';
import { INVENTED } from '../../src/sheets/frame.ts';
import { caseTable } from '../../src/sheets/index.ts';
import { faceDrawing } from '../../src/sheets/joint-face.ts';
import { jointSheet } from '../../src/sheets/joint-sheet.ts';
import { allCasesSheet } from '../../src/sheets/load-sheet-all.ts';
import { oneCaseSheet } from '../../src/sheets/load-sheet-one.ts';
import type { Page, PaperName, SheetDocument } from '../../src/sheets/page.ts';
import type { TextMeasure } from '../../src/sheets/text-measure.ts';
import { tighteningCard } from '../../src/sheets/tightening-card.ts';
import type { Speech } from '../../src/units/show.ts';
import {
  DIP,
  inventedCase,
  inventedCases,
  inventedJoint,
  inventedJointCases,
  inventedLoads,
  inventedTightening,
} from './invented-loads.ts';
import { inventedHead } from './invented-order.ts';
import { outsideBorder } from './outside-border.ts';

/** Every letter 0.55 of the size wide: near the mean of a sans, and the same everywhere. */
const evenMeasure: TextMeasure = { width: (text, size) => [...text].length * size * 0.55 };

const sheets = (paper: PaperName, speech: Speech = 'mm-N'): Record<string, SheetDocument> => {
  const head = { ...inventedHead, paper, speech };
  return {
    'load-one': oneCaseSheet({ doing: DIP, loads: inventedLoads, gearCase: inventedCase }, head, evenMeasure),
    'load-all': allCasesSheet(inventedCases, head, evenMeasure),
    joint: jointSheet({ doing: DIP, is: inventedJoint, cases: inventedJointCases }, head, evenMeasure),
    tightening: tighteningCard(inventedTightening, head, evenMeasure),
  };
};

const wordsOn = (page: Page): string[] =>
  page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : []));
const words = (sheet: SheetDocument): string[] => sheet.pages.flatMap(wordsOn);

for (const paper of ['A4', 'Letter'] as const) {
  test(`${paper}: within the border, invented, cautioned and counted, without a verdict`, () => {
    for (const speech of ['mm-N', 'in-lbf'] as const) {
      for (const [name, sheet] of Object.entries(sheets(paper, speech))) {
        assert.deepEqual(outsideBorder(sheet, paper, evenMeasure), [], name);
        sheet.pages.forEach((page, index) => {
          const own = wordsOn(page);
          for (const wanted of [INVENTED, 'Caution', `${index + 1} of ${sheet.pages.length}`, 'Initials'])
            assert.ok(own.includes(wanted), `${name}: ${wanted}`);
          assert.ok(own.some((each) => each.includes('hold the car together')));
          assert.ok(!own.some((each) => /\bsafe\b/i.test(each)), 'a sheet gives no verdict');
        });
      }
    }
  });

  test(`${paper}: drawing, values, hold points and every round stand on the first sheet of the card`, () => {
    const [first] = sheets(paper).tightening!.pages;
    const own = wordsOn(first!);
    for (const wanted of ['1', '2', '3', '4', 'HOLD', 'First round, 30 %', 'Third round, full value'])
      assert.ok(own.includes(wanted), wanted);
  });
}

test('pull and push are said in words and by letter, of size and not of sign', () => {
  const one = words(sheets('A4')['load-one']!);
  assert.ok(one.includes('2468 ± 123 N pull, T'));
  assert.ok(one.includes('2668 ± 123 N push, C'));
  const all = words(sheets('A4')['load-all']!);
  assert.ok(all.includes('1234 T') && all.includes('1334 C'));
  // three times as much in the dip: largest of all cases, with its case
  assert.ok(all.includes('4002 N push, C') && all.includes('2 dip'));
  assert.ok(all.some((each) => each.includes('does not come there')));
});

test('a torque stands with its lubricant, a choice of two is told, and no builder is told', () => {
  const own = words(sheets('A4').tightening!).join(' ');
  assert.match(own, /60 N·m \[44\.3 lbf·ft\]/); // NIST SP 811: 60 / 1.355 818 = 44.25
  assert.match(own, /on engine oil/);
  assert.match(own, /TWO FIGURES: cross one out first/);
  assert.match(own, /the builder's: none in the file/);
  assert.match(own, /COLD ONLY/);
  const inches = words(sheets('A4', 'in-lbf').tightening!).join(' ');
  assert.match(inches, /44 lbf·ft \[59\.7 N·m\]/);
});

test('the face is to its scale: studs 420 mm apart stand 56 mm apart at 1:7.5, pads of 42 mm are 5.6 mm', () => {
  const { face } = inventedJoint;
  const studs = face.studs.map((stud) => ({ ...stud, below: [stud.name] }));
  const block = faceDrawing({ studs, dowels: face.dowels, height: 90 }, 110, evenMeasure);
  const marks = block.marks({ x: 0, y: 0 }, 110);
  assert.ok(marks.some((mark) => mark.kind === 'text' && mark.text.includes('Scale 1:7.5')));
  const pads = marks.flatMap((mark) => (mark.kind === 'arc' && mark.radius > 2 ? [mark] : []));
  assert.equal(pads.length, 4);
  // 1e-9 mm: sums of decimals
  assert.ok(pads.every(({ radius }) => Math.abs(2 * radius - 42 / 7.5) < 1e-9));
  const [left, right] = [pads[2]!, pads[3]!];
  assert.ok(Math.abs(right.centre.x - left.centre.x - 420 / 7.5) < 1e-9, "the car's left is at the left");
  assert.ok(left.centre.y < pads[0]!.centre.y, 'up is up');
});

/** A reader of RFC 4180 that was not written beside the writer: quoted cells, doubled quotes. */
function cells(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/g)].map(
    ([, quoted, bare]) => quoted?.replaceAll('""', '"') ?? bare ?? '',
  );
}

test('RFC 4180: the table of cases has as many cells in every row, its units in the first', () => {
  const asked = { speech: 'mm-N', separator: ',' } as const;
  const members = caseTable(inventedCases, { ...asked, rows: 'members' }).map(cells);
  assert.deepEqual(members[0], [
    'case',
    'wheel',
    'member',
    'sign',
    'force (N)',
    'stress over yield (%)',
    'push over buckling push (%)',
  ]);
  assert.equal(members.length, 1 + 2 * 4 * 6);
  assert.ok(members.every((row) => row.length === members[0]!.length));
  assert.deepEqual(members[1], [
    'standing',
    'front left',
    'upper wishbone, front leg',
    'pull',
    '1234',
    '10',
    '0',
  ]);
  const wheels = caseTable(inventedCases, { ...asked, rows: 'wheels' }).map(cells);
  assert.equal(wheels.length, 1 + 2 * 4);
  assert.ok(wheels[0]!.includes('travelUnderLoad (mm)'));
  assert.equal(wheels[1]![wheels[0]!.indexOf('travelUnderLoad (mm)')], '10');
  const sure = caseTable(
    { cases: [{ doing: DIP, loads: inventedLoads }], without: [] },
    { ...asked, rows: 'members' },
  ).map(cells);
  assert.equal(sure[1]![sure[0]!.indexOf('force ± (N)')], '123');
});

/** Numbers to three figures, so that a change in the last digit of a figure is not a change of the sheet. */
const rounded = (text: string): string =>
  text.replace(/\d+(\u2009\d{3})*\.\d+/g, (number) =>
    String(Number(Number(number.replaceAll('\u2009', '')).toPrecision(3))),
  );

for (const name of ['load-one', 'load-all', 'joint', 'tightening']) {
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
