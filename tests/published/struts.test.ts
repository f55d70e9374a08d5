/**
 * Struts against Wentzell, Machine Design, Ex. 3.5; Hibbeler, Mechanics of Materials, SI ed., Ex. 13.1; Levinson,
 * Statics and Strength of Materials, Ex. 16.5 (inputs and methods seen), and what must hold where Euler and Johnson meet.
 */
import { test } from 'node:test';
import { grownBow, type Strut, strutSizes, strutUnder } from '../../src/loadpath/loads/strut.ts';
import { near } from '../near.ts';

const INCH = 0.0254;
const PSI = 6894.757;
const LBF = 4.4482216;
const bar = (of: Partial<Strut>): Strut => ({
  outside: 0.02,
  bore: 0,
  length: 0.4,
  effective: 1,
  youngsModulus: 205e9,
  yield: 520e6,
  bow: 0,
  ...of,
});

test('F01 (Q) Wentzell Ex. 3.5: 30 in of 5/8 in bar, L/r 192, column constant 118.7, 2464 lbf', () => {
  const found = strutSizes(
    bar({ outside: 0.625 * INCH, length: 30 * INCH, youngsModulus: 30e6 * PSI, yield: 42_000 * PSI }),
  );
  near(found.slenderness, 192, 1e-6);
  near(found.meeting, 118.7, 0.05);
  near(found.critical / LBF, 2464, 1);
});

test('F02 (Q) Hibbeler Ex. 13.1: tube 150/140 mm, 7.2 m, 228.2 kN and 100.2 MPa', () => {
  const found = strutSizes(
    bar({ outside: 0.15, bore: 0.14, length: 7.2, youngsModulus: 200e9, yield: 250e6 }),
  );
  near(found.critical / 1e3, 228.2, 0.05);
  near(found.critical / found.area / 1e6, 100.2, 0.05);
});

test('F03 (Q) Levinson Ex. 16.5: half inch rod, 40 in held so that 0.8 of it counts, 4518 psi', () => {
  const rod = bar({
    outside: 0.5 * INCH,
    length: 40 * INCH,
    effective: 0.8,
    youngsModulus: 30e6 * PSI,
    yield: 60_000 * PSI,
  });
  const found = strutSizes(rod);
  near(found.critical / found.area / PSI, 4518, 1);
});

test('F04 (D) pushrod tube 19.05 × 1.245 mm, 450 mm: Johnson 24 381 N, where Euler would give 27 708', () => {
  const tube = bar({ outside: 19.05e-3, bore: 19.05e-3 - 2 * 1.245e-3, length: 0.45 });
  const found = strutSizes(tube);
  near(found.area * 1e6, 69.64, 0.01);
  near(found.slenderness, 71.31, 0.01);
  near(found.meeting, 88.21, 0.01);
  near(found.critical, 24_381, 2);
});

test('F05 (D) Euler and Johnson meet at half the yield, and meet smoothly', () => {
  const at = (slenderness: number): number => {
    const found = strutSizes(bar({ length: slenderness * 0.005 }));
    return found.critical / found.area / 520e6;
  };
  const { meeting } = strutSizes(bar({}));
  near(at(meeting), 0.5, 1e-9);
  const h = 1e-4;
  near((at(meeting) - at(meeting - h)) / h, (at(meeting + h) - at(meeting)) / h, 1e-6);
});

test('F06 (N) a bow of 0.5 mm at four tenths of the critical push stands at 0.833 mm', () => {
  near(grownBow(0.5, 0.4, 1), 0.8333, 1e-4);
});

test('tension is force over section; a straight strut in push is yielding or buckling, a bowed one sooner', () => {
  const tube = bar({ outside: 19.05e-3, bore: 19.05e-3 - 2 * 1.245e-3, length: 0.45 });
  const pulled = strutUnder(tube, 10_000);
  near(pulled.stress / 1e6, 10_000 / 69.6404, 0.01);
  near(pulled.bucklingShare, 0, 0);
  const pushed = strutUnder(tube, -10_000);
  near(pushed.bucklingShare, 10_000 / 24_381, 1e-4);
  near(pushed.yieldShare, 10_000 / 69.6404 / 520, 1e-4);
  // bow 0.5 mm: moment 10 kN × 0.5 mm / (1 − 10/24.381), over I 2773.15 mm⁴ at 9.525 mm (F04)
  const bent = strutUnder({ ...tube, bow: 0.5e-3 }, -10_000);
  const moment = (10_000 * 0.5) / (1 - 10_000 / 24_380.8);
  near(bent.yieldShare, (10_000 / 69.6404 + (moment * 9.525) / 2773.15) / 520, 1e-4);
  near(strutUnder(tube, -30_000).bucklingShare, 30_000 / 24_381, 1e-3);
});
