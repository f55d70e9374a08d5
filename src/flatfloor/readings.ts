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
import { eachWheel, sideOf, WHEEL_NAMES, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';
import type { Jet } from '../maths/jets.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import type { Origin, Working } from '../working/working.ts';
import { ENDS } from './changes.ts';
import type { FloorCar } from './floor-car.ts';
import type { Look } from './look.ts';
import { WHEEL_WORDS } from './reading-words.ts';
import { type Pads, shareOf, wholeOf } from './shares.ts';
import {
  barTorqueOf,
  camberOf,
  casterOf,
  G_0,
  heightOver,
  rakeOf,
  solved,
  step,
  toeAtRimOf,
  toeOf,
  trackOf,
  weightOf,
  wheelbaseOf,
} from './worked-readings.ts';

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
  /** Its value by the formula that is shown for it. */
  readonly work: Work;
}

/** Works a reading out, and writes the steps down where a working is wanted. */
export type Work = (working?: Working) => number;

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
  const put: Put = (kind, of, jet, work) => {
    all.push({ id: of === '' ? kind : `${kind}.${of}`, kind, of, unit: UNITS[kind], jet, work });
  };
  putWeights(look, put);
  putHeights(car, look, put);
  for (const wheel of WHEEL_NAMES) putAngles(car, look, wheel, put);
  for (const end of ENDS) {
    const [left, right] = [wheels[`${end}Left`].contact, wheels[`${end}Right`].contact];
    const [s_l, s_r] = [left, right].map((at) => jets.value(jets.dot(at, floor.left))) as [number, number];
    put('track', end, jets.dot(jets.subVec(left, right), floor.left), (working) => {
      solved(working, { symbol: 's_l', means: 'left contact, along left', unit: 'm', value: s_l }, 'links');
      solved(working, { symbol: 's_r', means: 'right contact, along left', unit: 'm', value: s_r }, 'links');
      return trackOf({ s_l, s_r }, working);
    });
    putBar(car, look, end, put);
  }
  for (const side of ['Left', 'Right'] as const) {
    const [front, rear] = [wheels[`front${side}`].centre, wheels[`rear${side}`].centre];
    const [x_1, x_2] = [front, rear].map((at) => jets.value(jets.dot(at, floor.forward))) as [number, number];
    const jet = jets.dot(jets.subVec(front, rear), floor.forward);
    put('wheelbase', side.toLowerCase(), jet, (working) => {
      solved(working, { symbol: 'x_1', means: 'centre of the front wheel', unit: 'm', value: x_1 }, 'links');
      solved(working, { symbol: 'x_2', means: 'centre of the rear wheel', unit: 'm', value: x_2 }, 'links');
      return wheelbaseOf({ x_1, x_2 }, working);
    });
  }
  for (const wheel of WHEEL_NAMES) {
    const { unitLength } = wheels[wheel];
    if (unitLength === undefined) continue;
    const value = jets.value(unitLength);
    put('unitLength', wheel, unitLength, (working) =>
      solved(working, { symbol: 'L_u', means: 'damper, eye to eye', unit: 'm', value }, 'links'),
    );
  }
  return all;
}

type Put = (kind: ReadingKind, of: string, jet: Jet, work: Work) => void;

const PAD: Wheels<keyof Pads> = {
  frontLeft: 'm_fl',
  frontRight: 'm_fr',
  rearLeft: 'm_rl',
  rearRight: 'm_rr',
};

/** Four weights and their sums; cross weight is right front and left rear of the whole.  [FF-15] */
function putWeights({ jets, wheels }: Look, put: Put): void {
  const load = (wheel: WheelName): Jet => wheels[wheel].load;
  const loads = eachWheel((wheel) => jets.value(load(wheel)));
  const weighed = (wheel: WheelName, working?: Working): number => {
    const symbol = PAD[wheel].replace('m', 'N');
    const means = `load of the ${WHEEL_WORDS[wheel]} tyre`;
    const N = solved(working, { symbol, means, unit: 'N', value: loads[wheel] }, 'rest');
    return weightOf({ N, g_0: G_0.value }, working, { N: step(symbol), g_0: G_0.from });
  };
  const pads = (working?: Working): Pads =>
    Object.fromEntries(WHEEL_NAMES.map((wheel) => [PAD[wheel], weighed(wheel, working)])) as unknown as Pads;
  const from = Object.fromEntries(WHEEL_NAMES.map((wheel) => [PAD[wheel], step('m_p')]));
  for (const wheel of WHEEL_NAMES)
    put('weight', wheel, jets.scale(load(wheel), 1 / STANDARD_GRAVITY), (working) => weighed(wheel, working));
  const front = jets.add(load('frontLeft'), load('frontRight'));
  const whole = jets.add(front, jets.add(load('rearLeft'), load('rearRight')));
  const share = (which: 'cross' | 'frontShare' | 'leftShare', a: WheelName, b: WheelName): void =>
    put(which, '', jets.div(jets.add(load(a), load(b)), whole), (working) =>
      shareOf(which, pads(working), working, from),
    );
  put('total', '', jets.scale(whole, 1 / STANDARD_GRAVITY), (working) =>
    wholeOf(pads(working), working, from),
  );
  share('cross', 'frontRight', 'rearLeft');
  share('frontShare', 'frontLeft', 'frontRight');
  share('leftShare', 'frontLeft', 'rearLeft');
}

const SURVEY_LINE: Origin = { kind: 'constant', what: 'axle line at the floor of the survey' };

/**
 * Heights of the measuring points; how far the tub stands above where the survey had it, at the axle lines; rake as
 * the mean of the rear points less that of the front ones, or of the two axle lines where there are none.  [FF-16]
 */
function putHeights(car: FloorCar, { jets, floor, plane }: Look, put: Put): void {
  const height = (at: Vec3): Jet => jets.dot(floor.normal, jets.subVec(jets.constantVec(at), floor.on));
  const work =
    ([x, y, z]: Vec3, from: (axis: 'x' | 'y' | 'z') => Origin): Work =>
    (working) => {
      const { a, b, c } = plane;
      solved(
        working,
        { symbol: 'a', means: 'height of the floor at the origin', unit: 'm', value: a },
        'rest',
      );
      solved(working, { symbol: 'b', means: 'rise of the floor forward', unit: '1', value: b }, 'rest');
      solved(working, { symbol: 'c', means: 'rise of the floor to the left', unit: '1', value: c }, 'rest');
      return heightOver({ x, y, z, a, b, c }, working, { x: from('x'), y: from('y'), z: from('z') });
    };
  const rear = car.wheels.rearLeft.links.geometry.wheelCentre[0];
  const points = car.heights.map(({ name, at, paths }) => ({
    name,
    at,
    jet: height(at),
    work: work(at, (axis) => ({ kind: 'reading', path: paths[axis] })),
  }));
  for (const { name, jet, work: of } of points) put('height', name, jet, of);
  const line = (end: 'front' | 'rear', x: number) => {
    const at: Vec3 = [x, 0, 0];
    return { name: end, at, jet: height(at), work: work(at, () => SURVEY_LINE) };
  };
  const lines = { front: line('front', 0), rear: line('rear', rear) };
  put('ride', 'front', lines.front.jet, lines.front.work);
  put('ride', 'rear', lines.rear.jet, lines.rear.work);
  const behind = points.filter(({ at }) => at[0] <= rear / 2);
  const front = points.filter(({ at }) => at[0] > rear / 2);
  const ends = {
    h_f: front.length === 0 ? [lines.front] : front,
    h_r: behind.length === 0 ? [lines.rear] : behind,
  };
  const mean = (of: readonly { readonly jet: Jet }[]): Jet =>
    jets.scale(
      of.map(({ jet }) => jet).reduce((a, b) => jets.add(a, b)),
      1 / of.length,
    );
  put('rake', '', jets.sub(mean(ends.h_r), mean(ends.h_f)), (working) => {
    const [h_f, h_r] = (['h_f', 'h_r'] as const).map((symbol) => meanHeight(symbol, ends[symbol], working));
    return rakeOf({ h_r: h_r!, h_f: h_f! }, working);
  });
}

function meanHeight(
  symbol: 'h_f' | 'h_r',
  of: readonly { readonly name: string; readonly work: Work }[],
  working?: Working,
): number {
  const heights = of.map(({ work }) => work(working));
  const value = heights.reduce((sum, each) => sum + each, 0) / of.length;
  working?.add({
    kind: 'solved',
    symbol,
    means: `mean height of the points ${symbol === 'h_f' ? 'in front' : 'behind'}`,
    method: `mean of ${of.map(({ name }) => name).join(', ')}`,
    value,
    unit: 'm',
    source: 'FF-16',
    terms: heights.map((each, k) => ({
      symbol: 'h_p',
      means: of[k]!.name,
      value: each,
      unit: 'm',
      from: step('h_p'),
    })),
  });
  return value;
}

/** How a wheel stands against the floor.  [FF-17] */
function putAngles(car: FloorCar, { jets, floor, wheels }: Look, wheel: WheelName, put: Put): void {
  const { axis, upper, lower } = wheels[wheel];
  const out = outboard(sideOf(wheel));
  const { rim: D, rimPath } = car.wheels[wheel];
  const leaning = jets.dot(floor.normal, axis);
  const ν = jets.value(leaning);
  put('camber', wheel, jets.scale(jets.asin(leaning), -1), (working) => {
    solved(working, { symbol: 'ν', means: 'part of the axis that goes up', unit: '1', value: ν }, 'links');
    return camberOf({ ν }, working);
  });
  const [ahead, outward] = [jets.dot(axis, floor.forward), jets.scale(jets.dot(axis, floor.left), out)];
  const toe = jets.atan2(ahead, outward);
  const [a_f, a_o] = [jets.value(ahead), jets.value(outward)];
  const toeWorked: Work = (working) => {
    solved(working, { symbol: 'a_f', means: 'part of the axis forward', unit: '1', value: a_f }, 'links');
    solved(working, { symbol: 'a_o', means: 'part of the axis outboard', unit: '1', value: a_o }, 'links');
    return toeOf({ a_f, a_o }, working);
  };
  put('toe', wheel, toe, toeWorked);
  put('toeAtRim', wheel, jets.scale(jets.sin(toe), D), (working) =>
    toeAtRimOf({ D, δ: toeWorked(working) }, working, { D: { kind: 'reading', path: rimPath } }),
  );
  const kingpin = jets.subVec(upper, lower);
  const [along, up] = [jets.dot(kingpin, floor.forward), jets.dot(kingpin, floor.normal)];
  const [k_f, k_n] = [jets.value(along), jets.value(up)];
  put('caster', wheel, jets.atan2(jets.scale(along, -1), up), (working) => {
    solved(
      working,
      { symbol: 'k_f', means: 'lower to upper joint, forward', unit: 'm', value: k_f },
      'links',
    );
    solved(working, { symbol: 'k_n', means: 'lower to upper joint, up', unit: 'm', value: k_n }, 'links');
    return casterOf({ k_f, k_n }, working);
  });
}

function putBar(car: FloorCar, look: Look, end: 'front' | 'rear', put: Put): void {
  const torque = look.barTorque[end];
  const k_b = car.axles[end].barRate;
  if (torque === undefined || k_b === undefined) return;
  const ψ = look.jets.value(torque) / k_b;
  put('barTorque', end, torque, (working) => {
    solved(working, { symbol: 'ψ', means: 'twist of the bar', unit: 'rad', value: ψ }, 'bar');
    return barTorqueOf({ k_b, ψ }, working, {
      k_b: {
        kind: 'constant',
        what: `rate of the ${end} bar: flatpatch working --axle ${end}, antiRollBarRate`,
      },
    });
  });
}
