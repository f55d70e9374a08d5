/**
 * The drawing board: the car in three dimensions on a canvas, drawn anew only when something changed.
 *
 * Loaded on its own, after the page stands, since three is the heaviest thing on it.
 */
import { BufferGeometry, Float32BufferAttribute, Group, LineBasicMaterial, LineSegments } from 'three';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Stop, Wheel } from '../../questions/figure.ts';
import { Easel } from './easel.ts';
import { type Colours, display, type Weight } from './ink.ts';
import type { Frame } from './look.ts';
import { CornerParts } from './parts.ts';
import { barShapes, GroundLines, sectionLines } from './surroundings.ts';

export interface Shown {
  readonly drawing: Drawing;
  readonly frame: Frame;
  readonly width: number;
  readonly height: number;
  /** Only this end is drawn, as in a view along the car; undefined: all of it. */
  readonly only?: End;
  readonly weight: (wheel: Wheel, stop: Stop) => Weight;
  readonly colours: Colours;
  /** Changes whenever weights or colours do. */
  readonly inkKey: string;
}

/** Width of the pen's outline, px. */
const PEN = 1.1;
export class Board {
  private readonly easel: Easel;
  private corners: CornerParts[] = [];
  private readonly hull = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
  private readonly ground = new GroundLines();
  private bars = new Group();
  private built?: string;
  private inked?: string;
  private hulled?: string;

  constructor(canvas: HTMLCanvasElement) {
    this.easel = new Easel(canvas);
    this.easel.scene.add(this.hull, this.ground.lines, this.bars);
  }

  /** Draws at the screen's next turn; several calls before it make one drawing. */
  show(shown: Shown): void {
    this.easel.soon(() => this.draw(shown));
  }

  dispose(): void {
    for (const corner of this.corners) corner.dispose();
    this.hull.geometry.dispose();
    this.easel.dispose();
  }

  private draw(shown: Shown): void {
    this.build(shown.drawing);
    this.layHull(shown);
    for (const parts of this.corners) {
      const { end, side } = parts.first.wheel;
      const now = shown.drawing.corners.find((each) => each.wheel.end === end && each.wheel.side === side);
      parts.group.visible = now !== undefined && (shown.only === undefined || shown.only === end);
      if (now !== undefined && parts.group.visible) parts.move(now);
      parts.pen(PEN / shown.frame.scale);
    }
    this.bars.clear();
    const shapes = barShapes(shown.drawing, shown.only, PEN / shown.frame.scale, shown.colours);
    if (shapes.length > 0) this.bars.add(...shapes);
    this.ground.lines.visible = shown.frame.toward[2] > 0.05;
    this.ink(shown);
    this.easel.render(shown.frame, shown.width, shown.height);
  }

  /** Builds the bodies again only when their sizes are others. */
  private build(drawing: Drawing): void {
    const key = JSON.stringify(
      drawing.corners.map(({ wheel, tyre, coil, bar, members, rocker }) => [
        wheel,
        tyre.loadedRadius,
        tyre.tyreWidth,
        tyre.rimDiameter,
        rocker.pivot,
        rocker.axis,
        coil && [coil.meanDiameter, coil.wireDiameter, coil.coils],
        bar && [bar.diameter, bar.headDiameter, bar.to],
        members.map((member) => [member.id, member.diameter]),
      ]),
    );
    if (key === this.built) return;
    this.built = key;
    delete this.inked;
    for (const parts of this.corners) {
      this.easel.scene.remove(parts.group);
      parts.dispose();
    }
    this.corners = drawing.corners.map((corner) => new CornerParts(corner));
    this.easel.scene.add(...this.corners.map((parts) => parts.group));
    this.ground.lay(drawing);
  }

  private layHull({ drawing, only }: Shown): void {
    const key = `${this.built} ${only}`;
    if (key === this.hulled) return;
    this.hulled = key;
    this.hull.geometry.dispose();
    this.hull.geometry = new BufferGeometry().setAttribute(
      'position',
      new Float32BufferAttribute(sectionLines(drawing, only), 3),
    );
  }

  private ink(shown: Shown): void {
    if (this.inked === shown.inkKey) return;
    this.inked = shown.inkKey;
    for (const parts of this.corners) {
      parts.ink((stop) => shown.weight(parts.first.wheel, stop), shown.colours);
    }
    this.easel.renderer.setClearColor(display(shown.colours.paper));
    (this.hull.material as LineBasicMaterial).color = display(shown.colours.hair);
    this.ground.ink(shown.colours);
  }
}
