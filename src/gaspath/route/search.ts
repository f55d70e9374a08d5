/**
 * The search for equal primaries, a piece at a time.
 *
 * A start draws a pose and an order, then lays the pipes one by one, each the best of some tries against those
 * that lie; then all are moved together. What does not come out is mended by taking out the pipe that is most to
 * blame (or two, or two that change inlets) and laying it in anew, a number of times; then comes a fresh start.
 * What comes out is finished on the triangles of the shell with closer samples, and after that improved.
 *
 * A search from what is held begins with moving all together, and lays anew only pipes of which nothing is kept; it
 * has no fresh start, and is done when it has found a set or has mended often enough.
 *
 * `advance` does one piece (some milliseconds) and tells where the search stands; whoever calls keeps the time.
 * `saved` is plain data from which `Search.at` goes on as if nothing had been.
 */
import { Chance } from './chance.ts';
import { descend, USUAL, work } from './descent.ts';
import { Improver } from './improve.ts';
import { type Layout, laidPipe, layoutOf, putLayout, putPipe } from './layout.ts';
import { legalOrders, overOf } from './order.ts';
import { Rig } from './rig.ts';
import type { Breach, Pin } from './rows.ts';
import type { Site } from './site.ts';
import { drawOrder, drawPipe, drawPose } from './starts.ts';

export type Standing = 'searching' | 'improving' | 'done';

export interface Miss {
  /** How much is breached, mm. */
  readonly by: number;
  readonly what: Breach;
  readonly pipe: number;
  readonly other: number;
  readonly cost: number;
  /** How it lay. */
  readonly layout: Layout;
}

/** A layout to mend, and what of it is kept: bends at their place, pipes whole, the collector. */
export interface Held {
  readonly layout: Layout;
  readonly pins: readonly Pin[];
  readonly pipes: readonly number[];
  readonly collector: boolean;
}

export interface Saved {
  readonly chance: number;
  readonly phase: Phase;
  readonly order: readonly number[];
  readonly queue: readonly number[];
  readonly rips: number;
  readonly starts: number;
  readonly layout: Layout;
  readonly kept: Layout | undefined;
  readonly keptCost: number;
  readonly found: Layout | undefined;
  readonly foundMargin: number;
  readonly nearest: Miss | undefined;
  readonly improved: number;
  readonly work: number;
}

type Phase = 'start' | 'insert' | 'joint' | 'rip' | 'finish' | 'improve' | 'done';

/** Evaluations in which each strand looks for an order in rotation before it tries the next best. */
export const ROTATION_WORK = 6000;

const MOST_RIPS = 12;
/** There is no fresh start from what is held. */
const MOST_RIPS_HELD = 30;
/** A start whose pipes breach each other by so much (sum of squares, mm^2) is not worth mending. */
const HOPELESS = 12_000;
/** Below this the margin may be what is in the way. */
const NEARLY = 40;
const MARGINS = [1.2, 0.6, 0.3, 0.12, 0.045] as const;
/** What the closest samples must still keep, mm. */
const KEPT = 0.03;

export class Search {
  readonly rig: Rig;
  readonly site: Site;
  private chance: Chance;
  private phase: Phase = 'start';
  private order: readonly number[] = [];
  private queue: number[] = [];
  private rips = 0;
  private readonly orders: readonly (readonly number[])[];
  private kept: Layout | undefined;
  private keptCost = Infinity;
  private improver: Improver | undefined;
  private improved = 0;
  private readonly held: Held | undefined;
  /** Pipes that may be laid anew. */
  private readonly loose: readonly number[];

  starts = 0;
  work = 0;
  found: Layout | undefined;
  foundMargin = 0;
  nearest: Miss | undefined;

  constructor(site: Site, seed: number, held?: Held) {
    this.site = site;
    this.rig = new Rig(site);
    this.chance = new Chance(seed);
    this.orders = legalOrders(site.problem);
    this.held = held;
    this.loose = [...this.rig.pipes.keys()].filter(
      (i) => held?.pipes.includes(i) !== true && held?.pins.some(({ pipe }) => pipe === i) !== true,
    );
    if (held === undefined) return;
    putLayout(this.rig, held.layout);
    this.rig.pins = held.pins;
    this.phase = 'joint';
  }

  static at(site: Site, saved: Saved): Search {
    const made = new Search(site, 0);
    made.chance = Chance.at(saved.chance);
    made.phase = saved.phase;
    made.order = saved.order;
    made.queue = [...saved.queue];
    made.rips = saved.rips;
    made.starts = saved.starts;
    putLayout(made.rig, saved.layout);
    made.kept = saved.kept;
    // plain JSON has no infinity and turns it into null
    made.keptCost = saved.keptCost ?? Infinity;
    made.found = saved.found;
    made.foundMargin = saved.foundMargin;
    made.nearest = saved.nearest;
    made.improved = saved.improved;
    made.work = saved.work;
    return made;
  }

  get saved(): Saved {
    return {
      chance: this.chance.state,
      phase: this.phase,
      order: this.order,
      queue: [...this.queue],
      rips: this.rips,
      starts: this.starts,
      layout: layoutOf(this.rig),
      kept: this.kept,
      keptCost: this.keptCost,
      found: this.found,
      foundMargin: this.foundMargin,
      nearest: this.nearest,
      improved: this.improver?.at ?? this.improved,
      work: this.work,
    };
  }

  advance(): Standing {
    const before = work.done;
    this.step();
    this.work += work.done - before;
    return this.phase === 'done' ? 'done' : this.phase === 'improve' ? 'improving' : 'searching';
  }

  private step(): void {
    if (this.phase === 'start') this.start();
    else if (this.phase === 'insert') this.insert();
    else if (this.phase === 'joint') this.joint();
    else if (this.phase === 'rip') this.rip();
    else if (this.phase === 'finish') this.finish();
    else if (this.phase === 'improve') this.improve();
  }

  private start(): void {
    const { rig, chance } = this;
    this.starts++;
    this.kept = undefined;
    this.keptCost = Infinity;
    this.rips = 0;
    rig.inlets.fill(-1);
    rig.exact = false;
    rig.margin = MARGINS[0];
    drawPose(rig, chance);
    this.order = drawOrder(rig, this.ordersNow(), chance);
    this.queue = chance.shuffle([...rig.pipes.keys()]);
    this.phase = 'insert';
  }

  /** In rotation at first; when that has not come out for long, every second start may pass more inlets over. */
  private ordersNow(): readonly (readonly number[])[] {
    const { orders, starts, work, site } = this;
    const passed = starts % 2 === 0 ? 2 * Math.floor(work / ROTATION_WORK) : 0;
    const now = orders.filter((each) => overOf(site.problem, each) <= passed);
    return now.length === 0 ? orders : now;
  }

  private insert(): void {
    const { rig, queue } = this;
    const i = queue.shift()!;
    rig.inlets[i] = this.order[i]!;
    this.layIn(i);
    if (queue.length === 0) this.phase = 'joint';
  }

  /** Pipe i laid anew, the best of some tries, the others held. */
  private layIn(i: number): void {
    const { rig, chance } = this;
    const most = Math.max(2, this.site.problem.limits.maxBends);
    rig.moves.fill(false);
    rig.moves[i] = true;
    rig.poseMoves = false;
    rig.spacing = 20;
    let best = Infinity;
    let laid = laidPipe(rig, i);
    for (let tries = 0; tries < 10; tries++) {
      // few bends are wanted; later starts, and pipes that do not go in, get more
      const more = tries > 5 || this.starts % 4 === 0 ? 1 : 0;
      const corners = Math.min(most, 3 + chance.below(2) + (chance.next() < 0.5 ? more : 0));
      drawPipe(rig, i, corners, chance);
      descend(rig, { ...USUAL, iterations: 20 });
      if (rig.cost < best) {
        best = rig.cost;
        laid = laidPipe(rig, i);
      }
      if (best < 1e-6 || (tries >= 5 && best < 400)) break;
    }
    putPipe(rig, i, laid);
    rig.layOne(i, true);
  }

  private all(): void {
    const { rig, held } = this;
    rig.moves.fill(true);
    for (const i of held?.pipes ?? []) rig.moves[i] = false;
    // a pipe that is kept whole keeps its mouth
    const stays = held !== undefined && (held.collector || held.pipes.length > 0);
    rig.poseMoves = this.site.problem.collector.mode === 'free' && !stays;
  }

  private joint(): void {
    const { rig } = this;
    this.all();
    rig.margin = MARGINS[0];
    rig.exact = false;
    rig.spacing = 16;
    const ending = descend(rig, { ...USUAL, iterations: 80 });
    this.remember();
    if (ending === 'solved') {
      this.phase = 'finish';
      return;
    }
    if (rig.cost < this.keptCost) {
      // what gets better is worth more tries
      if (rig.cost < 0.8 * this.keptCost) this.rips = Math.max(0, this.rips - 4);
      this.keptCost = rig.cost;
      this.kept = layoutOf(rig);
      if (rig.cost < NEARLY) {
        this.phase = 'finish';
        return;
      }
    }
    this.again();
  }

  private again(): void {
    if (this.held !== undefined)
      this.phase = this.rips >= MOST_RIPS_HELD || this.loose.length === 0 ? 'done' : 'rip';
    else this.phase = this.rips >= MOST_RIPS || this.keptCost > HOPELESS ? 'start' : 'rip';
  }

  private remember(): void {
    const { rig, nearest } = this;
    if (nearest !== undefined && nearest.cost <= rig.cost) return;
    const { by, what, pipe, other } = rig.worst;
    this.nearest = { by, what, pipe, other, cost: rig.cost, layout: layoutOf(rig) };
  }

  private rip(): void {
    const { rig, chance, kept, loose } = this;
    this.rips++;
    if (kept !== undefined) putLayout(rig, kept);
    rig.exact = false;
    rig.margin = MARGINS[0];
    this.all();
    rig.layAll(true);
    rig.weigh(false);
    const n = loose.length;
    const out = [this.drawBlamed()];
    if (n > 1 && chance.next() < 0.3) {
      const other = loose[(loose.indexOf(out[0]!) + 1 + chance.below(n - 1)) % n]!;
      out.push(other);
      if (this.site.problem.order.mode === 'free' && chance.next() < 0.5) {
        const inlet = rig.inlets[out[0]!]!;
        rig.inlets[out[0]!] = rig.inlets[other]!;
        rig.inlets[other] = inlet;
        rig.seat();
      }
    }
    const inlets = out.map((i) => rig.inlets[i]!);
    for (const i of out) rig.inlets[i] = -1;
    out.forEach((i, at) => {
      rig.inlets[i] = inlets[at]!;
      this.layIn(i);
    });
    this.phase = 'joint';
  }

  /** A pipe by chance, the more a pipe breaches the likelier. */
  private drawBlamed(): number {
    const { blame } = this.rig;
    let sum = 0;
    for (const i of this.loose) sum += Math.sqrt(blame[i]!);
    let at = this.chance.next() * sum;
    for (const i of this.loose) {
      at -= Math.sqrt(blame[i]!);
      if (at < 0) return i;
    }
    return this.loose.at(-1)!;
  }

  /** On the triangles, closely sampled, with less and less margin until it comes out. */
  private finish(): void {
    const { rig } = this;
    for (const margin of MARGINS) {
      if (!this.polish(margin)) {
        this.remember();
        if (rig.cost > 30 * NEARLY || (margin < 0.2 && rig.cost > 2)) break;
        continue;
      }
      if (!this.stands()) continue;
      this.found = layoutOf(rig);
      this.foundMargin = margin;
      // bends are not left out of what is held
      this.phase = this.held === undefined ? 'improve' : 'done';
      return;
    }
    this.again();
  }

  private polish(margin: number): boolean {
    const { rig } = this;
    this.all();
    rig.margin = margin;
    rig.exact = true;
    // the least margin leaves nothing for what lies between samples
    rig.spacing = margin < 0.1 ? 3 : 7;
    return descend(rig, { ...USUAL, iterations: 40, patience: 6 }) === 'solved';
  }

  private stands(): boolean {
    const { rig } = this;
    rig.spacing = Math.max(2, this.site.problem.length.target / 500);
    rig.margin = KEPT;
    rig.layAll(true);
    return rig.weigh(false) < 1e-6;
  }

  /** What was found does not stand by another way of measuring: on from there. */
  refuse(): void {
    this.found = undefined;
    this.improver = undefined;
    this.improved = 0;
    this.again();
  }

  private improve(): void {
    this.improver ??= new Improver(this.rig, this.found!, this.foundMargin, this.improved);
    const better = this.improver.advance();
    this.found = this.improver.best;
    this.foundMargin = this.improver.margin;
    if (!better) this.phase = 'done';
  }
}
