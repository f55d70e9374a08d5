/**
 * Groups of bolts and faces that open, against Bhandari, Design of Machine Elements, 3rd ed., ch. 7; Budynas & Nisbett,
 * Shigley's Mechanical Engineering Design, 9th ed., ch. 8; standard stress method sheet AA-SM-004; and limits.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { type Face, FaceParted, faceUnder, padCells } from '../../src/loadpath/joint/face.ts';
import { groupShear, slipMargin } from '../../src/loadpath/joint/shear.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const size = ({ y, z }: { readonly y: number; readonly z: number }): number => Math.hypot(y, z);

test('D29 (P) Bhandari Ex. 7.15: eccentric shear on four bolts, 4419.4 N secondary, 6434.8 N resultant', () => {
  const points = [
    [-0.1, -0.1],
    [0.1, -0.1],
    [0.1, 0.1],
    [-0.1, 0.1],
  ].map(([y, z]) => ({ y: y!, z: z!, weight: 1 }));
  // secondary: 10 kN × 250 mm over four bolts, each 141.42 mm from their centre
  const turned = groupShear(points, { y: 0, z: 0, turning: 2500 });
  near(size(turned[0]!), 4419.4, 0.1);
  const both = groupShear(points, { y: 0, z: -10_000, turning: -2500 });
  near(Math.max(...both.map(size)), 6434.8, 0.1);
});

test('D30 (M) Shigley 9th ed., Ex. 8-7: four bolts on a rectangle, 17 700 N secondary, 21 000 and 14 800 N', () => {
  const points = [
    [0.075, 0.06],
    [0.075, -0.06],
    [-0.075, -0.06],
    [-0.075, 0.06],
  ].map(([y, z]) => ({ y: y!, z: z!, weight: 1 }));
  const loads = groupShear(points, { y: 0, z: -16_000, turning: -16_000 * 0.425 }).map(size);
  near(loads[0]!, 21_000, 50);
  near(loads[2]!, 14_789, 1);
  near(size(groupShear(points, { y: 0, z: 0, turning: 6800 })[0]!), 17_700, 50);
});

test('D31 (P) AA-SM-004: six unequal bolts about their own centre, 2493, 1210, 1220, 2507, 1165, 1451 N', () => {
  const points = [
    [1, 1, 0.375],
    [-1, 1, 0.25],
    [-1, -1, 0.25],
    [1, 5, 0.375],
    [0, 5, 0.25],
    [10, 2, 0.375],
  ].map(([y, z, d]) => ({ y: y! / 1e3, z: z! / 1e3, weight: d! * d! }));
  const centre = { y: 2.5641e-3, z: 2.35897e-3 };
  // the sheet gives the moment about the centre; here loads are told at the origin
  const load = { y: 0, z: -10_000, turning: 10.641 + centre.y * -10_000 };
  const found = groupShear(points, load).map(size);
  [2493, 1210, 1220, 2507, 1165, 1451].forEach((printed, k) => {
    near(found[k]!, printed, 1.5, `bolt ${k + 1}`);
  });
});

test('D32 (D) VDI 2230: six pads of 20 kN, friction 0.15, 12 kN across: margin 1.5', () => {
  const pads = Array.from({ length: 6 }, (_, k) => ({
    y: 0.1 * Math.cos((k * Math.PI) / 3),
    z: 0.1 * Math.sin((k * Math.PI) / 3),
    normal: 20e3,
  }));
  near(slipMargin(pads, { y: 12e3, z: 0, turning: 0 }, 0.15), 1.5, 1e-9);
  near(slipMargin([], { y: 1, z: 0, turning: 0 }, 0.15), 0, 0);
});

test('a load told about another origin is the same load: the shares stay (statics: M\u2032 = M + r \u00d7 F)', () => {
  const points = [
    [0.11, 0.02, 1],
    [-0.07, 0.09, 2],
    [-0.05, -0.12, 1.5],
  ].map(([y, z, weight]) => ({ y: y!, z: z!, weight: weight! }));
  const load = { y: 700, z: -1900, turning: 240 };
  const [dy, dz] = [0.31, -0.17];
  const moved = groupShear(
    points.map(({ y, z, weight }) => ({ y: y + dy, z: z + dz, weight })),
    { ...load, turning: load.turning + dy * load.z - dz * load.y },
  );
  const found = groupShear(points, load);
  found.forEach(({ y, z }, k) => {
    near(moved[k]!.y, y, 1e-9);
    near(moved[k]!.z, z, 1e-9);
  });
  // and they are the load: two forces and the moment about the first origin
  const sum = (of: (k: number) => number): number => points.reduce((all, _, k) => all + of(k), 0);
  near(
    sum((k) => found[k]!.y),
    load.y,
    1e-9,
  );
  near(
    sum((k) => found[k]!.z),
    load.z,
    1e-9,
  );
  near(
    sum((k) => points[k]!.y * found[k]!.z - points[k]!.z * found[k]!.y),
    load.turning,
    1e-9,
  );
});

test('a pad that carries nothing holds nothing: the others are asked as if it were not there', () => {
  const pads = [
    { y: 0.1, z: 0, normal: 20e3 },
    { y: -0.1, z: 0, normal: 20e3 },
    { y: 0, z: 0.4, normal: 0 },
  ];
  // two pads of 20 kN at friction 0.15 hold 6 kN straight along
  near(slipMargin(pads, { y: 3000, z: 0, turning: 0 }, 0.15), 2, 1e-9);
});

/** Hard ground along one edge, studs without preload: the plate tilts about the edge. */
const bracket = (studs: readonly (readonly [number, number])[]): Face => ({
  studs: studs.map(([y, z]) => ({ y, z, preload: 0, stiffness: 1e8 })),
  cells: [-0.1, 0.1].map((y) => ({ y, z: 0, pressed: 0, stiffness: 1e16 })),
  plates: [],
});

test('D28, D29 (P) Bhandari Ex. 7.8 and 7.15: a bracket that tilts about its edge, 5769.2 N and 24 146 N', () => {
  const four = bracket([
    [-0.1, 0.25],
    [0.1, 0.25],
    [-0.1, 0.05],
    [0.1, 0.05],
  ]);
  near(faceUnder(four, { pull: 0, byY: 0, byZ: 3000 }).studs[0]!, 5769.2, 0.1);
  // 20 kN at 550 mm over one bolt at 450 and one at 50 mm: 24 146 N; the book adds 10 kN of direct pull, 455.285 mm²
  const two = bracket([
    [0, 0.45],
    [0, 0.05],
  ]);
  near((faceUnder(two, { pull: 0, byY: 0, byZ: 11_000 }).studs[0]! + 10_000) / 75, 455.285, 0.01);
});

const joint = (preload: number, entry = 1): Face => {
  // stud 200 kN/mm, parts 800 kN/mm
  const [stud, parts] = [1 / 200e6, 1 / 800e6];
  const at = [
    [-0.2, 0.2],
    [0.2, 0.2],
    [-0.15, -0.15],
    [0.15, -0.15],
  ] as const;
  return {
    studs: at.map(([y, z]) => ({ y, z, preload, stiffness: 1 / (stud + (1 - entry) * parts) })),
    cells: at.flatMap(([y, z]) =>
      padCells({
        centre: { y, z },
        inner: 0.011,
        outer: 0.04,
        stiffness: 1 / (entry * parts),
        pressed: preload,
      }),
    ),
    plates: [],
  };
};

test('while closed a stud feels its load factor: n δ_P/(δ_S + δ_P), VDI 2230', () => {
  for (const entry of [1, 0.5]) {
    const found = faceUnder(joint(20e3, entry), { pull: 16e3, byY: 0, byZ: 0 });
    // the pull stands at the studs' centre of stiffness only if that is the origin: sum over all, then
    const more = found.studs.reduce((sum, force) => sum + force - 20e3, 0);
    near(more / 16e3, entry / 800e6 / (1 / 200e6 + 1 / 800e6), 0.01);
    near(found.opened, 0, 0);
  }
});

test('once open a stud feels all of it', () => {
  const square: Face = joint(5e3);
  const pull = 60e3;
  // at the centre of the four studs' stiffness: y 0, z 25 mm
  const found = faceUnder(square, { pull, byY: 0, byZ: pull * 0.025 });
  near(found.opened, 1, 0);
  for (const force of found.studs) near(force, pull / 4, 1);
});

test('any load on any joint: forces and moments balance, nothing pulls on a face, nothing pushes a stud', () => {
  const part = real(-3000, 3000);
  let opened = 0;
  fc.assert(
    fc.property(real(500, 30_000), part, part, part, (preload, pull, byY, byZ) => {
      const face = joint(preload);
      const found = faceUnder(face, { pull, byY, byZ });
      assert.ok(found.studs.every((force) => force >= 0) && found.cells.every((force) => force >= 0));
      const sum = (of: (at: { readonly y: number; readonly z: number }) => number): number =>
        face.studs.reduce((all, at, k) => all + found.studs[k]! * of(at), 0) -
        face.cells.reduce((all, at, k) => all + found.cells[k]! * of(at), 0);
      const scale = 1e-5 * (4 * preload + Math.abs(pull) + Math.hypot(byY, byZ) / 0.2);
      near(
        sum(() => 1),
        pull,
        scale,
      );
      near(
        sum(({ y }) => y),
        byY,
        scale,
      );
      near(
        sum(({ z }) => z),
        byZ,
        scale,
      );
      if (found.opened > 0) opened += 1;
    }),
    { numRuns: 300 },
  );
  assert.ok(opened > 50, `the face opened ${opened} times`);
});

test('no stud on the pulled side: told, and no number given', () => {
  const one: Face = { studs: [{ y: 0, z: 0.1, preload: 0, stiffness: 1e8 }], cells: [], plates: [] };
  assert.throws(() => faceUnder(one, { pull: 1000, byY: 0, byZ: -500 }), FaceParted);
});
