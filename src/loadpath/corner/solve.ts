/**
 * The corner at a wanted wheel travel and rack travel.
 *
 * In    a prepared corner; travel of the contact point and of the rack, metres
 * Out   everything's place, with first and second derivatives by travel, and first derivatives by rack travel
 * Axes  ISO 8855, fixed to the tub. Travel, and the angles of wishbones and rocker, are positive in bump
 * Not   loads, and the tyre's width: the contact point is the lowest point of the loaded circle
 *
 * LP-n are the equations of docs/theory/load-path.md.
 */
import { add, along, cross, distance, dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, Radian } from '../../units/quantity.ts';
import { finishRocker, moveRocker, moveWheel, placeRocker, placeWheel } from './chain.ts';
import { lowestDirection } from './contact.ts';
import {
  AXIS,
  CENTRE,
  CLOSED,
  elementSlot,
  FRAME,
  LOWER,
  ON_UPRIGHT,
  PHI,
  RISE,
  ROCKER,
  ROCKER_HINGE,
  ROD_INNER,
  ROD_OUTER,
  rockerPointSlot,
  SPIN,
  stateSize,
  TOE,
  TOE_INNER,
  UPPER,
  UPPER_HINGE,
} from './layout.ts';
import type { Corner } from './prepare.ts';
import { findInBracket, reachFor, Unreachable } from './reach.ts';
import type { Along, CornerState, MovingPoint, VecAlong } from './state.ts';

export type { Along, CornerPoint, CornerState, MovingPoint, VecAlong } from './state.ts';

/** A travel counts as met within this: a thousandth of a nanometre, near the rounding of the coordinates. */
export const TRAVEL_TOLERANCE: Metre = 1e-12;
/** More steps than Newton needs on a healthy corner; beyond it the corner is followed in small steps. */
const QUICK_STEPS = 6;
/** Radians that the quick search may end from its guess; beyond it a branch could have been jumped. */
const QUICK_SPAN = 0.1;
/** Metres over which the slope at the last position is trusted for one Newton step. */
const NEAR: Metre = 0.02;

/** A state to hand to `solveCornerFast`, again and again. */
export const cornerState = (corner: Corner): Float64Array => new Float64Array(stateSize(corner));

/** Makes the next solution start from the surveyed position, whatever the state was used for before. */
export const startAfresh = (state: Float64Array): void => {
  state[RISE + 1] = 0;
};

/** Slots of the results in a state: value, first and second derivative by travel, one after the other. */
export const rockerSlot = ROCKER;
export const elementSlotOf = (corner: Corner, name: string): number => {
  const i = corner.elementNames.indexOf(name);
  if (i < 0) throw new Error(`the corner has no element ${name}`);
  return elementSlot(i);
};

/**
 * Solves the corner into `out` without allocating: places, and rocker angle and element lengths with their
 * first and second derivatives by travel. `out` may hold an earlier solution, which then serves as the guess.
 * @returns how many positions were tried
 * @throws Unreachable when the linkage does not reach the travel
 */
export function solveCornerFast(corner: Corner, travel: Metre, rack: Metre, out: Float64Array): number {
  // every comparison with it fails, so a search for it would end anywhere
  if (Number.isNaN(travel) || Number.isNaN(rack)) {
    throw new Unreachable({ travel, rack, limit: { travel: 0, binds: 'wheel', how: 'out of reach' } });
  }
  const k = corner.constants;
  const from = out[RISE + 1] > 0 ? out : corner.surveyed;
  const gap = travel - from[RISE];
  const step = gap / from[RISE + 1];
  const guess = from[PHI] + step - (0.5 * from[RISE + 2] * step * step) / from[RISE + 1];
  let slope = Math.abs(gap) < NEAR ? from[RISE + 1] + from[RISE + 2] * (guess - from[PHI]) : 0;
  let phi = guess;
  let tried = 0;
  let met = false;
  while (tried < QUICK_STEPS) {
    tried++;
    if (placeWheel(k, out, phi, rack) !== CLOSED) break;
    const miss = travel - out[RISE];
    met = Math.abs(miss) <= TRAVEL_TOLERANCE;
    if (met) break;
    if (!(slope > 0)) {
      moveWheel(k, out);
      slope = out[RISE + 1];
    }
    phi += miss / slope;
    slope = 0;
  }
  met = met && Math.abs(out[PHI] - guess) < QUICK_SPAN && placeRocker(k, out, corner.rodOn) === CLOSED;
  if (met) {
    moveWheel(k, out);
    met = out[RISE + 1] > 0;
  }
  if (!met) {
    const { bracket, limit } = reachFor(corner, travel, rack);
    if (bracket === undefined) {
      if (limit === undefined) throw new Error('neither a bracket nor a limit was found');
      out[RISE + 1] = 0; // what the state holds is no guess for the next
      throw new Unreachable({ travel, rack, limit });
    }
    tried += findInBracket(corner, { travel, rack, tolerance: TRAVEL_TOLERANCE }, bracket, out);
  }
  moveRocker(k, out, corner.rodOn);
  finishRocker(k, out, corner);
  return tried;
}

const at = (s: Float64Array, i: number): Vec3 => [s[i], s[i + 1], s[i + 2]];

/** Turns derivatives by φ into derivatives by travel. LP-13 */
function travelRules(s: Float64Array) {
  const z1 = s[RISE + 1];
  const z2 = s[RISE + 2];
  const scalar = (q1: number, q2: number) => ({
    perTravel: q1 / z1,
    perTravel2: (q2 * z1 - q1 * z2) / (z1 * z1 * z1),
  });
  const vector = (q1: Vec3, q2: Vec3) => ({
    perTravel: scale(q1, 1 / z1),
    perTravel2: scale(along(scale(q2, z1), q1, -z2), 1 / (z1 * z1 * z1)),
  });
  return { scalar, vector };
}

/** Everything about the corner at a travel and a rack travel (0 when not given). */
export function solveCorner(corner: Corner, wanted: { travel: Metre; rack?: Metre }): CornerState {
  const { travel, rack = 0 } = wanted;
  const g = corner.geometry;
  const s = cornerState(corner);
  solveCornerFast(corner, travel, rack, s);
  const rule = travelRules(s);

  const axis = at(s, AXIS);
  const down = lowestDirection(axis, at(s, AXIS + 3), at(s, AXIS + 6));
  const R = g.loadedRadius;
  const z1 = s[RISE + 1];

  // By rack travel: first at a held angle of the lower wishbone, then at held travel. LP-15
  const lower = at(s, LOWER);
  const link = sub(at(s, TOE), at(s, TOE_INNER));
  const kHat = at(s, FRAME);
  const rackDirection = g.rackDirection ?? [0, 0, 0];
  const steer = dot(link, rackDirection) / dot(link, cross(kHat, sub(at(s, TOE), lower)));
  const steered = (p: Vec3): Vec3 => scale(cross(kHat, sub(p, lower)), steer);
  const axisSteered = scale(cross(kHat, axis), steer);
  const downSteered = lowestDirection(axis, axisSteered, [0, 0, 0]).first;
  const centreSteered = steered(at(s, CENTRE));
  const rise = centreSteered[2] + R * downSteered[2];
  const heldScalar = (atAngle: number, perPhi: number): number => atAngle - (perPhi * rise) / z1;
  const held = (atAngle: Vec3, perPhi: Vec3): Vec3 => along(atAngle, perPhi, -rise / z1);

  const vec = (value: Vec3, q1: Vec3, q2: Vec3, steeredBy: Vec3): VecAlong => ({
    value,
    ...rule.vector(q1, q2),
    perRack: held(steeredBy, q1),
  });
  const point = (slot: number, steeredBy: Vec3): VecAlong =>
    vec(at(s, slot), at(s, slot + 3), at(s, slot + 6), steeredBy);
  const angle = (value: Radian, q1: number, q2: number, steeredBy: number): Along => ({
    value,
    ...rule.scalar(q1, q2),
    perRack: heldScalar(steeredBy, q1),
  });

  const still: Vec3 = [0, 0, 0];
  const rodSteered = corner.rodOn === ON_UPRIGHT ? steered(at(s, ROD_OUTER)) : still;
  const rod = sub(at(s, ROD_INNER), at(s, ROD_OUTER));
  const rockerTangent = cross(corner.rockerAxis, sub(at(s, ROD_INNER), g.rockerPivot));
  const rockerSteered = dot(rod, rodSteered) / dot(rod, rockerTangent);
  const onRocker = (p: Vec3): Vec3 => scale(cross(corner.rockerAxis, sub(p, g.rockerPivot)), rockerSteered);

  const contactPlace = along(at(s, CENTRE), down.value, R);
  const contactFirst = along(at(s, CENTRE + 3), down.first, R);
  const moving: Record<MovingPoint, VecAlong> = {
    upperOuter: point(UPPER, still),
    lowerOuter: point(LOWER, still),
    toeInner: vec(at(s, TOE_INNER), still, still, rackDirection),
    toeOuter: point(TOE, steered(at(s, TOE))),
    rodOuter: point(ROD_OUTER, rodSteered),
    rodInner: point(ROD_INNER, onRocker(at(s, ROD_INNER))),
    wheelCentre: point(CENTRE, centreSteered),
    contact: vec(
      contactPlace,
      contactFirst,
      along(at(s, CENTRE + 6), down.second, R),
      along(centreSteered, downSteered, R),
    ),
  };

  const rockerPoints: Record<string, VecAlong> = {};
  corner.pointNames.forEach((name, i) => {
    const slot = rockerPointSlot(corner, i);
    rockerPoints[name] = point(slot, onRocker(at(s, slot)));
  });
  const elements: Record<string, Along> = {};
  corner.elementNames.forEach((name, i) => {
    const slot = elementSlot(i);
    const end = at(s, rockerPointSlot(corner, corner.elementPoint[i]));
    const reach = sub(end, g.elements[name]?.tub ?? still);
    const steeredBy = dot(reach, onRocker(end)) / s[slot];
    elements[name] = {
      value: s[slot],
      perTravel: s[slot + 1],
      perTravel2: s[slot + 2],
      perRack: heldScalar(steeredBy, s[slot + 1] * z1),
    };
  });

  const spin = rule.vector(at(s, SPIN), at(s, SPIN + 3));
  const { perTravel: centrePerTravel } = moving.wheelCentre;
  return {
    side: g.side,
    travel,
    rack,
    lowerAngle: angle(s[PHI], 1, 0, 0),
    upperAngle: angle(
      Math.atan2(s[UPPER_HINGE + 1], s[UPPER_HINGE]),
      s[UPPER_HINGE + 2],
      s[UPPER_HINGE + 3],
      0,
    ),
    rockerAngle: angle(s[ROCKER], s[ROCKER_HINGE + 2], s[ROCKER_HINGE + 3], rockerSteered),
    lowerAxis: corner.lowerAxis,
    upperAxis: corner.upperAxis,
    rockerAxis: corner.rockerAxis,
    elements,
    points: {
      upperFront: g.upperFront,
      upperRear: g.upperRear,
      upperOuter: moving.upperOuter.value,
      lowerFront: g.lowerFront,
      lowerRear: g.lowerRear,
      lowerOuter: lower,
      toeInner: moving.toeInner.value,
      toeOuter: moving.toeOuter.value,
      rodOuter: moving.rodOuter.value,
      rodInner: moving.rodInner.value,
      rockerPivot: g.rockerPivot,
      wheelCentre: moving.wheelCentre.value,
      contact: contactPlace,
    },
    moving,
    rockerPoints,
    wheelAxis: vec(axis, at(s, AXIS + 3), at(s, AXIS + 6), axisSteered),
    down: down.value,
    uprightTurn: { ...spin, perRack: held(scale(kHat, steer), at(s, SPIN)) },
    contactVelocity: {
      locked: add(centrePerTravel, scale(cross(spin.perTravel, down.value), R)),
      inboard: centrePerTravel,
      path: moving.contact.perTravel,
    },
    loadedRadius: R,
  };
}

/** How far each fixed length is from its surveyed value, m. Zero but for rounding. */
export function constraintResiduals(corner: Corner, state: CornerState): Readonly<Record<string, Metre>> {
  const g = corner.geometry;
  const p = state.points;
  const kept = (a: Vec3, b: Vec3, a0: Vec3, b0: Vec3): Metre => distance(a, b) - distance(a0, b0);
  return {
    upperFrontLeg: kept(p.upperOuter, p.upperFront, g.upperOuter, g.upperFront),
    upperRearLeg: kept(p.upperOuter, p.upperRear, g.upperOuter, g.upperRear),
    lowerFrontLeg: kept(p.lowerOuter, p.lowerFront, g.lowerOuter, g.lowerFront),
    lowerRearLeg: kept(p.lowerOuter, p.lowerRear, g.lowerOuter, g.lowerRear),
    kingpin: kept(p.upperOuter, p.lowerOuter, g.upperOuter, g.lowerOuter),
    toeLink: kept(p.toeOuter, p.toeInner, g.toeOuter, g.toeInner),
    toeToLower: kept(p.toeOuter, p.lowerOuter, g.toeOuter, g.lowerOuter),
    toeToUpper: kept(p.toeOuter, p.upperOuter, g.toeOuter, g.upperOuter),
    centreToLower: kept(p.wheelCentre, p.lowerOuter, g.wheelCentre, g.lowerOuter),
    centreToUpper: kept(p.wheelCentre, p.upperOuter, g.wheelCentre, g.upperOuter),
    centreToToe: kept(p.wheelCentre, p.toeOuter, g.wheelCentre, g.toeOuter),
    rod: kept(p.rodOuter, p.rodInner, g.rodOuter, g.rodInner),
    rockerArm: kept(p.rodInner, p.rockerPivot, g.rodInner, g.rockerPivot),
    travel: p.contact[2] - corner.ground - state.travel,
  };
}
