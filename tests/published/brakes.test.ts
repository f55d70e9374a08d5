/**
 * Brakes by handbook arithmetic.
 *
 * [line]   100 lbf on a 6:1 pedal and a 1.0 in bore: about 760 psi (worked example of a page on line pressure, seen)
 * [disc]   T = 2 μ F r of a disc brake with two pads (engineeringtoolbox.com, disk brakes, seen): the formula
 * [bores]  15.9 to 17.8 mm of master cylinder: a quarter of the pressure; common practice, no source
 */
import { test } from 'node:test';
import {
  barFor,
  barShare,
  brakeTorque,
  frontShareOf,
  linePressure,
} from '../../src/flatfloor/brakes/hydraulics.ts';
import { toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

const area = (d: number): number => (Math.PI * d * d) / 4;

test('[line] 100 lbf, 6:1, 1.0 in', () => {
  const p = linePressure({ F_r: toSI(600, 'lbf'), A_c: area(0.0254) });
  // "about 760": to 5 psi; by hand 600/0.785398 = 763.94
  near(p / toSI(1, 'psi'), 760, 5);
  near(p / toSI(1, 'psi'), 763.94, 0.005);
});

test('[disc] T = 2 μ F r: 0.45, 30 bar on 25 cm², 0.125 m', () => {
  // F = 7500 N; 2 × 0.45 × 7500 × 0.125 = 843.75 N m
  near(brakeTorque({ μ: 0.45, p: 30e5, A_p: 25e-4, r_b: 0.125 }), 843.75, 1e-9);
});

test('[bores] a bore of 17.8 mm for 15.9 mm takes a quarter more force for its pressure', () => {
  const ratio =
    linePressure({ F_r: 1000, A_c: area(0.0159) }) / linePressure({ F_r: 1000, A_c: area(0.0178) });
  // told as 25 %
  near(ratio, 1.25, 0.005);
});

test('a bar in the middle with brakes alike shares by halves; a quarter of its width off, by three to one', () => {
  near(barShare({ x_b: 0, w: 0.06 }), 0.5, 1e-15);
  const f = barShare({ x_b: 0.015, w: 0.06 });
  near(f, 0.75, 1e-15);
  near(frontShareOf({ f, G_1: 4, G_2: 4 }), 0.75, 1e-15);
  // moments about the bearing by hand: 3:1 by the bar and 2:1 by the brakes are 6:1
  near(frontShareOf({ f, G_1: 4, G_2: 2 }), 6 / 7, 1e-15);
  near(barFor({ w: 0.06, Λ_i: 6 / 7, G_1: 4, G_2: 2 }), 0.015, 1e-15);
});
