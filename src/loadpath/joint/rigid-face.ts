/**
 * The hand method beside the opening face: a stiff face on its studs alone, each with its share of the outside load.
 *
 * In    studs with their stiffness, the load
 * Out   each stud's part of the load
 * Not   contact: nothing presses, nothing opens, so it is too much while the face is closed and too little past it
 *
 * JT-n are the equations of docs/theory/studs.md. As bolt groups are worked in Shigley and Bhandari: pull shared
 * alike, moments by distance from the studs' centre.
 */
import type { Newton } from '../../units/quantity.ts';
import { FaceParted, type FacePlate, forcesIn, openingOf, type Parting, packFace } from './face.ts';

/** Not a number for every stud where they stand in one line and cannot hold the load by themselves.  [JT-11] */
export function rigidShares(studs: readonly FacePlate[], load: Parting): readonly Newton[] {
  const face = packFace({ studs: [], cells: [], plates: studs });
  try {
    return forcesIn(face, openingOf(face, load).opening).plates;
  } catch (reason) {
    if (reason instanceof FaceParted) return studs.map(() => Number.NaN);
    throw reason;
  }
}
