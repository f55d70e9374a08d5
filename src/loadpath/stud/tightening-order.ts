/**
 * In which order the nuts of a joint are tightened, and in which rounds.
 *
 * In    where the studs and dowels stand on the face
 * Out   the studs in their order: opposite across the centre, then where most of the face is still free
 * Not   what the maker says: his order rules. Gaskets, which want more rounds
 *
 * TG-n are the rules of docs/theory/studs.md. Common practice: crosswise, in three rounds and one more.
 */
import type { Metre, NewtonMetre, Ratio } from '../../units/quantity.ts';
import type { FacePoint } from '../joint/face.ts';

/** Distances nearer to one another than this part of the joint's extent are alike: a survey does not choose the order. */
const ALIKE = 0.05;

/** Parts of the value; the last goes round once more until no nut moves.  [TG-4] */
export const ROUNDS: readonly Ratio[] = [0.3, 0.6, 1, 1];

const apart = (a: FacePoint, b: FacePoint): Metre => Math.hypot(a.y - b.y, a.z - b.z);

/** Distance from the nearest of some points; without any, none is nearer than another. */
const fromNearest = (of: FacePoint, points: readonly FacePoint[]): Metre =>
  points.length === 0 ? 0 : Math.min(...points.map((each) => apart(of, each)));

/**
 * Places of the studs in the order in which they are tightened.
 *
 * The first stands nearest a dowel [TG-1]. After the first of a pair comes the one most nearly opposite it across the
 * centre [TG-2]. The next pair begins with the stud furthest from all that are done; of those alike, the furthest from
 * the last two, then from the last; of those still alike, the first in the file [TG-3].
 */
export function tighteningOrder(
  studs: readonly FacePoint[],
  dowels: readonly FacePoint[],
): readonly number[] {
  const centre = {
    y: studs.reduce((sum, { y }) => sum + y, 0) / studs.length,
    z: studs.reduce((sum, { z }) => sum + z, 0) / studs.length,
  };
  const extent = Math.max(...studs.map((each) => 2 * apart(each, centre)));
  const order: number[] = [];
  const at = (place: number): FacePoint => studs[place]!;
  const left = (): number[] => studs.map((_, place) => place).filter((place) => !order.includes(place));
  const least = (places: readonly number[], measure: (of: FacePoint) => Metre): number[] => {
    const best = Math.min(...places.map((place) => measure(at(place))));
    return places.filter((place) => measure(at(place)) <= best + ALIKE * extent);
  };
  const most = (places: readonly number[], measure: (of: FacePoint) => Metre): number[] =>
    least(places, (of) => -measure(of));
  while (order.length < studs.length) {
    const done = order.map(at);
    const last = done.at(-1);
    if (last === undefined) order.push(least(left(), (of) => fromNearest(of, dowels))[0]!);
    else if (done.length % 2 === 1) {
      const across = { y: 2 * centre.y - last.y, z: 2 * centre.z - last.z };
      order.push(least(left(), (of) => apart(of, across))[0]!);
    } else {
      const freest = most(left(), (of) => fromNearest(of, done));
      const square = most(freest, (of) => fromNearest(of, done.slice(-2)));
      order.push(most(square, (of) => apart(of, last))[0]!);
    }
  }
  return order;
}

/** What is set on the wrench in a round: the nut runs first, and the rest of the value is parted.  [TG-5] */
export const roundTorque = (value: NewtonMetre, running: NewtonMetre, share: Ratio): NewtonMetre =>
  running + share * (value - running);
