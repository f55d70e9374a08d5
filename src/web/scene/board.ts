/**
 * The drawing board: the car in three dimensions on a canvas, drawn anew only when something changed.
 *
 * Loaded on its own, after the page stands, since three is the heaviest thing on it.
 */
import {
  BufferGeometry,
  Float32BufferAttribute,
  Group,
  LineBasicMaterial,
  LineSegments,
  Matrix4,
  OrthographicCamera,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { along, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Stop, Wheel } from '../../questions/figure.ts';
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
/** After this long without a move the drawing rests, ms. */
const REST = 180;

export class Board {
  /** Drawn by the processor: plainly while it moves, twice as fine when it rests. */
  private readonly soft = drawnBySoftware();
  private resting: ReturnType<typeof setTimeout> | undefined;
  private readonly renderer: WebGLRenderer;
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera();
  private corners: CornerParts[] = [];
  private readonly hull = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
  private readonly ground = new GroundLines();
  private bars = new Group();
  private built?: string;
  private inked?: string;
  private hulled?: string;
  private waiting = 0;
  private shown?: Shown;

  constructor(canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: !this.soft, alpha: false });
    this.renderer.setPixelRatio(this.soft ? 1 : Math.min(devicePixelRatio, 2));
    this.renderer.outputColorSpace = 'srgb-linear';
    this.scene.add(this.hull, this.ground.lines, this.bars);
    this.camera.matrixAutoUpdate = false;
  }

  /** Draws at the screen's next turn; several calls before it make one drawing. */
  show(shown: Shown): void {
    this.shown = shown;
    if (this.waiting === 0) {
      this.waiting = requestAnimationFrame(() => {
        this.waiting = 0;
        if (this.shown === undefined) return;
        if (this.soft) this.renderer.setPixelRatio(1);
        this.draw(this.shown);
        if (this.soft) this.rest();
      });
    }
  }

  private rest(): void {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => {
      if (this.shown === undefined) return;
      this.renderer.setPixelRatio(2);
      this.draw(this.shown);
    }, REST);
  }

  dispose(): void {
    clearTimeout(this.resting);
    cancelAnimationFrame(this.waiting);
    for (const corner of this.corners) corner.dispose();
    this.hull.geometry.dispose();
    this.renderer.dispose();
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
    this.aim(shown);
    this.renderer.render(this.scene, this.camera);
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
      this.scene.remove(parts.group);
      parts.dispose();
    }
    this.corners = drawing.corners.map((corner) => new CornerParts(corner));
    this.scene.add(...this.corners.map((parts) => parts.group));
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
    this.renderer.setClearColor(display(shown.colours.paper));
    (this.hull.material as LineBasicMaterial).color = display(shown.colours.hair);
    this.ground.ink(shown.colours);
  }

  private aim({ frame, width, height }: Shown): void {
    const size = this.renderer.getSize(new Vector2());
    if (size.x !== width || size.y !== height) this.renderer.setSize(width, height, false);
    const { camera } = this;
    camera.left = -frame.x / frame.scale;
    camera.right = (width - frame.x) / frame.scale;
    camera.top = frame.y / frame.scale;
    camera.bottom = (frame.y - height) / frame.scale;
    camera.near = 0.1;
    camera.far = 40;
    camera.updateProjectionMatrix();
    const eye = along(frame.centre, frame.toward, 20);
    camera.matrix.copy(basis(frame.right, frame.up, frame.toward)).setPosition(...eye);
    camera.matrixWorldNeedsUpdate = true;
    camera.updateMatrixWorld(true);
  }
}

/** Whether this browser has no graphics card to draw with, as far as it tells. */
function drawnBySoftware(): boolean {
  const context = document.createElement('canvas').getContext('webgl2');
  const known = context?.getExtension('WEBGL_debug_renderer_info');
  const name = known ? String(context?.getParameter(known.UNMASKED_RENDERER_WEBGL)) : '';
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return /swiftshader|llvmpipe|software/i.test(name);
}

const basis = (right: Vec3, up: Vec3, toward: Vec3): Matrix4 =>
  new Matrix4().makeBasis(new Vector3(...right), new Vector3(...up), new Vector3(...toward));
