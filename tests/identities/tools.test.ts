/** Sockets, ring and open spanners about a nut, in closed form: a pipe beside the stud, a wall beside it, a roof over it. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { solidThing, type Thing } from '../../src/gaspath/hand/surroundings.ts';
import { ringHandle, ringPushed, wayAt } from '../../src/gaspath/hand/tool-bars.ts';
import { inTheWayOf, toolRooms } from '../../src/gaspath/hand/tool-room.ts';
import {
  type About,
  inTheWay,
  type Nut,
  PLAY,
  type RingSize,
  ringSwing,
  type SocketSize,
  type SpannerSize,
  socketOn,
  spannerSwing,
} from '../../src/gaspath/hand/tools.ts';
import { walk } from '../../src/gaspath/verify/walk.ts';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';

const NUT: Nut = { at: [0, 0, 0], axis: [0, 0, 1], across: [1, 0, 0], height: 7, standsOut: 12 };
const SOCKET: SocketSize = {
  atNut: 18.5,
  atDrive: 20,
  length: 32,
  bar: { ends: 20, shank: 12, lengths: [75, 125, 250] },
  ratchet: { across: 34, high: 28, handle: 180, thick: 16 },
};
const SPANNER: SpannerSize = { flats: 13, width: 34.3, thickness: 6.5, handle: 13, length: 156 };
const RING: RingSize = { across: 21, high: 9.5, handle: 10, thickness: 6, length: 156, riseDeg: 15 };
const ABOUT: About = { pipes: [], things: [], port: [0, 0, -1000], flangeZone: 0 };

/** A pipe of radius 20 along the stud, its middle `off` beside it. */
const beside = (off: number, long = 400): About => ({
  ...ABOUT,
  pipes: [
    {
      name: 'pipe',
      radius: 20,
      path: walk({ p: [off, 0, 0], d: [0, 0, 1] }, [
        { kind: 'straight', length: long, radius: 0, angle: 0, normal: [0, 0, 0] },
      ]),
    },
  ],
});
const wall = (x: number): Thing =>
  solidThing('wall', { kind: 'box', center: [x + 50, 0, 0], half: [50, 2000, 2000] });

test('with nothing about a socket goes on with its ratchet, and a spanner goes all round', () => {
  assert.deepEqual(socketOn(NUT, SOCKET, ABOUT), { goes: true, bar: 0 });
  assert.deepEqual(spannerSwing(NUT, SPANNER, ABOUT), { degrees: 360 });
});

test('a pipe along the stud lets a socket by as long as pipe, play and socket have room', () => {
  // the drive end is the widest: 10 mm; then the ratchet has to stand beyond the end of the pipe
  const least = 20 + PLAY + 10;
  assert.equal(socketOn(NUT, SOCKET, beside(least + 0.1, 60)).goes, true);
  const stopped = socketOn(NUT, SOCKET, beside(least - 0.1, 60));
  assert.equal(stopped.goes, false);
  assert.equal(stopped.stoppedBy, 'pipe');
});

test('the bar is the shortest that brings the ratchet past the end of a pipe beside it', () => {
  // socket 32, so the ratchet stands at 32, 107, 157 and 282 mm; its skin is 14 mm off the middle of the pipe, whose end
  // is a ball of 20 mm: clear √(20.5² − 14²) = 15 mm beyond that middle's end
  assert.deepEqual(socketOn(NUT, SOCKET, beside(31, 91)), { goes: true, bar: 75 });
  assert.deepEqual(socketOn(NUT, SOCKET, beside(31, 140)), { goes: true, bar: 125 });
  assert.equal(socketOn(NUT, SOCKET, beside(31, 300)).goes, false);
});

test('a socket asks room over the end of the stud: its length and what the stud stands out', () => {
  const roof = (z: number): About => ({
    ...ABOUT,
    things: [solidThing('roof', { kind: 'box', center: [0, 0, z + 50], half: [500, 500, 50] })],
  });
  assert.equal(socketOn(NUT, SOCKET, roof(32 + 12 + PLAY - 0.2)).goes, false);
  // high enough to put it on and for the ratchet on it: 32 + 28
  assert.equal(socketOn(NUT, SOCKET, roof(32 + 28 + PLAY + 0.2)).goes, true);
});

test('beside a wall the swing of a spanner is what its far corner leaves of a turn', () => {
  const x = 80;
  // a corner of the handle, L out and half its width aside, is nearest the wall: L cos φ + b sin φ = x − play
  const corner = Math.hypot(156, 6.5);
  const phi = Math.acos((x - PLAY) / corner) + Math.atan2(6.5, 156);
  const swing = spannerSwing(NUT, SPANNER, { ...ABOUT, things: [wall(x)] });
  // tried every 3°: either end may be told up to 3° short
  const expected = 360 - (2 * phi * 180) / Math.PI;
  assert.ok(
    swing.degrees <= expected + 0.5 && swing.degrees >= expected - 6,
    `${swing.degrees} of ${expected}`,
  );
  assert.equal(swing.stoppedBy, 'wall');
});

test('in a slot narrower than its jaws a spanner does not go', () => {
  const things = [wall(15), solidThing('wall', { kind: 'box', center: [-65, 0, 0], half: [50, 2000, 2000] })];
  assert.deepEqual(spannerSwing(NUT, SPANNER, { ...ABOUT, things }), { degrees: 0, stoppedBy: 'wall' });
});

test('what carries the flange is not asked near the port', () => {
  const head: Thing = { ...wall(8), carriesFlange: true };
  const at = (flangeZone: number): About => ({
    ...ABOUT,
    things: [head],
    port: [0, 0, 0] as Vec3,
    flangeZone,
  });
  assert.equal(socketOn(NUT, SOCKET, at(400)).goes, true);
  assert.equal(socketOn(NUT, SOCKET, at(5)).goes, false);
  near(spannerSwing(NUT, SPANNER, at(400)).degrees, 360, 0);
});

test('a ring goes past a pipe beside the stud where its own outside has room, an open spanner does not', () => {
  const least = 20 + PLAY + 10.5;
  assert.ok(ringSwing(NUT, RING, beside(least + 0.1)).degrees >= 120);
  const stopped = ringSwing(NUT, RING, beside(least - 0.1));
  assert.deepEqual(stopped, { degrees: 0, stoppedBy: 'pipe' });
  // jaws of 34.3 mm: half of that is more than the 11 mm that are left
  assert.ok(spannerSwing(NUT, SPANNER, beside(least + 0.1)).degrees < 120);
});

test('a ring asks room over the end of the stud for its own height, and for its handle as it rises', () => {
  const roof = (z: number): About => ({
    ...ABOUT,
    things: [solidThing('roof', { kind: 'box', center: [0, 0, z + 50], half: [30, 30, 50] })],
  });
  // at the edge of the roof, 30 mm out, the handle stands tan 15° of that higher
  assert.equal(ringSwing(NUT, RING, roof(12 + 9.5 + PLAY - 0.3)).degrees, 0);
  const high = 12 + 9.5 / 2 + Math.tan(Math.PI / 12) * 30 * Math.SQRT2 + 3 / Math.cos(Math.PI / 12) + PLAY;
  assert.equal(ringSwing(NUT, RING, roof(high + 0.5)).degrees, 360);
});

test('whatever keeps clear of the room for a ring lets it have its stroke', () => {
  const rooms = toolRooms('room', NUT, { sockets: [], rings: [RING], open: [] }, ABOUT);
  assert.equal(rooms.length, 60);
  for (const room of rooms.filter((_, k) => k % 7 === 0)) {
    // every place of every bar of the stroke lies in one of its solids
    const bars = [ringPushed(NUT, RING)];
    for (let off = -15; off <= 15; off += 3) bars.push(...ringHandle(NUT, RING, wayAt(NUT, room.way + off)));
    for (const { a, axis, long } of bars) {
      for (let k = 0; k <= 20; k += 1) {
        const x: Vec3 = [
          a[0] + (axis[0] * long * k) / 20,
          a[1] + (axis[1] * long * k) / 20,
          a[2] + (axis[2] * long * k) / 20,
        ];
        assert.ok(inTheWayOf(room, [{ radius: 0.1 - PLAY, places: [x] }]) > 0, `${room.way}: ${x}`);
      }
    }
  }
});

test('a nut in a pit has no room for any tool, and says so by having none', () => {
  const pit: About = {
    ...ABOUT,
    things: [solidThing('lid', { kind: 'box', center: [0, 0, 30], half: [300, 300, 10] })],
  };
  assert.deepEqual(toolRooms('room', NUT, { sockets: [SOCKET], rings: [RING], open: [] }, pit), []);
  assert.equal(inTheWay([ringPushed(NUT, RING)], pit), 'lid');
});
