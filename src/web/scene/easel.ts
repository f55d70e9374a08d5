/**
 * What a drawing in three dimensions stands on: canvas, camera of a parallel projection, and the turn at which it is
 * drawn. Where the processor draws, plainly while it moves and twice as fine when it rests.
 */
import { Matrix4, OrthographicCamera, Scene, Vector2, Vector3, WebGLRenderer } from 'three';
import { along, type Vec3 } from '../../maths/vec3.ts';
import type { Frame } from './look.ts';

/** After this long without a move the drawing rests, ms. */
const REST = 180;

export class Easel {
  readonly scene = new Scene();
  readonly renderer: WebGLRenderer;
  /** Drawn by the processor. */
  private readonly soft = drawnBySoftware();
  private readonly camera = new OrthographicCamera();
  private resting: ReturnType<typeof setTimeout> | undefined;
  private waiting = 0;
  private draw: (() => void) | undefined;

  constructor(canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, antialias: !this.soft, alpha: false });
    this.renderer.setPixelRatio(this.soft ? 1 : Math.min(devicePixelRatio, 2));
    this.renderer.outputColorSpace = 'srgb-linear';
    this.camera.matrixAutoUpdate = false;
  }

  /** Draws at the screen's next turn; several calls before it make one drawing. */
  soon(draw: () => void): void {
    this.draw = draw;
    if (this.waiting !== 0) return;
    this.waiting = requestAnimationFrame(() => {
      this.waiting = 0;
      if (this.soft) this.renderer.setPixelRatio(1);
      this.draw?.();
      if (this.soft) this.rest();
    });
  }

  private rest(): void {
    clearTimeout(this.resting);
    this.resting = setTimeout(() => {
      this.renderer.setPixelRatio(2);
      this.draw?.();
    }, REST);
  }

  /** Looks through the frame and draws the scene. */
  render(frame: Frame, width: number, height: number): void {
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
    this.renderer.render(this.scene, camera);
  }

  dispose(): void {
    clearTimeout(this.resting);
    cancelAnimationFrame(this.waiting);
    this.draw = undefined;
    this.renderer.dispose();
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
