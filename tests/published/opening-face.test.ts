/**
 * A stiff body on a face that bears but does not pull, against closed forms of the footing.
 *
 * Load outside the middle third of a rectangle: contact length 3(h/2 − e), greatest pressure 2P/(b·3(h/2 − e)). Seen as
 * "2 P/(Y B), Y = 3 (L/2 − e)" in the mailing list of the Structural Engineers Association, archive of April 2004; also
 * Young & Budynas, Roark's Formulas for Stress and Strain, 7th ed., 12.4, eccentric loading of short prisms (from
 * memory). Near a corner the contact is a triangle (D). Ring about its hole: kern (D² + d²)/(8 D) (Roark, from memory).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Face, type FaceUnderLoad, faceUnder, padCells } from '../../src/loadpath/joint/face.ts';
import { near } from '../near.ts';

const [h, b] = [0.4, 0.25];
const PER_AREA = 1e11;

/** The rectangle in n × m cells that bear, centred; y along h, z along b. */
const footing = (n: number, m: number, pressed = 0): Face => ({
  studs: [],
  cells: Array.from({ length: n * m }, (_, k) => ({
    y: h * (((k % n) + 0.5) / n - 0.5),
    z: b * ((Math.floor(k / n) + 0.5) / m - 0.5),
    pressed: pressed / (n * m),
    stiffness: (PER_AREA * h * b) / (n * m),
  })),
  plates: [],
});

const P = 30e3;
const pressedAt = (face: Face, y: number, z = 0): FaceUnderLoad =>
  faceUnder(face, { pull: -P, byY: -P * y, byZ: -P * z });

/** Pressure at a place, as the flat body leaves it. */
const pressure = ({ opening }: FaceUnderLoad, y: number, z = 0): number =>
  -PER_AREA * (opening.at + opening.perY * y + opening.perZ * z);

test('inside the middle third: P/A (1 ± 6e/h), both ways at once', () => {
  const found = pressedAt(footing(200, 40), 0.04, 0.01);
  for (const [y, z] of [
    [h / 2, b / 2],
    [-h / 2, b / 2],
    [-h / 2, -b / 2],
  ] as const) {
    const expected = (P / (h * b)) * (1 + (12 * 0.04 * y) / h ** 2 + (12 * 0.01 * z) / b ** 2);
    // cells' own second moment is left out: 1/n² of the whole, here 1/40² across
    near(pressure(found, y, z), expected, 1e-3 * expected + 1e3);
  }
});

test('outside the middle third: contact 3(h/2 − e), pressure 2P/(b·3(h/2 − e)), closer with finer cells', () => {
  for (const e of [0.08, 0.12, 0.17]) {
    const contact = 3 * (h / 2 - e);
    const peak = (2 * P) / (b * contact);
    const off = [25, 100, 400, 1600].map((n) => {
      const found = pressedAt(footing(n, 1), e);
      near(
        found.cells.reduce((sum, each) => sum + each, 0),
        P,
        1e-5 * P,
      );
      const length = h / 2 + found.opening.at / found.opening.perY;
      return {
        peak: Math.abs(pressure(found, h / 2) / peak - 1),
        contact: Math.abs(length / contact - 1),
        open: found.cells.filter((each) => each === 0).length / n,
      };
    });
    for (const what of ['peak', 'contact'] as const) {
      // a cell h/n long in a contact of length c counts by (h/n c)², and the last one bears or not
      off.forEach((each, k) => {
        const n = [25, 100, 400, 1600][k]!;
        assert.ok(each[what] < 2 * (h / (n * contact)) ** 2 + 1e-7, `e ${e}, n ${n}: ${what} ${each[what]}`);
      });
    }
    near(off.at(-1)!.open, 1 - contact / h, 1 / 1600 + 1e-9);
  }
});

test('the same where a preload without give presses the face and a moment opens it', () => {
  // a stud as soft as nothing: it pulls with P whatever the face does; the moment is P e
  const e = 0.12;
  const contact = 3 * (h / 2 - e);
  const face = { ...footing(1600, 1, P), studs: [{ y: 0, z: 0, preload: P, stiffness: 1 }] };
  const found = faceUnder(face, { pull: 0, byY: -P * e, byZ: 0 });
  near(found.studs[0]!, P, 1e-3);
  near(found.opened, 1 - contact / h, 1 / 1600 + 1e-9);
  near(
    Math.max(...found.cells),
    ((2 * P) / (b * contact)) * ((h * b) / 1600),
    2e-3 * Math.max(...found.cells),
  );
});

test('near a corner: a pyramid of pressure on a triangle, legs four times the way to the edges, 6P/(area of legs)', () => {
  const [y, z] = [h / 2 - 0.07, b / 2 - 0.05];
  const [alongY, alongZ] = [4 * 0.07, 4 * 0.05];
  const peak = (6 * P) / (alongY * alongZ);
  const off = [10, 40, 160].map((n) => {
    const found = pressedAt(footing(n, n), y, z);
    const { at, perY, perZ } = found.opening;
    const corner = at + (perY * h) / 2 + (perZ * b) / 2;
    return Math.max(
      Math.abs(pressure(found, h / 2, b / 2) / peak - 1),
      Math.abs(corner / perY / alongY - 1),
      Math.abs(corner / perZ / alongZ - 1),
    );
  });
  // by the square of the cell again: a seventh of a leg at first, sixteen times finer at last
  assert.ok(off[0]! < 0.1 && off[2]! < 1e-3 && off[2]! < off[1]! && off[1]! < off[0]!, `${off}`);
});

test('the pad of a stud in its 48 cells: gives as the ring gives, and is told open a tenth of the load late', () => {
  const [inner, outer] = [0.0114, 0.04];
  const stiffness = 8e8;
  const cells = padCells({ centre: { y: 0, z: 0 }, inner, outer, stiffness, pressed: P });
  const face: Face = { studs: [{ y: 0, z: 0, preload: P, stiffness: 2e8 }], cells, plates: [] };
  // by moment: k I/A about any line, I/A = (D² + d²)/16
  const turned = faceUnder(face, { pull: 0, byY: 20, byZ: 0 });
  near(20 / turned.opening.perY / stiffness, (outer ** 2 + inner ** 2) / 16, 1e-12);
  // it begins to open when the moment over the force reaches the kern; the outermost cell has its middle within the edge
  const kern = (outer ** 2 + inner ** 2) / (8 * outer);
  const opens = (share: number): number => faceUnder(face, { pull: 0, byY: share * P * kern, byZ: 0 }).opened;
  near(opens(1), 0, 0);
  near(opens(1.1), 0, 0);
  assert.ok(opens(1.12) > 0);
});
