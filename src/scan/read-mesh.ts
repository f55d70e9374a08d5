/**
 * A scan from its bytes: STL, OBJ, PLY or GLB, told apart by what stands in the file, by its name only where it must.
 *
 * In    the bytes of a file and its name
 * Out   the surface in the unit of the file, corners that lie on one another made one; or what is wrong and what to do
 * Not   colours, textures, normals: nothing of them is asked
 */

import { readGlb } from './formats/glb.ts';
import { readObj } from './formats/obj.ts';
import { readPly } from './formats/ply.ts';
import { checked, type MeshRead, otherForm, Unreadable } from './formats/reading.ts';
import { beginsWith, readStl } from './formats/stl.ts';
import type { Mesh } from './mesh.ts';
import { welded } from './weld.ts';

export type { MeshRead } from './formats/reading.ts';

type Reader = (bytes: Uint8Array) => Mesh;

const BY_ENDING: Readonly<Record<string, Reader>> = {
  stl: readStl,
  obj: readObj,
  ply: readPly,
  glb: readGlb,
};

function readerFor(bytes: Uint8Array, name: string): Reader {
  if (beginsWith(bytes, 'glTF')) return readGlb;
  if (beginsWith(bytes, 'ply')) return readPly;
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? '';
  const reader = Object.hasOwn(BY_ENDING, ending) ? BY_ENDING[ending] : undefined;
  if (reader === undefined) throw otherForm(`"${name}" is no scan that is read.`);
  return reader;
}

export function readMesh(bytes: Uint8Array, name: string): MeshRead {
  try {
    const mesh = welded(checked(readerFor(bytes, name)(bytes)));
    if (mesh.triangles.length === 0)
      throw otherForm('There is no triangle in the file: points alone are no surface.');
    return { ok: true, mesh };
  } catch (reason) {
    if (reason instanceof Unreadable) return { ok: false, message: reason.message, remedy: reason.remedy };
    throw reason;
  }
}
