/**
 * Corners that lie on one another made one: STL writes every corner again for each of its triangles.
 *
 * Only corners with the very same co-ordinates are joined: a scan rounds alike wherever it writes a corner, and
 * joining near ones would close gaps that are there.
 */
import type { Mesh } from './mesh.ts';

const EMPTY = 0xffffffff;

/** The same surface, each corner once, and no triangle that uses a corner twice. */
export function welded({ corners, triangles }: Mesh): Mesh {
  const count = corners.length / 3;
  let size = 16;
  while (size < 2 * count) size *= 2;
  const table = new Uint32Array(size).fill(EMPTY);
  const renamed = new Uint32Array(count);
  const kept = new Float64Array(corners.length);
  const bits = new Uint32Array(kept.buffer);
  let used = 0;
  for (let n = 0; n < count; n += 1) {
    // written where it would stand, so that its bits can be taken; + 0 makes one nought of the two
    for (let axis = 0; axis < 3; axis += 1) kept[3 * used + axis] = corners[3 * n + axis]! + 0;
    let slot = hashAt(bits, 6 * used) & (size - 1);
    while (table[slot] !== EMPTY && !same(kept, table[slot]!, used)) slot = (slot + 1) & (size - 1);
    if (table[slot] === EMPTY) {
      table[slot] = used;
      used += 1;
    }
    renamed[n] = table[slot]!;
  }
  const out = new Uint32Array(triangles.length);
  let at = 0;
  for (let n = 0; n < triangles.length; n += 3) {
    const [a, b, c] = [renamed[triangles[n]!]!, renamed[triangles[n + 1]!]!, renamed[triangles[n + 2]!]!];
    if (a === b || b === c || c === a) continue;
    out[at] = a;
    out[at + 1] = b;
    out[at + 2] = c;
    at += 3;
  }
  return { corners: kept.slice(0, 3 * used), triangles: out.slice(0, at) };
}

const same = (kept: Float64Array, a: number, b: number): boolean =>
  kept[3 * a] === kept[3 * b] && kept[3 * a + 1] === kept[3 * b + 1] && kept[3 * a + 2] === kept[3 * b + 2];

/** FNV-1a over the six halves of a corner, stirred once more at the end. */
function hashAt(bits: Uint32Array, at: number): number {
  let hash = 0x811c9dc5;
  for (let k = 0; k < 6; k += 1) hash = Math.imul(hash ^ bits[at + k]!, 0x01000193) ^ (hash >>> 15);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  return (hash ^ (hash >>> 13)) >>> 0;
}
