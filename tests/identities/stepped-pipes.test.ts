/**
 * Pipes whose tube steps: found, checked, damaged, moved by hand.
 *
 * Gaps of pipes of two sizes are held against triangle meshes by a mesh-distance library (three-mesh-bvh) that knows
 * nothing of ours; a wall with a hole against what a rule and a pair of callipers say.
 */
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { test } from 'node:test';
import { BufferAttribute, BufferGeometry, Vector3 } from 'three';
import { MeshBVH } from 'three-mesh-bvh';
import { ByHand, NOTHING_KEPT } from '../../src/gaspath/by-hand.ts';
import { pipeThing } from '../../src/gaspath/hand/surroundings.ts';
import { socketOn } from '../../src/gaspath/hand/tools.ts';
import { HeatedLine } from '../../src/gaspath/hot/heated-line.ts';
import { PrimariesRun } from '../../src/gaspath/primaries.ts';
import { eased } from '../../src/gaspath/relax.ts';
import { ballsOfPipe } from '../../src/gaspath/removal/body.ts';
import { readRouteProblem, solutionJson } from '../../src/gaspath/route/exchange.ts';
import { layoutFrom } from '../../src/gaspath/route/from-elements.ts';
import type { RoutedPipe, RouteProblem, RouteSolution, RouteStep } from '../../src/gaspath/route/problem.ts';
import { siteOf } from '../../src/gaspath/route/site.ts';
import { nearPlaces } from '../../src/gaspath/verify/nearest.ts';
import { laidOut } from '../../src/gaspath/verify/read.ts';
import { sizesAlong } from '../../src/gaspath/verify/sizes.ts';
import { verify } from '../../src/gaspath/verify/verify.ts';
import { pointAt, walk } from '../../src/gaspath/verify/walk.ts';
import { add, cross, scale, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { near } from '../near.ts';
import { slopesAgree } from './slopes.ts';

const textOf = (name: string): string =>
  readFileSync(new URL(`../reference/routing/${name}.json`, import.meta.url), 'utf8');

type Json = Record<string, unknown> & { tube: { od: number; wall: number }; radii: number[] };

/** A kept example with a smaller tube at its flanges: what it had begins at a step. */
function stepped(name: string, less: number, more: Partial<RouteStep> = {}): RouteProblem {
  const json = JSON.parse(textOf(name)) as Json;
  const { od, wall } = json.tube;
  const join = { kind: 'slipped over', length: 10 };
  json.tube = {
    ...json.tube,
    od: od - less,
    steps: [{ from: 250, within: 6, od, wall, join, ...more }],
  } as never;
  const read = readRouteProblem(json);
  assert.ok(read.ok, JSON.stringify(read.ok ? '' : read.problems));
  return read.problem;
}

function solved(problem: RouteProblem, seed = 1): RouteSolution {
  const run = new PrimariesRun(problem, seed);
  for (let k = 0; k < 20_000 && run.solution === undefined; k++) run.advance();
  assert.ok(run.solution, 'solved within 20,000 pieces');
  return run.solution;
}

/** Bends by where they lie along a pipe, by adding up. */
function bendsAlong({ elements }: RoutedPipe): { from: number; to: number; radius: number }[] {
  let s = 0;
  return elements.flatMap((each) => {
    const from = s;
    s += each.kind === 'straight' ? each.length : (each.radius * each.angleDeg * Math.PI) / 180;
    return each.kind === 'straight' ? [] : [{ from, to: s, radius: each.radius }];
  });
}

const REDUCER = {
  join: { kind: 'reducer', length: 30 },
  radii: [55, 80],
} as const satisfies Partial<RouteStep>;

for (const [name, less, more] of [
  ['L1-s1', 3.2, {}],
  ['L3-s1', 3.2, {}],
  ['L5-s1', 3.2, REDUCER],
  ['L6-s1', 6.4, { join: { kind: 'swaged', length: 20 }, within: 12 }],
] as const) {
  test(`${name} stepped up by ${less} mm: found, each step on a straight at its place, bends of their size's radius`, () => {
    const problem = stepped(name, less, more);
    const solution = solved(problem);
    assert.deepEqual(verify(problem, solutionJson(solution)), []);
    const [step] = problem.tube.steps!;
    const { kind, length } = step!.join;
    for (const pipe of solution.pipes) {
      const [at] = pipe.stepsAt!;
      assert.ok(Math.abs(at! - 250) <= step!.within + 1e-6, `at ${at}`);
      const [low, high] = kind === 'slipped over' ? [at! - length, at!] : [at!, at! + length];
      for (const bend of bendsAlong(pipe)) {
        assert.ok(bend.to <= low + 1e-6 || bend.from >= high - 1e-6, 'no bend within the join');
        const radii = bend.from >= high - 1e-6 ? (step!.radii ?? problem.radii) : problem.radii;
        assert.ok(radii.some((radius) => Math.abs(radius - bend.radius) < 1e-6));
      }
    }
    // the same seed finds the same
    assert.deepEqual(solved(problem), solution);
  });
}

test('slopes of all residuals with those of the steps are those of finite differences', () => {
  const problem = stepped('L5-s1', 3.2, { within: 0, join: { kind: 'reducer', length: 60 } });
  let steps = 0;
  slopesAgree(problem, 6, (rig) => {
    steps += rig.pipes.filter((pipe) => pipe.stepOn[0]! >= 0).length;
  });
  assert.equal(steps, 6 * problem.ports.length, 'each pipe has a straight for its step');
});

/** A wall across the way of a straight pipe, with a square hole in it: 62 mm wide, so 31 mm from the middle. */
function throughWall(od: number, steps: readonly RouteStep[]): RouteProblem {
  const half = 31;
  const corners: Vec3[] = [];
  const triangles: number[] = [];
  const panel = (y0: number, y1: number, z0: number, z1: number): void => {
    const first = corners.length;
    for (const [y, z] of [
      [y0, z0],
      [y1, z0],
      [y1, z1],
      [y0, z1],
    ] as const)
      corners.push([WALL, y, z]);
    triangles.push(first, first + 1, first + 2, first, first + 2, first + 3);
  };
  panel(-200, 200, half, 200);
  panel(-200, 200, -200, -half);
  panel(-200, -half, -half, half);
  panel(half, 200, -half, half);
  return {
    tube: { od, wall: 1, densityKgM3: 7900, ...(steps.length === 0 ? {} : { steps }) },
    radii: [60],
    limits: {
      maxBends: 4,
      minStraightFlange: 10,
      minStraightCollector: 10,
      minStraightBetween: 0,
      maxBendDeg: 90,
    },
    length: { target: 400, tol: 1 },
    ports: [{ p: [0, 0, 0], d: [1, 0, 0] }],
    collector: { mode: 'fixed', n: 1, ringRadius: 0, origin: [400, 0, 0], axis: [1, 0, 0], ref: [0, 0, 1] },
    collectorBody: { length: 0, radiusAdd: 0 },
    order: { mode: 'free' },
    shell: { vertices: Float64Array.from(corners.flat()), triangles: Uint32Array.from(triangles) },
    solids: [],
    clearance: { shell: 8, solid: 5, pipe: 5, self: 5, collectorZone: 50, pipeInZone: 1, flangeZone: 20 },
    bounds: { min: [-50, -200, -200], max: [450, 200, 200] },
  };
}
const WALL = 150;
const SMALL = 44;
const LARGE = 48;
const stepAt = (from: number): RouteStep => ({
  from,
  within: 0,
  od: LARGE,
  wall: 1,
  join: { kind: 'slipped over', length: 10 },
});
const straightPipe = (stepsAt?: readonly number[]): unknown =>
  solutionJson({
    collector: { origin: [400, 0, 0], axis: [1, 0, 0], ref: [0, 0, 1] },
    pipes: [
      {
        port: 0,
        inlet: 0,
        start: { p: [0, 0, 0], d: [1, 0, 0] },
        elements: [{ kind: 'straight', length: 400 }],
        ...(stepsAt === undefined ? {} : { stepsAt }),
      },
    ],
  });

test('through a hole of 62 mm with 8 mm of air: 44 mm goes (22 + 8 < 31), 48 mm does not (24 + 8 > 31)', () => {
  const codes = (problem: RouteProblem, at?: readonly number[]): string[] =>
    verify(problem, straightPipe(at)).map(({ code }) => code);
  assert.deepEqual(codes(throughWall(SMALL, [])), []);
  assert.deepEqual(codes(throughWall(LARGE, [])), ['shell']);
  // the larger tube begins a lap of 10 mm before its step: behind the wall it goes, in it it does not
  assert.deepEqual(codes(throughWall(SMALL, [stepAt(200)])), []);
  assert.deepEqual(codes(throughWall(SMALL, [stepAt(155)])), ['shell']);
  assert.deepEqual(codes(throughWall(SMALL, [stepAt(100)])), ['shell']);
  // its end stands 5 mm behind the wall and is taken for round: sqrt(31² + 5²) - 24 = 7.40 mm, where a square one has 8.60
  const [breach] = verify(throughWall(SMALL, [stepAt(165)]), straightPipe());
  near(breach!.has! - 24, Math.hypot(31, 5) - 24, 0.01);
  // 8 mm behind the wall: sqrt(31² + 8²) - 24 = 8.02 mm are enough
  assert.deepEqual(codes(throughWall(SMALL, [stepAt(168)])), []);
});

test('the finder goes through that hole where the small tube is in it, and sees that the large one cannot', () => {
  const problem = throughWall(SMALL, [stepAt(200)]);
  assert.deepEqual(verify(problem, solutionJson(solved(problem))), []);
  for (const steps of [stepAt(155), stepAt(100)]) {
    const run = new PrimariesRun(throughWall(SMALL, [steps]), 1);
    for (let k = 0; k < 150 && run.causes.length === 0; k++) run.advance();
    assert.equal(run.solution, undefined);
  }
});

/** A tube of one radius over a part of a pipe, as triangles; facets lie inside by a few hundredths of a millimetre. */
function skinOf(places: readonly Vec3[], radius: number): MeshBVH {
  const round = 96;
  const points: number[] = [];
  const index: number[] = [];
  places.forEach((p, k) => {
    const [a, b] = [places[Math.max(0, k - 1)]!, places[Math.min(places.length - 1, k + 1)]!];
    const t = unit([b[0] - a[0], b[1] - a[1], b[2] - a[2]]);
    const u = unit(cross(t, Math.abs(t[2]) < 0.8 ? [0, 0, 1] : [1, 0, 0]));
    const v = cross(t, u);
    for (let q = 0; q < round; q++) {
      const angle = (2 * Math.PI * q) / round;
      points.push(...add(p, add(scale(u, radius * Math.cos(angle)), scale(v, radius * Math.sin(angle)))));
    }
    if (k === 0) return;
    for (let q = 0; q < round; q++) {
      const [i, j] = [(k - 1) * round + q, (k - 1) * round + ((q + 1) % round)];
      index.push(i, j, i + round, j, j + round, i + round);
    }
  });
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(Float32Array.from(points), 3));
  geometry.setIndex(index);
  return new MeshBVH(geometry);
}

test('gaps of pipes of two sizes are those of a mesh-distance library to 0.15 mm', () => {
  const problem = stepped('L3-s1', 6.4);
  const solution = solved(problem);
  const laid = laidOut(solutionJson(solution));
  const { od, steps } = problem.tube;
  const parts = laid.map(({ pipe, path }) => {
    const begins = pipe.stepsAt![0]! - 10;
    const lines = [
      [0, begins, od / 2],
      [begins, path.length, steps![0]!.od / 2],
    ].map(([from, to, radius]) => {
      const count = Math.ceil(to! - from!);
      const places = Array.from({ length: count + 1 }, (_, k) =>
        pointAt(path, from! + ((to! - from!) * k) / count),
      );
      return { places, from: from!, radius: radius!, skin: skinOf(places, radius!) };
    });
    return { port: pipe.port, length: path.length, lines };
  });
  type Part = (typeof parts)[number];
  const zone = problem.clearance.collectorZone;
  /** Least gap of places of one pipe before its collector's zone to the skins of the other, and of which size it is. */
  const least = (one: Part, two: Part): { readonly gap: number; readonly radius: number } =>
    one.lines
      .flatMap(({ places, from, radius }) =>
        places
          .filter((_, k) => from + k < one.length - zone)
          .map((p) => ({
            gap:
              Math.min(
                ...two.lines.map(({ skin }) => skin.closestPointToPoint(new Vector3(...p))!.distance),
              ) - radius,
            radius,
          })),
      )
      .reduce((a, b) => (b.gap < a.gap ? b : a));
  const told = new Map<string, number>();
  for (const { kind, pipe, other, inZone, gap } of nearPlaces(problem, solution.collector, laid, 20)) {
    if (kind !== 'pipe to pipe' || inZone) continue;
    const key = `${pipe} ${other}`;
    told.set(key, Math.min(told.get(key) ?? Infinity, gap));
  }
  let alike = 0;
  const radii = new Set<number>();
  for (const [key, gap] of told) {
    const [one, two] = key.split(' ').map((port) => parts.find((each) => each.port === Number(port))!);
    const found = [least(one!, two!), least(two!, one!)].reduce((a, b) => (b.gap < a.gap ? b : a));
    // facets: 24 (1 - cos(180°/96)) = 0.013 mm; places 1 mm apart; the checker halves to half a millimetre of place
    assert.ok(found.gap > gap - 0.15, `${key}: ${found.gap} and ${gap}`);
    // beside a shoulder the checker takes the larger tube's end for round, which leaves more room than there need be
    if (Math.abs(found.gap - gap) > 0.15) continue;
    alike += 1;
    radii.add(found.radius);
  }
  assert.ok(alike >= 4 && alike >= told.size - 1, `${alike} of ${told.size}`);
  assert.equal(radii.size, 2, 'nearest on the smaller tube and on the larger');
});

test('damaged answers are refused: a step off its place, in a bend, of too few; bends and gaps of the wrong size', () => {
  const problem = stepped('L5-s1', 3.2, REDUCER);
  const good = JSON.parse(JSON.stringify(solutionJson(solved(problem)))) as {
    pipes: Record<string, unknown>[];
  };
  const codes = (
    change: (pipe: { stepsAt: number[]; elements: Record<string, number>[] }) => void,
    of = problem,
  ) => {
    const json = structuredClone(good);
    change(json.pipes[0] as never);
    return verify(of, json).map(({ code }) => code);
  };
  assert.deepEqual(
    codes(() => undefined),
    [],
  );
  assert.ok(codes((pipe) => pipe.stepsAt.splice(0, 1, 260)).includes('step'));
  assert.ok(codes((pipe) => pipe.stepsAt.splice(0, 1)).includes('step'));
  assert.ok(codes((pipe) => pipe.stepsAt.push(300)).includes('step'));
  // free to stand anywhere, put into the first bend
  const loose = stepped('L5-s1', 3.2, { ...REDUCER, within: 200 });
  const first = bendsAlong(good.pipes[0] as never as RoutedPipe)[0]!;
  const into = verify(loose, {
    ...good,
    pipes: good.pipes.map((pipe, k) =>
      k === 0 ? { ...pipe, stepsAt: [(first.from + first.to) / 2] } : pipe,
    ),
  });
  assert.ok(into.some(({ code, says }) => code === 'step' && says.includes('in a bend')));
  // a bend behind the step of the smaller size's radius
  const last = bendsAlong(good.pipes[0] as never as RoutedPipe).length;
  assert.ok(
    codes((pipe) => {
      const bends = pipe.elements.filter((each) => each.radius !== undefined);
      bends[last - 1]!.radius = problem.radii[0]!;
    }).includes('radius'),
  );
  // the same pipes in a tube that is thick from the flange on: nearer than asked somewhere
  const thick = { ...problem, tube: { ...problem.tube, od: problem.tube.od + 3.2 } };
  const plainGood = structuredClone(good);
  const found = verify(thick, plainGood).map(({ code }) => code);
  assert.ok(
    found.some((code) => code === 'shell' || code === 'solid' || code === 'pipe to pipe'),
    found.join(),
  );
});

test('a problem with a wrong step is refused with its place', () => {
  const refused = (step: Record<string, unknown>, ...more: Record<string, unknown>[]): string => {
    const json = JSON.parse(textOf('L1-s1')) as Json;
    const whole = { from: 200, od: 50, wall: 1, join: { kind: 'slipped over', length: 10 }, ...step };
    json.tube = { ...json.tube, steps: [whole, ...more] } as never;
    const read = readRouteProblem(json);
    assert.equal(read.ok, false);
    return read.ok ? '' : read.problems.map(({ message }) => message).join('\n');
  };
  assert.match(refused({ from: -3 }), /\$\.tube\.steps\[0\]\.from: -3 is out of reach/);
  assert.match(refused({ wall: 30 }), /steps\[0\]\.wall/);
  assert.match(refused({ join: { kind: 'glued', length: 3 } }), /"slipped over" or "swaged" or "reducer"/);
  assert.match(refused({ radii: [] }), /steps\[0\]\.radii: the list is empty/);
  assert.match(refused({ from: 5 }), /before the pipe does/);
  assert.match(refused({ from: 4000 }), /the pipe ends at/);
  assert.match(
    refused({}, { from: 209, od: 52, wall: 1, join: { kind: 'slipped over', length: 12 } }),
    /steps\[1\]\.from: its join may begin 197\.0 mm/,
  );
});

test('moved by hand: length exact, each step still on its straight, and what stops it is the step', () => {
  const problem = stepped('L3-s1', 3.2);
  const solution = solved(problem, 3);
  const site = siteOf(problem);
  const layout = layoutFrom(solution, problem.radii[0]!);
  const barred = new Set<string>();
  // three of the five pipes: a pull takes a tenth of a second and more
  solution.pipes.slice(0, 3).forEach((_, pipe) => {
    for (const way of [
      [1, 0, 0],
      [0, 0, 1],
    ] as const)
      for (let corner = 1; corner <= layout.pipes[pipe]!.corners; corner++) {
        const hand = new ByHand(site, layout, NOTHING_KEPT);
        const { at } = hand.bends()[pipe]![corner - 1]!;
        const moved = hand.pull({ kind: 'bend', pipe, corner, to: add(at, scale(way, 60)) });
        if (moved.stop?.kind === 'shape') barred.add(moved.stop.bar.what);
        const codes = verify(problem, solutionJson(moved.lies)).map(({ code }) => code);
        // room may be lacking while a hand pulls; shape and steps are held
        for (const code of ['length', 'end', 'straight', 'step', 'radius'] as const)
          assert.ok(!codes.includes(code), `${code} of pipe ${pipe}, bend ${corner}`);
        const rested = hand.rest();
        assert.deepEqual(verify(problem, solutionJson(rested.lies)), []);
      }
  });
  assert.ok(barred.has('step'), `stopped by ${[...barred].join()}`);
});

test('eased radii are those of each size, none closer than its own diameter', () => {
  const problem = stepped('L5-s1', 3.2, { radii: [52, 80] });
  const { od } = problem.tube.steps![0]!;
  const some = eased(problem, 'radius', 0.5)!;
  assert.equal(Math.min(...some.tube.steps![0]!.radii!), Math.max(51.5, od) === 51.5 ? 51.5 : 52);
  assert.equal(eased(problem, 'radius', 30), undefined);
});

/** Along x from the origin, 400 mm, of 44 mm to 250 and of 48 mm behind a swaged end of 20 mm, millimetres. */
const LONG = walk({ p: [0, 0, 0], d: [1, 0, 0] }, [
  { kind: 'straight', length: 400, radius: 0, angle: 0, normal: [0, 0, 0] },
]);
const SIZES = sizesAlong(
  {
    od: 44,
    wall: 1,
    densityKgM3: 7900,
    steps: [{ from: 250, within: 0, od: 48, wall: 1, join: { kind: 'swaged', length: 20 } }],
  },
  {},
  400,
);

test('hands, tools and the way off meet each length of a pipe by its own radius', () => {
  const thing = pipeThing('pipe', LONG, SIZES);
  near(thing.from([100, 60, 0], 100), 60 - 22, 1e-9);
  near(thing.from([350, 60, 0], 100), 60 - 24, 1e-9);
  // over its join it counts as the larger
  near(thing.from([255, 60, 0], 100), 60 - 24, 1e-9);
  const balls = ballsOfPipe(LONG, SIZES);
  for (const { at, r } of balls) assert.equal(r, at[0] >= 250 ? 24 : 22);
  // an M8 stud along y, its nut 42 mm from the middle line: a socket of 17 mm passes 22 mm of tube and not 24 mm
  const socket = (x: number) =>
    socketOn(
      { at: [x, -20, 31.5], axis: [0, 1, 0], across: [1, 0, 0], height: 6, standsOut: 8 },
      {
        atNut: 17,
        atDrive: 17,
        length: 25,
        bar: { ends: 12, shank: 8, lengths: [50, 100] },
        ratchet: { across: 25, high: 20, handle: 120, thick: 14 },
      },
      {
        pipes: [{ name: 'pipe', path: LONG, radius: SIZES }],
        things: [],
        port: [0, 0, -900],
        flangeZone: 0,
      },
    );
  assert.equal(socket(120).goes, true);
  assert.deepEqual(socket(330), { goes: false, stoppedBy: 'pipe' });
});

/**
 * A stepped cantilever with a force at its free end: δ = P/(3 E) (b³/I₂ + (L³ − b³)/I₁), b the outer part (J. M. Gere,
 * B. J. Goodno, Mechanics of Materials, 8th ed., nonprismatic beams, from memory; it is the moment-area theorem).
 */
test('hot, a stepped pipe gives to a force at its mouth as the stepped cantilever of the handbook', () => {
  const [small, large] = [
    { od: 0.0445, wall: 0.0012, density: 8440 },
    { od: 0.0476, wall: 0.0015, density: 8440 },
  ];
  const E = 160e9;
  const [L, b] = [0.6, 0.25];
  const line = new HeatedLine(
    {
      name: '1',
      tube: small,
      start: { p: [0, 0, 0], d: [1, 0, 0] },
      elements: [
        { kind: 'straight', length: L - b },
        { kind: 'straight', length: b },
      ],
      steps: [{ element: 1, tube: large, join: { kind: 'slipped over', length: 0 } }],
    },
    { expansion: 14e-6, hotter: 700 },
    E,
  );
  const second = ({ od, wall }: typeof small): number => (Math.PI / 64) * (od ** 4 - (od - 2 * wall) ** 4);
  const expected = (b ** 3 / second(large) + (L ** 3 - b ** 3) / second(small)) / (3 * E);
  near(line.compliance[1]![1] / expected, 1, 1e-9);
  near(line.byHeat[0], 14e-6 * 0.6 * 700, 1e-12);
  // hardest at the clamp, on the smaller tube: P L r/(E I)
  const { strain } = line.strained([0, 1, 0, 0, 0, 0]);
  near(strain / ((L * small.od) / 2 / (E * second(small))), 1, 0.02);
});
