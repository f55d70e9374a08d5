/**
 * The car on its pads at one guess of how it stands: the seven equations of rest, as jets of everything.
 *
 * In    the prepared car, four travels and the floor's plane, the changes since the survey
 * Out   the equations, and what the readings are made of, in one store of jets
 * Axes  tub axes; the floor is the plane z = a + b x + c y in them
 *
 * Variables of the store: the four travels, a, b, c, then the changes in their order. FF-n: docs/theory/flat-floor.md.
 */
import {
  eachWheel,
  endOf,
  sideOf,
  WHEEL_NAMES,
  type WheelName,
  type Wheels,
} from '../loadpath/loads/doing.ts';
import { barTorque, unitForce } from '../loadpath/springing.ts';
import type { Jet, Jets, JetVec } from '../maths/jets.ts';
import { type Metre, STANDARD_GRAVITY } from '../units/quantity.ts';
import { type ChangeNames, ENDS, type EndName } from './changes.ts';
import { LINK_CHANGES, type LinksAt } from './corner-links.ts';
import type { FloorCar, FloorWheel } from './floor-car.ts';
import type { JoinedAt } from './joined.ts';

/** Four travels in the order of the wheels, then height and two slopes of the floor as the tub sees it. */
export const UNKNOWNS = 7;
const [HEIGHT, FORWARD, LEFT] = [4, 5, 6] as const;

export const changeVariable = (index: number): number => UNKNOWNS + index;

/** Number of a change's variable in a store, or −1 in one of the unknowns alone, where changes stand still. */
const variableIn = (jets: Jets, index: number): number =>
  jets.variables > UNKNOWNS ? changeVariable(index) : -1;

/** Where the search stands: the unknowns, and the joints of the four corners and the two bars near by. */
export interface Place {
  readonly u: Float64Array;
  readonly joints: Wheels<Float64Array | undefined>;
  readonly bars: Readonly<Record<EndName, Float64Array | undefined>>;
}

export const atSurvey = (): Place => ({
  u: new Float64Array(UNKNOWNS),
  joints: eachWheel(() => undefined),
  bars: { front: undefined, rear: undefined },
});

export interface FloorState {
  readonly changes: Float64Array;
  /** Whether the drop links of each axle are on. */
  readonly bars: Readonly<Record<EndName, boolean>>;
}

export interface WheelLook {
  readonly load: Jet;
  readonly contact: JetVec;
  readonly centre: JetVec;
  readonly axis: JetVec;
  readonly upper: JetVec;
  readonly lower: JetVec;
  readonly unitLength?: Jet;
}

export interface Look {
  readonly jets: Jets;
  /** The floor: its upward normal, the tub's forward and left laid on it, a point of it, and up as gravity has it. */
  readonly floor: {
    readonly normal: JetVec;
    readonly forward: JetVec;
    readonly left: JetVec;
    readonly on: JetVec;
  };
  /** The same plane: z = a + b x + c y. */
  readonly plane: { readonly a: Metre; readonly b: number; readonly c: number };
  readonly wheels: Wheels<WheelLook>;
  readonly barTorque: Readonly<Partial<Record<EndName, Jet>>>;
  /** Newtons at the wheels and for lift, newton metres for pitch and roll. */
  readonly equations: readonly Jet[];
  readonly place: Place;
}

/**
 * @param store  with a variable for each unknown and each change, or for the unknowns alone: for the search
 * @throws NotTied, LinkOpen
 */
export function lookAt(car: FloorCar, state: FloorState, from: Place, store: Jets): Look {
  const { changes: names } = car;
  const { changes } = state;
  const u = from.u;
  const jets = store;
  jets.clear();
  const unknown = (i: number): Jet => jets.variable(u[i]!, i);
  const change = (i: number): Jet => {
    const at = variableIn(jets, i);
    return at < 0 ? jets.constant(changes[i]!) : jets.variable(changes[i]!, at);
  };
  const floor = floorAt(jets, unknown(HEIGHT), unknown(FORWARD), unknown(LEFT));
  const up = upOf(jets, floor, change(names.car.risesForward), change(names.car.risesLeft));

  const links = eachWheel((wheel) => {
    const at = names.wheel[wheel];
    const moved = Object.fromEntries(LINK_CHANGES.map((name) => [name, changes[at[name]]!]));
    return car.wheels[wheel].links.at(
      u[WHEEL_NAMES.indexOf(wheel)]!,
      moved as Record<(typeof LINK_CHANGES)[number], number>,
      from.joints[wheel],
    );
  });
  const joined = Object.fromEntries(
    ENDS.map((end) => {
      const at = names.end[end];
      return [
        end,
        car.axles[end].joined.at(
          links[`${end}Left`],
          links[`${end}Right`],
          { left: changes[at.leftLink]!, right: changes[at.rightLink]! },
          { bar: state.bars[end], ...(from.bars[end] === undefined ? {} : { from: from.bars[end] }) },
        ),
      ];
    }),
  ) as Record<EndName, JoinedAt>;
  const efforts = Object.fromEntries(
    ENDS.map((end) => [end, effortsOf(car, end, joined[end], jets)]),
  ) as Record<EndName, Efforts>;

  const worked = eachWheel((wheel) =>
    wheelAt(car.wheels[wheel], wheel, links[wheel], {
      jets,
      names,
      floor,
      up,
      change,
      effort: efforts[endOf(wheel)],
    }),
  );
  return {
    jets,
    floor,
    plane: { a: u[HEIGHT]!, b: u[FORWARD]!, c: u[LEFT]! },
    wheels: worked,
    barTorque: Object.fromEntries(
      ENDS.flatMap((end) => (efforts[end].torque === undefined ? [] : [[end, efforts[end].torque]])),
    ),
    equations: [
      ...WHEEL_NAMES.map((wheel) => worked[wheel].work),
      ...wholeCar(car, worked, { jets, floor, up, change }),
    ],
    place: {
      u,
      joints: eachWheel((wheel) => links[wheel].unknowns),
      bars: { front: joined.front.angles, rear: joined.rear.angles },
    },
  };
}

/** The plane of the floor as the tub sees it.  [FF-8] */
function floorAt(jets: Jets, height: Jet, perForward: Jet, perLeft: Jet): Look['floor'] {
  const zero = jets.constant(0);
  const slope: JetVec = [jets.scale(perForward, -1), jets.scale(perLeft, -1), jets.constant(1)];
  const normal = jets.scaleVec(slope, jets.inverse(jets.length(slope)));
  const along = jets.subVec(jets.constantVec([1, 0, 0]), jets.scaleVec(normal, normal[0]));
  const forward = jets.scaleVec(along, jets.inverse(jets.length(along)));
  return { normal, forward, left: jets.cross(normal, forward), on: [zero, zero, height] };
}

/** Up as gravity has it, where the floor rises forward or to the left.  [FF-9] */
function upOf(jets: Jets, floor: Look['floor'], risesForward: Jet, risesLeft: Jet): JetVec {
  const leaning = jets.along(jets.along(floor.normal, floor.forward, risesForward), floor.left, risesLeft);
  return jets.scaleVec(leaning, jets.inverse(jets.length(leaning)));
}

interface Efforts {
  readonly torque?: Jet;
  /** Force with which bar and heave element resist bump, by side. */
  readonly resists: Readonly<Record<'left' | 'right', readonly Jet[]>>;
}

function effortsOf(car: FloorCar, end: EndName, joined: JoinedAt, jets: Jets): Efforts {
  const { barRate, heaveSpring } = car.axles[end];
  const to = pairToWhole(car.changes, end, jets);
  const left: Jet[] = [];
  const right: Jet[] = [];
  /** Effort × change of what it works on, at both wheels.  [FF-7] */
  const works = (of: Jet, effort: Jet): void => {
    left.push(jets.mul(effort, jets.slopeTaken(joined.jets, of, 0, to)));
    right.push(jets.mul(effort, jets.slopeTaken(joined.jets, of, 1, to)));
  };
  let torque: Jet | undefined;
  if (joined.twist !== undefined && barRate !== undefined) {
    torque = jets.scale(jets.taken(joined.jets, joined.twist, to), barRate);
    works(joined.twist, torque);
  }
  if (joined.heave !== undefined && heaveSpring !== undefined) {
    const c = joined.jets.value(joined.heave);
    works(
      joined.heave,
      jets.of(jets.taken(joined.jets, joined.heave, to), heaveSpring.force(c), heaveSpring.rate(c), 0),
    );
  }
  return { ...(torque === undefined ? {} : { torque }), resists: { left, right } };
}

/** Where the variables of an axle's pair stand among those of the whole; the order is that of joined.ts. */
function pairToWhole(names: ChangeNames, end: EndName, jets: Jets): number[] {
  const at = (change: number): number => variableIn(jets, change);
  const wheels = [`${end}Left`, `${end}Right`] as const;
  return [
    ...wheels.map((wheel) => WHEEL_NAMES.indexOf(wheel)),
    ...wheels.flatMap((wheel) => LINK_CHANGES.map((name) => at(names.wheel[wheel][name]))),
    at(names.end[end].leftLink),
    at(names.end[end].rightLink),
  ];
}

interface About {
  readonly jets: Jets;
  readonly names: ChangeNames;
  readonly floor: Look['floor'];
  readonly up: JetVec;
  readonly change: (index: number) => Jet;
  readonly effort: Efforts;
}

/** One wheel: its tyre's load by its give, and virtual work at its travel.  [FF-5, FF-10, FF-11] */
function wheelAt(
  of: FloorWheel,
  wheel: WheelName,
  links: LinksAt,
  about: About,
): WheelLook & { readonly work: Jet } {
  const { jets, names, floor, up, change, effort } = about;
  const at = names.wheel[wheel];
  const to = [WHEEL_NAMES.indexOf(wheel), ...LINK_CHANGES.map((name) => variableIn(jets, at[name]))];
  const taken = (v: JetVec): JetVec => jets.takenVec(links.jets, v, to);
  const slope = (v: JetVec): JetVec => jets.slopeTakenVec(links.jets, v, 0, to);
  const [centre, axis] = [taken(links.centre), taken(links.axis)];
  const [centreMoves, axisMoves] = [slope(links.centre), slope(links.axis)];
  const radius = of.links.geometry.loadedRadius;

  const lean = jets.dot(floor.normal, axis);
  const level = jets.sqrt(jets.scale(jets.mul(lean, lean), -1, 1));
  const above = jets.sub(jets.dot(floor.normal, jets.subVec(centre, floor.on)), jets.scale(level, radius));
  const stands = jets.sub(above, change(at.pad));
  // lowest point of the circle: centre + R (lean a − n)/level
  const down = jets.scaleVec(
    jets.subVec(jets.scaleVec(axis, lean), floor.normal),
    jets.scale(jets.inverse(level), radius),
  );
  const pressure = change(at.pressure);
  const give = jets.add(jets.scale(stands, -1, of.ground), jets.scale(pressure, of.tyre.radiusPerPascal));
  const byGive = jets.scale(jets.mul(give, jets.scale(change(at.tyre), 1, 1)), of.tyre.rate, of.tyre.load);
  const pressed = jets.mul(byGive, jets.scale(pressure, of.tyre.ratePerPascal / of.tyre.rate, 1));
  const load = jets.value(pressed) > 0 ? pressed : jets.constant(0);

  // rise of the tyre above the floor per travel: n·C_z + R lean (n·a_z)/level
  const rise = jets.add(
    jets.dot(floor.normal, centreMoves),
    jets.mul(jets.scale(jets.div(lean, level), radius), jets.dot(floor.normal, axisMoves)),
  );
  const weight = jets.scale(jets.dot(up, centreMoves), of.unsprung * STANDARD_GRAVITY);
  let work = jets.sub(jets.mul(load, rise), weight);
  for (const resists of [springAt(of, links, to, about, wheel), ...effort.resists[sideOf(wheel)]])
    work = jets.sub(work, resists);
  return {
    load,
    contact: jets.addVec(centre, down),
    centre,
    axis,
    upper: taken(links.upperOuter),
    lower: taken(links.lowerOuter),
    ...(links.unitLength === undefined ? {} : { unitLength: jets.taken(links.jets, links.unitLength, to) }),
    work: jets.scale(work, 1, -of.offset),
  };
}

/** Force of unit and torsion bar at the wheel, resisting bump.  [FF-5] */
function springAt(
  of: FloorWheel,
  links: LinksAt,
  to: readonly number[],
  about: About,
  wheel: WheelName,
): Jet {
  const { jets, names, change } = about;
  const at = names.wheel[wheel];
  const { springing, surveyedLength } = of.sprung;
  const stiffer = jets.scale(change(at.spring), 1, 1);
  /** Force about that of the survey, so that a stiffer spring leaves the surveyed load alone. */
  const about0 = (force: Jet, surveyed: number): Jet =>
    jets.scale(jets.mul(jets.scale(force, 1, -surveyed), stiffer), 1, surveyed);
  let resists = jets.constant(0);
  if (links.unitLength !== undefined) {
    const c = jets.scale(jets.taken(links.jets, links.unitLength, to), -1, surveyedLength);
    const ratio = jets.scale(jets.slopeTaken(links.jets, links.unitLength, 0, to), -1);
    const { coil, ...others } = springing;
    const beside = unitForce(others, jets.value(c));
    let force = jets.of(c, beside.total, beside.rate, 0);
    if (coil !== undefined) {
      const wound = jets.add(c, change(at.platform));
      const seat = jets.value(wound);
      const pushes = jets.of(wound, coil.force(seat), coil.rate(seat), 0);
      force = jets.add(force, about0(pushes, coil.force(0)));
    }
    resists = jets.mul(force, ratio);
  }
  if (springing.barRate !== undefined) {
    const angle = jets.taken(links.jets, links.rockerAngle, to);
    const wound = jets.add(angle, change(at.anchor));
    const torque = jets.of(wound, barTorque(springing, jets.value(wound)), springing.barRate, 0);
    resists = jets.add(
      resists,
      jets.mul(
        about0(torque, barTorque(springing, 0)),
        jets.slopeTaken(links.jets, links.rockerAngle, 0, to),
      ),
    );
  }
  return resists;
}

/** Lift, pitch and roll of the whole about a point of the floor.  [FF-12] */
function wholeCar(
  car: FloorCar,
  wheels: Wheels<WheelLook>,
  about: Pick<About, 'jets' | 'floor' | 'up' | 'change'>,
): readonly Jet[] {
  const { jets, floor, up, change } = about;
  const { changes: names } = car;
  let mass = jets.constant(0);
  let first = jets.constantVec([0, 0, 0]);
  const put = (m: Jet, at: JetVec): void => {
    mass = jets.add(mass, m);
    first = jets.along(first, jets.subVec(at, floor.on), m);
  };
  put(jets.scale(change(names.car.mass), 1, car.sprung.mass), jets.constantVec(car.sprung.at));
  for (const { name, at } of car.masses) put(change(names.masses.get(name)!), jets.constantVec(at));
  for (const wheel of WHEEL_NAMES) put(jets.constant(car.wheels[wheel].unsprung), wheels[wheel].centre);
  const zero = jets.constant(0);
  first = jets.addVec(first, [change(names.car.massForward), change(names.car.massLeft), zero]);

  let lift = jets.scale(jets.mul(mass, jets.dot(up, floor.normal)), -STANDARD_GRAVITY);
  let moment = jets.scaleVec(jets.cross(first, up), jets.constant(-STANDARD_GRAVITY));
  for (const wheel of WHEEL_NAMES) {
    const { load, contact } = wheels[wheel];
    lift = jets.add(lift, load);
    moment = jets.along(moment, jets.cross(jets.subVec(contact, floor.on), floor.normal), load);
  }
  return [lift, jets.dot(moment, floor.left), jets.dot(moment, floor.forward)];
}
