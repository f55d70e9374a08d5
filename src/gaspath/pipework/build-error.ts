/**
 * What small errors of making do at the mouth: each bend a little out in angle and in clock.
 *
 * In    a pipe, how far each bend may be out
 * Out   how the mouth moves for each bend, all together at worst, and as they usually add
 * Not   errors of straights (they move the mouth by themselves along their line) and what a jig takes out again
 */
import { add, cross, dot, length, scale, sub, type Vec3, ZERO } from '../../maths/vec3.ts';
import type { Metre, Radian } from '../../units/quantity.ts';
import { arcCentre, stations } from './centreline.ts';
import type { Pipe } from './pipe.ts';

export interface BendError {
  readonly bend: number;
  /** How the mouth moves for the error in angle, and for the one in clock. */
  readonly byAngle: Vec3;
  readonly byClock: Vec3;
}

export interface BuildError {
  readonly bends: readonly BendError[];
  /** All errors the worst way at once: no mouth is further out, to first order. */
  readonly worst: Metre;
  /** Root of the sum of squares: where it usually is, if the errors know nothing of each other. */
  readonly usual: Metre;
}

/**
 * Mouth moved by δ n × (m − c) for a bend cut δ too long (c its centre), and by δ t × (m − b) for a bend turned δ in
 * its weld (b where it begins).  [PW-24]
 *
 * Both are the first order of exact turns: at 1° and 600 mm from bend to mouth the rest is about 0.1 mm.
 */
export function buildError(pipe: Pipe, error: Radian): BuildError {
  const begins = stations(pipe);
  const m = begins.at(-1)!.p;
  const bends: BendError[] = [];
  pipe.elements.forEach((element, k) => {
    if (element.kind === 'straight') return;
    const from = begins[k]!;
    bends.push({
      bend: bends.length + 1,
      byAngle: scale(cross(element.normal, sub(m, arcCentre(element, from))), error),
      byClock: scale(cross(from.t, sub(m, from.p)), error),
    });
  });
  const moves = bends.flatMap(({ byAngle, byClock }) => [byAngle, byClock]);
  return {
    bends,
    worst: furthest(moves),
    usual: Math.sqrt(moves.reduce((sum, move) => sum + length(move) ** 2, 0)),
  };
}

/** Longest of ± each move added: signs by the sum they make, tried from each move's own direction. */
function furthest(moves: readonly Vec3[]): Metre {
  let best = 0;
  for (const first of moves) {
    let towards = first;
    // the signs that suit a direction give a sum; its direction suits no worse: it settles in a few rounds
    for (let round = 0; round < 20; round += 1) {
      const sum = moves.reduce(
        (at, move) => add(at, scale(move, Math.sign(dot(move, towards)) || 1)),
        ZERO as Vec3,
      );
      if (length(sum) <= length(towards) * (1 + 1e-12) && round > 0) break;
      towards = sum;
    }
    best = Math.max(best, length(towards));
  }
  return best;
}
