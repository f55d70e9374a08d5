/**
 * What would let a bank's primaries fit: for each thing asked, the least change with which a set was found.
 *
 * In    a problem as it was put, for which nothing was found or nothing can be
 * Out   a piece at a time: each thing that was eased, in words, by how much, and the set that was found so
 */
import { EASED, type Ease, type Eased, Relaxing } from '../gaspath/relax.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import type { ProblemPut } from './primaries-problem.ts';

export { EASED };

export interface EasedPrimaries {
  readonly what: Eased;
  /** By how much: metres, or a number of bends. Undefined where nothing did. */
  readonly by?: number;
  readonly words: string;
  readonly solution?: RouteSolution;
}

export interface EasingPrimaries {
  /** One piece of work, some milliseconds; false when all was tried. */
  readonly advance: () => boolean;
  readonly found: (speech?: Speech) => readonly EasedPrimaries[];
  /** What is tried now, in words. */
  readonly now: (speech?: Speech) => string | undefined;
}

export function easePrimaries(put: Extract<ProblemPut, { reached: true }>, seed: number): EasingPrimaries {
  const { problem } = put;
  const relaxing = new Relaxing(problem, seed);
  return {
    advance: () => relaxing.advance(),
    // what does comes first
    found: (speech = 'mm-N') =>
      [...relaxing.found]
        .sort((a, b) => Number(a.by === undefined) - Number(b.by === undefined))
        .map((ease) => told(problem, ease, speech)),
    now: (speech = 'mm-N') =>
      relaxing.now === undefined ? undefined : would(problem, relaxing.now.what, relaxing.now.by, speech),
  };
}

function told(problem: RouteProblem, { what, by, tried, solution }: Ease, speech: Speech): EasedPrimaries {
  if (by === undefined || solution === undefined) {
    return {
      what,
      words:
        tried === 0
          ? `${NO_ROOM[what]}.`
          : `Nothing was found with ${lower(would(problem, what, tried, speech))}, nor with less.`,
    };
  }
  return {
    what,
    by: what === 'bends' ? by : by / 1000,
    words: `A set was found with ${lower(would(problem, what, by, speech))}.`,
    solution,
  };
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

const NO_ROOM: Readonly<Record<Eased, string>> = {
  longer: 'The length was not tried longer',
  shorter: 'The length was not tried shorter',
  clearance: 'There is no clearance to give',
  collector: 'The collector was not tried elsewhere',
  radius: 'A closer bend than that of the rack would be closer than the tube’s own diameter',
  straights: 'There is no straight to give',
  bends: 'No more bends were tried',
};

/** @param by  mm, or bends */
function would(problem: RouteProblem, what: Eased, by: number, speech: Speech): string {
  const mm = (value: number): string => spokenAmount(value / 1000, 'm', speech === 'mm-N' ? 1 : 2, speech);
  const { length, limits, radii, collector } = problem;
  switch (what) {
    case 'longer':
      return `Primaries ${mm(by)} longer (${mm(length.target + by)} as routed, not ${mm(length.target)})`;
    case 'shorter':
      return `Primaries ${mm(by)} shorter (${mm(length.target - by)} as routed, not ${mm(length.target)})`;
    case 'clearance':
      return `All clearances ${mm(by)} less`;
    case 'collector':
      return collector.mode === 'free'
        ? `The room of the collector ${mm(by)} larger to each side`
        : `The collector moved by up to ${mm(by)} to each side and turned about its axis`;
    case 'radius':
      return `A bend of ${mm(Math.min(...radii) - by)} radius on the rack, not ${mm(Math.min(...radii))}`;
    case 'straights':
      return `Straights at flange and collector ${mm(by)} shorter`;
    case 'bends':
      return `Up to ${limits.maxBends + by} bends a pipe, not ${limits.maxBends}`;
  }
}
