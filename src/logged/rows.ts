/** Rows of a log worth looking at: the hardest of each kind, and the one nearest to a time. */
import type { Second } from '../units/quantity.ts';
import type { Channel, Logged } from './read-log.ts';

export interface Extreme {
  readonly name: string;
  /** Row, counted from nought. */
  readonly row: number;
}

const KINDS: readonly (readonly [name: string, channel: Channel, sign: 1 | -1])[] = [
  ['hardest-braking', 'longitudinal', -1],
  ['hardest-driving', 'longitudinal', 1],
  ['hardest-left', 'lateral', 1],
  ['hardest-right', 'lateral', -1],
  ['fastest', 'speed', 1],
  ['deepest-dip', 'vertical', 1],
];

export const EXTREMES: readonly string[] = KINDS.map(([name]) => name);

/** Whether every channel of the log has a number in this row. */
export const isWhole = ({ channels }: Logged, row: number): boolean =>
  Object.values(channels).every((values) => Number.isFinite(values[row]));

/** The hardest rows among those that are whole. */
export function extremesOf(log: Logged): readonly Extreme[] {
  return KINDS.flatMap(([name, channel, sign]) => {
    const values = log.channels[channel];
    if (values === undefined) return [];
    let best = -1;
    values.forEach((value, row) => {
      if (isWhole(log, row) && (best < 0 || sign * value > sign * values[best]!)) best = row;
    });
    return best < 0 ? [] : [{ name, row: best }];
  });
}

/** The row nearest to a time; undefined in a log without time, or more than one step beyond its ends. */
export function rowAt({ channels }: Logged, time: Second): number | undefined {
  const times = channels.time;
  if (times === undefined) return undefined;
  let best = -1;
  times.forEach((each, row) => {
    if (Number.isFinite(each) && (best < 0 || Math.abs(each - time) < Math.abs(times[best]! - time)))
      best = row;
  });
  if (best < 0) return undefined;
  const step = Math.abs(times[Math.min(best + 1, times.length - 1)]! - times[Math.max(best - 1, 0)]!);
  return Math.abs(times[best]! - time) <= Math.max(step, 0.1) ? best : undefined;
}
