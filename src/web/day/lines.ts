/** Lines on a common axis: points of each its own, straight between them, nothing beyond their ends. */

/** @param points  rising in their first co-ordinate */
export function along(
  points: readonly (readonly [x: number, y: number])[],
  across: readonly number[],
): (number | null)[] {
  return across.map((x) => {
    const k = points.findIndex(([at]) => at >= x);
    if (k < 0) return null;
    const [right, above] = points[k]!;
    if (right === x) return above;
    if (k === 0) return null;
    const [left, below] = points[k - 1]!;
    return below + ((above - below) * (x - left)) / (right - left);
  });
}

/** The places of all lines together, rising, each once. */
export const places = (...of: readonly (readonly number[])[]): number[] =>
  [...new Set(of.flat())].sort((a, b) => a - b);
