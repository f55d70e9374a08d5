/**
 * A bank's primaries drawn from the side and from above, to scale, nearer pipes over farther ones.
 *
 * In    a set, the side of the car that it is on, the width there is
 * Out   a block
 *
 * Each pipe is laid down in short pieces from far to near: a white band and its two edges. What is nearer covers what
 * is farther, which gives the hidden lines without reckoning where they begin.
 */
import type { BankName } from '../car/check-exhaust.ts';
import { along, cross, distance, dot, scale, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { PrimariesSet, PrimaryOfSet, TubeOfPipe } from '../questions/primaries-set.ts';
import type { Block } from './lay-out.ts';
import { DASH, LINE, line, type Mark, type PaperPoint, polyline, SIZE, text } from './page.ts';

/** How a view lies on the paper: unit directions of the car, towards right, top and the eye. */
interface View {
  readonly name: string;
  readonly right: Vec3;
  readonly up: Vec3;
  readonly eye: Vec3;
}

const VIEWS: Readonly<Record<BankName, readonly View[]>> = {
  left: [
    { name: 'From the left; forward is to the left', right: [-1, 0, 0], up: [0, 0, 1], eye: [0, 1, 0] },
    { name: 'From above; outboard is down', right: [-1, 0, 0], up: [0, -1, 0], eye: [0, 0, 1] },
  ],
  right: [
    { name: 'From the right; forward is to the right', right: [1, 0, 0], up: [0, 0, 1], eye: [0, -1, 0] },
    { name: 'From above; outboard is down', right: [1, 0, 0], up: [0, 1, 0], eye: [0, 0, 1] },
  ],
};

/** Scales of ISO 5455 (from memory) that a bank is drawn to. */
const SCALES = [2, 5, 10, 20] as const;
const NAME_ROOM = 5;
const LABEL_ROOM = 4;
/** Length of a piece of pipe that is nearer or farther as a whole, m. */
const PIECE = 0.012;
/** Of the collector's axis that is drawn, m. */
const AXIS = 0.09;

interface Layer {
  readonly depth: number;
  readonly marks: readonly Mark[];
}

export function primariesView(
  set: PrimariesSet,
  side: BankName,
  room: { width: number; height: number },
): Block {
  const r = Math.max(...set.pipes.flatMap(({ tubes }) => tubes.map(({ od }) => od / 2)));
  const { mouth, axis } = set.collector;
  const points = [...set.pipes.flatMap(({ line: of }) => of), along(mouth, axis, AXIS)];
  const boxes = VIEWS[side].map((view) => {
    const ends = (way: Vec3): readonly [number, number] => {
      const all = points.map((p) => dot(p, way));
      return [Math.min(...all) - r, Math.max(...all) + r];
    };
    return { view, x: ends(view.right), y: ends(view.up) };
  });
  const widest = 1e3 * Math.max(...boxes.map(({ x }) => x[1] - x[0]));
  const highest = 1e3 * boxes.reduce((sum, { y }) => sum + y[1] - y[0], 0);
  const rows = boxes.length * (NAME_ROOM + LABEL_ROOM);
  const by =
    SCALES.find((each) => widest / each <= room.width && highest / each + rows <= room.height) ??
    SCALES.at(-1)!;
  const perMetre = 1e3 / by;
  return {
    height: highest / by + rows,
    marks: (at) => {
      let top = at.y;
      return boxes.flatMap(({ view, x, y }) => {
        const paper = (p: Vec3): PaperPoint => ({
          x: at.x + (room.width - (x[1] - x[0]) * perMetre) / 2 + (dot(p, view.right) - x[0]) * perMetre,
          y: top + NAME_ROOM + (y[1] - dot(p, view.up)) * perMetre,
        });
        const marks = [
          text({ x: at.x, y: top + 3.4 }, `${view.name}. Scale 1:${by}`, { size: SIZE.small }),
          line(paper(along(mouth, axis, -AXIS / 3)), paper(along(mouth, axis, AXIS)), {
            weight: LINE.hair,
            dash: DASH.centre,
          }),
          ...drawn(set.pipes, view, paper),
        ];
        top += NAME_ROOM + LABEL_ROOM + (y[1] - y[0]) * perMetre;
        return marks;
      });
    },
  };
}

function drawn(pipes: readonly PrimaryOfSet[], view: View, paper: (p: Vec3) => PaperPoint): Mark[] {
  const layers = pipes.flatMap((pipe) => layersOf(pipe, view, paper));
  layers.sort((a, b) => a.depth - b.depth);
  return layers.flatMap(({ marks }) => marks);
}

function layersOf(of: PrimaryOfSet, view: View, paper: (p: Vec3) => PaperPoint): Layer[] {
  const { tubes, pipe, cylinder, line: whole } = of;
  const [first, last] = [tubes[0]!, tubes.at(-1)!];
  const [mouth, before] = [whole.at(-1)!, whole.at(-2)!];
  return [
    ...tubes.flatMap((tube) => bandsOf(tube, view, paper)),
    // each end a little nearer than the band behind it, or its face would be covered
    end(whole[0]!, pipe.start.d, first.od / 2, view, paper, String(cylinder)),
    end(mouth, unit(sub(mouth, before)), last.od / 2, view, paper),
    // where the tube steps: the end of the larger, as far round as the eye sees it
    ...tubes
      .slice(1)
      .map(({ od, line: [at, next] }, k) =>
        shoulder(at!, unit(sub(next!, at!)), Math.max(od, tubes[k]!.od) / 2, view, paper),
      ),
  ];
}

function bandsOf({ od, line: drawn }: TubeOfPipe, view: View, paper: (p: Vec3) => PaperPoint): Layer[] {
  const r = od / 2;
  const points = closer(drawn);
  const last = points.length - 1;
  // towards the edge of the band that the eye sees; from the neighbours, so that bands join without steps
  const edges = points.map((_, k): Vec3 | undefined => {
    const way = sub(points[Math.min(k + 1, last)]!, points[Math.max(k - 1, 0)]!);
    const across = cross(view.eye, way);
    // a pipe that comes straight at the eye has no edges, only its end
    return Math.hypot(...across) < 1e-2 * Math.hypot(...way) ? undefined : scale(unit(across), r);
  });
  return points.slice(1).flatMap((to, k): Layer[] => {
    const from = points[k]!;
    const [a, b] = [edges[k], edges[k + 1]];
    if (a === undefined || b === undefined) return [];
    const corner = (p: Vec3, edge: Vec3, sign: number): PaperPoint => paper(along(p, edge, sign));
    const [a1, b1, b2, a2] = [corner(from, a, 1), corner(to, b, 1), corner(to, b, -1), corner(from, a, -1)];
    return [
      {
        depth: (dot(from, view.eye) + dot(to, view.eye)) / 2,
        marks: [
          polyline(lapped([a1, b1, b2, a2]), { closed: true, weight: 0, fill: 1 }),
          line(a1, b1, { weight: LINE.thin }),
          line(a2, b2, { weight: LINE.thin }),
        ],
      },
    ];
  });
}

/** Part of its length by which a band laps over its neighbours, so that nothing shows between them. */
const LAP = 0.06;

function lapped([a1, b1, b2, a2]: readonly [PaperPoint, PaperPoint, PaperPoint, PaperPoint]): PaperPoint[] {
  const beyond = (from: PaperPoint, to: PaperPoint): PaperPoint => ({
    x: to.x + LAP * (to.x - from.x),
    y: to.y + LAP * (to.y - from.y),
  });
  return [beyond(b1, a1), beyond(a1, b1), beyond(a2, b2), beyond(b2, a2)];
}

const STEPS = 36;

/** The face of an end, with words on it. */
function end(p: Vec3, d: Vec3, r: number, view: View, paper: (p: Vec3) => PaperPoint, words?: string): Layer {
  const u = unit(cross(d, Math.abs(d[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
  const v = cross(d, u);
  const rim = Array.from({ length: STEPS }, (_, k) => {
    const angle = (2 * Math.PI * k) / STEPS;
    return paper(along(along(p, u, r * Math.cos(angle)), v, r * Math.sin(angle)));
  });
  const middle = paper(p);
  return {
    depth: dot(p, view.eye) + r / 4,
    marks: [
      polyline(rim, { closed: true, weight: LINE.thin, fill: 1 }),
      ...(words === undefined
        ? []
        : [
            text({ x: middle.x, y: middle.y + SIZE.small / 3 }, words, {
              size: SIZE.small,
              weight: 'bold',
              align: 'middle',
            }),
          ]),
    ],
  };
}

/** The half of a rim round a pipe that faces the eye. */
function shoulder(p: Vec3, d: Vec3, r: number, { eye }: View, paper: (p: Vec3) => PaperPoint): Layer {
  const side = cross(d, eye);
  // seen end on, any way across will do: the rim is a circle about the pipe
  const u = unit(Math.hypot(...side) < 1e-6 ? cross(d, Math.abs(d[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]) : side);
  const towards = cross(u, d);
  const rim = Array.from({ length: STEPS / 2 + 1 }, (_, k) => {
    const angle = (2 * Math.PI * k) / STEPS;
    return paper(along(along(p, u, r * Math.cos(angle)), towards, r * Math.sin(angle)));
  });
  return { depth: dot(p, eye) + r / 4, marks: [polyline(rim, { weight: LINE.thin })] };
}

/** The same line with no two points farther apart than a piece. */
const closer = (points: readonly Vec3[]): readonly Vec3[] => [
  points[0]!,
  ...points.slice(1).flatMap((to, k) => {
    const from = points[k]!;
    const count = Math.max(1, Math.ceil(distance(from, to) / PIECE));
    const way = sub(to, from);
    return Array.from({ length: count }, (_, j) => along(from, way, (j + 1) / count));
  }),
];
