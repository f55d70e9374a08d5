/**
 * The sizes of tube along a pipe, and whether each change of size stands where it may: on a straight, near its place.
 *
 * Over the length of a join the larger of its two tubes is the outside.
 */
import type { RouteProblem } from '../route/problem.ts';
import type { ReadPipe } from './read.ts';
import type { Step } from './walk.ts';

/** A length of pipe of one outer radius, mm. */
export interface Size {
  readonly from: number;
  readonly to: number;
  readonly radius: number;
}

interface Join {
  readonly at: number;
  /** Of the pipe that the join takes. */
  readonly begins: number;
  readonly ends: number;
}

const joinsOf = (
  { steps = [] }: RouteProblem['tube'],
  stepsAt: readonly number[] | undefined,
): readonly Join[] =>
  steps.map(({ from, join: { kind, length } }, k) => {
    const at = stepsAt?.[k] ?? from;
    return kind === 'slipped over'
      ? { at, begins: at - length, ends: at }
      : { at, begins: at, ends: at + length };
  });

/** The pipe from flange to mouth, size by size. */
export function sizesAlong(
  tube: RouteProblem['tube'],
  pipe: { readonly stepsAt?: readonly number[] },
  long: number,
): readonly Size[] {
  const joins = joinsOf(tube, pipe.stepsAt);
  let before = tube.od;
  let from = 0;
  const sizes: Size[] = [];
  (tube.steps ?? []).forEach(({ od }, k) => {
    const to = od >= before ? joins[k]!.begins : joins[k]!.ends;
    sizes.push({ from, to, radius: before / 2 });
    before = od;
    from = to;
  });
  return [...sizes, { from, to: long, radius: before / 2 }];
}

/** A radius throughout, or size by size. */
export type Thick = number | readonly Size[];

export const sizesOf = (thick: Thick, long: number): readonly Size[] =>
  typeof thick === 'number' ? [{ from: 0, to: long, radius: thick }] : thick;

export const radiusAt = (sizes: readonly Size[], s: number): number =>
  (sizes.findLast(({ from }) => s >= from) ?? sizes[0]!).radius;

/** Outer diameter of the thickest tube, and of that at the collector. */
export const thickest = ({ od, steps = [] }: RouteProblem['tube']): number =>
  Math.max(od, ...steps.map((step) => step.od));
export const atMouth = ({ od, steps = [] }: RouteProblem['tube']): number => steps.at(-1)?.od ?? od;

export interface SizeBreach {
  readonly code: 'step' | 'radius';
  readonly says: string;
  readonly needs?: number;
  readonly has?: number;
}

/** What a join may stand over the end of its straight, or off its place, mm. */
const SLACK = 0.01;

/** Straights and bends by where they lie; straights that follow each other are one. */
function runsOf(steps: readonly Step[]): { kind: Step['kind']; from: number; to: number; radius: number }[] {
  const runs: { kind: Step['kind']; from: number; to: number; radius: number }[] = [];
  let s = 0;
  for (const { kind, length, radius, angle } of steps) {
    const long = kind === 'straight' ? length : radius * angle;
    const last = runs.at(-1);
    if (kind === 'straight' && last?.kind === 'straight') last.to += long;
    else runs.push({ kind, from: s, to: s + long, radius });
    s += long;
  }
  return runs;
}

export function sizeBreaches({ tube, radii }: RouteProblem, { steps, stepsAt }: ReadPipe): SizeBreach[] {
  const asked = tube.steps ?? [];
  if (stepsAt !== undefined && stepsAt.length !== asked.length)
    return [
      {
        code: 'step',
        says: 'The pipe has another number of steps in its tube than is asked.',
        needs: asked.length,
        has: stepsAt.length,
      },
    ];
  const runs = runsOf(steps);
  const joins = joinsOf(tube, stepsAt);
  const breaches: SizeBreach[] = [];
  asked.forEach(({ from, within }, k) => {
    const { at, begins, ends } = joins[k]!;
    if (Math.abs(at - from) > within + SLACK)
      breaches.push({
        code: 'step',
        says: `The tube changes its size too far from its place, ${from} ± ${within} mm from the flange.`,
        needs: from,
        has: at,
      });
    const straight = runs.some(
      (run) => run.kind === 'straight' && run.from <= begins + SLACK && run.to >= ends - SLACK,
    );
    if (!straight)
      breaches.push({
        code: 'step',
        says: `The tube changes its size in a bend: a straight is needed from ${begins.toFixed(1)} to ${ends.toFixed(1)} mm from the flange.`,
      });
  });
  for (const { kind, from, to, radius } of runs) {
    if (kind !== 'bend') continue;
    const before = joins.findLastIndex(({ at }) => at <= (from + to) / 2);
    const had = before < 0 ? radii : (asked[before]!.radii ?? radii);
    if (had.some((each) => Math.abs(each - radius) <= 1e-4)) continue;
    breaches.push({
      code: 'radius',
      says:
        before < 0
          ? 'A radius that is not among those allowed.'
          : `A radius that is not among those allowed for a tube of ${asked[before]!.od} mm.`,
      has: radius,
    });
  }
  return breaches;
}
