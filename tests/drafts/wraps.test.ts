/** Wraps as files: true scale in PDF and SVG, DXF read by a reader of our own. */
import assert from 'node:assert/strict';
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, test } from 'node:test';
import { wrapDxf, wrapPdf, wrapSvg } from '../../src/drafts/index.ts';
import { OVERLAP, tiledPages } from '../../src/drafts/wrap-page.ts';
import { boxOf, type Template } from '../../src/gaspath/pipework/index.ts';
import { paperMeasure } from '../../src/paper/pdf.ts';
import { near } from '../near.ts';
import { TEMPLATES } from './pipes.ts';

const [MITRE, , , , TAIL, FLANGE] = TEMPLATES as readonly [
  Template,
  Template,
  Template,
  Template,
  Template,
  Template,
];
const PRINT = {
  title: 'Wraps',
  workshop: 'Invented workshop',
  date: '2004-05-06',
  version: '0',
  paper: 'A4',
} as const;

const folder = mkdtempSync(join(tmpdir(), 'flatpatch-wraps-'));
after(() => rmSync(folder, { recursive: true }));

const poppler = spawnSync('pdftoppm', ['-v']).error === undefined;
const needsPoppler = poppler ? false : 'poppler-utils is not here: the print is not measured';

interface Grey {
  readonly width: number;
  readonly height: number;
  readonly at: (x: number, y: number) => number;
}

const DPI = 600;
const PER_MM = DPI / 25.4;

/** Pages as another program prints them, dark or light dot by dot. */
function printed(pdf: Buffer, page: number): Grey {
  const file = join(folder, 'wraps.pdf');
  writeFileSync(file, pdf);
  const one = join(folder, 'page');
  const args = ['-gray', '-r', `${DPI}`, '-f', `${page}`, '-l', `${page}`, '-singlefile', file, one];
  const { status, stderr } = spawnSync('pdftoppm', args, { encoding: 'utf8' });
  assert.equal(status, 0, stderr);
  const bytes = readFileSync(`${one}.pgm`);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))!;
  const [width, height] = [Number(head[1]), Number(head[2])];
  return { width, height, at: (x, y) => bytes[head[0].length + y * width + x]! };
}

/** Longest dark run along a row of dots, in mm. */
function longestRun(grey: Grey, y: number): number {
  let [best, run] = [0, 0];
  for (let x = 0; x < grey.width; x += 1) {
    run = grey.at(x, y) < 200 ? run + 1 : 0;
    best = Math.max(best, run);
  }
  return best / PER_MM;
}

const rows = (from: number, to: number): number[] =>
  Array.from({ length: Math.round((to - from) * PER_MM) }, (_, k) => Math.round(from * PER_MM) + k);

test('PDF as printed by another program: the ruler is 100 mm, the mitre 150.80 by 39.88 mm', {
  skip: needsPoppler,
}, async () => {
  const pdf = await wrapPdf(TEMPLATES, PRINT);
  const grey = printed(pdf, 1);
  near(grey.width / PER_MM, 210, 0.05);
  const bottom = grey.height / PER_MM;
  // the ruler's line with half the width of its end ticks on each side: 0.25 mm, and a dot of 0.04 mm each way
  const ruler = Math.max(...rows(bottom - 35, bottom - 15).map((y) => longestRun(grey, y)));
  near(ruler, 100.25, 0.1);
  const base = Math.max(...rows(30, bottom - 45).map((y) => longestRun(grey, y)));
  near(base, 150.796 + 0.25, 0.1);
  // height at the long side, half way: the darkest dots of that column from the curve down to the straight side
  const column = Math.round((10 + 150.796 / 2 + 30) * PER_MM);
  const dark = rows(25, bottom - 45).filter((y) => grey.at(column, y) < 128);
  const expected = 20 + 24 * Math.tan(Math.PI / 8) * (1 - Math.cos(Math.PI + 30 / 24));
  // a thick line of 0.5 and a thin one of 0.25 mm
  near((Math.max(...dark) - Math.min(...dark)) / PER_MM, expected + 0.375, 0.15);
});

test('a wrap longer than the paper goes over pages that share a join, and nothing is lost', () => {
  const pages = tiledPages(TAIL, 'A4', paperMeasure());
  assert.equal(pages.length, 2);
  const { min, max } = boxOf(TAIL);
  const width = (max.x - min.x) * 1e3;
  const step = pages[0]!.size.width - 20 - OVERLAP;
  const dashed = pages.map((page) =>
    page.marks.flatMap((mark) =>
      mark.kind === 'polyline' && mark.dash?.[0] === 1 ? [mark.points[0]!.x] : [],
    ),
  );
  // the same join on both, a window's step apart
  near(dashed[0]![0]! - step, dashed[1]![0]!, 1e-9);
  const reach = pages.map((page) =>
    Math.max(
      ...page.marks.flatMap((mark) =>
        mark.kind === 'polyline' && mark.weight >= 0.5 ? mark.points.map(({ x }) => x - 10) : [],
      ),
    ),
  );
  near(reach[1]! + step, width, 1e-9);
  for (const page of pages) {
    const rulers = page.marks.filter((mark) => mark.kind === 'text' && mark.text.startsWith('100 mm'));
    assert.equal(rulers.length, 1);
    assert.ok(page.marks.some((mark) => mark.kind === 'text' && mark.text.startsWith('Estimates from')));
  }
});

test('every page of every template keeps 10 mm from the edge of the paper', () => {
  const measure = paperMeasure();
  for (const paper of ['A4', 'Letter'] as const) {
    for (const template of TEMPLATES) {
      for (const page of tiledPages(template, paper, measure)) {
        for (const mark of page.marks) {
          const points = mark.kind === 'polyline' ? mark.points : mark.kind === 'text' ? [mark.at] : [];
          for (const { x, y } of points) {
            assert.ok(
              x >= 10 - 1e-9 && x <= page.size.width - 10 + 1e-9 && y >= 5 && y <= page.size.height - 5,
              `${template.name}: ${x}, ${y}`,
            );
          }
        }
      }
    }
  }
});

test('SVG: its size is in millimetres, its user unit is one of them, the ruler is 100 of them', () => {
  const svg = wrapSvg(MITRE);
  const [, width, height, vw, vh] =
    /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg)!;
  assert.equal(width, vw);
  assert.equal(height, vh);
  const lines = [...svg.matchAll(/points="([^"]+)"/g)].map(([, points]) =>
    points!.split(' ').map((each) => each.split(',').map(Number) as [number, number]),
  );
  const flat = lines.filter((line) => line.length === 2 && line[0]![1] === line[1]![1]);
  assert.ok(
    flat.some(([a, b]) => Math.abs(b![0] - a![0]) === 100),
    'no line of 100 mm',
  );
  const longest = lines.reduce((a, b) => (b.length > a.length ? b : a));
  // three decimals are written
  near(longest.at(-1)![0] - longest[0]![0], 150.796, 0.0011);
  const ys = longest.map(([, y]) => y);
  near(Math.max(...ys) - Math.min(...ys), 19.8823, 0.0011);
});

/** Group codes and values of a DXF text, pair by pair. */
function pairs(dxf: string): { readonly code: number; readonly value: string }[] {
  const lines = dxf.split(/\r?\n/);
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, k) => ({
    code: Number(lines[2 * k]),
    value: lines[2 * k + 1]!,
  }));
}

interface Entity {
  readonly type: string;
  readonly of: (code: number) => number[];
  readonly layer: string;
}

function entities(dxf: string): Entity[] {
  const all = pairs(dxf);
  const start = all.findIndex(({ code, value }) => code === 2 && value === 'ENTITIES');
  const found: { type: string; values: { code: number; value: string }[] }[] = [];
  for (const { code, value } of all.slice(start + 1)) {
    if (code === 0 && value === 'ENDSEC') break;
    if (code === 0) found.push({ type: value, values: [] });
    else found.at(-1)?.values.push({ code, value });
  }
  return found.map(({ type, values }) => ({
    type,
    of: (code) => values.filter((each) => each.code === code).map(({ value }) => Number(value)),
    layer: values.find(({ code }) => code === 8)?.value ?? '',
  }));
}

test('DXF read again pair by pair: millimetres, layers, every line and arc where it was', () => {
  for (const template of TEMPLATES) {
    const dxf = wrapDxf(template);
    const all = pairs(dxf);
    const unit = all.findIndex(({ value }) => value === '$INSUNITS');
    // 4 is millimetres in the published table of $INSUNITS (from memory)
    assert.deepEqual(all[unit + 1], { code: 70, value: '4' });
    const found = entities(dxf).filter(({ type }) => type !== 'TEXT');
    assert.equal(found.length, template.lines.length);
    template.lines.forEach((line, k) => {
      const entity = found[k]!;
      assert.equal(entity.layer, line.use.toUpperCase());
      if (line.kind === 'polyline') {
        assert.equal(entity.type, 'LWPOLYLINE');
        const [xs, ys] = [entity.of(10), entity.of(20)];
        assert.equal(xs.length, line.points.length);
        line.points.forEach(({ x, y }, i) => {
          near(xs[i]!, x * 1e3, 1e-9);
          near(ys[i]!, y * 1e3, 1e-9);
        });
      } else {
        const full = line.to - line.from > 6.28;
        assert.equal(entity.type, full ? 'CIRCLE' : 'ARC');
        near(entity.of(10)[0]!, line.centre.x * 1e3, 1e-9);
        near(entity.of(20)[0]!, line.centre.y * 1e3, 1e-9);
        near(entity.of(40)[0]!, line.radius * 1e3, 1e-9);
        if (full) return;
        near(entity.of(50)[0]!, (line.from * 180) / Math.PI, 1e-9);
        near(entity.of(51)[0]!, (line.to * 180) / Math.PI, 1e-9);
      }
    });
  }
  assert.equal(entities(wrapDxf(FLANGE)).filter(({ type }) => type === 'CIRCLE').length, 2);
});
