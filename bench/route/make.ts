/**
 * Problems of equal primaries made by seed, all invented: an engine's side with its bodywork, floor, gear case,
 * damper and links.
 *
 * Natural ones are easy to hard by level 1 to 6 and nobody knows beforehand that they can be solved. Planted ones
 * have their bodywork drawn in round pipes that were found, to a given room. Impossible ones are made so, each
 * for one cause.
 */

import { Chance } from '../../src/gaspath/route/chance.ts';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import type { RouteProblem, RouteSolution } from '../../src/gaspath/route/problem.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { pointAt, walk } from '../../src/gaspath/verify/walk.ts';
import { add, cross, scale, unit, type Vec3 } from '../../src/maths/vec3.ts';

// biome-ignore lint/suspicious/noExplicitAny: the exchange form as plain JSON, held by its reader
export type Json = any;

const FIRING: Readonly<Record<number, readonly number[]>> = {
  3: [0, 1, 2],
  4: [0, 2, 3, 1],
  5: [0, 2, 4, 1, 3],
  6: [0, 4, 2, 5, 1, 3],
};

/** Pipes, tube, room and company by level: 1 is open, 6 is tight. */
const LEVELS = [
  { pipes: 3, od: 41.3, clear: 8, box: [90, 36, 60], cone: 25, wide: 500, order: 'free', extras: 0 },
  { pipes: 4, od: 44.5, clear: 9, box: [60, 25, 40], cone: 20, wide: 470, order: 'free', extras: 1 },
  { pipes: 5, od: 47.6, clear: 10, box: [45, 18, 30], cone: 15, wide: 445, order: 'rotation', extras: 3 },
  { pipes: 4, od: 50.8, clear: 12, box: [35, 15, 25], cone: 12, wide: 430, order: 'rotation', extras: 4 },
  { pipes: 5, od: 50.8, clear: 12, box: [30, 12, 20], cone: 12, wide: 440, order: 'rotation', extras: 5 },
  { pipes: 6, od: 44.5, clear: 10, box: [30, 12, 20], cone: 12, wide: 425, order: 'rotation', extras: 6 },
] as const;

export function natural(level: number, seed: number): Json {
  const at = LEVELS[level - 1]!;
  const c = new Chance(seed * 977 + level);
  const n = at.pipes;
  const pitch = c.between(96, 106);
  const droop = c.between(0.15, 0.55);
  const ports = Array.from({ length: n }, (_, i) => ({
    p: [i * pitch, 175, 150 + c.between(-2, 2)],
    d: [...unit([c.between(-0.1, 0.1), 1, -droop])],
  }));
  const last = (n - 1) * pitch;
  const ring = ((at.od + 2.5) / 2 / Math.sin(Math.PI / n)) * c.between(1.0, 1.03);
  const box = at.box;
  const middle: Vec3 = [last + c.between(30, 140), c.between(215, 275), c.between(-20, 40)];
  const axis = unit([1, c.between(-0.05, 0.15), c.between(-0.05, 0.06)]);
  // the pipe with the longest way sets the least length; what is over is what the others have to lose
  const far = Math.max(...ports.map(({ p }) => Math.hypot(...p.map((v, k) => v! - middle[k]!))));
  const target = Math.round(Math.max(far * 1.12, 380) + c.between(60, 160) + 12 * n);
  const x2 = middle[0] + box[0] + 20;
  const solids: Json[] = [
    {
      name: 'head and block',
      kind: 'box',
      center: [last / 2, -20, 60],
      half: [last / 2 + 70, 192, 180],
      flangeExempt: true,
    },
    { name: 'gear case', kind: 'box', center: [x2 + 210, 0, 40], half: [255, 125, 150] },
    { name: 'floor', kind: 'box', center: [last / 2, 200, -180], half: [1200, 700, 30] },
    ...[
      { name: 'damper', kind: 'cylinder', a: [x2, 70, 215], b: [x2 + 230, 95, 225], r: 32 },
      {
        name: 'top link',
        kind: 'capsule',
        a: [x2 + c.between(0, 60), 120, 170],
        b: [x2 + c.between(80, 160), 700, 150],
        r: 13,
      },
      {
        name: 'lower link',
        kind: 'capsule',
        a: [x2 + c.between(-60, 0), 120, -70],
        b: [x2 + c.between(100, 170), 700, -90],
        r: 14,
      },
      {
        name: 'oil pump',
        kind: 'cylinder',
        a: [last * 0.35, 205, -95],
        b: [last * 0.35 + 130, 205, -95],
        r: 38,
      },
      { name: 'water pipe', kind: 'capsule', a: [last * 0.3, 215, 285], b: [last * 0.9, 240, 262], r: 19 },
      { name: 'loom box', kind: 'box', center: [last * 0.25, 330, 190], half: [60, 30, 25] },
    ].slice(0, at.extras),
  ];
  const bounds = { min: [-200, 100, -150], max: [x2, 700, 600] };
  return {
    format: 'primaries-problem/1',
    id: `natural-${level}-${seed}`,
    units: 'mm',
    tube: { od: at.od, wall: 1, densityKgM3: 8440 },
    radii: [at.od, 1.5 * at.od],
    limits: {
      maxBends: 5,
      minStraightFlange: level < 3 ? 15 : 20,
      minStraightCollector: level < 3 ? 20 : 25,
      minStraightBetween: level < 5 ? 5 : 0,
      maxBendDeg: 150,
    },
    length: { target, tol: 0.5 },
    ports,
    collector: {
      mode: 'free',
      n,
      ringRadius: ring,
      boxMin: middle.map((v, k) => v - box[k]!),
      boxMax: middle.map((v, k) => v + box[k]!),
      axis: [...axis],
      coneDeg: at.cone,
    },
    collectorBody: { length: 180, radiusAdd: 0 },
    order: at.order === 'free' ? { mode: 'free' } : { mode: 'rotation', firing: FIRING[n], sense: 'either' },
    shell: bodywork(at.wide, x2 + 200),
    solids,
    clearance: {
      shell: at.clear,
      solid: at.clear - 2,
      pipe: at.clear / 2,
      self: 5,
      collectorZone: 130,
      pipeInZone: 1,
      flangeZone: 0.9 * at.od,
    },
    bounds,
  };
}

/** A cowl of 27 by 19 points: a super-ellipse over the engine, a little slimmer to the rear. */
function bodywork(wide: number, to: number): Json {
  const vertices: number[][] = [];
  for (let i = 0; i < 27; i++)
    for (let j = 0; j < 19; j++) {
      const x = -220 + ((to + 220) * i) / 26;
      const taper = 1 - 0.2 * Math.max(0, (x / to) ** 2);
      const angle = (j / 18) * (Math.PI / 2);
      const y = wide * taper * Math.sin(angle) ** (2 / 2.6);
      const z = j === 18 ? -170 : -80 + (wide - 30) * Math.cos(angle) ** (2 / 2.6);
      vertices.push([x, y, z]);
    }
  const triangles: number[][] = [];
  for (let i = 0; i < 26; i++)
    for (let j = 0; j < 18; j++) {
      const a = 19 * i + j;
      triangles.push([a, a + 19, a + 1], [a + 1, a + 19, a + 20]);
    }
  return { vertices, triangles };
}

/**
 * The problem with its bodywork drawn in round pipes that were found, so that `spare` mm are left beyond what is
 * asked, and with the collector held to some millimetres about where it was (or fixed).
 */
export function planted(of: Json, solution: RouteSolution, spare: number, fixed: boolean): Json {
  // the skin is flat between its points, and so comes in a little from the round: it is let out until it is right
  for (let out = 0; out < 6; out += 0.1) {
    const json = drawnIn(of, solution, spare, out, fixed);
    const asked = { ...json, clearance: { ...json.clearance, shell: json.clearance.shell + spare } };
    if (!verify(readMade(asked), solutionJson(solution)).some(({ code }) => code === 'shell')) return json;
  }
  throw new Error(`no skin was found for ${of.id}`);
}

function drawnIn(of: Json, solution: RouteSolution, spare: number, out: number, fixed: boolean): Json {
  const need = of.tube.od / 2 + of.clearance.shell + spare;
  const points: Vec3[] = [];
  for (const pipe of solution.pipes) {
    const path = walk(
      pipe.start,
      pipe.elements.map((each) =>
        each.kind === 'straight'
          ? { kind: 'straight', length: each.length, radius: 0, angle: 0, normal: [0, 0, 0] }
          : {
              kind: 'bend',
              length: 0,
              radius: each.radius,
              angle: (each.angleDeg * Math.PI) / 180,
              normal: each.normal,
            },
      ),
    );
    for (let s = 0; s <= path.length; s += 4) points.push(pointAt(path, s));
  }
  const low = [-220, 0, -170];
  const high = [of.bounds.max[0] + 100, 0, 420];
  const nx = 61;
  const nz = 41;
  const vertices: number[][] = [];
  for (let i = 0; i < nx; i++)
    for (let j = 0; j < nz; j++) {
      const x = low[0]! + ((high[0]! - low[0]!) * i) / (nx - 1);
      const z = low[2]! + ((high[2]! - low[2]!) * j) / (nz - 1);
      let y = 205;
      for (const p of points) {
        // a ball round the pipe, carried on as a slope so that the skin never comes nearer between its points
        const r = Math.hypot(x - p[0], z - p[2]);
        const over = r < need * Math.SQRT1_2 ? Math.sqrt(need * need - r * r) : need * Math.SQRT2 - r;
        y = Math.max(y, p[1] + over);
      }
      vertices.push([x, y + out, z]);
    }
  const triangles: number[][] = [];
  for (let i = 0; i < nx - 1; i++)
    for (let j = 0; j < nz - 1; j++) {
      const a = nz * i + j;
      triangles.push([a, a + nz, a + 1], [a + 1, a + nz, a + nz + 1]);
    }
  const { origin, axis, ref } = solution.collector;
  const { n, ringRadius } = of.collector;
  const small = 6;
  return {
    ...of,
    id: `${of.id}-planted-${spare}${fixed ? '-fixed' : ''}`,
    shell: { vertices, triangles },
    collector: fixed
      ? { mode: 'fixed', n, ringRadius, origin, axis, ref }
      : {
          mode: 'free',
          n,
          ringRadius,
          boxMin: origin.map((v) => v - small),
          boxMax: origin.map((v) => v + small),
          axis,
          coneDeg: 3,
        },
  };
}

/**
 * The problem with every triangle of its shell split until there are so many, each of its corners a tenth of a
 * millimetre or less off its place, as a scan has them. Triangles share no corners.
 */
export function finely(of: Json, least: number): Json {
  const rough = of.shell as { readonly vertices: Vec3[]; readonly triangles: Vec3[] };
  const parts = Math.ceil(Math.sqrt(least / rough.triangles.length));
  const c = new Chance(7);
  const vertices: Vec3[] = [];
  const triangles: Vec3[] = [];
  for (const corners of rough.triangles) {
    const [a, b, d] = corners.map((each) => rough.vertices[each]!) as [Vec3, Vec3, Vec3];
    const first = vertices.length;
    // row i has parts + 1 - i points
    const at = (i: number, j: number): number => first + i * (parts + 1) - (i * (i - 1)) / 2 + j;
    for (let i = 0; i <= parts; i++)
      for (let j = 0; j <= parts - i; j++) {
        const point = add(add(scale(a, (parts - i - j) / parts), scale(b, i / parts)), scale(d, j / parts));
        vertices.push([
          point[0] + c.between(-0.1, 0.1),
          point[1] + c.between(-0.1, 0.1),
          point[2] + c.between(-0.1, 0.1),
        ]);
        if (i + j === parts) continue;
        triangles.push([at(i, j), at(i + 1, j), at(i, j + 1)]);
        if (i + j < parts - 1) triangles.push([at(i + 1, j), at(i + 1, j + 1), at(i, j + 1)]);
      }
  }
  return { ...of, id: `${of.id}-finely`, shell: { vertices, triangles } };
}

export const IMPOSSIBLE = ['short', 'bend', 'stub', 'wall', 'ring', 'box', 'chord'] as const;
export type Why = (typeof IMPOSSIBLE)[number];

export function made(why: Why, level: number, seed: number): Json {
  const of = natural(level, seed);
  const id = `${of.id}-${why}`;
  const c = new Chance(seed * 31 + level);
  const i = c.below(of.ports.length);
  const { p, d } = of.ports[i];
  const before = (far: number): Vec3 => add(p, scale(d, far));
  switch (why) {
    case 'short':
      return { ...of, id, length: { target: Math.round(of.length.target / 2.2), tol: 0.5 } };
    case 'chord':
      return { ...of, id, length: { target: 150, tol: 0.5 } };
    case 'bend': {
      // the collector behind the first port and looking back at it: a half turn is not to be had so short
      const collector = {
        ...of.collector,
        boxMin: [p[0] - 20, p[1] + 60, p[2] - 20],
        boxMax: [p[0] + 20, p[1] + 100, p[2] + 20],
        axis: [...scale(d, -1)],
        coneDeg: 5,
      };
      return { ...of, id, collector, length: { target: 190, tol: 0.5 } };
    }
    case 'stub': {
      const solid = {
        name: 'bracket',
        kind: 'capsule',
        a: before(of.limits.minStraightFlange),
        b: add(before(of.limits.minStraightFlange), cross(d, [0, 0, 40])),
        r: 6,
      };
      return { ...of, id, solids: [...of.solids, solid] };
    }
    case 'wall': {
      const far = of.limits.minStraightFlange + of.tube.od / 2 + of.clearance.solid + 8;
      const centre = before(far + 20);
      const side = unit(cross(d, [0, 0, 1]));
      const solid = {
        name: 'panel',
        kind: 'box',
        center: [...centre],
        half: [20, 150, 150],
        axes: [[...d], [...side], [...unit(cross(d, side))]],
      };
      return { ...of, id, solids: [...of.solids, solid] };
    }
    case 'ring':
      return { ...of, id, collector: { ...of.collector, ringRadius: of.collector.ringRadius * 0.8 } };
    case 'box': {
      // the collector may stand only within the gear case
      const { center } = of.solids[1];
      const bounds = { min: of.bounds.min, max: [center[0] + 300, 700, 600] };
      return {
        ...of,
        id,
        bounds,
        collector: {
          ...of.collector,
          boxMin: center.map((v: number) => v - 30),
          boxMax: center.map((v: number) => v + 30),
        },
        length: { target: of.length.target + 400, tol: 0.5 },
      };
    }
  }
}

export function readMade(json: Json): RouteProblem {
  const read = readRouteProblem(JSON.parse(JSON.stringify(json)));
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join('\n'));
  return read.problem;
}
