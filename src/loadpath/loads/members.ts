/**
 * What the members of one corner carry: six unknowns, six equations, at the position that the corner has taken.
 *
 * In    the solved corner, what the ground and the masses do to wheel and upright
 * Out   tension of the four legs, of track rod or toe link, of the rod; forces at the wishbones' joints
 * Axes  tub axes; tension positive
 * Not   friction of the joints, play, flexing members
 *
 * Upright and wheel are one body: three forces along each wishbone's plane and from its rod, one along the track
 * rod. With the rod on a wishbone that wishbone is a frame, rigid at its outer end, its legs pinned inside and stiff
 * along themselves: what the rod does off the outer joint bends the legs, shared as 3EI/L shares it.
 * LL-n are the equations of docs/theory/loads.md.
 */
import { Matrix, solve } from 'ml-matrix';
import { add, along, cross, distance, dot, scale, sub, triple, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Newton, NewtonMetre } from '../../units/quantity.ts';
import type { RodCarrier } from '../corner/geometry.ts';
import type { CornerState } from '../corner/state.ts';
import { type AppliedForce, resultantAt } from './wrench.ts';

export type MemberName = 'upperFront' | 'upperRear' | 'lowerFront' | 'lowerRear' | 'toeLink' | 'rod';

export const MEMBERS: readonly MemberName[] = [
  'upperFront',
  'upperRear',
  'lowerFront',
  'lowerRear',
  'toeLink',
  'rod',
];

/** Forces that the members put on tub or case, at their inner joints. */
export interface JointForce {
  readonly at: Vec3;
  readonly force: Vec3;
}

export interface MemberForces {
  /** Along each member; a bent leg's is the part along it. */
  readonly tension: Readonly<Record<MemberName, Newton>>;
  /** On the tub at the inner joints of the wishbones and of the track rod; on the rocker by the rod. */
  readonly onTub: Readonly<Record<Exclude<MemberName, 'rod'>, JointForce>>;
  readonly onRocker: JointForce;
  /** On the upright at its outer joints. */
  readonly onUpright: Readonly<Record<'upper' | 'lower' | 'toeLink', JointForce>>;
  /** Greatest bending in a leg of the wishbone that carries the rod; nothing where the rod is on the upright. */
  readonly bending: NewtonMetre;
  /** What is left of the equilibrium, N, as a share of the largest force. */
  readonly residual: number;
  /** The six equations and their own answer, before the wishbone that carries the rod is parted into its legs. */
  readonly equations: {
    readonly columns: readonly (readonly number[])[];
    readonly load: readonly number[];
  };
  readonly solved: Readonly<Record<MemberName, Newton>>;
}

interface Wishbone {
  readonly inner: readonly [Vec3, Vec3];
  readonly outer: Vec3;
  /** Unit: along the hinge, from the first inner joint to the second; square to the plane. */
  readonly hinge: Vec3;
  readonly normal: Vec3;
}

function wishbone(front: Vec3, rear: Vec3, outer: Vec3): Wishbone {
  const hinge = unit(sub(rear, front));
  return { inner: [front, rear], outer, hinge, normal: unit(cross(hinge, sub(outer, front))) };
}

const LEGS = { upper: ['upperFront', 'upperRear'], lower: ['lowerFront', 'lowerRear'] } as const;

/** Forces on upright and wheel from outside, as one body. @throws Error where the six members cannot hold it */
export function memberForces(
  state: CornerState,
  rodOn: RodCarrier,
  outside: readonly AppliedForce[],
): MemberForces {
  const p = state.points;
  const bones = {
    upper: wishbone(p.upperFront, p.upperRear, p.upperOuter),
    lower: wishbone(p.lowerFront, p.lowerRear, p.lowerOuter),
  };
  const rodWay = unit(sub(p.rodInner, p.rodOuter));
  const carrier = rodOn === 'upright' ? undefined : rodOn === 'upper wishbone' ? 'upper' : 'lower';
  const rod = rodOnUpright(p.rodOuter, rodWay, carrier === undefined ? undefined : bones[carrier]);
  const leg = (bone: Wishbone, k: 0 | 1): AppliedForce => ({
    at: bone.outer,
    force: unit(sub(bone.inner[k], bone.outer)),
  });
  const units: readonly AppliedForce[] = [
    leg(bones.upper, 0),
    leg(bones.upper, 1),
    leg(bones.lower, 0),
    leg(bones.lower, 1),
    { at: p.toeOuter, force: unit(sub(p.toeInner, p.toeOuter)) },
    rod,
  ];
  // moments about the wheel centre in units of the kingpin's length, so that both halves weigh alike
  const about = p.wheelCentre;
  const size = distance(p.upperOuter, p.lowerOuter);
  const six = (forces: readonly AppliedForce[]): number[] => {
    const { force, moment } = resultantAt(about, forces);
    return [...force, ...scale(moment, 1 / size)];
  };
  const columns = new Matrix(units.map((each) => six([each]))).transpose();
  const load = six(outside);
  const found = solve(columns, Matrix.columnVector(load.map((each) => -each))).to1DArray();
  const T = Object.fromEntries(MEMBERS.map((name, k) => [name, found[k]!])) as Record<MemberName, number>;
  const held = (k: 0 | 1 | 2 | 3 | 4 | 5): Vec3 => scale(units[k]!.force, found[k]!);
  const onUpright = {
    upper: { at: p.upperOuter, force: add(add(held(0), held(1)), carrier === 'upper' ? held(5) : [0, 0, 0]) },
    lower: { at: p.lowerOuter, force: add(add(held(2), held(3)), carrier === 'lower' ? held(5) : [0, 0, 0]) },
    toeLink: { at: p.toeOuter, force: held(4) },
  } as const;
  const rodPull = { at: p.rodOuter, force: scale(rodWay, T.rod) };
  const tension = { ...T };
  const onTub: Record<string, JointForce> = {
    toeLink: { at: p.toeInner, force: scale(onUpright.toeLink.force, -1) },
  };
  let bending = 0;
  for (const side of ['upper', 'lower'] as const) {
    const bone = bones[side];
    const frame = frameForces(bone, onUpright[side].force, side === carrier ? rodPull : undefined);
    LEGS[side].forEach((name, k) => {
      tension[name] = frame.tension[k]!;
      onTub[name] = { at: bone.inner[k]!, force: frame.onTub[k]! };
    });
    bending = Math.max(bending, frame.bending);
  }
  const left = columns.mmul(Matrix.columnVector(found)).to1DArray();
  const largest = Math.max(...found.map(Math.abs), ...load.map(Math.abs), Number.MIN_VALUE);
  return {
    tension,
    onTub: onTub as MemberForces['onTub'],
    onRocker: { at: p.rodInner, force: scale(rodWay, -T.rod) },
    onUpright,
    bending,
    residual: Math.max(...left.map((each, k) => Math.abs(each + load[k]!))) / largest,
    equations: { columns: columns.to2DArray(), load },
    solved: T,
  };
}

/**
 * What one newton of rod tension does to the upright. On the upright itself it pulls there; on a wishbone it comes
 * through the outer joint, square to the wishbone's plane, by the ratio of the moments about the hinge.  [LL-12]
 */
function rodOnUpright(at: Vec3, way: Vec3, carrier: Wishbone | undefined): AppliedForce {
  if (carrier === undefined) return { at, force: way };
  const { hinge, inner, outer, normal } = carrier;
  const ratio = triple(hinge, sub(at, inner[0]), way) / triple(hinge, sub(outer, inner[0]), normal);
  return { at: outer, force: scale(normal, ratio) };
}

/** Joint forces of a wishbone under what the upright and perhaps the rod do to it.  [LL-13 to LL-15] */
function frameForces(
  bone: Wishbone,
  onUpright: Vec3,
  rod: AppliedForce | undefined,
): {
  readonly tension: readonly [Newton, Newton];
  readonly onTub: readonly [Vec3, Vec3];
  readonly bending: NewtonMetre;
} {
  const { inner, outer, hinge, normal } = bone;
  const loads: readonly AppliedForce[] = [
    { at: outer, force: scale(onUpright, -1) },
    ...(rod === undefined ? [] : [rod]),
  ];
  const legs = inner.map((each) => ({ way: unit(sub(each, outer)), long: distance(each, outer) }));
  // out of the plane: two simple reactions, by moments about the in-plane line square to the hinge
  const { force: sum } = resultantAt(outer, loads);
  const span = distance(inner[0], inner[1]);
  const second = inPlaneTurn(loads, inner[0], cross(normal, hinge)) / span;
  const outOf = [-dot(sum, normal) - second, second] as const;
  // in the plane: what turns about the outer joint bends the legs, each by its 3EI/L
  const turning = rod === undefined ? 0 : triple(normal, sub(rod.at, outer), rod.force);
  const give = 1 / legs[0]!.long + 1 / legs[1]!.long;
  const shear = legs.map(({ long }) => -turning / (long * long * give));
  const across = legs.map(({ way }) => cross(normal, way));
  const rest = add(sum, add(scale(across[0]!, shear[0]!), scale(across[1]!, shear[1]!)));
  const [u, v] = [legs[0]!.way, legs[1]!.way];
  const whole = triple(normal, u, v);
  const tension = [triple(normal, v, rest) / whole, triple(normal, rest, u) / whole] as const;
  const onTub = legs.map(({ way }, k) =>
    // what the tub does to the wishbone, turned round
    scale(along(add(scale(way, tension[k]!), scale(across[k]!, shear[k]!)), normal, outOf[k]!), -1),
  ) as [Vec3, Vec3];
  const bending = Math.max(
    ...legs.map(({ long }, k) => long * Math.hypot(shear[k]!, rod === undefined ? 0 : outOf[k]!)),
  );
  return { tension, onTub, bending };
}

/** Moment of forces about a line through a point. */
const inPlaneTurn = (loads: readonly AppliedForce[], through: Vec3, way: Vec3): number =>
  dot(resultantAt(through, loads).moment, way);
