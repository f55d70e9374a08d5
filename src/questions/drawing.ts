/** The car as bodies in space at a stance: what page and paper draw. True to size from the car's own points. */
import type { Car } from '../car/read.ts';
import { DegenerateCorner } from '../loadpath/corner/prepare.ts';
import { Unreachable } from '../loadpath/corner/reach.ts';
import { type CornerState, solveCorner } from '../loadpath/corner/solve.ts';
import type { CornerForm } from '../loadpath/corner-of-car.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type SprungCorner, sprungCorner } from '../loadpath/sprung-corner.ts';
import { along, distance, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Drawing, DrawnBar, DrawnCoil, DrawnCorner, DrawnMember } from './drawing-types.ts';
import { antiRollBarLines } from './drawn-anti-roll-bar.ts';
import { rackOf, type Stance, travelOf, type Wheel } from './figure.ts';
import { rangeOf } from './travel-range.ts';

export const WHEELS: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

/** Diameters drawn where the file has none: they are for the eye, and no figure leans on them. */
const DRAWN = {
  leg: 0.022,
  rod: 0.024,
  link: 0.02,
  dropLink: 0.012,
  damper: 0.045,
  shaft: 0.014,
  upright: 0.03,
};

/** The whole car at a stance. A corner whose points cannot be a corner is left out. */
export function drawCar(car: Car, stance: Stance): Drawing {
  const corners = WHEELS.flatMap((wheel) => {
    const drawn = drawCorner(car, wheel, stance);
    return drawn === undefined ? [] : [drawn];
  });
  const grounds = corners.map((corner) => corner.tyre.contact[2]);
  return {
    corners,
    antiRollBars: antiRollBarLines(car, stance),
    sections: sectionsOf(car),
    ground: corners.length === 0 ? 0 : Math.min(...grounds),
  };
}

/** One corner of the drawing, or undefined where its points cannot be a corner. */
export function drawCorner(car: Car, wheel: Wheel, stance: Stance): DrawnCorner | undefined {
  const numbers = new Numbers(car.values);
  const axle = car.form[wheel.end];
  let of: SprungCorner;
  try {
    of = sprungCorner(axle, wheel.side, numbers);
  } catch (reason) {
    if (reason instanceof DegenerateCorner) return undefined;
    throw reason;
  }
  const { state, held } = nearestReached(of, travelOf(stance, wheel), rackOf(stance, wheel));
  return { ...bodiesOf(of, state, wheel, numbers), held };
}

/** The position asked for, or the nearest to it that the linkage reaches. */
function nearestReached(
  of: SprungCorner,
  travel: number,
  rack: number,
): { state: CornerState; held: boolean } {
  try {
    return { state: solveCorner(of.corner, { travel, rack }), held: false };
  } catch (reason) {
    if (!(reason instanceof Unreachable)) throw reason;
  }
  const range = rangeOf(of, 0);
  // a hair inside the limit, where the linkage still closes
  const within = Math.max(range.droop * 0.999, Math.min(range.bump * 0.999, travel));
  return { state: solveCorner(of.corner, { travel: within, rack: 0 }), held: true };
}

function bodiesOf(
  of: SprungCorner,
  state: CornerState,
  wheel: Wheel,
  numbers: Numbers,
): Omit<DrawnCorner, 'held'> {
  const { form } = of;
  const p = state.points;
  const id = (name: string): string => `${wheel.end}.${wheel.side}.${name}`;
  const member = (
    name: string,
    words: string,
    kind: DrawnMember['kind'],
    stop: DrawnMember['stop'],
    from: Vec3,
    to: Vec3,
    diameter: number,
  ): DrawnMember => ({
    id: id(name),
    name: words,
    kind,
    stop,
    from,
    to,
    diameter,
  });
  const carried = Object.fromEntries(
    Object.entries(state.rockerPoints).map(([name, each]) => [name, each.value]),
  );
  const tub = form.points.damperTub === undefined ? undefined : numbers.point(form.points.damperTub);
  const unitEnds =
    tub === undefined || carried.damper === undefined ? undefined : { rocker: carried.damper, tub };
  const members = [
    member(
      'upperFrontLeg',
      'upper wishbone, front leg',
      'wishbone leg',
      'links',
      p.upperFront,
      p.upperOuter,
      DRAWN.leg,
    ),
    member(
      'upperRearLeg',
      'upper wishbone, rear leg',
      'wishbone leg',
      'links',
      p.upperRear,
      p.upperOuter,
      DRAWN.leg,
    ),
    member(
      'lowerFrontLeg',
      'lower wishbone, front leg',
      'wishbone leg',
      'links',
      p.lowerFront,
      p.lowerOuter,
      DRAWN.leg,
    ),
    member(
      'lowerRearLeg',
      'lower wishbone, rear leg',
      'wishbone leg',
      'links',
      p.lowerRear,
      p.lowerOuter,
      DRAWN.leg,
    ),
    member(
      'toeLink',
      wheel.end === 'front' ? 'track rod' : 'toe link',
      'toe link',
      'links',
      p.toeInner,
      p.toeOuter,
      DRAWN.link,
    ),
    member('rod', form.rod.kind, 'rod', 'links', p.rodOuter, p.rodInner, DRAWN.rod),
    member('kingpin', 'upright', 'upright', 'upright', p.lowerOuter, p.upperOuter, DRAWN.upright),
    member(
      'steeringArm',
      'upright, arm to the toe joint',
      'upright',
      'upright',
      along(p.lowerOuter, sub(p.upperOuter, p.lowerOuter), 0.25),
      p.toeOuter,
      DRAWN.upright * 0.7,
    ),
    member(
      'stubAxle',
      'upright, to the hub',
      'upright',
      'upright',
      along(p.lowerOuter, sub(p.upperOuter, p.lowerOuter), 0.5),
      p.wheelCentre,
      DRAWN.upright,
    ),
    ...(unitEnds === undefined ? [] : damperMembers(unitEnds, id)),
  ];
  return {
    wheel,
    points: { ...p, ...renamed(carried), ...(tub === undefined ? {} : { damperTub: tub }) },
    tyre: {
      centre: p.wheelCentre,
      axis: state.wheelAxis.value,
      contact: p.contact,
      loadedRadius: state.loadedRadius,
      tyreWidth: numbers.of(form.wheel.tyreWidth),
      rimDiameter: numbers.of(form.wheel.rimDiameter),
    },
    rocker: {
      pivot: p.rockerPivot,
      axis: state.rockerAxis,
      joints: [p.rodInner, ...Object.values(carried)],
      angle: state.rockerAngle.value,
    },
    members,
    ...(form.coil === undefined || unitEnds === undefined
      ? {}
      : { coil: coilBetween(form.coil, unitEnds, of, numbers) }),
    ...(form.bar === undefined ? {} : { bar: barAlong(form.bar, of, state, numbers, form) }),
  };
}

/** The drawing's names for points carried by the rocker are the file's. */
const renamed = (carried: Readonly<Record<string, Vec3>>): Record<string, Vec3> =>
  Object.fromEntries(Object.entries(carried).map(([name, point]) => [`${name}Rocker`, point]));

function damperMembers(ends: { rocker: Vec3; tub: Vec3 }, id: (name: string) => string): DrawnMember[] {
  const middle = along(ends.tub, sub(ends.rocker, ends.tub), 0.55);
  return [
    {
      id: id('damperBody'),
      name: 'damper body',
      kind: 'damper body',
      stop: 'spring',
      from: ends.tub,
      to: middle,
      diameter: DRAWN.damper,
    },
    {
      id: id('damperShaft'),
      name: 'damper shaft',
      kind: 'damper shaft',
      stop: 'spring',
      from: middle,
      to: ends.rocker,
      diameter: DRAWN.shaft,
    },
  ];
}

/** The coil stands in the middle of the unit, as long as it is compressed to. */
function coilBetween(
  form: NonNullable<CornerForm['coil']>,
  ends: { rocker: Vec3; tub: Vec3 },
  of: SprungCorner,
  numbers: Numbers,
): DrawnCoil {
  const between = distance(ends.rocker, ends.tub);
  const compression = of.ratiosAt(0).unitLength - between;
  const free = numbers.of(form.freeLength);
  const length = Math.min(free, free - (compression - (of.springing.coilFreeAt ?? 0)));
  const direction = unit(sub(ends.rocker, ends.tub));
  const start = Math.max(0, (between - length) / 2);
  return {
    from: along(ends.tub, direction, start),
    to: along(ends.tub, direction, start + length),
    meanDiameter: numbers.of(form.meanDiameter),
    wireDiameter: numbers.of(form.wireDiameter),
    coils: numbers.of(form.totalCoils),
  };
}

/** The bar lies on the rocker axis and runs away from the rod's joint, into tub or case. */
function barAlong(
  form: NonNullable<CornerForm['bar']>,
  of: SprungCorner,
  state: CornerState,
  numbers: Numbers,
  corner: CornerForm,
): DrawnBar {
  const diameter = numbers.of(form.diameter);
  const head = numbers.or(form.rockerEnd.headDiameter, diameter * 1.3);
  const anchor = corner.points.barAnchor ?? corner.points.rockerAxis;
  const axis = unit(sub(numbers.point(anchor), state.points.rockerPivot));
  const length = numbers.of(form.parallelLength) + 2 * head;
  return {
    from: state.points.rockerPivot,
    to: along(state.points.rockerPivot, axis, length),
    diameter,
    twist: (of.springing.barTwistAtSurvey ?? 0) + state.rockerAngle.value,
    headDiameter: head,
  };
}

/** Where the tub and the case must be: loops through the inner joints, left and right, front to back. */
function sectionsOf(car: Car): Vec3[][] {
  const numbers = new Numbers(car.values);
  return (['front', 'rear'] as const).flatMap((end) => {
    const { left, right } = car.form[end];
    const loop = (upper: 'upperFront' | 'upperRear', lower: 'lowerFront' | 'lowerRear'): Vec3[] => [
      numbers.point(left.points[upper]),
      numbers.point(left.points[lower]),
      numbers.point(right.points[lower]),
      numbers.point(right.points[upper]),
    ];
    const rockers: Vec3[] = [
      numbers.point(left.points.rockerPivot),
      numbers.point(left.points.upperRear),
      numbers.point(right.points.upperRear),
      numbers.point(right.points.rockerPivot),
    ];
    return [loop('upperFront', 'lowerFront'), loop('upperRear', 'lowerRear'), rockers];
  });
}
