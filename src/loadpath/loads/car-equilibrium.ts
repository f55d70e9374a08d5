/**
 * The whole car at rest upon what it is doing: where its wheels have gone, and what the ground does to each tyre.
 *
 * In    the car, what it is doing
 * Out   travel of each wheel, the ground as the tub sees it, the force of the ground on each tyre
 * Axes  tub axes; the ground is the plane z = a + b x + c y in them
 *
 * Seven unknowns (four travels, three of the ground) and seven equations: virtual work at each wheel, lift, roll
 * and pitch of the whole. Fore and aft force, side force and yaw are met by the sharing rule: brakes by the share of
 * the file and alike left and right, drive alike at the two rear wheels, side force of an axle by the load of its
 * two tyres. A wheel that would pull on the ground has left it.
 *
 * Not   friction, tyre give sideways, the flexing tub. LL-n are the equations of docs/theory/loads.md.
 */
import { LuDecomposition, Matrix } from 'ml-matrix';
import type { CarForm } from '../../car/read.ts';
import { add, along, cross, dot, scale, sub, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre, Newton } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import type { AxleState } from '../axle-of-car.ts';
import { stiffnessAtWheels } from '../figures/axle-stiffness.ts';
import type { Numbers } from '../numbers.ts';
import { type AsSurveyed, asSurveyed, axlesAt, sideIn, velocityOf } from './as-surveyed.ts';
import {
  type Air,
  airOf,
  type Doing,
  eachWheel,
  endOf,
  isThrown,
  type Mass,
  movedBy,
  sideOf,
  WHEEL_NAMES,
  type Wheels,
} from './doing.ts';
import { fitOf, type Given, isFitted, typedLoads } from './given-loads.ts';
import { airForcesOf, type Ground, groundOf, sharedAlong } from './ground.ts';
import { resistingOf } from './resisting.ts';
import { type AppliedForce, resultantAt } from './wrench.ts';

export interface WheelStanding {
  readonly travel: Metre;
  /** Where the tyre meets the ground. */
  readonly at: Vec3;
  /** Force of the ground on the tyre, tub axes. */
  readonly force: Vec3;
  /** The same along the ground: forward, left, up. */
  readonly ground: readonly [Newton, Newton, Newton];
  /** Torque of the drive shaft or an inboard brake on the wheel, N m, a vector along its axle. */
  readonly shaft: Vec3;
  /** Weight and inertia of the unsprung parts, at the wheel centre. */
  readonly unsprung: AppliedForce;
}

export interface CarStanding {
  readonly doing: Doing;
  readonly ground: Ground;
  readonly axles: { readonly front: AxleState; readonly rear: AxleState };
  readonly wheels: Wheels<WheelStanding>;
  readonly sprung: Mass;
  readonly air: Air;
  /** Forces of the air on the tub. */
  readonly airForces: readonly AppliedForce[];
  /** Weight and inertia of the sprung parts in the steady state, at their centre. */
  readonly sprungForce: AppliedForce;
  /** Largest of the seven equations left over, in newtons. */
  readonly residual: Newton;
  readonly iterations: number;
}

/** The search for the position did not settle; tells how far it came. */
export class NotSettled extends Error {
  readonly facts: Readonly<Record<string, number>>;
  constructor(facts: Readonly<Record<string, number>>) {
    super(
      'The position of the car under this load was not found: the car turns over, or the load is more than its springs and stops can carry.',
    );
    this.name = 'NotSettled';
    this.facts = facts;
  }
}

/** Seven unknowns: the travels in the order of the wheels, then the ground's height and two slopes. */
export type Unknowns = readonly number[];

interface Look extends Omit<CarStanding, 'residual' | 'iterations' | 'doing'> {
  readonly equations: readonly number[];
  readonly tyreRates: Wheels<number>;
  /** Whether the load of the wheel is found from its tyre's give, and not given. */
  readonly found: Wheels<boolean>;
}

/** Everything at one guess of the seven unknowns.  [LL-3 to LL-9] */
function lookAt(
  car: CarForm,
  doing: Doing,
  u: Unknowns,
  start: AsSurveyed,
  numbers: Numbers,
  given: Given,
): Look {
  const axles = axlesAt(car, u, doing.rack, numbers);
  const ground = groundOf(u[4]!, u[5]!, u[6]!);
  const { forward, left, up } = ground;
  const base: Vec3 = [0, 0, ground.height];
  const acceleration = add(
    add(scale(forward, doing.longitudinal), scale(left, doing.lateral)),
    scale(up, doing.vertical + STANDARD_GRAVITY),
  );
  const air = airOf(car, doing.speed, numbers);
  const airForces = airForcesOf(air, start.contacts, ground);
  const sprungForce: AppliedForce = { at: start.sprung.at, force: scale(acceleration, -start.sprung.mass) };
  const carriedForces = (doing.carried ?? []).map(
    ({ mass, at }): AppliedForce => ({ at, force: scale(acceleration, -mass) }),
  );

  const places = eachWheel((wheel) => {
    const { state, of } = sideIn(axles, wheel);
    const centre = state.points.wheelCentre;
    const axis = state.wheelAxis.value;
    const down = unit(along(scale(up, -1), axis, dot(up, axis)));
    const nominal = along(centre, down, state.loadedRadius);
    const rate = numbers.of(of.form.wheel.tyreRate);
    const pressed = start.contacts[wheel][2] - dot(sub(nominal, base), up);
    const onScale = numbers.of(of.form.scale) * STANDARD_GRAVITY;
    const byGive = Math.max(0, onScale + rate * pressed);
    const load = given[wheel] ?? byGive;
    const unsprung: AppliedForce = { at: centre, force: scale(acceleration, -numbers.of(of.form.unsprung)) };
    return {
      at: along(nominal, up, load > 0 ? pressed : 0),
      load,
      rate: byGive > 0 ? rate : 0,
      over: byGive - load,
      unsprung,
      state,
    };
  });

  const tyres = sharedAlong(
    car,
    places,
    { airForces: [...airForces, ...carriedForces], sprungForce, ground, doing },
    numbers,
  );
  const wheels = eachWheel((wheel): WheelStanding => {
    const { at, unsprung, state } = places[wheel];
    const here = tyres[wheel];
    const force = add(
      add(scale(forward, here.forward), scale(left, here.left)),
      scale(up, places[wheel].load),
    );
    // what a shaft or the wheel's own spin takes leaves no torque about the axle in the upright  [LL-6]
    const axis = state.wheelAxis.value;
    const turning = dot(axis, cross(sub(at, state.points.wheelCentre), scale(forward, here.forward)));
    const taken = scale(axis, -turning);
    return {
      travel: state.travel,
      at,
      force,
      ground: [here.forward, here.left, places[wheel].load],
      shaft: here.by === 'shaft' ? taken : ZERO,
      unsprung: here.by === 'spin' ? { ...unsprung, moment: taken } : unsprung,
    };
  });

  const resisting = resistingOf(axles, start.offsets);
  const work = WHEEL_NAMES.map((wheel) => {
    const { force, at, shaft, unsprung } = wheels[wheel];
    const { state } = places[wheel];
    const power =
      dot(force, velocityOf(state, at)) +
      dot(add(shaft, unsprung.moment ?? ZERO), state.uprightTurn.perTravel) +
      dot(unsprung.force, velocityOf(state, unsprung.at));
    return power - resisting[wheel];
  });
  const whole = resultantAt(start.sprung.at, [
    ...WHEEL_NAMES.flatMap((wheel): AppliedForce[] => [wheels[wheel], wheels[wheel].unsprung]),
    ...airForces,
    ...carriedForces,
    sprungForce,
  ]);
  return {
    ground,
    axles,
    wheels,
    sprung: start.sprung,
    air,
    airForces,
    sprungForce,
    equations: isFitted(given)
      ? [...work, ...fitOf(places, start.sprung.at)]
      : [...work, dot(whole.force, up), dot(whole.moment, left), dot(whole.moment, forward)],
    tyreRates: eachWheel((wheel) => places[wheel].rate),
    found: eachWheel((wheel) => given[wheel] === undefined),
  };
}

/** Slopes of the seven equations, side forces taken as standing still: close enough for the steps to shrink. */
function slopes(look: Look, start: AsSurveyed): Matrix {
  const J = Matrix.zeros(7, 7);
  const stiff = { front: stiffnessAtWheels(look.axles.front), rear: stiffnessAtWheels(look.axles.rear) };
  WHEEL_NAMES.forEach((wheel, i) => {
    const k = look.tyreRates[wheel];
    const own = look.found[wheel] ? k : 0;
    const [x, y] = look.wheels[wheel].at;
    const here = stiff[endOf(wheel)];
    const mate = i ^ 1;
    J.set(i, i, -own - (sideOf(wheel) === 'left' ? here.leftLeft : here.rightRight));
    J.set(i, mate, -here.leftRight);
    [1, x, y].forEach((by, column) => {
      J.set(i, 4 + column, own * by);
    });
    const arm = sub(look.wheels[wheel].at, start.sprung.at);
    // lift, pitch about the left axis (−x per lift), roll about the forward axis (+y per lift)
    [1, -arm[0], arm[1]].forEach((row, n) => {
      J.set(4 + n, i, J.get(4 + n, i) - k * row);
      [1, x, y].forEach((by, column) => {
        J.set(4 + n, 4 + column, J.get(4 + n, 4 + column) + k * row * by);
      });
    });
  });
  return J;
}

/** Newtons to which the equations are closed; with a number moved, enough for two digits of a spread. */
const CLOSED: Newton = 1e-7;
const CLOSED_MOVED: Newton = 1e-4;
const MOST_STEPS = 120;
/** Longest step of a wheel, m: a stop is walked up to and not jumped over. */
const STRIDE: Metre = 0.01;

/** A place to begin from, and the slopes there where they are known better than by the springs' own rates. */
interface Beginning {
  readonly at: Unknowns;
  readonly slopes?: Matrix;
  readonly closed: Newton;
}

const FROM_SURVEY: Beginning = { at: [0, 0, 0, 0, 0, 0, 0], closed: CLOSED };

/** @throws as foundStanding */
export const carStanding = (car: CarForm, doing: Doing, numbers: Numbers): CarStanding =>
  foundStanding(car, doing, numbers).standing;

/** The car as it stands, and the unknowns that it took: seven, and four more travels where something throws it. */
export interface FoundStanding {
  readonly at: Unknowns;
  readonly standing: CarStanding;
}

/** @throws NotSettled, Unreachable, DegenerateCorner, BarOpen */
export function foundStanding(car: CarForm, doing: Doing, numbers: Numbers): FoundStanding {
  const start = asSurveyed(car, numbers);
  const { does, given } = firstStage(car, doing, numbers);
  const steady = settle(car, does, beginningOf(car, does, given, numbers), start, numbers, given);
  if (isFitted(given) || !isThrown(doing)) return steady;
  const thrown = thrownLoads(car, doing, steady.standing.wheels, numbers);
  const struck = settle(car, doing, { at: steady.at, closed: CLOSED }, start, numbers, thrown);
  return { at: [...steady.at, ...struck.at.slice(0, 4)], standing: struck.standing };
}

/** What the car settles under before anything throws it. */
function firstStage(car: CarForm, doing: Doing, numbers: Numbers) {
  const given = typedLoads(doing);
  return isFitted(given)
    ? { does: movedBy(car, doing, numbers), given }
    : { does: { ...doing, contacts: {} }, given: {} };
}

/** Loads in a strike: the tub has no time to move, the ground stays, and the wheel goes where its spring lets it. */
function thrownLoads(
  car: CarForm,
  doing: Doing,
  steady: Wheels<Pick<WheelStanding, 'ground'>>,
  numbers: Numbers,
): Given {
  const struck = WHEEL_NAMES.filter((wheel) => (doing.strikes[wheel] ?? 0) !== 0);
  const byKerb = Object.fromEntries(
    struck.map((wheel) => [
      wheel,
      steady[wheel].ground[2] +
        doing.strikes[wheel]! * numbers.of(car[endOf(wheel)][sideOf(wheel)].scale) * STANDARD_GRAVITY,
    ]),
  );
  return { ...byKerb, ...typedLoads(doing) };
}

/** The car at unknowns that are near what it takes, and what its equations then leave: for slopes about a place. */
export function standingAt(
  car: CarForm,
  doing: Doing,
  at: Unknowns,
  numbers: Numbers,
): { readonly equations: readonly number[]; readonly standing: CarStanding } {
  const start = asSurveyed(car, numbers);
  const { does, given } = firstStage(car, doing, numbers);
  const steady = lookAt(car, does, at.slice(0, 7), start, numbers, given);
  if (at.length === 7) return { equations: steady.equations, standing: standingOf(steady, does, 0) };
  const thrown = thrownLoads(car, doing, steady.wheels, numbers);
  const struck = lookAt(car, doing, [...at.slice(7), ...at.slice(4, 7)], start, numbers, thrown);
  return {
    equations: [...steady.equations, ...struck.equations.slice(0, 4)],
    standing: standingOf(struck, doing, 0),
  };
}

function standingOf(
  look: Look,
  doing: Doing,
  iterations: number,
  residual: Newton = Number.NaN,
): CarStanding {
  const { equations: _, tyreRates: __, found: ___, ...rest } = look;
  return { ...rest, doing, residual, iterations };
}

/** With one number moved the car stands a hair from where it stood, and a spread needs two digits of how far. */
function beginningOf(car: CarForm, doing: Doing, given: Given, numbers: Numbers): Beginning {
  const found = numbers.asFiled(`place and slopes of the car doing ${JSON.stringify(doing)}`, (filed) => {
    const start = asSurveyed(car, filed);
    const { at } = settle(car, doing, FROM_SURVEY, start, filed, given);
    return { at, slopes: slopesByDifferences(car, doing, at, start, filed, given) };
  });
  return found === undefined ? FROM_SURVEY : { ...found, closed: CLOSED_MOVED };
}

/** Metres, and slopes of the ground, by which the unknowns are moved. */
const DIFFERENCE = 1e-7;

function slopesByDifferences(
  car: CarForm,
  doing: Doing,
  at: Unknowns,
  start: AsSurveyed,
  numbers: Numbers,
  given: Given,
): Matrix {
  const equations = (u: Unknowns): readonly number[] =>
    lookAt(car, doing, u, start, numbers, given).equations;
  const columns = at.map((_, k) => {
    const moved = (by: number): Unknowns => at.map((value, j) => (j === k ? value + by : value));
    const [above, below] = [equations(moved(DIFFERENCE)), equations(moved(-DIFFERENCE))];
    return above.map((value, row) => (value - below[row]!) / (2 * DIFFERENCE));
  });
  return new Matrix(columns).transpose();
}

function settle(
  car: CarForm,
  doing: Doing,
  from: Beginning,
  start: AsSurveyed,
  numbers: Numbers,
  given: Given,
): FoundStanding {
  const struck = Object.keys(given).length > 0 && !isFitted(given);
  const count = struck ? 4 : 7;
  const size = (look: Look): number => Math.max(...look.equations.slice(0, count).map(Math.abs));
  let { at, slopes: known } = from;
  let look = lookAt(car, doing, at, start, numbers, given);
  let iterations = 0;
  for (; iterations < MOST_STEPS && size(look) > from.closed; iterations += 1) {
    const whole = known ?? slopes(look, start);
    const step = stepOf(whole.subMatrix(0, count - 1, 0, count - 1), look.equations.slice(0, count));
    const longest = Math.max(...step.slice(0, 4).map(Math.abs));
    let part = Math.min(1, STRIDE / longest);
    if (!Number.isFinite(longest)) break;
    // shorter steps until the equations close further: at a kink the slope of one side says too much
    let next = look;
    let to = at;
    for (let half = 0; half < 24; half += 1) {
      to = at.map((value, k) => value + part * (step[k] ?? 0));
      next = lookAt(car, doing, to, start, numbers, given);
      if (size(next) < size(look)) break;
      part /= 2;
    }
    if (size(next) >= size(look)) {
      if (known === undefined) break;
      // past a kink the slopes of the other side lead nowhere
      known = undefined;
      continue;
    }
    at = to;
    look = next;
  }
  const residual = size(look);
  if (!(residual <= 10 * CLOSED_MOVED)) throw new NotSettled({ residual, iterations });
  return { at, standing: standingOf(look, doing, iterations, residual) };
}

/** The step that the slopes ask for; none where nothing holds the car any more: both wheels of a side are up. */
function stepOf(J: Matrix, equations: readonly number[]): number[] {
  const lu = new LuDecomposition(J);
  if (lu.isSingular()) return [Number.NaN];
  return lu.solve(Matrix.columnVector(equations.map((each) => -each))).to1DArray();
}
