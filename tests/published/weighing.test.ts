/** The car weighed: corner weights, centre of gravity by four pads and by the raised axle. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  bumpSteer,
  rimFromCentre,
  stringYaw,
  toeFromPlates,
  toeFromString,
} from '../../src/flatfloor/strings.ts';
import {
  heightByRaisedAxle,
  type Measured,
  padChecked,
  padHeights,
  weighedOnPads,
} from '../../src/flatfloor/weighing.ts';
import { attitudeOf } from '../../src/loadpath/corner/attitude.ts';
import { solveCorner } from '../../src/loadpath/corner/solve.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { linkageOf } from '../../src/loadpath/sprung-corner.ts';
import { Working } from '../../src/working/working.ts';
import { demo } from '../cars/demo.ts';
import { near } from '../near.ts';

const exactly = (value: number): Measured => ({ value, u: 0 });
const about = (value: number, u: number): Measured => ({ value, u });

/** By definition of the shares; cross weight is (right front + left rear)/total, trade term (from memory). */
test('G01 (D) corner weights 118, 122, 171.5, 168.5 kg: 41.379 % front, 49.914 % left, 50.603 % cross', () => {
  const is = weighedOnPads(
    {
      frontLeft: exactly(118),
      frontRight: exactly(122),
      rearLeft: exactly(171.5),
      rearRight: exactly(168.5),
    },
    { wheelbase: exactly(2.7), frontTrack: exactly(1.5), rearTrack: exactly(1.45) },
  );
  near(is.total.value, 580, 1e-9);
  // as printed, to three places of a per cent
  near(100 * is.frontShare.value, 41.379, 0.0005);
  near(100 * is.leftShare.value, 49.914, 0.0005);
  near(100 * is.cross.value, 50.603, 0.0005);
});

/** Jazar, Vehicle Dynamics: Theory and Application (2008), Example 40, p. 41: a1 1.1084 m, a2 1.2316 m. */
test('Jazar, example 40: 2000 N a front wheel, 1800 N a rear one on 2.34 m', () => {
  const is = weighedOnPads(
    {
      frontLeft: exactly(2000),
      frontRight: exactly(2000),
      rearLeft: exactly(1800),
      rearRight: exactly(1800),
    },
    { wheelbase: exactly(2.34), frontTrack: exactly(1.4), rearTrack: exactly(1.4) },
  );
  // the last digit printed
  near(is.behindFront.value, 1.1084, 5e-5);
  near(2.34 - is.behindFront.value, 1.2316, 5e-5);
  near(is.leftOfMiddle.value, 0, 1e-12);
});

/** NCERT Physics XI, rotational motion: 1800 kg, axles 1.8 m apart, 1.05 m behind the front: 3675 and 5145 N a wheel. */
test('NCERT XI turned round: 3675 and 5145 N a wheel put the centre 1.05 m behind the front axle', () => {
  const is = weighedOnPads(
    {
      frontLeft: exactly(3675),
      frontRight: exactly(3675),
      rearLeft: exactly(5145),
      rearRight: exactly(5145),
    },
    { wheelbase: exactly(1.8), frontTrack: exactly(1.5), rearTrack: exactly(1.5) },
  );
  near(is.behindFront.value, 1.05, 1e-9);
  near(is.total.value / 9.8, 1800, 1e-9);
});

const RAISED = {
  wheelbase: exactly(2.7),
  frontRadius: exactly(0.29),
  rearRadius: exactly(0.29),
  total: exactly(620),
  frontLevel: exactly(252.593),
  frontRaised: exactly(254.485),
  lift: exactly(0.4),
};

/**
 * h = r + L ΔW_f/(W tan θ), sin θ = H/L: the textbook's formula for equal radii (open lecture text on vehicle tests);
 * the numbers are those of a rigid car with its centre at 345 mm, worked by hand.
 */
test('G02 (D) raised axle, equal radii: 345 mm back from 254.485 kg in front', () => {
  const is = heightByRaisedAxle(RAISED);
  near((is.tilt.value * 180) / Math.PI, 8.5196, 5e-5);
  // a gram on the scale is 0.03 mm here
  near(is.value, 0.345, 5e-5);
  const textbook = 0.29 + (2.7 * (254.485 - 252.593)) / 620 / Math.tan(Math.asin(0.4 / 2.7));
  near(is.value, textbook, 1e-5);
});

/** Effect named in SAE 2004-01-1076: with radii of 270 and 310 mm the front shows 254.363 kg; the height stays. */
test('G03 (D) raised axle, radii that differ: 345 mm, where the front radius alone would say 321 mm', () => {
  const is = heightByRaisedAxle({
    ...RAISED,
    frontRadius: exactly(0.27),
    rearRadius: exactly(0.31),
    frontRaised: exactly(254.363),
  });
  near(is.value, 0.345, 5e-5);
});

/**
 * A rigid car laid out in the side plane and turned: where its weight falls between the two contacts. Numbers of G02
 * (620 kg, 2.7 m, centre 1.6 m behind and 345 mm up, rear raised by 400 mm: 252.593 and 254.485 kg) and others about it.
 */
test('G02 (D) forward: a rigid car of known centre, turned by points, reads as printed and gives its height back', () => {
  const [m, L, a, h] = [620, 2.7, 1.6, 0.345];
  const front = (r_f: number, r_r: number, lift: number): number => {
    // front contact at nothing, rear contact at the lift: turned about the front wheel's centre until it is so
    const centres = (θ: number) => [
      L * Math.cos(θ) - (r_r - r_f) * Math.sin(θ),
      L * Math.sin(θ) + (r_r - r_f) * Math.cos(θ),
    ];
    let [low, high] = [-0.2, 0.6];
    for (let k = 0; k < 60; k += 1) {
      const θ = (low + high) / 2;
      if (r_f + centres(θ)[1]! - r_r < lift) low = θ;
      else high = θ;
    }
    const behind = a * Math.cos(low) - (h - r_f) * Math.sin(low);
    return m * (1 - behind / centres(low)[0]!);
  };
  near(front(0.29, 0.29, 0), 252.593, 5e-4);
  near(front(0.29, 0.29, 0.4), 254.485, 5e-4);
  near(front(0.27, 0.31, 0.4), 254.363, 5e-4);
  for (const [r_f, r_r, lift] of [
    [0.29, 0.29, 0.4],
    [0.29, 0.29, 0.9],
    [0.27, 0.31, 0.25],
    [0.316, 0.324, 0.6],
    [0.33, 0.29, 0.5],
  ] as const) {
    const is = heightByRaisedAxle({
      wheelbase: exactly(L),
      frontRadius: exactly(r_f),
      rearRadius: exactly(r_r),
      total: exactly(m),
      frontLevel: exactly(front(r_f, r_r, 0)),
      frontRaised: exactly(front(r_f, r_r, lift)),
      lift: exactly(lift),
    });
    near(is.value, h, 1e-9, `${r_f}, ${r_r}, ${lift}`);
  }
});

test('the spread of the height is mostly the scale, and is told', () => {
  const is = heightByRaisedAxle({
    ...RAISED,
    frontRaised: about(254.485, 0.25),
    frontLevel: about(252.593, 0.25),
  });
  // by hand: dh = L dW/(W tan θ) for either, the level one through a too, less nothing
  const each = (2.7 * 0.25) / 620 / Math.tan(Math.asin(0.4 / 2.7));
  near(is.u, Math.hypot(each, each), 0.01 * is.u);
  const working = new Working();
  heightByRaisedAxle(RAISED, working);
  assert.deepEqual(
    working.steps.map(({ symbol }) => symbol),
    ['a', 'θ', 'h'],
  );
});

test('a pad under a known mass, and four pads under a water level', () => {
  assert.ok(padChecked(about(20.02, 0.03), about(20, 0.005)).agrees);
  const off = padChecked(about(20.2, 0.03), about(20, 0.005));
  assert.ok(!off.agrees);
  near(off.factor.value, 1.01, 1e-12);
  const heights = padHeights([about(0.312, 1e-4), about(0.3116, 1e-4), about(0.3123, 1e-4)]);
  near(heights[1]!.value, 0.0004, 1e-12);
  near(heights[2]!.value, -0.0003, 1e-12);
  near(heights[2]!.u, Math.SQRT2 * 1e-4, 1e-12);
});

/** Common practice, no source: over a 330 mm rim a millimetre is 0.17 degrees; plates and strings count opposite ways. */
test('strings and plates give one toe, in degrees at the rim', () => {
  const string = toeFromString({ front: exactly(0.101), rear: exactly(0.1), across: exactly(0.33) });
  near((string.value * 180) / Math.PI, 0.17, 0.005);
  // toe-in: nearer together in front
  const plates = toeFromPlates({ front: exactly(1.5), rear: exactly(1.502), apart: exactly(0.33) });
  near(plates.value, string.value, 1e-6);
});

/** A wheel and a string laid out in the plane: their directions are known, and so is what a rule reads between them. */
test('a string that opens forward is put right: the toe and the place of the rim come back as laid out', () => {
  const [toe, yaw, across, wheelbase] = [0.004, 0.002, 0.33, 2.7];
  // left wheel, x forward and y to the left: toe-in turns its front edge to the right
  const middle = [0, 0.75];
  const edge = (sign: number) => [
    middle[0]! + (sign * across * Math.cos(toe)) / 2,
    middle[1]! - (sign * across * Math.sin(toe)) / 2,
  ];
  const stringAt = (x: number): number => 0.9 + x * Math.tan(yaw);
  // at right angles to the string
  const rule = ([x, y]: readonly number[]): Measured => exactly((stringAt(x!) - y!) * Math.cos(yaw));
  const read = { front: rule(edge(1)), rear: rule(edge(-1)) };
  const raw = toeFromString({ ...read, across: exactly(across) });
  near(raw.value, toe + yaw, 1e-12);
  const line = { front: exactly(0.9), rear: exactly(stringAt(-wheelbase)), wheelbase: exactly(wheelbase) };
  const is = stringYaw(line);
  near(raw.value - is.value, toe, 1e-8);
  near(rimFromCentre(line.front, read).value, middle[1]!, 1e-6);
});

test('a bump steer gauge that reads what the linkage does finds nothing apart, and finds a planted slip', () => {
  const car = demo('fenwold-201');
  const corner = linkageOf(car.form.front, 'left', new Numbers(car.values));
  const apart = 0.28;
  const toe = (travel: number): number => attitudeOf(solveCorner(corner, { travel })).toe.value;
  const rows = [-0.02, -0.01, 0, 0.01, 0.02].map((travel) => ({
    travel,
    front: 0.01 - apart * Math.sin(toe(travel) - toe(0)),
    rear: 0.01,
  }));
  for (const row of bumpSteer(corner, rows, apart)) near(row.apart, 0, 1e-12);
  const slipped = rows.map((row) => (row.travel === 0.02 ? { ...row, front: row.front + 1e-4 } : row));
  near(bumpSteer(corner, slipped, apart)[4]!.apart, -1e-4 / apart, 1e-6);
});
