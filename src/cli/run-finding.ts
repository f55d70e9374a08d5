/** Runs a finding until it is done, the time is over, or whoever asked has seen enough. */
import { stat } from 'node:fs/promises';
import { type FindingPrimaries, type FindingStands, findPrimaries } from '../questions/index.ts';
import type { Put } from './primaries-asked.ts';
import { readFinding, writeFinding } from './saved-finding.ts';

export interface RunAsked {
  readonly seconds: number;
  readonly seed: number;
  /** File that it is kept in every two seconds, and goes on from. */
  readonly saved?: string;
}

export interface RunEnded {
  readonly finding: FindingPrimaries;
  readonly stands: FindingStands;
  /** Stopped by hand. */
  readonly stopped: boolean;
}

const KEEP_EVERY = 2000;
const TELL_EVERY = 1000;

/** @throws BadInput where what was kept is of another problem, or cannot be written */
export async function runFinding(put: Put, { seconds, seed, saved }: RunAsked): Promise<RunEnded> {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  // the second one ends the program as it would any other
  process.once('SIGINT', stop).once('SIGTERM', stop);
  const isThere = saved !== undefined && (await stat(saved).catch(() => undefined)) !== undefined;
  const before = saved === undefined ? undefined : await readFinding(saved, put, seed, isThere);
  const finding = findPrimaries(put, seed, before);
  const began = performance.now();
  let kept = began;
  let told = began;
  let stands: FindingStands = finding.causes.length > 0 ? 'impossible' : 'searching';
  while (!stopped && stands !== 'impossible' && stands !== 'done') {
    stands = finding.advance();
    const now = performance.now();
    if (now - told >= TELL_EVERY) {
      told = now;
      progress(finding, stands, (now - began) / 1000);
    }
    if (saved !== undefined && now - kept >= KEEP_EVERY) {
      kept = now;
      await writeFinding(saved, put, seed, finding.saved());
    }
    if (now - began >= seconds * 1000) break;
    // lets a key that was pressed be heard
    await new Promise((resolve) => setImmediate(resolve));
  }
  process.off('SIGINT', stop).off('SIGTERM', stop);
  if (process.stderr.isTTY && told > began) process.stderr.write('\n');
  if (saved !== undefined && stands !== 'impossible') await writeFinding(saved, put, seed, finding.saved());
  return { finding, stands, stopped };
}

/** One line that is written over. */
function progress(finding: FindingPrimaries, stands: FindingStands, seconds: number): void {
  if (!process.stderr.isTTY) return;
  const says =
    stands === 'improving'
      ? 'a set stands; looking for more room'
      : `fresh start ${finding.starts()}${finding.nearest() === undefined ? '' : `; nearest: ${finding.nearest()}`}`;
  process.stderr.write(`\r\u001b[K${seconds.toFixed(0)} s  ${says}`.slice(0, 110));
}
