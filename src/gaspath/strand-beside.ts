/**
 * A thread beside the one that keeps the line of pieces: it is handed the tasks of the strands that it holds.
 *
 * What a thread is made of differs between a command line and a page; what passes to and from it does not.  [RT-20]
 */
import type { SavedRun } from './primaries.ts';
import type { RouteProblem } from './route/problem.ts';
import { StrandHand } from './strand-hand.ts';
import type { Strands, Task, Told } from './strands.ts';

/** What a thread is begun with: plain data. */
export interface Begin {
  readonly problem: RouteProblem;
  readonly seed: number;
}

/** A task for it: plain data. It answers with what came of it, several times where the task is long. */
export interface ToThread {
  readonly task: Task;
  /** What the strand goes on from, where the thread has not worked on it. */
  readonly saved: SavedRun | undefined;
}

export interface Thread {
  readonly send: (message: ToThread) => void;
  readonly end: () => Promise<void>;
}

/** Opens a thread; what it tells is heard, and what breaks it off. */
export type OpenThread = (begin: Begin, hear: (told: Told) => void, fail: (reason: Error) => void) => Thread;

/** How many threads work, and how those beside this one are opened. */
export interface Threads {
  readonly count: number;
  readonly open: OpenThread;
}

export class Beside {
  private readonly strands: Strands;
  private readonly begin: Begin;
  private readonly open: OpenThread;
  private readonly holds: (strand: number) => boolean;
  /** Opened when there is work for it. */
  private thread: Thread | undefined;
  private task: Task | undefined;
  private failed: Error | undefined;

  constructor(strands: Strands, begin: Begin, open: OpenThread, holds: (strand: number) => boolean) {
    this.strands = strands;
    this.begin = begin;
    this.open = open;
    this.holds = holds;
  }

  /** Hands it its next task, where it has none. @throws what broke it off */
  work(): void {
    if (this.failed !== undefined) throw this.failed;
    if (this.task !== undefined) return;
    this.task = this.strands.take(this.holds);
    if (this.task === undefined) return;
    this.thread ??= this.open(
      this.begin,
      (told) => this.hear(told),
      (reason) => {
        this.failed = reason;
      },
    );
    this.thread.send({ task: this.task, saved: this.strands.savedOf(this.task.strand) });
  }

  /** What it told last stands, and is gone on from. */
  async end(): Promise<void> {
    const { thread, task } = this;
    this.thread = undefined;
    this.task = undefined;
    if (task !== undefined) this.strands.drop(task);
    await thread?.end();
  }

  private hear(told: Told): void {
    // a thread that was ended may have spoken before
    if (this.task === undefined) return;
    this.strands.hear(told);
    if (told.goesOn !== true) this.task = undefined;
  }
}

/** Time between two reports within a task, ms. */
const TELL_EVERY = 500;

/** What a thread does with the tasks that it is sent. @param now  a clock, ms */
export function worksThrough(
  { problem, seed }: Begin,
  tell: (told: Told) => void,
  now: () => number,
): (message: ToThread) => void {
  const hand = new StrandHand(problem, seed);
  return ({ task, saved }) => {
    let last = now();
    let told = hand.advance(task, saved);
    while (told.goesOn === true) {
      if (now() - last > TELL_EVERY) {
        last = now();
        tell(told);
      }
      told = hand.advance(task, saved);
    }
    tell(told);
  };
}
