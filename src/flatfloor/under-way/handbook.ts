/**
 * Lateral load transfer as a handbook splits it: roll centres, roll rates with the tyres in series, small angles.
 *
 * In    the car as surveyed, lateral acceleration
 * Out   for each axle what goes by its unsprung mass, through its roll centre, and by roll of the springs
 *
 * UW-n are the equations of docs/theory/under-way.md.
 */
import type { CarForm } from '../../car/read.ts';
import { rollCentre } from '../../loadpath/axle/roll-centre.ts';
import { attitudeOf } from '../../loadpath/corner/attitude.ts';
import { axleMass, rollOf, rollSeries, tyreRoll } from '../../loadpath/figures/axle-rates.ts';
import { stiffnessAtWheels } from '../../loadpath/figures/axle-stiffness.ts';
import { asSurveyed, axlesAt } from '../../loadpath/loads/as-surveyed.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import {
  type Kilogram,
  type Metre,
  type Newton,
  type Radian,
  STANDARD_GRAVITY,
} from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type Linked, linkedTransfer } from './linked.ts';

const G = { kind: 'constant', what: 'standard' } as const;

export const unsprungTransfer = formula({
  symbol: 'ΔF_u',
  means: 'lateral transfer of the unsprung mass',
  is: 'm_u*a_y*h_u/t',
  unit: 'N',
  terms: {
    m_u: { unit: 'kg', means: 'unsprung mass of the axle' },
    a_y: { unit: 'm/s^2', means: 'lateral acceleration' },
    h_u: { unit: 'm', means: 'height of its centre, that of the wheel centres' },
    t: { unit: 'm', means: 'track' },
  },
  source: 'UW-1',
});

export const geometricTransfer = formula({
  symbol: 'ΔF_g',
  means: 'lateral transfer through the links',
  is: 'm_sa*a_y*h_rc/t',
  unit: 'N',
  terms: {
    m_sa: { unit: 'kg', means: 'sprung mass on the axle' },
    a_y: { unit: 'm/s^2', means: 'lateral acceleration' },
    h_rc: { unit: 'm', means: 'height of the roll centre, by forces' },
    t: { unit: 'm', means: 'track' },
  },
  source: 'UW-2',
});

const axisOf = formula({
  symbol: 'h_φ',
  means: 'centre of gravity of the sprung mass above the roll axis',
  is: 'h_s - (h_1 + (h_2 - h_1)*a/L)',
  unit: 'm',
  terms: {
    h_s: { unit: 'm', means: 'height of the centre of gravity of the sprung mass' },
    h_1: { unit: 'm', means: 'height of the front roll centre' },
    h_2: { unit: 'm', means: 'height of the rear roll centre' },
    a: { unit: 'm', means: 'centre of gravity behind the front axle' },
    L: { unit: 'm', means: 'wheelbase' },
  },
  source: 'UW-3',
});

export const rollAngleOf = formula({
  symbol: 'φ',
  means: 'roll angle, small angles',
  is: 'm_s*a_y*h_φ/(K_1 + K_2 - m_s*g_0*h_φ)',
  unit: 'rad',
  terms: {
    m_s: { unit: 'kg', means: 'sprung mass' },
    a_y: { unit: 'm/s^2', means: 'lateral acceleration' },
    h_φ: { unit: 'm', means: 'its centre of gravity above the roll axis' },
    K_1: { unit: 'N m/rad', means: 'front roll rate, tyres in series' },
    K_2: { unit: 'N m/rad', means: 'rear roll rate, tyres in series' },
    g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
  },
  source: 'UW-4',
  holds: 'small angles, rates as surveyed; what leans over its axis pulls itself further',
});

export const elasticTransfer = formula({
  symbol: 'ΔF_e',
  means: 'lateral transfer by roll of the springs, tyres in series',
  is: 'K_φy*φ/t',
  unit: 'N',
  terms: {
    K_φy: { unit: 'N m/rad', means: 'roll rate of the axle, tyres in series' },
    φ: { unit: 'rad', means: 'roll angle' },
    t: { unit: 'm', means: 'track' },
  },
  source: 'UW-5',
});

export const transferSum = formula({
  symbol: 'ΔF_h',
  means: 'lateral transfer of the axle, handbook',
  is: 'ΔF_u + ΔF_g + ΔF_e',
  unit: 'N',
  terms: {
    ΔF_u: { unit: 'N', means: 'of the unsprung mass' },
    ΔF_g: { unit: 'N', means: 'through the links' },
    ΔF_e: { unit: 'N', means: 'by roll of the springs' },
  },
  source: 'UW-5',
});

export const longitudinalTransfer = formula({
  symbol: 'ΔF_x',
  means: 'load that goes from the front axle to the rear',
  is: '(m*a_x*h + D*h_D)/L',
  unit: 'N',
  terms: {
    m: { unit: 'kg', means: 'mass of the car' },
    a_x: { unit: 'm/s^2', means: 'acceleration forward' },
    h: { unit: 'm', means: 'height of the centre of gravity of the whole' },
    D: { unit: 'N', means: 'drag at this speed' },
    h_D: { unit: 'm', means: 'height at which the drag acts' },
    L: { unit: 'm', means: 'wheelbase' },
  },
  source: 'UW-11',
  holds: 'heights as surveyed; the same whatever springs and links are',
});

export interface AxleTransfer {
  readonly unsprung: Newton;
  readonly links: Newton;
  readonly springs: Newton;
  readonly total: Newton;
}

export interface Handbook {
  readonly roll: Radian;
  readonly front: AxleTransfer;
  readonly rear: AxleTransfer;
}

interface AxleNumbers {
  readonly track: Metre;
  readonly rollCentre: Metre;
  /** Roll rate with the tyres in series, and of the tyres alone. */
  readonly rate: number;
  readonly tyres: number;
  readonly lean: { readonly left: number; readonly right: number };
  readonly sprung: Kilogram;
  readonly unsprung: Kilogram;
  readonly height: Metre;
}

/** Lateral transfer by the handbook. `put` is called for each axle when its parts are worked out. */
export function handbookTransfer(
  car: CarForm,
  a_y: number,
  numbers: Numbers,
  putting: {
    readonly roll: (φ: Radian) => void;
    readonly axle: (end: 'front' | 'rear', of: AxleTransfer) => void;
    readonly linked: (which: keyof Linked, value: number) => void;
  },
  working?: Working,
): Handbook {
  const start = asSurveyed(car, numbers);
  const axles = axlesAt(car, [0, 0, 0, 0], 0, numbers);
  const of = (end: 'front' | 'rear'): AxleNumbers => {
    const { left, right } = axles[end];
    const track = attitudeOf(left.state).halfTrack.value + attitudeOf(right.state).halfTrack.value;
    const K = stiffnessAtWheels(axles[end], working);
    const K_φ = rollOf({ t: track, K_ll: K.leftLeft, K_lr: K.leftRight, K_rr: K.rightRight }, working);
    const tyres = { k_yl: left.of.form.wheel.tyreRate, k_yr: right.of.form.wheel.tyreRate };
    const K_y = tyreRoll({ t: track, k_yl: numbers.of(tyres.k_yl), k_yr: numbers.of(tyres.k_yr) }, working, {
      k_yl: fromReading(tyres.k_yl),
      k_yr: fromReading(tyres.k_yr),
    });
    const form = car[end];
    const unsprung = numbers.of(form.left.unsprung) + numbers.of(form.right.unsprung);
    const sprung = axleMass(
      {
        m_wl: numbers.of(form.left.scale),
        m_wr: numbers.of(form.right.scale),
        m_ul: numbers.of(form.left.unsprung),
        m_ur: numbers.of(form.right.unsprung),
      },
      working,
      {
        m_wl: fromReading(form.left.scale),
        m_wr: fromReading(form.right.scale),
        m_ul: fromReading(form.left.unsprung),
        m_ur: fromReading(form.right.unsprung),
      },
    );
    return {
      track,
      rollCentre: rollCentre(left.state, right.state).forceHeight,
      rate: rollSeries({ K_φ, K_y }, working),
      tyres: K_y,
      // about the forward axis: a left wheel whose top goes inboard turns the positive way
      lean: { left: left.state.uprightTurn.perTravel[0], right: -right.state.uprightTurn.perTravel[0] },
      sprung,
      unsprung,
      height: (left.state.points.wheelCentre[2] + right.state.points.wheelCentre[2]) / 2,
    };
  };
  const [front, rear] = [of('front'), of('rear')];
  const x = (end: 'front' | 'rear'): Metre =>
    (start.contacts[`${end}Left`][0] + start.contacts[`${end}Right`][0]) / 2;
  const L = x('front') - x('rear');
  const a = x('front') - start.sprung.at[0];
  const h_φ = axisOf({ h_s: start.sprung.at[2], h_1: front.rollCentre, h_2: rear.rollCentre, a, L }, working);
  const roll = rollAngleOf(
    { m_s: start.sprung.mass, a_y, h_φ, K_1: front.rate, K_2: rear.rate, g_0: STANDARD_GRAVITY },
    working,
    { g_0: G },
  );
  putting.roll(roll);
  const transfer = (end: 'front' | 'rear', axle: AxleNumbers): AxleTransfer => {
    const t = axle.track;
    const unsprung = unsprungTransfer({ m_u: axle.unsprung, a_y, h_u: axle.height, t }, working);
    const links = geometricTransfer({ m_sa: axle.sprung, a_y, h_rc: axle.rollCentre, t }, working);
    const springs = elasticTransfer({ K_φy: axle.rate, φ: roll, t }, working);
    const total = transferSum({ ΔF_u: unsprung, ΔF_g: links, ΔF_e: springs }, working);
    const found = { unsprung, links, springs, total };
    putting.axle(end, found);
    return found;
  };
  const found = { roll, front: transfer('front', front), rear: transfer('rear', rear) };
  linkedTransfer(
    { front: { ...front, links: found.front.links }, rear: { ...rear, links: found.rear.links } },
    { a_y, m_s: start.sprung.mass, h_φ, roll },
    putting.linked,
    working,
  );
  return found;
}
