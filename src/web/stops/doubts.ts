/**
 * What looks odd in a car, and at which stop of the line it is to be looked into.
 *
 * In    the car's warnings, each with its path in the file
 * Out   stop and wheel of each, and the sentence for the floor
 */
import type { Problem } from '../../measured/problem.ts';
import type { Stop, Wheel } from '../../questions/figure.ts';

export interface Doubt {
  readonly problem: Problem;
  /** Left out where it concerns the car as a whole: its survey, its heading. */
  readonly stop?: Stop;
  /** Sides left out: it concerns the axle. */
  readonly end?: Wheel['end'];
  readonly side?: Wheel['side'];
}

/** By the part that the path names; of the points by their own name. */
const PARTS: readonly (readonly [RegExp, Stop])[] = [
  [/^(wheel|scale|unsprung)\b/, 'tyre'],
  [/^points\.(upperOuter|lowerOuter|toeOuter|wheelCentre)\b/, 'upright'],
  [/^points\.(rocker|rodInner|damperRocker|dropLinkRocker|heaveRocker)/, 'rocker'],
  [/^points\.(damperTub|barAnchor)\b/, 'spring'],
  [/^(points\.|rod\b|toeLink|joints|steering)/, 'links'],
  [/^(coil|bar|damper|bumpRubber|antiRollBar|heave)\b/, 'spring'],
];

/** Where the path only says that it is about the points, the code says what of. */
const CODES = /^(bar|coil|spring|wheel|unit|antiroll|heave)\//;

export function doubtOf(problem: Problem): Doubt {
  const at = /^(front|rear)(?:\.(left|right))?\.?(.*)$/.exec(problem.path);
  if (at === null) return { problem };
  const end = at[1] as Wheel['end'];
  const side = at[2] as Wheel['side'] | undefined;
  const part = at[3] ?? '';
  const byPart = PARTS.find(([like]) => like.test(part))?.[1];
  const byCode: Stop = CODES.test(problem.code) ? 'spring' : 'links';
  return { problem, end, ...(side === undefined ? {} : { side }), stop: byPart ?? byCode };
}

export const doubtsOf = (warnings: readonly Problem[]): readonly Doubt[] => warnings.map(doubtOf);

/** Those that concern this wheel, its axle counted in; at one stop, or at all. */
export const doubtsAt = (warnings: readonly Problem[], wheel: Wheel, stop?: Stop): readonly Doubt[] =>
  doubtsOf(warnings).filter(
    (doubt) =>
      doubt.end === wheel.end &&
      (doubt.side === undefined || doubt.side === wheel.side) &&
      (stop === undefined || doubt.stop === stop),
  );

const LONGEST = 160;

/** One sentence for the floor: how many things look odd, and the first of them. */
export function doubtWords(warnings: readonly Problem[]): string {
  const first = warnings[0]?.message ?? '';
  const told = first.length > LONGEST ? `${first.slice(0, LONGEST).trimEnd()} …` : first;
  return `${countWords(warnings.length)}: ${told}`;
}

export const countWords = (count: number): string =>
  count === 1 ? 'One thing looks odd' : `${count} things look odd`;
