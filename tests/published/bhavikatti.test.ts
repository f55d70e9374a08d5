/** Bhavikatti, Strength of Materials: read in the archived run (P, X). */
import { test } from 'node:test';
import { skinStress, twistOfSections } from '../../src/loadpath/spring/torsion-bar.ts';
import { near } from '../near.ts';

test('A47 (P, X) Ex. 6.6.15, p. 241: hollow and two solid parts, 0.00496 rad, worst stress 23.58 MPa', () => {
  const parts = [
    { diameter: 0.1, bore: 0.08, length: 0.3, torque: 2000 },
    { diameter: 0.08, bore: 0, length: 0.4, torque: -1000 },
    { diameter: 0.06, bore: 0, length: 0.5, torque: 1000 },
  ];
  near(twistOfSections(parts, 80e9), 0.00496, 6e-6);
  near(Math.max(...parts.map((part) => Math.abs(skinStress(part, part.torque)))) / 1e6, 23.58, 0.005);
});
