/**
 * What a log says of itself that does not fit together: gaps in time, signs and units that speed and rack contradict.
 *
 * In    a log as read
 * Out   warnings, each with the line where it begins
 * Not   a filter: nothing in the log is changed
 */
import type { Problem } from '../measured/problem.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import type { Channel, Logged } from './read-log.ts';

/** A step longer than so many of the usual ones is a gap. */
const GAP = 3;
/** Gaps told one by one. */
const MOST_TOLD = 5;
/** Rows that must bear a comparison. */
const LEAST_ROWS = 40;
/** A correlation below which two signs contradict each other. */
const AGAINST = -0.5;

/** Largest that each can be at all, SI, and how it is said. */
const LIMITS: Readonly<Partial<Record<Channel, readonly [number, string]>>> = {
  speed: [120, '430 km/h'],
  longitudinal: [6 * STANDARD_GRAVITY, '6 g'],
  lateral: [6 * STANDARD_GRAVITY, '6 g'],
  vertical: [20 * STANDARD_GRAVITY, '20 g'],
  rack: [0.15, '150 mm'],
};

export const CHANNEL_WORDS: Readonly<Record<Channel, string>> = {
  time: 'time',
  speed: 'speed',
  longitudinal: 'fore and aft acceleration',
  lateral: 'sideways acceleration',
  vertical: 'upward acceleration',
  rack: 'rack travel',
  loadFrontLeft: 'front left tyre load',
  loadFrontRight: 'front right tyre load',
  loadRearLeft: 'rear left tyre load',
  loadRearRight: 'rear right tyre load',
};

export function doubtsOf(log: Logged, file: string): readonly Problem[] {
  const told: Problem[] = [];
  const tell = (code: string, message: string, line: number, remedy?: string): void => {
    told.push({
      code: `log/${code}`,
      path: '',
      message,
      weight: 'warning',
      file,
      line,
      ...(remedy === undefined ? {} : { remedy }),
    });
  };
  for (const { channel, count, line } of log.empty) {
    tell(
      'gap',
      `${capital(CHANNEL_WORDS[channel])} has no number in ${count} of ${log.lines.length} rows, first on line ${line}.`,
      line,
    );
  }
  timeGaps(log, tell);
  for (const [channel, [most, words]] of Object.entries(LIMITS) as [Channel, readonly [number, string]][]) {
    const rows = log.channels[channel];
    const first =
      rows?.findIndex((value) => Math.abs(value) > most || (channel === 'speed' && value < 0)) ?? -1;
    if (first >= 0) {
      tell(
        'range',
        `${capital(CHANNEL_WORDS[channel])} is beyond what can be (${words}), first on line ${log.lines[first]}.`,
        log.lines[first]!,
        'Look at the unit of its column in the car file.',
      );
    }
  }
  signs(log, tell);
  return told;
}

type Tell = (code: string, message: string, line: number, remedy?: string) => void;

/** Where time stands still, runs back or jumps. */
function timeGaps({ channels, lines }: Logged, tell: Tell): void {
  const { time } = channels;
  if (time === undefined) return;
  const steps = Array.from(time.subarray(1), (value, k) => value - time[k]!);
  const usual = median(steps.filter((step) => step > 0));
  const gaps = steps.flatMap((step, k) => (step > GAP * usual ? [{ step, line: lines[k + 1]! }] : []));
  for (const { step, line } of gaps.slice(0, MOST_TOLD)) {
    tell(
      'gap',
      `${step.toFixed(2)} s are missing before line ${line}; the rows are ${usual.toFixed(3)} s apart.`,
      line,
    );
  }
  if (gaps.length > MOST_TOLD) tell('gap', `There are ${gaps.length} gaps in all.`, gaps[MOST_TOLD]!.line);
  const back = steps.findIndex((step) => step <= 0);
  if (back >= 0) tell('time', `Time does not go on at line ${lines[back + 1]}.`, lines[back + 1]!);
}

/** Speed says which way the car was pushed, and the rack which way it turned. */
function signs({ channels, lines }: Logged, tell: Tell): void {
  const { time, speed, longitudinal, lateral, vertical, rack } = channels;
  if (time !== undefined && speed !== undefined && longitudinal !== undefined) {
    const pairs = Array.from(time, (_, k): readonly [number, number] => [
      (speed[k + 2]! - speed[k - 2]!) / (time[k + 2]! - time[k - 2]!),
      longitudinal[k]!,
    ]);
    const { count, correlation, slope } = compared(pairs);
    if (count >= LEAST_ROWS && correlation < AGAINST) {
      tell(
        'reversed',
        'Fore and aft acceleration is against what the speed does: it falls where the car gains speed.',
        lines[0]!,
        'Forward is positive here; write reversed: yes in its column.',
      );
    } else if (count >= LEAST_ROWS && correlation > -AGAINST && (slope > 4 || slope < 0.25)) {
      tell(
        'unit',
        `Fore and aft acceleration is ${slope.toFixed(2)} times what the speed says.`,
        lines[0]!,
        'Look at the units of both columns in the car file: g or m/s^2, km/h or m/s.',
      );
    }
  }
  if (rack !== undefined && lateral !== undefined) {
    const { count, correlation } = compared(
      Array.from(rack, (at, k): readonly [number, number] => [at, lateral[k]!]),
    );
    if (count >= LEAST_ROWS && correlation < AGAINST) {
      tell(
        'reversed',
        'The rack goes against the sideways acceleration: one of the two is reversed.',
        lines[0]!,
        'Left is positive for both here; write reversed: yes in the column that is not.',
      );
    }
  }
  if (vertical !== undefined) {
    const middle = median(Array.from(vertical).filter(Number.isFinite));
    if (Math.abs(middle - STANDARD_GRAVITY) < 0.3 * STANDARD_GRAVITY) {
      tell(
        'rest',
        'Upward acceleration lies about 1 g: gravity seems to be in it.',
        lines[0]!,
        'Write rest: 1 g in its column.',
      );
    }
  }
}

/** Correlation of the pairs that both hold a number, and how much the second goes with the first. */
function compared(pairs: readonly (readonly [number, number])[]) {
  const whole = pairs.filter(([a, b]) => Number.isFinite(a) && Number.isFinite(b));
  const mean = (of: 0 | 1): number => whole.reduce((sum, pair) => sum + pair[of], 0) / whole.length;
  const [a, b] = [mean(0), mean(1)];
  let [aa, bb, ab] = [0, 0, 0];
  for (const [x, y] of whole) {
    aa += (x - a) ** 2;
    bb += (y - b) ** 2;
    ab += (x - a) * (y - b);
  }
  return { count: whole.length, correlation: ab / (Math.sqrt(aa * bb) || 1), slope: ab / (aa || 1) };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length === 0 ? Number.NaN : sorted[Math.floor(sorted.length / 2)]!;
}

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
