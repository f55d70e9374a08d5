/** What stands round the corners: the ground, the hull of tub and case as hairlines, the anti-roll bars. */
import { BufferGeometry, Float32BufferAttribute, Group, LineBasicMaterial, LineSegments, Mesh } from 'three';
import type { Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End } from '../../questions/figure.ts';
import { type Colours, createInk, display, type Ink, inkAs } from './ink.ts';
import { ROD, rodMatrix } from './shapes.ts';

/** Loops across the car, joined front to back point by point. */
export function sectionLines(drawing: Drawing, only: End | undefined): readonly number[] {
  const points: number[] = [];
  const stroke = (a: Vec3, b: Vec3): void => {
    points.push(...a, ...b);
  };
  const sections = drawing.sections.filter((loop) => only === undefined || isNear(drawing, loop, only));
  sections.forEach((loop, k) => {
    for (const [j, point] of loop.entries()) stroke(point, loop[(j + 1) % loop.length]!);
    const next = sections[k + 1];
    if (next === undefined || next.length !== loop.length) return;
    for (const [j, point] of loop.entries()) stroke(point, next[j]!);
  });
  return points;
}

/** How far ahead of and behind the wheels a section still belongs to their axle, metres. */
const NEAR = 0.7;

function isNear(drawing: Drawing, loop: readonly Vec3[], end: End): boolean {
  const centres = drawing.corners
    .filter((corner) => corner.wheel.end === end)
    .map(({ tyre }) => tyre.centre[0]);
  const mean = loop.reduce((sum, point) => sum + point[0], 0) / loop.length;
  return centres.some((x) => Math.abs(x - mean) < NEAR);
}

/** A field of the flat patch under the car, ruled every half metre. */
export class GroundLines {
  readonly lines = new LineSegments(new BufferGeometry(), new LineBasicMaterial());

  lay(drawing: Drawing): void {
    const x = drawing.corners.map((corner) => corner.points.contact?.[0] ?? corner.tyre.contact[0]);
    const y = drawing.corners.map((corner) => corner.tyre.contact[1]);
    const [back, front] = [half(Math.min(...x) - 0.6, Math.floor), half(Math.max(...x) + 0.6, Math.ceil)];
    const side = half(Math.max(...y.map(Math.abs)) + 0.4, Math.ceil);
    const points: number[] = [];
    const z = drawing.ground;
    for (let at = back; at <= front + 1e-9; at += 0.5) points.push(at, -side, z, at, side, z);
    for (let at = -side; at <= side + 1e-9; at += 0.5) points.push(back, at, z, front, at, z);
    this.lines.geometry.dispose();
    this.lines.geometry = new BufferGeometry().setAttribute(
      'position',
      new Float32BufferAttribute(points, 3),
    );
  }

  ink(colours: Colours): void {
    (this.lines.material as LineBasicMaterial).color = display(colours.hair).lerp(
      display(colours.paper),
      0.4,
    );
  }
}

const half = (value: number, round: (value: number) => number): number => round(value * 2) / 2;

const barInk: { ink?: Ink; key?: string } = {};

/** Anti-roll bars as round bars along their lines. Few bodies: laid anew each time. */
export function barShapes(
  drawing: Drawing,
  only: End | undefined,
  pen: number,
  colours: Colours,
): readonly Group[] {
  barInk.ink ??= createInk();
  const { ink } = barInk;
  const key = JSON.stringify(colours);
  if (barInk.key !== key) inkAs(ink, 'plain', colours);
  barInk.key = key;
  ink.pen.uniforms.width!.value = pen;
  return drawing.antiRollBars
    .filter(({ end }) => only === undefined || end === only)
    .flatMap(({ line, diameter }) =>
      line.slice(1).map((to, k) => {
        const both = new Group();
        both.matrixAutoUpdate = false;
        both.add(new Mesh(ROD, ink.fill), new Mesh(ROD, ink.pen));
        rodMatrix(line[k]!, to, diameter / 2, both.matrix);
        return both;
      }),
    );
}
