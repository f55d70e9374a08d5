/**
 * Bends and the collector of a set moved by hand: the lengths held, the room that is left told at every move.
 *
 * In    a site, a set that stands, what of it is kept
 * Out   while the hand pulls: pipes of exact length with their least spare, red where it is breached; when it lets go:
 *       the last place that keeps all that is asked, checked by other means, and what stood in the way
 *
 * Everything is measured from where the hand took hold: what is moved back comes back to the same pipes.
 *
 * Equations RT-13 to RT-15 of docs/theory/gas-path-routing.md. Millimetres and degrees.
 */
import type { Vec3 } from '../maths/vec3.ts';
import { solutionOfRig } from './route/elements.ts';
import { solutionJson } from './route/exchange.ts';
import { apart, between, cornerAt, lineOf, numbersOf, poseOf, poseWithin, type Wish } from './route/grip.ts';
import { type Bar, holdLength } from './route/hold-length.ts';
import { type Layout, layoutOf, putLayout } from './route/layout.ts';
import { leastSpare, type Spare } from './route/least-spare.ts';
import type { RouteSolution } from './route/problem.ts';
import { Rig } from './route/rig.ts';
import type { Held } from './route/search.ts';
import type { Site } from './route/site.ts';
import { verify } from './verify/verify.ts';

export interface KeptBend {
  /** By its port, from 0. */
  readonly pipe: number;
  /** From 1 at the port. */
  readonly corner: number;
}

/** What stays as it is, whoever moves the rest. */
export interface Kept {
  readonly bends: readonly KeptBend[];
  readonly pipes: readonly number[];
  readonly collector: boolean;
}

export const NOTHING_KEPT: Kept = { bends: [], pipes: [], collector: false };

export type HandStop =
  /** The shape of a pipe: its length cannot be held there. */
  | { readonly kind: 'shape'; readonly pipe: number; readonly bar: Bar }
  /** Something that is kept; without a pipe the collector. */
  | { readonly kind: 'kept'; readonly pipe?: number; readonly corner?: number }
  /** Where the collector may stand. */
  | { readonly kind: 'fixed' | 'box' | 'cone' }
  | { readonly kind: 'clearance'; readonly pipe: number; readonly spare: Spare }
  /** What the check by other means found, where the live measure saw nothing. */
  | { readonly kind: 'check'; readonly says: string };

export interface TightPipe extends Spare {
  readonly pipe: number;
}

export interface Moved {
  /** As it lies now, of exact length. */
  readonly layout: Layout;
  readonly lies: RouteSolution;
  /** Pipes that may have changed. */
  readonly pipes: readonly number[];
  readonly stop?: HandStop;
  /** The least spare of what was moved, where anything is near. */
  readonly tight?: TightPipe;
}

export interface Rested extends Moved {
  /** What was asked and could not stay for want of room: to be mended, the rest giving way. */
  readonly asked?: Held;
}

/** How far beyond what is asked something is still told as near, mm. */
const LOOK = 30;
/** Between samples, mm: while the hand pulls, and when it lets go. */
const LIVE = 5;
const FINE = 2;
/** A place is clear with so much to spare by samples: what lies between them is less, mm. */
const CLEAR = 0.02;
/** The hand's way is gone in such steps, so that the pipe follows and does not jump to another shape, mm. */
const STEP = 15;
/** Halvings between a place that can be and one that cannot. */
const HALVINGS = 9;

export class ByHand {
  readonly site: Site;
  readonly kept: Kept;
  private readonly rig: Rig;
  private readonly start: Layout;
  /** Where the hand took hold, where the pipes are now, and the last place seen clear. */
  private grip: Wish | undefined;
  private now: Wish | undefined;
  private clear: Wish | undefined;
  private stop: HandStop | undefined;

  constructor(site: Site, start: Layout, kept: Kept) {
    this.site = site;
    this.kept = kept;
    this.start = start;
    this.rig = new Rig(site);
    putLayout(this.rig, start);
    this.rig.exact = true;
    this.rig.spacing = LIVE;
    this.rig.layAll(true);
  }

  /** Moves what is wished as far towards the wish as its pipes can be bent. */
  pull(asked: Wish): Moved {
    const refused = this.refusal(asked);
    if (refused !== undefined) {
      this.stop = refused;
      return this.told([], refused);
    }
    const { wish, limit } = this.within(asked);
    this.takeHold(wish);
    const from = this.now!;
    let reached = from;
    this.stop = limit;
    const steps = Math.max(1, Math.ceil(apart(from, wish) / STEP));
    for (let s = 1; s <= steps; s++) {
      const next = between(from, wish, s / steps);
      const stop = this.put(next);
      if (stop === undefined) {
        reached = next;
        continue;
      }
      reached = this.nearest(reached, next, () => true);
      this.stop = stop;
      break;
    }
    this.now = reached;
    const moved = this.told(this.moving(wish), this.stop);
    if (isClear(moved.tight)) this.clear = reached;
    return moved;
  }

  /** The hand lets go: back to the last place that keeps all that is asked, if the pipes are not in one. */
  rest(): Rested {
    const { now } = this;
    if (now === undefined) return this.told([], this.stop);
    const pipes = this.moving(now);
    this.rig.spacing = FINE;
    this.put(now);
    const there = this.told(pipes, this.stop);
    const clear = isClear(there.tight);
    const breach = this.breach(there.lies);
    if (clear && breach === undefined) return there;
    const asked = this.held(now);
    this.now = this.nearest(this.clear!, now, () => isClear(this.tightest(pipes)));
    // rare: between samples something was nearer
    const stands = (): boolean => this.breach(solutionOfRig(this.rig)) === undefined;
    if (!stands()) this.now = this.nearest(this.grip!, this.now, stands);
    if (!stands()) {
      putLayout(this.rig, this.start);
      this.rig.layAll(true);
    }
    const stop: HandStop = clear
      ? { kind: 'check', says: breach ?? '' }
      : { kind: 'clearance', pipe: there.tight!.pipe, spare: there.tight! };
    return { ...this.told(pipes, stop), asked };
  }

  /** Every bend as a hand takes it, pipe by pipe. */
  bends(): readonly (readonly { readonly at: Vec3; readonly line?: Vec3 }[])[] {
    return this.rig.pipes.map((pipe) =>
      Array.from({ length: pipe.corners }, (_, k) => {
        const line = lineOf(pipe, k + 1);
        return { at: cornerAt(pipe, k + 1), ...(line === undefined ? {} : { line }) };
      }),
    );
  }

  private takeHold(wish: Wish): void {
    const { grip } = this;
    const same =
      grip !== undefined &&
      grip.kind === wish.kind &&
      (grip.kind === 'collector' ||
        (wish.kind === 'bend' && grip.pipe === wish.pipe && grip.corner === wish.corner));
    if (same) return;
    this.grip =
      wish.kind === 'collector'
        ? { kind: 'collector', pose: poseOf(this.rig) }
        : { ...wish, to: cornerAt(this.rig.pipes[wish.pipe]!, wish.corner) };
    this.now = this.grip;
    this.clear = this.grip;
  }

  private moving = (wish: Wish): readonly number[] =>
    wish.kind === 'bend' ? [wish.pipe] : [...this.rig.pipes.keys()];

  private refusal(wish: Wish): HandStop | undefined {
    const { kept, site, rig } = this;
    if (wish.kind === 'bend') {
      const { pipe, corner } = wish;
      if (kept.pipes.includes(pipe)) return { kind: 'kept', pipe };
      return kept.bends.some((each) => each.pipe === pipe && each.corner === corner)
        ? { kind: 'kept', pipe, corner }
        : undefined;
    }
    if (site.problem.collector.mode === 'fixed') return { kind: 'fixed' };
    if (kept.collector) return { kind: 'kept' };
    if (kept.pipes.length > 0) return { kind: 'kept', pipe: kept.pipes[0]! };
    // the last bend of a pipe lies on the line of its inlet
    const last = kept.bends.find(({ pipe, corner }) => corner === rig.pipes[pipe]!.corners);
    return last === undefined ? undefined : { kind: 'kept', ...last };
  }

  private within(wish: Wish): { readonly wish: Wish; readonly limit: HandStop | undefined } {
    if (wish.kind === 'bend') return { wish, limit: undefined };
    const { pose, limit } = poseWithin(this.site, wish.pose);
    return { wish: { kind: 'collector', pose }, limit: limit === undefined ? undefined : { kind: limit } };
  }

  /** Bends what follows the wish to it; where that cannot be, all is as it was and what stops it is told. */
  private put(wish: Wish): HandStop | undefined {
    const { rig, site, kept, start } = this;
    const before = layoutOf(rig);
    if (wish.kind === 'collector') {
      rig.setPose(wish.pose.origin, wish.pose.axis, wish.pose.ref);
      rig.seat();
    }
    for (const i of this.moving(wish)) {
      const pipe = rig.pipes[i]!;
      const held = new Map<number, number>();
      const points = kept.bends
        .filter((each) => each.pipe === i)
        .map(({ corner }) => [corner, this.keptAt(i, corner)] as const);
      if (wish.kind === 'bend') points.push([wish.corner, wish.to]);
      for (const [corner, at] of points)
        for (const [q, value] of numbersOf(pipe, corner, at)) held.set(q, value);
      const bar = holdLength(site, pipe, held, start.pipes[i]!.x);
      if (bar === undefined) {
        rig.layOne(i, true);
        continue;
      }
      putLayout(rig, before);
      rig.layAll(true);
      return { kind: 'shape', pipe: i, bar };
    }
    return undefined;
  }

  /** Where a kept bend is kept: as it was when the hand took hold. */
  private keptAt(i: number, corner: number): Vec3 {
    const { x, corners } = this.start.pipes[i]!;
    const { p, d } = this.site.problem.ports[i]!;
    if (corner === 1) return [p[0] + x[0]! * d[0], p[1] + x[0]! * d[1], p[2] + x[0]! * d[2]];
    // the collector does not move where a last bend is kept
    if (corner === corners) return cornerAt(this.rig.pipes[i]!, corner);
    return [x[3 * corner - 4]!, x[3 * corner - 3]!, x[3 * corner - 2]!];
  }

  /** The last place on the way that can be and that suits; the pipes are put there. */
  private nearest(good: Wish, bad: Wish, suits: () => boolean): Wish {
    let [low, high] = [0, 1];
    this.put(good);
    for (let k = 0; k < HALVINGS; k++) {
      const middle = (low + high) / 2;
      if (this.put(between(good, bad, middle)) === undefined && suits()) low = middle;
      else high = middle;
    }
    const found = between(good, bad, low);
    this.put(found);
    return found;
  }

  private tightest(pipes: readonly number[]): TightPipe | undefined {
    return pipes
      .flatMap((pipe): TightPipe[] => {
        const spare = leastSpare(this.rig, pipe, LOOK);
        return spare === undefined ? [] : [{ ...spare, pipe }];
      })
      .reduce<TightPipe | undefined>((a, b) => (a === undefined || b.spare < a.spare ? b : a), undefined);
  }

  private told(pipes: readonly number[], stop: HandStop | undefined): Moved {
    const tight = this.tightest(pipes);
    return {
      layout: layoutOf(this.rig),
      lies: solutionOfRig(this.rig),
      pipes,
      ...(stop === undefined ? {} : { stop }),
      ...(tight === undefined ? {} : { tight }),
    };
  }

  /** What the check by other means finds amiss first. */
  private breach(solution: RouteSolution): string | undefined {
    return verify(this.site.problem, solutionJson(solution))[0]?.says;
  }

  /** What is kept, as the finder takes it; with it what is wished. */
  held(wish?: Wish): Held {
    const { kept, rig } = this;
    const own = wish?.kind === 'bend' ? [{ pipe: wish.pipe, corner: wish.corner }] : [];
    return {
      layout: layoutOf(rig),
      pins: [...kept.bends, ...own].map(({ pipe, corner }) => ({
        pipe,
        corner,
        at: cornerAt(rig.pipes[pipe]!, corner),
      })),
      pipes: kept.pipes,
      collector: kept.collector || wish?.kind === 'collector',
    };
  }
}

const isClear = (tight: Spare | undefined): boolean => tight === undefined || tight.spare >= CLEAR;
