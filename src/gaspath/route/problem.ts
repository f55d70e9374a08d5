/**
 * A packing of equal primaries as it is asked for, and as it is answered.
 *
 * Lengths are millimetres and angles degrees throughout `route` and `verify`: the exchange form is in them, and
 * so is every tolerance that decides here. Axes are those of the problem: right-handed, x rearwards, y outboard,
 * z up; nothing here depends on which way they point.
 */
import type { Vec3 } from '../../maths/vec3.ts';

export interface Port {
  /** Flange point, on the centre line. */
  readonly p: Vec3;
  /** Outward unit direction. */
  readonly d: Vec3;
}

export interface Pose {
  readonly origin: Vec3;
  /** Direction of the flow into the collector. */
  readonly axis: Vec3;
  /** Unit, square to the axis; inlet 0 lies along it. */
  readonly ref: Vec3;
}

export interface Inlets {
  readonly n: number;
  /** Of the circle on which they stand; in rows, of the least circle round their middles. */
  readonly ringRadius: number;
  /** So many in each row, each so far from its neighbours along the row and across. */
  readonly rows?: { readonly counts: readonly number[]; readonly pitch: number };
}

export interface FixedCollector extends Pose, Inlets {
  readonly mode: 'fixed';
}

export interface FreeCollector extends Inlets {
  readonly mode: 'free';
  readonly boxMin: Vec3;
  readonly boxMax: Vec3;
  /** Middle of the cone in which the axis may lie. */
  readonly axis: Vec3;
  readonly coneDeg: number;
}

export type Order =
  | { readonly mode: 'free' }
  | {
      readonly mode: 'rotation';
      readonly firing: readonly number[];
      readonly sense: 'either' | '+' | '-';
      /** Inlets that may be passed over in one round of the firing order, all told; none where left out. */
      readonly passed?: number;
    };

export interface Box {
  readonly kind: 'box';
  readonly name?: string;
  readonly center: Vec3;
  readonly half: Vec3;
  /** Unit rows: the box's own axes. */
  readonly axes?: readonly [Vec3, Vec3, Vec3];
  readonly flangeExempt?: boolean;
  /** Least gap of a pipe to it, mm; left out, `clearance.solid`. */
  readonly gap?: number;
}

export interface Round {
  readonly kind: 'capsule' | 'cylinder';
  readonly name?: string;
  readonly a: Vec3;
  readonly b: Vec3;
  readonly r: number;
  readonly flangeExempt?: boolean;
  /** As of a box. */
  readonly gap?: number;
  /** Port whose pipe leaves from it, and need not be clear of it before the end of `clearance.flangeZone`. */
  readonly leaves?: number;
  /** Least gap of the collector's body to it, mm; where it is left out the body is not held off it. */
  readonly bodyGap?: number;
}

export type Solid = Box | Round;

export interface Clearance {
  readonly shell: number;
  readonly solid: number;
  readonly pipe: number;
  readonly self: number;
  readonly collectorZone: number;
  readonly pipeInZone: number;
  readonly flangeZone: number;
}

export interface Limits {
  readonly maxBends: number;
  readonly minStraightFlange: number;
  readonly minStraightCollector: number;
  readonly minStraightBetween: number;
  readonly maxBendDeg: number;
}

export const STEP_JOINS = ['slipped over', 'swaged', 'reducer'] as const;

/** A tube of another size from here on. */
export interface RouteStep {
  /** Where the tube before it ends, from the flange along the centre line; a swaged end or a reducer begins there. */
  readonly from: number;
  /** How far off that it may stand, either way. */
  readonly within: number;
  readonly od: number;
  readonly wall: number;
  readonly join: {
    /**
     * `slipped over`: the larger tube's end lies over the smaller's for `length`, before `from`; `swaged`: the smaller
     * is opened over `length` behind it and welded square; `reducer`: a cone of `length` between two welds.
     */
    readonly kind: (typeof STEP_JOINS)[number];
    readonly length: number;
  };
  /** Centre-line radii that this size is had in; left out, those of the problem. */
  readonly radii?: readonly number[];
}

export interface RouteProblem {
  readonly id?: string;
  readonly tube: {
    readonly od: number;
    readonly wall: number;
    readonly densityKgM3: number;
    readonly steps?: readonly RouteStep[];
  };
  readonly radii: readonly number[];
  readonly limits: Limits;
  readonly length: { readonly target: number; readonly tol: number };
  readonly ports: readonly Port[];
  readonly collector: FixedCollector | FreeCollector;
  readonly collectorBody: { readonly length: number; readonly radiusAdd: number };
  readonly order: Order;
  /** Corner points x, y, z one after another; three places in it a triangle. */
  readonly shell: { readonly vertices: Float64Array; readonly triangles: Uint32Array };
  readonly solids: readonly Solid[];
  readonly clearance: Clearance;
  readonly bounds: { readonly min: Vec3; readonly max: Vec3 };
}

export type Element =
  | { readonly kind: 'straight'; readonly length: number }
  | { readonly kind: 'bend'; readonly radius: number; readonly angleDeg: number; readonly normal: Vec3 };

export interface RoutedPipe {
  readonly port: number;
  readonly inlet: number;
  readonly start: Port;
  readonly elements: readonly Element[];
  /** Where each step of the tube came, from the flange along the centre line. */
  readonly stepsAt?: readonly number[];
}

export interface RouteSolution {
  readonly collector: Pose;
  readonly pipes: readonly RoutedPipe[];
}

/** The shell does not count on the first millimetres of a pipe, where it is cut out for the flange. */
export const SHELL_EXEMPT = 3;
/** Points of one pipe nearer along it than this many diameters are not held apart. */
export const SELF_SEPARATION = 2.5;
