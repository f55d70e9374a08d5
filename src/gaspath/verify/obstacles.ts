/** Distances of a point to what stands about: triangles of the shell, and the three kinds of solid. */
import { add, cross, distance, dot, length, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem, Solid } from '../route/problem.ts';

/** Distance outside a solid; 0 within. */
export function outside(solid: Solid, x: Vec3): number {
  if (solid.kind === 'box') {
    const q = sub(x, solid.center);
    const [u, v, w] = solid.axes ?? [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
    ];
    return Math.hypot(
      Math.max(0, Math.abs(dot(q, u)) - solid.half[0]),
      Math.max(0, Math.abs(dot(q, v)) - solid.half[1]),
      Math.max(0, Math.abs(dot(q, w)) - solid.half[2]),
    );
  }
  if (solid.kind === 'capsule') return Math.max(0, toSegment(x, solid.a, solid.b) - solid.r);
  const span = sub(solid.b, solid.a);
  return outsideCylinder(x, solid.a, scale(span, 1 / length(span)), length(span), solid.r);
}

export function outsideCylinder(x: Vec3, a: Vec3, axis: Vec3, long: number, r: number): number {
  const q = sub(x, a);
  const t = dot(q, axis);
  const radial = length(cross(q, axis));
  return Math.hypot(Math.max(0, radial - r), Math.max(0, -t, t - long));
}

function toSegment(x: Vec3, a: Vec3, b: Vec3): number {
  const ab = sub(b, a);
  const size = dot(ab, ab);
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, dot(sub(x, a), ab) / size));
  return distance(x, add(a, scale(ab, t)));
}

function toTriangle(x: Vec3, a: Vec3, b: Vec3, c: Vec3): number {
  const normal = cross(sub(b, a), sub(c, a));
  const size = length(normal);
  if (size > 0) {
    // over the face when it lies on the inner side of all three edges
    const over =
      dot(cross(sub(b, a), sub(x, a)), normal) >= 0 &&
      dot(cross(sub(c, b), sub(x, b)), normal) >= 0 &&
      dot(cross(sub(a, c), sub(x, c)), normal) >= 0;
    if (over) return Math.abs(dot(sub(x, a), normal)) / size;
  }
  return Math.min(toSegment(x, a, b), toSegment(x, b, c), toSegment(x, c, a));
}

/** The triangles in cells of space, so that only those about a point are asked. */
export class Skin {
  private readonly cells = new Map<number, number[]>();
  private readonly shell: RouteProblem['shell'];
  private readonly low: Vec3;
  private readonly counts: readonly [number, number, number];
  private readonly cell: number;
  /** Low and high corner of each triangle's upright box. */
  private readonly boxes: Float64Array;

  /** Only triangles that reach into the box between `min` and `max` are kept. */
  constructor(shell: RouteProblem['shell'], min: Vec3, max: Vec3, cell: number) {
    this.shell = shell;
    this.low = min;
    this.cell = cell;
    this.counts = [0, 1, 2].map((c) => Math.max(1, Math.ceil((max[c]! - min[c]!) / cell))) as unknown as [
      number,
      number,
      number,
    ];
    const { vertices, triangles } = shell;
    this.boxes = new Float64Array(2 * triangles.length);
    for (let t = 0; t < triangles.length / 3; t++) {
      const from = [0, 0, 0];
      const to = [0, 0, 0];
      let within = true;
      for (let c = 0; c < 3; c++) {
        const a = vertices[3 * triangles[3 * t]! + c]!;
        const b = vertices[3 * triangles[3 * t + 1]! + c]!;
        const d = vertices[3 * triangles[3 * t + 2]! + c]!;
        this.boxes[6 * t + c] = Math.min(a, b, d);
        this.boxes[6 * t + 3 + c] = Math.max(a, b, d);
        from[c] = Math.floor((this.boxes[6 * t + c]! - min[c]!) / cell);
        to[c] = Math.floor((this.boxes[6 * t + 3 + c]! - min[c]!) / cell);
        if (to[c]! < 0 || from[c]! >= this.counts[c]!) within = false;
        from[c] = Math.max(0, from[c]!);
        to[c] = Math.min(this.counts[c]! - 1, to[c]!);
      }
      if (!within) continue;
      for (let i = from[0]!; i <= to[0]!; i++)
        for (let j = from[1]!; j <= to[1]!; j++)
          for (let k = from[2]!; k <= to[2]!; k++) {
            const key = this.key(i, j, k);
            const list = this.cells.get(key);
            if (list === undefined) this.cells.set(key, [t]);
            else list.push(t);
          }
    }
  }

  private key(i: number, j: number, k: number): number {
    return i + this.counts[0] * (j + this.counts[1] * k);
  }

  /** Distance to the nearest triangle, or `most` where none is nearer. */
  nearest(x: Vec3, most: number): number {
    const { cell, low, counts } = this;
    const at = [0, 1, 2].map((c) => Math.floor((x[c]! - low[c]!) / cell));
    let best = most;
    for (let ring = 0; (ring - 1) * cell < best; ring++) {
      for (let i = at[0]! - ring; i <= at[0]! + ring; i++) {
        if (i < 0 || i >= counts[0]) continue;
        for (let j = at[1]! - ring; j <= at[1]! + ring; j++) {
          if (j < 0 || j >= counts[1]) continue;
          const edge = Math.abs(i - at[0]!) === ring || Math.abs(j - at[1]!) === ring;
          const step = edge || ring === 0 ? 1 : 2 * ring;
          for (let k = at[2]! - ring; k <= at[2]! + ring; k += step) {
            if (k < 0 || k >= counts[2]) continue;
            for (const t of this.cells.get(this.key(i, j, k)) ?? []) {
              // no corner of it can be nearer than its upright box
              if (this.toBox(t, x) < best) best = Math.min(best, this.toOne(t, x));
            }
          }
        }
      }
    }
    return best;
  }

  private toBox(t: number, x: Vec3): number {
    const { boxes } = this;
    const dx = Math.max(0, boxes[6 * t]! - x[0], x[0] - boxes[6 * t + 3]!);
    const dy = Math.max(0, boxes[6 * t + 1]! - x[1], x[1] - boxes[6 * t + 4]!);
    const dz = Math.max(0, boxes[6 * t + 2]! - x[2], x[2] - boxes[6 * t + 5]!);
    return Math.sqrt(dx * dx + dy * dy + dz * dz);
  }

  private toOne(t: number, x: Vec3): number {
    const { vertices, triangles } = this.shell;
    const corner = (k: number): Vec3 => {
      const v = 3 * triangles[3 * t + k]!;
      return [vertices[v]!, vertices[v + 1]!, vertices[v + 2]!];
    };
    return toTriangle(x, corner(0), corner(1), corner(2));
  }
}
