/** What reading a surface comes to: the surface, or what is wrong with the file and where. */
import type { Mesh } from '../mesh.ts';

export type MeshRead =
  | { readonly ok: true; readonly mesh: Mesh }
  | { readonly ok: false; readonly message: string; readonly remedy: string };

/** The file is not what it says it is. Thrown by the readers of the formats, and turned into words at the door. */
export class Unreadable extends Error {
  readonly remedy: string;
  constructor(message: string, remedy: string) {
    super(message);
    this.name = 'Unreadable';
    this.remedy = remedy;
  }
}

export const SAVE_AGAIN = 'Copy or save the scan again; it was cut off on its way.';
const SAVE_OTHERWISE = 'Save the scan as binary STL, OBJ, PLY or GLB.';

export const cutOff = (what: string): Unreadable => new Unreadable(what, SAVE_AGAIN);
export const otherForm = (what: string): Unreadable => new Unreadable(what, SAVE_OTHERWISE);

/** A list of numbers that grows, without a JavaScript object for each. */
export class Growing<A extends Float64Array | Uint32Array> {
  #list: A;
  #count = 0;
  readonly #make: (length: number) => A;
  constructor(make: (length: number) => A, first = 3 << 14) {
    this.#make = make;
    this.#list = make(first);
  }
  get length(): number {
    return this.#count;
  }
  push(value: number): void {
    if (this.#count === this.#list.length) {
      const wider = this.#make(2 * this.#list.length);
      wider.set(this.#list);
      this.#list = wider;
    }
    this.#list[this.#count] = value;
    this.#count += 1;
  }
  at(index: number): number {
    return this.#list[index]!;
  }
  done(): A {
    return this.#list.slice(0, this.#count) as A;
  }
}

export const growingNumbers = (): Growing<Float64Array> => new Growing((length) => new Float64Array(length));
export const growingIndices = (): Growing<Uint32Array> => new Growing((length) => new Uint32Array(length));

/** Every corner a number, every triangle three corners that there are. */
export function checked(mesh: Mesh): Mesh {
  const { corners, triangles } = mesh;
  const bad = corners.findIndex((value) => !Number.isFinite(value));
  if (bad >= 0) {
    throw otherForm(`Corner ${Math.floor(bad / 3) + 1} has a co-ordinate that is no number.`);
  }
  const count = corners.length / 3;
  const loose = triangles.findIndex((corner) => corner >= count);
  if (loose >= 0) {
    throw cutOff(
      `Triangle ${Math.floor(loose / 3) + 1} asks for corner ${triangles[loose]! + 1}; the file has ${count}.`,
    );
  }
  return mesh;
}
