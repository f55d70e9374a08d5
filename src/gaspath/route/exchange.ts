/**
 * Reads `primaries-problem/1` and writes `primaries-solution/1`: mm and degrees, right-handed, x rearwards,
 * y outboard, z up.
 *
 * A problem that reads is whole: every number finite and in reach, every direction unit, every triangle's corners
 * there. Triangles without area and shells with holes are borne. What the form does not name is passed over.
 */

import { cross, dot, type Vec3 } from '../../maths/vec3.ts';
import type { Problem } from '../../measured/problem.ts';
import { roundRows } from './inlets.ts';
import type {
  FixedCollector,
  FreeCollector,
  Inlets,
  Order,
  RouteProblem,
  RouteSolution,
  Solid,
} from './problem.ts';
import { readSteps } from './read-steps.ts';
import { Reader, shown } from './reader.ts';
import { MOST_CORNERS } from './shape.ts';

export const PROBLEM_FORMAT = 'primaries-problem/1';
export const SOLUTION_FORMAT = 'primaries-solution/1';

export type ReadProblem =
  | { readonly ok: true; readonly problem: RouteProblem }
  | { readonly ok: false; readonly problems: readonly Problem[] };

const MOST_PORTS = 12;

export function readRouteProblem(json: unknown): ReadProblem {
  const r = new Reader();
  const top = r.object(json, '$');
  if (r.problems.length > 0) return { ok: false, problems: r.problems };
  r.text(top.format, '$.format', [PROBLEM_FORMAT]);
  if (top.units !== undefined) r.text(top.units, '$.units', ['mm']);
  const tube = r.object(top.tube, '$.tube');
  const od = r.number(tube.od, '$.tube.od', 10, 150);
  const ports = r.list(top.ports, '$.ports').map((each, i) => {
    const port = r.object(each, `$.ports[${i}]`);
    return { p: r.vector(port.p, `$.ports[${i}].p`), d: r.direction(port.d, `$.ports[${i}].d`) };
  });
  if (ports.length < 1 || ports.length > MOST_PORTS)
    r.wrong('$.ports', `${ports.length} ports; 1 to ${MOST_PORTS} would do.`);
  const length = r.object(top.length, '$.length');
  const collector = readCollector(r, top.collector);
  if (collector.n < ports.length)
    r.wrong('$.collector.n', `${collector.n} inlets for ${ports.length} ports; each pipe needs one.`);
  const body = r.object(top.collectorBody ?? { length: 0 }, '$.collectorBody');
  const problem: RouteProblem = {
    ...(typeof top.id === 'string' ? { id: top.id } : {}),
    tube: {
      od,
      wall: r.number(tube.wall, '$.tube.wall', 0.2, od / 2),
      densityKgM3: r.number(tube.densityKgM3, '$.tube.densityKgM3', 500, 25_000),
      ...(tube.steps === undefined
        ? {}
        : { steps: readSteps(r, tube.steps, typeof length.target === 'number' ? length.target : Infinity) }),
    },
    radii: readRadii(r, top.radii, od),
    limits: readLimits(r, top.limits),
    length: {
      target: r.number(length.target, '$.length.target', 60, 5000),
      tol: r.number(length.tol, '$.length.tol', 0.001, 200),
    },
    ports,
    collector,
    collectorBody: {
      length: r.number(body.length, '$.collectorBody.length', 0, 5000),
      radiusAdd:
        body.radiusAdd === undefined ? 0 : r.number(body.radiusAdd, '$.collectorBody.radiusAdd', 0, 500),
    },
    order: readOrder(r, top.order, ports.length),
    shell: readShell(r, top.shell),
    solids: r.list(top.solids ?? [], '$.solids').map((each, i) => readSolid(r, each, `$.solids[${i}]`)),
    clearance: readClearance(r, top.clearance),
    bounds: readBounds(r, top.bounds),
  };
  return r.problems.length > 0 ? { ok: false, problems: r.problems } : { ok: true, problem };
}

function readRadii(r: Reader, of: unknown, od: number): readonly number[] {
  const radii = r.list(of, '$.radii').map((each, i) => r.number(each, `$.radii[${i}]`, od / 2, 2000));
  if (radii.length === 0) r.wrong('$.radii', 'the list is empty; at least one centre-line radius is wanted.');
  return radii;
}

function readLimits(r: Reader, of: unknown): RouteProblem['limits'] {
  const limits = r.object(of, '$.limits');
  const straight = (name: string): number => r.number(limits[name], `$.limits.${name}`, 0, 2000);
  const maxBendDeg = r.number(
    limits.maxBendDeg,
    '$.limits.maxBendDeg',
    5,
    180,
    typeof limits.maxBendDeg === 'number' && limits.maxBendDeg <= 3.15
      ? 'Angles are in degrees; this looks like radians.'
      : undefined,
  );
  const maxBends = r.whole(limits.maxBends, '$.limits.maxBends', 2, 50);
  return {
    maxBends: Math.min(maxBends, MOST_CORNERS),
    minStraightFlange: straight('minStraightFlange'),
    minStraightCollector: straight('minStraightCollector'),
    minStraightBetween: straight('minStraightBetween'),
    maxBendDeg,
  };
}

function readClearance(r: Reader, of: unknown): RouteProblem['clearance'] {
  const clearance = r.object(of, '$.clearance');
  const gap = (name: string): number => r.number(clearance[name], `$.clearance.${name}`, 0, 2000);
  return {
    shell: gap('shell'),
    solid: gap('solid'),
    pipe: gap('pipe'),
    self: gap('self'),
    collectorZone: gap('collectorZone'),
    pipeInZone: gap('pipeInZone'),
    flangeZone: gap('flangeZone'),
  };
}

function readCollector(r: Reader, of: unknown): FixedCollector | FreeCollector {
  const at = '$.collector';
  const collector = r.object(of, at);
  const mode = r.text(collector.mode, `${at}.mode`, ['fixed', 'free']);
  const inlets = readInlets(r, collector, at);
  const axis = r.direction(collector.axis, `${at}.axis`);
  if (mode === 'fixed') {
    const ref = r.direction(collector.ref, `${at}.ref`);
    if (Math.abs(dot(axis, ref)) > 2e-3)
      r.wrong(
        `${at}.ref`,
        `it is not square to the axis: ${((Math.acos(dot(axis, ref)) * 180) / Math.PI).toFixed(2)}° between them.`,
      );
    const square = cross(cross(axis, ref), axis);
    const size = Math.hypot(...square) || 1;
    return {
      mode: 'fixed',
      ...inlets,
      origin: r.vector(collector.origin, `${at}.origin`),
      axis,
      ref: [square[0] / size, square[1] / size, square[2] / size],
    };
  }
  const boxMin = r.vector(collector.boxMin, `${at}.boxMin`);
  const boxMax = r.vector(collector.boxMax, `${at}.boxMax`);
  ordered(r, at, 'boxMin', 'boxMax', boxMin, boxMax);
  return {
    mode: 'free',
    ...inlets,
    boxMin,
    boxMax,
    axis,
    coneDeg: r.number(collector.coneDeg, `${at}.coneDeg`, 0, 180),
  };
}

function readInlets(r: Reader, collector: Record<string, unknown>, at: string): Inlets {
  const n = r.whole(collector.n, `${at}.n`, 1, 12);
  if (collector.rows === undefined)
    return { n, ringRadius: r.number(collector.ringRadius, `${at}.ringRadius`, 0, 500) };
  const rows = r.object(collector.rows, `${at}.rows`);
  const counts = r
    .list(rows.counts, `${at}.rows.counts`)
    .map((each, k) => r.whole(each, `${at}.rows.counts[${k}]`, 1, 12));
  const sum = counts.reduce((a, b) => a + b, 0);
  if (sum !== n) r.wrong(`${at}.rows.counts`, `its rows hold ${sum} inlets; ${at}.n says ${n}.`);
  const pitch = r.number(rows.pitch, `${at}.rows.pitch`, 1, 500);
  return { n, ringRadius: roundRows(counts, pitch), rows: { counts, pitch } };
}

function ordered(r: Reader, at: string, low: string, high: string, min: Vec3, max: Vec3): void {
  for (let c = 0; c < 3; c++)
    if (min[c]! > max[c]!)
      r.wrong(
        `${at}.${low}[${c}]`,
        `${min[c]} lies above ${at}.${high}[${c}], which is ${max[c]}.`,
        'Change the two.',
      );
}

function readBounds(r: Reader, of: unknown): RouteProblem['bounds'] {
  const bounds = r.object(of, '$.bounds');
  const min = r.vector(bounds.min, '$.bounds.min');
  const max = r.vector(bounds.max, '$.bounds.max');
  ordered(r, '$.bounds', 'min', 'max', min, max);
  return { min, max };
}

function readOrder(r: Reader, of: unknown, ports: number): Order {
  const order = r.object(of, '$.order');
  if (r.text(order.mode, '$.order.mode', ['free', 'rotation']) === 'free') return { mode: 'free' };
  const firing = r
    .list(order.firing, '$.order.firing')
    .map((each, i) => r.whole(each, `$.order.firing[${i}]`, 0, ports - 1));
  if (firing.length !== ports || new Set(firing).size !== firing.length)
    r.wrong('$.order.firing', `found ${shown(firing)}; each port from 0 to ${ports - 1} is wanted once.`);
  const sense =
    order.sense === undefined ? 'either' : r.text(order.sense, '$.order.sense', ['either', '+', '-']);
  return {
    mode: 'rotation',
    firing,
    sense: sense as 'either' | '+' | '-',
    ...(order.passed === undefined ? {} : { passed: r.whole(order.passed, '$.order.passed', 0, 144) }),
  };
}

function readShell(r: Reader, of: unknown): RouteProblem['shell'] {
  const shell = r.object(of ?? { vertices: [], triangles: [] }, '$.shell');
  const points = r.list(shell.vertices, '$.shell.vertices');
  const faces = r.list(shell.triangles, '$.shell.triangles');
  const vertices = new Float64Array(3 * points.length);
  points.forEach((point, i) => {
    if (!Array.isArray(point) || point.length !== 3) {
      r.wrong(`$.shell.vertices[${i}]`, `three numbers [x, y, z] are wanted, found ${shown(point)}.`);
      return;
    }
    for (let c = 0; c < 3; c++) {
      const v = point[c] as unknown;
      if (typeof v !== 'number' || !(Math.abs(v) < 1e6))
        r.wrong(`$.shell.vertices[${i}][${c}]`, `a number of millimetres is wanted, found ${shown(v)}.`);
      else vertices[3 * i + c] = v;
    }
  });
  const triangles = new Uint32Array(3 * faces.length);
  faces.forEach((face, i) => {
    if (!Array.isArray(face) || face.length !== 3) {
      r.wrong(
        `$.shell.triangles[${i}]`,
        `three places in the list of vertices are wanted, found ${shown(face)}.`,
      );
      return;
    }
    for (let c = 0; c < 3; c++) {
      const v = face[c] as unknown;
      if (!Number.isInteger(v) || (v as number) < 0 || (v as number) >= points.length)
        r.wrong(
          `$.shell.triangles[${i}][${c}]`,
          `${shown(v)} is no place in the list of ${points.length} vertices, counted from 0.`,
        );
      else triangles[3 * i + c] = v as number;
    }
  });
  return { vertices, triangles };
}

function readSolid(r: Reader, of: unknown, at: string): Solid {
  const solid = r.object(of, at);
  const kind = r.text(solid.kind, `${at}.kind`, ['box', 'capsule', 'cylinder']);
  const common = {
    ...(typeof solid.name === 'string' ? { name: solid.name } : {}),
    flangeExempt: solid.flangeExempt === true,
  };
  if (kind !== 'box') {
    const r0 = r.number(solid.r, `${at}.r`, 0, 5000);
    const a = r.vector(solid.a, `${at}.a`);
    const b = r.vector(solid.b, `${at}.b`);
    if (kind === 'cylinder' && Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) === 0)
      r.wrong(`${at}.b`, 'it is the same point as a; a cylinder needs a direction.');
    return { kind: kind as 'capsule' | 'cylinder', a, b, r: r0, ...common };
  }
  const half = r.vector(solid.half, `${at}.half`);
  if (half.some((each) => each < 0))
    r.wrong(`${at}.half`, `found ${shown(half)}; half sizes are not negative.`);
  const box = { kind: 'box' as const, center: r.vector(solid.center, `${at}.center`), half, ...common };
  if (solid.axes === undefined || solid.axes === null) return box;
  const list = r.list(solid.axes, `${at}.axes`);
  const axes = [0, 1, 2].map((c) => r.direction(list[c], `${at}.axes[${c}]`)) as unknown as [
    Vec3,
    Vec3,
    Vec3,
  ];
  if (
    Math.abs(dot(axes[0], axes[1])) + Math.abs(dot(axes[1], axes[2])) + Math.abs(dot(axes[0], axes[2])) >
    5e-3
  )
    r.wrong(`${at}.axes`, 'the three are not square to each other.');
  return { ...box, axes };
}

/** The answer as it is written down. */
export const solutionJson = (solution: RouteSolution): unknown => ({
  format: SOLUTION_FORMAT,
  units: 'mm',
  ...solution,
});
