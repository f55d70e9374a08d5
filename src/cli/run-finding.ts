/** Runs a finding until it is done, the time is over, or whoever asked has seen enough. */
import { stat } from 'node:fs/promises';
import {
  type FindingStands,
  type FoundPrimaries,
  findingStands,
  foundPrimaries,
} from '../questions/index.ts';
import type { Put } from './primaries-asked.ts';
import { readFinding, writeFinding } from './saved-finding.ts';
import { searched } from './threads/search.ts';

export interface RunAsked {
  readonly seconds: number;
  readonly seed: number;
  readonly threads: number;
  /** Sets wanted. */
  readonly sets: number;
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

/** @throws BadInput where what was kept is of another problem, or cannot be written */
export async function runFinding(
  put: Put,
  { seconds, seed, threads, sets, saved }: RunAsked,
): Promise<RunEnded> {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  // the second one ends the program as it would any other
  process.once('SIGINT', stop).once('SIGTERM', stop);
  const isThere = saved !== undefined && (await stat(saved).catch(() => undefined)) !== undefined;
  const before = saved === undefined ? undefined : await readFinding(saved, put, seed, isThere);
  const began = performance.now();
  let kept = began;
  let told = began;
  let keeping: Promise<void> = Promise.resolve();
  const { strands, causes, site } = await searched({
    problem: put.problem,
    seed,
    threads,
    before,
    answers: sets,
    brief: false,
    enough: (so) => {
      const now = performance.now();
      if (now - told >= TELL_EVERY) {
        told = now;
        progress(foundPrimaries(put, so, []), findingStands(so), (now - began) / 1000);
      }
      if (saved !== undefined && now - kept >= KEEP_EVERY) {
        kept = now;
        const { saved: state } = so;
        keeping = keeping.then(() => writeFinding(saved, put, seed, state));
        // what could not be kept ends the looking and is told below
        keeping.catch(() => {
          stopped = true;
        });
      }
      return stopped || now - began >= seconds * 1000;
    },
  });
  process.off('SIGINT', stop).off('SIGTERM', stop);
  if (process.stderr.isTTY && told > began) process.stderr.write('\n');
  await keeping;
  const finding = foundPrimaries(put, strands, causes, site);
  if (causes.length > 0) return { finding, stands: 'impossible', stopped };
  if (saved !== undefined) await writeFinding(saved, put, seed, strands.saved);
  return { finding, stands: findingStands(strands), stopped };
}

/** One line that is written over. */
function progress(finding: FoundPrimaries, stands: FindingStands, seconds: number): void {
  if (!process.stderr.isTTY) return;
  const says =
    stands === 'improving'
      ? 'a set stands; looking for more room'
      : `fresh start ${finding.starts()}${finding.nearest() === undefined ? '' : `; nearest: ${finding.nearest()}`}`;
  process.stderr.write(`\r\u001b[K${seconds.toFixed(0)} s  ${says}`.slice(0, 110));
}
