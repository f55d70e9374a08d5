/**
 * The filler: the straight of a pipe that is cut last, to measure, so that all pipes come out at one length.
 *
 * In    a pipe, the length that all are to have, what its other pieces measure as made
 * Out   how long to cut the filler, how far that is from the drawing, and which way the mouth moves by it
 */
import { scale, type Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { stations } from './centreline.ts';
import { developedLength, elementLength, NO_LENGTH, type Pipe } from './pipe.ts';
import { isReducer } from './stepped.ts';

const fillerLength = formula({
  symbol: 'f',
  means: 'length to cut the filler',
  is: 'L - (M + U)',
  unit: 'm',
  terms: {
    L: { unit: 'm', means: 'length that all pipes are to have' },
    M: { unit: 'm', means: 'other pieces that are made, as measured along their middle' },
    U: { unit: 'm', means: 'other pieces, as drawn' },
  },
  source: 'PW-25',
});

export interface Filler {
  /** Which element of the pipe. */
  readonly element: number;
  readonly drawn: Metre;
  readonly cut: Metre;
  readonly why: string;
  /** How the mouth moves against the drawing, if the others stand as drawn: along the filler. */
  readonly mouthMoves: Vec3;
}

/**
 * The longest straight of the pipe as its filler; none for a pipe without straights.  [PW-25]
 *
 * @param made length as measured of elements that are made already, by their place in the pipe
 */
export function fillerFor(
  pipe: Pipe,
  target: Metre,
  made: ReadonlyMap<number, Metre> = new Map(),
  working?: Working,
): Filler | undefined {
  let element = -1;
  pipe.elements.forEach((each, k) => {
    const best = pipe.elements[element];
    const longest = best === undefined ? NO_LENGTH : elementLength(best);
    const cuts = each.kind === 'straight' && !isReducer(pipe, k);
    if (cuts && each.length > longest && !made.has(k)) element = k;
  });
  if (element < 0) return undefined;
  const drawn = elementLength(pipe.elements[element]!);
  let M = 0;
  let U = 0;
  pipe.elements.forEach((each, k) => {
    if (k === element) return;
    const measured = made.get(k);
    if (measured === undefined) U += elementLength(each);
    else M += measured;
  });
  const cut = fillerLength({ L: target, M, U }, working);
  const t = stations(pipe)[element]!.t;
  return {
    element,
    drawn,
    cut,
    why: 'the longest straight: it takes a correction with room to spare, and its ends are square cuts',
    mouthMoves: scale(t, cut - drawn),
  };
}

/** The length that most needs no cutting short: the mean of the set, where none is asked for. */
export const commonLength = (pipes: readonly Pipe[]): Metre =>
  pipes.reduce((sum, pipe) => sum + developedLength(pipe), 0) / pipes.length;
