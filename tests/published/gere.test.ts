/**
 * Gere & Goodno, Mechanics of Materials, 7th ed. (and Gere, 6th ed.): torsion of round bars.
 *
 * P  the answer was read: X in the archived run of the book's example, B in the instructor's solution
 * Q  the inputs were read, the answer was not: the figure is our own and cannot disagree with itself
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  activeLength,
  barTwist,
  equivalentLength,
  parallelRate,
  polarSecondMoment,
  type RoundSection,
  seriesRate,
  skinStress,
  storedEnergy,
  type TorsionBar,
  torsionBarRate,
  twistOfSections,
} from '../../src/loadpath/spring/torsion-bar.ts';
import { fromSI, toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

const bar = (of: RoundSection & { length: number; shearModulus: number }): TorsionBar => ({
  diameter: of.diameter,
  bore: of.bore,
  parallelLength: of.length,
  ends: [{ kind: 'none' }, { kind: 'none' }],
  shearModulus: of.shearModulus,
  density: 7850,
});
const solid = (diameter: number): RoundSection => ({ diameter, bore: 0 });
const inch = (value: number): number => toSI(value, 'in');
const degrees = (value: number): number => fromSI(value, 'deg');

test('A21 (P, X) Ex. 3.1: solid bar, stress 4527 psi, twist 1.62°, torque allowed 331 lbf·ft', () => {
  const shaft = bar({ ...solid(inch(1.5)), length: inch(54), shearModulus: toSI(11.5e6, 'psi') });
  const torque = toSI(250, 'lbf ft');
  // last printed digits
  near(fromSI(skinStress(shaft, torque), 'psi'), 4527, 0.5);
  near(degrees(barTwist(shaft, torque)), 1.62, 0.005);
  const byStress = toSI(6000, 'psi') / skinStress(shaft, 1);
  const byTwist = toSI(2.5, 'deg') * torsionBarRate(shaft);
  near(fromSI(Math.min(byStress, byTwist), 'lbf ft'), 331, 0.5);
});

test('A01 (Q) Ex. 3-1: the same bar, own figures 4530 psi and 1.62°', () => {
  const shaft = bar({ ...solid(inch(1.5)), length: inch(54), shearModulus: toSI(11.5e6, 'psi') });
  near(fromSI(skinStress(shaft, toSI(250, 'lbf ft')), 'psi'), 4530, 5);
  near(degrees(barTwist(shaft, toSI(250, 'lbf ft'))), 1.62, 0.005);
});

// Diameters follow from our own functions: stress goes with 1/D³ and rate with D⁴ at a fixed bore ratio.
const byStress = (boreRatio: number): number =>
  (skinStress({ diameter: 1, bore: boreRatio }, 1200) / 40e6) ** (1 / 3);
const byTwistRate = (boreRatio: number): number =>
  (1200 / toSI(0.75, 'deg') / (78e9 * polarSecondMoment({ diameter: 1, bore: boreRatio }))) ** (1 / 4);

test('A22 (P, X) Ex. 3.2: solid 53.46 mm and hollow 63.73 mm by stress; ratios 1.14 and 0.47 by twist', () => {
  near(byStress(0), 0.05346, 6e-6);
  near(byStress(0.8), 0.06373, 6e-6);
  const [whole, tube] = [byTwistRate(0), byTwistRate(0.8)];
  near(tube / whole, 1.14, 0.005);
  near((tube ** 2 * (1 - 0.8 ** 2)) / whole ** 2, 0.47, 0.005);
});

test('A02 (Q) Ex. 3-2: diameters by twist, own figures 58.8 and 67.1 mm', () => {
  near(byTwistRate(0), 0.0588, 5e-5);
  near(byTwistRate(0.8), 0.0671, 5e-5);
});

test('A24 (P, X) Ex. 3.4: two parts with opposite torques, 33.0 MPa and −0.011 rad', () => {
  near(skinStress(solid(0.03), 175) / 1e6, 33.0, 0.05);
  const twist = twistOfSections(
    [
      { ...solid(0.03), length: 0.5, torque: -275 },
      { ...solid(0.03), length: 0.4, torque: 175 },
    ],
    80e9,
  );
  near(twist, -0.011, 0.0005);
});

test('A03 (Q) Ex. 3-6: hollow tube, own figure 58.2 MPa', () => {
  near(skinStress({ diameter: 0.08, bore: 0.06 }, 4000) / 1e6, 58.2, 0.05);
});

test('A35 (P, B) solution 3.3-7: hollow bar on the bench, modulus from a measured twist', () => {
  const tube = { diameter: inch(1.75), bore: inch(1.25) };
  const torque = toSI(6200, 'lbf in');
  const J = polarSecondMoment(tube);
  near(fromSI(J, 'in^4'), 0.681, 0.0005);
  const stress = skinStress(tube, torque);
  near(fromSI(stress, 'psi'), 7965, 0.5);
  const twist = toSI(4, 'deg');
  near((twist * tube.diameter) / 2 / inch(24), 0.00255, 6e-6);
  // 600 psi: the printed modulus carries the rounding of the printed strain
  near(fromSI((torque * inch(24)) / (J * twist), 'psi'), 3.129e6, 600);
});

test('A37 (P, B) solution 3.4-9 with Ex. 3-5: tapered bar, factor 0.469136, d_A 2.30 and 2.52 in', () => {
  // equivalent length of a cone over its own length is the factor (β² + β + 1)/3β³ of the book
  const cone = { kind: 'taper', length: inch(48), headDiameter: 1.5 * inch(2.5) } as const;
  const factor = equivalentLength(cone, solid(inch(2.5))) / cone.length;
  near(factor, 0.469136, 6e-7);
  const torque = toSI(36000, 'lbf in');
  const G = toSI(3.9e6, 'psi');
  const fourth = (torque * factor * cone.length) / (G * toSI(3, 'deg') * polarSecondMoment(solid(1)));
  near(fromSI(fourth, 'in^4'), 40.437, 6e-5);
  near(fromSI(fourth * toSI(3, 'deg'), 'in^4'), 2.11728, 6e-6);
  near(fromSI(fourth ** 0.25, 'in'), 2.52, 0.005);
  const stressed = (skinStress(solid(1), torque) / toSI(15000, 'psi')) ** (1 / 3);
  near(fromSI(stressed, 'in'), 2.3, 0.005);
});

test('A08 (N) Ex. 3-5 from memory: cone 20 to 30 mm over 40 mm is worth 18.765 mm of bar', () => {
  const cone = { kind: 'taper', length: 0.04, headDiameter: 0.03 } as const;
  near(equivalentLength(cone, solid(0.02)), 18.765e-3, 1e-6);
});

test('A39 (P, B) solution 3.8-11: bar inside a tube, torque shared as the rates', () => {
  const rod = solid(inch(1.5));
  const tube = { diameter: inch(2.25), bore: inch(1.75) };
  near(fromSI(polarSecondMoment(rod), 'in^4'), 0.49701, 6e-7);
  near(fromSI(polarSecondMoment(tube), 'in^4'), 1.59534, 6e-7);
  const rates = [rod, tube].map((each) =>
    torsionBarRate(bar({ ...each, length: inch(30), shearModulus: toSI(11.6e6, 'psi') })),
  );
  const twist = toSI(5000, 'lbf in') / parallelRate(rates);
  const [inRod, inTube] = rates.map((each) => each * twist);
  near(fromSI(inRod!, 'lbf in'), 1187.68, 0.006);
  near(fromSI(inTube!, 'lbf in'), 3812.32, 0.006);
  // three printed figures
  near(fromSI(skinStress(rod, inRod!), 'psi'), 1790, 5);
  near(fromSI(skinStress(tube, inTube!), 'psi'), 2690, 5);
});

test('A40 (P, B) 6th ed. solution 3.9-2: twist 0.026667 rad and energy 5.36 J at a given stress', () => {
  const shaft = bar({ ...solid(0.04), length: 0.75, shearModulus: 45e9 });
  const torque = 32e6 / skinStress(shaft, 1);
  near(barTwist(shaft, torque), 0.026667, 6e-7);
  near(degrees(barTwist(shaft, torque)), 1.53, 0.005);
  near(storedEnergy(shaft, torque), 5.36, 0.005);
});

test('A11 (D) 20 mm, 600 mm, 80 GPa: 2094.4 N·m/rad, 36.55 N·m/deg, 64.64 N/mm on 180 mm', () => {
  const k = torsionBarRate(bar({ ...solid(0.02), length: 0.6, shearModulus: 80e9 }));
  near(k, 2094.4, 0.05);
  near(fromSI(k, 'N m/deg'), 36.55, 0.005);
  near(k / 0.18 ** 2 / 1e3, 64.64, 0.005);
});

test('A09, A10 (D) circular fillets add 8.446 and 13.626 mm of bar', () => {
  const fillet = (radius: number, headDiameter: number) =>
    ({ kind: 'fillet', radius, headDiameter }) as const;
  near(equivalentLength(fillet(0.02, 0.03), solid(0.02)), 8.446e-3, 1e-6);
  near(equivalentLength(fillet(0.05, 0.032), solid(0.025)), 13.626e-3, 1e-6);
  const whole = { ...bar({ ...solid(0.02), length: 0.5, shearModulus: 80e9 }), splineLength: 0.004 };
  const ends = [fillet(0.02, 0.03), { kind: 'taper', length: 0.04, headDiameter: 0.03 }] as const;
  near(activeLength({ ...whole, ends }), 0.5 + 0.008446 + 0.018765 + 0.004, 2e-6);
});

test('two bars in a row give as one of both lengths', () => {
  const half = torsionBarRate(bar({ ...solid(0.02), length: 0.3, shearModulus: 80e9 }));
  const whole = torsionBarRate(bar({ ...solid(0.02), length: 0.6, shearModulus: 80e9 }));
  assert.ok(Math.abs(seriesRate([half, half]) - whole) < 1e-9 * whole); // rounding only
});
