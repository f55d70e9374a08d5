/** The sheets of a bank's primaries: to scale, inside their border, and with the figures that the shop cuts by. */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { paperMeasure } from '../../src/paper/pdf.ts';
import {
  findPrimaries,
  openCar,
  primariesProblem,
  primariesShop,
  type ScanInCar,
  scanOf,
} from '../../src/questions/index.ts';
import { primariesSheetOf, type SheetDocument } from '../../src/sheets/index.ts';
import { near } from '../near.ts';
import { outsideBorder } from './outside-border.ts';

const folder = new URL('../../cars/ashgarth-501/', import.meta.url);
const read = openCar({
  text: readFileSync(new URL('car.yaml', folder), 'utf8'),
  files: Object.fromEntries(
    ['arm-front.csv', 'arm-rear.csv'].map((name) => [name, readFileSync(new URL(name, folder), 'utf8')]),
  ),
});
assert.ok(read.ok);
const { car } = read;
const cover = scanOf(car, 'cover', readFileSync(new URL('cover.stl', folder)));
assert.ok(cover.reached);
const scans: readonly ScanInCar[] = [cover];
const measure = paperMeasure();

function matterOf(side: 'left' | 'right') {
  const put = primariesProblem(car, side, scans);
  assert.ok(put.reached);
  const finding = findPrimaries(put, { seed: 1 });
  while (finding.set() === undefined) finding.advance();
  const set = finding.set()!;
  return { side, set, shop: primariesShop(car, side, set), notes: put.notes };
}

const on = { car, workshop: 'Ostler Yard', date: '2026-05-06', version: '0.1.0' } as const;
const wordsOn = ({ pages }: SheetDocument): string[][] =>
  pages.map(({ marks }) => marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])));

for (const side of ['left', 'right'] as const) {
  const matter = matterOf(side);
  for (const [paper, speech] of [
    ['A4', 'mm-N'],
    ['Letter', 'in-lbf'],
  ] as const) {
    test(`${side} bank, ${paper}: inside the border; route, cut list and bend table each on a sheet, cautioned`, () => {
      const sheet = primariesSheetOf({ ...on, paper, speech, matter }, measure);
      assert.deepEqual(outsideBorder(sheet, paper, measure), []);
      const words = wordsOn(sheet);
      assert.ok(words[0]!.some((each) => each.includes('Tightest')));
      assert.equal(
        words.findIndex((each) => each.includes('Cut list')),
        1,
      );
      assert.ok(words.findIndex((each) => each.includes('Bend table')) > 1);
      for (const page of words) assert.ok(page.some((each) => each.includes('A primary runs hot')));
      const cut = matter.shop.cuts.rows.find((row) => row.kind === 'straight')!;
      if (speech === 'mm-N')
        assert.ok(words[1]!.includes(`${(1e3 * (cut.kind === 'straight' ? cut.length : 0)).toFixed(1)} mm`));
    });
  }
}

/** By hand from the car file: ports 1 and 5 are at x −1479.6 and −1879.9 mm, and 329.4 and 329.8 mm high. */
test('the side view is true to its scale', () => {
  const sheet = primariesSheetOf({ ...on, paper: 'A4', speech: 'mm-N', matter: matterOf('left') }, measure);
  const [first] = sheet.pages;
  const texts = first!.marks.flatMap((mark) => (mark.kind === 'text' ? [mark] : []));
  const scale = Number(
    /Scale 1:(\d+)/.exec(texts.find((each) => each.text.startsWith('From the left'))!.text)![1],
  );
  const at = (cylinder: string) => texts.find((each) => each.text === cylinder && each.weight === 'bold')!.at;
  near((at('5').x - at('1').x) * scale, 1879.9 - 1479.6, 1e-6);
  near((at('1').y - at('5').y) * scale, 329.8 - 329.4, 1e-6);
});
