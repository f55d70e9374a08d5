/** Runs a finding of several parts until all stand, the time is over, or whoever asked has seen enough. */
import { stat } from 'node:fs/promises';
import {
  type FindingParts,
  findParts,
  heldOfPart,
  type PartPut,
  type PartsHold,
} from '../questions/index.ts';
import { partsMark, readFindingParts, writeFindingParts } from './saved-finding.ts';
import { openThread } from './threads/search.ts';

export interface PartsRunAsked {
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  readonly hold: PartsHold;
  /** File that it is kept in every two seconds, and goes on from. */
  readonly saved?: string;
}

export interface PartsRunEnded {
  readonly finding: FindingParts;
  /** Stopped by hand. */
  readonly stopped: boolean;
}

const KEEP_EVERY = 2000;
const TELL_EVERY = 1000;
/** While this thread has nothing to do, ms. */
const WAIT = 10;

/** @throws BadInput where what was kept is of another problem, or cannot be written */
export async function runParts(
  parts: readonly PartPut[],
  { seconds, seed, saved, threads, hold }: PartsRunAsked,
): Promise<PartsRunEnded> {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  // the second one ends the program as it would any other
  process.once('SIGINT', stop).once('SIGTERM', stop);
  const mark = partsMark(parts.map((part) => ({ problem: part.put.problem, kinds: heldOfPart(part, hold) })));
  const isThere = saved !== undefined && (await stat(saved).catch(() => undefined)) !== undefined;
  const before = saved === undefined ? undefined : await readFindingParts(saved, mark, seed, isThere);
  const finding = findParts(parts, seed, before, {
    hold,
    threads: { count: threads, open: openThread },
  });
  const began = performance.now();
  let kept = began;
  let told = began;
  while (!stopped && performance.now() - began < seconds * 1000) {
    if (finding.advance() !== 'searching') break;
    const now = performance.now();
    if (now - told >= TELL_EVERY) {
      told = now;
      progress(finding, (now - began) / 1000);
    }
    if (saved !== undefined && now - kept >= KEEP_EVERY) {
      kept = now;
      await writeFindingParts(saved, mark, seed, finding.saved());
    }
    // lets a key that was pressed be heard
    await new Promise((resolve) => (finding.waits() ? setTimeout(resolve, WAIT) : setImmediate(resolve)));
  }
  await finding.end();
  process.off('SIGINT', stop).off('SIGTERM', stop);
  if (process.stderr.isTTY && told > began) process.stderr.write('\n');
  if (saved !== undefined && finding.stands() !== 'impossible') {
    await writeFindingParts(saved, mark, seed, finding.saved());
  }
  return { finding, stopped };
}

/** One line that is written over. */
function progress(finding: FindingParts, seconds: number): void {
  if (!process.stderr.isTTY) return;
  process.stderr.write(`\r\u001b[K${seconds.toFixed(0)} s  ${finding.now() ?? ''}`.slice(0, 110));
}
