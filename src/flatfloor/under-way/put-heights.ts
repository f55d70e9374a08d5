/**
 * Figures of the underside against speed: heights of its points, attitude, ride frequency where the springs then
 * stand, and the speed at which a point touches.
 *
 * In    the car, speeds, what else it does at each of them
 * Out   figures speed by speed, then point by point
 *
 * UW-n are the equations of docs/theory/under-way.md.
 */
import type { PointReading } from '../../car/place.ts';
import type { CarForm } from '../../car/read.ts';
import type { AxleState } from '../../loadpath/axle-of-car.ts';
import { axleFrequency, axleMass, heaveOf, heaveSeries } from '../../loadpath/figures/axle-rates.ts';
import { stiffnessAtWheels } from '../../loadpath/figures/axle-stiffness.ts';
import { type CarStanding, carStanding, NotSettled } from '../../loadpath/loads/car-equilibrium.ts';
import type { Doing } from '../../loadpath/loads/doing.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Metre, MetrePerSecond } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type FloorNote, type PutFloor, recordedFloor, SAY_SPEED } from '../floor-figure.ts';
import { type CarriedOn, doingWith } from './carried.ts';
import { putAttitude } from './put-transfer.ts';

export interface HeightsOn {
  readonly car: CarForm;
  readonly doing: Doing;
  readonly speeds: readonly MetrePerSecond[];
  readonly carried?: CarriedOn;
  /** A point counts as touching at this height. */
  readonly clearance: Metre;
}

/** How a speed is called among the figures. */
export const speedName = (speed: MetrePerSecond): string => `${Math.round(speed * 3.6)} km/h`;

const HEIGHT_TERMS = {
  p_z: { unit: 'm', means: 'height of the point in tub axes' },
  a: { unit: 'm', means: 'height of the ground in tub axes' },
  b: { unit: '1', means: 'rise of the ground forward' },
  p_x: { unit: 'm', means: 'place of the point forward' },
  c: { unit: '1', means: 'rise of the ground to the left' },
  p_y: { unit: 'm', means: 'place of the point to the left' },
} as const;

const heightOf = formula({
  symbol: 'h',
  means: 'height of the point above the road',
  is: '(p_z - a - b*p_x - c*p_y)/sqrt(1 + b^2 + c^2)',
  unit: 'm',
  terms: HEIGHT_TERMS,
  source: 'UW-9',
});

function heightAt(point: PointReading, standing: CarStanding, numbers: Numbers, working?: Working): Metre {
  const [p_x, p_y, p_z] = numbers.point(point);
  const { height: a, perForward: b, perLeft: c } = standing.ground;
  const from = (axis: 'x' | 'y' | 'z') => fromReading(point[axis]);
  return heightOf({ p_z, a, b, p_x, c, p_y }, working, {
    p_x: from('x'),
    p_y: from('y'),
    p_z: from('z'),
    a: { kind: 'constant', what: 'equilibrium of the whole car' },
    b: { kind: 'constant', what: 'equilibrium of the whole car' },
    c: { kind: 'constant', what: 'equilibrium of the whole car' },
  });
}

const frequencyNote = (end: string): FloorNote => ({
  id: `${end}Frequency`,
  means: `${end} axle in heave, as it then stands`,
  symbol: 'f_a',
  unit: 'Hz',
});

export function putHeights(on: HeightsOn, numbers: Numbers, putting: PutFloor, working?: Working): void {
  const put = recordedFloor(putting, working);
  const points = Object.entries(on.car.underside?.points ?? {});
  for (const speed of on.speeds) {
    const of = speedName(speed);
    const standing = standingAt(on, speed, numbers);
    for (const [name, point] of points) {
      const note = { id: name, means: `height of ${name}`, symbol: 'h', unit: 'm' };
      put(of, note, heightAt(point, standing, numbers, working));
    }
    putAttitude(of, standing, put, working);
    for (const end of ['front', 'rear'] as const) {
      put(of, frequencyNote(end), frequencyOf(on.car, end, standing.axles[end], numbers, working));
    }
  }
  for (const [name, point] of points) {
    const note: FloorNote = {
      id: 'touchSpeed',
      means: 'touches from',
      symbol: 'v_b',
      unit: 'm/s',
      spoken: SAY_SPEED,
      method:
        'height along the speeds, halved until 1e-9 m/s; with a reading moved, one step of Newton from there',
      source: 'UW-10',
    };
    put(name, note, touchSpeed(on, name, point, numbers));
  }
}

const standingAt = (
  { car, doing, carried }: HeightsOn,
  speed: MetrePerSecond,
  numbers: Numbers,
): CarStanding => carStanding(car, doingWith({ ...doing, speed }, carried, numbers), numbers);

/** Frequency of an axle where its springs stand now, tyres in series. [LP-50, LP-51] */
function frequencyOf(
  car: CarForm,
  end: 'front' | 'rear',
  state: AxleState,
  numbers: Numbers,
  working?: Working,
): number {
  const K = stiffnessAtWheels(state, working);
  const K_h = heaveOf({ K_ll: K.leftLeft, K_lr: K.leftRight, K_rr: K.rightRight }, working);
  const { left, right } = car[end];
  const K_s = heaveSeries(
    { K_h, k_yl: numbers.of(left.wheel.tyreRate), k_yr: numbers.of(right.wheel.tyreRate) },
    working,
    { k_yl: fromReading(left.wheel.tyreRate), k_yr: fromReading(right.wheel.tyreRate) },
  );
  const m_a = axleMass(
    {
      m_wl: numbers.of(left.scale),
      m_wr: numbers.of(right.scale),
      m_ul: numbers.of(left.unsprung),
      m_ur: numbers.of(right.unsprung),
    },
    working,
    {
      m_wl: fromReading(left.scale),
      m_wr: fromReading(right.scale),
      m_ul: fromReading(left.unsprung),
      m_ur: fromReading(right.unsprung),
    },
  );
  return axleFrequency({ K_s, m_a }, working);
}

/** No car of this kind is looked at beyond, m/s. */
const FASTEST: MetrePerSecond = 100;
const STRIDE: MetrePerSecond = 5;
const CLOSED = 1e-9;

interface Touch {
  readonly speed: MetrePerSecond;
  /** How fast the height then falls with speed. */
  readonly slope: number;
}

/** Speed at which a point comes down to the clearance; not a number where none does. [UW-10] */
function touchSpeed(on: HeightsOn, name: string, point: PointReading, numbers: Numbers): MetrePerSecond {
  const part = `touch of ${name}, ${JSON.stringify([on.doing, on.clearance, on.carried?.fuel.path])}`;
  const height = (speed: MetrePerSecond, of: Numbers): Metre =>
    heightAt(point, standingAt(on, speed, of), of) - on.clearance;
  /** null where it touches nowhere: undefined would be taken for not looked for. */
  const find = (of: Numbers): Touch | null => {
    const at = (speed: number): number => height(speed, of);
    if (at(0) <= 0) return null;
    for (let low = 0; low < FASTEST; low += STRIDE) {
      const high = low + STRIDE;
      const reached = attempted(() => at(high));
      if (reached === undefined) return null;
      if (reached > 0) continue;
      const speed = halved(at, low, high);
      const step = 0.05;
      return { speed, slope: (at(speed + step) - at(speed - step)) / (2 * step) };
    }
    return null;
  };
  const filed = numbers.asFiled(part, find);
  if (filed === undefined) return numbers.part(part, () => find(numbers))?.speed ?? Number.NaN;
  if (filed === null) return Number.NaN;
  return filed.speed - height(filed.speed, numbers) / filed.slope;
}

/** Beyond some speed the springs carry no more downforce: nothing is known of a touch there. */
function attempted(work: () => number): number | undefined {
  try {
    return work();
  } catch (reason) {
    if (reason instanceof NotSettled) return undefined;
    throw reason;
  }
}

function halved(f: (v: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  while (high - low > CLOSED) {
    const middle = (low + high) / 2;
    if (f(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
