/**
 * Every body of a loaded car for itself, cars and loads drawn by chance: the demo cars with their points moved, masses and
 * rates changed, doing anything that a car may do. Newton's laws alone: forces and moments on each body vanish to 1e-9
 * of the largest force. Whole car, upright with wheel, both wishbones, rocker, tub with case, what stands before a face
 * against what stands behind it, and the studs of that face.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { BarOpen } from '../../src/loadpath/axle/anti-roll-bar.ts';
import { Unreachable } from '../../src/loadpath/corner/reach.ts';
import { crankBehind } from '../../src/loadpath/joint/crank.ts';
import { FaceParted } from '../../src/loadpath/joint/face.ts';
import { forcesBehind, type JointName } from '../../src/loadpath/joint/joint-of-car.ts';
import { jointUnder } from '../../src/loadpath/joint/joint-under.ts';
import { airOnTub } from '../../src/loadpath/loads/air-by-part.ts';
import { type CarStanding, carStanding, NotSettled } from '../../src/loadpath/loads/car-equilibrium.ts';
import { type CornerLoads, cornerLoads } from '../../src/loadpath/loads/corner-loads.ts';
import { type Doing, endOf, sideOf, WHEEL_NAMES, type WheelName } from '../../src/loadpath/loads/doing.ts';
import { type AppliedForce, resultantAt } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { cross, dot, length, scale, sub, unit, type Vec3, ZERO } from '../../src/maths/vec3.ts';
import type { Car } from '../../src/questions/index.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';
import { demo } from './demo.ts';

const g = 9.80665;
/** By what a unit's readings are moved: points by so much, others by a part of themselves. */
const POINT = 0.004;
const PART: Readonly<Record<string, number>> = { kg: 0.08, 'N/m': 0.15 };

/** The car's numbers, each moved by chance; one number, one place in the list of chances. */
function moved(car: Car, chances: readonly number[]): Numbers {
  const values = Float64Array.from(car.values);
  for (const { index, unit: by, path, mirrored } of car.readings) {
    if (mirrored) continue;
    const chance = chances[index % chances.length]!;
    if (/^(front|rear)\.(left|right)\.points\./.test(path)) values[index]! += POINT * chance;
    else values[index]! *= 1 + (PART[by] ?? 0) * chance;
  }
  return new Numbers(values);
}

const anyDoing: fc.Arbitrary<Doing> = fc
  .record({
    longitudinal: real(-2.2 * g, 0.9 * g),
    lateral: real(-2.3 * g, 2.3 * g),
    vertical: real(-0.4 * g, 1.5 * g),
    speed: real(0, 70),
    rack: real(-0.012, 0.012),
    struck: fc.constantFrom<WheelName | undefined>(...Array<undefined>(8).fill(undefined), ...WHEEL_NAMES),
    strike: real(0.5, 2.5),
  })
  .map(({ struck, strike, ...rest }) => ({
    ...rest,
    contacts: {},
    strikes: struck === undefined ? {} : { [struck]: strike },
  }));

const back = ({ at, force, moment }: AppliedForce): AppliedForce => ({
  at,
  force: scale(force, -1),
  moment: scale(moment ?? ZERO, -1),
});

/** Moments about the first place, in metres of the largest force. */
function nothingLeft(forces: readonly AppliedForce[], largest: number, what: string): void {
  const { force, moment } = resultantAt(forces[0]!.at, forces);
  near(length(force), 0, 1e-9 * largest, `${what}, force`);
  near(length(moment), 0, 1e-9 * largest, `${what}, moment`);
}

const rodPull = ({ members }: CornerLoads, of: CarStanding, wheel: WheelName): AppliedForce => {
  const { rodOuter, rodInner } = of.axles[endOf(wheel)][sideOf(wheel)].state.points;
  return { at: rodOuter, force: scale(unit(sub(rodInner, rodOuter)), members.tension.rod) };
};

function checkCorner(of: CarStanding, wheel: WheelName, corner: CornerLoads, largest: number): void {
  const side = of.axles[endOf(wheel)][sideOf(wheel)];
  const { at, force, shaft, unsprung } = of.wheels[wheel];
  const { onUpright, onTub } = corner.members;
  const rodOn = side.of.form.rod.on;
  const rod = rodPull(corner, of, wheel);
  const joints = Object.values(onUpright);
  const own = [{ at, force, moment: shaft }, unsprung, ...(rodOn === 'upright' ? [rod] : [])];
  nothingLeft([...joints, ...own], largest, `${wheel}, upright and wheel`);
  for (const name of ['upper', 'lower'] as const) {
    const inner = [onTub[`${name}Front`], onTub[`${name}Rear`]].map(back);
    const carried = rodOn === `${name} wishbone` ? [rod] : [];
    nothingLeft([back(onUpright[name]), ...inner, ...carried], largest, `${wheel}, ${name} wishbone`);
  }
}

/** The heave element's force on a rocker: what its other forces leave, with no moment of its own. */
function checkRocker(of: CarStanding, wheel: WheelName, corner: CornerLoads, largest: number): Vec3 {
  const axle = of.axles[endOf(wheel)];
  const { state } = axle[sideOf(wheel)];
  const held = (name: string): AppliedForce[] =>
    corner.onTub.filter((each) => each.name.startsWith(name)).map(back);
  const at = (point: string, forces: readonly AppliedForce[]): AppliedForce[] =>
    forces.map(({ force }) => ({ at: state.rockerPoints[point]!.value, force }));
  const forces = [
    corner.members.onRocker,
    ...held('rocker pivot'),
    ...held('torsion bar anchor'),
    ...at('damper', held('spring unit')),
    ...at('dropLink', held('anti-roll bar')),
  ];
  // along their own lines, wherever they are told to act
  const place = state.rockerPoints.heave?.value ?? state.points.rockerPivot;
  const { force, moment } = resultantAt(place, forces);
  near(length(moment), 0, 1e-9 * largest, `${wheel}, rocker, moment`);
  if (axle.heave === undefined) near(length(force), 0, 1e-9 * largest, `${wheel}, rocker, force`);
  return force;
}

function checkCar(of: CarStanding, corners: readonly CornerLoads[], largest: number): void {
  const atGround = WHEEL_NAMES.flatMap((wheel): AppliedForce[] => {
    const { at, force, unsprung } = of.wheels[wheel];
    return [{ at, force }, unsprung];
  });
  nothingLeft([...atGround, ...of.airForces, of.sprungForce], largest, 'the whole car');
  const onTub = corners.flatMap((corner) => corner.onTub);
  nothingLeft([...onTub, ...of.airForces, of.sprungForce], largest, 'tub and case');
}

/** What stands before a face and is put on it, against what stands behind. */
function checkFace(joint: JointName, car: Car, numbers: Numbers, of: CarStanding, largest: number): boolean {
  const form = car.form.joints?.[joint];
  const { masses } = car.form;
  if (form === undefined || masses === undefined) return false;
  const parts = joint === 'caseToEngine' ? [masses.case] : [masses.case, masses.engine];
  const perMass = scale(of.sprungForce.force, 1 / of.sprung.mass);
  const gone = parts.map(({ mass, at }): AppliedForce => {
    return { at: numbers.point(at), force: scale(perMass, -numbers.of(mass)) };
  });
  const front = WHEEL_NAMES.filter((wheel) => endOf(wheel) === 'front').map((wheel) =>
    cornerLoads(of, wheel),
  );
  const before = [
    ...front.flatMap(({ onTub }) => onTub),
    ...airOnTub(car.form, of, numbers),
    of.sprungForce,
    ...gone,
  ];
  nothingLeft([...before, ...forcesBehind(joint, car.form, of, numbers)], largest, joint);
  let solved: ReturnType<typeof jointUnder>;
  try {
    solved = jointUnder(joint, form, car.form, of, numbers);
  } catch (error) {
    if (error instanceof FaceParted) return false;
    throw error;
  }
  // studs pull the bodies together, pads press them apart; the face closes to 1e-10 of all its preloads
  const { load, studs, plates, frame } = solved;
  const pull = studs.reduce((sum, { force, pad }) => sum + force.middle - pad.middle, 0);
  const held = pull + plates.reduce((sum, { force }) => sum + force, 0);
  const strength = studs.reduce((sum, { sort }) => sum + sort.preload.middle, Math.abs(load.pull));
  near(held, load.pull, 1e-6 * strength, `${joint}, studs and pads`);
  // the crank's couple crosses the face between the two bodies and is in neither list
  const crank = crankBehind(joint, car.form, of, numbers).reduce((sum, each) => sum + each.moment![0], 0);
  const { force, moment } = resultantAt(frame.origin, before);
  near(load.pull, dot(force, frame.forward), 1e-9 * largest, `${joint}, pull`);
  near(
    load.turning,
    crank * frame.forward[0] - dot(moment, frame.forward),
    1e-9 * largest,
    `${joint}, turning`,
  );
  return true;
}

for (const name of ['fenwold-201', 'ashgarth-501'] as const) {
  test(`${name}, its points, masses and rates moved, doing anything: every body is in equilibrium`, (t) => {
    const car = demo(name);
    const seen = { settled: 0, struck: 0, lifted: 0, heave: 0, faces: 0 };
    fc.assert(
      fc.property(fc.array(real(-1, 1), { minLength: 97, maxLength: 97 }), anyDoing, (chances, doing) => {
        const numbers = moved(car, chances);
        let of: CarStanding;
        try {
          of = carStanding(car.form, doing, numbers);
        } catch (error) {
          if (error instanceof NotSettled || error instanceof Unreachable || error instanceof BarOpen) return;
          throw error;
        }
        seen.settled += 1;
        const corners = WHEEL_NAMES.map((wheel) => cornerLoads(of, wheel));
        const forces = corners.flatMap(({ onTub }) => onTub.map(({ force }) => length(force)));
        const largest = Math.max(...forces, ...WHEEL_NAMES.map((wheel) => length(of.wheels[wheel].force)));
        const heave = corners.map((corner, k) => {
          checkCorner(of, WHEEL_NAMES[k]!, corner, largest);
          return checkRocker(of, WHEEL_NAMES[k]!, corner, largest);
        });
        // the heave element hangs between the rockers: what it does to one it does the other way to the other, along itself
        for (const [end, k] of [
          ['front', 0],
          ['rear', 2],
        ] as const) {
          const axle = of.axles[end];
          if (axle.heave === undefined) continue;
          const [left, right] = [axle.left, axle.right].map(({ state }) => state.rockerPoints.heave!.value);
          near(
            length(
              resultantAt(
                ZERO,
                [heave[k]!, heave[k + 1]!].map((force) => ({ at: ZERO, force })),
              ).force,
            ),
            0,
            1e-9 * largest,
            `${end} heave`,
          );
          near(
            length(cross(unit(sub(left!, right!)), heave[k]!)),
            0,
            1e-9 * largest,
            `${end} heave, along itself`,
          );
          if (axle.heave.force > 100) seen.heave += 1;
          near(
            length(heave[k]!),
            Math.abs(axle.heave.force),
            1e-9 * largest,
            `${end} heave, as the springing has it`,
          );
        }
        if (WHEEL_NAMES.some((wheel) => of.wheels[wheel].ground[2] === 0)) seen.lifted += 1;
        if (Object.keys(doing.strikes).length > 0) {
          seen.struck += 1;
          return;
        }
        checkCar(of, corners, largest);
        for (const joint of ['caseToEngine', 'engineToTub'] as const) {
          if (checkFace(joint, car, numbers, of, largest)) seen.faces += 1;
        }
      }),
      { numRuns: 28 },
    );
    t.diagnostic(JSON.stringify(seen));
    assert.ok(seen.settled > 20 && seen.struck > 3 && seen.lifted > 0, JSON.stringify(seen));
    // one of the two has joints in its file, the other a heave element
    assert.ok(car.form.joints === undefined ? seen.heave > 5 : seen.faces > 10, JSON.stringify(seen));
  });
}
