/** Ways out in closed form: a peg in a hole, a pipe in a slot, a ring that is trapped, pipes that hold one another. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { pipeThing, solidThing, type Thing } from '../../src/gaspath/hand/surroundings.ts';
import { type Body, ballsOfPipe } from '../../src/gaspath/removal/body.ts';
import { orderOff } from '../../src/gaspath/removal/order.ts';
import { bindOf, wayOut } from '../../src/gaspath/removal/way-out.ts';
import { type Walked, walk } from '../../src/gaspath/verify/walk.ts';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

const R = 10;
/** Kept by the look, and the shortest step of it, mm. */
const PLAY = 1;
const STEP = 1.5;

const box = (name: string, from: Vec3, to: Vec3): Thing =>
  solidThing(name, {
    kind: 'box',
    center: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (from[2] + to[2]) / 2],
    half: [Math.abs(to[0] - from[0]) / 2, Math.abs(to[1] - from[1]) / 2, Math.abs(to[2] - from[2]) / 2],
  });

const pathOf = (p: Vec3, d: Vec3, length: number): Walked =>
  walk({ p, d }, [{ kind: 'straight', length, radius: 0, angle: 0, normal: [0, 0, 0] }]);

const bodyOf = (name: string, path: Walked): Body => ({ name, balls: ballsOfPipe(path, R) });

/** A square hole along x, 24 wide, from x = -400 to 60. */
const HOLE = [
  box('side', [-400, 12, -100], [60, 100, 100]),
  box('side', [-400, -100, -100], [60, -12, 100]),
  box('roof', [-400, -100, 12], [60, 100, 100]),
  box('floor', [-400, -100, -100], [60, 100, -12]),
];
const peg = bodyOf('peg', pathOf([-150, 0, 0], [1, 0, 0], 200));
const ALONG: Vec3 = [1, 0, 0];

test('a peg comes out of a hole along it and in no other way', () => {
  const out = wayOut({
    body: peg,
    things: [...HOLE, box('end', [-410, -100, -100], [-400, 100, 100])],
    draw: { way: ALONG, mm: 0 },
  });
  assert.ok(out.found);
  const last = out.legs.at(-1)!;
  assert.ok(last.kind === 'out');
  // 1 mm aside over the 210 mm that it has to go in the hole: under half a degree
  assert.ok(last.way[0] > Math.cos((0.6 * Math.PI) / 180), String(last.way));
  assert.equal(out.tried, 2);
});

test('with a wall before it the peg goes to the play before the wall, and the wall is named', () => {
  // its end is a ball of 10 mm about x = 50
  const wall = box('wall', [95, -100, -100], [105, 100, 100]);
  const out = wayOut({ body: peg, things: [...HOLE, wall], draw: { way: ALONG, mm: 200 } });
  assert.equal(out.found, false);
  near(out.farthest, 95 - 60 - PLAY, STEP);
  assert.equal(out.stops[0]!.name, 'wall');
});

test('a hole that fits a peg without play lets it slide: what touches to begin with may touch', () => {
  const tight = [
    box('side', [-400, 10, -100], [60, 100, 100]),
    box('side', [-400, -100, -100], [60, -10, 100]),
  ];
  const out = wayOut({ body: peg, things: tight, draw: { way: ALONG, mm: 50 } });
  assert.ok(out.found);
});

/** A plate square to y with a slot 40 high and 260 long, its length turned by `lean` about y. */
function slot(lean: number): Thing[] {
  const [c, s] = [Math.cos(lean), Math.sin(lean)];
  const axes = [
    [c, 0, -s],
    [0, 1, 0],
    [s, 0, c],
  ] as const;
  const place = (x: number, z: number): Vec3 => [c * x + s * z, 60, -s * x + c * z];
  const part = (x: number, z: number, half: Vec3): Thing =>
    solidThing('plate', { kind: 'box', center: place(x, z), half, axes: [axes[0], axes[1], axes[2]] });
  return [
    part(0, 520, [1000, 10, 500]),
    part(0, -520, [1000, 10, 500]),
    part(630, 0, [500, 10, 20]),
    part(-630, 0, [500, 10, 20]),
  ];
}
const lying = bodyOf('pipe', pathOf([-110, 0, 0], [1, 0, 0], 220));
/** Behind, beside, above and below: the slot is the one way. */
const CELL = [
  box('cell', [-1000, -80, -400], [1000, -60, 400]),
  box('cell', [-420, -80, -400], [-400, 50, 400]),
  box('cell', [400, -80, -400], [420, 50, 400]),
  box('cell', [-420, -80, 400], [420, 50, 420]),
  box('cell', [-420, -80, -420], [420, 50, -400]),
];

test('a pipe goes straight through a slot that lies as it does', () => {
  const out = wayOut({ body: lying, things: [...CELL, ...slot(0)], draw: { way: [0, 1, 0], mm: 10 } });
  assert.ok(out.found);
  assert.deepEqual(
    out.legs.map(({ kind }) => kind),
    ['draw', 'out'],
  );
});

test('through a slot that leans 20° it has to be turned; through one square to it no way is found', () => {
  // 220 mm of pipe leaning by 20° against the slot stands 75 mm high in it, turned by 16° or 25° within 40
  const out = wayOut({
    body: lying,
    things: [...CELL, ...slot(-(20 * Math.PI) / 180)],
    draw: { way: [0, 1, 0], mm: 10 },
  });
  assert.ok(out.found);
  const turn = out.legs.find((leg) => leg.kind === 'turn');
  assert.ok(turn !== undefined && Math.abs(turn.axis[1]) > 0.99 && Math.abs(turn.degrees) >= 16);
  const across = wayOut({
    body: lying,
    things: [...CELL, ...slot(Math.PI / 2)],
    draw: { way: [0, 1, 0], mm: 10 },
    most: 600,
  });
  assert.equal(across.found, false);
  assert.equal(across.tried, 600);
});

/** All but closed round a rod along z. */
const ring = (): Walked =>
  walk({ p: [60, 0, 0], d: [0, 1, 0] }, [
    { kind: 'bend', length: 0, radius: 60, angle: (345 * Math.PI) / 180, normal: [0, 0, 1] },
  ]);
const rod = (half: number): Thing =>
  solidThing('rod', { kind: 'cylinder', a: [0, 0, -half], b: [0, 0, half], r: 40 });

test('a ring round a rod comes off along it; between two plates it is trapped', () => {
  const body = bodyOf('ring', ring());
  const free = wayOut({ body, things: [rod(300)], draw: { way: [0, 0, 1], mm: 20 } });
  assert.ok(free.found);
  const last = free.legs.at(-1)!;
  // 9 mm of play aside over 300 mm
  assert.ok(last.kind === 'out' && Math.abs(last.way[2]) > 0.99);
  const plates = [
    box('plate', [-900, -900, 100], [900, 900, 110]),
    box('plate', [-900, -900, -110], [900, 900, -100]),
  ];
  const trapped = wayOut({
    body,
    things: [rod(300), ...plates],
    draw: { way: [0, 0, 1], mm: 20 },
    most: 800,
  });
  assert.equal(trapped.found, false);
  const names = trapped.stops.map(({ name }) => name);
  assert.ok(names.includes('rod') && names.every((name) => name === 'rod' || name === 'plate'), names.join());
});

const part = (name: string, y: number, after?: readonly string[]) => {
  const path = pathOf([-100, y, 0], [1, 0, 0], 200);
  return {
    body: bodyOf(name, path),
    draw: { way: [0, 1, 0] as Vec3, mm: 30 },
    asThings: [pipeThing(name, path, R)],
    ...(after === undefined ? {} : { after }),
  };
};
/** A trough that is open towards +y alone. */
const TROUGH = [
  box('trough', [-200, -20, -13], [200, 200, -11.5]),
  box('trough', [-200, -20, 11.5], [200, 200, 13]),
  box('trough', [-200, -20, -13], [200, -15, 13]),
  box('trough', [-115, -20, -13], [-112, 200, 13]),
  box('trough', [112, -20, -13], [115, 200, 13]),
];

test('of two pipes in a trough the outer one comes first, whatever the order in which they are told', () => {
  const parts = [part('inner', 0), part('outer', 25)];
  for (const told of [parts, [...parts].reverse()]) {
    const { off, held } = orderOff(told, TROUGH);
    assert.deepEqual(
      off.map(({ part: name }) => name),
      ['outer', 'inner'],
    );
    assert.deepEqual(held, []);
  }
});

test('what waits for another that does not come off is told as not tried', () => {
  const lid = box('lid', [-200, 41, -13], [200, 45, 13]);
  const { off, held } = orderOff([part('outer', 25), part('inner', 0, ['outer'])], [...TROUGH, lid]);
  assert.deepEqual(off, []);
  assert.equal(held.find(({ part: name }) => name === 'outer')?.way?.found, false);
  assert.equal(held.find(({ part: name }) => name === 'inner')?.way, undefined);
});

test('studs off the way of the pull bind by their length times the sine', () => {
  const lean = (5 * Math.PI) / 180;
  near(bindOf([Math.sin(lean), Math.cos(lean), 0], [0, 2, 0], 22), 22 * Math.sin(lean), 1e-12);
});
