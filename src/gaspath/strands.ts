/**
 * A search in several strands, worked through by one thread or by many, with the same answers for the same seed.
 *
 * `Strands` keeps the line of pieces: it hands the next one to whoever holds its strand, hears what came of it, and
 * tells which answers stand. It neither computes nor knows of threads.  [RT-20]
 */
import type { SavedRun } from './primaries.ts';
import type { RouteSolution } from './route/problem.ts';
import type { Miss } from './route/search.ts';
import { MOST_STRANDS, type Piece, Schedule } from './schedule.ts';

/** Work for one strand: until it has done so much, or has an answer; or, once it has one, to better that. */
export interface Task {
  readonly strand: number;
  readonly until: number;
  /** Place in the line; undefined where an answer is bettered. */
  readonly at: number | undefined;
}

/** What came of a task, or of a part of one: plain data. */
export interface Told {
  readonly task: Task;
  readonly saved: SavedRun;
  readonly work: number;
  readonly starts: number;
  readonly solution?: RouteSolution;
  readonly nearest?: Miss;
  /** Nothing more can be bettered. */
  readonly bettered: boolean;
  /** The task goes on; what is told is how far it has come. */
  readonly goesOn?: boolean;
}

export interface AnswerFound {
  readonly strand: number;
  readonly solution: RouteSolution;
}

/** What a strand has come to: plain data, from which it goes on. */
export interface StrandStands {
  readonly saved?: SavedRun;
  readonly work: number;
  readonly starts: number;
  readonly nearest?: Miss;
  readonly solution?: RouteSolution;
  /** Place in the line of the piece that found its answer, and the work that it took. */
  readonly foundAt?: number;
  readonly foundWith?: number;
  readonly bettered: boolean;
}

export interface StrandsAsked {
  /** Answers wanted. */
  readonly answers: number;
  /** Better each for as long as it took to find, and no longer. */
  readonly brief: boolean;
  /** Better each by so much work at most; instead of `brief`. */
  readonly better?: number;
  /** Work of all strands after which the search is over, told by the line and not by the clock. */
  readonly most?: number;
}

const UNTOUCHED: StrandStands = { work: 0, starts: 0, bettered: false };
/** Work between two reports of an answer that is bettered. */
const BETTER_PIECE = 1500;
/** A brief bettering goes on for at least so much work. */
const BETTER_LEAST = 2000;
/** Most problems are done before the first strand has done so much: until then no thread runs ahead. */
const EASY = 1500;
/** A thread that has nothing else to do works so far ahead of the others, pieces. */
const AHEAD = 4 * MOST_STRANDS;

export class Strands {
  private readonly asked: StrandsAsked;
  private readonly schedule: Schedule;
  private readonly strands: StrandStands[];
  private readonly busy = new Set<number>();
  /** All pieces before this one are done. */
  private open = 0;

  constructor(asked: StrandsAsked, before: readonly StrandStands[] = []) {
    this.asked = { ...asked, answers: Math.min(asked.answers, MOST_STRANDS) };
    this.schedule = new Schedule(asked.most);
    this.strands = Array.from({ length: MOST_STRANDS }, (_, k) => before[k] ?? UNTOUCHED);
  }

  /** Plain data, from which `Strands` goes on. */
  get saved(): readonly StrandStands[] {
    return this.strands;
  }

  savedOf(strand: number): SavedRun | undefined {
    return this.strands[strand]!.saved;
  }

  /** The next task of a strand that the asker holds; undefined while there is none for him. */
  take(holds: (strand: number) => boolean): Task | undefined {
    const task = this.search(holds) ?? this.better(holds);
    if (task !== undefined) this.busy.add(task.strand);
    return task;
  }

  hear({ task, goesOn, ...came }: Told): void {
    const was = this.strands[task.strand]!;
    if (goesOn !== true) this.busy.delete(task.strand);
    const found =
      came.solution !== undefined && was.solution === undefined && task.at !== undefined
        ? { foundAt: task.at, foundWith: came.work }
        : {};
    this.strands[task.strand] = { ...was, ...came, ...found };
  }

  /** Nobody works on a task any more. */
  drop({ strand }: Task): void {
    this.busy.delete(strand);
  }

  /** Answers that stand in the line: nothing before them can come in between any more. First come, first. */
  get answers(): readonly AnswerFound[] {
    this.step();
    return this.strands
      .map((each, strand) => ({ ...each, strand }))
      .filter(({ foundAt, solution }) => solution !== undefined && foundAt! < this.open)
      .sort((a, b) => a.foundAt! - b.foundAt!)
      .slice(0, this.asked.answers)
      .map(({ strand, solution }) => ({ strand, solution: solution! }));
  }

  get done(): boolean {
    const { answers } = this;
    return answers.length === this.asked.answers && answers.every(({ strand }) => this.isBettered(strand));
  }

  /** The line has come to its end without all the answers that are wanted. */
  get isOver(): boolean {
    return this.answers.length < this.asked.answers && this.schedule.at(this.open) === undefined;
  }

  get work(): number {
    return this.strands.reduce((sum, { work }) => sum + work, 0);
  }

  get starts(): number {
    return this.strands.reduce((sum, { starts }) => sum + starts, 0);
  }

  /** What came nearest of all. */
  get nearest(): Miss | undefined {
    return this.strands
      .map(({ nearest }) => nearest)
      .filter((each) => each !== undefined)
      .sort((a, b) => a.cost - b.cost)[0];
  }

  private isDone({ strand, until, at }: Piece): boolean {
    const { work, foundAt } = this.strands[strand]!;
    return foundAt === undefined ? work >= until : at >= foundAt || work >= until;
  }

  private step(): void {
    for (let piece = this.schedule.at(this.open); piece !== undefined; piece = this.schedule.at(this.open)) {
      if (this.open >= this.last() || !this.isDone(piece)) return;
      this.open += 1;
    }
  }

  /** Pieces from here on are not wanted: enough answers were found before. */
  private last(): number {
    const found = this.strands
      .map(({ foundAt }) => foundAt)
      .filter((at) => at !== undefined)
      .sort((a, b) => a - b);
    const enough = found[this.asked.answers - 1];
    return enough === undefined ? Infinity : enough + 1;
  }

  private search(holds: (strand: number) => boolean): Task | undefined {
    this.step();
    const ahead = this.strands[0]!.work < EASY ? 1 : AHEAD;
    const last = Math.min(this.last(), this.open + ahead);
    for (let at = this.open; at < last; at += 1) {
      const piece = this.schedule.at(at);
      if (piece === undefined) return undefined;
      const { strand, until } = piece;
      if (holds(strand) && !this.busy.has(strand) && !this.isDone(piece)) return { strand, until, at };
    }
    return undefined;
  }

  private better(holds: (strand: number) => boolean): Task | undefined {
    for (const { strand } of this.answers) {
      if (!holds(strand) || this.busy.has(strand) || this.isBettered(strand)) continue;
      const until = Math.min(this.strands[strand]!.work + BETTER_PIECE, this.mostWork(strand));
      return { strand, until, at: undefined };
    }
    return undefined;
  }

  private isBettered(strand: number): boolean {
    const { bettered, work } = this.strands[strand]!;
    return bettered || work >= this.mostWork(strand);
  }

  private mostWork(strand: number): number {
    const { brief, better } = this.asked;
    const { foundWith } = this.strands[strand]!;
    if (better !== undefined) return foundWith! + better;
    if (!brief) return Infinity;
    return foundWith! + Math.max(BETTER_LEAST, foundWith!);
  }
}
