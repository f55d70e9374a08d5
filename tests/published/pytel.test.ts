/**
 * Torsion problems of the Pytel books: Pytel & Kiusalaas, Mechanics of Materials (P, X: archived run), and two
 * Pytel & Singer problems as worked on a teaching page (P, T: weaker authority).
 */
import { test } from 'node:test';
import { polarSecondMoment, skinStress, twistOfSections } from '../../src/loadpath/spring/torsion-bar.ts';
import { fromSI, toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';

test('A43 (P, T) "Problem 302": 113.98 mm for 3° in 6 m at 12 kN·m, then 41.27 MPa', () => {
  const fourth = (12e3 * 6) / (83e9 * toSI(3, 'deg') * polarSecondMoment({ diameter: 1, bore: 0 }));
  const diameter = fourth ** 0.25;
  near(diameter * 1e3, 113.98, 0.006);
  near(skinStress({ diameter, bore: 0 }, 12e3) / 1e6, 41.27, 0.01); // 41.277 printed cut off
});

test('A44 (P, T) Problem 304: 14.32 ksi and 1.23°', () => {
  const bar = { diameter: toSI(4, 'in'), bore: 0 };
  const torque = toSI(15000, 'lbf ft');
  near(fromSI(skinStress(bar, torque), 'ksi'), 14.32, 0.005);
  const twist = twistOfSections([{ ...bar, length: toSI(3, 'ft'), torque }], toSI(12e6, 'psi'));
  near(fromSI(twist, 'deg'), 1.23, 0.005);
});

test('A45 (P, X) Pytel & Kiusalaas Ex. 3.3.3, p. 80: three parts, 1.62°', () => {
  const parts = [
    { torque: 500, length: 5 },
    { torque: -400, length: 3 },
    { torque: 600, length: 4 },
  ];
  const twist = twistOfSections(
    parts.map((part) => ({
      diameter: toSI(2, 'in'),
      bore: 0,
      torque: toSI(part.torque, 'lbf ft'),
      length: toSI(part.length, 'ft'),
    })),
    toSI(12e6, 'psi'),
  );
  near(fromSI(twist, 'deg'), 1.62, 0.005);
});
