/**
 * Beer, Johnston & DeWolf, Mechanics of Materials, ch. 3, read in the archived runs (P, X), and the stepped bar of
 * the course notes ENGN0310 (Brown University), Torsion SP3 (P, B).
 */
import { test } from 'node:test';
import { presetToTorque } from '../../src/loadpath/spring/presetting.ts';
import { polarSecondMoment, skinStress, twistOfSections } from '../../src/loadpath/spring/torsion-bar.ts';
import { fromSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

test('A32 (P, X) Ex. 3.08 and 3.09, pp. 189–190: presetting a solid bar', () => {
  const bar = { diameter: 0.05, bore: 0, length: 1.2, shearModulus: 77e9, yieldShear: 150e6 };
  const preset = presetToTorque(bar, 4600);
  // the book carries rounded steps (T_Y 3.68, φ 8.50°, J 614e-9), hence the wide bands
  near(preset.coreRadius * 1e3, 15.749, 0.05);
  near(fromSI(preset.twist, 'deg'), 8.494, 0.01);
  near(fromSI(preset.permanentTwist, 'deg'), 1.81, 0.02);
  near(skinStress(bar, 4600) / 1e6, 187.3, 0.2);
  near(preset.residualAtSkin / 1e6, 150 - 187.3, 0.2);
  near(preset.torque, 4600, 1e-9); // the root is found to the last digits
});

const BORED = { diameter: 0.06, bore: 0.044, length: 0.6 };
const WHOLE = { diameter: 0.06, bore: 0, length: 0.2 };
const THIN = { diameter: 0.03, bore: 0, length: 0.4 };

test('A34 (P, X) Sample Problem 3.3, p. 165: stepped bar with a bored part, 2.310°', () => {
  const twist = twistOfSections(
    [
      { ...THIN, torque: 250 },
      { ...WHOLE, torque: 2250 },
      { ...BORED, torque: 2250 },
    ],
    77e9,
  );
  near(fromSI(twist, 'deg'), 2.31, 0.002);
});

test('A42 (P, B) ENGN0310 Torsion SP3: three polar moments, 0.0189958 rad, 1.08838°', () => {
  near(polarSecondMoment(BORED), 9.04377e-7, 6e-13);
  near(polarSecondMoment(WHOLE), 1.27235e-6, 6e-12);
  near(polarSecondMoment(THIN), 7.95216e-8, 6e-14);
  const twist = twistOfSections(
    [BORED, WHOLE, THIN].map((each) => ({ ...each, torque: 250 })),
    77e9,
  );
  near(twist, 0.0189958, 6e-8);
  near(fromSI(twist, 'deg'), 1.08838, 6e-6);
});
