/** The PDF as others read it: size, fonts, ink, glyphs, text; for every demo car and for hostile words. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { fileURLToPath } from 'node:url';
import { inflateSync } from 'node:zlib';
import { type Car, readCar } from '../../src/car/read.ts';
import { cross, dot, sub } from '../../src/maths/vec3.ts';
import {
  CORNER_SHEETS,
  LOAD_SHEETS,
  NoSheet,
  type SheetAsked,
  sheetPages,
  sheetPdf,
} from '../../src/paper/index.ts';
import { paperMeasure, renderPdf } from '../../src/paper/pdf.ts';
import { drawCorner, WHEELS } from '../../src/questions/drawing.ts';
import { AS_SURVEYED } from '../../src/questions/figure.ts';
import { barOrderSheet } from '../../src/sheets/bar-order-sheet.ts';
import { inventedHead, inventedOrder } from './invented-order.ts';
import { outsideBorder } from './outside-border.ts';

const measure = paperMeasure();
const folder = mkdtempSync(join(tmpdir(), 'flatpatch-sheets-'));
after(() => rmSync(folder, { recursive: true }));

const there = (tool: string): boolean => spawnSync(tool, ['-v']).error === undefined;
const poppler = ['pdfinfo', 'pdffonts', 'pdftotext'].every(there);
const needsPoppler = poppler ? false : 'poppler-utils is not here: the PDF is not opened by another program';

function run(tool: string, pdf: Buffer, ...options: string[]): string {
  const file = join(folder, 'sheet.pdf');
  writeFileSync(file, pdf);
  const { stdout, stderr, status } = spawnSync(
    tool,
    [...options, file, ...(tool === 'pdftotext' ? ['-'] : [])],
    { encoding: 'utf8' },
  );
  assert.equal(status, 0, stderr);
  assert.equal(stderr, '', `${tool} has something to say`);
  return stdout;
}

/** The page descriptions of a PDF, inflated. */
function contents(pdf: Buffer): string[] {
  const found: string[] = [];
  let from = 0;
  for (;;) {
    const start = pdf.indexOf('stream\n', from);
    if (start < 0) return found;
    const end = pdf.indexOf('\nendstream', start);
    from = end + 10;
    try {
      const text = inflateSync(pdf.subarray(start + 7, end)).toString('latin1');
      if (/\bTf\b/.test(text)) found.push(text);
    } catch {
      // not a deflated stream: no page description
    }
  }
}

const order = (paper: 'A4' | 'Letter', head = inventedHead): Promise<Buffer> =>
  renderPdf(barOrderSheet(inventedOrder, { ...head, paper }, measure));

for (const [paper, size] of [
  ['A4', '595.276 x 841.89 pts (A4)'],
  ['Letter', '612 x 792 pts (letter)'],
] as const) {
  test(`${paper}: another reader finds the size and every font embedded`, {
    skip: needsPoppler,
  }, async () => {
    const pdf = await order(paper);
    assert.ok(run('pdfinfo', pdf).includes(size));
    const fonts = run('pdffonts', pdf).trim().split('\n').slice(2);
    assert.ok(fonts.length >= 2);
    for (const font of fonts) assert.match(font, /\byes yes yes\b/); // embedded, subset, with its letters told
  });
}

test('the text can be read out of the PDF', { skip: needsPoppler }, async () => {
  const text = run('pdftotext', await order('A4'), '-layout');
  for (const words of [
    'INVENTED EXAMPLE',
    'Torsion bar order',
    'INV-TB-1600',
    'Test on receipt',
    'Sheet',
    '1 of 2',
    '±0.02',
    '300 °C',
  ]) {
    assert.ok(text.includes(words), words);
  }
});

test('the ruler is 100 mm in points, 7200/25.4', async () => {
  const [first] = contents(await order('A4'));
  const lengths = [...first!.matchAll(/([\d.]+) ([\d.]+) m\n([\d.]+) ([\d.]+) l\n/g)]
    .filter((match) => match[2] === match[4])
    .map((match) => Number(match[3]) - Number(match[1]));
  // 1e-4 pt: the numbers are written to six decimals
  assert.ok(lengths.some((length) => Math.abs(length - 7200 / 25.4) < 1e-4));
});

test('the same sheet gives the same bytes, another date other ones', async () => {
  assert.deepEqual(await order('A4'), await order('A4'));
  assert.notDeepEqual(await order('A4'), await order('A4', { ...inventedHead, date: '2004-05-07' }));
});

const HOSTILE = [
  'W'.repeat(3000),
  'مرحبا بالعالم',
  'שלום עולם',
  'race 🏎️🏁 car',
  '\u202Egnp.exe',
  'a\u0000b\u001b[31mc',
  'Łukasz Żółć Çağrı ÆØÅ',
  'Δτφ π ≤ ≥ → ∞',
  '𝕏 mathematical, 漢字, ไทย',
  '((()))<<>>\\endstream',
  '',
];

test('hostile words neither break a sheet nor leave the border', async () => {
  for (const words of HOSTILE) {
    const head = {
      ...inventedHead,
      car: words,
      workshop: words,
      spec: words,
      chassis: words,
      readings: words,
    };
    const sheet = barOrderSheet({ ...inventedOrder, partNumber: words }, head, measure);
    assert.deepEqual(outsideBorder(sheet, 'A4', measure), []);
    const pdf = await renderPdf(sheet);
    if (poppler) assert.ok(run('pdftotext', pdf).includes('Torsion bar order'));
  }
});

test('a letter that no font has is written as its code', async () => {
  const pdf = await order('A4', { ...inventedHead, spec: 'spec \u{1F3CE}' });
  if (poppler) assert.ok(run('pdftotext', pdf).includes('U+1F3CE'));
  assert.ok(pdf.length > 10_000);
});

const demo = fileURLToPath(new URL('../../cars/', import.meta.url));

const cars = readdirSync(demo, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && existsSync(join(demo, entry.name, 'car.yaml')))
  .map((entry) => entry.name);

function carOf(name: string, spec?: string): Car {
  const inside = readdirSync(join(demo, name)).filter((file) => file.endsWith('.csv'));
  const files = Object.fromEntries(
    inside.map((file) => [file, readFileSync(join(demo, name, file), 'utf8')]),
  );
  const text = readFileSync(join(demo, name, 'car.yaml'), 'utf8');
  const read = readCar({ text, file: name, files, ...(spec === undefined ? {} : { spec }) });
  assert.ok(read.ok, `${name} does not read`);
  return read.car;
}

const asked = (car: Car, wheel: SheetAsked['wheel']): SheetAsked => ({
  car,
  wheel,
  at: { travel: 0.005, rack: 0 },
  workshop: 'Invented Workshop',
  date: '2004-05-06',
  version: '0.1.0',
  paper: 'A4',
  speech: 'mm-N',
});

for (const name of cars) {
  test(`${name}: every kind of sheet stays inside its border`, () => {
    const car = carOf(name);
    // one wheel of each end and side: four take twice the time and say the same
    for (const wheel of [WHEELS[0]!, WHEELS[3]!]) {
      for (const kind of CORNER_SHEETS) {
        const answer = sheetPages(kind, asked(car, wheel));
        const { bar } = car.form[wheel.end][wheel.side];
        assert.equal(answer.made, kind !== 'bar-order' || bar !== undefined);
        if (answer.made)
          assert.deepEqual(
            outsideBorder(answer.document, 'A4', measure),
            [],
            `${kind} ${wheel.end} ${wheel.side}`,
          );
        else assert.match(answer.message, /no torsion bar/);
      }
    }
  });
}

for (const name of cars) {
  test(`${name}: loads, joint and tightening card stay inside their border, or say what the file lacks`, () => {
    const car = carOf(name);
    const { at: _, wheel: __, ...on } = asked(car, WHEELS[0]!);
    for (const kind of LOAD_SHEETS) {
      for (const paper of ['A4', 'Letter'] as const) {
        const answer = sheetPages(kind, { ...on, paper, speech: paper === 'A4' ? 'mm-N' : 'in-lbf' });
        const needs = kind === 'load' ? car.form.body : car.form.joints?.engineToTub;
        assert.equal(answer.made, needs !== undefined, kind);
        if (answer.made) assert.deepEqual(outsideBorder(answer.document, paper, measure), [], kind);
        else assert.match(answer.message, /file (does not|has no)/);
      }
    }
  });
}

/** Of every spec of the car with a joint: four studs and six, one sort with two figures to choose from. */
test('a mechanic has drawing, values, hold points and all rounds before him on one sheet', () => {
  for (const joint of ['engineToTub', 'caseToEngine'] as const) {
    for (const spec of ['as arrived', 'proposal, six studs to the tub']) {
      const car = carOf('fenwold-201', spec);
      const { at: _, wheel: __, ...on } = asked(car, WHEELS[0]!);
      for (const paper of ['A4', 'Letter'] as const) {
        for (const speech of ['mm-N', 'in-lbf'] as const) {
          const answer = sheetPages('tightening', { ...on, joint, paper, speech });
          assert.ok(answer.made);
          const [first, ...more] = answer.document.pages.map((page) =>
            page.marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])),
          );
          const count = car.form.joints![joint]!.studs.length;
          for (const words of ['HOLD', 'Once more round, no nut moves', String(count)])
            assert.ok(first!.includes(words), `${joint}, ${spec}, ${paper}, ${speech}: ${words}`);
          assert.equal(more.length, 2, `${joint}, ${spec}, ${paper}, ${speech}`);
        }
      }
    }
  }
});

/** One PDF of each kind, of a car that has the part. */
async function oneOfEach(): Promise<Buffer[]> {
  const car = cars.map((name) => carOf(name)).find((each) => each.form.front.left.bar !== undefined)!;
  const jointed = cars.map((name) => carOf(name)).find((each) => each.form.joints !== undefined)!;
  return [
    await order('Letter'),
    ...(await Promise.all(CORNER_SHEETS.map((kind) => sheetPdf(kind, asked(car, WHEELS[0]!))))),
    ...(await Promise.all(LOAD_SHEETS.map((kind) => sheetPdf(kind, asked(jointed, WHEELS[0]!))))),
  ];
}

test('black and white only, and no letter set as the empty box of a font that has it not', async () => {
  for (const content of (await oneOfEach()).flatMap(contents)) {
    assert.doesNotMatch(content, /(^|\s)(rg|RG|k|K|cs|CS|sc|SC|scn|SCN|sh)(\s|$)/);
    const hexes = [...content.matchAll(/<([0-9a-f]+)>/gi)].map((match) => match[1]!);
    assert.ok(hexes.length > 50);
    for (const hex of hexes) {
      for (let k = 0; k < hex.length; k += 4) assert.notEqual(hex.slice(k, k + 4), '0000');
    }
  }
});

test('left and right bars of a car are wound opposite hands', { skip: cars.length === 0 }, () => {
  // common practice, no source: preset bars are handed, and a car's left and right ones do not change places
  let seen = 0;
  for (const car of cars.map((name) => carOf(name))) {
    for (const end of ['front', 'rear'] as const) {
      if (car.form[end].left.bar === undefined || car.form[end].left.bar.preset === 'not preset') continue;
      const hands = (['left', 'right'] as const).map((side) => {
        const answer = sheetPages('bar-order', asked(car, { end, side }));
        assert.ok(answer.made);
        const words = answer.document.pages
          .flatMap((page) => page.marks)
          .map((mark) => (mark.kind === 'text' ? mark.text : ''));
        return words.find((each) => each.endsWith('hand in bump'));
      });
      assert.deepEqual(hands.toSorted(), ['left hand in bump', 'right hand in bump']);
      seen += 1;
    }
  }
  assert.ok(seen > 0);
});

test('the hand is that in which the rocker is seen to turn, by two drawings of the corner', () => {
  const right = (['left', 'right'] as const).flatMap((side) =>
    cars
      .map((name) => carOf(name))
      .flatMap((car) => {
        if (car.form.front[side].bar === undefined) return [];
        const drawn = [0, 1e-3].map(
          (z) => drawCorner(car, { end: 'front', side }, { ...AS_SURVEYED, front: { left: z, right: z } })!,
        );
        const [before, after] = [drawn[0]!, drawn[1]!];
        const arm = sub(before.rocker.joints[0]!, before.rocker.pivot);
        const moved = sub(after.rocker.joints[0]!, before.rocker.joints[0]!);
        const turn = dot(sub(before.bar!.from, before.bar!.to), cross(arm, moved));
        const answer = sheetPages('bar-order', asked(car, { end: 'front', side }));
        assert.ok(answer.made);
        const words = answer.document.pages
          .flatMap((page) => page.marks)
          .map((mark) => (mark.kind === 'text' ? mark.text : ''));
        const hand = words.find((each) => each.endsWith('hand in bump'));
        return hand === undefined
          ? []
          : [{ hand, seen: turn > 0 ? 'right hand in bump' : 'left hand in bump' }];
      }),
  );
  assert.ok(right.length > 0);
  for (const { hand, seen } of right) assert.equal(hand, seen);
});

test('a corner out of reach gives a sentence, not a sheet', async () => {
  const far = { ...asked(carOf(cars[0]!), WHEELS[0]!), at: { travel: 0.5, rack: 0 } };
  await assert.rejects(sheetPdf('corner', far), NoSheet);
});
