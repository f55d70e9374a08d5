/**
 * One pipe as straights and bends laid into a line of corners, with samples on it and their gradients.
 *
 * Corners V1 .. VK lie between the port and the inlet: V1 on the port's ray, VK on the inlet's, the others free.
 * Both end directions are constants, so that the pipe leaves and arrives square by construction, and a distance
 * along a ray that turns negative cannot flip them. Gradients are taken in reverse: `clear`, any number of
 * `pull...`, then `gather` gives the slope to the pipe's own numbers and to the collector's pose.
 *
 * Equations RT-1 to RT-5 of docs/theory/gas-path-routing.md.
 */

/** More corners than this are not laid. */
export const MOST_CORNERS = 8;
export const MOST_SAMPLES = 1500;
/** Steps of the tube along one pipe. */
export const MOST_STEPS = 4;
/** Pose as six small moves: three of the origin (mm), three turns, each times this lever (mm). */
export const LEVER = 100;

const V = 3 * (MOST_CORNERS + 2);

export class PipeShape {
  corners = 0;
  /** a, b, then the inner corners. */
  readonly x = new Float64Array(2 + 3 * MOST_CORNERS);
  readonly radius = new Float64Array(MOST_CORNERS + 2);
  readonly port = new Float64Array(3);
  readonly out = new Float64Array(3);
  readonly inlet = new Float64Array(3);
  readonly into = new Float64Array(3);

  readonly vertex = new Float64Array(V);
  readonly along = new Float64Array(V);
  readonly leg = new Float64Array(MOST_CORNERS + 1);
  readonly cosine = new Float64Array(MOST_CORNERS + 2);
  readonly angle = new Float64Array(MOST_CORNERS + 2);
  readonly tangent = new Float64Array(MOST_CORNERS + 2);
  /** Length along the pipe at the start of straight i. */
  readonly from = new Float64Array(MOST_CORNERS + 2);
  length = 0;

  count = 0;
  readonly at = new Float64Array(3 * MOST_SAMPLES);
  readonly arc = new Float64Array(MOST_SAMPLES);
  /** Even: straight of that half number; odd: bend at corner (n + 1) / 2. */
  private readonly element = new Int16Array(MOST_SAMPLES);
  private readonly share = new Float64Array(MOST_SAMPLES);
  private readonly steps = new Int16Array(2 * MOST_CORNERS + 2);

  /** Radius at each sample beyond that of the tube at the flange, mm: nought throughout where the tube has no steps. */
  readonly more = new Float64Array(MOST_SAMPLES);
  /** For each step of the tube: the straight that it stands on, -1 while none is chosen; and its length from the flange. */
  readonly stepOn = new Int16Array(MOST_STEPS).fill(-1);
  readonly stepAt = new Float64Array(MOST_STEPS);

  private readonly toVertex = new Float64Array(V);
  private readonly toAlong = new Float64Array(V);
  private readonly toLeg = new Float64Array(MOST_CORNERS + 1);
  private readonly toTangent = new Float64Array(MOST_CORNERS + 2);
  private readonly toAngle = new Float64Array(MOST_CORNERS + 2);

  get numbers(): number {
    return 2 + 3 * (this.corners - 2);
  }

  /** Straight of leg i, as long as the bends leave it; negative where they overlap. */
  straight(i: number): number {
    return this.leg[i]! - this.tangent[i]! - this.tangent[i + 1]!;
  }

  /** Everything but the samples, from x, port and inlet. */
  lay(): void {
    const { corners: K, x, vertex, along, leg, cosine, angle, tangent, port, out, inlet, into } = this;
    const last = 3 * K;
    for (let c = 0; c < 3; c++) {
      vertex[c] = port[c]!;
      along[c] = out[c]!;
      vertex[3 + c] = port[c]! + x[0]! * out[c]!;
      vertex[last + c] = inlet[c]! - x[1]! * into[c]!;
      vertex[last + 3 + c] = inlet[c]!;
      along[last + c] = into[c]!;
    }
    for (let i = 6; i < last; i++) vertex[i] = x[i - 4]!;
    leg[0] = x[0]!;
    leg[K] = x[1]!;
    for (let i = 1; i < K; i++) {
      const o = 3 * i;
      const dx = vertex[o + 3]! - vertex[o]!;
      const dy = vertex[o + 4]! - vertex[o + 1]!;
      const dz = vertex[o + 5]! - vertex[o + 2]!;
      const l = Math.max(1e-6, Math.sqrt(dx * dx + dy * dy + dz * dz));
      leg[i] = l;
      along[o] = dx / l;
      along[o + 1] = dy / l;
      along[o + 2] = dz / l;
    }
    tangent[0] = 0;
    tangent[K + 1] = 0;
    let length = leg[0]!;
    for (let k = 1; k <= K; k++) {
      const o = 3 * k;
      const c = along[o - 3]! * along[o]! + along[o - 2]! * along[o + 1]! + along[o - 1]! * along[o + 2]!;
      const ex = along[o]! - along[o - 3]!;
      const ey = along[o + 1]! - along[o - 2]!;
      const ez = along[o + 2]! - along[o - 1]!;
      // 1 - c without loss where the angle is small
      const less = (ex * ex + ey * ey + ez * ez) / 2;
      const more = Math.max(0.004, 2 - less);
      const half = Math.sqrt(less / more);
      cosine[k] = c;
      tangent[k] = this.radius[k]! * half;
      angle[k] = 2 * Math.atan(half);
      length += leg[k]! - 2 * tangent[k]! + this.radius[k]! * angle[k]!;
    }
    this.length = length;
    let s = 0;
    for (let i = 0; i <= K; i++) {
      this.from[i] = s;
      s += this.straight(i) + (i < K ? this.radius[i + 1]! * angle[i + 1]! : 0);
    }
  }

  /** How many samples each straight and bend gets at a spacing, mm. */
  divide(spacing: number): void {
    const { corners: K, steps } = this;
    let total = 1;
    for (let e = 0; e <= 2 * K; e++) {
      const i = (e + 1) >> 1;
      const long = (e & 1) === 0 ? Math.max(0, this.straight(e >> 1)) : this.radius[i]! * this.angle[i]!;
      const most = Math.min(250, MOST_SAMPLES - 1 - total - (2 * K - e));
      steps[e] = Math.max(1, Math.min(most, Math.ceil(long / ((e & 1) === 0 ? spacing : 0.7 * spacing))));
      total += steps[e]!;
    }
  }

  /** The samples, at the divisions that `divide` made. */
  sample(): void {
    const { corners: K, steps, at, arc, element, share, vertex, along, tangent, angle, radius, leg } = this;
    let m = 0;
    for (let e = 0; e <= 2 * K; e++) {
      const n = steps[e]!;
      // the end of an element is the start of the next; the last one has both its ends
      const count = e === 2 * K ? n + 1 : n;
      if ((e & 1) === 0) {
        const i = e >> 1;
        const o = 3 * i;
        const start = tangent[i]!;
        const span = leg[i]! - start - tangent[i + 1]!;
        for (let q = 0; q < count; q++) {
          const f = q / n;
          const t = start + f * span;
          at[3 * m] = vertex[o]! + t * along[o]!;
          at[3 * m + 1] = vertex[o + 1]! + t * along[o + 1]!;
          at[3 * m + 2] = vertex[o + 2]! + t * along[o + 2]!;
          arc[m] = this.from[i]! + f * span;
          element[m] = e;
          share[m++] = f;
        }
        continue;
      }
      const k = (e + 1) >> 1;
      const o = 3 * k;
      const whole = radius[k]! * angle[k]!;
      const start = this.from[k]! - whole;
      const sine = Math.sin(angle[k]!);
      for (let q = 0; q < count; q++) {
        const f = q / n;
        const back = arm(radius[k]!, angle[k]!, sine, 1 - f);
        const forth = arm(radius[k]!, angle[k]!, sine, f);
        for (let c = 0; c < 3; c++)
          at[3 * m + c] = vertex[o + c]! - back * along[o - 3 + c]! + forth * along[o + c]!;
        arc[m] = start + f * whole;
        element[m] = e;
        share[m++] = f;
      }
    }
    this.count = m;
  }

  clear(): void {
    const end = 3 * (this.corners + 2);
    this.toVertex.fill(0, 0, end);
    this.toAlong.fill(0, 0, end);
    this.toLeg.fill(0);
    this.toTangent.fill(0);
    this.toAngle.fill(0);
  }

  /** Adds `weight` times the slope of the pipe's length. */
  pullLength(weight: number): void {
    for (let i = 0; i <= this.corners; i++) this.toLeg[i]! += weight;
    for (let k = 1; k <= this.corners; k++) {
      this.toTangent[k]! -= 2 * weight;
      this.toAngle[k]! += weight * this.radius[k]!;
    }
  }

  pullStraight(i: number, weight: number): void {
    this.toLeg[i]! += weight;
    this.toTangent[i]! -= weight;
    this.toTangent[i + 1]! -= weight;
  }

  /** Adds `weight` times the slope of the length along the pipe at which straight i begins. */
  pullFrom(i: number, weight: number): void {
    for (let k = 1; k <= i; k++) {
      this.pullStraight(k - 1, weight);
      this.toAngle[k]! += weight * this.radius[k]!;
    }
  }

  pullAngle(k: number, weight: number): void {
    this.toAngle[k]! += weight;
  }

  /** Adds the slope of g . V at corner k. */
  pullCorner(k: number, gx: number, gy: number, gz: number): void {
    this.toVertex[3 * k]! += gx;
    this.toVertex[3 * k + 1]! += gy;
    this.toVertex[3 * k + 2]! += gz;
  }

  /** Adds the slope of g . X at sample m. */
  pullSample(m: number, gx: number, gy: number, gz: number): void {
    const { toVertex, toAlong, along, tangent, leg } = this;
    const e = this.element[m]!;
    const f = this.share[m]!;
    if ((e & 1) === 0) {
      const i = e >> 1;
      const o = 3 * i;
      const t = (1 - f) * tangent[i]! + f * (leg[i]! - tangent[i + 1]!);
      toVertex[o]! += gx;
      toVertex[o + 1]! += gy;
      toVertex[o + 2]! += gz;
      toAlong[o]! += t * gx;
      toAlong[o + 1]! += t * gy;
      toAlong[o + 2]! += t * gz;
      const g = gx * along[o]! + gy * along[o + 1]! + gz * along[o + 2]!;
      this.toTangent[i]! += (1 - f) * g;
      this.toTangent[i + 1]! -= f * g;
      this.toLeg[i]! += f * g;
      return;
    }
    const k = (e + 1) >> 1;
    const o = 3 * k;
    const R = this.radius[k]!;
    const theta = this.angle[k]!;
    const sine = Math.sin(theta);
    const back = arm(R, theta, sine, 1 - f);
    const forth = arm(R, theta, sine, f);
    toVertex[o]! += gx;
    toVertex[o + 1]! += gy;
    toVertex[o + 2]! += gz;
    toAlong[o - 3]! -= back * gx;
    toAlong[o - 2]! -= back * gy;
    toAlong[o - 1]! -= back * gz;
    toAlong[o]! += forth * gx;
    toAlong[o + 1]! += forth * gy;
    toAlong[o + 2]! += forth * gz;
    const gIn = gx * along[o - 3]! + gy * along[o - 2]! + gz * along[o - 1]!;
    const gOut = gx * along[o]! + gy * along[o + 1]! + gz * along[o + 2]!;
    this.toAngle[k]! += armSlope(R, theta, f) * gOut - armSlope(R, theta, 1 - f) * gIn;
  }

  /**
   * What was pulled, as slopes: the pipe's numbers into `own` at `o`, and the pose added to `pose` at `p`:
   * origin, then turns about the axes through the origin of the collector.
   */
  gather(own: Float64Array, o: number, pose: Float64Array, p: number, origin: Float64Array): void {
    const { corners: K, toVertex, toAlong, toLeg, toTangent, toAngle, along, leg, cosine, angle } = this;
    for (let k = 1; k <= K; k++) {
      if (toTangent[k] === 0 && toAngle[k] === 0) continue;
      const sine = Math.max(1e-7, Math.sin(angle[k]!));
      const g =
        (-this.radius[k]! / (Math.max(0.004, 1 + cosine[k]!) * sine)) * toTangent[k]! - toAngle[k]! / sine;
      const q = 3 * k;
      for (let c = 0; c < 3; c++) {
        toAlong[q - 3 + c]! += g * along[q + c]!;
        toAlong[q + c]! += g * along[q - 3 + c]!;
      }
    }
    for (let i = 1; i < K; i++) {
      const q = 3 * i;
      const ux = along[q]!;
      const uy = along[q + 1]!;
      const uz = along[q + 2]!;
      const hx = toAlong[q]!;
      const hy = toAlong[q + 1]!;
      const hz = toAlong[q + 2]!;
      const flat = hx * ux + hy * uy + hz * uz;
      const l = leg[i]!;
      const g = toLeg[i]!;
      const dx = (hx - flat * ux) / l + g * ux;
      const dy = (hy - flat * uy) / l + g * uy;
      const dz = (hz - flat * uz) / l + g * uz;
      toVertex[q]! -= dx;
      toVertex[q + 1]! -= dy;
      toVertex[q + 2]! -= dz;
      toVertex[q + 3]! += dx;
      toVertex[q + 4]! += dy;
      toVertex[q + 5]! += dz;
    }
    const { out, into, inlet, x } = this;
    const q = 3 * K;
    own[o] = toLeg[0]! + toVertex[3]! * out[0]! + toVertex[4]! * out[1]! + toVertex[5]! * out[2]!;
    const gx = toVertex[q]!;
    const gy = toVertex[q + 1]!;
    const gz = toVertex[q + 2]!;
    own[o + 1] = toLeg[K]! - gx * into[0]! - gy * into[1]! - gz * into[2]!;
    for (let i = 6; i < q; i++) own[o + i - 4] = toVertex[i]!;
    // the pose: the inlet point as a whole, and the axis in which it looks
    const ax = toAlong[q]! - x[1]! * gx;
    const ay = toAlong[q + 1]! - x[1]! * gy;
    const az = toAlong[q + 2]! - x[1]! * gz;
    const rx = inlet[0]! - origin[0]!;
    const ry = inlet[1]! - origin[1]!;
    const rz = inlet[2]! - origin[2]!;
    pose[p]! += gx;
    pose[p + 1]! += gy;
    pose[p + 2]! += gz;
    pose[p + 3]! += (ry * gz - rz * gy + into[1]! * az - into[2]! * ay) / LEVER;
    pose[p + 4]! += (rz * gx - rx * gz + into[2]! * ax - into[0]! * az) / LEVER;
    pose[p + 5]! += (rx * gy - ry * gx + into[0]! * ay - into[1]! * ax) / LEVER;
  }
}

/** R (1 - cos f theta) / sin theta, RT-4; by series where theta is small. */
function arm(R: number, theta: number, sine: number, f: number): number {
  if (theta < 1e-3) return (R * f * f * theta * (1 + (theta * theta * (2 - f * f)) / 12)) / 2;
  const half = Math.sin((f * theta) / 2);
  return (2 * R * half * half) / Math.max(sine, 0.02);
}

/** d arm / d theta. */
function armSlope(R: number, theta: number, f: number): number {
  if (theta < 1e-3) return (R * f * f) / 2;
  const sine = Math.max(Math.sin(theta), 0.02);
  const half = Math.sin((f * theta) / 2);
  return R * ((f * Math.sin(f * theta)) / sine - (2 * half * half * Math.cos(theta)) / (sine * sine));
}
