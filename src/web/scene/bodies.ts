/** Points that stand for the solid bodies of a drawing, for fitting, outlines and picking. */
import { add, along, cross, scale, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing, DrawnCorner, DrawnWheel } from '../../questions/drawing-types.ts';

/** Two unit vectors square to the axis and to one another. */
export function across(axis: Vec3): readonly [Vec3, Vec3] {
  const helper: Vec3 = Math.abs(axis[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0];
  const first = unit(cross(helper, axis));
  return [first, cross(axis, first)];
}

/** Radius of the tyre, unloaded: a loaded radius is measured to the ground, so it is what is drawn. */
export const tyreRadius = (wheel: DrawnWheel): number => wheel.loadedRadius;

/**
 * Section of the tyre as pairs of (along the axis, radius), from the inner bead over the tread to the outer one.
 * The shoulder is rounded over a sixth of the width: drawn, not measured.
 */
export function tyreSection(wheel: DrawnWheel): readonly (readonly [number, number])[] {
  const half = wheel.tyreWidth / 2;
  const top = tyreRadius(wheel);
  const bead = Math.min(wheel.rimDiameter / 2, top * 0.82);
  const shoulder = wheel.tyreWidth / 6;
  const arc = [0, 0.25, 0.5, 0.75, 1].map((part) => (part * Math.PI) / 2);
  const corner = arc.map(
    (a) => [half - shoulder + shoulder * Math.cos(a), top - shoulder + shoulder * Math.sin(a)] as const,
  );
  const inner = corner.map(([x, r]) => [-x, r] as const);
  return [[-half * 0.92, bead], ...inner, ...corner.reverse(), [half * 0.92, bead]];
}

/** Spots on the skin of a tyre: all its widest circles. */
export function tyrePoints(wheel: DrawnWheel, count = 32): readonly Vec3[] {
  const [u, v] = across(wheel.axis);
  return tyreSection(wheel).flatMap(([x, r]) =>
    Array.from({ length: count }, (_, k) => {
      const angle = (2 * Math.PI * k) / count;
      return add(
        along(wheel.centre, wheel.axis, x),
        add(scale(u, r * Math.cos(angle)), scale(v, r * Math.sin(angle))),
      );
    }),
  );
}

/** Every point of a corner that must be on the paper. */
export const cornerExtent = (corner: DrawnCorner): readonly Vec3[] => [
  ...tyrePoints(corner.tyre, 16),
  ...Object.values(corner.points),
  ...corner.members.flatMap((member) => [member.from, member.to]),
  ...(corner.bar === undefined ? [] : [corner.bar.from, corner.bar.to]),
  ...(corner.coil === undefined ? [] : [corner.coil.from, corner.coil.to]),
];

/** Every point of one end, or of the whole car. */
export const extent = (drawing: Drawing, end?: 'front' | 'rear'): readonly Vec3[] =>
  drawing.corners.filter((corner) => end === undefined || corner.wheel.end === end).flatMap(cornerExtent);
