/**
 * One suspension corner as measured: double wishbones, track rod or toe link, pushrod or pullrod, rocker.
 *
 * In    surveyed points, metres
 * Out   the types that the corner's files build on, and the wheel's axis from camber and toe
 * Axes  ISO 8855, fixed to the tub: x forward, y left, z up; all at the surveyed position (travel 0, rack 0)
 * Not   bushes, flexible members, a wheel that steers about anything but the two outer joints
 */
import type { Vec3 } from '../../maths/vec3.ts';
import type { Metre, Radian } from '../../units/quantity.ts';

export type Side = 'left' | 'right';

/** The body that carries the outer end of the pushrod or pullrod. */
export type RodCarrier = 'lower wishbone' | 'upper wishbone' | 'upright';

/** A two-ended element between a named point of the rocker and a fixed point of the tub. */
export interface RockerElement {
  readonly rockerPoint: string;
  readonly tub: Vec3;
}

export interface CornerGeometry {
  readonly side: Side;
  readonly upperFront: Vec3;
  readonly upperRear: Vec3;
  readonly upperOuter: Vec3;
  readonly lowerFront: Vec3;
  readonly lowerRear: Vec3;
  readonly lowerOuter: Vec3;
  /** Track rod (front) or toe link (rear). */
  readonly toeInner: Vec3;
  readonly toeOuter: Vec3;
  /** Unit vector along which rack travel moves the inner end; absent: that end is fixed to the tub. */
  readonly rackDirection?: Vec3;
  /** Pushrod or pullrod; the inner end is on the rocker. */
  readonly rodOuter: Vec3;
  readonly rodInner: Vec3;
  readonly rodOn: RodCarrier;
  /** A point on the rocker's axis, and the unit direction of that axis (either way round). */
  readonly rockerPivot: Vec3;
  readonly rockerAxis: Vec3;
  readonly wheelCentre: Vec3;
  /** Unit vector along the wheel's axis, pointing outboard. */
  readonly wheelAxis: Vec3;
  readonly loadedRadius: Metre;
  /** Points carried by the rocker, by name. */
  readonly rockerPoints: Readonly<Record<string, Vec3>>;
  /** Elements between a rocker point and the tub, by name. */
  readonly elements: Readonly<Record<string, RockerElement>>;
}

/** +1 on the left, −1 on the right: the sign of outboard along y. */
export const outboard = (side: Side): 1 | -1 => (side === 'left' ? 1 : -1);

export interface WheelSetting {
  readonly side: Side;
  /** Negative: the top leans inboard. */
  readonly camber: Radian;
  /** Positive: the front edge points inboard. Per wheel. */
  readonly toe: Radian;
}

/** The wheel's axis, pointing outboard, from camber and toe (docs/theory/load-path.md, LP-1). */
export function wheelAxisFrom({ side, camber, toe }: WheelSetting): Vec3 {
  const level = Math.cos(camber);
  return [level * Math.sin(toe), outboard(side) * level * Math.cos(toe), -Math.sin(camber)];
}
