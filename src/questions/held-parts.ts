/**
 * Several parts that stand brought to hold what they must: one after another is looked at with the others where they lie,
 * mended and, where that does not do, laid anew among them, until all hold in one round, or the rounds run out.
 *
 * What one part is laid anew for may lack of another afterwards: so all are looked at again after each that moved. The
 * same seed gives the same sets, however the pieces fall; it goes on from what was saved.  [RT-25]
 */
import type { Amendments } from '../gaspath/holding/amend.ts';
import { beganWith } from '../gaspath/holding/holding.ts';
import { standing } from '../gaspath/parts/standing.ts';
import type { RouteSolution } from '../gaspath/route/problem.ts';
import { seedOf } from '../gaspath/schedule.ts';
import { betweenParts } from '../gaspath/verify/between.ts';
import { findHeld, type SavedHeld } from './find-held.ts';
import type { FindingPrimaries } from './find-primaries.ts';
import { heldOfPart, holdOfPart, type PartsHold } from './parts-holding.ts';
import type { PartPut } from './parts-put.ts';

/** Plain data. */
export interface SavedHeldParts {
  readonly solutions: readonly RouteSolution[];
  /** What was asked more of each part for its set. */
  readonly more: readonly (Amendments | null)[];
  /** How many things lack of each as it was last looked at; null of one that was not yet. */
  readonly lacking: readonly (number | null)[];
  readonly round: number;
  /** The part that is looked at. */
  readonly at: number;
  /** A part moved since this round began. */
  readonly moved: boolean;
  /** Of that part's finding. */
  readonly held?: SavedHeld;
}

/** Rounds through all parts; the first does nearly always, the second proves it. */
const MOST_ROUNDS = 4;

export class HeldParts {
  private readonly parts: readonly PartPut[];
  private readonly seed: number;
  private readonly hold: PartsHold;
  private state: SavedHeldParts;
  private finding: FindingPrimaries | undefined;

  /** @param solutions  that stand clear of each other, one of each part */
  constructor(
    parts: readonly PartPut[],
    solutions: readonly RouteSolution[],
    seed: number,
    hold: PartsHold,
    saved?: SavedHeldParts,
  ) {
    this.parts = parts;
    this.seed = seed;
    this.hold = hold;
    this.state = saved ?? {
      solutions,
      more: parts.map(() => null),
      lacking: parts.map((part) => (heldOfPart(part, hold).length === 0 ? 0 : null)),
      round: 0,
      at: 0,
      moved: false,
    };
  }

  get saved(): SavedHeldParts {
    const held = this.finding?.saved();
    return held !== undefined && 'held' in held ? { ...this.state, held } : this.state;
  }

  /** As they lie so far: clear of each other at any time. */
  get solutions(): readonly RouteSolution[] {
    return this.state.solutions;
  }

  get done(): boolean {
    return this.state.at >= this.parts.length;
  }

  /** The part that is looked at, while one is. */
  get at(): number | undefined {
    return this.done ? undefined : this.state.at;
  }

  get lacking(): readonly (number | null)[] {
    return this.state.lacking;
  }

  /** A piece of work, some milliseconds; a look takes longer. */
  advance(): void {
    if (this.done) return;
    this.finding ??= this.begin();
    if (this.finding === undefined) {
      this.next();
      return;
    }
    const stands = this.finding.advance();
    if (stands === 'done' || stands === 'impossible') this.finish(this.finding);
  }

  private begin(): FindingPrimaries | undefined {
    const { at, solutions, more, round, held } = this.state;
    const holds = holdOfPart(
      this.parts,
      solutions,
      at,
      more.map((each) => each ?? undefined),
      this.hold,
    );
    if (holds === undefined) return undefined;
    const from = more[at] ?? holds.from;
    return findHeld(holds, {
      seed: seedOf(this.seed, 64 + round),
      saved: held ?? { held: beganWith(solutions[at]!, from) },
    });
  }

  private finish(finding: FindingPrimaries): void {
    const { at, solutions, more, lacking, moved } = this.state;
    const solution = finding.solution() ?? solutions[at]!;
    const { holding } = finding;
    const laid = solutions.map((each, k) => (k === at ? solution : each));
    const is = JSON.stringify(solution) !== JSON.stringify(solutions[at]);
    // by another measure than it was found with
    const stands = !is || this.isClear(laid);
    this.set({
      lacking: replaced(lacking, at, holding?.holdsAll === true && stands ? 0 : (holding?.lacking ?? 1)),
      ...(stands
        ? { solutions: laid, more: replaced(more, at, holding?.more ?? null), moved: moved || is }
        : {}),
    });
    this.next();
  }

  private isClear(solutions: readonly RouteSolution[]): boolean {
    const gas = this.parts.map((each) => each.gas);
    return betweenParts(standing(gas, solutions)).length === 0;
  }

  private next(): void {
    const { at, round, moved } = this.state;
    const { held: _, ...state } = this.state;
    this.finding = undefined;
    this.state = { ...state, at: at + 1 };
    // alone it has nothing beside it that could have moved
    if (!this.done || !moved || this.parts.length === 1 || round + 1 >= MOST_ROUNDS) return;
    this.set({ at: 0, round: round + 1, moved: false });
  }

  private set(state: Partial<SavedHeldParts>): void {
    this.state = { ...this.state, ...state };
  }
}

const replaced = <T>(all: readonly T[], at: number, by: T): readonly T[] =>
  all.map((each, k) => (k === at ? by : each));
