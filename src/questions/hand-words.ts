/** What stands in a hand's way when it moves a bend or the collector, in words. */
import type { HandStop, TightPipe } from '../gaspath/by-hand.ts';
import type { Bar } from '../gaspath/route/hold-length.ts';
import type { Spare } from '../gaspath/route/least-spare.ts';
import type { RouteProblem } from '../gaspath/route/problem.ts';
import { scale } from '../maths/vec3.ts';
import type { TightPlace } from './primaries-set.ts';

export interface Asked {
  readonly problem: RouteProblem;
  readonly cylinders: readonly number[];
}

export function stopWords({ problem, cylinders }: Asked, stop: HandStop, corners: readonly number[]): string {
  switch (stop.kind) {
    case 'shape': {
      const { target } = problem.length;
      const why = barWords(problem, stop.bar, corners[stop.pipe]!);
      return `Cylinder ${cylinders[stop.pipe]}: its length of ${target.toFixed(1)} mm cannot be held beyond this place: ${why}.`;
    }
    case 'kept':
      if (stop.pipe === undefined) return 'The collector is kept where it is.';
      return stop.corner === undefined
        ? `Cylinder ${cylinders[stop.pipe]} is kept as it is, and with it the collector.`
        : `Cylinder ${cylinders[stop.pipe]}: bend ${stop.corner} is kept where it is.`;
    case 'fixed':
      return 'The collector is fixed: the car file tells no room for it (free, under collector).';
    case 'box':
      return 'The collector stands at the edge of the room that the car file gives it.';
    case 'cone': {
      const { collector } = problem;
      const most = collector.mode === 'free' ? collector.coneDeg : 0;
      return `The collector leans as far as the car file lets it, ${most.toFixed(0)}°.`;
    }
    case 'clearance':
      return `Cylinder ${cylinders[stop.pipe]} would be ${(-stop.spare.spare).toFixed(1)} mm too near ${tooNear({ problem, cylinders }, stop.spare)}. It stands at the last place that is clear.`;
    case 'check':
      return `The check by other means does not let it through: ${stop.says} It stands at the last place that is clear.`;
  }
}

function barWords({ radii, limits }: RouteProblem, bar: Bar, corners: number): string {
  if (bar.what === 'length') return 'no other bend can give way';
  if (bar.what === 'step') return `the step of the tube at ${bar.limit.toFixed(0)} mm would come into a bend`;
  if (bar.what === 'angle')
    return `bend ${bar.at} turns by ${limits.maxBendDeg.toFixed(0)}°, the most that is allowed`;
  const least = `${bar.limit.toFixed(0)} mm, with bends of ${Math.min(...radii).toFixed(1)} mm radius`;
  if (bar.at === 0) return `the straight at the flange is at its least, ${least}`;
  return bar.at === corners
    ? `the straight at the collector is at its least, ${least}`
    : `the straight between bends ${bar.at} and ${bar.at + 1} is at its least, ${least}`;
}

const tooNear = (asked: Asked, spare: Spare): string =>
  `${spare.what === 'pipe to pipe' ? 'the ' : ''}${againstWords(asked, spare)}`;

export function againstWords({ problem, cylinders }: Asked, { what, other }: Spare): string {
  switch (what) {
    case 'shell':
      return 'the shell';
    case 'solid':
      return problem.solids[other]!.name ?? `solid ${other + 1}`;
    case 'pipe to pipe':
      return `pipe of cylinder ${cylinders[other]}`;
    case 'collector body':
      return 'the body of the collector';
    case 'bounds':
      return 'the bounds';
    case 'self':
      return 'itself';
  }
}

const M = 1e-3;

export const tightPlace = (asked: Asked, tight: TightPipe): TightPlace => ({
  against: againstWords(asked, tight),
  gap: tight.gap * M,
  spare: tight.spare * M,
  at: scale(tight.at, M),
});
