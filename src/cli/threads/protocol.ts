/** What passes between the search and the threads that work for it: plain data. */
import type { RouteProblem, SavedRun, Task, Told } from '../../questions/primaries.ts';

export interface Begin {
  readonly problem: RouteProblem;
  readonly seed: number;
}

export interface ToThread {
  readonly task: Task;
  /** What the strand goes on from, where the thread has not worked on it. */
  readonly saved: SavedRun | undefined;
}

export type FromThread = Told;
