/** Figures of one corner under what the car is doing: tyre, members, rocker and spring at the place that it takes. */
import type { CarForm } from '../../car/read.ts';
import { length } from '../../maths/vec3.ts';
import type { Term, Working } from '../../working/working.ts';
import type { CornerPoint } from '../corner/state.ts';
import { type CarStanding, carStanding } from '../loads/car-equilibrium.ts';
import { type CornerLoads, cornerLoads } from '../loads/corner-loads.ts';
import { type Doing, endOf, sideOf, type WheelName } from '../loads/doing.ts';
import { MEMBERS, type MemberName } from '../loads/members.ts';
import type { Numbers } from '../numbers.ts';
import { skinStress } from '../spring/torsion-bar.ts';
import { barOf } from '../spring-of-car.ts';
import { putBearingFigures } from './load-bearings.ts';
import { putSphericalFigures } from './load-sphericals.ts';
import { LINK_WORDS, putLinkStrength, sensed } from './member-strength.ts';
import { type FigureNote, notesOf, type Put, recorded } from './note.ts';

const tyre = notesOf('tyre');
const upright = notesOf('upright');
const links = notesOf('links');
const rocker = notesOf('rocker');
const spring = notesOf('spring');

const balance = { method: 'equilibrium of the whole car', source: 'LL-9' } as const;
const six = { method: 'six equations of the upright', source: 'LL-11' } as const;

const TYRE = {
  up: tyre({
    id: 'tyreLoad',
    means: 'load of the tyre on the ground',
    symbol: 'F_z',
    unit: 'N',
    anchor: 'contact',
    rank: 1,
    lead: true,
    ...balance,
  }),
  forward: tyre({
    id: 'tyreForward',
    means: 'fore and aft force of the ground on the tyre',
    symbol: 'F_x',
    unit: 'N',
    anchor: 'contact',
    rank: 1,
    say: 'forward positive',
    ...balance,
  }),
  side: tyre({
    id: 'tyreSide',
    means: 'side force of the ground on the tyre',
    symbol: 'F_y',
    unit: 'N',
    anchor: 'contact',
    rank: 1,
    say: 'to the left positive; shared on the axle by load',
    ...balance,
  }),
  travel: tyre({
    id: 'travelUnderLoad',
    means: 'wheel travel that the load brings about',
    symbol: 'z_L',
    unit: 'm',
    anchor: 'contact',
    rank: 2,
    say: 'from the surveyed position, bump positive',
    ...balance,
  }),
} as const;

const joint = (id: string, means: string, symbol: string, anchor: string): FigureNote =>
  upright({
    id,
    means,
    symbol,
    unit: 'N',
    anchor,
    rank: 1,
    method: 'resultant of its members',
    source: 'LL-11',
  });

const JOINTS = {
  upper: joint('upperBallJoint', 'force in the upper outer joint', 'F_uo', 'upperOuter'),
  lower: joint('lowerBallJoint', 'force in the lower outer joint', 'F_lo', 'lowerOuter'),
} as const;

const MEMBER_NOTES = Object.fromEntries(
  MEMBERS.map((name) => {
    const [means, symbol, anchor] = LINK_WORDS[name];
    const note = links({
      id: `tension.${name}`,
      means: `force along the ${means}`,
      symbol,
      unit: 'N',
      anchor,
      rank: 1,
      ...(name === 'rod' ? { lead: true as const } : {}),
      ...six,
    });
    return [name, note];
  }),
) as Record<MemberName, FigureNote>;

/** Ends of each member, between whose joint centres it buckles. */
const ENDS: Readonly<Record<MemberName, readonly [CornerPoint, CornerPoint]>> = {
  upperFront: ['upperFront', 'upperOuter'],
  upperRear: ['upperRear', 'upperOuter'],
  lowerFront: ['lowerFront', 'lowerOuter'],
  lowerRear: ['lowerRear', 'lowerOuter'],
  toeLink: ['toeInner', 'toeOuter'],
  rod: ['rodInner', 'rodOuter'],
};

const bending = links({
  id: 'wishboneBending',
  means: 'bending at the outer end of the wishbone that carries the rod',
  symbol: 'M_b',
  unit: 'N m',
  anchor: 'rodOuter',
  rank: 2,
  say: 'greater of its two legs; a rigid joint between them',
  method: 'rod force off the outer joint, shared as 3EI/L',
  source: 'LL-15',
});

const ROCKER = {
  pivot: rocker({
    id: 'rockerPivotForce',
    means: 'force on the rocker pivot',
    symbol: 'F_R',
    unit: 'N',
    anchor: 'rockerPivot',
    rank: 1,
    lead: true,
    method: 'equilibrium of the rocker',
    source: 'LL-16',
  }),
  couple: rocker({
    id: 'rockerCouple',
    means: 'couple that tips the rocker off its plane',
    symbol: 'M_R',
    unit: 'N m',
    anchor: 'rockerPivot',
    rank: 2,
    say: 'over the distance of its bearings it is a force on each, up and down',
    method: 'equilibrium of the rocker',
    source: 'LL-16',
  }),
  dropLink: rocker({
    id: 'dropLinkForce',
    means: 'force along the anti-roll bar drop link',
    symbol: 'N_d',
    unit: 'N',
    anchor: 'dropLinkRocker',
    rank: 1,
    method: 'torque of the bar, by virtual work',
    source: 'LL-17',
  }),
  bar: rocker({
    id: 'antiRollTorqueUnderLoad',
    means: 'torque of the anti-roll bar',
    symbol: 'T_A',
    unit: 'N m',
    anchor: 'dropLinkRocker',
    rank: 2,
    say: 'of the whole bar, whichever way it is turned; alike left and right',
    method: 'rate of the bar by its twist at the travel that the load brings about',
    source: 'LL-17',
  }),
} as const;

const SPRING = {
  unit: spring({
    id: 'unitForceUnderLoad',
    means: 'force of the spring unit',
    symbol: 'F_u',
    unit: 'N',
    anchor: 'damperTub',
    rank: 1,
    method: 'law of the unit at the travel that the load brings about',
    source: 'LL-5',
  }),
  torque: spring({
    id: 'barTorqueUnderLoad',
    means: 'torque of the torsion bar',
    symbol: 'T',
    unit: 'N m',
    anchor: 'rockerPivot',
    rank: 1,
    lead: true,
    method: 'law of the bar at the travel that the load brings about',
    source: 'LL-5',
  }),
  stress: spring({
    id: 'barStressUnderLoad',
    means: 'shear stress at the skin of the bar',
    symbol: 'τ_L',
    unit: 'Pa',
    anchor: 'rockerPivot',
    rank: 1,
    method: 'torque over the section',
    source: 'SP-23',
  }),
} as const;

/** The whole car's equilibrium, found once for all the wheels that ask. */
export const standingOf = (car: CarForm, doing: Doing, numbers: Numbers): CarStanding =>
  numbers.part(`car doing ${JSON.stringify(doing)}`, () => carStanding(car, doing, numbers));

/** What was asked, as terms of every step that is solved for it. */
export const askedOf = (doing: Doing): readonly Term[] =>
  (
    [
      ['a_x', 'acceleration forward', doing.longitudinal, 'm/s^2'],
      ['a_y', 'acceleration to the left', doing.lateral, 'm/s^2'],
      ['a_z', 'acceleration upward, on top of gravity', doing.vertical, 'm/s^2'],
      ['v', 'speed', doing.speed, 'm/s'],
      ...Object.entries(doing.strikes).map(
        ([wheel, loads]) => [`n_${wheel}`, 'loads of its own scale reading on a kerb', loads, '1'] as const,
      ),
    ] as const
  ).map(([symbol, means, value, unit]) => ({
    symbol,
    means,
    value,
    unit,
    from: { kind: 'asked', what: 'what the car is doing' },
  }));

/** @throws NotSettled, Unreachable, DegenerateCorner, BarOpen */
export const putLoadFigures = (
  car: CarForm,
  wheel: WheelName,
  doing: Doing,
  numbers: Numbers,
  into: Put,
  working?: Working,
): CornerLoads =>
  putWheelFigures(
    car,
    standingOf(car, doing, numbers),
    wheel,
    numbers,
    working === undefined ? into : recorded(into, working, askedOf(doing)),
    working,
  );

/** Of a car as it stands: nothing of `standing` but the wheel itself, its axle and the ground's directions. */
export function putWheelFigures(
  car: CarForm,
  standing: CarStanding,
  wheel: WheelName,
  numbers: Numbers,
  put: Put,
  working?: Working,
): CornerLoads {
  const of = cornerLoads(standing, wheel);
  const here = standing.wheels[wheel];
  const [forward, side, up] = here.ground;
  put(TYRE.up, up);
  put(TYRE.forward, forward);
  put(TYRE.side, side);
  put(TYRE.travel, here.travel);
  put(JOINTS.upper, length(of.members.onUpright.upper.force));
  put(JOINTS.lower, length(of.members.onUpright.lower.force));
  for (const name of MEMBERS) {
    const tension = of.members.tension[name];
    put(sensed(MEMBER_NOTES[name], tension), tension);
  }
  const corner = car[endOf(wheel)][sideOf(wheel)];
  if (corner.rod.on !== 'upright') put(bending, of.members.bending);
  const axle = standing.axles[endOf(wheel)];
  const { state } = axle[sideOf(wheel)];
  for (const name of MEMBERS) {
    const [inner, outer] = ENDS[name];
    const link = {
      ends: [state.points[inner], state.points[outer]],
      tension: of.members.tension[name],
    } as const;
    putLinkStrength(corner, name, link, numbers, put, working);
  }
  put(ROCKER.pivot, of.rocker.pivot);
  put(ROCKER.couple, of.rocker.couple);
  if (axle.bar !== undefined) {
    const tension = of.rocker.dropLink;
    put(ROCKER.bar, Math.abs(axle.bar.torque));
    put(sensed(ROCKER.dropLink, tension), tension);
    const ends = [state.rockerPoints.dropLink!.value, axle.bar.ends[sideOf(wheel)]] as const;
    putLinkStrength(corner, 'dropLink', { ends, tension }, numbers, put, working);
  }
  putSphericalFigures(corner, state, of, numbers, put, working);
  putBearingFigures(corner, standing, of, numbers, put, working);
  if (corner.damper !== undefined || corner.coil !== undefined) {
    put(sensed(SPRING.unit, of.unit, ['compression positive', 'pressed', 'drawn']), of.unit);
  }
  if (corner.bar !== undefined) {
    put(
      sensed(SPRING.torque, of.barTorque, ['wound up by the load positive', 'wound up', 'unwound']),
      of.barTorque,
    );
    put(SPRING.stress, skinStress(barOf(corner.bar, numbers).bar, of.barTorque));
  }
  return of;
}
