/**
 * How the wheel stands: camber, toe, caster, kingpin inclination, trail, scrub, track and instant centres.
 *
 * In    a solved corner
 * Out   each figure with its derivative by travel at held rack, and by rack travel at held wheel travel
 * Axes  camber negative: top leans inboard. Toe positive: front edge inboard, per wheel. Caster positive: top of
 *       the steering axis leans back. Kingpin inclination positive: top leans inboard. Trail positive: the contact
 *       point lies behind the steering axis. Scrub radius positive: it lies outboard of it.
 * Not   the wheel loaded sideways: the tyre's own trail is not in it
 *
 * Definitions after ISO 8855:2011 (from memory). LP-n are the equations of docs/theory/load-path.md.
 */
import { dot, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { Metre, Radian, Ratio } from '../../units/quantity.ts';
import { outboard } from './geometry.ts';
import type { CornerState } from './solve.ts';

/** A figure with its derivatives. */
export interface Gain<Q> {
  readonly value: Q;
  readonly perTravel: number;
  readonly perRack: number;
}

/**
 * Where the upright turns about, seen square on from the front or the side.
 * `slope` is the rise over run of the line from the contact point to the centre, going inboard in front view and
 * forward in side view; that is how far the contact point moves outboard, or rearward, for each metre that it
 * rises. It stays finite where the centre itself runs off to infinity and `at` is absent.
 */
export interface InstantCentre {
  readonly slope: Ratio;
  readonly at?: { readonly across: Metre; readonly height: Metre };
  /** Rotation in that view per metre of travel; zero when the centre is at infinity. */
  readonly turn: number;
}

export interface Attitude {
  readonly camber: Gain<Radian>;
  readonly toe: Gain<Radian>;
  readonly caster: Gain<Radian>;
  readonly kingpinInclination: Gain<Radian>;
  readonly scrubRadius: Gain<Metre>;
  readonly mechanicalTrail: Gain<Metre>;
  /** Distance of the contact point from the car's centre plane. */
  readonly halfTrack: Gain<Metre>;
  /** How far the contact point is forward of its axes' origin; its change is the change of wheelbase. */
  readonly contactForward: Gain<Metre>;
  readonly wheelCentreHeight: Gain<Metre>;
  /** `across` is the distance from the centre plane towards this wheel's side. */
  readonly frontView: InstantCentre;
  /** `across` is x, forward. */
  readonly sideView: InstantCentre;
}

/** A rotation slower than this, rad per metre of travel, puts the instant centre more than a kilometre away. */
const NO_TURN = 1e-3;

/** The wheel's heading: the level direction in the wheel's plane that points forward. */
export function heading(axis: Vec3): Vec3 {
  const level = Math.hypot(axis[0], axis[1]);
  const h: Vec3 = [axis[1] / level, -axis[0] / level, 0];
  return h[0] >= 0 ? h : scale(h, -1);
}

/** Toe as the difference between rear and front edge at a diameter, one wheel, m: D sin(toe). */
export const toeAtDiameter = (toe: Radian, diameter: Metre): Metre => diameter * Math.sin(toe);

interface Moving {
  readonly n: Vec3;
  readonly upper: Vec3;
  readonly lower: Vec3;
  readonly contact: Vec3;
  readonly centre: Vec3;
}

/** Figures that depend on places alone, with their change for one small displacement of those places. */
function figures(side: 1 | -1, p: Moving, d: Moving) {
  const quantity = (value: number, rate: number) => ({ value, rate });
  const { n } = p;
  const level2 = n[0] * n[0] + n[1] * n[1];
  const level = Math.sqrt(level2);
  const k = sub(p.upper, p.lower);
  const dk = sub(d.upper, d.lower);
  const lean = (
    a: number,
    da: number, // atan2(a, k_z)
  ) => quantity(Math.atan2(a, k[2]), (da * k[2] - a * dk[2]) / (a * a + k[2] * k[2]));

  // Where the steering axis meets the ground: G = L + t k.  LP-18
  const t = (p.contact[2] - p.lower[2]) / k[2];
  const dt = (d.contact[2] - d.lower[2] - t * dk[2]) / k[2];
  const ground: Vec3 = [p.lower[0] + t * k[0], p.lower[1] + t * k[1], p.contact[2]];
  const dGround: Vec3 = [
    d.lower[0] + dt * k[0] + t * dk[0],
    d.lower[1] + dt * k[1] + t * dk[1],
    d.contact[2],
  ];
  const gap = sub(ground, p.contact);
  const dGap = sub(dGround, d.contact);
  const h = heading(n);
  const turning = (n[0] * d.n[1] - n[1] * d.n[0]) / level2; // of the heading, about z
  const dh: Vec3 = [-h[1] * turning, h[0] * turning, 0];
  const across: Vec3 = [-h[1], h[0], 0]; // leftward of the heading
  const dAcross: Vec3 = [-dh[1], dh[0], 0];

  return {
    camber: quantity(-Math.asin(n[2]), -d.n[2] / level), // LP-16
    toe: quantity(Math.atan2(n[0], side * n[1]), -side * turning), // LP-16
    caster: lean(-k[0], -dk[0]), // LP-17
    kingpinInclination: lean(-side * k[1], -side * dk[1]),
    mechanicalTrail: quantity(dot(gap, h), dot(dGap, h) + dot(gap, dh)),
    scrubRadius: quantity(-side * dot(gap, across), -side * (dot(dGap, across) + dot(gap, dAcross))),
    halfTrack: quantity(side * p.contact[1], side * d.contact[1]),
    contactForward: quantity(p.contact[0], d.contact[0]),
    wheelCentreHeight: quantity(p.centre[2] - p.contact[2], d.centre[2] - d.contact[2]),
  };
}

/** All that describes how the wheel stands at a solved position. */
export function attitudeOf(state: CornerState): Attitude {
  const side = outboard(state.side);
  const m = state.moving;
  const take = (which: 'value' | 'perTravel' | 'perRack'): Moving => ({
    n: state.wheelAxis[which],
    upper: m.upperOuter[which],
    lower: m.lowerOuter[which],
    contact: m.contact[which],
    centre: m.wheelCentre[which],
  });
  const byTravel = figures(side, take('value'), take('perTravel'));
  const byRack = figures(side, take('value'), take('perRack'));
  const gain = (name: keyof typeof byTravel): Gain<number> => ({
    value: byTravel[name].value,
    perTravel: byTravel[name].rate,
    perRack: byRack[name].rate,
  });

  return {
    camber: gain('camber'),
    toe: gain('toe'),
    caster: gain('caster'),
    kingpinInclination: gain('kingpinInclination'),
    scrubRadius: gain('scrubRadius'),
    mechanicalTrail: gain('mechanicalTrail'),
    halfTrack: gain('halfTrack'),
    contactForward: gain('contactForward'),
    wheelCentreHeight: gain('wheelCentreHeight'),
    frontView: frontViewCentre(state),
    sideView: sideViewCentre(state),
  };
}

/** Instant centre of the upright in front view, in the cross-plane through the contact point.  LP-19 */
export function frontViewCentre(state: CornerState): InstantCentre {
  const side = outboard(state.side);
  const v = state.contactVelocity.locked;
  const w = state.uprightTurn.perTravel[0];
  const c = state.points.contact;
  const slope = (side * v[1]) / v[2];
  if (Math.abs(w) < NO_TURN) return { slope, turn: w };
  return { slope, turn: w, at: { across: side * (c[1] - v[2] / w), height: c[2] + v[1] / w } };
}

/** Instant centre of the upright in side view, in the plane through the contact point along the car.  LP-20 */
export function sideViewCentre(state: CornerState): InstantCentre {
  const v = state.contactVelocity.locked;
  const w = state.uprightTurn.perTravel[1];
  const c = state.points.contact;
  const slope = -v[0] / v[2];
  if (Math.abs(w) < NO_TURN) return { slope, turn: w };
  return { slope, turn: w, at: { across: c[0] + v[2] / w, height: c[2] - v[0] / w } };
}
