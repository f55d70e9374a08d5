/**
 * The car in plan, nose up, from its own points: tub, links, wheels as they stand.
 *
 * In    the car as bodies in space; where the two axle lines stand on the paper and how wide it may be
 * Out   marks; the places of the wheels, for what is written beside them
 * Axes  the car's left is at the left of the paper
 */
import type { Vec3 } from '../maths/vec3.ts';
import type { Drawing, DrawnCorner, DrawnWheel } from '../questions/drawing-types.ts';
import { DASH, LINE, line, type Mark, type PaperPoint, polyline } from './page.ts';

export interface PlanRoom {
  /** Middle of the car across the paper. */
  readonly middle: number;
  /** Where the front and the rear axle line would stand best. */
  readonly front: number;
  readonly rear: number;
  readonly width: number;
}

type Project = (point: Vec3) => PaperPoint;

export function planOfCar({ corners, sections }: Drawing, { middle, front, rear, width }: PlanRoom): Mark[] {
  const axle = (end: 'front' | 'rear'): number => {
    const own = corners.filter(({ wheel }) => wheel.end === end);
    return own.reduce((sum, { tyre }) => sum + tyre.centre[0], 0) / own.length;
  };
  const base = axle('front') - axle('rear');
  const half = Math.max(...corners.map(({ tyre }) => Math.abs(tyre.centre[1]) + tyre.tyreWidth / 2));
  if (!(base > 0) || !(half > 0)) return [];
  const perMetre = Math.min((rear - front) / base, width / (2 * half));
  const centre = (front + rear) / 2;
  const centreX = (axle('front') + axle('rear')) / 2;
  const project: Project = ([x, y]) => ({ x: middle - y * perMetre, y: centre - (x - centreX) * perMetre });
  return [
    line(project([axle('front') + 0.75, 0, 0]), project([axle('rear') - 0.6, 0, 0]), {
      weight: LINE.hair,
      dash: DASH.centre,
    }),
    ...corners.flatMap((corner) => linksOf(corner, project)),
    ...bodyOf(sections, axle('front'), project),
    ...corners.map(({ tyre }) => wheelOf(tyre, project)),
  ];
}

const KINDS = ['wishbone leg', 'toe link', 'rod'];

const linksOf = ({ members }: DrawnCorner, project: Project): Mark[] =>
  members
    .filter(({ kind }) => KINDS.includes(kind))
    .map(({ from, to }) => line(project(from), project(to), { weight: LINE.thin }));

/** How far the nose is drawn ahead of the front axle, m: for the eye alone. */
const NOSE = 0.62;

/** Tub and case as wide as the inner joints of each section span them. */
function bodyOf(sections: Drawing['sections'], frontAxle: number, project: Project): Mark[] {
  const widths = sections
    .map((loop) => ({
      x: loop.reduce((sum, [x]) => sum + x, 0) / loop.length,
      half: Math.max(...loop.map(([, y]) => Math.abs(y))),
    }))
    .sort((a, b) => b.x - a.x);
  if (widths.length < 2) return [];
  const nose = { x: Math.max(frontAxle + NOSE, widths[0]!.x + 0.1), half: 0.06 };
  const all = [nose, ...widths];
  const side = (sign: 1 | -1): PaperPoint[] => all.map(({ x, half }) => project([x, sign * half, 0]));
  return [polyline([...side(1), ...side(-1).reverse()], { closed: true, weight: LINE.thick, fill: 0.96 })];
}

/** A wheel as its tread lies in this view. */
function wheelOf({ centre, axis, loadedRadius, tyreWidth }: DrawnWheel, project: Project): Mark {
  const size = Math.hypot(axis[0], axis[1]);
  const [ax, ay] = [axis[0] / size, axis[1] / size];
  const corner = (along: 1 | -1, across: 1 | -1): PaperPoint =>
    project([
      centre[0] + across * (tyreWidth / 2) * ax - along * loadedRadius * ay,
      centre[1] + across * (tyreWidth / 2) * ay + along * loadedRadius * ax,
      0,
    ]);
  return polyline([corner(1, 1), corner(1, -1), corner(-1, -1), corner(-1, 1)], {
    closed: true,
    weight: LINE.thick,
    fill: 0.8,
  });
}
