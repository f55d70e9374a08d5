/**
 * What was found made better: first fewer bends, then less turning, then more room; never at the cost of room.
 *
 * Each try starts from the best, and counts only if it comes out on the triangles with the closest samples and
 * the margin that was there before.
 */
import { descend, USUAL } from './descent.ts';
import { type Layout, layoutOf, putLayout } from './layout.ts';
import type { Rig } from './rig.ts';

const KEPT = 0.03;

export class Improver {
  private readonly rig: Rig;
  best: Layout;
  margin: number;
  /** Tries since something was gained. */
  at: number;

  constructor(rig: Rig, found: Layout, margin: number, at: number) {
    this.rig = rig;
    this.best = found;
    this.margin = margin;
    this.at = at;
  }

  /** One try; false when all were made and nothing more is gained. */
  advance(): boolean {
    const tries = this.tries();
    if (this.at >= tries.length) return false;
    const gained = tries[this.at]!();
    // what changed may open what did not go before; drops come first in the list
    this.at = gained ? 0 : this.at + 1;
    return true;
  }

  private tries(): (() => boolean)[] {
    const { pipes } = this.best;
    const made: (() => boolean)[] = [];
    pipes.forEach((pipe, i) => {
      if (pipe.corners > 2) for (let k = 1; k <= pipe.corners; k++) made.push(() => this.drop(i, k));
    });
    return made;
  }

  /** Pipe i without its corner k. */
  private drop(i: number, k: number): boolean {
    const { rig } = this;
    putLayout(rig, this.best);
    const pipe = rig.pipes[i]!;
    pipe.lay();
    const K = pipe.corners;
    const v = (at: number, c: number): number => pipe.vertex[3 * at + c]!;
    // inner corners that stay; the outer ones slide along their rays
    const inner: number[] = [];
    const first = k === 1 ? 3 : 2;
    const last = k === K ? K - 2 : K - 1;
    for (let q = first; q <= last; q++) if (q !== k) for (let c = 0; c < 3; c++) inner.push(v(q, c));
    if (k === 1)
      pipe.x[0] = Math.max(
        pipe.x[0]!,
        [0, 1, 2].reduce((sum, c) => sum + (v(2, c) - pipe.port[c]!) * pipe.out[c]!, 0),
      );
    if (k === K)
      pipe.x[1] = Math.max(
        pipe.x[1]!,
        [0, 1, 2].reduce((sum, c) => sum + (pipe.inlet[c]! - v(K - 1, c)) * pipe.into[c]!, 0),
      );
    pipe.corners = K - 1;
    pipe.x.set(inner, 2);
    for (let q = k; q < K; q++) pipe.radius[q] = pipe.radius[q + 1]!;
    rig.exact = false;
    rig.spacing = 16;
    rig.margin = this.margin;
    rig.moves.fill(false);
    rig.moves[i] = true;
    rig.poseMoves = false;
    rig.layAll(true);
    descend(rig, { ...USUAL, iterations: 25 });
    if (rig.cost > 4000) return false;
    rig.moves.fill(true);
    rig.poseMoves = rig.site.problem.collector.mode === 'free';
    if (descend(rig, { ...USUAL, iterations: 40 }) !== 'solved' && rig.cost > 1) return false;
    return this.settle();
  }

  private settle(): boolean {
    const { rig } = this;
    rig.exact = true;
    rig.spacing = 7;
    rig.margin = this.margin;
    rig.moves.fill(true);
    rig.poseMoves = rig.site.problem.collector.mode === 'free';
    if (descend(rig, { ...USUAL, iterations: 25 }) !== 'solved') return false;
    rig.spacing = Math.max(2, rig.site.problem.length.target / 500);
    rig.margin = KEPT;
    rig.layAll(true);
    if (rig.weigh(false) > 1e-6) return false;
    this.best = layoutOf(rig);
    return true;
  }
}
