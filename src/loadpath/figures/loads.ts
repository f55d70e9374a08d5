/** Figures of one corner under what the car is doing: tyre, members, rocker and spring at the place that it takes. */
import type { CarForm } from '../../car/read.ts';
import { distance, length } from '../../maths/vec3.ts';
import type { Term, Working } from '../../working/working.ts';
import type { CornerPoint } from '../corner/state.ts';
import { type CarStanding, carStanding } from '../loads/car-equilibrium.ts';
import { type CornerLoads, cornerLoads } from '../loads/corner-loads.ts';
import { type Doing, endOf, sideOf, type WheelName } from '../loads/doing.ts';
import { MEMBERS, type MemberName } from '../loads/members.ts';
import { strutUnder } from '../loads/strut.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { skinStress } from '../spring/torsion-bar.ts';
import { barOf } from '../spring-of-car.ts';
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

const WORDS: Readonly<Record<MemberName, readonly [means: string, symbol: string, anchor: string]>> = {
  upperFront: ['upper wishbone, front leg', 'N_uf', 'upperFront'],
  upperRear: ['upper wishbone, rear leg', 'N_ur', 'upperRear'],
  lowerFront: ['lower wishbone, front leg', 'N_lf', 'lowerFront'],
  lowerRear: ['lower wishbone, rear leg', 'N_lr', 'lowerRear'],
  toeLink: ['track rod or toe link', 'N_t', 'toeInner'],
  rod: ['pushrod or pullrod', 'N_p', 'rodOuter'],
};

const MEMBER_NOTES = Object.fromEntries(
  MEMBERS.map((name) => {
    const [means, symbol, anchor] = WORDS[name];
    const note = links({
      id: `tension.${name}`,
      means: `force along the ${means}`,
      symbol,
      unit: 'N',
      anchor,
      rank: 1,
      say: 'tension positive',
      ...(name === 'rod' ? { lead: true as const } : {}),
      ...six,
    });
    return [name, note];
  }),
) as Record<MemberName, FigureNote>;

const strength = Object.fromEntries(
  MEMBERS.map((name) => {
    const [means, , anchor] = WORDS[name];
    const about = { anchor, rank: 2 } as const;
    return [
      name,
      {
        yields: links({
          id: `yieldShare.${name}`,
          means: `${means}: stress over yield`,
          symbol: 'y',
          unit: 'share',
          ...about,
        }),
        buckles: links({
          id: `bucklingShare.${name}`,
          means: `${means}: push over the push at which it buckles`,
          symbol: 'b',
          unit: 'share',
          ...about,
        }),
      },
    ];
  }),
) as Record<MemberName, { readonly yields: FigureNote; readonly buckles: FigureNote }>;

const SOLID = { kind: 'constant', what: 'a solid bar' } as const;
const PINNED = { kind: 'constant', what: 'ball joints at both ends' } as const;
const STRAIGHT = { kind: 'constant', what: 'no bow in the file: taken as straight' } as const;

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
    say: 'tension positive',
    method: 'torque of the bar, by virtual work',
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
    say: 'compression positive',
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
export function putLoadFigures(
  car: CarForm,
  wheel: WheelName,
  doing: Doing,
  numbers: Numbers,
  into: Put,
  working?: Working,
): CornerLoads {
  const put = working === undefined ? into : recorded(into, working, askedOf(doing));
  const standing = standingOf(car, doing, numbers);
  const of = cornerLoads(standing, wheel);
  const here = standing.wheels[wheel];
  const [forward, side, up] = here.ground;
  put(TYRE.up, up);
  put(TYRE.forward, forward);
  put(TYRE.side, side);
  put(TYRE.travel, here.travel);
  put(JOINTS.upper, length(of.members.onUpright.upper.force));
  put(JOINTS.lower, length(of.members.onUpright.lower.force));
  for (const name of MEMBERS) put(MEMBER_NOTES[name], of.members.tension[name]);
  const corner = car[endOf(wheel)][sideOf(wheel)];
  if (corner.rod.on !== 'upright') put(bending, of.members.bending);
  const { points } = standing.axles[endOf(wheel)][sideOf(wheel)].state;
  for (const name of MEMBERS) {
    const member = corner.members?.[name];
    if (member === undefined) continue;
    const [inner, outer] = ENDS[name];
    const outside = numbers.of(member.outside);
    const strut = {
      outside,
      bore: member.wall === undefined ? 0 : outside - 2 * numbers.of(member.wall),
      length: distance(points[inner], points[outer]),
      effective: numbers.or(member.effective, 1),
      youngsModulus: numbers.of(member.youngsModulus),
      yield: numbers.of(member.yield),
      bow: numbers.or(member.bow, 0),
    };
    const { yieldShare, bucklingShare } = strutUnder(strut, of.members.tension[name], working, {
      D: fromReading(member.outside),
      d: member.wall === undefined ? SOLID : fromReading(member.wall),
      L: { kind: 'constant', what: 'distance of its two joints in the file' },
      β: member.effective === undefined ? PINNED : fromReading(member.effective),
      w_0: member.bow === undefined ? STRAIGHT : fromReading(member.bow),
      N: { kind: 'step', symbol: WORDS[name][1] },
      E: fromReading(member.youngsModulus),
      σ_y: fromReading(member.yield),
    });
    put(strength[name].yields, yieldShare);
    put(strength[name].buckles, bucklingShare);
  }
  put(ROCKER.pivot, of.rocker.pivot);
  put(ROCKER.couple, of.rocker.couple);
  if (standing.axles[endOf(wheel)].bar !== undefined) put(ROCKER.dropLink, of.rocker.dropLink);
  if (corner.damper !== undefined || corner.coil !== undefined) put(SPRING.unit, of.unit);
  if (corner.bar !== undefined) {
    put(SPRING.torque, of.barTorque);
    put(SPRING.stress, skinStress(barOf(corner.bar, numbers).bar, of.barTorque));
  }
  return of;
}
