/**
 * A corner of the car file as the linkage solver takes it.
 *
 * In    the corner and its axle from the car file, and the numbers to use
 * Out   a `CornerGeometry`, metres, car axes, at the surveyed position
 */
import type { CarForm } from '../car/read.ts';
import { sub, unit, type Vec3 } from '../maths/vec3.ts';
import { type CornerGeometry, wheelAxisFrom } from './corner/geometry.ts';
import type { Numbers } from './numbers.ts';

export type AxleForm = CarForm['front'];
export type CornerForm = AxleForm['left'];
export type SideName = 'left' | 'right';

/** Name of the element between the eyes of damper or spring unit, in the corner's results. */
export const UNIT = 'unit';

/** The rack moves along the line through its two ends, positive to the left. */
export function rackDirection(axle: AxleForm, numbers: Numbers): Vec3 {
  return unit(sub(numbers.point(axle.left.points.toeInner), numbers.point(axle.right.points.toeInner)));
}

export function cornerGeometry(axle: AxleForm, side: SideName, numbers: Numbers): CornerGeometry {
  const corner = axle[side];
  const { points } = corner;
  const at = (name: keyof CornerForm['points']): Vec3 => numbers.point(points[name]!);
  const rockerPoints: Record<string, Vec3> = {};
  if (points.damperRocker !== undefined) rockerPoints.damper = at('damperRocker');
  if (points.dropLinkRocker !== undefined) rockerPoints.dropLink = at('dropLinkRocker');
  if (points.heaveRocker !== undefined) rockerPoints.heave = at('heaveRocker');
  const hasUnit = points.damperRocker !== undefined && points.damperTub !== undefined;
  return {
    side,
    upperFront: at('upperFront'),
    upperRear: at('upperRear'),
    upperOuter: at('upperOuter'),
    lowerFront: at('lowerFront'),
    lowerRear: at('lowerRear'),
    lowerOuter: at('lowerOuter'),
    toeInner: at('toeInner'),
    toeOuter: at('toeOuter'),
    ...(axle.steering === undefined ? {} : { rackDirection: rackDirection(axle, numbers) }),
    rodOuter: at('rodOuter'),
    rodInner: at('rodInner'),
    rodOn: corner.rod.on,
    rockerPivot: at('rockerPivot'),
    rockerAxis: unit(sub(at('rockerAxis'), at('rockerPivot'))),
    wheelCentre: at('wheelCentre'),
    wheelAxis: wheelAxisFrom({
      side,
      camber: numbers.of(corner.wheel.camber),
      toe: numbers.of(corner.wheel.toe),
    }),
    loadedRadius: numbers.of(corner.wheel.loadedRadius),
    rockerPoints,
    elements: hasUnit ? { [UNIT]: { rockerPoint: 'damper', tub: at('damperTub') } } : {},
  };
}
