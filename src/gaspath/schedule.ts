/**
 * In which order the strands of a search work.
 *
 * A search that begins in several places at once is several strands, each a search of its own with a seed of its own.
 * Their work is laid out beforehand in pieces of so many evaluations, in one line. An answer counts by the piece that
 * found it, not by the clock: the first in the line is the answer, however many threads worked through the line and
 * whichever came to it sooner.  [RT-20]
 */

export const MOST_STRANDS = 8;

export interface Piece {
  /** Its place in the line. */
  readonly at: number;
  readonly strand: number;
  /** The strand has done so much work when the piece ends; evaluations of all residuals. */
  readonly until: number;
}

/** About a second of one thread. */
const PIECE = 6000;

/** One strand at first: most problems need no other. Then two, four, and all of them with longer pieces. */
function* line(): Generator<Piece, never> {
  const done = new Array<number>(MOST_STRANDS).fill(0);
  let at = 0;
  for (let round = 0; ; round += 1) {
    const strands = Math.min(2 ** round, MOST_STRANDS);
    const work = strands < MOST_STRANDS ? PIECE : 2 * PIECE;
    for (let strand = 0; strand < strands; strand += 1) {
      done[strand]! += work;
      yield { at, strand, until: done[strand]! };
      at += 1;
    }
  }
}

/** The line of pieces, as far as anyone has asked. */
export class Schedule {
  private readonly pieces: Piece[] = [];
  private readonly more = line();
  private readonly most: number;
  private readonly done = new Array<number>(MOST_STRANDS).fill(0);
  private laid = 0;

  /** @param most  work after which the line ends, the last piece cut to it; none where it does not end */
  constructor(most = Infinity) {
    this.most = most;
  }

  /** Undefined where the line has ended before it. */
  at(index: number): Piece | undefined {
    while (this.pieces.length <= index && this.laid < this.most) {
      const { at, strand, until } = this.more.next().value;
      const before = this.done[strand]!;
      const work = Math.min(until - before, this.most - this.laid);
      this.laid += work;
      this.done[strand] = before + work;
      this.pieces.push({ at, strand, until: before + work });
    }
    return this.pieces[index];
  }
}

/** The seed of a strand: the first has the seed that was asked for. */
export const seedOf = (seed: number, strand: number): number => (seed + Math.imul(strand, 0x9e3779b1)) >>> 0;
