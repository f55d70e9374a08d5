/**
 * What two people read off the car on its pads, each as a jet.
 *
 * In    the car as it stands
 * Out   heights, weights, cross weight, camber, toe, caster, track, wheelbase, rake, bar preload, damper lengths
 * Axes  heights square to the floor; angles against the floor and the tub's forward direction laid on it. Camber
 *       negative: top leans inboard; toe positive: in; caster positive: top leans back
 * Not   droop, which needs a second place of each corner (droop.ts)
 *
 * FF-n: docs/theory/flat-floor.md.
 */
import { outboard } from '../loadpath/corner/geometry.ts';
import { sideOf, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import type { Jet } from '../maths/jets.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { ENDS } from './changes.ts';
import type { FloorCar } from './floor-car.ts';
import type { Look } from './look.ts';

export type ReadingKind =
  | 'weight'
  | 'total'
  | 'cross'
  | 'frontShare'
  | 'leftShare'
  | 'height'
  | 'ride'
  | 'rake'
  | 'camber'
  | 'toe'
  | 'toeAtRim'
  | 'caster'
  | 'track'
  | 'wheelbase'
  | 'barTorque'
  | 'unitLength'
  | 'droop';

export interface FloorReading {
  /** `weight.frontLeft`, `height.front left`, `track.front`. */
  readonly id: string;
  readonly kind: ReadingKind;
  /** Wheel, axle, side or measuring point. */
  readonly of: string;
  readonly unit: string;
  readonly jet: Jet;
}

const UNITS: Readonly<Record<ReadingKind, string>> = {
  weight: 'kg',
  total: 'kg',
  cross: 'share',
  frontShare: 'share',
  leftShare: 'share',
  height: 'm',
  ride: 'm',
  rake: 'm',
  camber: 'rad',
  toe: 'rad',
  toeAtRim: 'm',
  caster: 'rad',
  track: 'm',
  wheelbase: 'm',
  barTorque: 'N m',
  unitLength: 'm',
  droop: 'm',
};

export function readingsOf(car: FloorCar, look: Look): readonly FloorReading[] {
  const { jets, floor, wheels } = look;
  const all: FloorReading[] = [];
  const put = (kind: ReadingKind, of: string, jet: Jet): void => {
    all.push({ id: of === '' ? kind : `${kind}.${of}`, kind, of, unit: UNITS[kind], jet });
  };
  putWeights(look, put);
  putHeights(car, look, put);
  for (const wheel of WHEEL_NAMES) putAngles(car, look, wheel, put);
  for (const end of ENDS) {
    const across = jets.subVec(wheels[`${end}Left`].contact, wheels[`${end}Right`].contact);
    put('track', end, jets.dot(across, floor.left));
    const torque = look.barTorque[end];
    if (torque !== undefined) put('barTorque', end, torque);
  }
  for (const side of ['Left', 'Right'] as const) {
    const along = jets.subVec(wheels[`front${side}`].centre, wheels[`rear${side}`].centre);
    put('wheelbase', side.toLowerCase(), jets.dot(along, floor.forward));
  }
  for (const wheel of WHEEL_NAMES) {
    const { unitLength } = wheels[wheel];
    if (unitLength !== undefined) put('unitLength', wheel, unitLength);
  }
  return all;
}

type Put = (kind: ReadingKind, of: string, jet: Jet) => void;

/** Four weights and their sums; cross weight is right front and left rear of the whole.  [FF-15] */
function putWeights({ jets, wheels }: Look, put: Put): void {
  const load = (wheel: WheelName): Jet => wheels[wheel].load;
  for (const wheel of WHEEL_NAMES) put('weight', wheel, jets.scale(load(wheel), 1 / STANDARD_GRAVITY));
  const front = jets.add(load('frontLeft'), load('frontRight'));
  const whole = jets.add(front, jets.add(load('rearLeft'), load('rearRight')));
  const share = (a: WheelName, b: WheelName): Jet => jets.div(jets.add(load(a), load(b)), whole);
  put('total', '', jets.scale(whole, 1 / STANDARD_GRAVITY));
  put('cross', '', share('frontRight', 'rearLeft'));
  put('frontShare', '', share('frontLeft', 'frontRight'));
  put('leftShare', '', share('frontLeft', 'rearLeft'));
}

/**
 * Heights of the measuring points; how far the tub stands above where the survey had it, at the axle lines; rake as
 * the mean of the rear points less that of the front ones, or of the two axle lines where there are none.  [FF-16]
 */
function putHeights(car: FloorCar, { jets, floor }: Look, put: Put): void {
  const height = (at: readonly [number, number, number]): Jet =>
    jets.dot(floor.normal, jets.subVec(jets.constantVec(at), floor.on));
  const rear = car.wheels.rearLeft.links.geometry.wheelCentre[0];
  const points = car.heights.map(({ name, at }) => ({ name, at, jet: height(at) }));
  for (const { name, jet } of points) put('height', name, jet);
  const lines = { front: height([0, 0, 0]), rear: height([rear, 0, 0]) };
  put('ride', 'front', lines.front);
  put('ride', 'rear', lines.rear);
  const mean = (of: readonly { readonly jet: Jet }[]): Jet | undefined =>
    of.length === 0
      ? undefined
      : jets.scale(
          of.map(({ jet }) => jet).reduce((a, b) => jets.add(a, b)),
          1 / of.length,
        );
  const front = mean(points.filter(({ at }) => at[0] > rear / 2)) ?? lines.front;
  const behind = mean(points.filter(({ at }) => at[0] <= rear / 2)) ?? lines.rear;
  put('rake', '', jets.sub(behind, front));
}

/** How a wheel stands against the floor.  [FF-17] */
function putAngles(car: FloorCar, { jets, floor, wheels }: Look, wheel: WheelName, put: Put): void {
  const { axis, upper, lower } = wheels[wheel];
  const out = outboard(sideOf(wheel));
  put('camber', wheel, jets.scale(jets.asin(jets.dot(floor.normal, axis)), -1));
  const toe = jets.atan2(jets.dot(axis, floor.forward), jets.scale(jets.dot(axis, floor.left), out));
  put('toe', wheel, toe);
  put('toeAtRim', wheel, jets.scale(jets.sin(toe), car.wheels[wheel].rim));
  const kingpin = jets.subVec(upper, lower);
  put(
    'caster',
    wheel,
    jets.atan2(jets.scale(jets.dot(kingpin, floor.forward), -1), jets.dot(kingpin, floor.normal)),
  );
}
