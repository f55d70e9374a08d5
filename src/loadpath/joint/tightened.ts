/**
 * What the hand leaves in a stud of the car file: by torque, by stretch or by angle, as a band and not yet settled.
 *
 * In    the sort as filed, its compliances, the numbers
 * Out   low, middle and high preload as tightened
 *
 * Low is the low end of the reading with the high end of friction, high the other way round. Friction is in it only
 * where a torque is: a stretch is read at the stud itself. ST-n are the equations of docs/theory/studs.md.
 */
import { type FrictionBand, lubricant } from '../../materials/lubricant.ts';
import type { Thread } from '../../materials/thread.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Newton } from '../../units/quantity.ts';
import type { Working } from '../../working/working.ts';
import { noteSolved } from '../figures/note.ts';
import { fromReading, fromReadingOr, type Numbers } from '../numbers.ts';
import { preloadByAngle, preloadByStretch, preloadByTorque, torqueThroughCrowfoot } from '../stud/preload.ts';
import type { SortForm } from './stud-of-car.ts';

export interface Ends {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** There is no preload without a way of tightening, nor from a torque without its lubricant. */
export class NoTorque extends Error {
  constructor(sort: string) {
    super(
      `Sort "${sort}" has neither a torque with its lubricant nor a stretch or an angle in the file: without the lubricant a torque says nothing of the preload.`,
    );
    this.name = 'NoTorque';
  }
}

/** Standard uncertainties that the ends of a band lie from its middle. */
const ENDS = 2;

/** The ends of a reading: its number as used, and its filed spread either way. */
const endsOf = (reading: Reading, numbers: Numbers): Ends => {
  const middle = numbers.of(reading);
  return { low: middle - ENDS * reading.u, middle, high: middle + ENDS * reading.u };
};

const each = (of: (at: keyof Ends) => number): Ends => ({
  low: of('low'),
  middle: of('middle'),
  high: of('high'),
});

const OPPOSITE = { low: 'high', middle: 'middle', high: 'low' } as const;
const NO_RUNNING = { kind: 'constant', what: 'no running torque given' } as const;
const NO_CROWFOOT = { kind: 'constant', what: 'no crowfoot' } as const;

export interface Tightening {
  readonly thread: Thread;
  readonly stud: number;
  readonly parts: number;
}

/** How far the friction of the thread goes; nothing is known without a lubricant. */
export const threadFrictionOf = (sort: SortForm, numbers: Numbers): Ends | undefined => {
  const paste = sort.lubricant === undefined ? undefined : lubricant(sort.lubricant);
  return paste === undefined ? undefined : frictionOf(sort.threadFriction, paste.thread, numbers);
};

const frictionOf = (measured: Reading | undefined, table: FrictionBand, numbers: Numbers): Ends =>
  measured === undefined ? table : endsOf(measured, numbers);

/** Preload as tightened; the middle is written down.  @throws NoTorque */
export function tightenedBand(
  name: string,
  sort: SortForm,
  of: Tightening,
  numbers: Numbers,
  working?: Working,
): Ends {
  const noted = (at: keyof Ends): Working | undefined => (at === 'middle' ? working : undefined);
  if (sort.stretch !== undefined) {
    const stretch = endsOf(sort.stretch, numbers);
    noteSolved(working, 'the length that stretches, end to end: as the stud gives', 'ST-11', () => [
      { symbol: 'δ_f', means: 'compliance of the length that stretches', value: of.stud, unit: 'm/N' },
    ]);
    return each((at) =>
      preloadByStretch({ stretch: Math.max(0, stretch[at]), compliance: of.stud }, noted(at), {
        ΔL: fromReading(sort.stretch!),
      }),
    );
  }
  if (sort.angle !== undefined) {
    const angle = endsOf(sort.angle, numbers);
    const known = sort.snugPreload === undefined ? undefined : endsOf(sort.snugPreload, numbers);
    return each((at) =>
      preloadByAngle(
        {
          snug: known?.[at] ?? byTorque(name, sort, 'snug', at, of.thread, numbers, noted(at)),
          angle: angle[at],
          pitch: of.thread.pitch,
          stud: of.stud,
          parts: of.parts,
        },
        noted(at),
        {
          θ: fromReading(sort.angle!),
          P: { kind: 'table', name: of.thread.name },
          ...(sort.snugPreload === undefined ? {} : { F_0: fromReading(sort.snugPreload) }),
        },
      ),
    );
  }
  return each((at) => byTorque(name, sort, 'torque', at, of.thread, numbers, noted(at)));
}

function byTorque(
  name: string,
  sort: SortForm,
  key: 'torque' | 'snug',
  at: keyof Ends,
  thread: Thread,
  numbers: Numbers,
  working?: Working,
): Newton {
  const filed = sort[key];
  const paste = sort.lubricant === undefined ? undefined : lubricant(sort.lubricant);
  if (filed === undefined || paste === undefined) throw new NoTorque(name);
  const set = endsOf(filed, numbers)[at];
  const torque =
    sort.wrench === undefined
      ? set
      : torqueThroughCrowfoot(
          { set, wrench: numbers.of(sort.wrench), crowfoot: numbers.or(sort.crowfoot, 0) },
          working,
          {
            M_w: fromReading(filed),
            L: fromReading(sort.wrench),
            e: sort.crowfoot === undefined ? NO_CROWFOOT : fromReading(sort.crowfoot),
          },
        );
  const rubs = OPPOSITE[at];
  return Math.max(
    0,
    preloadByTorque(
      {
        thread,
        face: { outer: numbers.of(sort.nutFace), hole: numbers.of(sort.hole) },
        friction: {
          thread: frictionOf(sort.threadFriction, paste.thread, numbers)[rubs],
          face: frictionOf(sort.faceFriction, paste.face, numbers)[rubs],
        },
        torque,
        running: numbers.or(sort.running, 0),
        snug: key === 'snug',
      },
      working,
      {
        d_w: fromReading(sort.nutFace),
        d_h: fromReading(sort.hole),
        μ_t: fromReadingOr(sort.threadFriction, paste.name),
        μ_f: fromReadingOr(sort.faceFriction, paste.name),
        ...(sort.wrench === undefined ? { M: fromReading(filed) } : {}),
        M_r: sort.running === undefined ? NO_RUNNING : fromReading(sort.running),
      },
    ),
  );
}
