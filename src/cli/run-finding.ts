/** Runs a finding until it is done, the time is over, or whoever asked has seen enough. */
import { stat } from 'node:fs/promises';
import {
  type FindingStands,
  type FoundPrimaries,
  findHeld,
  findingStands,
  foundPrimaries,
  type Holds,
  holdingDoes,
  type SavedFinding,
} from '../questions/index.ts';
import type { StrandStands } from '../questions/primaries.ts';
import type { Put } from './primaries-asked.ts';
import { readFinding, writeFinding } from './saved-finding.ts';
import { openThread, searched } from './threads/search.ts';

export interface RunAsked {
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  /** Sets wanted. */
  readonly sets: number;
  /** What the sets must hold in the car. */
  readonly holds?: Holds;
  /** File that it is kept in every two seconds, and goes on from. */
  readonly saved?: string;
}

export interface RunEnded {
  readonly finding: FoundPrimaries;
  readonly stands: FindingStands;
  /** Stopped by hand. */
  readonly stopped: boolean;
}

const KEEP_EVERY = 2000;
const TELL_EVERY = 1000;
/** While this thread has nothing to do, ms. */
const WAIT = 10;

/** @throws BadInput where what was kept is of another problem, or cannot be written */
export async function runFinding(put: Put, asked: RunAsked): Promise<RunEnded> {
  const { seconds, seed, saved, holds } = asked;
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  // the second one ends the program as it would any other
  process.once('SIGINT', stop).once('SIGTERM', stop);
  const of = { problem: put.problem, kinds: holds?.kinds ?? [] };
  const isThere = saved !== undefined && (await stat(saved).catch(() => undefined)) !== undefined;
  const before = saved === undefined ? undefined : await readFinding(saved, of, seed, isThere);
  const began = performance.now();
  let kept = began;
  let told = began;
  let keeping: Promise<void> = Promise.resolve();
  const isOver: IsOver = (now) => {
    const at = performance.now();
    if (at - told >= TELL_EVERY) {
      told = at;
      progress(now.finding(), now.stands(), (at - began) / 1000);
    }
    if (saved !== undefined && at - kept >= KEEP_EVERY) {
      kept = at;
      const state = now.saved();
      keeping = keeping.then(() => writeFinding(saved, of, seed, state));
      // what could not be kept ends the looking and is told below
      keeping.catch(() => {
        stopped = true;
      });
    }
    return stopped || at - began >= seconds * 1000;
  };
  const now = await (holds === undefined
    ? plainly(put, asked, before, isOver)
    : heldly(holds, asked, before, isOver));
  process.off('SIGINT', stop).off('SIGTERM', stop);
  if (process.stderr.isTTY && told > began) process.stderr.write('\n');
  await keeping;
  const stands = now.stands();
  if (saved !== undefined && stands !== 'impossible') await writeFinding(saved, of, seed, now.saved());
  return { finding: now.finding(), stands, stopped };
}

/** How a finding stands while it goes on. */
interface Now {
  readonly finding: () => FoundPrimaries;
  readonly stands: () => FindingStands;
  readonly saved: () => SavedFinding;
}

type IsOver = (now: Now) => boolean;

async function plainly(
  put: Put,
  { seed, threads, sets }: RunAsked,
  before: SavedFinding | undefined,
  isOver: IsOver,
): Promise<Now> {
  const { strands, causes, site } = await searched({
    problem: put.problem,
    seed,
    threads,
    before: before as readonly StrandStands[] | undefined,
    answers: sets,
    brief: false,
    enough: (so) =>
      isOver({
        finding: () => foundPrimaries(put, so, []),
        stands: () => findingStands(so),
        saved: () => so.saved,
      }),
  });
  return {
    finding: () => foundPrimaries(put, strands, causes, site),
    stands: () => (causes.length > 0 ? 'impossible' : findingStands(strands)),
    saved: () => strands.saved,
  };
}

/** Searches in threads, and between them mends in this one. */
async function heldly(
  holds: Holds,
  { seed, threads, sets }: RunAsked,
  saved: SavedFinding | undefined,
  isOver: IsOver,
): Promise<Now> {
  const finding = findHeld(holds, { seed, sets, saved, threads: { count: threads, open: openThread } });
  let stands: FindingStands = 'searching';
  const now: Now = { finding: () => finding, stands: () => stands, saved: () => finding.saved() };
  try {
    while ((stands === 'searching' || stands === 'improving') && !isOver(now)) {
      stands = finding.advance();
      // lets the other threads, and a key that was pressed, be heard
      await new Promise((resolve) => (finding.waits() ? setTimeout(resolve, WAIT) : setImmediate(resolve)));
    }
  } finally {
    await finding.end();
  }
  return now;
}

/** One line that is written over. */
function progress(finding: FoundPrimaries, stands: FindingStands, seconds: number): void {
  if (!process.stderr.isTTY) return;
  const doing = finding.holding === undefined ? undefined : holdingDoes(finding.holding);
  const says =
    doing !== undefined
      ? doing
      : stands === 'improving'
        ? 'a set stands; looking for more room'
        : `fresh start ${finding.starts()}${finding.nearest() === undefined ? '' : `; nearest: ${finding.nearest()}`}`;
  process.stderr.write(`\r\u001b[K${seconds.toFixed(0)} s  ${says}`.slice(0, 110));
}
