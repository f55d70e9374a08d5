/** The shapes that the car is drawn with: tyre, rod, plate, coil, bar with its twist mark. Metres. */
import {
  BufferAttribute,
  BufferGeometry,
  CylinderGeometry,
  LatheGeometry,
  Matrix4,
  SphereGeometry,
  Vector2,
  Vector3,
} from 'three';
import { add, along, distance, dot, scale, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { DrawnBar, DrawnCoil, DrawnRocker, DrawnWheel } from '../../questions/drawing-types.ts';
import { across, tyreSection } from './bodies.ts';
import { outline, type Spot } from './look.ts';

/** Height 1 along y from the origin, radius 1. */
export const ROD = new CylinderGeometry(1, 1, 1, 14).translate(0, 0.5, 0);
export const BALL = new SphereGeometry(1, 16, 12);

/** Round the y axis, which becomes the wheel's axis. */
export function tyreShape(wheel: DrawnWheel): BufferGeometry {
  const section = tyreSection(wheel).map(([x, r]) => new Vector2(r, x));
  return new LatheGeometry(section, 48);
}

/** The disc of the wheel inside the tyre: a shallow dish, drawn only. */
export function rimShape(wheel: DrawnWheel): BufferGeometry {
  const section = tyreSection(wheel);
  const bead = section[0]![1];
  const half = wheel.tyreWidth / 2;
  const profile: readonly (readonly [number, number])[] = [
    [half * 0.9, bead],
    [half * 0.62, bead * 0.93],
    [half * 0.3, bead * 0.34],
    [half * 0.46, bead * 0.3],
    [half * 0.46, 0.0001],
  ];
  return new LatheGeometry(
    profile.map(([x, r]) => new Vector2(r, x)),
    40,
  );
}

/** Turns the unit rod so that it reaches from one point to the other. */
export function rodMatrix(from: Vec3, to: Vec3, radius: number, into: Matrix4): Matrix4 {
  const length = Math.max(distance(from, to), 1e-6);
  const axis = scale(sub(to, from), 1 / length);
  return axisMatrix(from, axis, [radius, length, radius], into);
}

/** y along the axis, then scaled. */
export function axisMatrix(at: Vec3, axis: Vec3, size: Vec3, into: Matrix4): Matrix4 {
  const [u, v] = across(axis);
  // v, axis, u: right-handed with y along the axis
  return into
    .makeBasis(vector(v), vector(axis), vector(u))
    .setPosition(...at)
    .scale(new Vector3(...size));
}

const vector = (a: Vec3): Vector3 => new Vector3(...a);

const PLATE = 0.014;
const EYE = 0.016;

/** The rocker as a plate square to its axis, round the pivot and all joints, in the place it has now. */
export function rockerShape(rocker: DrawnRocker): BufferGeometry {
  const axis = unit(rocker.axis);
  const [u, v] = across(axis);
  const flat = (point: Vec3) => ({
    x: dot(sub(point, rocker.pivot), u),
    y: dot(sub(point, rocker.pivot), v),
  });
  const round = [rocker.pivot, ...rocker.joints].flatMap((point, k) =>
    Array.from({ length: 20 }, (_, j) => {
      const angle = (j * Math.PI) / 10;
      const radius = k === 0 ? EYE * 1.5 : EYE;
      const centre = flat(point);
      return { x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) };
    }),
  );
  const rim = outline(round);
  const mean =
    rocker.joints.reduce((sum, joint) => sum + dot(sub(joint, rocker.pivot), axis), 0) /
    Math.max(rocker.joints.length, 1);
  const matrix = new Matrix4()
    .makeBasis(vector(u), vector(v), vector(axis))
    .setPosition(...along(rocker.pivot, axis, mean - PLATE / 2));
  return plate(rim, PLATE).applyMatrix4(matrix);
}

/** A flat plate with this rim. Its edge has one smooth normal all round, so that its outline has no gaps. */
function plate(rim: readonly Spot[], thick: number): BufferGeometry {
  const points: number[] = [];
  const normals: number[] = [];
  const index: number[] = [];
  const count = rim.length;
  const at = (k: number): Spot => rim[(k + count) % count]!;
  const put = (spot: Spot, z: number, normal: Vec3): void => {
    points.push(spot.x, spot.y, z);
    normals.push(...normal);
  };
  const out = (k: number): Vec3 => {
    const [x, y] = [at(k + 1).x - at(k - 1).x, at(k + 1).y - at(k - 1).y];
    const long = Math.hypot(x, y) || 1;
    return [y / long, -x / long, 0];
  };
  rim.forEach((spot, k) => {
    put(spot, 0, out(k));
    put(spot, thick, out(k));
    const [a, b] = [2 * k, 2 * ((k + 1) % count)];
    index.push(a, b, a + 1, a + 1, b, b + 1);
  });
  for (const [z, facing] of [
    [0, -1],
    [thick, 1],
  ] as const) {
    const first = points.length / 3;
    // a cap's rim leans outward a little: seen square on, it is what the outline grows from
    for (const [k, spot] of rim.entries()) put(spot, z, unit([0.35 * out(k)[0], 0.35 * out(k)[1], facing]));
    for (let k = 1; k < count - 1; k += 1) {
      index.push(first, ...(facing > 0 ? [first + k, first + k + 1] : [first + k + 1, first + k]));
    }
  }
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(points), 3));
  geometry.setAttribute('normal', new BufferAttribute(new Float32Array(normals), 3));
  geometry.setIndex(index);
  return geometry;
}

const AROUND = 7;
const PER_COIL = 22;

/** A true helix of round wire between the two seats, closed for half a coil at each end. */
export class CoilShape extends BufferGeometry {
  private readonly steps: number;

  constructor(private readonly coil: DrawnCoil) {
    super();
    this.steps = Math.round(Math.min(Math.max(coil.coils, 2), 20) * PER_COIL);
    const count = (this.steps + 1) * AROUND;
    this.setAttribute('position', new BufferAttribute(new Float32Array(count * 3), 3));
    this.setAttribute('normal', new BufferAttribute(new Float32Array(count * 3), 3));
    const index: number[] = [];
    for (let i = 0; i < this.steps; i += 1) {
      for (let j = 0; j < AROUND; j += 1) {
        const a = i * AROUND + j;
        const b = i * AROUND + ((j + 1) % AROUND);
        index.push(a, a + AROUND, b, b, a + AROUND, b + AROUND);
      }
    }
    this.setIndex(index);
    this.stretch(coil);
  }

  stretch(coil: Pick<DrawnCoil, 'from' | 'to'>): void {
    const { meanDiameter, wireDiameter } = this.coil;
    const turns = this.steps / PER_COIL;
    const length = distance(coil.from, coil.to);
    const axis = scale(sub(coil.to, coil.from), 1 / Math.max(length, 1e-6));
    const [u, v] = across(axis);
    const radius = meanDiameter / 2;
    const wire = wireDiameter / 2;
    const pitch = Math.max(length - wireDiameter, 0) / turns;
    const slope = pitch / (2 * Math.PI * radius);
    const flat = 1 / Math.hypot(1, slope);
    const position = this.getAttribute('position') as BufferAttribute;
    const normal = this.getAttribute('normal') as BufferAttribute;
    for (let i = 0; i <= this.steps; i += 1) {
      const angle = (2 * Math.PI * i) / PER_COIL;
      const out = add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle)));
      const round = add(scale(u, -Math.sin(angle)), scale(v, Math.cos(angle)));
      const rise = add(scale(axis, flat), scale(round, -slope * flat));
      const centre = add(along(coil.from, axis, wire + (pitch * i) / PER_COIL), scale(out, radius));
      for (let j = 0; j < AROUND; j += 1) {
        const a = (2 * Math.PI * j) / AROUND;
        const n = add(scale(out, Math.cos(a)), scale(rise, Math.sin(a)));
        position.setXYZ(i * AROUND + j, ...along(centre, n, wire));
        normal.setXYZ(i * AROUND + j, ...n);
      }
    }
    position.needsUpdate = true;
    normal.needsUpdate = true;
    this.computeBoundingSphere();
  }
}

const MARK_STEPS = 48;

/** The mark along a bar, straight when it is free: it turns with the bar, so the eye sees the twist. */
export class TwistMark extends BufferGeometry {
  constructor(
    bar: DrawnBar,
    private readonly wide: number,
  ) {
    super();
    const count = (MARK_STEPS + 1) * 2;
    this.setAttribute('position', new BufferAttribute(new Float32Array(count * 3), 3));
    const index: number[] = [];
    for (let i = 0; i < MARK_STEPS; i += 1)
      index.push(2 * i, 2 * i + 1, 2 * i + 2, 2 * i + 2, 2 * i + 1, 2 * i + 3);
    this.setIndex(index);
    this.turn(bar);
  }

  turn(bar: DrawnBar): void {
    const axis = unit(sub(bar.to, bar.from));
    const [u, v] = across(axis);
    const length = distance(bar.from, bar.to);
    const radius = (bar.diameter / 2) * 1.03;
    const position = this.getAttribute('position') as BufferAttribute;
    for (let i = 0; i <= MARK_STEPS; i += 1) {
      const part = i / MARK_STEPS;
      for (const side of [0, 1]) {
        const angle = Math.PI / 2 + bar.twist * (1 - part) + (side - 0.5) * this.wide;
        const out = add(scale(u, Math.cos(angle)), scale(v, Math.sin(angle)));
        position.setXYZ(2 * i + side, ...along(along(bar.from, axis, part * length), out, radius));
      }
    }
    position.needsUpdate = true;
    this.computeBoundingSphere();
  }
}
