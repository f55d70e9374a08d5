/**
 * Ride: frequencies, series of spring and tyre, roll stiffness, bounce and pitch, mass shared between axles.
 *
 * The letters say what a row is worth: P the printed answer was read, in the text named; Q the book's inputs were
 * read and its answer was not; N formula from memory; D derived here by hand. Each row goes through the figures of
 * a car on four wheels, made from a demo car by giving it the row's masses and rates, wherever one of its formulas
 * computes the row.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { bouncePitchModes } from '../../src/loadpath/axle/bounce-pitch.ts';
import { putAxleFigures } from '../../src/loadpath/figures/axle.ts';
import { putCarFigures } from '../../src/loadpath/figures/car.ts';
import { putCornerFigures } from '../../src/loadpath/figures/corner.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { polarSecondMoment } from '../../src/loadpath/spring/torsion-bar.ts';
import { fromSI, toSI } from '../../src/units/unit.ts';
import { compile, parse } from '../../src/working/expression.ts';
import type { FormulaStep } from '../../src/working/working.ts';
import { Working } from '../../src/working/working.ts';
import { demo } from '../cars/demo.ts';
import { near } from '../near.ts';

/** Every formula that the figures of the demo cars are worked out with, by the symbol of its result. */
const FORMULAS: ReadonlyMap<string, FormulaStep> = (() => {
  const working = new Working();
  const car = demo('fenwold-201');
  const numbers = new Numbers(car.values);
  putCornerFigures(car.form.front, 'left', { travel: 0, rack: 0 }, numbers, () => {}, working);
  putAxleFigures(car.form, 'front', { left: 0, right: 0, rack: 0 }, numbers, () => {}, working);
  putCarFigures(car.form, numbers, () => {}, working);
  return new Map(
    working.steps.flatMap((step) => (step.kind === 'formula' ? [[step.symbol, step] as const] : [])),
  );
})();

/** What the figure's own formula gives for other numbers; every term must be given. */
function worked(symbol: string, terms: Readonly<Record<string, number>>): number {
  const step = FORMULAS.get(symbol);
  assert.ok(step, `no figure is worked out as ${symbol}`);
  assert.deepEqual(Object.keys(terms).sort(), step.terms.map((term) => term.symbol).sort(), symbol);
  return compile(parse(step.formula))(terms);
}

const g = 9.80665;

test('G30 (P) Halliday, Resnick & Walker, solution ch. 15 no. 6: 1450 kg at 3.00 Hz, 1.29e5 N/m a spring', () => {
  near(worked('f', { k_s: 1.29e5, m_s: 1450 / 4 }), 3.0, 0.01); // the rate is printed to three figures: 0.4 %
});

test('G31 (P, trade answer): 1260 kg at 1.6 Hz is 3.18e4 N/m a corner; four people of 70 kg make it 1.45 Hz', () => {
  near(worked('f', { k_s: 3.18e4, m_s: 1260 / 4 }), 1.6, 0.005);
  near(worked('f', { k_s: 3.18e4, m_s: (1260 + 4 * 70) / 4 }), 1.45, 0.005);
});

test('G29 (P) Physics 1307 Quiz 6 solution: 980 N for 2.8 cm is 3.5e4 N/m; 1100 kg on it swing in 1.11 s', () => {
  near(1 / worked('f_a', { K_s: 980 / 0.028, m_a: 1100 }), 1.11, 0.005); // printed to 0.01 s
});

test('G34 (P) McLean & Nelson, Ex. 19-2, p. 465: 35 lb on 18 lb/in swing in 0.45 s', () => {
  const m_s = toSI(35, 'lb');
  near(1 / worked('f', { k_s: toSI(18, 'lbf/in'), m_s }), 0.45, 0.005); // printed to 0.01 s
});

test('G35 (P) McLean & Nelson, Ex. 19-11, p. 471: a disc of 0.2 m on a wire of 2 mm and 0.9 m swings at 0.24 Hz', () => {
  const disc = { mass: (Math.PI / 4) * 0.2 ** 2 * 0.05 * 7850, inertia: 0 };
  disc.inertia = (disc.mass * 0.1 ** 2) / 2;
  const rate = (80e9 * polarSecondMoment({ diameter: 2e-3, bore: 0 })) / 0.9;
  // rate over inertia by turn stands in the formula where rate over mass stands
  near(worked('f', { k_s: rate, m_s: disc.inertia }), 0.24, 0.005); // printed to 0.01 Hz
});

test('G37 (P) McLean & Nelson, Ex. 19-25, p. 483: 20 lb shaken at 600 rpm, a twelfth let through: 15.7 lb/in', () => {
  // a twelfth is 1/(r² − 1): the shaking is √13 times as fast as the weight swings on its spring
  const m_s = toSI(20, 'lb');
  const f = worked('f', { k_s: toSI(15.7, 'lbf/in'), m_s });
  near(600 / 60 / f, Math.sqrt(13), Math.sqrt(13) * 0.002); // printed to three figures
});

test('G07 (N) frequency from static deflection, from memory 3.13/√δ: 3.13, 2.21, 1.40, 0.99 Hz', () => {
  for (const [inches, hertz] of [
    [1, 3.13],
    [2, 2.21],
    [5, 1.4],
    [10, 0.99],
  ] as const) {
    const m_s = 300;
    near(worked('f', { k_s: (m_s * g) / toSI(inches, 'in'), m_s }), hertz, 0.005);
  }
});

test('G08 (Q) Grover, Ex. 3.3.2: 3 and 12 kN/m in a row under 10 kg, 15.492 rad/s', () => {
  const k_s = worked('k_s', { k_w: 3000, k_y: 12000 });
  near(2 * Math.PI * worked('f', { k_s, m_s: 10 }), 15.492, 0.001);
});

test('G08 (Q) Grover, Ex. 3.3.2, dashpots of 100 and 330 N·s/m in a row: damping ratio 0.2477', () => {
  // the two dashpots of 100 and 330 N·s/m in a row as the book puts them: 76.744
  const c = (100 * 330) / (100 + 330);
  const half = { c_l: c / 2, c_r: c / 2, r_l: 1, r_r: 1 };
  near(worked('ζ_l', { ...half, K_h: 2400, m_a: 10 }), 0.2477, 0.0001);
});

test('G09 (Q) Grover, Ex. 3.3.3: 600 kg on 294 kN/m is critically damped by 26 563 N·s/m', () => {
  const half = { c_l: 26563 / 2, c_r: 26563 / 2, r_l: 1, r_r: 1 };
  near(worked('ζ_l', { ...half, K_h: 294e3, m_a: 600 }), 1, 4e-5); // ± 1 N·s/m of 26 563
});

test('G10 (D) 60 N/mm on 0.7 spring per wheel, ratio constant: 29.4 N/mm at the wheel', () => {
  const k_e = worked('k_e', { k_u: 60e3, r: 0.7, k_t: 0, s: 0 });
  const k_f = worked('k_f', { F_u: 2500, r_z: 0, T: 0, s_z: 0 });
  near(worked('k_w', { k_e, k_f }), 29.4e3, 1e-9);
  near(worked('i', { r: 0.7 }), 1 / 0.7, 1e-12);
});

test('G11 (D) 40 N/mm with a tyre of 180 N/mm: 32.727; one axle of 1.5 m track: 45 000 N·m/rad, 785.4 a degree', () => {
  near(worked('k_s', { k_w: 40e3, k_y: 180e3 }) / 1e3, 32.727, 0.001);
  const K = worked('K_φ', { t: 1.5, K_ll: 40e3, K_lr: 0, K_rr: 40e3 });
  near(K, 45000, 1e-6);
  near(K * toSI(1, 'deg'), 785.4, 0.05);
});

test('G26 (P) Barton & Fieldhouse (2018), p. 174, eq. 3.18: 0.0194 rad per m/s², 10.9° per g', () => {
  // our formula has the roll stiffness less the leaning-over term; the book's gradient is m d over it
  const [K, m_s, d] = [28650, 1280, 0.365];
  // with unit inertia the square of the angular frequency is that stiffness over (1 + m d²)
  const f = worked('f_φ', { K_φ1: K / 2, K_φ2: K / 2, m_s, g, h: d, I_x: 1 - m_s * d ** 2 });
  const stiffness = (2 * Math.PI * f) ** 2;
  const gradient = (m_s * d) / stiffness;
  near(gradient, 0.0194, 5e-5); // printed to four places
  near(fromSI(gradient * g, 'deg'), 10.9, 0.05);
});

test('G28 (P) University of Utah Math 2250 on Edwards & Penney 7.4-24: 6.13 and 10.31 rad/s', () => {
  // as printed: 100 x″ = −4000 x + 4000 θ, 1000 θ″ = 4000 x − 2000 (6² + 4²) θ: two springs of 2000 at 6 and 4
  const [low, high] = bouncePitchModes({
    mass: 100,
    inertia: 1000,
    front: { rate: 2000, distance: 6 },
    rear: { rate: 2000, distance: 4 },
  });
  near(low.omega, 6.13, 0.005);
  near(high.omega, 10.31, 0.006); // 10.3155, printed cut off and not rounded
});

test('the still points of bounce and pitch lie on both sides, a b = I/m apart (D)', () => {
  const [low, high] = bouncePitchModes({
    mass: 500,
    inertia: 560,
    front: { rate: 1.6e5, distance: 1.6 },
    rear: { rate: 1.9e5, distance: 1.2 },
  });
  // modes are square to one another with mass and inertia: m + I/(x₁ x₂) = 0
  near(low.node * high.node, -560 / 500, 1e-9);
  // a car sprung evenly about its centre of gravity bounces and pitches apart: 10 and 20 rad/s by hand
  const [bounce, pitch] = bouncePitchModes({
    mass: 1000,
    inertia: 250,
    front: { rate: 5e4, distance: 1 },
    rear: { rate: 5e4, distance: 1 },
  });
  near(bounce.omega, 10, 1e-12);
  near(pitch.omega, 20, 1e-12);
});

/** A demo car as it is with other masses on its scales. */
function shares(
  front: number,
  rear: number,
  wheelbase: number,
): { readonly a: number; readonly share: number } {
  const car = demo('pellmoor-7b');
  const values = Float64Array.from(car.values);
  const { form } = car;
  for (const side of ['left', 'right'] as const) {
    values[form.front[side].scale.index] = front;
    values[form.rear[side].scale.index] = rear;
  }
  const figures = new Map<string, number>();
  putCarFigures(form, new Numbers(values), (note, value) => figures.set(note.id, value));
  const share = figures.get('frontMassShare')!;
  // the centre of gravity stands behind the front axle by the rear's share of the wheelbase
  return { a: (1 - share) * wheelbase, share };
}

test('G23 (P) Jazar (2008), Example 40, p. 41: 2000 and 1800 N a wheel on 2.34 m, centre at 1.1084 and 1.2316 m', () => {
  const { a } = shares(2000 / g, 1800 / g, 2.34);
  near(a, 1.1084, 6e-5);
  near(2.34 - a, 1.2316, 6e-5);
});

test('G25 (P) NCERT Physics XI: 1800 kg, centre 1.05 m behind the front axle of 1.8 m, 3675 and 5145 N a wheel', () => {
  const { a, share } = shares(3675 / 9.8, 5145 / 9.8, 1.8);
  near(a, 1.05, 1e-9); // whole newtons that divide
  near(share, 0.75 / 1.8, 1e-9);
});
