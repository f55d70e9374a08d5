/**
 * EN 13906-1:2013, cylindrical compression springs. The formulas are remembered, not read (N), and the figures
 * are our own; what stands against them here is a second formula or first principles.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { buckling, criticalFreeLength } from '../../src/loadpath/spring/coil-limits.ts';
import {
  type CoilSpring,
  coilStress,
  stressFactor,
  surgeFrequency,
} from '../../src/loadpath/spring/coil-spring.ts';
import { near } from '../near.ts';

const SPRING: CoilSpring = {
  wire: 5e-3,
  meanDiameter: 34.6e-3,
  activeCoils: 9.5,
  ends: 'closed and ground',
  freeLength: 0.2,
  shearModulus: 81500e6,
  youngsModulus: 206e9,
  density: 7850,
};

test('B06 (N) factor at index 4, 6.92 and 8; the same as (4w + 2)/(4w − 3)', () => {
  near(stressFactor('EN 13906-1', 4), 1.3846, 1e-4);
  near(stressFactor('EN 13906-1', 6.92), 1.2026, 1e-4);
  near(stressFactor('EN 13906-1', 8), 1.1724, 1e-4);
  for (const w of [4, 6.92, 8, 12]) near(stressFactor('EN 13906-1', w), (4 * w + 2) / (4 * w - 3), 1e-12);
});

test('B07 (D) stresses of one spring, plain at 280 N and corrected at 620 N', () => {
  near(coilStress(SPRING, 280, 'none') / 1e6, 197.4, 0.1);
  near(coilStress(SPRING, 620, 'EN 13906-1') / 1e6, 525.6, 0.1);
});

test('B08 (N) surge: the standard’s constant and the wave along the wire agree', () => {
  const f = surgeFrequency(SPRING);
  near(f, 159.4, 0.05);
  // 3560·d/(n·D²)·√(G/ρ) with mm, N/mm² and kg/dm³, per second: 0.03 % from first principles
  const { wire: d, meanDiameter: D, activeCoils: n, shearModulus: G, density: ρ } = SPRING;
  const standard = ((3560 * (d * 1e3)) / (n * (D * 1e3) ** 2)) * Math.sqrt(G / 1e6 / (ρ / 1e3));
  near(standard, 159.5, 0.05);
  near(f / standard, 1, 5e-4);
});

test('B09 (N) buckling at 17.41 mm with hinged ends; a short, well held spring cannot', () => {
  const found = buckling(SPRING, 'both ends hinged');
  assert.equal(found.kind, 'buckles');
  if (found.kind === 'buckles') near(found.at * 1e3, 17.41, 0.01);
  assert.deepEqual(buckling({ ...SPRING, freeLength: 0.1058 }, 0.5), { kind: 'cannot buckle' });
  near(criticalFreeLength(SPRING, 1) / SPRING.meanDiameter, 2.58, 0.005);
});

test('at the critical free length the root is just nothing (two forms of one condition)', () => {
  const limit = criticalFreeLength(SPRING, 0.7);
  assert.equal(buckling({ ...SPRING, freeLength: limit * 0.999 }, 0.7).kind, 'cannot buckle');
  assert.equal(buckling({ ...SPRING, freeLength: limit * 1.001 }, 0.7).kind, 'buckles');
});
