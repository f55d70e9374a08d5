/**
 * Where the inlets of a collector stand in its plane: on a ring, or in rows.
 *
 * On a ring inlet 0 lies along `ref`, the others follow right-handed about the axis. In rows they are counted along
 * `ref`, then row by row across it; the whole stands about the collector's middle.
 */
import type { Inlets } from './problem.ts';

/** Along `ref` and square to it, of inlet k, mm. */
export function inletPlace({ n, ringRadius, rows }: Inlets, k: number): readonly [number, number] {
  if (rows === undefined) {
    const turn = (2 * Math.PI * k) / n;
    return [ringRadius * Math.cos(turn), ringRadius * Math.sin(turn)];
  }
  const { counts, pitch } = rows;
  let row = 0;
  let at = k;
  while (at >= counts[row]!) at -= counts[row++]!;
  return [(at - (counts[row]! - 1) / 2) * pitch, (row - (counts.length - 1) / 2) * pitch];
}

/** The places of all inlets, two numbers each, mm. */
export const inletPlaces = (of: Inlets): Float64Array =>
  Float64Array.from(Array.from({ length: of.n }, (_, k) => inletPlace(of, k)).flat());

/** The least circle about the middle on which or within which all inlets stand, mm. */
export const roundRows = (counts: readonly number[], pitch: number): number =>
  Math.max(...counts.map((count, row) => pitch * Math.hypot((count - 1) / 2, row - (counts.length - 1) / 2)));

/** From the middle of an inlet to that of its nearest neighbour, mm. */
export const leastPitch = ({ n, ringRadius, rows }: Inlets): number =>
  rows === undefined ? 2 * ringRadius * Math.sin(Math.PI / n) : rows.pitch;
