/**
 * The forces of one stop as they are drawn: along members, at places as arrows, at studs.
 *
 * In    the car, what it is doing, the wheel and joint that are looked at
 * Out   for that stop alone what stands on the drawing, in car axes; nothing where the force cannot be told
 */
import type { Car } from '../car/read.ts';
import { cornerLoads } from '../loadpath/loads/corner-loads.ts';
import { endOf, sideOf } from '../loadpath/loads/doing.ts';
import { MEMBERS, type MemberName } from '../loadpath/loads/members.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { type BodyForce, bodyForce, noBody } from './body-forces.ts';
import { caseForces } from './case-forces.ts';
import type { Stop } from './figure.ts';
import type { FollowAsked } from './follow.ts';
import { jointOf } from './joint.ts';
import { MEMBER_WORDS } from './load-cases.ts';
import { wheelNamed } from './loads.ts';
import { isRefusal } from './refusal.ts';
import { standingAsFiled } from './standing-as-filed.ts';
import { tubForces } from './tub-forces.ts';

export interface MemberDrawn {
  readonly name: string;
  /** In the trade's words. */
  readonly means: string;
  readonly from: Vec3;
  readonly to: Vec3;
  /** N: pull positive, push negative. */
  readonly tension: number;
}

export interface StudDrawn {
  readonly name: string;
  readonly at: Vec3;
  /** Left on its pad at the low end of the preload, and as a share of what pressed it, N and 1. */
  readonly left: number;
  readonly share: number;
  readonly worst: boolean;
}

export interface ForcesDrawn {
  readonly members: readonly MemberDrawn[];
  readonly arrows: readonly BodyForce[];
  readonly studs: readonly StudDrawn[];
}

const NONE: ForcesDrawn = { members: [], arrows: [], studs: [] };

export function drawnForces(car: Car, stop: Stop, asked: FollowAsked): ForcesDrawn {
  if (noBody(car.form) !== undefined) return NONE;
  const { doing, joint } = asked;
  if (stop === 'case' || stop === 'tub') {
    const is = stop === 'case' ? caseForces(car, doing) : tubForces(car, doing);
    return is.reached ? { ...NONE, arrows: is.forces } : NONE;
  }
  if (stop === 'studs') {
    const is = jointOf(car, joint, doing, { spread: false });
    if (!is.reached) return NONE;
    const studs = is.face.studs.map(({ name, at, left, pressed }) => ({
      name,
      at,
      left,
      share: pressed === 0 ? 0 : left / pressed,
      worst: name === is.worst,
    }));
    return { ...NONE, studs };
  }
  try {
    return atCorner(car, stop, asked);
  } catch (reason) {
    if (isRefusal(reason)) return NONE;
    throw reason;
  }
}

const OUTER: Readonly<Record<MemberName, 'upperOuter' | 'lowerOuter' | 'toeOuter' | 'rodOuter'>> = {
  upperFront: 'upperOuter',
  upperRear: 'upperOuter',
  lowerFront: 'lowerOuter',
  lowerRear: 'lowerOuter',
  toeLink: 'toeOuter',
  rod: 'rodOuter',
};

const inner = (name: MemberName) => (name === 'toeLink' ? 'toeInner' : name === 'rod' ? 'rodInner' : name);

function atCorner(car: Car, stop: Stop, { doing, wheel }: FollowAsked): ForcesDrawn {
  const standing = standingAsFiled(car, doing);
  const name = wheelNamed(wheel);
  const { members, rocker, unit } = cornerLoads(standing, name);
  const { state, of } = standing.axles[endOf(name)][sideOf(name)];
  const { points, rockerPoints } = state;
  const member = (each: MemberName): MemberDrawn => ({
    name: each,
    means: MEMBER_WORDS[each],
    from: points[inner(each)],
    to: points[OUTER[each]],
    tension: members.tension[each],
  });
  const { at, force } = standing.wheels[name];
  const ground = bodyForce({ name: 'ground on the tyre', at, force });
  const [moving, fixed] = [rockerPoints.damper?.value, of.corner.geometry.elements.unit?.tub];
  const spring =
    moving === undefined || fixed === undefined
      ? []
      : [{ name: 'spring unit', means: 'spring unit', from: fixed, to: moving, tension: -unit }];
  switch (stop) {
    case 'tyre':
      return { ...NONE, arrows: [ground] };
    case 'upright': {
      const joints = [
        ['upper outer joint', members.onUpright.upper],
        ['lower outer joint', members.onUpright.lower],
        ['track rod or toe link', members.onUpright.toeLink],
      ] as const;
      return {
        ...NONE,
        arrows: [
          ground,
          ...joints.map(([words, on]) => bodyForce({ name: `${words}, on the upright`, ...on })),
        ],
      };
    }
    case 'links':
      return { ...NONE, members: MEMBERS.map(member) };
    case 'rocker':
      return {
        ...NONE,
        members: [member('rod'), ...spring],
        arrows: [bodyForce({ name: 'rocker pivot', at: points.rockerPivot, force: rocker.pivotForce })],
      };
    default:
      return { ...NONE, members: spring };
  }
}
