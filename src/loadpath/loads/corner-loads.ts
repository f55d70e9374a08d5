/**
 * The force followed through one corner, at the position that it has taken under the load: from the tyre to what
 * tub or case feels.
 *
 * In    the whole car's equilibrium, a wheel
 * Out   member forces, rocker, spring, and every force that this corner puts on the tub or case, by name
 * Axes  tub axes; tension positive in members, compression positive in the spring unit
 *
 * LL-n are the equations of docs/theory/loads.md.
 */
import { dot, length, scale, sub, triple, unit, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Newton, NewtonMetre } from '../../units/quantity.ts';
import { pairForces } from '../axle/pair.ts';
import type { AxleSide, AxleState } from '../axle-of-car.ts';
import type { CarStanding } from './car-equilibrium.ts';
import { endOf, sideOf, type WheelName } from './doing.ts';
import { type MemberForces, memberForces } from './members.ts';
import { type AppliedForce, type Resultant, resultantAt } from './wrench.ts';

/** A force on tub or case, with the name of the place. */
export interface PickUp extends AppliedForce {
  readonly name: string;
}

export interface RockerLoads {
  /** On the rocker's pivot by the rocker. */
  readonly pivot: Newton;
  readonly pivotForce: Vec3;
  /** All that acts on the rocker but its own bearings, about the pivot. */
  readonly on: Resultant;
  /** Couple that tips the rocker off its plane, held by its bearings. */
  readonly couple: NewtonMetre;
  /** Tension of the anti-roll bar's drop link. */
  readonly dropLink: Newton;
  /** What the springing as found leaves about the rocker's axis, as a share of the rod's own moment.  [LL-5] */
  readonly residual: number;
}

export interface CornerLoads {
  readonly wheel: WheelName;
  readonly members: MemberForces;
  readonly rocker: RockerLoads;
  /** Force of the spring unit, compression positive, and torque of the bar. */
  readonly unit: Newton;
  readonly barTorque: NewtonMetre;
  readonly onTub: readonly PickUp[];
}

const PLACES = {
  upperFront: 'upper wishbone, front',
  upperRear: 'upper wishbone, rear',
  lowerFront: 'lower wishbone, front',
  lowerRear: 'lower wishbone, rear',
  toeLink: 'track rod or toe link',
} as const;

export function cornerLoads(standing: CarStanding, wheel: WheelName): CornerLoads {
  const axle = standing.axles[endOf(wheel)];
  const side = axle[sideOf(wheel)];
  const { state, of, now } = side;
  const { at, force, shaft, unsprung } = standing.wheels[wheel];
  const members = memberForces(state, of.form.rod.on, [{ at, force, moment: shaft }, unsprung]);

  const pivot = state.points.rockerPivot;
  const axis = state.rockerAxis;
  const about = (each: AppliedForce): number =>
    triple(axis, sub(each.at, pivot), each.force) + dot(axis, each.moment ?? ZERO);
  const damperEnd = state.rockerPoints.damper?.value;
  const damperTub = of.corner.geometry.elements.unit?.tub;
  const rod = members.onRocker;
  const link = dropLinkOn(axle, sideOf(wheel), about);
  const heave = heaveOn(axle, sideOf(wheel));

  // what the scale rule leaves as surveyed is the spring's, whose force was taken from the scale  [LL-5]
  const fixed = [
    rod,
    ...(link === undefined ? [] : [link.onRocker]),
    ...(heave === undefined ? [] : [heave]),
  ];
  const unitWay =
    damperEnd === undefined || damperTub === undefined ? undefined : unit(sub(damperEnd, damperTub));
  const unitAt = (F: Newton): AppliedForce[] =>
    unitWay === undefined ? [] : [{ at: damperEnd!, force: scale(unitWay, F) }];
  const barAt = (T: NewtonMetre): AppliedForce => ({ at: pivot, force: ZERO, moment: scale(axis, -T) });
  const left = [...fixed, ...unitAt(now.unit.total), barAt(now.torque)].reduce(
    (sum, each) => sum + about(each),
    0,
  );
  const byBar = of.form.bar !== undefined;
  const torque = now.torque + (byBar ? left : 0);
  const lever = byBar ? 1 : unitAt(1).reduce((sum, each) => sum + about(each), 0);
  const unitForce = now.unit.total - (byBar ? 0 : left / lever);

  const onRocker = [...fixed, ...unitAt(unitForce)];
  const on = resultantAt(pivot, onRocker);
  const { force: pivotForce, moment: tipping } = on;
  const couple = sub(tipping, scale(axis, dot(tipping, axis)));
  const onTub: PickUp[] = [
    ...Object.entries(PLACES).map(([name, words]) => ({
      name: words,
      ...members.onTub[name as keyof typeof PLACES],
    })),
    { name: 'rocker pivot', at: pivot, force: pivotForce, moment: couple },
    ...(byBar ? [{ name: 'torsion bar anchor', at: pivot, force: ZERO, moment: scale(axis, torque) }] : []),
    ...(unitWay === undefined
      ? []
      : [{ name: 'spring unit', at: damperTub!, force: scale(unitWay, -unitForce) }]),
    ...(link === undefined ? [] : [{ name: 'anti-roll bar, drop link', ...link.onBar }]),
    ...(length(shaft) === 0
      ? []
      : [{ name: 'drive shaft or inboard brake', at, force: ZERO, moment: scale(shaft, -1) }]),
  ];
  return {
    wheel,
    members,
    rocker: {
      pivot: length(pivotForce),
      pivotForce,
      on,
      couple: length(couple),
      dropLink: link?.tension ?? 0,
      residual: Math.abs(left) / Math.max(Math.abs(about(rod)), 1),
    },
    unit: unitForce,
    barTorque: torque,
    onTub,
  };
}

interface LinkOn {
  readonly tension: Newton;
  readonly onRocker: AppliedForce;
  readonly onBar: AppliedForce;
}

/** The drop link's tension from the bar's torque: the same work at the wheel.  [LL-17] */
function dropLinkOn(
  axle: AxleState,
  side: 'left' | 'right',
  about: (each: AppliedForce) => number,
): LinkOn | undefined {
  const { bar } = axle;
  if (bar === undefined) return undefined;
  const { state } = axle[side];
  const at = state.rockerPoints.dropLink!.value;
  const end = bar.ends[side];
  const way = unit(sub(end, at));
  // the bar resists the wheel by this force; at the rocker it is a moment, whose sign is against the travel
  const atWheel = pairForces(bar.twist, bar.torque)[side];
  const moment = -atWheel / state.rockerAngle.perTravel;
  const tension = moment / about({ at, force: way });
  return {
    tension,
    onRocker: { at, force: scale(way, tension) },
    onBar: { at: end, force: scale(way, -tension) },
  };
}

/** The heave element presses this rocker away from the other one. */
function heaveOn(axle: AxleState, side: 'left' | 'right'): AppliedForce | undefined {
  const { heave } = axle;
  if (heave === undefined) return undefined;
  const end = (of: AxleSide): Vec3 => of.state.rockerPoints.heave!.value;
  const other = axle[side === 'left' ? 'right' : 'left'];
  const at = end(axle[side]);
  // pressed where it closes in bump, drawn where it opens: resists the way in which bump moves it
  const closing = heave.length.byLeft + heave.length.byRight <= 0 ? 1 : -1;
  return { at, force: scale(unit(sub(at, end(other))), closing * heave.force) };
}
