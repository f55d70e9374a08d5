/**
 * A pipe held while it is heated, against what books have for bars, cantilevers and arches.
 *
 * Hibbeler, Mechanics of Materials, example 4-10 (from memory): A-36 bar between two walls, 60 to 120 °F, 6.60e-6 1/°F,
 * 29e3 ksi: 11.5 ksi. Kharagpur lecture notes on structural analysis, lesson 34, elastic centre method (seen): thrust of
 * a heated arch without hinges. Guided cantilever: F = 12EIδ/L³ and M = 6EIδ/L² (Gere, table of beams, from memory).
 * ASME B31.3, table D300, as a spreadsheet works it (seen): D 711.2, T 9.4, R 1066.8, r 350.9 mm: h 0.081, k 20.26, i 4.79.
 * Growth: 0.5 m at 14e-6 1/K by 750 K is 5.25 mm (first principles).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { Matrix, solve } from 'ml-matrix';
import {
  bendCharacteristic,
  flexibilityFactor,
  HeatedLine,
  stressFactor,
  type Wrench,
} from '../../src/gaspath/hot/heated-line.ts';
import { hotSet } from '../../src/gaspath/hot/hot-set.ts';
import { hotPipe, mouth, type Pipe } from '../../src/gaspath/pipework/index.ts';
import { distance } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

const TUBE = { od: 0.0476, wall: 0.001, density: 8440 };
const [OUT, IN] = [0.0238, 0.0228];
const AREA = Math.PI * (OUT ** 2 - IN ** 2);
const SECOND = (Math.PI / 4) * (OUT ** 4 - IN ** 4);
const E = 170e9;
const HEAT = { expansion: 14e-6, hotter: 700 };

const straight = (length: number, name = '1', y = 0): Pipe => ({
  name,
  tube: TUBE,
  start: { p: [0, y, 0], d: [1, 0, 0] },
  elements: [{ kind: 'straight', length }],
});

/** Wrench that forces a motion on the mouth. */
function forced(line: HeatedLine, motion: readonly number[]): number[] {
  const compliance = new Matrix(line.compliance.map((row) => [...row])).transpose();
  return solve(compliance, Matrix.columnVector([...motion])).to1DArray();
}

test('a straight bar held at both ends: stress E α ΔT, as in the book 11.5 ksi', () => {
  const [alpha, hotter, modulus] = [6.6e-6 * 1.8, 60 / 1.8, 29e6 * 6894.757];
  const line = new HeatedLine(straight(0.6), { expansion: alpha, hotter }, modulus);
  const [axial] = forced(
    line,
    line.byHeat.map((each) => -each),
  );
  // 11.48 by his figures; printed to three digits
  near(-axial! / AREA / 6894.757 / 1000, 11.5, 0.05);
});

test('a guided cantilever: 12EIδ/L³ and 6EIδ/L²', () => {
  const L = 0.5;
  const line = new HeatedLine(straight(L), HEAT, E);
  const wrench = forced(line, [0, 0.001, 0, 0, 0, 0]);
  near(wrench[1]! / ((12 * E * SECOND * 0.001) / L ** 3), 1, 1e-9);
  near(Math.abs(wrench[5]!) / ((6 * E * SECOND * 0.001) / L ** 2), 1, 1e-9);
  // the skin at the root: M r/EI = 6 δ r/L²; the places looked at lie within 3 mm of it, 1.1 % of the fall to the middle
  const { strain } = line.strained(wrench as unknown as Wrench);
  near(strain / ((6 * 0.001 * OUT) / L ** 2), 1, 0.012);
});

test('a heated half ring without hinges: thrust by the elastic centre', () => {
  const R = 0.3;
  const ring: Pipe = {
    name: 'ring',
    tube: TUBE,
    start: { p: [0, 0, 0], d: [0, 0, 1] },
    elements: [{ kind: 'bend', radius: R, angle: Math.PI, normal: [0, 1, 0] }],
  };
  const line = new HeatedLine(ring, HEAT, E, true);
  const spread = HEAT.expansion * HEAT.hotter * 2 * R;
  const y2 = R ** 3 * (Math.PI / 2 - 4 / Math.PI);
  const thrust = spread / (y2 / (E * SECOND) + (Math.PI * R) / 2 / (E * AREA));
  const wrench = forced(
    line,
    line.byHeat.map((each) => -each),
  );
  near(Math.abs(wrench[0]!) / thrust, 1, 1e-6);
  near(wrench[2]! / thrust, 0, 1e-9);
});

test('flexibility and stress of a bend as the piping code has them', () => {
  const h = bendCharacteristic({ w: 9.4, R: 1066.8, r: 350.9 });
  near(h, 0.081, 5e-4);
  near(flexibilityFactor({ h }), 20.26, 0.01);
  near(stressFactor({ h }), 4.79, 0.005);
});

test('a half ring of thin wall gives k times as much under a force', () => {
  const bend: Pipe = {
    name: 'b',
    tube: TUBE,
    start: { p: [0, 0, 0], d: [0, 0, 1] },
    elements: [{ kind: 'bend', radius: 0.0714, angle: Math.PI / 2, normal: [0, 1, 0] }],
  };
  const moment: Wrench = [0, 0, 0, 0, 1, 0];
  const turnOf = (stiff: boolean): number => new HeatedLine(bend, HEAT, E, stiff).compliance[4]![4];
  const k = 1.65 / ((0.001 * 0.0714) / 0.0233 ** 2);
  near(turnOf(false) / turnOf(true), k, 1e-9);
  assert.ok(new HeatedLine(bend, HEAT, E).strained(moment).strain > 0);
});

test('a pipe alone that carries its collector grows as a scaled pipe does, without force', () => {
  const pipe: Pipe = {
    ...straight(0.2),
    elements: [
      { kind: 'straight', length: 0.2 },
      { kind: 'bend', radius: 0.0714, angle: 1.2, normal: [0, 1, 0] },
      { kind: 'straight', length: 0.3 - 0.0714 * 1.2 },
    ],
  };
  const heat = { expansion: 14e-6, hotter: 750 };
  const end = mouth(pipe);
  const { lines } = hotSet({
    pipes: [pipe],
    heat,
    modulus: E,
    collector: { mouth: end.p, axis: end.t },
    joins: 'welded',
    held: 'by its pipes',
  });
  const { points, force, strained } = lines[0]!;
  assert.ok(force < 1e-3 && strained.strain < 1e-9);
  const last = points.at(-1)!;
  const at = last.cold.map((each, k) => each + last.shift[k]!) as unknown as typeof end.p;
  near(distance(at, mouth(hotPipe(pipe, heat)).p), 0, 1e-9);
  near(heat.expansion * 0.5 * heat.hotter, 0.00525, 1e-12);
});

test('straight pipes in slip joints of a held collector slide in by α L ΔT and carry nothing', () => {
  const pipes = [straight(0.5, '1', 0.05), straight(0.5, '2', -0.05)];
  const set = hotSet({
    pipes,
    heat: HEAT,
    modulus: E,
    collector: { mouth: [0.5, 0, 0], axis: [1, 0, 0] },
    joins: 'slip',
    held: 'to the engine',
  });
  for (const { slides } of set.lines) near(slides, 14e-6 * 0.5 * 700, 1e-12);
  // welded and held, the same pipes push with E A α ΔT each; the ring of the hot collector spreads, which bends them
  const welded = hotSet({
    pipes,
    heat: HEAT,
    modulus: E,
    collector: { mouth: [0.5, 0, 0], axis: [1, 0, 0] },
    joins: 'welded',
    held: 'to the engine',
  });
  const push = E * AREA * 14e-6 * 700;
  const aside = (12 * E * SECOND * (14e-6 * 700 * 0.05)) / 0.5 ** 3;
  for (const { force } of welded.lines) near(force / Math.hypot(push, aside), 1, 1e-9);
});
