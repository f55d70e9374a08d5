/** Bhandari, Design of Machine Elements, 3rd ed., ch. 10 (P: read). Lengths in mm and forces in N as printed. */
import { test } from 'node:test';
import { repeatedLoadFactor } from '../../src/loadpath/spring/coil-limits.ts';
import { type CoilSpring, coilRate, coilStress, solidLength } from '../../src/loadpath/spring/coil-spring.ts';
import { LinearSpring, Parallel } from '../../src/loadpath/spring/elements.ts';
import { near } from '../near.ts';

const coil = (wire: number, meanDiameter: number, activeCoils: number): CoilSpring => ({
  wire: wire / 1e3,
  meanDiameter: meanDiameter / 1e3,
  activeCoils,
  ends: 'closed and ground',
  freeLength: 0.2,
  shearModulus: 81370e6,
  youngsModulus: 206e9,
  density: 7850,
});

test('B02 (P) Ex. 10.1: wire 6.625 mm, coils 7.91, free length 109.34 mm, pitch 12.149 mm', () => {
  // stress goes with 1/d² at a fixed index, so the wire follows from the stress of a 1 mm one
  const wire = Math.sqrt(coilStress(coil(1, 6, 8), 1250, 'Wahl') / (0.5 * 1090e6));
  near(wire, 6.625, 0.001);
  const coils = coilRate(coil(7, 42, 1)) / (1250 / 30e-3);
  near(coils, 7.91, 0.01);
  const spring = coil(7, 42, 8);
  const solid = solidLength(spring) * 1e3;
  const deflection = (1250 / coilRate(spring)) * 1e3;
  const free = solid + (10 - 1) * 1 + deflection; // 1 mm gap in each of the nine spaces of ten coils
  near(free, 109.34, 0.01);
  near(free / (10 - 1), 12.149, 0.001); // the book divides by the spaces of all ten coils
});

test('B03 (P) Ex. 10.19: two springs one in the other, the inner 15 mm shorter', () => {
  const outer = coil(6, 36, 10);
  const inner = coil(5, 30, 8);
  const outside = LinearSpring({ rate: coilRate(outer) });
  const inside = LinearSpring({ rate: coilRate(inner), freeAt: 0.015 });
  const both = Parallel([outside, inside]);
  // past the kink both are straight, so one step of the secant from it is exact
  const from = both.kinks.at(-1)!.at;
  const compression = from + (1000 - both.force(from)) / both.rate(from);
  near(compression * 1e3, 24.989, 0.001);
  near(outside.force(compression), 706.02, 0.01);
  near(inside.force(compression), 293.98, 0.01);
  near(coilStress(outer, outside.force(compression), 'Wahl') / 1e6, 375.31, 0.01);
  near(coilStress(inner, inside.force(compression), 'Wahl') / 1e6, 225.03, 0.01);
});

test('B04 (P) Ex. 10.13: factor against fatigue 1.26 between 50 and 150 N', () => {
  const strength = 1430e6;
  const wire = { yieldShear: 0.45 * strength, repeatedLimit: 0.22 * strength };
  near(repeatedLoadFactor(coil(3, 18, 8), { low: 50, high: 150 }, wire), 1.26, 0.005);
});
