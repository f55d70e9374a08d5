/** Wraps rolled round their tubes again: where the cut lies in space, found another way. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import {
  bendCut,
  type Flange,
  flangeFaults,
  flangeTemplate,
  type Merge,
  mergeCut,
  mergeFault,
  mergeWrap,
  mitreCut,
  onArc,
  type Point2,
  type PortShape,
  portDiscs,
  type Saddle,
  saddleCut,
  saddleFault,
  saddleWrap,
  type Template,
  type TemplateArc,
  type TemplatePolyline,
  touchingRing,
  wrapWidth,
} from '../../src/gaspath/pipework/index.ts';
import { add, cross, dot, length, scale, sub, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';
import { near } from '../near.ts';

const DEG = Math.PI / 180;

/** Distance of a point from a line through `on` along the unit vector `d`. */
const fromLine = (p: Vec3, on: Vec3, d: Vec3): number => length(cross(sub(p, on), d));

/** A tube as it stands on the bench: middle of its datum, direction towards its cut end, the side of place 0. */
interface Bench {
  readonly datum: Vec3;
  readonly towardsCut: Vec3;
  readonly zero: Vec3;
  readonly od: number;
}

/**
 * A point of the paper rolled on: seen from outside with the cut upwards, x on the paper runs to the right, which is
 * (towards the cut) × (outwards), and so right-handed about the direction towards the cut.
 */
function rolled(bench: Bench, place: number, up: number): Vec3 {
  const right = cross(bench.towardsCut, bench.zero);
  const out = add(scale(bench.zero, Math.cos(place)), scale(right, Math.sin(place)));
  return add(add(bench.datum, scale(out, bench.od / 2)), scale(bench.towardsCut, up));
}

const cutLine = (template: Template): TemplatePolyline =>
  template.lines.find((each): each is TemplatePolyline => each.kind === 'polyline' && each.use === 'cut')!;

/** How far the straight side of the paper is from the datum, as its note says, m. */
const told = (template: Template): number =>
  Number(/straight side is ([\d.]+) mm/.exec(template.notes.join(' '))![1]) / 1e3;

const anySaddle = fc
  .record({
    R: real(0.02, 0.04),
    share: real(0.2, 1),
    off: real(-1, 1),
    angle: real(25 * DEG, 155 * DEG),
  })
  .map(({ R, share, off, angle }): Saddle => {
    const r = share * R;
    return {
      main: { od: 2 * R },
      branch: { od: 2 * r, wall: 0.001 },
      angle,
      offset: off * (R - r),
      sits: 'outside',
    };
  });

test('a saddle rolled on the branch lies on both tubes, offset and angle counted in', () => {
  fc.assert(
    fc.property(anySaddle, real(0, 2 * Math.PI), (saddle, place) => {
      assert.equal(saddleFault(saddle), undefined);
      const { angle: β, offset: e, main, branch } = saddle;
      // main tube along z through the origin; the branch leaves it with its free end towards `back`
      const back: Vec3 = [Math.sin(β), 0, Math.cos(β)];
      const towardsCut = scale(back, -1);
      // on the side of the wide angle: against the main direction that makes β with the branch
      const zero: Vec3 = [Math.cos(β), 0, -Math.sin(β)];
      const ninety = cross(towardsCut, zero);
      const bench = { datum: scale(ninety, e), towardsCut, zero, od: branch.od };
      const p = rolled(bench, place, -saddleCut(saddle)(place));
      // 1e-9 m: where the tubes nearly touch the root magnifies rounding by 1e4
      near(fromLine(p, [0, 0, 0], [0, 0, 1]), main.od / 2, 1e-9);
      near(fromLine(p, bench.datum, back), branch.od / 2, 1e-12);
      // and the near side of the main tube, not where the branch would come out again
      assert.ok(dot(p, [Math.sin(β), 0, 0]) >= -branch.od, 'the far side');
    }),
  );
});

test('the paper of a saddle, laid with its straight side where it says, has its cut on both tubes', () => {
  fc.assert(
    fc.property(anySaddle, (saddle) => {
      const paper = saddleWrap({ ...saddle, name: 'saddle' });
      const side = told(paper);
      const width = wrapWidth(saddle.branch.od);
      const β = saddle.angle;
      const back: Vec3 = [Math.sin(β), 0, Math.cos(β)];
      const towardsCut = scale(back, -1);
      const zero: Vec3 = [Math.cos(β), 0, -Math.sin(β)];
      const axis = scale(cross(towardsCut, zero), saddle.offset);
      const bench = { datum: add(axis, scale(back, side)), towardsCut, zero, od: saddle.branch.od };
      for (const { x, y } of cutLine(paper).points) {
        const p = rolled(bench, (x / width) * 2 * Math.PI, y);
        // the note is printed to 0.01 mm, and the cut may meet the main tube at a slant
        near(fromLine(p, [0, 0, 0], [0, 0, 1]), saddle.main.od / 2, 1e-5);
      }
    }),
    { numRuns: 30 },
  );
});

test('a thick branch cut on its bore sits with its bore on the main tube', () => {
  const saddle: Saddle = {
    main: { od: 0.06 },
    branch: { od: 0.048, wall: 0.003 },
    angle: 60 * DEG,
    offset: 0,
    sits: 'bore',
  };
  const r = 0.021;
  for (const place of [0, 1, 2, 3]) {
    const h = saddleCut(saddle)(place);
    const x = r * Math.cos(place) * Math.cos(60 * DEG) + h * Math.sin(60 * DEG);
    near(Math.hypot(x, r * Math.sin(place)), 0.03, 1e-12);
  }
  assert.match(saddleFault({ ...saddle, offset: 0.01 })!, /over the edge/);
  assert.match(saddleFault({ ...saddle, angle: Math.PI })!, /angle/);
});

const anyMerge = fc.record({
  tubes: fc.integer({ min: 2, max: 6 }),
  od: real(0.03, 0.06),
  lean: real(4 * DEG, 40 * DEG),
});

test('a merge cut lies on the tube and on a plane half-way to a neighbour, and on the neighbour’s cut', () => {
  fc.assert(
    fc.property(anyMerge, real(0, 2 * Math.PI), (merge: Merge, place) => {
      assert.equal(mergeFault(merge), undefined);
      const { lean: γ, tubes: n, od } = merge;
      // collector along z, the axes meet at the origin; this tube comes from +x and −z
      const towardsCut: Vec3 = [-Math.sin(γ), 0, Math.cos(γ)];
      const zero: Vec3 = [Math.cos(γ), 0, Math.sin(γ)];
      const bench = { datum: [0, 0, 0] as Vec3, towardsCut, zero, od };
      const p = rolled(bench, place, -mergeCut(merge)(place));
      near(fromLine(p, [0, 0, 0], towardsCut), od / 2, 1e-12);
      // the half-plane at ±π/n from the tube about the collector
      const side = Math.sign(p[1]) || 1;
      const across: Vec3 = [Math.sin(Math.PI / n), -side * Math.cos(Math.PI / n), 0];
      near(dot(p, across), 0, 1e-10);
      // mirrored in that plane the tube is its neighbour: the same point lies on the neighbour's skin
      const turn = (side * 2 * Math.PI) / n;
      const next: Vec3 = [towardsCut[0] * Math.cos(turn), towardsCut[0] * Math.sin(turn), towardsCut[2]];
      near(fromLine(p, [0, 0, 0], next), od / 2, 1e-10);
    }),
  );
});

test('two tubes that merge are mitred: a wrap of PW-15 with a mitre of 90° less their lean', () => {
  const merge = mergeCut({ tubes: 2, od: 0.048, lean: 20 * DEG });
  const mitre = mitreCut({ od: 0.048, mitre: 70 * DEG });
  for (const place of [0, 0.7, 2, Math.PI]) near(merge(place) - merge(0), mitre(place), 1e-12);
});

test('the outlet’s square cut is square to the collector; an outlet behind all cuts nothing', () => {
  const merge: Merge = { tubes: 4, od: 0.048, lean: 12 * DEG, outlet: 0.03 };
  const towardsCut: Vec3 = [-Math.sin(merge.lean), 0, Math.cos(merge.lean)];
  const zero: Vec3 = [Math.cos(merge.lean), 0, Math.sin(merge.lean)];
  const bench = { datum: [0, 0, 0] as Vec3, towardsCut, zero, od: merge.od };
  near(rolled(bench, 0, -mergeCut(merge)(0))[2], -0.03, 1e-12);
  const { outlet: _, ...long } = merge;
  near(mergeCut({ ...merge, outlet: -1 })(1), mergeCut(long)(1), 0);
  assert.match(mergeFault({ ...merge, lean: 0 })!, /do not lean/);
  assert.match(mergeFault({ ...merge, tubes: 1 })!, /two tubes/);
  assert.ok(cutLine(mergeWrap({ ...merge, name: 'merge' })).points.length > 700);
});

test('parallel tubes of a ring touch at D/(2 sin(π/n)): four stand on the corners of a square of one diameter', () => {
  near(touchingRing(0.048, 4), 0.048 / Math.SQRT2, 1e-15);
  // six stand round a seventh (common practice, no source)
  near(touchingRing(0.048, 6), 0.048, 1e-15);
});

test('a cut on a bend lies in a plane through the centre of the bend', () => {
  const of = { radius: 0.072, od: 0.048, angle: 30 * DEG };
  for (const place of [0, 1, 2, 3, 4]) {
    // the height is an arc about the centre of the bend, at the skin's own radius
    const skin = of.radius + (of.od / 2) * Math.cos(place);
    near(bendCut(of)(place) / skin, 30 * DEG, 1e-12);
  }
});

const SHAPES: readonly PortShape[] = [
  { kind: 'round', diameter: 0.04 },
  { kind: 'oval', width: 0.046, height: 0.034 },
  { kind: 'oval', width: 0.034, height: 0.046 },
  { kind: 'D', width: 0.042, height: 0.036, corner: 0.006 },
  { kind: 'D', width: 0.034, height: 0.046, corner: 0.004 },
];

const flange = (port: PortShape): Flange => ({
  name: 'test',
  port,
  bolts: [
    { at: { x: -0.042, y: 0.004 }, hole: 0.0085 },
    { at: { x: 0.042, y: -0.004 }, hole: 0.0085 },
  ],
  land: { port: 0.006, bolt: 0.008 },
});

/** Outlines of a flange in points, arcs by many: the plate first, then the port, then the holes. */
function outlines(template: Template): Point2[][] {
  const found: Point2[][] = [];
  for (const line of template.lines.filter(({ use }) => use === 'cut')) {
    const points =
      line.kind === 'polyline'
        ? [...line.points]
        : Array.from({ length: 401 }, (_, k) => onArc(line, line.from + ((line.to - line.from) * k) / 400));
    const last = found.at(-1);
    const end = last?.at(-1);
    const start = points[0]!;
    if (last !== undefined && end !== undefined && Math.hypot(end.x - start.x, end.y - start.y) < 1e-8)
      last.push(...points);
    else found.push(points);
  }
  return found;
}

const areaOf = (points: readonly Point2[]): number =>
  points.reduce((sum, p, k) => {
    const q = points[(k + 1) % points.length]!;
    return sum + (p.x * q.y - q.x * p.y) / 2;
  }, 0);

test('ports have the area of their shape, by handbook sums of circles and rectangles', () => {
  const expected = [
    (Math.PI / 4) * 0.04 ** 2,
    (Math.PI / 4) * 0.034 ** 2 + 0.034 * 0.012,
    (Math.PI / 4) * 0.034 ** 2 + 0.034 * 0.012,
    (Math.PI / 8) * 0.042 ** 2 + 0.042 * (0.036 - 0.021) - (2 - Math.PI / 2) * 0.006 ** 2,
    (Math.PI / 8) * 0.034 ** 2 + 0.034 * (0.046 - 0.017) - (2 - Math.PI / 2) * 0.004 ** 2,
  ];
  SHAPES.forEach((port, k) => {
    assert.deepEqual(flangeFaults(flange(port)), []);
    const found = outlines(flangeTemplate(flange(port)));
    assert.equal(found.length, 4, `plate, port and two holes; ${port.kind}`);
    // 400 chords of a whole circle fall short of it by (2π/400)²/6 = 4.1e-5
    near(areaOf(found[1]!) / expected[k]!, 1, 5e-5);
    assert.ok(areaOf(found[0]!) > areaOf(found[1]!));
  });
});

test('the plate leaves its land round port and bolts, and no more than a band round them takes', () => {
  for (const port of SHAPES) {
    const of = flange(port);
    const [plate] = outlines(flangeTemplate(of));
    const inner = [
      ...portDiscs(port).map((disc) => ({ ...disc, radius: disc.radius + of.land.port })),
      ...of.bolts.map(({ at, hole }) => ({ centre: at, radius: hole / 2 + of.land.bolt, over: undefined })),
    ];
    for (let k = 0; k < 360; k += 1) {
      const [c, s] = [Math.cos(k * DEG), Math.sin(k * DEG)];
      const outline = Math.max(...plate!.map(({ x, y }) => x * c + y * s));
      const wanted = Math.max(
        ...inner.map(({ centre, radius, over }) =>
          over === undefined || (k * DEG >= over[0] && k * DEG <= over[1])
            ? centre.x * c + centre.y * s + radius
            : -1,
        ),
      );
      near(outline, wanted, 1e-6, `${port.kind} at ${k}°`);
    }
  }
});

test('a hole in the port, or a port that is no D, is said', () => {
  const round = flange(SHAPES[0]!);
  const close = { ...round, bolts: [{ at: { x: 0.022, y: 0 }, hole: 0.0085 }] };
  assert.match(flangeFaults(close)[0]!, /hole 1 runs into the port/);
  const flat = flange({ kind: 'D', width: 0.05, height: 0.02, corner: 0.004 });
  assert.match(flangeFaults(flat).join(), /half its width/);
  const arcs = flangeTemplate(round).lines.filter((each): each is TemplateArc => each.kind === 'arc');
  assert.ok(arcs.length >= 7);
});
