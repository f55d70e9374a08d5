/**
 * A surface as a scanner gives it: corners and triangles, nothing known of their order.
 *
 * Lengths are in whatever unit the surface stands in at that moment; a function that needs metres says so.
 */
export interface Mesh {
  /** x, y, z of every corner, one after another. */
  readonly corners: Float64Array;
  /** Three corner numbers a triangle. */
  readonly triangles: Uint32Array;
}

export const cornerCount = (mesh: Mesh): number => mesh.corners.length / 3;
export const triangleCount = (mesh: Mesh): number => mesh.triangles.length / 3;

export interface Box {
  readonly min: readonly [number, number, number];
  readonly max: readonly [number, number, number];
}

/** The upright box round all corners that belong to a triangle; undefined for an empty surface. */
export function boxOf({ corners, triangles }: Mesh): Box | undefined {
  if (triangles.length === 0) return undefined;
  const min: [number, number, number] = [Infinity, Infinity, Infinity];
  const max: [number, number, number] = [-Infinity, -Infinity, -Infinity];
  for (let n = 0; n < triangles.length; n += 1) {
    const at = 3 * triangles[n]!;
    for (let axis = 0; axis < 3; axis += 1) {
      const value = corners[at + axis]!;
      if (value < min[axis]!) min[axis] = value;
      if (value > max[axis]!) max[axis] = value;
    }
  }
  return { min, max };
}
