/** Where a search begins: a pose by chance, an order that crosses little, a pipe laid through the air. */
import type { Chance } from './chance.ts';
import { squareUp, turnPose } from './descent.ts';
import { crossings } from './order.ts';
import type { Rig } from './rig.ts';

/** A pose by chance in the box and the cone; a fixed one stays. */
export function drawPose(rig: Rig, chance: Chance): void {
  const { collector } = rig.site.problem;
  if (collector.mode === 'fixed') return;
  for (let c = 0; c < 3; c++) rig.origin[c] = chance.between(collector.boxMin[c]!, collector.boxMax[c]!);
  rig.axis.set(collector.axis);
  const [x, y, z] = collector.axis;
  rig.ref.set(Math.abs(x) < 0.7 ? [1, 0, 0] : [0, 0, 1]);
  squareUp(rig.axis, rig.ref);
  const turn = chance.between(0, 2 * Math.PI);
  turnPose(rig, turn * x, turn * y, turn * z);
  const tilt = ((collector.coneDeg * Math.PI) / 180) * Math.sqrt(chance.next()) * 0.9;
  const way = chance.between(0, 2 * Math.PI);
  const r = rig.ref;
  const a = rig.axis;
  const s = [a[1]! * r[2]! - a[2]! * r[1]!, a[2]! * r[0]! - a[0]! * r[2]!, a[0]! * r[1]! - a[1]! * r[0]!];
  const [c1, c2] = [tilt * Math.cos(way), tilt * Math.sin(way)];
  turnPose(rig, c1 * r[0]! + c2 * s[0]!, c1 * r[1]! + c2 * s[1]!, c1 * r[2]! + c2 * s[2]!);
}

/** One of the better legal orders for the pose, the best first but not always. */
export function drawOrder(
  rig: Rig,
  orders: readonly (readonly number[])[],
  chance: Chance,
): readonly number[] {
  const { problem } = rig.site;
  const { n } = problem.collector;
  const kept = [...rig.inlets];
  const inlets: Float64Array[] = [];
  for (let k = 0; k < n; k++) {
    rig.inlets[0] = k;
    rig.seatOne(0);
    inlets.push(rig.pipes[0]!.inlet.slice());
  }
  rig.inlets.splice(0, kept.length, ...kept);
  const reach = problem.limits.minStraightFlange + 20;
  const ports = problem.ports.map(({ p, d }) => [
    p[0] + reach * d[0],
    p[1] + reach * d[1],
    p[2] + reach * d[2],
  ]);
  const scores = crossings(orders, ports, inlets, rig.site.needPipe);
  const ranked = [...scores.keys()].sort((a, b) => scores[a]! - scores[b]! || a - b);
  const pick = Math.floor(Math.abs(chance.normal()) * 0.6 * Math.min(4, orders.length / 2));
  return orders[ranked[Math.min(pick, ranked.length - 1)]!]!;
}

/** Lays pipe i from its port to its inlet with so many corners, about as long as asked, bowed out by chance. */
export function drawPipe(rig: Rig, i: number, corners: number, chance: Chance): void {
  const { site } = rig;
  const { limits, length } = site.problem;
  const pipe = rig.pipes[i]!;
  pipe.corners = corners;
  rig.seatOne(i);
  const { port, out, inlet, into, x, radius } = pipe;
  for (let k = 1; k <= corners; k++) radius[k] = site.radii[0]!;
  const bow = site.radii[0]! * 0.7;
  const share = length.target / (corners + 1);
  const a = limits.minStraightFlange + bow + chance.next() * Math.max(10, share - bow);
  const b = limits.minStraightCollector + bow + chance.next() * Math.max(10, share - bow);
  x[0] = a;
  x[1] = b;
  const inner = corners - 2;
  if (inner === 0) return;
  const from = [0, 1, 2].map((c) => port[c]! + a * out[c]!);
  const to = [0, 1, 2].map((c) => inlet[c]! - b * into[c]!);
  const chord = [0, 1, 2].map((c) => to[c]! - from[c]!);
  const span = Math.hypot(chord[0]!, chord[1]!, chord[2]!);
  // corners are cut short by the bends; so much longer the line through them
  const want = Math.max(span, length.target - a - b + 0.25 * site.radii[0]! * corners);
  // a direction square to the chord
  let side = [chance.normal(), chance.normal(), chance.normal()];
  const flat =
    (side[0]! * chord[0]! + side[1]! * chord[1]! + side[2]! * chord[2]!) / Math.max(1, span * span);
  side = side.map((each, c) => each - flat * chord[c]!);
  const norm = Math.hypot(side[0]!, side[1]!, side[2]!) || 1;
  const height = Math.sqrt(Math.max(0, (want * want - span * span) / 4)) * chance.between(0.6, 1);
  for (let k = 0; k < inner; k++) {
    const f = (k + 1) / (inner + 1) + chance.between(-0.1, 0.1);
    const h = (height * Math.sin(Math.PI * f)) / norm;
    for (let c = 0; c < 3; c++)
      x[2 + 3 * k + c] = from[c]! + f * chord[c]! + h * side[c]! + 15 * chance.normal();
  }
}
