/**
 * Damping ratios of bounce and pitch against the eigenvalues of the damped car on springs, dampers and tyres in
 * series, solved by a general-purpose library (ml-matrix) on the bare equations of motion.
 */
import assert from 'node:assert/strict';
import test from 'node:test';
import { EigenvalueDecomposition, inverse, Matrix } from 'ml-matrix';
import { bouncePitchModes } from '../../src/loadpath/axle/bounce-pitch.ts';
import { putModeDamping, putRollDamping } from '../../src/loadpath/figures/car-damping.ts';
import { recheck, Working } from '../../src/working/working.ts';

const body = { mass: 540, inertia: 520, a: 1.7, b: 1.2 };
const springs = { front: 270e3, rear: 260e3 };
const tyres = { front: 440e3, rear: 500e3 };

/** Lightest wheels that still keep the eigenvalues apart: the formulas leave them out. */
const WHEEL = 0.01;

/**
 * Half car: z up, θ nose down, two wheels. State matrix of M q″ + C q′ + K q = 0.
 * A body corner at x ahead rises by z − x θ; the springing sees wheel less corner.
 */
function ratios(damping: { readonly front: number; readonly rear: number }): readonly number[] {
  const M = Matrix.diag([body.mass, body.inertia, WHEEL, WHEEL]);
  const outer = (v: readonly number[], k: number): Matrix =>
    Matrix.columnVector([...v])
      .mmul(Matrix.rowVector([...v]))
      .mul(k);
  const front = [-1, body.a, 1, 0];
  const rear = [-1, -body.b, 0, 1];
  const K = outer(front, springs.front)
    .add(outer(rear, springs.rear))
    .add(outer([0, 0, 1, 0], tyres.front))
    .add(outer([0, 0, 0, 1], tyres.rear));
  const C = outer(front, damping.front).add(outer(rear, damping.rear));
  const A = Matrix.zeros(8, 8);
  const Mi = inverse(M);
  const [k, c] = [Mi.mmul(K).mul(-1), Mi.mmul(C).mul(-1)];
  for (let i = 0; i < 4; i += 1) {
    A.set(i, i + 4, 1);
    for (let j = 0; j < 4; j += 1) {
      A.set(i + 4, j, k.get(i, j));
      A.set(i + 4, j + 4, c.get(i, j));
    }
  }
  const { realEigenvalues: re, imaginaryEigenvalues: im } = new EigenvalueDecomposition(A);
  return re
    .map((real, i) => ({
      size: Math.hypot(real, im[i]!),
      ratio: -real / Math.hypot(real, im[i]!),
      up: im[i]! > 0,
    }))
    .filter(({ up, size }) => up && size < 200)
    .sort((p, q) => p.size - q.size)
    .map(({ ratio }) => ratio);
}

test('bounce and pitch: the lightly damped ratios are those of the whole system', () => {
  const damping = { front: 120, rear: 160 };
  const inSeries = (k: number, t: number): number => (k * t) / (k + t);
  const modes = bouncePitchModes({
    mass: body.mass,
    inertia: body.inertia,
    front: { rate: inSeries(springs.front, tyres.front), distance: body.a },
    rear: { rate: inSeries(springs.rear, tyres.rear), distance: body.b },
  });
  const axle = (end: 'front' | 'rear') => ({
    damping: { low: damping[end], high: 10 * damping[end] },
    heavePart: tyres[end] / (tyres[end] + springs[end]),
    rollPart: 0,
    track: 0,
  });
  const found = new Map<string, number>();
  const working = new Working();
  putModeDamping(
    { front: axle('front'), rear: axle('rear') },
    body,
    modes,
    (note, value) => found.set(note.id, value),
    working,
  );
  const [bounce, pitch] = ratios(damping);
  // first order in the damping, which here is one or two per cent: its square is below a thousandth
  assert.ok(
    Math.abs(found.get('bounceDampingLow')! / bounce! - 1) < 1e-3,
    `${found.get('bounceDampingLow')} ${bounce}`,
  );
  assert.ok(
    Math.abs(found.get('pitchDampingLow')! / pitch! - 1) < 1e-3,
    `${found.get('pitchDampingLow')} ${pitch}`,
  );
  assert.deepEqual(recheck(working.steps), []);
});

test('roll: one axle with rigid tyres is the handbook’s c/(2√(k I))', () => {
  // any handbook of vibrations, such as Rao, Mechanical Vibrations, ch. 2 (from memory)
  const [k, c, I, t] = [60e3, 2500, 90, 1.5];
  const axle = (damping: number) => ({
    damping: { low: damping, high: damping },
    heavePart: 1,
    rollPart: 1,
    track: t,
  });
  const frequency = Math.sqrt(k / I) / (2 * Math.PI);
  const found: number[] = [];
  putRollDamping({ front: axle(c), rear: axle(0) }, { frequency, inertia: I }, (_, value) =>
    found.push(value),
  );
  const expected = (c * t * t) / 4 / (2 * Math.sqrt(k * I));
  // 1e-12: the same numbers in another order
  for (const value of found) assert.ok(Math.abs(value / expected - 1) < 1e-12, `${value} ${expected}`);
});
