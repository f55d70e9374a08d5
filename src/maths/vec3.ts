/** Vectors in space as plain triples. Right-handed; the unit is the caller's. */
export type Vec3 = readonly [number, number, number];

export const ZERO: Vec3 = [0, 0, 0];
export const add = (a: Vec3, b: Vec3): Vec3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const sub = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const scale = (a: Vec3, k: number): Vec3 => [k * a[0], k * a[1], k * a[2]];
/** a + k b */
export const along = (a: Vec3, b: Vec3, k: number): Vec3 => [
  a[0] + k * b[0],
  a[1] + k * b[1],
  a[2] + k * b[2],
];
export const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const length = (a: Vec3): number => Math.hypot(a[0], a[1], a[2]);
export const distance = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
/** Unit vector along a; the caller has checked that a is not zero. */
export const unit = (a: Vec3): Vec3 => scale(a, 1 / length(a));
/** Triple product a · (b × c): its sign tells which way round the three lie. */
export const triple = (a: Vec3, b: Vec3, c: Vec3): number => dot(a, cross(b, c));

/** v turned by `angle` about the unit vector `axis` through the origin (Rodrigues). */
export function turned(v: Vec3, axis: Vec3, angle: number): Vec3 {
  const c = Math.cos(angle);
  const s = Math.sin(angle);
  const k = dot(axis, v) * (1 - c);
  const w = cross(axis, v);
  return [
    v[0] * c + w[0] * s + axis[0] * k,
    v[1] * c + w[1] * s + axis[1] * k,
    v[2] * c + w[2] * s + axis[2] * k,
  ];
}

/** Point p turned about the line through `origin` along the unit vector `axis`. */
export const turnedAbout = (p: Vec3, origin: Vec3, axis: Vec3, angle: number): Vec3 =>
  add(origin, turned(sub(p, origin), axis, angle));

/** The same point on the other side of the car's centre plane. */
export const mirrored = (a: Vec3): Vec3 => [a[0], -a[1], a[2]];
