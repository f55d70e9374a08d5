/**
 * What a scan is like: holes, faces turned over, pieces, size. Nothing is mended: a clearance is taken to the surface
 * from either side, so a turned face does no harm, but through a hole nothing is seen, and that is told.
 *
 * In    a welded surface
 * Out   counts, and the widest hole by the length of its rim
 */
import { type Box, boxOf, type Mesh } from './mesh.ts';

export interface Hole {
  /** Length round its rim, in the unit of the surface. */
  readonly rim: number;
  /** Middle of its rim. */
  readonly at: readonly [number, number, number];
}

export interface LookedOver {
  readonly corners: number;
  readonly triangles: number;
  readonly box: Box;
  readonly area: number;
  /** Edges where two triangles meet that face opposite ways. */
  readonly turned: number;
  /** Edges where more than two triangles meet. */
  readonly crowded: number;
  /** Triangles of no area to speak of. */
  readonly slivers: number;
  /** Closed runs of edges with one triangle, longest rim first. The outer rim of an open shell is one of them. */
  readonly holes: readonly Hole[];
}

/** Area below this share of the square of its longest edge. */
const SLIVER = 1e-9;

/** @throws when the surface has no triangle */
export function lookOver(mesh: Mesh): LookedOver {
  const { corners, triangles } = mesh;
  const box = boxOf(mesh);
  if (box === undefined) throw new Error('a surface without triangles cannot be looked over');
  const edges = edgesOf(mesh);
  const { turned, crowded, open } = meetings(edges, triangles);
  let area = 0;
  let slivers = 0;
  for (let n = 0; n < triangles.length; n += 3) {
    const { size, longest } = areaOf(corners, triangles, n);
    area += size;
    if (size < SLIVER * longest) slivers += 1;
  }
  return {
    corners: corners.length / 3,
    triangles: triangles.length / 3,
    box,
    area,
    turned,
    crowded,
    slivers,
    holes: rims(open, corners),
  };
}

/** Every side of every triangle as a number of its own, sorted so that those between the same corners lie together. */
function edgesOf({ corners, triangles }: Mesh): Float64Array {
  const count = corners.length / 3;
  // low corner, high corner and which side it is, in one number: exact up to 2^53
  const keys = new Float64Array(triangles.length);
  for (let n = 0; n < triangles.length; n += 1) {
    const a = triangles[n]!;
    const b = triangles[n % 3 === 2 ? n - 2 : n + 1]!;
    keys[n] = (Math.min(a, b) * count + Math.max(a, b)) * 2 + (a < b ? 0 : 1);
  }
  return keys.sort();
}

interface Meetings {
  readonly turned: number;
  readonly crowded: number;
  /** Sides with one triangle: from corner, to corner. */
  readonly open: readonly (readonly [number, number])[];
}

function meetings(keys: Float64Array, triangles: Uint32Array): Meetings {
  // a loop, as spreading millions of numbers into a call overflows
  let count = 0;
  for (const corner of triangles) count = Math.max(count, corner + 1);
  let turned = 0;
  let crowded = 0;
  const open: [number, number][] = [];
  for (let n = 0; n < keys.length; ) {
    const edge = Math.floor(keys[n]! / 2);
    let m = n;
    let forward = 0;
    for (; m < keys.length && Math.floor(keys[m]! / 2) === edge; m += 1)
      forward += keys[m]! % 2 === 0 ? 1 : 0;
    const here = m - n;
    if (here === 1) open.push(ends(edge, forward === 1));
    else if (here > 2) crowded += 1;
    else if (forward !== 1) turned += 1;
    n = m;
  }
  return { turned, crowded, open };

  function ends(edge: number, along: boolean): [number, number] {
    const low = Math.floor(edge / count);
    const high = edge - low * count;
    return along ? [low, high] : [high, low];
  }
}

function areaOf(
  corners: Float64Array,
  triangles: Uint32Array,
  n: number,
): { readonly size: number; readonly longest: number } {
  const at = (k: number, axis: number): number => corners[3 * triangles[n + k]! + axis]!;
  const side = (from: number, to: number) => [0, 1, 2].map((axis) => at(to, axis) - at(from, axis));
  const [u, v, w] = [side(0, 1), side(0, 2), side(1, 2)] as [number[], number[], number[]];
  const square = (a: number[]): number => a[0]! * a[0]! + a[1]! * a[1]! + a[2]! * a[2]!;
  const cross = [u[1]! * v[2]! - u[2]! * v[1]!, u[2]! * v[0]! - u[0]! * v[2]!, u[0]! * v[1]! - u[1]! * v[0]!];
  return { size: Math.sqrt(square(cross)) / 2, longest: Math.max(square(u), square(v), square(w)) };
}

/** Open sides joined end to end into rims. */
function rims(open: readonly (readonly [number, number])[], corners: Float64Array): Hole[] {
  const from = new Map<number, number[]>();
  open.forEach(([a], k) => {
    from.set(a, [...(from.get(a) ?? []), k]);
  });
  const used = new Uint8Array(open.length);
  const holes: Hole[] = [];
  for (let first = 0; first < open.length; first += 1) {
    if (used[first] === 1) continue;
    const run: number[] = [];
    for (let k: number | undefined = first; k !== undefined && used[k] === 0; ) {
      used[k] = 1;
      run.push(k);
      k = from.get(open[k]![1])?.find((next) => used[next] === 0);
    }
    holes.push(
      rimOf(
        run.map((k) => open[k]!),
        corners,
      ),
    );
  }
  return holes.sort((a, b) => b.rim - a.rim);
}

function rimOf(sides: readonly (readonly [number, number])[], corners: Float64Array): Hole {
  const place = (corner: number, axis: number): number => corners[3 * corner + axis]!;
  let rim = 0;
  const sum: [number, number, number] = [0, 0, 0];
  for (const [a, b] of sides) {
    const d = [0, 1, 2].map((axis) => place(b, axis) - place(a, axis));
    const size = Math.hypot(...d);
    rim += size;
    // weighed by length, so that a finely cut part of the rim does not draw the middle to it
    for (const axis of [0, 1, 2] as const) sum[axis] += (size * (place(a, axis) + place(b, axis))) / 2;
  }
  return { rim, at: rim === 0 ? [0, 0, 0] : [sum[0] / rim, sum[1] / rim, sum[2] / rim] };
}
