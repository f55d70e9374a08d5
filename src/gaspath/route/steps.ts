/**
 * Steps of a tube along a pipe as the search has them: on which straight each stands, and how thick the pipe is where.
 *
 * A step stands on a straight, as near to its place as the straight lets it. On which one is chosen anew only where a
 * search has taken a step for good, and only if the straight that it stood on no longer has room for it: between
 * such places all is smooth. Bends before a step are those of the smaller size, bends behind it of the larger.
 *
 * Equations RT-30 to RT-32 of docs/theory/gas-path-routing.md.
 */
import type { RouteProblem, RouteStep } from './problem.ts';
import type { PipeShape } from './shape.ts';

export interface ReadyStep {
  readonly from: number;
  readonly within: number;
  /** What its join takes of the straight before and behind it. */
  readonly before: number;
  readonly behind: number;
  /** Where the outside grows or shrinks, from where the step stands. */
  readonly outside: number;
  /** Half the outer diameter from here on, less that at the flange. */
  readonly more: number;
  /** Radii that bends of this size are had in, least first. */
  readonly radii: readonly number[];
}

/** How much of the pipe a join takes before and behind its `from`, mm. */
export const reachOf = ({
  join,
}: Pick<RouteStep, 'join'>): { readonly before: number; readonly behind: number } =>
  join.kind === 'slipped over' ? { before: join.length, behind: 0 } : { before: 0, behind: join.length };

const risen = (radii: readonly number[]): readonly number[] => [...radii].sort((a, b) => a - b);

export function readySteps({ tube, radii }: RouteProblem): readonly ReadyStep[] {
  let od = tube.od;
  return (tube.steps ?? []).map((step): ReadyStep => {
    const { before, behind } = reachOf(step);
    // over its join the pipe counts as thick as the larger of the two
    const outside = step.od >= od ? -before : behind;
    od = step.od;
    return {
      from: step.from,
      within: step.within,
      before,
      behind,
      outside,
      more: (step.od - tube.od) / 2,
      radii: risen(step.radii ?? radii),
    };
  });
}

/** A straight and those that follow it without a turn, as one. */
interface Stretch {
  first: number;
  last: number;
  low: number;
  high: number;
}

/** A bend of less is part of its straights, rad. */
const NO_TURN = 1e-7;
/** A straight has room for a step but for so much: no reason to look for another, mm. */
const ROOM = 1e-6;
/** Radii that are the same, mm. */
const SAME_RADIUS = 1e-4;

export const stretch: Stretch = { first: 0, last: 0, low: 0, high: 0 };

/** Puts the straight of leg i, as long as it goes on without a turn, into `stretch`. */
export function stretchOf(pipe: PipeShape, i: number): void {
  let first = i;
  let last = i;
  while (first > 0 && pipe.angle[first]! < NO_TURN) first--;
  while (last < pipe.corners && pipe.angle[last + 1]! < NO_TURN) last++;
  stretch.first = first;
  stretch.last = last;
  stretch.low = pipe.from[first]!;
  stretch.high = pipe.from[last]! + pipe.straight(last);
}

/** What a step lacks on the straight in `stretch`: above nothing it has no room there.  [RT-30] */
export const lateBy = ({ from, within, before }: ReadyStep): number => stretch.low + before - (from + within);
export const earlyBy = ({ from, within, behind }: ReadyStep): number =>
  from - within - (stretch.high - behind);
export const shortBy = ({ before, behind }: ReadyStep): number =>
  before + behind - (stretch.high - stretch.low);

const lack = (step: ReadyStep): number => Math.max(lateBy(step), earlyBy(step), shortBy(step));

/** As near to its place as the straight in `stretch` lets it; within what it may be off, come what may.  [RT-31] */
function placed({ from, within, before, behind }: ReadyStep): number {
  const on = Math.max(stretch.low + before, Math.min(from, stretch.high - behind));
  return Math.min(from + within, Math.max(from - within, on));
}

/** Chooses the straight of each step and gives bends the radius of their size; the pipe is laid. */
export function settle(pipe: PipeShape, steps: readonly ReadyStep[], atFlange: readonly number[]): void {
  steps.forEach((step, j) => {
    const on = pipe.stepOn[j]!;
    if (on >= 0 && on <= pipe.corners) {
      stretchOf(pipe, on);
      if (lack(step) <= ROOM) return;
    }
    let best = -1;
    let least = Infinity;
    for (let i = 0; i <= pipe.corners; i++) {
      stretchOf(pipe, i);
      const r = Math.max(0, lack(step));
      // where there is room on several, the one nearest to its place
      const score = r > ROOM ? 1e4 + r : Math.abs(placed(step) - step.from);
      if (score < least) {
        least = score;
        best = i;
      }
    }
    pipe.stepOn[j] = best;
  });
  let changed = false;
  for (let k = 1; k <= pipe.corners; k++) {
    let radii = atFlange;
    for (let j = 0; j < steps.length; j++) if (pipe.stepOn[j]! < k) radii = steps[j]!.radii;
    const radius = pipe.radius[k]!;
    if (radii.some((each) => Math.abs(each - radius) < SAME_RADIUS)) continue;
    pipe.radius[k] = radii[0]!;
    changed = true;
  }
  if (changed) pipe.lay();
}

/** Where each step stands on the straight that was chosen for it; the pipe is laid. */
export function placeSteps(pipe: PipeShape, steps: readonly ReadyStep[]): void {
  for (let j = 0; j < steps.length; j++) {
    stretchOf(pipe, Math.max(0, Math.min(pipe.corners, pipe.stepOn[j]!)));
    pipe.stepAt[j] = placed(steps[j]!);
  }
}

/**
 * How thick the pipe is at each sample, beyond the tube at its flange.  [RT-32]
 *
 * @param reach  a sample also stands for what lies so far along from it, mm
 */
export function thicken(pipe: PipeShape, steps: readonly ReadyStep[], reach: number): void {
  const { arc, more, stepAt, count } = pipe;
  for (let m = 0; m < count; m++) {
    let near = 0;
    let far = 0;
    for (let j = 0; j < steps.length; j++) {
      const begins = stepAt[j]! + steps[j]!.outside;
      if (begins <= arc[m]! - reach) near = steps[j]!.more;
      if (begins <= arc[m]! + reach) far = steps[j]!.more;
    }
    more[m] = Math.max(near, far);
  }
}

/** The least that a pipe can be thicker at a length from its flange, wherever its steps come. */
export function leastMoreAt(steps: readonly ReadyStep[], arc: number): number {
  let early = 0;
  let late = 0;
  for (const { from, within, outside, more } of steps) {
    if (from - within + outside <= arc) early = more;
    if (from + within + outside <= arc) late = more;
  }
  return Math.min(early, late);
}
