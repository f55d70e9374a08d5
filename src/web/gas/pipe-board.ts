/**
 * The primaries in three dimensions: pipes as they bend, welds, collector, what they must stay clear of, and the scan
 * cut open. Drawn as the car is: flat fill, pen outline, parallel projection. Loaded on its own, with three.
 */
import {
  BoxGeometry,
  BufferGeometry,
  CatmullRomCurve3,
  CylinderGeometry,
  DoubleSide,
  EdgesGeometry,
  Float32BufferAttribute,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  Plane,
  Quaternion,
  TubeGeometry,
  Uint32BufferAttribute,
  Vector3,
} from 'three';
import { add, distance, scale, sub, type Vec3 } from '../../maths/vec3.ts';
import type { PrimariesScene } from '../../questions/index.ts';
import { Easel } from '../scene/easel.ts';
import { type Colours, createInk, display, type Ink, inkAs } from '../scene/ink.ts';
import type { Frame } from '../scene/look.ts';
import type { Lit, PipeGroup } from './shown.ts';

export interface PipesShown {
  readonly scene: PrimariesScene;
  readonly groups: readonly PipeGroup[];
  /** What is looked at. */
  readonly lit: Lit | undefined;
  /** The scan is drawn behind this x alone; undefined: whole. */
  readonly cutAt: number | undefined;
  readonly frame: Frame;
  readonly width: number;
  readonly height: number;
  readonly colours: Colours;
}

/** Width of the pen's outline, px. */
const PEN = 1.1;
/** Steps round a tube. */
const ROUND = 20;

interface Inked {
  readonly ink: Ink;
  readonly group: string;
  readonly cylinder: number | undefined;
}

/** Ports, one pipe, or the collector: laid anew only when what it was made of has changed, as under a hand that pulls. */
interface Part {
  readonly of: string;
  readonly drawn: readonly Mesh[];
  readonly inks: readonly Inked[];
}

export class PipeBoard {
  private readonly easel: Easel;
  private readonly plane = new Plane(new Vector3(-1, 0, 0), 0);
  private readonly cover = new Mesh(
    new BufferGeometry(),
    new MeshBasicMaterial({ transparent: true, opacity: 0.13, side: DoubleSide, depthWrite: false }),
  );
  private readonly solids = new LineSegments(new BufferGeometry(), new LineBasicMaterial());
  private readonly parts = new Map<string, Part>();
  private scene?: PrimariesScene;
  private groups?: readonly PipeGroup[];

  constructor(canvas: HTMLCanvasElement) {
    this.easel = new Easel(canvas);
    this.easel.renderer.localClippingEnabled = true;
    this.easel.scene.add(this.cover, this.solids);
  }

  show(shown: PipesShown): void {
    this.easel.soon(() => this.draw(shown));
  }

  dispose(): void {
    for (const name of [...this.parts.keys()]) this.clear(name);
    this.cover.geometry.dispose();
    this.solids.geometry.dispose();
    this.easel.dispose();
  }

  private draw(shown: PipesShown): void {
    const { scene, groups, frame, colours, cutAt } = shown;
    if (scene !== this.scene) this.layScene(scene);
    if (groups !== this.groups) this.layPipes(groups);
    this.scene = scene;
    this.groups = groups;
    for (const { ink, group, cylinder } of [...this.parts.values()].flatMap(({ inks }) => inks)) {
      inkAs(ink, weightOf(shown.lit, group, cylinder), colours);
      ink.pen.uniforms.width!.value = PEN / frame.scale;
    }
    this.easel.renderer.setClearColor(display(colours.paper));
    this.cover.material.color = display(colours.ink);
    this.plane.constant = cutAt ?? 0;
    this.cover.material.clippingPlanes = cutAt === undefined ? [] : [this.plane];
    this.cover.material.needsUpdate = true;
    (this.solids.material as LineBasicMaterial).color = display(colours.ink).lerp(
      display(colours.paper),
      0.55,
    );
    this.easel.render(frame, shown.width, shown.height);
  }

  private layScene({ shell, solids }: PrimariesScene): void {
    this.cover.geometry.dispose();
    this.cover.geometry = new BufferGeometry()
      .setAttribute('position', new Float32BufferAttribute(shell.corners, 3))
      .setIndex(new Uint32BufferAttribute(shell.triangles, 1));
    const edges = solids.flatMap((solid) => {
      if (solid.kind === 'rod') return [...solid.from, ...solid.to];
      const size = sub(solid.max, solid.min);
      const box = new EdgesGeometry(new BoxGeometry(...size));
      box.translate(...scale(add(solid.min, solid.max), 0.5));
      return [...box.attributes.position!.array];
    });
    this.solids.geometry.dispose();
    this.solids.geometry = new BufferGeometry().setAttribute(
      'position',
      new Float32BufferAttribute(edges, 3),
    );
  }

  private clear(name: string): void {
    const { drawn } = this.parts.get(name) ?? { drawn: [] };
    this.easel.scene.remove(...drawn);
    for (const each of drawn) each.geometry.dispose();
    this.parts.delete(name);
  }

  /** Puts a part in the place of what was of its name, unless it is made of the same. */
  private part(
    name: string,
    from: unknown,
    make: (put: (geometry: BufferGeometry) => void) => void,
    group: string,
    cylinder?: number,
  ): void {
    const of = JSON.stringify(from);
    if (this.parts.get(name)?.of === of) return;
    this.clear(name);
    const drawn: Mesh[] = [];
    const inks: Inked[] = [];
    make((geometry) => {
      const ink = createInk();
      drawn.push(new Mesh(geometry, ink.pen), new Mesh(geometry, ink.fill));
      inks.push({ ink, group, cylinder });
    });
    this.parts.set(name, { of, drawn, inks });
    this.easel.scene.add(...drawn);
  }

  private layPipes(groups: readonly PipeGroup[]): void {
    const names = new Set<string>();
    const part = (...[name, ...rest]: Parameters<PipeBoard['part']>): void => {
      names.add(name);
      this.part(name, ...rest);
    };
    for (const group of groups) {
      const { name: of, ports, od, collector, set } = group;
      for (const { cylinder, at, way } of ports)
        part(
          `${of} port ${cylinder}`,
          [at, way, od],
          (put) => put(drum(at, add(at, scale(way, FLANGE)), 0.62 * od)),
          of,
          cylinder,
        );
      for (const { cylinder, line, tubes, seams } of set?.pipes ?? [])
        part(
          `${of} pipe ${cylinder}`,
          [tubes, seams],
          (put) => {
            for (const tube of tubes)
              put(new TubeGeometry(new Chords(tube.line), tube.line.length * 2, tube.od / 2, ROUND));
            // beads also close the open end of a larger tube
            for (const { at, od: across } of seams) {
              const way = directionAt(line, at);
              put(drum(sub(at, scale(way, BEAD)), add(at, scale(way, BEAD)), across / 2 + BEAD));
            }
          },
          of,
          cylinder,
        );
      // a pipe that ends in the open has no body behind it
      if (set !== undefined && collector.length > 0) {
        const { mouth, axis } = set.collector;
        const end = add(mouth, scale(axis, collector.length));
        part(
          `${of} collector`,
          [mouth, end, collector.radius],
          (put) => put(drum(mouth, end, collector.radius)),
          of,
        );
      }
    }
    for (const name of [...this.parts.keys()]) if (!names.has(name)) this.clear(name);
  }
}

/** How strongly it is drawn: all alike, or what is looked at before the rest. */
function weightOf(
  lit: Lit | undefined,
  group: string,
  cylinder: number | undefined,
): 'chosen' | 'faded' | 'lit' {
  if (lit === undefined) return 'chosen';
  if (lit.group !== group) return 'faded';
  if (lit.cylinder === undefined) return 'chosen';
  return lit.cylinder === cylinder ? 'lit' : 'faded';
}

/** Drawn thickness of a flange and of a weld bead, metres: for the eye, and no figure leans on them. */
const FLANGE = 0.006;
const BEAD = 0.0012;

/** The centre line as it is handed over, chord by chord: a curve through its points would bulge at the bends. */
class Chords extends CatmullRomCurve3 {
  private readonly at: readonly number[];
  constructor(line: readonly Vec3[]) {
    super(line.map((point) => new Vector3(...point)));
    const sums = [0];
    line.slice(1).forEach((point, k) => {
      sums.push(sums[k]! + distance(point, line[k]!));
    });
    this.at = sums.map((sum) => sum / sums.at(-1)!);
  }
  override getPoint(t: number, into = new Vector3()): Vector3 {
    const next = Math.max(
      1,
      this.at.findIndex((each) => each >= t - 1e-12),
    );
    const [a, b] = [this.at[next - 1]!, this.at[next]!];
    return into.lerpVectors(this.points[next - 1]!, this.points[next]!, b > a ? (t - a) / (b - a) : 0);
  }
}

function directionAt(line: readonly Vec3[], at: Vec3): Vec3 {
  const nearest = line.reduce(
    (best, point, k) => (distance(point, at) < distance(line[best]!, at) ? k : best),
    0,
  );
  const [from, to] = [line[Math.max(0, nearest - 1)]!, line[Math.min(line.length - 1, nearest + 1)]!];
  return scale(sub(to, from), 1 / distance(from, to));
}

function drum(from: Vec3, to: Vec3, radius: number): BufferGeometry {
  const made = new CylinderGeometry(radius, radius, distance(from, to), 28);
  const way = new Vector3(...sub(to, from)).normalize();
  made.applyQuaternion(new Quaternion().setFromUnitVectors(new Vector3(0, 1, 0), way));
  made.translate(...scale(add(from, to), 0.5));
  return made;
}
