/**
 * Bearings, sphericals, screwed ends and drop links of the demo cars under load, by moments and areas written out here;
 * the way of each slip in their readings. Thread sizes by ASME B1.1 (3/8-24 UNF: root 8.265 mm, pitch diameter 8.837
 * mm, minor diameter of the nut 8.380 mm; from memory), shear areas by FED-STD-H28 (from memory).
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readCar } from '../../src/car/read.ts';
import { putLoadFigures } from '../../src/loadpath/figures/loads.ts';
import type { FigureNote } from '../../src/loadpath/figures/note.ts';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { type Doing, endOf, STANDING, sideOf, type WheelName } from '../../src/loadpath/loads/doing.ts';
import { type AppliedForce, resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { add, along, cross, dot, length, scale, sub, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { loadsOf, USUAL_DOINGS } from '../../src/questions/index.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

const g = 9.80665;
const CAR = 'fenwold-201';
const DEG = Math.PI / 180;
type Car = ReturnType<typeof demo>;

const figuresAt = (car: Car, wheel: WheelName, doing: Doing) => {
  const found = new Map<string, number>();
  const notes = new Map<string, FigureNote>();
  const numbers = new Numbers(car.values);
  const of = putLoadFigures(car.form, wheel, doing, numbers, (note, value) => {
    found.set(note.id, value);
    notes.set(note.id, note);
  });
  const standing = carStanding(car.form, doing, numbers);
  const { state } = standing.axles[endOf(wheel)][sideOf(wheel)];
  return { of, standing, state, notes, at: (id: string): number => found.get(id)! };
};

const braking: Doing = { ...STANDING, longitudinal: -2 * g };
const turning: Doing = { ...STANDING, lateral: 2 * g };

/** Couple across the axis, about one bearing, over the span. */
const byMoments = (about: Vec3, axis: Vec3, span: number, forces: readonly AppliedForce[]): number =>
  length(cross(axis, resultantAt(about, forces).moment)) / span;

test('wheel bearings: moments of tyre, wheel and calliper about the other bearing, over the span', () => {
  const car = demo(CAR);
  for (const doing of [STANDING, braking, turning, { ...braking, lateral: 1.5 * g }]) {
    for (const wheel of ['frontLeft', 'frontRight', 'rearLeft'] as const) {
      const { standing, state, at } = figuresAt(car, wheel, doing);
      const front = wheel.startsWith('front');
      const here = standing.wheels[wheel];
      const w = state.points.wheelCentre;
      const axle = state.wheelAxis.value;
      // the file's distances, the lines of contact 25° from square on the mean diameter
      const [out, inn, d, mass] = front ? [18.5, 74, 77.5, 11.2] : [24, 84.5, 85, 14.8];
      const shift = (d / 2) * Math.tan(25 * DEG);
      const [s1, s2] = [(out - shift) / 1e3, (inn + shift) / 1e3];
      const corner = car.form[endOf(wheel)][sideOf(wheel)];
      const forces: AppliedForce[] = [
        { at: here.at, force: here.force },
        { at: w, force: scale(here.unsprung.force, mass / corner.unsprung.value) },
      ];
      if (front && doing.longitudinal < 0) {
        // 168° from ahead, over the top: behind and a little above; it holds what the ground's push turns
        const foreAft = scale(standing.ground.forward, here.ground[0]);
        const torque = -dot(axle, cross(sub(here.at, w), foreAft));
        const ahead = unit(sub([1, 0, 0], scale(axle, axle[0])));
        const up = unit(sub([0, 0, 1], add(scale(axle, axle[2]), scale(ahead, ahead[2]))));
        const out121 = add(scale(ahead, Math.cos(168 * DEG)), scale(up, Math.sin(168 * DEG)));
        const place = add(along(w, axle, -0.052), scale(out121, 0.121));
        const push = scale(cross(axle, out121), torque / 0.121);
        // the calliper stops the wheel: its torque about the axle is against the ground's
        near(dot(axle, cross(sub(place, w), push)), torque, 1e-6);
        // behind the axle it presses the disc down
        assert.ok(push[2] < 0);
        forces.push({ at: place, force: push });
      }
      const size = Math.max(...forces.map(({ force }) => length(force)));
      const span = s2 - s1;
      near(at('wheelBearing.outer.radial'), byMoments(along(w, axle, -s2), axle, span, forces), 1e-7 * size);
      near(at('wheelBearing.inner.radial'), byMoments(along(w, axle, -s1), axle, span, forces), 1e-7 * size);
      const push = forces.reduce((sum, { force }) => sum + dot(force, axle), 0);
      near(at('wheelBearing.push'), push, 1e-7 * size);
      // back to back on a spindle: the inner one takes an outboard push
      const [ao, ai] = [at('wheelBearing.outer.axial'), at('wheelBearing.inner.axial')];
      near(ai - ao, push, 1e-7 * size);
      const [ro, C] = [at('wheelBearing.outer.radial'), front ? 28e3 : 34e3];
      near(at('wheelBearing.outer.share'), Math.max(0.5 * ro + 0.38 * ao, ro) / C, 1e-9);
    }
  }
});

test('drive and inboard brakes do not load the bearings by their torque; outboard ones do where the calliper is told', () => {
  const inboard = opened(demoSource(CAR, (text) => text.replace('front: outboard', 'front: inboard')));
  const bare = opened(demoSource(CAR, (text) => text.replace(/ +caliper: \{.*\n/, '')));
  const [a, b, c] = [inboard, bare, demo(CAR)].map((car) => figuresAt(car, 'frontLeft', braking));
  // without its calliper an outboard brake puts on the bearings what an inboard one does, but for where the car stands
  const outer = (of: typeof a): number => of!.at('wheelBearing.outer.radial');
  near(outer(a), outer(b), 0.03 * outer(a));
  // a calliper behind relieves the outer bearing of weight: plainly another figure
  assert.ok(Math.abs(outer(c) - outer(b)) > 0.05 * outer(b), `${outer(c)} ${outer(b)}`);
  const notes = (car: Car, doing: Doing): string => {
    const answer = loadsOf(car, doing, { spread: false });
    assert.ok(answer.reached);
    return answer.notes.join('\n');
  };
  assert.match(
    notes(bare, braking),
    /calliper stands is not in the file.*: front left, front right, rear left/,
  );
  assert.match(notes(demo(CAR), braking), /calliper stands is not in the file.*: rear left, rear right\./);
  assert.doesNotMatch(notes(demo(CAR), turning), /calliper/);
});

test("rocker's bearings: moments of rod, spring and drop link about the other bearing, over the span", () => {
  const car = demo(CAR);
  for (const doing of [STANDING, turning, { ...STANDING, strikes: { frontLeft: 3 } }]) {
    const { of, state, at } = figuresAt(car, 'frontLeft', doing);
    const { points } = car.form.front.left;
    const [pivot, second] = [points.rockerPivot.value, points.rockerAxis.value];
    const axis = unit(sub(second, pivot));
    const spring = of.onTub.find(({ name }) => name === 'spring unit')!;
    const link = of.onTub.find(({ name }) => name === 'anti-roll bar, drop link')!;
    // what spring and link do to the tub and the bar they do to the rocker the other way
    const forces: AppliedForce[] = [
      of.members.onRocker,
      { at: state.rockerPoints.damper!.value, force: scale(spring.force, -1) },
      { at: state.rockerPoints.dropLink!.value, force: scale(link.force, -1) },
    ];
    const size = Math.max(...forces.map(({ force }) => length(force)));
    const [s1, s2] = [-0.0142, 0.0138];
    near(
      at('rockerBearing.first.radial'),
      byMoments(along(pivot, axis, s2), axis, s2 - s1, forces),
      1e-7 * size,
    );
    near(
      at('rockerBearing.second.radial'),
      byMoments(along(pivot, axis, s1), axis, s2 - s1, forces),
      1e-7 * size,
    );
    const push = forces.reduce((sum, { force }) => sum + dot(force, axis), 0);
    near(at('rockerBearing.push'), push, 1e-7 * size);
    near(at('rockerBearing.first.axial'), Math.abs(push), 1e-7 * size);
    near(at('rockerBearing.second.axial'), 0, 0);
    const [r, p] = [at('rockerBearing.first.radial'), Math.abs(push)];
    near(at('rockerBearing.first.share'), Math.max(0.6 * r + 0.5 * p, r) / 5600, 1e-9);
    // the bar's torque is its link's force times the lever about the bar's own axis, from the file's two points of it
    const { axisLeft, axisRight } = car.form.front.antiRollBar!;
    const along2 = unit(sub(axisRight.value, axisLeft.value));
    const lever = dot(along2, cross(sub(link.at, axisLeft.value), link.force));
    near(at('antiRollTorqueUnderLoad'), Math.abs(lever), 1e-3 * Math.abs(lever) + 1e-6);
  }
});

test('sphericals: parted by the axis of their housing, which turns with its wishbone; shares added', () => {
  const car = demo(CAR);
  const { points } = car.form.front.left;
  const ball = points.upperOuter.value;
  const axis = unit(sub([-0.0224, 0.7216, 0.4638], ball));
  const standing = figuresAt(car, 'frontLeft', STANDING);
  const force = standing.of.members.onUpright.upper.force;
  near(standing.at('spherical.upperOuter.axial'), Math.abs(dot(force, axis)), 1e-6);
  const parts = ['radial', 'axial'].map((what) => standing.at(`spherical.upperOuter.${what}`));
  near(Math.hypot(...parts), standing.at('upperBallJoint'), 1e-6);
  near(standing.at('spherical.upperOuter.share'), parts[0]! / 31e3 + parts[1]! / 6.2e3, 1e-12);
  near(standing.at('spherical.rodInner.share'), Math.abs(standing.at('tension.rod')) / 31e3, 1e-12);
  // on a kerb: the housing by the wishbone's own three points, in whose frame it keeps its place
  const kerb = figuresAt(car, 'frontLeft', { ...STANDING, strikes: { frontLeft: 3 } });
  const frame = (outer: Vec3): readonly [Vec3, Vec3, Vec3] => {
    const x = unit(sub(points.upperRear.value, points.upperFront.value));
    const z = unit(cross(x, sub(outer, points.upperFront.value)));
    return [x, cross(z, x), z];
  };
  const [before, now] = [frame(ball), frame(kerb.state.points.upperOuter)];
  assert.ok(length(sub(kerb.state.points.upperOuter, ball)) > 0.01);
  const carried = before.reduce<Vec3>((sum, each, k) => along(sum, now[k]!, dot(axis, each)), [0, 0, 0]);
  const kerbForce = kerb.of.members.onUpright.upper.force;
  near(kerb.at('spherical.upperOuter.axial'), Math.abs(dot(kerbForce, carried)), 1e-5);
});

test('screwed ends: root and shear areas of 3/8-24 UNF by hand, the thread by which the rod is set', () => {
  const { at } = figuresAt(demo(CAR), 'frontLeft', braking);
  const N = Math.abs(at('tension.rod'));
  const [d3, d2, D1, d, P] = [8.265, 8.837, 8.38, 9.525, 1.0583];
  // 0.1 %: diameters to the last digit written here
  near(at('endShare.rod'), N / ((Math.PI / 4) * d3 * d3 * 900), 1e-3 * at('endShare.rod'));
  const engaged = 24.6;
  const shank = Math.PI * D1 * engaged * (1 / 2 + ((d2 - D1) * Math.tan(30 * DEG)) / P) * 0.6 * 900;
  const parent = Math.PI * d * engaged * (1 / 2 + ((d - d2) * Math.tan(30 * DEG)) / P) * 400;
  near(at('stripShare.rod'), N / Math.min(shank, parent), 2e-3 * at('stripShare.rod'));
});

test('the drop link: pulled one side and pushed on the other in a bend, buckling by its own length', () => {
  const car = demo(CAR);
  const [left, right] = (['frontLeft', 'frontRight'] as const).map((wheel) => figuresAt(car, wheel, turning));
  const [a, b] = [left!.at('dropLinkForce'), right!.at('dropLinkForce')];
  assert.ok(a * b < 0 && Math.abs(a) > 100, `${a} ${b}`);
  const word = (of: typeof left): string => of!.notes.get('dropLinkForce')!.say!;
  assert.match(word(a < 0 ? left : right), /pushed/);
  assert.match(word(a < 0 ? right : left), /pulled/);
  const pushed = a < 0 ? left! : right!;
  const side = a < 0 ? car.form.front.left : car.form.front.right;
  const L = length(sub(side.points.dropLinkRocker!.value, side.points.dropLinkArm!.value));
  // solid bar of 9.5 mm, Johnson's parabola at a slenderness of 50
  const A = (Math.PI / 4) * 0.0095 ** 2;
  const slender = L / (0.0095 / 4);
  const critical = A * 520e6 * (1 - (520e6 * slender ** 2) / (4 * Math.PI ** 2 * 205e9));
  const share = Math.abs(a < 0 ? a : b) / critical;
  // 0.2 %: the link's own length, which the bar keeps
  near(pushed.at('bucklingShare.dropLink'), share, 2e-3 * share);
  assert.equal((a < 0 ? right! : left!).at('bucklingShare.dropLink'), 0);
});

test('every figure under load has a working that stands when worked out again', () => {
  for (const name of [CAR, 'ashgarth-501']) {
    const car = demo(name);
    for (const { doing, name: what } of USUAL_DOINGS.filter((each) =>
      /turning-in|rear-kerb/.test(each.name),
    )) {
      for (const wheel of ['frontLeft', 'rearRight'] as const) {
        const working = new Working();
        const put: (readonly [FigureNote, number])[] = [];
        const numbers = new Numbers(car.values);
        putLoadFigures(car.form, wheel, doing, numbers, (note, value) => put.push([note, value]), working);
        assert.deepEqual(recheck(working.steps), [], `${name} ${what}`);
        for (const [note, value] of put) {
          if (!Number.isFinite(value)) continue;
          assert.ok(working.stepOf(note.symbol, value), `${name} ${what} ${wheel}: ${note.id} has no step`);
        }
      }
    }
  }
});

test('what is nearest to its limit is told in words with its spread, and what is past it by name', () => {
  const answer = loadsOf(demo(CAR), { ...STANDING, strikes: { frontLeft: 3 } });
  assert.ok(answer.reached);
  const said = answer.notes.find((note) => /^Of the links/.test(note))!;
  const [, share, u] = /is at (\d\.\d+) ± (\d\.\d+) of/.exec(said)!;
  const shares = answer.wheels.flatMap(({ figures }) =>
    figures.filter(({ id }) => /^(buckling|yield|end|strip)Share\./.test(id)),
  );
  const worst = shares.reduce((x, y) => (y.value > x.value ? y : x));
  near(Number(share), worst.value, 0.006);
  near(Number(u), worst.spread!.u, 0.006);
  assert.ok(answer.notes.some((note) => /^Of the rocker's bearings .*static rating/.test(note)));
  const weak = opened(
    demoSource(CAR, (text) =>
      text.replace(
        'first: { at: -14.2 mm, staticRating: 5.6 kN }',
        'first: { at: -14.2 mm, staticRating: 0.9 kN }',
      ),
    ),
  );
  const told = loadsOf(weak, { ...STANDING, strikes: { frontLeft: 3 } }, { spread: false });
  assert.ok(
    told.reached &&
      told.notes.some((note) => /^Past their static rating: .*front left first bearing/.test(note)),
  );
});

test('a drop link without its bar is told and left out; nothing else of the answer is lost', () => {
  const car = opened(
    demoSource(CAR, (text) => text.replace(/ {2}antiRollBar:\n {4}kind: U-bar\n( {4}.*\n)+/, '')),
  );
  assert.equal(car.warnings.filter(({ code }) => code === 'member/no-bar').length, 1);
  const { at } = figuresAt(car, 'frontLeft', turning);
  assert.equal(at('yieldShare.dropLink'), undefined);
  assert.ok(at('yieldShare.rod') > 0);
});

test('slips in these readings are told with code, line and column', () => {
  const slip = (from: string | RegExp, to: string) => {
    const source = demoSource(CAR, (text) => {
      assert.ok(typeof from === 'string' ? text.includes(from) : from.test(text), String(from));
      return text.replace(from, to);
    });
    const result = readCar(source);
    return result.ok ? [] : result.problems.filter(({ weight }) => weight === 'error');
  };
  const cases: readonly (readonly [string | RegExp, string, string])[] = [
    ['inner: { at: 74 mm', 'inner: { at: 18.5 mm', 'bearing/one-place'],
    ['inner: { at: 74 mm', 'inner: { at: -74 mm', 'bearing/wrong-way'],
    ['inner: { at: 74 mm', 'inner: { at: 40 m', 'field/out-of-range'],
    [
      'outer: { at: 18.5 mm, staticRating: 28 kN',
      'outer: { at: 18.5 mm, staticRating: 0 kN',
      'field/out-of-range',
    ],
    ['turning: 11.2 kg', 'turning: 17 kg', 'bearing/mass'],
    [/ +turns: inner rings\n/, '', 'bearing/untold'],
    [', contactAngle: 25 deg, pitchDiameter: 77.5 mm }', ' }', 'bearing/untold'],
    ['second: { at: 13.8 mm', 'second: { at: -14.2 mm', 'bearing/one-place'],
    [/ +locating: first\n/, '', 'bearing/untold'],
    ['axis: "-22.4, 721.6, 463.8 mm"', 'axis: "-20.4, 720.8, 423.8 mm"', 'bearing/no-axis'],
    ['thread: 1/4-28 UNF', 'thread: 1/4-29 UNF', 'member/unknown-name'],
    ['parent: steel', 'parent: stael', 'member/unknown-name'],
    ['end: { thread: 1/4-28 UNF, engaged', 'end: { engaged', 'member/no-thread'],
    ['dropLinkArm: 18.6, 217.2, 570.7 mm', 'dropLinkArm: -99.6, 215.6, 570.3 mm', 'points/no-length'],
    ['lowerFront: 195.9, 145.7, 171.1 mm', 'lowerFront: 1.7, 756.8, 196.0 mm', 'points/no-length'],
    [
      'wall: 1.25 mm, youngsModulus: 205 GPa, yield: 520 MPa ± 40 MPa, bow: 0.2',
      'wall: 9.6 mm, youngsModulus: 205 GPa, yield: 520 MPa ± 40 MPa, bow: 0.2',
      'member/wall',
    ],
    ['radialRating: 26 kN', 'radialRating: 26 N', 'field/out-of-range'],
  ];
  for (const [from, to, code] of cases) {
    const found = slip(from, to).find((each) => each.code === code);
    assert.ok(
      found !== undefined,
      `${String(from)}: ${JSON.stringify(slip(from, to).map((each) => each.code))}`,
    );
    assert.ok(found.message.length > 0 && JSON.stringify(found).includes('"line"'), JSON.stringify(found));
  }
});
