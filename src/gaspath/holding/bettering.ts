/** A set that stands made better as at the end of a search, from where it lies. */
import type { SavedRun } from '../primaries.ts';
import { layoutFrom } from '../route/from-elements.ts';
import type { RouteSolution } from '../route/problem.ts';
import type { Site } from '../route/site.ts';

/** Least margin with which anything is found, mm. */
const LEAST_MARGIN = 0.045;

/** A run that has found this set and did nothing since. */
export function foundAlready(site: Site, solution: RouteSolution): SavedRun {
  const layout = layoutFrom(solution, site.radii[0]!);
  return {
    solution,
    search: {
      chance: 1,
      phase: 'improve',
      order: [],
      queue: [],
      rips: 0,
      starts: 0,
      layout,
      kept: undefined,
      keptCost: Infinity,
      found: layout,
      foundMargin: LEAST_MARGIN,
      nearest: undefined,
      improved: 0,
      work: 0,
    },
  };
}
