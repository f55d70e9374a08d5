/**
 * Distance to the shell on a grid over the bounds, for the search; the exact distance comes from the triangles.
 *
 * A shell is a skin without inside. The side from which the ports can be reached by the thick pipe counts as
 * positive, what lies beyond the skin as negative, so that a pipe that pokes through is drawn back the way it
 * came. Where the skin is open and both sides can be reached, both are positive.
 *
 * A node takes the nearest triangle of its neighbours, outwards from the skin, nearest first. Between nodes the
 * distance is linear in each direction; with cells of 13 mm that is some tenths of a millimetre out near a skin.
 */
import type { RouteProblem } from './problem.ts';
import { closest, TriangleTree } from './triangles.ts';

const MOST_NODES = 150_000;
const LEAST_CELL = 8;
/** Triangles farther from the bounds than this cannot matter. */
const REACH = 120;

/** Outer diameter of the thinnest tube along a pipe, mm. */
const thinnest = ({ od, steps = [] }: RouteProblem['tube']): number =>
  Math.min(od, ...steps.map((step) => step.od));

export class ShellField {
  readonly tree: TriangleTree;
  readonly cell: number;
  private readonly low: readonly [number, number, number];
  private readonly size: readonly [number, number, number];
  private readonly values: Float32Array;
  /** Direction of growth of what was asked last. */
  readonly slope = new Float64Array(3);

  constructor(problem: RouteProblem) {
    const { min, max } = problem.bounds;
    const { vertices, triangles } = problem.shell;
    this.tree = new TriangleTree(vertices, triangles, near(vertices, triangles, min, max));
    const span = [max[0] - min[0], max[1] - min[1], max[2] - min[2]];
    this.cell = Math.max(LEAST_CELL, Math.cbrt((span[0]! * span[1]! * span[2]!) / MOST_NODES));
    const counts = span.map((each) => Math.max(2, Math.ceil(each / this.cell) + 1));
    this.size = [counts[0]!, counts[1]!, counts[2]!];
    this.low = [min[0], min[1], min[2]];
    this.values = new Float32Array(counts[0]! * counts[1]! * counts[2]!);
    if (this.tree.count === 0) this.values.fill(1e6);
    else this.fill(problem);
  }

  private fill(problem: RouteProblem): void {
    const { tree, values, cell, low } = this;
    const [nx, ny, nz] = this.size;
    const owner = new Int32Array(values.length).fill(-1);
    values.fill(Infinity);
    const box = new Float64Array(6);
    const from = [0, 0, 0];
    const to = [0, 0, 0];
    for (let t = 0; t < tree.count; t++) {
      tree.extentOf(t, box);
      for (let c = 0; c < 3; c++) {
        from[c] = Math.max(0, Math.ceil((box[c]! - low[c]!) / cell - 1));
        to[c] = Math.min(this.size[c]! - 1, Math.floor((box[3 + c]! - low[c]!) / cell + 1));
      }
      for (let k = from[2]!; k <= to[2]!; k++)
        for (let j = from[1]!; j <= to[1]!; j++)
          for (let i = from[0]!; i <= to[0]!; i++) {
            const at = i + nx * (j + ny * k);
            const d = Math.sqrt(tree.toOne(t, low[0] + i * cell, low[1] + j * cell, low[2] + k * cell));
            if (d < values[at]!) {
              values[at] = d;
              owner[at] = t;
            }
          }
    }
    // a skin wholly beside the grid seeds nothing: ask the tree at the grid's corner nodes
    if (owner.every((each) => each < 0))
      for (const i of [0, nx - 1])
        for (const j of [0, ny - 1])
          for (const k of [0, nz - 1]) {
            const d = tree.nearest(low[0] + i * cell, low[1] + j * cell, low[2] + k * cell, Infinity);
            values[i + nx * (j + ny * k)] = d;
            owner[i + nx * (j + ny * k)] = tree.found.triangle;
          }
    this.spread(owner);
    this.sign(problem, owner);
  }

  /** Outwards from the skin, by buckets of half a cell. */
  private spread(owner: Int32Array): void {
    const { tree, values, cell, low } = this;
    const [nx, ny, nz] = this.size;
    const buckets: number[][] = [];
    const put = (at: number): void => {
      const b = Math.floor((2 * values[at]!) / cell);
      let bucket = buckets[b];
      if (bucket === undefined) {
        bucket = [];
        buckets[b] = bucket;
      }
      bucket.push(at);
    };
    for (let at = 0; at < owner.length; at++) if (owner[at]! >= 0) put(at);
    const plane = nx * ny;
    for (let b = 0; b < buckets.length; b++) {
      const bucket = buckets[b];
      if (bucket === undefined) continue;
      for (let n = 0; n < bucket.length; n++) {
        const at = bucket[n]!;
        const t = owner[at]!;
        if (Math.floor((2 * values[at]!) / cell) < b) continue;
        const i = at % nx;
        const j = Math.floor(at / nx) % ny;
        const k = Math.floor(at / plane);
        for (let way = 0; way < 6; way++) {
          const ii = i + (way === 0 ? 1 : way === 1 ? -1 : 0);
          const jj = j + (way === 2 ? 1 : way === 3 ? -1 : 0);
          const kk = k + (way === 4 ? 1 : way === 5 ? -1 : 0);
          if (ii < 0 || jj < 0 || kk < 0 || ii >= nx || jj >= ny || kk >= nz) continue;
          const next = ii + nx * (jj + ny * kk);
          if (owner[next] === t || values[next]! <= values[at]! - cell) continue;
          const d = Math.sqrt(tree.toOne(t, low[0] + ii * cell, low[1] + jj * cell, low[2] + kk * cell));
          if (d < values[next]! - 1e-4) {
            values[next] = d;
            owner[next] = t;
            put(next);
          }
        }
      }
    }
  }

  private sign(problem: RouteProblem, owner: Int32Array): void {
    const { values, cell, low, tree } = this;
    const [nx, ny, nz] = this.size;
    const wall = Math.max(0.51 * cell, thinnest(problem.tube) / 2 + problem.clearance.shell - cell);
    const reached = new Uint8Array(values.length);
    const todo: number[] = [];
    const nodeAt = (x: number, y: number, z: number): number => {
      const i = Math.round((x - low[0]) / cell);
      const j = Math.round((y - low[1]) / cell);
      const k = Math.round((z - low[2]) / cell);
      return i < 0 || j < 0 || k < 0 || i >= nx || j >= ny || k >= nz ? -1 : i + nx * (j + ny * k);
    };
    for (const { p, d } of problem.ports)
      for (let t = 0; t < problem.limits.minStraightFlange + 4 * cell; t += cell / 2) {
        const at = nodeAt(p[0] + t * d[0], p[1] + t * d[1], p[2] + t * d[2]);
        if (at < 0 || reached[at] === 1 || values[at]! <= wall) continue;
        reached[at] = 1;
        todo.push(at);
        break;
      }
    if (todo.length === 0) return;
    const plane = nx * ny;
    while (todo.length > 0) {
      const at = todo.pop()!;
      const i = at % nx;
      const j = Math.floor(at / nx) % ny;
      const k = Math.floor(at / plane);
      for (let way = 0; way < 6; way++) {
        const ii = i + (way === 0 ? 1 : way === 1 ? -1 : 0);
        const jj = j + (way === 2 ? 1 : way === 3 ? -1 : 0);
        const kk = k + (way === 4 ? 1 : way === 5 ? -1 : 0);
        if (ii < 0 || jj < 0 || kk < 0 || ii >= nx || jj >= ny || kk >= nz) continue;
        const next = ii + nx * (jj + ny * kk);
        if (reached[next] === 1 || values[next]! <= wall) continue;
        reached[next] = 1;
        todo.push(next);
      }
    }
    for (let at = 0; at < values.length; at++) {
      if (reached[at] === 1) continue;
      const d = values[at]!;
      if (d > wall) {
        values[at] = -d;
        continue;
      }
      const x = low[0] + (at % nx) * cell;
      const y = low[1] + (Math.floor(at / nx) % ny) * cell;
      const z = low[2] + Math.floor(at / plane) * cell;
      tree.toOne(owner[at]!, x, y, z);
      if (d < 1e-6) continue;
      const step = (wall - d + 0.8 * cell) / d;
      const [qx, qy, qz] = closest;
      const beyond = nodeAt(x + step * (x - qx!), y + step * (y - qy!), z + step * (z - qz!));
      if (beyond >= 0 && reached[beyond] === 0) values[at] = -d;
    }
  }

  /** Distance at a point, by the grid; `slope` is then its gradient. Outside the grid that of the nearest place. */
  value(x: number, y: number, z: number): number {
    const { values, slope, cell, low, size } = this;
    const nx = size[0];
    const ny = size[1];
    let fx = (x - low[0]) / cell;
    let fy = (y - low[1]) / cell;
    let fz = (z - low[2]) / cell;
    fx = fx < 0 ? 0 : Math.min(fx, nx - 1.000001);
    fy = fy < 0 ? 0 : Math.min(fy, ny - 1.000001);
    fz = fz < 0 ? 0 : Math.min(fz, size[2] - 1.000001);
    const i = fx | 0;
    const j = fy | 0;
    const k = fz | 0;
    fx -= i;
    fy -= j;
    fz -= k;
    const o = i + nx * (j + ny * k);
    const up = o + nx * ny;
    const a = values[o]!;
    const b = values[o + 1]!;
    const c = values[o + nx]!;
    const d = values[o + nx + 1]!;
    const e = values[up]!;
    const f = values[up + 1]!;
    const g = values[up + nx]!;
    const h = values[up + nx + 1]!;
    const ab = a + fx * (b - a);
    const cd = c + fx * (d - c);
    const ef = e + fx * (f - e);
    const gh = g + fx * (h - g);
    const low2 = ab + fy * (cd - ab);
    const high2 = ef + fy * (gh - ef);
    slope[0] =
      ((1 - fz) * ((1 - fy) * (b - a) + fy * (d - c)) + fz * ((1 - fy) * (f - e) + fy * (h - g))) / cell;
    slope[1] = ((1 - fz) * (cd - ab) + fz * (gh - ef)) / cell;
    slope[2] = (high2 - low2) / cell;
    return low2 + fz * (high2 - low2);
  }

  /** Exact distance from the triangles where the grid says that it is below `matters`; `slope` as for `value`. */
  exact(x: number, y: number, z: number, matters: number): number {
    const rough = this.value(x, y, z);
    if (rough > matters + 0.6 * this.cell || this.tree.count === 0) return rough;
    const { tree, slope } = this;
    const most = Math.max(Math.abs(rough), matters) + 2 * this.cell;
    const d = tree.nearest(x, y, z, most);
    if (d === Infinity || d < 1e-9) return rough;
    const sign = rough < 0 ? -1 : 1;
    slope[0] = (sign * (x - tree.found.x)) / d;
    slope[1] = (sign * (y - tree.found.y)) / d;
    slope[2] = (sign * (z - tree.found.z)) / d;
    return sign * d;
  }
}

function near(
  vertices: Float64Array,
  triangles: Uint32Array,
  min: readonly number[],
  max: readonly number[],
): Uint32Array {
  const kept: number[] = [];
  for (let t = 0; t < triangles.length / 3; t++) {
    let inside = true;
    for (let c = 0; c < 3 && inside; c++) {
      const a = vertices[3 * triangles[3 * t]! + c]!;
      const b = vertices[3 * triangles[3 * t + 1]! + c]!;
      const d = vertices[3 * triangles[3 * t + 2]! + c]!;
      if (Math.max(a, b, d) < min[c]! - REACH || Math.min(a, b, d) > max[c]! + REACH) inside = false;
    }
    if (inside) kept.push(t);
  }
  return Uint32Array.from(kept);
}
