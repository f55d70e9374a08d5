/**
 * Threads against ISO 898-1 (stress areas, proof and ultimate loads, as reproduced by fastener distributors: seen),
 * ASME B1.1 tables (seen), ISO 724 (from memory) and BS 84 (from memory).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { stressArea } from '../../src/loadpath/stud/preload.ts';
import { FASTENER_MATERIALS, fastenerMaterial } from '../../src/materials/fastener-material.ts';
import { type Thread, threadNamed, threadsLike } from '../../src/materials/thread.ts';
import { near } from '../near.ts';

const thread = (name: string): Thread => {
  const found = threadNamed(name);
  assert.ok(found, `${name} is a standard thread`);
  return found;
};

const MM2 = 1e-6;
const INCH = 0.0254;

test('D01–D04 (P) ISO 898-1: stress area, proof and ultimate loads of coarse threads', () => {
  const rows: Readonly<Record<string, readonly number[]>> = {
    // area mm², then proof 8.8 10.9 12.9 and ultimate 8.8 10.9 12.9, N; the table multiplies a rounded area
    M5: [14.2, 8230, 11800, 13800, 11350, 14800, 17300],
    M6: [20.1, 11600, 16700, 19500, 16100, 20900, 24500],
    M8: [36.6, 21200, 30400, 35500, 29200, 38100, 44600],
    M12: [84.3, 48900, 70000, 81800, 67400, 87700, 103000],
  };
  for (const [name, [area, ...loads]] of Object.entries(rows)) {
    const found = stressArea(thread(name));
    near(found / MM2, area!, 0.05, name);
    (['8.8', '10.9', '12.9'] as const).forEach((grade, k) => {
      const { proof, strength } = fastenerMaterial(grade)!;
      near(found * proof, loads[k]!, 0.007 * loads[k]!, `${name} proof ${grade}`);
      near(found * strength, loads[3 + k]!, 0.004 * loads[3 + k]!, `${name} ultimate ${grade}`);
    });
  }
});

test('D05–D07 (M) ISO 898-1 fine threads, D08–D09 (N) ISO 724 diameters', () => {
  near(stressArea(thread('M8x1')) / MM2, 39.2, 0.05);
  near(stressArea(thread('M10x1.25')) / MM2, 61.2, 0.05);
  near(stressArea(thread('M12x1.5')) / MM2, 88.1, 0.05);
  for (const [name, d2, D1, d3] of [
    ['M8', 7.188, 6.647, 6.466],
    ['M12', 10.863, 10.106, 9.853],
  ] as const) {
    const of = thread(name);
    near(of.pitchDiameter * 1e3, d2, 6e-4);
    near(of.minor * 1e3, D1, 6e-4);
    near(of.root * 1e3, d3, 6e-4);
  }
});

test('D10–D15 (P) ASME B1.1: tensile stress area and pitch diameter of unified threads', () => {
  for (const [name, area, pitch] of [
    ['#10-32 UNF', 0.02, 0.1697],
    ['1/4-28 UNF', 0.0364, 0.2268],
    ['3/8-24 UNF', 0.0878, 0.3479],
    ['1/2-20 UNF', 0.1599, 0.4675],
    ['5/8-18 UNF', 0.256, 0.5889],
    ['3/8-16 UNC', 0.0775, 0.3344],
  ] as const) {
    const of = thread(name);
    near(stressArea(of) / INCH ** 2, area, 1.1e-4, name);
    near(of.pitchDiameter / INCH, pitch, 6e-5, name);
  }
});

test('BS 84 (from memory): effective and minor diameters of fine Whitworth threads', () => {
  for (const [name, effective, minor] of [
    ['1/4 BSF', 0.2254, 0.2008],
    ['3/8 BSF', 0.343, 0.311],
    ['1/2 BSF', 0.46, 0.42],
  ] as const) {
    const of = thread(name);
    near(of.pitchDiameter / INCH, effective, 6e-5, name);
    near(of.root / INCH, minor, 1.1e-4, name);
  }
});

test('a thread is known by the ways in which it is written, and by no other', () => {
  assert.equal(thread('m10 x 1.25').name, 'M10x1.25');
  assert.equal(thread('M10×1.25').name, 'M10x1.25');
  assert.equal(thread('M10').name, 'M10x1.5');
  assert.equal(thread('3/8 UNF').name, '3/8-24 UNF');
  assert.equal(thread('3/8-24UNF').name, '3/8-24 UNF');
  for (const none of ['3/8-25 UNF', 'M10x9', 'M2', 'M11', '3/8', 'UNF', '', '3/0 UNF', 'M99x2']) {
    assert.equal(threadNamed(none), undefined, none);
  }
  assert.ok(threadsLike('3/8-25 UNF').includes('3/8-24 UNF'));
});

test('every row of the stock is plausible: proof below yield below strength', () => {
  for (const { name, proof, yield: yields, strength } of FASTENER_MATERIALS) {
    assert.ok(proof < yields && yields < strength, name);
  }
});
