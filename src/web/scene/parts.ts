/**
 * One corner of the car as inked bodies that can be moved without being built again.
 *
 * In    the drawn corner as it first stands, and again each time it moved
 * Out   a group, and for each stop of the load path the ink of its bodies
 */
import {
  BufferGeometry,
  type Color,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  Mesh,
  MeshBasicMaterial,
} from 'three';
import { along, sub, turnedAbout, unit, type Vec3 } from '../../maths/vec3.ts';
import type { DrawnCorner } from '../../questions/drawing-types.ts';
import type { Stop } from '../../questions/figure.ts';
import { tyreSection } from './bodies.ts';
import { type Colours, createInk, display, type Ink, inkAs, lineColour, type Weight } from './ink.ts';
import {
  axisMatrix,
  BALL,
  CoilShape,
  ROD,
  rimShape,
  rockerShape,
  rodMatrix,
  TwistMark,
  tyreShape,
} from './shapes.ts';

const INKED: readonly Stop[] = ['tyre', 'upright', 'links', 'rocker', 'spring'];

export class CornerParts {
  readonly group = new Group();
  private readonly inks = new Map<Stop, Ink>();
  private readonly lines = new Map<Stop, LineBasicMaterial>();
  private readonly movers: ((corner: DrawnCorner) => void)[] = [];
  private readonly mark = new MeshBasicMaterial({ side: 2 });

  constructor(readonly first: DrawnCorner) {
    for (const stop of INKED) {
      this.inks.set(stop, createInk());
      this.lines.set(stop, new LineBasicMaterial());
    }
    this.addTyre();
    this.addMembers();
    this.addRocker();
    if (first.coil !== undefined) this.addCoil(new CoilShape(first.coil));
    if (first.bar !== undefined) this.addBar();
    this.move(first);
  }

  move(corner: DrawnCorner): void {
    for (const mover of this.movers) mover(corner);
  }

  /** Pen width in metres on the paper. */
  pen(width: number): void {
    for (const ink of this.inks.values()) ink.pen.uniforms.width!.value = width;
  }

  ink(weightOf: (stop: Stop) => Weight, colours: Colours): void {
    for (const [stop, ink] of this.inks) {
      inkAs(ink, weightOf(stop), colours, stop === 'tyre');
      this.lines.get(stop)!.color = lineColour(weightOf(stop), colours);
    }
    const chosen: Weight = weightOf('spring');
    this.mark.color = markColour(chosen, colours);
  }

  dispose(): void {
    this.group.traverse((each) => {
      if (
        (each instanceof Mesh || each instanceof LineSegments) &&
        each.geometry !== ROD &&
        each.geometry !== BALL
      ) {
        each.geometry.dispose();
      }
    });
    for (const ink of this.inks.values()) {
      ink.fill.dispose();
      ink.pen.dispose();
    }
    for (const line of this.lines.values()) line.dispose();
    this.mark.dispose();
  }

  /** A body and its outline. */
  private body(stop: Stop, geometry: BufferGeometry): Group {
    const ink = this.inks.get(stop) ?? this.inks.get('links')!;
    const both = new Group();
    both.add(new Mesh(geometry, ink.fill), new Mesh(geometry, ink.pen));
    both.matrixAutoUpdate = false;
    for (const child of both.children) child.frustumCulled = false;
    this.group.add(both);
    return both;
  }

  private rod(
    stop: Stop,
    radius: number,
    ends: (corner: DrawnCorner) => readonly [Vec3, Vec3] | undefined,
  ): void {
    const body = this.body(stop, ROD);
    this.movers.push((corner) => {
      const found = ends(corner);
      body.visible = found !== undefined;
      if (found !== undefined) rodMatrix(found[0], found[1], radius, body.matrix);
    });
  }

  private ball(stop: Stop, radius: number, at: (corner: DrawnCorner) => Vec3 | undefined): void {
    const body = this.body(stop, BALL);
    this.movers.push((corner) => {
      const found = at(corner);
      body.visible = found !== undefined;
      if (found !== undefined) body.matrix.makeScale(radius, radius, radius).setPosition(...found);
    });
  }

  private addTyre(): void {
    const { tyre } = this.first;
    const skin = this.body('tyre', tyreShape(tyre));
    const rim = this.body('tyre', rimShape(tyre));
    const rings = new LineSegments(ringLines(tyreSection(tyre)), this.lines.get('tyre')!);
    rings.matrixAutoUpdate = false;
    this.group.add(rings);
    this.movers.push((corner) => {
      // the axis points outboard, so the dish of the rim does too
      axisMatrix(corner.tyre.centre, corner.tyre.axis, [1, 1, 1], skin.matrix);
      rim.matrix.copy(skin.matrix);
      rings.matrix.copy(skin.matrix);
    });
  }

  private addMembers(): void {
    for (const { id, stop, diameter, kind } of this.first.members) {
      const find = (corner: DrawnCorner) => corner.members.find((member) => member.id === id);
      this.rod(stop, diameter / 2, (corner) => {
        const member = find(corner);
        return member === undefined ? undefined : [member.from, member.to];
      });
      if (kind === 'damper body' || kind === 'damper shaft') continue;
      const eye = Math.max(diameter * 0.62, 0.009);
      this.ball(stop, eye, (corner) => find(corner)?.from);
      this.ball(stop, eye, (corner) => find(corner)?.to);
    }
  }

  private addRocker(): void {
    const { rocker } = this.first;
    const plate = this.body('rocker', rockerShape(rocker));
    const axis = unit(rocker.axis);
    this.movers.push((corner) => {
      const angle = turnSince(rocker.joints[0], corner.rocker.joints[0], rocker.pivot, axis);
      plate.matrix.copy(aboutAxis(rocker.pivot, axis, angle));
    });
    const stub = (sign: number) => along(rocker.pivot, axis, sign * 0.022);
    this.rod('rocker', 0.011, () => [stub(-1), stub(1)]);
  }

  private addCoil(shape: CoilShape): void {
    this.body('spring', shape);
    this.movers.push((corner) => corner.coil !== undefined && shape.stretch(corner.coil));
  }

  private addBar(): void {
    const { bar } = this.first;
    if (bar === undefined) return;
    const head = Math.min(0.03, 0.12 * Math.hypot(...sub(bar.to, bar.from)));
    const along1 = unit(sub(bar.to, bar.from));
    this.rod('spring', bar.diameter / 2, (corner) => corner.bar && [corner.bar.from, corner.bar.to]);
    this.rod('spring', bar.headDiameter / 2, () => [bar.from, along(bar.from, along1, head)]);
    this.rod('spring', bar.headDiameter / 2, () => [along(bar.to, along1, -head), bar.to]);
    const mark = new TwistMark(bar, 0.5);
    const mesh = new Mesh(mark, this.mark);
    mesh.frustumCulled = false;
    this.group.add(mesh);
    this.movers.push((corner) => corner.bar !== undefined && mark.turn(corner.bar));
  }
}

/** The mark stands off from the bar: paper on a bar in the accent, accent on a plain one. */
function markColour(weight: Weight, colours: Colours): Color {
  if (weight === 'chosen' || weight === 'lit') return display(colours.paper);
  const accent = display(colours.accent);
  return weight === 'faded' ? accent.lerp(display(colours.paper), 0.75) : accent;
}

/** Angle by which a joint has turned about the axis since the plate was cut. */
function turnSince(was: Vec3 | undefined, is: Vec3 | undefined, pivot: Vec3, axis: Vec3): number {
  if (was === undefined || is === undefined) return 0;
  const quarter = turnedAbout(was, pivot, axis, Math.PI / 2);
  const from = sub(was, pivot);
  const level = along(from, axis, -(from[0] * axis[0] + from[1] * axis[1] + from[2] * axis[2]));
  const side = sub(quarter, pivot);
  const square = along(side, axis, -(side[0] * axis[0] + side[1] * axis[1] + side[2] * axis[2]));
  const now = sub(is, pivot);
  const of = (a: Vec3): number => now[0] * a[0] + now[1] * a[1] + now[2] * a[2];
  return Math.atan2(of(square), of(level));
}

function aboutAxis(pivot: Vec3, axis: Vec3, angle: number): Matrix4 {
  const columns = (
    [
      [1, 0, 0],
      [0, 1, 0],
      [0, 0, 1],
      [0, 0, 0],
    ] as const
  ).map((point) => turnedAbout(point, pivot, axis, angle));
  const [x, y, z, origin] = columns as [Vec3, Vec3, Vec3, Vec3];
  return new Matrix4().set(
    x[0] - origin[0],
    y[0] - origin[0],
    z[0] - origin[0],
    origin[0],
    x[1] - origin[1],
    y[1] - origin[1],
    z[1] - origin[1],
    origin[1],
    x[2] - origin[2],
    y[2] - origin[2],
    z[2] - origin[2],
    origin[2],
    0,
    0,
    0,
    1,
  );
}

/** Light edges of a tyre: its bead, shoulder and mid-tread circles. */
function ringLines(section: readonly (readonly [number, number])[]): BufferGeometry {
  const rings = [section[0]!, section[3]!, section[section.length - 4]!, section.at(-1)!];
  const points: number[] = [];
  for (const [x, r] of rings) {
    for (let k = 0; k < 64; k += 1) {
      for (const j of [k, k + 1]) {
        const angle = (2 * Math.PI * j) / 64;
        points.push(r * 1.001 * Math.sin(angle), x * 1.002, r * 1.001 * Math.cos(angle));
      }
    }
  }
  return new BufferGeometry().setAttribute('position', new Float32BufferAttribute(points, 3));
}
