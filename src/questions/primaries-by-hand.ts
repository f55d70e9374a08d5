/**
 * Bends and the collector of a found set moved by hand, kept where they are, and the rest mended round them.
 *
 * In    a problem as it was put, the set that was found, what was done by hand before
 * Out   at every move the set as it lies, with the least room and what stands in the way; at rest a set that the check
 *       lets through. Car axes and SI
 *
 * Each time that the hand lets go is a step: back, forth, or to the set as it was found.
 */
import { ByHand, type Kept, type Moved, NOTHING_KEPT } from '../gaspath/by-hand.ts';
import { PrimariesRun } from '../gaspath/primaries.ts';
import { solutionOf } from '../gaspath/route/elements.ts';
import { layoutFrom } from '../gaspath/route/from-elements.ts';
import { movedPose, type Wish } from '../gaspath/route/grip.ts';
import type { Layout } from '../gaspath/route/layout.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import type { Held } from '../gaspath/route/search.ts';
import { type Site, siteOf } from '../gaspath/route/site.ts';
import { scale, type Vec3 } from '../maths/vec3.ts';
import type { Radian } from '../units/quantity.ts';
import { stopWords, tightPlace } from './hand-words.ts';
import type { ProblemPut } from './primaries-problem.ts';
import {
  collectorDrawn,
  type PrimariesSet,
  primariesSet,
  primaryDrawn,
  type TightPlace,
} from './primaries-set.ts';

type Put = Extract<ProblemPut, { reached: true }>;

export interface BendName {
  readonly cylinder: number;
  /** Counted from 1, from the flange. */
  readonly bend: number;
}

/** A bend as a hand takes it: where the straights before and after it meet. */
export interface BendGrip extends BendName {
  readonly at: Vec3;
  /** Unit way along which alone it goes: the first bend and the last. */
  readonly line?: Vec3;
  readonly kept: boolean;
}

export type HandAsk =
  | (BendName & { readonly what: 'bend'; readonly to: Vec3 })
  | {
      readonly what: 'collector';
      /** From where it stood at the last step. */
      readonly shift: Vec3;
      /** About the axes of the car: an axis times its angle. */
      readonly turn: Vec3;
      /** About its own axis, right-handed downstream. */
      readonly clock: Radian;
    };

export type HandKeep =
  | (BendName & { readonly what: 'bend' })
  | { readonly what: 'pipe'; readonly cylinder: number }
  | { readonly what: 'collector' };

export interface HandTold {
  readonly set: PrimariesSet;
  readonly bends: readonly BendGrip[];
  readonly collector: { readonly free: boolean; readonly kept: boolean };
  readonly keptPipes: readonly number[];
  /** What was moved last has its least room here. */
  readonly tight?: TightPlace & { readonly cylinder: number };
  /** What stood in the way. */
  readonly stop?: string;
  /** What was asked last had no room, and the rest may be asked to give way to it. */
  readonly asked: boolean;
  /** Something is kept, round which the rest may be mended. */
  readonly keeping: boolean;
  /** It lies as it was found. */
  readonly asFound: boolean;
  /** Steps made by hand that can be undone, and done again. */
  readonly steps: number;
  readonly undone: number;
}

interface HandStep {
  readonly layout: Layout;
  readonly kept: Kept;
}

/** Plain data. */
export interface SavedHand {
  readonly steps: readonly HandStep[];
  readonly at: number;
}

export type MendStands = 'mending' | 'stands' | 'not found';

const M = 1e-3;
const MM = 1000;
/** Steps that are remembered beside the set as it was found. */
const MOST_STEPS = 60;

export class PrimariesByHand {
  private readonly put: Put;
  private readonly site: Site;
  private steps: HandStep[];
  private at: number;
  private hand!: ByHand;
  private solved!: RouteSolution;
  private resting!: PrimariesSet;
  /** What had no room, and the step before it was asked. */
  private asked: { readonly held: Held; readonly from: number } | undefined;

  constructor(put: Put, found: RouteSolution, saved?: SavedHand, site: Site = siteOf(put.problem)) {
    this.put = put;
    this.site = site;
    this.steps = [{ layout: layoutFrom(found, site.radii[0]!), kept: NOTHING_KEPT }];
    this.at = 0;
    if (saved !== undefined && saved.steps.length > 0) {
      this.steps = [...saved.steps];
      this.at = saved.at;
    }
    this.stand();
  }

  get solution(): RouteSolution {
    return this.solved;
  }

  get saved(): SavedHand {
    return { steps: this.steps, at: this.at };
  }

  /** At rest. */
  told(stop?: string): HandTold {
    return { ...this.shown(this.resting), ...(stop === undefined ? {} : { stop }) };
  }

  /** While the hand pulls: as far as it can be bent, whether or not there is room. */
  pull(ask: HandAsk): HandTold {
    return this.moved(this.hand.pull(this.wish(ask)));
  }

  /** The hand lets go. */
  letGo(): HandTold {
    const rested = this.hand.rest();
    const { asked } = rested;
    const from = this.at;
    if (rested.pipes.length > 0 && !same(rested.layout, this.step.layout))
      this.push({ layout: rested.layout, kept: this.step.kept }, rested.lies);
    else this.stand(this.solved, this.resting);
    const told = this.moved(rested);
    this.asked = asked === undefined ? undefined : { held: asked, from };
    return { ...told, ...this.shown(this.resting) };
  }

  keep(what: HandKeep, on: boolean): HandTold {
    const { kept } = this.step;
    const port = what.what === 'collector' ? -1 : this.put.cylinders.indexOf(what.cylinder);
    const pipes = kept.pipes.filter((each) => what.what !== 'pipe' || each !== port);
    const bends = kept.bends.filter(
      ({ pipe, corner }) => what.what !== 'bend' || pipe !== port || corner !== what.bend,
    );
    const next: Kept = {
      pipes: what.what === 'pipe' && on ? [...pipes, port] : pipes,
      bends: what.what === 'bend' && on ? [...bends, { pipe: port, corner: what.bend }] : bends,
      collector: what.what === 'collector' ? on : kept.collector,
    };
    this.push({ layout: this.step.layout, kept: next }, this.solved, this.resting);
    return this.told();
  }

  undo(): HandTold {
    return this.goTo(Math.max(0, this.at - 1));
  }

  redo(): HandTold {
    return this.goTo(Math.min(this.steps.length - 1, this.at + 1));
  }

  /** The set as it was found, nothing kept; itself a step. */
  backToFound(): HandTold {
    if (this.at > 0) this.push(this.steps[0]!);
    return this.told();
  }

  /**
   * Lets the finder move all that is not kept: round what the hand asked last, or for more room round what is kept. Each
   * call of what comes back is a piece of work; a set that stands is a step.
   */
  mend(seed: number): () => MendStands {
    const { kept } = this.step;
    const { held, from } = this.asked ?? { held: this.hand.held(), from: this.at };
    const run = new PrimariesRun(this.put.problem, seed, { site: this.site, held });
    return () => {
      const stands = run.advance();
      if (run.solution !== undefined) {
        // one pull of the hand is one step, mended or not
        this.at = from;
        this.push({ layout: layoutFrom(run.solution, this.site.radii[0]!), kept }, run.solution);
        return 'stands';
      }
      return stands === 'done' ? 'not found' : 'mending';
    };
  }

  private get step(): HandStep {
    return this.steps[this.at]!;
  }

  private push(step: HandStep, solution?: RouteSolution, resting?: PrimariesSet): void {
    const [found, ...since] = [...this.steps.slice(0, this.at + 1), step];
    this.steps = [found!, ...since.slice(-MOST_STEPS)];
    this.at = this.steps.length - 1;
    this.stand(solution, resting);
  }

  private goTo(at: number): HandTold {
    this.at = at;
    this.stand();
    return this.told();
  }

  /** On the step as it is now; what is known of it already need not be found again. */
  private stand(solution?: RouteSolution, resting?: PrimariesSet): void {
    const { layout, kept } = this.step;
    this.asked = undefined;
    this.hand = new ByHand(this.site, layout, kept);
    this.solved = solution ?? solutionOf(this.site, layout);
    this.resting = resting ?? primariesSet(this.put.problem, this.put.cylinders, this.solved);
  }

  private wish(ask: HandAsk): Wish {
    if (ask.what === 'bend') {
      return { kind: 'bend', pipe: this.port(ask), corner: ask.bend, to: scale(ask.to, MM) };
    }
    const { origin, axis, ref } = this.solved.collector;
    const turnDeg = scale(ask.turn, 180 / Math.PI);
    const by = { shift: scale(ask.shift, MM), turnDeg, clockDeg: (ask.clock * 180) / Math.PI };
    return { kind: 'collector', pose: movedPose({ origin, axis, ref }, by) };
  }

  /** @throws Error where the set has no such bend: whoever asks has looked */
  private port({ cylinder, bend }: BendName): number {
    const port = this.put.cylinders.indexOf(cylinder);
    const corners = this.step.layout.pipes[port]?.corners ?? 0;
    if (!(bend >= 1 && bend <= corners)) throw new Error(`no bend ${bend} in cylinder ${cylinder}`);
    return port;
  }

  private moved(moved: Moved): HandTold {
    const { put, resting } = this;
    const { problem, cylinders } = put;
    const solution = moved.lies;
    const of = (port: number) => solution.pipes[port]!;
    const pipes = resting.pipes.map((pipe) => {
      const port = cylinders.indexOf(pipe.cylinder);
      if (!moved.pipes.includes(port)) return pipe;
      const tight = moved.tight?.pipe === port ? tightPlace(put, moved.tight) : undefined;
      return primaryDrawn(problem, cylinders, of(port), tight);
    });
    const set = { ...resting, pipes, collector: collectorDrawn(solution.collector, problem) };
    const { tight, stop } = moved;
    const corners = moved.layout.pipes.map((pipe) => pipe.corners);
    return {
      ...this.shown(set),
      ...(tight === undefined
        ? {}
        : { tight: { ...tightPlace(put, tight), cylinder: cylinders[tight.pipe]! } }),
      ...(stop === undefined ? {} : { stop: stopWords(put, stop, corners) }),
    };
  }

  private shown(set: PrimariesSet): HandTold {
    const { put, step, hand } = this;
    const { kept } = step;
    const bends = hand.bends().flatMap((pipe, port) =>
      pipe.map(
        ({ at, line }, k): BendGrip => ({
          cylinder: put.cylinders[port]!,
          bend: k + 1,
          at: scale(at, M),
          ...(line === undefined ? {} : { line }),
          kept: kept.bends.some((each) => each.pipe === port && each.corner === k + 1),
        }),
      ),
    );
    return {
      set,
      bends,
      collector: { free: put.problem.collector.mode === 'free', kept: kept.collector },
      keptPipes: kept.pipes.map((port) => put.cylinders[port]!),
      asked: this.asked !== undefined,
      keeping: kept.bends.length + kept.pipes.length > 0 || kept.collector,
      asFound: same(step.layout, this.steps[0]!.layout),
      steps: this.at,
      undone: this.steps.length - 1 - this.at,
    };
  }
}

const same = (a: Layout, b: Layout): boolean =>
  far([a.origin, a.axis, a.ref], [b.origin, b.axis, b.ref]) < STILL &&
  a.pipes.every((pipe, i) => far([pipe.x], [b.pipes[i]!.x]) < STILL);

/** What moved less was not moved, mm. */
const STILL = 1e-3;

const far = (a: readonly (readonly number[])[], b: readonly (readonly number[])[]): number =>
  Math.max(0, ...a.flatMap((list, i) => list.map((value, k) => Math.abs(value - b[i]![k]!))));
