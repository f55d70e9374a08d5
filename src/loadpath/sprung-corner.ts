/**
 * One corner with its springing, at one wheel travel and rack travel: all that its figures are made of.
 *
 * In    an axle and a side from the car file, the numbers to use, travel and rack
 * Out   the solved linkage, the springing, and force and rate at the wheel with every part of both
 * Axes  travel positive in bump; forces positive in compression, at the wheel positive upward on the wheel
 *
 * The force at the wheel is that which the springing gives by virtual work, F·dc/dz + T·dθ/dz; its change with
 * travel has the two terms of LP-45, of which the second (force × change of ratio) is never left out.
 */
import type { Metre, Newton, NewtonMetre, NewtonPerMetre } from '../units/quantity.ts';
import type { Working } from '../working/working.ts';
import { type Corner, prepareCorner } from './corner/prepare.ts';
import { Unreachable } from './corner/reach.ts';
import { cornerState, elementSlotOf, rockerSlot, solveCornerFast, startAfresh } from './corner/solve.ts';
import { type AxleForm, type CornerForm, cornerGeometry, type SideName, UNIT } from './corner-of-car.ts';
import type { Numbers } from './numbers.ts';
import { barTorque, type Springing, springingOf, type UnitForce, unitForce } from './springing.ts';

/** Ratios of rocker and unit at one travel, by closed form. */
export interface Ratios {
  /** Rocker angle from the surveyed position, rad; per travel; per travel squared. */
  readonly angle: number;
  readonly turn: number;
  readonly turnChange: number;
  /** Eye to eye, m; compression per travel; its change with travel. Zero without a unit. */
  readonly unitLength: Metre;
  readonly unit: number;
  readonly unitChange: number;
}

export interface WheelForce {
  readonly ratios: Ratios;
  readonly compression: Metre;
  readonly unit: UnitForce;
  readonly torque: NewtonMetre;
  /** Force of the springing at the wheel. */
  readonly force: Newton;
  /** k·r² of unit and bar. */
  readonly elastic: NewtonPerMetre;
  /** F·dr/dz of unit and bar. */
  readonly byForce: NewtonPerMetre;
}

export interface SprungCorner {
  readonly form: CornerForm;
  readonly side: SideName;
  readonly corner: Corner;
  readonly springing: Springing;
  readonly hasUnit: boolean;
  /** Eye to eye as surveyed, from which compression is counted. Zero without a unit. */
  readonly surveyedLength: Metre;
  /** Ratios at a travel, rack straight ahead or as given. @throws Unreachable */
  readonly ratiosAt: (travel: Metre, rack?: Metre) => Ratios;
  /** Forces at a travel. @throws Unreachable */
  readonly wheelAt: (travel: Metre, rack?: Metre) => WheelForce;
}

/** The linkage of a corner, kept while none of its readings moves. @throws DegenerateCorner */
export const linkageOf = (axle: AxleForm, side: SideName, numbers: Numbers): Corner =>
  // the path of one of its readings tells this corner from the other three
  numbers.part(`linkage of ${axle[side].scale.path}`, () =>
    prepareCorner(cornerGeometry(axle, side, numbers)),
  );

/** A corner with its springing; kept while none of its readings moves. @throws DegenerateCorner */
export const sprungCorner = (
  axle: AxleForm,
  side: SideName,
  numbers: Numbers,
  working?: Working,
): SprungCorner =>
  working === undefined
    ? numbers.part(`springing of ${axle[side].scale.path}`, () => builtCorner(axle, side, numbers))
    : builtCorner(axle, side, numbers, working);

function builtCorner(axle: AxleForm, side: SideName, numbers: Numbers, working?: Working): SprungCorner {
  const form = axle[side];
  const corner = linkageOf(axle, side, numbers);
  const hasUnit = corner.elementNames.includes(UNIT);
  const state = cornerState(corner);
  const slot = hasUnit ? elementSlotOf(corner, UNIT) : -1;
  const ratiosAt = (travel: Metre, rack: Metre = 0): Ratios => {
    // the same travel gives the same digits whatever was asked before it
    startAfresh(state);
    solveCornerFast(corner, travel, rack, state);
    return {
      angle: state[rockerSlot]!,
      turn: state[rockerSlot + 1]!,
      turnChange: state[rockerSlot + 2]!,
      unitLength: hasUnit ? state[slot]! : 0,
      // compression is loss of length
      unit: hasUnit ? -state[slot + 1]! : 0,
      unitChange: hasUnit ? -state[slot + 2]! : 0,
    };
  };
  const surveyed = ratiosAt(0);
  working?.add({
    kind: 'solved',
    symbol: 's_0',
    means: 'twist per wheel travel, as surveyed',
    method: 'first derivative of the closed linkage',
    value: surveyed.turn,
    unit: 'rad/m',
    source: 'LP-13',
    terms: [],
  });
  working?.add({
    kind: 'solved',
    symbol: 'r_0',
    means: 'compression of the unit per wheel travel, as surveyed',
    method: 'first derivative of the closed linkage',
    value: surveyed.unit,
    unit: '1',
    source: 'LP-13',
    terms: [],
  });
  const springing = springingOf(
    form,
    {
      ...(hasUnit ? { unitLength: surveyed.unitLength } : {}),
      unitRatio: surveyed.unit,
      barRatio: surveyed.turn,
    },
    numbers,
    working,
  );
  const wheelAt = (travel: Metre, rack: Metre = 0): WheelForce => {
    const ratios = ratiosAt(travel, rack);
    const compression = hasUnit ? surveyed.unitLength - ratios.unitLength : 0;
    const unit = unitForce(springing, compression);
    const torque = barTorque(springing, ratios.angle);
    const barRate = springing.barRate ?? 0;
    return {
      ratios,
      compression,
      unit,
      torque,
      force: unit.total * ratios.unit + torque * ratios.turn,
      elastic: unit.rate * ratios.unit ** 2 + barRate * ratios.turn ** 2,
      byForce: unit.total * ratios.unitChange + torque * ratios.turnChange,
    };
  };
  const surveyedLength = surveyed.unitLength;
  return { form, side, corner, springing, hasUnit, surveyedLength, ratiosAt, wheelAt };
}

/** Metres within which a travel is found: a nanometre. */
const FOUND: Metre = 1e-9;
/** Metres within which the travel of a load is found: below every reading. */
const LOAD_FOUND: Metre = 1e-10;
/** Travel beyond which nothing is looked for. */
const WIDEST: Metre = 0.2;

/**
 * Travel at which `quantity` reaches `wanted`, by Newton steps with its closed derivative; NaN where the linkage
 * ends or turns back before.
 */
function travelAt(
  start: Metre,
  wanted: number,
  quantity: (travel: Metre) => { readonly value: number; readonly perTravel: number },
): Metre {
  let travel = start;
  try {
    for (let step = 0; step < 40; step += 1) {
      const { value, perTravel } = quantity(travel);
      const move = (wanted - value) / perTravel;
      if (Math.abs(move) < FOUND) return travel + move;
      if (!Number.isFinite(move)) return Number.NaN;
      // no step longer than 40 mm: the linkage may end before the straight line does
      travel += Math.max(-0.04, Math.min(0.04, move));
      if (Math.abs(travel) > WIDEST) return Number.NaN;
    }
  } catch (reason) {
    if (reason instanceof Unreachable) return Number.NaN;
    throw reason;
  }
  return Number.NaN;
}

/** Travel at which the unit is compressed by c from the surveyed position. */
export function travelAtCompression(of: SprungCorner, c: Metre): Metre {
  if (!of.hasUnit) return Number.NaN;
  const length = of.ratiosAt(0).unitLength;
  return travelAt(0, c, (travel) => {
    const ratios = of.ratiosAt(travel);
    return { value: length - ratios.unitLength, perTravel: ratios.unit };
  });
}

/** Travel at which the rocker has turned by this angle from the surveyed position. */
export const travelAtRockerAngle = (of: SprungCorner, angle: number): Metre =>
  travelAt(0, angle, (travel) => {
    const ratios = of.ratiosAt(travel);
    return { value: ratios.angle, perTravel: ratios.turn };
  });

/**
 * Travel at which the springing carries this load at the wheel. The law has kinks (a stop, a helper, a rubber),
 * so the place is first enclosed between them and then found inside.
 */
export function travelAtLoad(of: SprungCorner, load: Newton): Metre {
  const miss = (travel: Metre): number => of.wheelAt(travel).force - load;
  try {
    // towards the load, 4 mm at a time; each place is asked once, since a place asked again comes out a hair off
    const way = miss(0) < 0 ? 1 : -1;
    let before = 0;
    let beyond = way * 0.004;
    while (way * miss(beyond) < 0) {
      if (Math.abs(beyond) > WIDEST) return Number.NaN;
      before = beyond;
      beyond += way * 0.004;
    }
    let low = Math.min(before, beyond);
    let high = Math.max(before, beyond);
    // the slope leads there in a few steps; where it leaves the enclosure (a kink) halving lands as anywhere else
    let at = Math.max(low, Math.min(high, before));
    while (high - low > LOAD_FOUND) {
      const { force, elastic, byForce } = of.wheelAt(at);
      if (force > load) high = at;
      else low = at;
      const move = (load - force) / (elastic + byForce);
      if (Math.abs(move) < LOAD_FOUND) return at + move;
      const next = at + move;
      at = next > low && next < high ? next : (low + high) / 2;
    }
    return (low + high) / 2;
  } catch (reason) {
    if (reason instanceof Unreachable) return Number.NaN;
    throw reason;
  }
}

/** Where along the travel each thing happens. NaN where it does not happen within the linkage's reach. */
export interface TravelMarks {
  readonly droopStop: Metre;
  readonly coilFree: Metre;
  readonly rubber: Metre;
  readonly coilSolid: Metre;
  readonly closed: Metre;
  readonly barSlack: Metre;
}

export function travelMarks(of: SprungCorner): TravelMarks {
  const { springing } = of;
  const at = (c: Metre | undefined): Metre => (c === undefined ? Number.NaN : travelAtCompression(of, c));
  return {
    droopStop: at(springing.droopStopAt),
    coilFree: at(springing.coilFreeAt),
    rubber: at(springing.rubberAt),
    coilSolid: at(springing.coilSolidAt),
    closed: at(springing.closedAt),
    barSlack:
      springing.barTwistAtSurvey === undefined
        ? Number.NaN
        : travelAtRockerAngle(of, -springing.barTwistAtSurvey),
  };
}
