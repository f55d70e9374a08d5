/**
 * A corner at one travel and rack travel: what `solveCorner` returns. Plain data, tub axes, SI.
 */
import type { Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import type { Side } from './geometry.ts';

/** A quantity with its derivatives by wheel travel at held rack, and by rack travel at held wheel travel. */
export interface Along {
  readonly value: number;
  readonly perTravel: number;
  readonly perTravel2: number;
  readonly perRack: number;
}

/** A place or direction with the same derivatives. */
export interface VecAlong {
  readonly value: Vec3;
  readonly perTravel: Vec3;
  readonly perTravel2: Vec3;
  readonly perRack: Vec3;
}

export type CornerPoint =
  | 'upperFront'
  | 'upperRear'
  | 'upperOuter'
  | 'lowerFront'
  | 'lowerRear'
  | 'lowerOuter'
  | 'toeInner'
  | 'toeOuter'
  | 'rodOuter'
  | 'rodInner'
  | 'rockerPivot'
  | 'wheelCentre'
  | 'contact';

/** Points that move, with their derivatives. 'contact' is the path of the lowest point of the wheel. */
export type MovingPoint = Exclude<
  CornerPoint,
  'upperFront' | 'upperRear' | 'lowerFront' | 'lowerRear' | 'rockerPivot'
>;

/** The corner at one travel and rack travel: plain data, tub axes, SI. */
export interface CornerState {
  readonly side: Side;
  readonly travel: Metre;
  readonly rack: Metre;
  /** Angles from the surveyed position, positive in bump, rad. */
  readonly lowerAngle: Along;
  readonly upperAngle: Along;
  readonly rockerAngle: Along;
  /** Unit directions of the hinges about which those angles are positive. */
  readonly lowerAxis: Vec3;
  readonly upperAxis: Vec3;
  readonly rockerAxis: Vec3;
  /** Lengths of the rocker's elements, by name, m. */
  readonly elements: Readonly<Record<string, Along>>;
  readonly points: Readonly<Record<CornerPoint, Vec3>>;
  readonly moving: Readonly<Record<MovingPoint, VecAlong>>;
  readonly rockerPoints: Readonly<Record<string, VecAlong>>;
  /** Unit, outboard. */
  readonly wheelAxis: VecAlong;
  /** Unit, from the wheel centre to the contact point. */
  readonly down: Vec3;
  /** Rotation of the upright per metre of travel, and its change; per metre of rack at held travel. */
  readonly uprightTurn: { readonly perTravel: Vec3; readonly perTravel2: Vec3; readonly perRack: Vec3 };
  /** Velocities of the contact point per metre of travel, for the ways in which a wheel can be held. */
  readonly contactVelocity: {
    /** The hub locked to the upright: outboard brakes. */
    readonly locked: Vec3;
    /** As the wheel centre moves: inboard brakes and drive through shafts. */
    readonly inboard: Vec3;
    /** The lowest point's own path. */
    readonly path: Vec3;
  };
  readonly loadedRadius: Metre;
}
