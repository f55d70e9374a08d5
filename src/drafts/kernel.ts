/**
 * Pipes as solids of a CAD kernel: true cylinders and rings with their bore, for STEP, STL and a mesh to look at.
 *
 * In    pipes
 * Out   solids, one a pipe; files of them
 * Axes  those of the pipes; millimetres in the files
 *
 * The kernel (Open CASCADE as WebAssembly, LGPL-2.1, 23 MB) is brought in when it is first asked for: about a second.
 */
import { createRequire } from 'node:module';
import type * as Replicad from 'replicad';
import {
  arcCentre,
  elementLength,
  type Flare,
  into,
  NO_LENGTH,
  type Pipe,
  type Place,
  type Slice,
  slicesOf,
} from '../gaspath/pipework/index.ts';
import { along, cross, scale, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';

const MM_PER_M = 1e3;

type Point = [number, number, number];
const mm = (p: Vec3): Point => [...scale(p, MM_PER_M)] as Point;
const direction = (d: Vec3): Point => [...d] as Point;

export type Solid = Replicad.Shape3D;

/** Corners and normals of a skin of triangles, metres. */
export interface Skin {
  readonly positions: readonly number[];
  readonly normals: readonly number[];
  readonly triangles: readonly number[];
}

export interface SolidFile {
  readonly name: string;
  readonly solid: Solid;
}

/** What another program would find in a file: for checks. */
export interface ReadSolid {
  /** m³ */
  readonly volume: number;
  /** Kinds of faces, `CYLINDRE`, `TORUS`, `PLANE`, as the kernel calls them, with their areas in m². */
  readonly faces: readonly { readonly kind: string; readonly area: number }[];
}

export class Kernel {
  readonly #cad: typeof Replicad;

  constructor(cad: typeof Replicad) {
    this.#cad = cad;
  }

  /**
   * One pipe as one solid: the skins of its elements sewn together, a ring at each end and at each shoulder.
   *
   * Sewn and not joined by set operations: these take seconds where this takes tenths, and give the same faces.
   *
   * @throws Error for a pipe without length
   */
  pipe(pipe: Pipe): Solid {
    const { makeSolid, weldShellsAndFaces } = this.#cad;
    const slices = slicesOf(pipe);
    const [first, last] = [slices[0], slices.at(-1)];
    if (first === undefined || last === undefined) throw new Error(`pipe ${pipe.name} has no length`);
    const skins = slices.flatMap((slice) =>
      this.#slice(slice).faces.filter((face) => face.geomType !== 'PLANE'),
    );
    const shoulders = slices.slice(1).flatMap((slice, k) => {
      const before = slices[k]!;
      return [
        ...this.#shoulder(slice.from, before.outer[1], slice.outer[0]),
        ...this.#shoulder(slice.from, before.bore[1], slice.bore[0]),
      ];
    });
    const end = into(last.element, last.from, elementLength(last.element));
    const rings = [
      this.#ring(first.from, first.outer[0], first.bore[0]),
      this.#ring(end, last.outer[1], last.bore[1]),
    ];
    return makeSolid([weldShellsAndFaces([...skins, ...shoulders, ...rings])]);
  }

  #slice({ element, from, outer, bore }: Slice): Solid {
    const { revolution, basicFaceExtrusion, Vector } = this.#cad;
    if (element.kind === 'straight' && outer[0] !== outer[1])
      return this.#cone(element.length, from, outer, bore);
    const face = this.#ring(from, outer[0], bore[0]);
    if (element.kind === 'straight')
      return basicFaceExtrusion(face, new Vector(mm(scale(from.t, element.length))));
    const angle = (element.angle * 180) / Math.PI;
    return revolution(face, mm(arcCentre(element, from)), direction(element.normal), angle);
  }

  /** The wall cut along, turned about the middle. */
  #cone(long: Metre, { p, t }: Place, outer: Flare, bore: Flare): Solid {
    const { assembleWire, makeLine, makeFace, revolution } = this.#cad;
    const across = unit(cross(t, Math.abs(t[2]) < 0.9 ? [0, 0, 1] : [1, 0, 0]));
    const at = (l: Metre, r: Metre): Point => mm(along(along(p, t, l), across, r));
    const corners = [at(0, bore[0]), at(0, outer[0]), at(long, outer[1]), at(long, bore[1])] as const;
    const sides = corners.map((corner, k) => makeLine(corner, corners[(k + 1) % 4]!));
    return revolution(makeFace(assembleWire(sides)), mm(p), direction(t), 360);
  }

  /** The flat ring where a skin goes on in another radius; none where it does not. */
  #shoulder(at: Place, one: Metre, two: Metre): Replicad.Face[] {
    return Math.abs(one - two) < NO_LENGTH ? [] : [this.#ring(at, Math.max(one, two), Math.min(one, two))];
  }

  /** The wall cut square: its hole runs round the other way, or the kernel takes it for a second disc. */
  #ring({ p, t }: Place, outer: Metre, bore: Metre): Replicad.Face {
    const { assembleWire, makeCircle, makeFace } = this.#cad;
    const round = (radius: Metre, way: Vec3) =>
      assembleWire([makeCircle(radius * MM_PER_M, mm(p), direction(way))]);
    return makeFace(round(outer, t), [round(bore, scale(t, -1))]);
  }

  /** @param date `2004-05-06`: stands in the file in place of a clock */
  async step(solids: readonly SolidFile[], date: string): Promise<string> {
    const blob = this.#cad.exportSTEP(
      solids.map(({ name, solid }) => ({ name, shape: solid })),
      { unit: 'MM', modelUnit: 'MM' },
    );
    const text = await blob.text();
    return text.replace(/(FILE_NAME\('[^']*',)'[^']*'/, `$1'${date}T00:00:00'`);
  }

  /** Binary STL, millimetres. */
  async stl(solids: readonly SolidFile[], fineness: Fineness = FINE): Promise<Uint8Array> {
    const all = this.#cad.makeCompound(solids.map(({ solid }) => solid));
    return new Uint8Array(await all.blobSTL({ ...fineness, binary: true }).arrayBuffer());
  }

  skin(solid: Solid, fineness: Fineness = FINE): Skin {
    const { vertices, normals, triangles } = solid.mesh(fineness);
    return { positions: vertices.map((each) => each / MM_PER_M), normals, triangles };
  }

  /** A STEP file read again, solid by solid. */
  async read(step: string): Promise<readonly ReadSolid[]> {
    const { importSTEP, measureArea, measureVolume, iterTopo, downcast, cast } = this.#cad;
    const shape = await importSTEP(new Blob([step]));
    return [...iterTopo(shape.wrapped, 'solid')].map((each): ReadSolid => {
      const solid = cast(downcast(each)) as Solid;
      return {
        volume: measureVolume(solid) / MM_PER_M ** 3,
        faces: solid.faces.map((face) => ({
          kind: face.geomType,
          area: measureArea(face) / MM_PER_M ** 2,
        })),
      };
    });
  }
}

export interface Fineness {
  /** How far a chord may be from the skin, mm. */
  readonly tolerance: number;
  /** Between the normals of neighbouring triangles, radians. */
  readonly angularTolerance: number;
}

const FINE: Fineness = { tolerance: 0.05, angularTolerance: 0.2 };

let opened: Promise<Kernel> | undefined;

/** The kernel, brought in once. */
export function openKernel(): Promise<Kernel> {
  if (opened === undefined) opened = bringIn();
  return opened;
}

async function bringIn(): Promise<Kernel> {
  const { default: start } = await import('replicad-opencascadejs');
  const cad = await import('replicad');
  const wasm = createRequire(import.meta.url).resolve('replicad-opencascadejs/wasm');
  // the kernel speaks to the terminal of its own accord: its faults come back as errors, the rest is no use
  const quiet = { locateFile: () => wasm, print: () => undefined, printErr: () => undefined };
  cad.setOC(await (start as (options: typeof quiet) => ReturnType<typeof start>)(quiet));
  return new Kernel(cad);
}
