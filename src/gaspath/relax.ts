/**
 * What would let primaries fit that do not: for each thing that is asked, the least change with which a set was found.
 *
 * One thing is eased at a time, by steps that grow, until a set stands the check; then the step is halved towards the
 * last that did not do. What is told is what was found: that less will not do is not proved, only that so much work
 * found nothing.  [RT-21]
 */
import type { RouteProblem, RouteSolution } from './route/problem.ts';
import { type Site, siteOf } from './route/site.ts';
import { StrandsRun } from './strands-run.ts';

export const EASED = ['longer', 'shorter', 'clearance', 'collector', 'radius', 'straights', 'bends'] as const;
export type Eased = (typeof EASED)[number];

export interface Ease {
  readonly what: Eased;
  /** By how much: mm, or bends. Undefined where nothing up to `tried` did. */
  readonly by?: number;
  readonly solution?: RouteSolution;
  /** The farthest that was tried. */
  readonly tried: number;
}

/** Steps that are tried, mm or bends. */
const STEPS: Readonly<Record<Eased, readonly number[]>> = {
  longer: [3, 8, 20, 45, 90, 170, 300],
  shorter: [3, 8, 20, 45, 90, 170, 300],
  clearance: [0.5, 1, 2, 4, 7],
  collector: [5, 12, 25, 50, 90, 150],
  radius: [4, 9, 16, 25],
  straights: [5, 10, 20],
  bends: [1, 2],
};
/** Halvings after the first that did. */
const HALVINGS: Readonly<Record<Eased, number>> = {
  longer: 3,
  shorter: 3,
  clearance: 2,
  collector: 3,
  radius: 2,
  straights: 2,
  bends: 0,
};
/** Evaluations before a step is given up. */
const PATIENCE = 6000;
/** No tube is bent closer than on its own diameter (common practice, no source). */
const CLOSEST_BEND = 1;

/** The problem with one thing eased; undefined where it cannot be eased so far. */
export function eased(problem: RouteProblem, what: Eased, by: number): RouteProblem | undefined {
  const { length, clearance, collector, radii, limits, tube } = problem;
  switch (what) {
    case 'longer':
      return { ...problem, length: { ...length, target: length.target + by } };
    case 'shorter':
      return length.target - by < 1
        ? undefined
        : { ...problem, length: { ...length, target: length.target - by } };
    case 'clearance': {
      const less = (of: number): number => Math.max(0, of - by);
      if (less(clearance.shell) + less(clearance.solid) + less(clearance.pipe) === 0) return undefined;
      const { shell, solid, pipe, self } = clearance;
      return {
        ...problem,
        clearance: {
          ...clearance,
          shell: less(shell),
          solid: less(solid),
          pipe: less(pipe),
          self: less(self),
        },
      };
    }
    case 'collector': {
      const [min, max] =
        collector.mode === 'free'
          ? [collector.boxMin, collector.boxMax]
          : [collector.origin, collector.origin];
      const { n, ringRadius, rows, axis } = collector;
      return {
        ...problem,
        collector: {
          mode: 'free',
          n,
          ringRadius,
          ...(rows === undefined ? {} : { rows }),
          axis,
          coneDeg: collector.mode === 'free' ? collector.coneDeg : 0,
          boxMin: [min[0] - by, min[1] - by, min[2] - by],
          boxMax: [max[0] + by, max[1] + by, max[2] + by],
        },
      };
    }
    case 'radius': {
      const closer = (of: readonly number[], od: number): readonly number[] => {
        const radius = Math.min(...of) - by;
        return radius < CLOSEST_BEND * od ? [] : [radius];
      };
      // each size of its own radii; where none of them can be had closer nothing is eased
      const more = closer(radii, tube.od);
      const steps = tube.steps?.map((step) => {
        const own = step.radii ?? radii;
        return { ...step, radii: [...closer(own, step.od), ...own] };
      });
      const eases =
        more.length > 0 ||
        steps?.some((step, k) => step.radii.length > (tube.steps![k]!.radii ?? radii).length);
      if (eases !== true) return undefined;
      return {
        ...problem,
        tube: steps === undefined ? tube : { ...tube, steps },
        radii: [...more, ...radii],
      };
    }
    case 'straights': {
      const { minStraightFlange: flange, minStraightCollector: mouth } = limits;
      return by > Math.max(flange, mouth)
        ? undefined
        : {
            ...problem,
            limits: {
              ...limits,
              minStraightFlange: Math.max(0, flange - by),
              minStraightCollector: Math.max(0, mouth - by),
            },
          };
    }
    case 'bends':
      return { ...problem, limits: { ...limits, maxBends: limits.maxBends + by } };
  }
}

/** Works through all that can be eased, a few milliseconds at a time. */
export class Relaxing {
  private readonly problem: RouteProblem;
  private readonly seed: number;
  private readonly site: Site;
  private readonly wanted: readonly Eased[];
  private run: StrandsRun | undefined;
  /** Of what is eased now. */
  private step = 0;
  private low = 0;
  private best: { readonly by: number; readonly solution: RouteSolution } | undefined;
  private halvings = 0;
  private by = 0;
  readonly found: Ease[] = [];

  constructor(problem: RouteProblem, seed: number, wanted: readonly Eased[] = EASED) {
    this.problem = problem;
    this.seed = seed;
    this.wanted = wanted;
    this.site = siteOf(problem);
    this.next();
  }

  /** What is looked at now; undefined when all is. */
  get now(): { readonly what: Eased; readonly by: number } | undefined {
    const what = this.wanted[this.found.length];
    return what === undefined ? undefined : { what, by: this.by };
  }

  /** False when all was tried. */
  advance(): boolean {
    if (this.run === undefined) return false;
    const goesOn = this.run.advance();
    const solution = this.run.strands.answers[0]?.solution;
    if (solution !== undefined) {
      this.best = { by: this.by, solution };
      this.halve();
    } else if (!goesOn || this.run.strands.work > PATIENCE) {
      this.low = this.by;
      if (this.best === undefined) this.grow();
      else this.halve();
    }
    return this.run !== undefined;
  }

  private grow(): void {
    this.step += 1;
    this.begin(STEPS[this.wanted[this.found.length]!][this.step]);
  }

  private halve(): void {
    const what = this.wanted[this.found.length]!;
    if (this.halvings >= HALVINGS[what]) {
      this.close();
      return;
    }
    this.halvings += 1;
    this.begin((this.low + this.best!.by) / 2);
  }

  private begin(by: number | undefined): void {
    const what = this.wanted[this.found.length]!;
    const problem = by === undefined ? undefined : eased(this.problem, what, by);
    if (by === undefined || problem === undefined) {
      this.close();
      return;
    }
    this.by = by;
    const site = siteOf(problem, this.site);
    this.run = new StrandsRun(problem, this.seed, { answers: 1, brief: true }, { site });
  }

  private close(): void {
    const what = this.wanted[this.found.length]!;
    this.found.push({ what, tried: this.by, ...this.best });
    this.next();
  }

  private next(): void {
    this.run = undefined;
    this.step = 0;
    this.low = 0;
    this.by = 0;
    this.halvings = 0;
    this.best = undefined;
    const what = this.wanted[this.found.length];
    if (what !== undefined) this.begin(STEPS[what][0]);
  }
}
