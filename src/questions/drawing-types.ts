/**
 * The car as bodies in space, true to size, for whoever draws it: page, paper, export.
 * Metres, car axes (ISO 8855), fixed to the tub: wheels move, the tub stands.
 */
import type { Vec3 } from '../maths/vec3.ts';
import type { Stop, Wheel } from './figure.ts';

export interface DrawnMember {
  /** Unique in the drawing: `front.left.pushrod`. */
  readonly id: string;
  /** In the trade's words: `pushrod`. */
  readonly name: string;
  readonly kind:
    | 'wishbone leg'
    | 'rod'
    | 'toe link'
    | 'drop link'
    | 'damper body'
    | 'damper shaft'
    | 'bar arm'
    | 'upright';
  readonly stop: Stop;
  readonly from: Vec3;
  readonly to: Vec3;
  /** Diameter to draw it with. */
  readonly diameter: number;
}

export interface DrawnWheel {
  readonly centre: Vec3;
  /** Unit vector, outboard. */
  readonly axis: Vec3;
  readonly contact: Vec3;
  readonly loadedRadius: number;
  readonly tyreWidth: number;
  readonly rimDiameter: number;
}

export interface DrawnRocker {
  readonly pivot: Vec3;
  /** Unit vector. */
  readonly axis: Vec3;
  /** Joints carried by the rocker, in the order round it. */
  readonly joints: readonly Vec3[];
  /** Rotation from the surveyed position, bump positive, rad. */
  readonly angle: number;
}

export interface DrawnCoil {
  readonly from: Vec3;
  readonly to: Vec3;
  readonly meanDiameter: number;
  readonly wireDiameter: number;
  readonly coils: number;
}

export interface DrawnBar {
  /** The rocker end first. */
  readonly from: Vec3;
  readonly to: Vec3;
  readonly diameter: number;
  /** Twist of the rocker end against the anchor, rad. */
  readonly twist: number;
  readonly headDiameter: number;
}

export interface DrawnCorner {
  readonly wheel: Wheel;
  /** Every named point where it is now: `upperOuter`, `contact`, `wheelCentre`, `rockerPivot` … */
  readonly points: Readonly<Record<string, Vec3>>;
  readonly tyre: DrawnWheel;
  readonly rocker: DrawnRocker;
  readonly members: readonly DrawnMember[];
  readonly coil?: DrawnCoil;
  readonly bar?: DrawnBar;
  /** True where the asked travel could not be reached and the nearest that could is drawn. */
  readonly held: boolean;
}

export interface Drawing {
  readonly corners: readonly DrawnCorner[];
  /** Anti-roll bars: polylines with a diameter. */
  readonly antiRollBars: readonly {
    readonly end: 'front' | 'rear';
    readonly line: readonly Vec3[];
    readonly diameter: number;
  }[];
  /** Sections of tub and case, spanned by the inner joints: closed loops across the car, front to back. */
  readonly sections: readonly (readonly Vec3[])[];
  /** Height of the ground in these axes. */
  readonly ground: number;
}
