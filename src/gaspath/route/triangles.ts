/**
 * Nearest point of a triangle soup: a tree of boxes over the triangles.
 *
 * Bears holes, doubled and degenerate triangles (a needle counts as the line that it is).
 *
 * Source of the point-to-triangle regions: C. Ericson, Real-Time Collision Detection, Morgan Kaufmann 2005,
 * section 5.1.5 (from memory).
 */

const LEAF = 4;

/** Where the last nearest point lies. */
export interface Nearest {
  x: number;
  y: number;
  z: number;
  squared: number;
  triangle: number;
}

export class TriangleTree {
  private readonly corners: Float64Array;
  private readonly order: Uint32Array;
  private readonly boxes: Float64Array;
  /** Left child, or minus one minus the first triangle of a leaf. */
  private readonly links: Int32Array;
  private readonly counts: Int32Array;
  private readonly stack = new Int32Array(128);
  private used = 0;
  readonly count: number;
  readonly found: Nearest = { x: 0, y: 0, z: 0, squared: 0, triangle: -1 };

  /** `kept` names the triangles that matter here. */
  constructor(vertices: Float64Array, triangles: Uint32Array, kept: Uint32Array) {
    this.count = kept.length;
    this.order = new Uint32Array(kept.length);
    this.corners = new Float64Array(9 * kept.length);
    const centres = new Float64Array(3 * kept.length);
    for (let i = 0; i < kept.length; i++) {
      this.order[i] = i;
      for (let k = 0; k < 3; k++) {
        const v = 3 * triangles[3 * kept[i]! + k]!;
        for (let c = 0; c < 3; c++) {
          this.corners[9 * i + 3 * k + c] = vertices[v + c]!;
          centres[3 * i + c]! += vertices[v + c]! / 3;
        }
      }
    }
    const nodes = Math.max(1, 2 * Math.ceil(kept.length / 2) + 1);
    this.boxes = new Float64Array(6 * nodes);
    this.links = new Int32Array(nodes);
    this.counts = new Int32Array(nodes);
    this.used = 1;
    if (kept.length > 0) this.split(0, 0, kept.length, centres);
  }

  private split(node: number, from: number, to: number, centres: Float64Array): void {
    const { boxes, order, corners } = this;
    const box = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    const middle = [Infinity, Infinity, Infinity, -Infinity, -Infinity, -Infinity];
    for (let i = from; i < to; i++) {
      const t = order[i]!;
      for (let c = 0; c < 3; c++) {
        for (let k = 0; k < 3; k++) {
          const v = corners[9 * t + 3 * k + c]!;
          if (v < box[c]!) box[c] = v;
          if (v > box[3 + c]!) box[3 + c] = v;
        }
        const m = centres[3 * t + c]!;
        if (m < middle[c]!) middle[c] = m;
        if (m > middle[3 + c]!) middle[3 + c] = m;
      }
    }
    for (let c = 0; c < 6; c++) boxes[6 * node + c] = box[c]!;
    if (to - from <= LEAF) {
      this.links[node] = -1 - from;
      this.counts[node] = to - from;
      return;
    }
    let axis = 0;
    for (let c = 1; c < 3; c++) if (middle[3 + c]! - middle[c]! > middle[3 + axis]! - middle[axis]!) axis = c;
    const cut = (middle[axis]! + middle[3 + axis]!) / 2;
    let left = from;
    let right = to - 1;
    while (left <= right) {
      if (centres[3 * order[left]! + axis]! < cut) left++;
      else {
        const swap = order[left]!;
        order[left] = order[right]!;
        order[right--] = swap;
      }
    }
    // all in one place, or so uneven that the tree would grow deep
    const least = (to - from) >> 4;
    if (left - from <= least || to - left <= least) {
      const part = order.slice(from, to).sort((a, b) => centres[3 * a + axis]! - centres[3 * b + axis]!);
      order.set(part, from);
      left = (from + to) >> 1;
    }
    const child = this.used;
    this.used += 2;
    this.links[node] = child;
    this.split(child, from, left, centres);
    this.split(child + 1, left, to, centres);
  }

  private gap(node: number, x: number, y: number, z: number): number {
    const b = this.boxes;
    const o = 6 * node;
    const dx = Math.max(b[o]! - x, 0, x - b[o + 3]!);
    const dy = Math.max(b[o + 1]! - y, 0, y - b[o + 4]!);
    const dz = Math.max(b[o + 2]! - z, 0, z - b[o + 5]!);
    return dx * dx + dy * dy + dz * dz;
  }

  /** Distance to the nearest triangle, or Infinity where none is within `most`; `found` says where. */
  nearest(x: number, y: number, z: number, most: number): number {
    const { stack, links, found } = this;
    let best = most * most;
    found.triangle = -1;
    if (this.count === 0) return Infinity;
    let top = 0;
    stack[top++] = 0;
    while (top > 0) {
      const node = stack[--top]!;
      if (this.gap(node, x, y, z) >= best) continue;
      const link = links[node]!;
      if (link < 0) {
        const end = this.counts[node]! - 1 - link;
        for (let i = -1 - link; i < end; i++) {
          const t = this.order[i]!;
          const squared = toTriangle(this.corners, 9 * t, x, y, z, best);
          if (squared < best) {
            best = squared;
            found.triangle = t;
            found.x = closest[0]!;
            found.y = closest[1]!;
            found.z = closest[2]!;
          }
        }
        continue;
      }
      const one = this.gap(link, x, y, z);
      const two = this.gap(link + 1, x, y, z);
      // the nearer child last, so that it is looked at first
      if (one < two) {
        if (two < best) stack[top++] = link + 1;
        if (one < best) stack[top++] = link;
      } else {
        if (one < best) stack[top++] = link;
        if (two < best) stack[top++] = link + 1;
      }
    }
    found.squared = best;
    return found.triangle < 0 ? Infinity : Math.sqrt(best);
  }

  /** Squared distance to one triangle; `closest` then holds the point. */
  toOne(triangle: number, x: number, y: number, z: number): number {
    return toTriangle(this.corners, 9 * triangle, x, y, z, Infinity);
  }

  /** Least and largest coordinates of one triangle. */
  extentOf(triangle: number, out: Float64Array): void {
    const { corners } = this;
    const o = 9 * triangle;
    for (let c = 0; c < 3; c++) {
      out[c] = Math.min(corners[o + c]!, corners[o + 3 + c]!, corners[o + 6 + c]!);
      out[3 + c] = Math.max(corners[o + c]!, corners[o + 3 + c]!, corners[o + 6 + c]!);
    }
  }
}

/** The point that `toTriangle` found last. */
export const closest = new Float64Array(3);

function at(x: number, y: number, z: number, px: number, py: number, pz: number): number {
  closest[0] = px;
  closest[1] = py;
  closest[2] = pz;
  return (px - x) * (px - x) + (py - y) * (py - y) + (pz - z) * (pz - z);
}

function toTriangle(t: Float64Array, o: number, x: number, y: number, z: number, best: number): number {
  const ax = t[o]!;
  const ay = t[o + 1]!;
  const az = t[o + 2]!;
  const ux = t[o + 3]! - ax;
  const uy = t[o + 4]! - ay;
  const uz = t[o + 5]! - az;
  const vx = t[o + 6]! - ax;
  const vy = t[o + 7]! - ay;
  const vz = t[o + 8]! - az;
  const px = x - ax;
  const py = y - ay;
  const pz = z - az;
  const nx = uy * vz - uz * vy;
  const ny = uz * vx - ux * vz;
  const nz = ux * vy - uy * vx;
  const n2 = nx * nx + ny * ny + nz * nz;
  if (best < Infinity && n2 > 0) {
    // the plane is already too far
    const h = px * nx + py * ny + pz * nz;
    if (h * h >= best * n2) return Infinity;
  }
  const d1 = ux * px + uy * py + uz * pz;
  const d2 = vx * px + vy * py + vz * pz;
  if (d1 <= 0 && d2 <= 0) return at(x, y, z, ax, ay, az);
  const uu = ux * ux + uy * uy + uz * uz;
  const uv = ux * vx + uy * vy + uz * vz;
  const vv = vx * vx + vy * vy + vz * vz;
  const d3 = d1 - uu;
  const d4 = d2 - uv;
  if (d3 >= 0 && d4 <= d3) return at(x, y, z, ax + ux, ay + uy, az + uz);
  const vc = d1 * d4 - d3 * d2;
  if (vc <= 0 && d1 >= 0 && d3 <= 0) {
    const k = uu > 0 ? d1 / uu : 0;
    return at(x, y, z, ax + k * ux, ay + k * uy, az + k * uz);
  }
  const d5 = d1 - uv;
  const d6 = d2 - vv;
  if (d6 >= 0 && d5 <= d6) return at(x, y, z, ax + vx, ay + vy, az + vz);
  const vb = d5 * d2 - d1 * d6;
  if (vb <= 0 && d2 >= 0 && d6 <= 0) {
    const k = vv > 0 ? d2 / vv : 0;
    return at(x, y, z, ax + k * vx, ay + k * vy, az + k * vz);
  }
  const va = d3 * d6 - d5 * d4;
  const whole = va + vb + vc;
  if ((va <= 0 && d4 - d3 >= 0 && d5 - d6 >= 0) || !(whole > 0)) {
    const sum = d4 - d3 + (d5 - d6);
    const k = sum > 0 ? (d4 - d3) / sum : 0;
    return at(x, y, z, ax + ux + k * (vx - ux), ay + uy + k * (vy - uy), az + uz + k * (vz - uz));
  }
  const s = vb / whole;
  const w = vc / whole;
  return at(x, y, z, ax + s * ux + w * vx, ay + s * uy + w * vy, az + s * uz + w * vz);
}
