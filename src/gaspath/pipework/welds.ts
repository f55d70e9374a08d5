/**
 * Welds of a pipe, and whether a torch gets at them.
 *
 * In    a pipe in pieces, what its ends are
 * Out   where each weld is, how many, and how much room there is from each to the next
 *
 * The room is the shorter way on the inside: of a straight its length, of a bend the chord between the insides of its
 * two ends. What else stands round the weld (other pipes, the head) is a matter of clearance, and looked at there.
 */
import { along, distance, type Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { placeAt, stations } from './centreline.ts';
import type { BendPiece, Piece, Pieces } from './pieces.ts';
import { elementLength, inwards, type Pipe, tubeOf } from './pipe.ts';
import { stepPlaces } from './stepped.ts';

export interface Weld {
  readonly pipe: string;
  /** Along the centreline from the flange. */
  readonly s: Metre;
  readonly what: 'flange' | 'piece to piece' | 'step' | 'collector';
  readonly p: Vec3;
}

export interface Reach {
  readonly from: Weld;
  readonly to: Weld;
  /** Between the two welds where they are nearest each other. */
  readonly room: Metre;
  readonly reached: boolean;
}

/** How a pipe is held at its two ends. */
export interface Ends {
  readonly flange: 'welded' | 'none';
  /** A slip joint has no weld. */
  readonly collector: 'welded' | 'slip';
}

/** Where a piece begins and ends along its pipe, legs and laps counted in. */
export function spanOf(piece: Piece, pipe: Pipe, pieces: Pieces): readonly [Metre, Metre] {
  const begins = stations(pipe);
  if (piece.kind !== 'bend') {
    const lap = piece.kind === 'straight' ? piece.lap : 0;
    return [begins[piece.element]!.s - lap, begins[piece.element + 1]!.s];
  }
  const part = elementLength(pipe.elements[piece.element]!) / piece.parts;
  const start = begins[piece.element]!.s + (piece.part - 1) * part;
  const legs = pieces.legs.get(piece as BendPiece) ?? [];
  const before = legs.filter((each) => each.element < piece.element);
  const behind = legs.filter((each) => each.element > piece.element);
  const sum = (of: typeof legs): Metre => of.reduce((length, each) => length + each.length, 0);
  return [start - sum(before), start + part + sum(behind)];
}

/** Welds along the flow. */
export function weldsOf(pipe: Pipe, k: number, pieces: Pieces, ends: Ends): readonly Weld[] {
  const of = pieces.byPipe[k]!;
  const at = (s: Metre, what: Weld['what']): Weld => ({ pipe: pipe.name, s, what, p: placeAt(pipe, s).p });
  const steps = stepPlaces(pipe);
  /** Where two pieces meet; of tubes that lie in one another, at the end of the outer. */
  const between = (piece: Piece, before: Piece): Weld => {
    const same = before.tube === piece.tube && piece.kind !== 'reducer' && before.kind !== 'reducer';
    if (same) return at(spanOf(piece, pipe, pieces)[0], 'piece to piece');
    const step = steps.find((each) => each.behind === piece.tube && each.join.kind === 'slipped over');
    return at(step?.s ?? spanOf(piece, pipe, pieces)[0], 'step');
  };
  return [
    ...(ends.flange === 'welded' ? [at(0, 'flange')] : []),
    ...of.slice(1).map((piece, i) => between(piece, of[i]!)),
    ...(ends.collector === 'welded' ? [at(stations(pipe).at(-1)!.s, 'collector')] : []),
  ];
}

/** Room from each weld of a pipe to its next, against what the torch needs. */
export function torchReach(pipe: Pipe, welds: readonly Weld[], least: Metre): readonly Reach[] {
  return welds.slice(1).map((to, i) => {
    const from = welds[i]!;
    const room = nearest(pipe, from.s, to.s);
    return { from, to, room, reached: room >= least };
  });
}

/** Shortest distance between the two rings where the tube is cut, inside of the bend between them first. */
function nearest(pipe: Pipe, from: Metre, to: Metre): Metre {
  const begins = stations(pipe);
  const a = placeAt(pipe, from);
  const b = placeAt(pipe, to);
  const straight = distance(a.p, b.p);
  const inBetween = pipe.elements.flatMap((element, k) => {
    if (element.kind === 'straight' || begins[k + 1]!.s <= from || begins[k]!.s >= to) return [];
    const start = placeAt(pipe, Math.max(from, begins[k]!.s));
    const end = placeAt(pipe, Math.min(to, begins[k + 1]!.s));
    const r = tubeOf(pipe, k).od / 2;
    return [distance(along(a.p, inwards(element, start.t), r), along(b.p, inwards(element, end.t), r))];
  });
  return Math.min(straight, ...inBetween);
}
