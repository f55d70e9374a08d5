/** Equal primaries from a problem in its exchange form: read, looked for, checked, written. */

import { PrimariesRun, type SavedRun } from '../gaspath/primaries.ts';
import { readRouteProblem, solutionJson } from '../gaspath/route/exchange.ts';
import { type Cause, impossible } from '../gaspath/route/impossible.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import type { Miss } from '../gaspath/route/search.ts';
import { type Site, siteOf } from '../gaspath/route/site.ts';
import {
  type Begin,
  type OpenThread,
  type Threads,
  type ToThread,
  worksThrough,
} from '../gaspath/strand-beside.ts';
import { StrandHand } from '../gaspath/strand-hand.ts';
import { type StrandStands, Strands, type StrandsAsked, type Task, type Told } from '../gaspath/strands.ts';
import { StrandsRun } from '../gaspath/strands-run.ts';
import type { Problem } from '../measured/problem.ts';
import { EXHAUST_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { MISS_WORDS, missBy } from './miss-words.ts';

export type {
  Begin,
  Cause,
  Miss,
  OpenThread,
  Problem,
  RouteProblem,
  RouteSolution,
  SavedRun,
  Site,
  StrandStands,
  StrandsAsked,
  Task,
  Threads,
  Told,
  ToThread,
};
export {
  impossible,
  PrimariesRun,
  readRouteProblem,
  StrandHand,
  Strands,
  StrandsRun,
  siteOf,
  solutionJson,
  worksThrough,
};

export const EXHAUST_CAUTIONS: readonly string[] = [EXHAUST_CAUTION, STANDING_CAUTION];

export interface PipeTold {
  /** Counted from 1, as a mechanic counts. */
  readonly port: number;
  readonly inlet: number;
  readonly bends: number;
  readonly turnDeg: number;
  readonly lengthMm: number;
}

/** What a mechanic asks first of each pipe. */
export const pipesTold = (solution: RouteSolution): readonly PipeTold[] =>
  solution.pipes.map(({ port, inlet, elements }) => {
    let bends = 0;
    let turnDeg = 0;
    let lengthMm = 0;
    for (const each of elements) {
      if (each.kind === 'straight') lengthMm += each.length;
      else {
        bends++;
        turnDeg += each.angleDeg;
        lengthMm += (each.radius * each.angleDeg * Math.PI) / 180;
      }
    }
    return { port: port + 1, inlet: inlet + 1, bends, turnDeg, lengthMm };
  });

/** What came nearest where nothing was found, in words. */
export function missWords(miss: Miss | undefined): string {
  if (miss === undefined) return 'No try came to an end in the time given.';
  const whose =
    miss.pipe < 0
      ? 'the collector'
      : miss.other < 0
        ? `the pipe of port ${miss.pipe + 1}`
        : `the pipes of ports ${miss.pipe + 1} and ${miss.other + 1}`;
  const by = missBy(miss);
  return `What came nearest is breached at worst${by === undefined ? '' : ` by ${by}`}: ${MISS_WORDS[miss.what]}, ${whose}.`;
}
