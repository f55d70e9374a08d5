/** Levinson, Statics and Strength of Materials: read in the archived runs of the book's examples (P, X). */
import { test } from 'node:test';
import {
  parallelRate,
  seriesRate,
  skinStress,
  twistOfSections,
} from '../../src/loadpath/spring/torsion-bar.ts';
import { fromSI, toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

test('A26 (P, X) Ex. 10.1, p. 229: hollow bar, 9310 psi and 26.7°', () => {
  const tube = { diameter: toSI(2, 'in'), bore: toSI(1.5, 'in') };
  const torque = toSI(10000, 'lbf in');
  near(fromSI(skinStress(tube, torque), 'psi'), 9310, 5); // printed to ten
  const twist = twistOfSections([{ ...tube, length: toSI(50, 'ft'), torque }], toSI(12e6, 'psi'));
  near(fromSI(twist, 'deg'), 26.7, 0.05);
});

test('A27 (P, X; A04) Ex. 10.7, p. 234: three torsion springs in a row, 1.00e6 lbf·in/rad and 0.57°', () => {
  const k = seriesRate([6e6, 3e6, 2e6].map((each) => toSI(each, 'lbf in/rad')));
  near(fromSI(k, 'lbf in/rad'), 1e6, 5e3); // three printed figures
  near(fromSI(toSI(10000, 'lbf in') / k, 'deg'), 0.57, 0.005);
});

test('side by side the rates of Ex. 10.7 add (D)', () => {
  near(parallelRate([6, 3, 2]), 11, 0);
});
