/**
 * The face that opens against a general finite-element program: a stiff body on springs that bear and do not pull, held
 * by springs that pull and do not push, with their preload, and by plates that do both.
 *
 * Every stud, cell and plate is a spring of its own along x with its force over its elongation as a broken line; the
 * body is a rigid body free to move along x and to turn about y and z. One load after the other, closed and open.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type Face, faceUnder, type Parting, padCells } from '../../src/loadpath/joint/face.ts';
import { near } from '../near.ts';
import { Deck, plain, solvedByCcx, step } from './ccx.ts';

const FILE = 'tests/reference/face-springs.test.ts';

/** Five studs of two sorts, one slacker than the rest, and a plate: nothing about it is alike left and right. */
const STUDS = [
  { y: -0.2, z: -0.15, preload: 24e3, stiff: 2.1e8, pad: 8e8 },
  { y: 0.21, z: -0.15, preload: 22e3, stiff: 2.1e8, pad: 8e8 },
  { y: 0.12, z: 0.26, preload: 14e3, stiff: 1.3e8, pad: 5e8 },
  { y: -0.12, z: 0.25, preload: 15e3, stiff: 1.3e8, pad: 5e8 },
  { y: 0.02, z: 0.05, preload: 4e3, stiff: 1.3e8, pad: 5e8 },
] as const;

const FACE: Face = {
  studs: STUDS.map(({ y, z, preload, stiff }) => ({ y, z, preload, stiffness: stiff })),
  cells: STUDS.flatMap(({ y, z, preload, pad }) =>
    padCells({ centre: { y, z }, inner: 0.0114, outer: 0.04, stiffness: pad, pressed: preload }),
  ),
  plates: [{ y: 0, z: 0.4, stiffness: 4e7 }],
};

type State = 'closed' | 'partly open' | 'open' | 'a stud slack';

const LOADS: readonly (Parting & { readonly state: State })[] = [
  { state: 'closed', pull: 3e3, byY: -600, byZ: 900 },
  { state: 'closed', pull: -20e3, byY: 1500, byZ: -2500 },
  { state: 'partly open', pull: 20e3, byY: 2500, byZ: -14e3 },
  { state: 'partly open', pull: 0, byY: -3500, byZ: 17e3 },
  { state: 'partly open', pull: 40e3, byY: 4000, byZ: 5500 },
  { state: 'partly open', pull: 5e3, byY: 24e3, byZ: 1e3 },
  { state: 'open', pull: 170e3, byY: 1500, byZ: -800 },
  { state: 'a stud slack', pull: -150e3, byY: 1000, byZ: -1500 },
];

/** Longer than the body ever goes, m. */
const FAR = 0.02;

/** Step by step, until the force left over is a millionth of what acts, and not the usual five thousandths. */
const OPENING = [
  '*STEP, NLGEOM, INC=1000',
  '*STATIC, DIRECT',
  '0.1, 1.',
  '*CONTROLS, PARAMETERS=FIELD',
  '1.E-7, 1.E-6, 0., 0., 2.E-2, 1.E-7, 1.E-3, 1.E-8',
];

/** A broken line of force over elongation, elongations rising. */
type Line = readonly (readonly [force: number, elongation: number])[];

test('a face closed, partly open and open: each stud, the plate and the opening as by finite elements', (t) => {
  const deck = new Deck();
  const body: number[] = [];
  const grounds: number[] = [];
  const reference = deck.node([0, 0, 0], true);
  const turning = deck.node([0, 0, 0], true);
  const spring = (
    set: string,
    { y, z }: { readonly y: number; readonly z: number },
    told: boolean,
  ): number => {
    const ground = deck.node([-1, y, z], told);
    const end = deck.node([0, y, z]);
    body.push(end);
    grounds.push(ground);
    deck.element('SPRINGA', set, ground, end);
    return ground;
  };
  const line = (set: string, points: Line): void => {
    deck.card(`*SPRING, ELSET=${set}, NONLINEAR`);
    deck.card(...points.map(([force, elongation]) => `${plain(force)}, ${plain(elongation)}, 0.`));
  };
  const studs = FACE.studs.map((stud, k) => {
    const { preload, stiffness } = stud;
    const slack = -preload / stiffness;
    line(`STUD${k}`, [
      [0, -FAR],
      [0, slack],
      [stiffness * (FAR - slack), FAR],
    ]);
    return spring(`STUD${k}`, stud, true);
  });
  FACE.cells.forEach((cell, k) => {
    const { pressed, stiffness } = cell;
    const opens = pressed / stiffness;
    line(`CELL${k}`, [
      [-stiffness * (FAR + opens), -FAR],
      [0, opens],
      [0, FAR],
    ]);
    spring(`CELL${k}`, cell, false);
  });
  const plates = FACE.plates.map((plate, k) => {
    line(`PLATE${k}`, [
      [-plate.stiffness * FAR, -FAR],
      [plate.stiffness * FAR, FAR],
    ]);
    return spring(`PLATE${k}`, plate, true);
  });
  deck.card('*NSET, NSET=BODY', ...body.map((node) => `${node},`));
  deck.card(`*RIGID BODY, NSET=BODY, REF NODE=${reference}, ROT NODE=${turning}`);
  deck.card('*BOUNDARY', ...grounds.map((node) => `${node}, 1, 3`));
  deck.card(`${reference}, 2, 3`, `${turning}, 1, 1`);
  for (const { pull, byY, byZ } of LOADS) {
    // what pulls at y turns about −z, at z about y
    deck.card(
      ...step(
        [
          [reference, 1, pull],
          [turning, 2, byZ],
          [turning, 3, -byY],
        ],
        { opening: OPENING, told: 'U, RF' },
      ),
    );
  }
  const { steps, from } = solvedByCcx('face-springs', deck.text(), FILE);
  t.diagnostic(`compared with ${from}`);
  assert.equal(steps.length, LOADS.length);
  LOADS.forEach(({ state, ...load }, k) => {
    const ours = faceUnder(FACE, load);
    const { moved, force } = steps[k]!;
    const where = `load ${k + 1}, ${state}`;
    // seven digits are printed, and the face closes to 1e-10 of its strength
    const largest = Math.max(...ours.studs, ...ours.plates.map(Math.abs));
    [...studs, ...plates].forEach((node, i) => {
      near([...ours.studs, ...ours.plates][i]!, -force[node]![0]!, 1e-6 * largest, `${where}, ${i + 1}`);
    });
    const { at, perY, perZ } = ours.opening;
    const most = Math.abs(at) + 0.3 * Math.hypot(perY, perZ);
    near(at, moved[reference]![0]!, 1e-6 * most, `${where}, opening`);
    near(perY, -moved[turning]![2]!, 4e-6 * most, `${where}, opening by y`);
    near(perZ, moved[turning]![1]!, 4e-6 * most, `${where}, opening by z`);
    const seen: State =
      ours.opened === 1
        ? 'open'
        : ours.opened > 0
          ? 'partly open'
          : ours.studs.some((each) => each === 0)
            ? 'a stud slack'
            : 'closed';
    assert.equal(seen, state, `${where}: ${ours.opened} of it open`);
  });
});
