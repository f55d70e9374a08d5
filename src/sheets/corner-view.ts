/**
 * A corner seen from the front, to scale, drawn from its own points.
 *
 * In    the corner as bodies in space (metres, car axes)
 * Out   one block: links, upright, rocker, springs, tyre, ground, half-track and camber, ruler
 * Axes  the car's left is on the right of the sheet, as one sees it standing before the car
 *
 * What is nearer to the eye is drawn later, over what is behind it.
 */

import type { Vec3 } from '../maths/vec3.ts';
import type { DrawnCorner, DrawnMember } from '../questions/drawing-types.ts';
import type { Speech } from '../units/show.ts';
import { dimension, RULER_HEIGHT, RULER_WORDS, ruler } from './dimension.ts';
import type { Block } from './lay-out.ts';
import { circle, DASH, LINE, line, type Mark, type PaperPoint, polyline, SIZE, text } from './page.ts';
import type { TextMeasure } from './text-measure.ts';
import { drawnLength, inUnit } from './words.ts';

const SCALES = [
  { factor: 0.2, words: '1:5' },
  { factor: 0.1, words: '1:10' },
  { factor: 0.05, words: '1:20' },
] as const;

const DRAWING_HEIGHT = 84;

type Project = (point: Vec3) => PaperPoint;

export function cornerView(corner: DrawnCorner, speech: Speech, width: number, measure: TextMeasure): Block {
  const reach = extent(corner);
  const { factor, words } =
    SCALES.find(
      (scale) =>
        (reach.out + 0.06) * 1000 * scale.factor <= width &&
        reach.high * 1000 * scale.factor <= DRAWING_HEIGHT - 18,
    ) ?? SCALES.at(-1)!;
  const k = 1000 * factor;
  const left = corner.wheel.side === 'left';
  return {
    height: DRAWING_HEIGHT + RULER_HEIGHT + 5,
    marks: (at) => {
      const ground = at.y + DRAWING_HEIGHT - 14;
      const middle = left ? at.x + 5 : at.x + width - 5;
      const project: Project = ([, y, z]) => ({
        x: middle + y * k,
        y: ground - (z - corner.tyre.contact[2]) * k,
      });
      return [
        text({ x: middle + (left ? 3 : -3), y: at.y + 4 }, `From the front, scale ${words}`, {
          size: SIZE.small,
          weight: 'bold',
          align: left ? 'left' : 'right',
        }),
        line({ x: at.x, y: ground }, { x: at.x + width, y: ground }, { weight: LINE.thick }),
        line(
          { x: middle, y: ground - reach.high * k - 6 },
          { x: middle, y: ground + 9 },
          { dash: DASH.centre },
        ),
        ...tyreMarks(corner, project, k),
        ...bodies(corner, project, k),
        ...figures(corner, project, { ground, middle, speech }, measure),
        ...ruler({ x: at.x + 4, y: at.y + DRAWING_HEIGHT + 5 }),
        ...halves(RULER_WORDS).map((half, row) =>
          text({ x: at.x, y: at.y + DRAWING_HEIGHT + 11.5 + 2.8 * row }, half, { size: SIZE.label }),
        ),
      ];
    },
  };
}

/** The two sentences of the ruler on two lines. */
const halves = (words: string): string[] => words.split(/(?<=\.) /);

function extent(corner: DrawnCorner): { out: number; high: number } {
  const { tyre } = corner;
  const points = [
    ...Object.values(corner.points),
    ...corner.members.flatMap((member) => [member.from, member.to]),
  ];
  const base = tyre.contact[2];
  return {
    out: Math.max(
      Math.abs(tyre.contact[1]) + tyre.tyreWidth / 2,
      ...points.map((point) => Math.abs(point[1])),
    ),
    high: Math.max(2 * tyre.loadedRadius, ...points.map((point) => point[2] - base)),
  };
}

/** The tyre as its middle section stands in this view, shoulders cut by a tenth. */
function tyreMarks(corner: DrawnCorner, project: Project, k: number): Mark[] {
  const { centre, axis, loadedRadius: R, tyreWidth } = corner.tyre;
  const tilt = Math.hypot(axis[1], axis[2]);
  const across: Vec3 = [0, axis[1] / tilt, axis[2] / tilt];
  const up: Vec3 = [0, -across[2] * Math.sign(across[1]), Math.abs(across[1])];
  const at = (a: number, b: number): PaperPoint =>
    project([centre[0], centre[1] + across[1] * a + up[1] * b, centre[2] + across[2] * a + up[2] * b]);
  const w = tyreWidth / 2;
  const cut = 0.1 * R;
  const outline = [
    at(-w, -R + cut),
    at(-w + cut, -R),
    at(w - cut, -R),
    at(w, -R + cut),
    at(w, R - cut),
    at(w - cut, R),
    at(-w + cut, R),
    at(-w, R - cut),
  ];
  const hub = project(centre);
  return [
    polyline(outline, { closed: true, weight: LINE.thick }),
    line(at(0, -R - 0.02), at(0, R + 0.02), { dash: DASH.centre }),
    circle(hub, 0.008 * k),
  ];
}

function bodies(corner: DrawnCorner, project: Project, k: number): Mark[] {
  const drawn: { depth: number; marks: Mark[] }[] = corner.members.map((member) => ({
    depth: (member.from[0] + member.to[0]) / 2,
    marks: memberMarks(member, project, k),
  }));
  const { rocker, coil, bar } = corner;
  drawn.push({
    depth: rocker.pivot[0],
    marks: [
      polyline([rocker.pivot, ...rocker.joints].map(project), {
        closed: true,
        weight: LINE.thick,
        fill: 0.85,
      }),
      circle(project(rocker.pivot), 1.2, { weight: LINE.thick }),
    ],
  });
  if (coil !== undefined) drawn.push({ depth: coil.from[0], marks: coilMarks(coil, project, k) });
  if (bar !== undefined) {
    drawn.push({
      depth: Math.max(bar.from[0], bar.to[0]),
      marks: [
        ...tube({ from: bar.from, to: bar.to, diameter: bar.diameter }, project, k),
        circle(project(bar.from), (bar.headDiameter * k) / 2, { weight: LINE.thick }),
      ],
    });
  }
  return drawn.sort((a, b) => a.depth - b.depth).flatMap(({ marks }) => marks);
}

function memberMarks(member: DrawnMember, project: Project, k: number): Mark[] {
  return [
    ...tube(member, project, k),
    circle(project(member.from), 0.7, { weight: LINE.thin }),
    circle(project(member.to), 0.7, { weight: LINE.thin }),
  ];
}

/** A round member as its outline, filled so that it hides what is behind. */
function tube(
  of: { readonly from: Vec3; readonly to: Vec3; readonly diameter: number },
  project: Project,
  k: number,
): Mark[] {
  const [a, b] = [project(of.from), project(of.to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 0.05) return [];
  const half = Math.max(0.35, (of.diameter * k) / 2);
  const [nx, ny] = [(-(b.y - a.y) / length) * half, ((b.x - a.x) / length) * half];
  return [
    polyline(
      [
        { x: a.x + nx, y: a.y + ny },
        { x: b.x + nx, y: b.y + ny },
        { x: b.x - nx, y: b.y - ny },
        { x: a.x - nx, y: a.y - ny },
      ],
      { closed: true, weight: LINE.thin, fill: 1 },
    ),
  ];
}

function coilMarks(coil: NonNullable<DrawnCorner['coil']>, project: Project, k: number): Mark[] {
  const [a, b] = [project(coil.from), project(coil.to)];
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  if (length < 0.5) return [circle(a, (coil.meanDiameter * k) / 2)];
  const half = (coil.meanDiameter * k) / 2;
  const along = { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
  const turns = Math.max(2, Math.round(coil.coils));
  const at = (part: number, side: number): PaperPoint => ({
    x: a.x + along.x * length * part - along.y * half * side,
    y: a.y + along.y * length * part + along.x * half * side,
  });
  const points = Array.from({ length: 2 * turns + 1 }, (_, i) => at(i / (2 * turns), i % 2 === 0 ? 1 : -1));
  return [polyline(points, { weight: LINE.thin })];
}

function figures(
  corner: DrawnCorner,
  project: Project,
  of: { readonly ground: number; readonly middle: number; readonly speech: Speech },
  measure: TextMeasure,
): Mark[] {
  const { tyre } = corner;
  const contact = project(tyre.contact);
  const top = project([tyre.centre[0], tyre.centre[1], tyre.centre[2] + tyre.loadedRadius]);
  const camber = -Math.asin(tyre.axis[2]); // LP-16
  return [
    ...dimension(
      {
        from: { x: of.middle, y: of.ground },
        to: { x: contact.x, y: of.ground },
        runs: 'across',
        at: of.ground + 6,
        words: drawnLength(Math.abs(tyre.contact[1]), 1, of.speech),
      },
      measure,
    ),
    text({ x: top.x, y: top.y - 4 }, `camber ${inUnit(camber, 'deg', 2)}`, {
      size: SIZE.small,
      align: 'middle',
    }),
  ];
}
