/**
 * Equal primaries from a problem to an answer that was checked: first whether it can be, then the search, then the
 * check by other means, then what can be bettered.
 *
 * A run goes on a piece at a time, so that whoever has a clock can stop it; `saved` takes it up again later.
 */

import { solutionOf } from './route/elements.ts';
import { solutionJson } from './route/exchange.ts';
import { type Cause, impossible } from './route/impossible.ts';
import type { RouteProblem, RouteSolution } from './route/problem.ts';
import { type Held, type Miss, type Saved, Search } from './route/search.ts';
import { type Site, siteOf } from './route/site.ts';
import { type SolutionBreach, verify } from './verify/verify.ts';

export type RunStands = 'impossible' | 'searching' | 'improving' | 'done';

export interface SavedRun {
  readonly search: Saved;
  readonly solution: RouteSolution | undefined;
}

export interface RunFrom {
  /** What a run of the same problem and seed had come to. */
  readonly saved?: SavedRun | undefined;
  /** The problem made ready before. */
  readonly site?: Site;
  /** A set to mend, and what of it is kept, instead of beginning anew. */
  readonly held?: Held;
}

export class PrimariesRun {
  readonly problem: RouteProblem;
  readonly site: Site;
  readonly causes: readonly Cause[];
  private readonly search: Search;
  /** Checked; undefined until one stands. */
  solution: RouteSolution | undefined;
  /** Answers that the search took for good and the check did not. */
  refused: readonly SolutionBreach[] = [];

  constructor(problem: RouteProblem, seed: number, { saved, site, held }: RunFrom = {}) {
    this.problem = problem;
    this.site = site ?? siteOf(problem);
    // a site that was made ready before was looked at for what cannot be
    this.causes = saved === undefined && site === undefined ? impossible(this.site) : [];
    this.search =
      saved === undefined ? new Search(this.site, seed, held) : Search.at(this.site, saved.search);
    this.solution = saved?.solution;
  }

  get saved(): SavedRun {
    return { search: this.search.saved, solution: this.solution };
  }

  /** What came nearest, while nothing was found. */
  get nearest(): Miss | undefined {
    return this.search.nearest;
  }

  get starts(): number {
    return this.search.starts;
  }

  /** Times that all residuals were added up. */
  get work(): number {
    return this.search.work;
  }

  advance(): RunStands {
    if (this.causes.length > 0) return 'impossible';
    const before = this.search.found;
    const stands = this.search.advance();
    const { found } = this.search;
    if (found === undefined || found === before) return stands;
    const solution = solutionOf(this.site, found);
    const breaches = verify(this.problem, solutionJson(solution));
    if (breaches.length === 0) this.solution = solution;
    else {
      this.refused = breaches;
      if (this.solution === undefined) {
        this.search.refuse();
        return 'searching';
      }
    }
    return stands;
  }
}
