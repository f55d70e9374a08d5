/** Forces of members in words: the sign is said, and stands as a letter where there is no room for the word. */
import type { Figure, Wheel } from '../questions/figure.ts';
import { type Speech, spokenAmount } from '../units/show.ts';
import { ownWords, wheelWords } from './words.ts';

export const WHEELS_ON_SHEET: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

export const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

export const wheelTitle = (wheel: Wheel): string => capital(wheelWords(wheel));

/** A value with its spread where it has one. */
export const figureWords = ({ value, unit, spread }: Figure, speech: Speech): string =>
  ownWords({ value, unit, ...(spread === undefined ? {} : { u: spread.u }) }, speech);

/** Below this a member carries nothing that has a sign, N. */
const NOTHING = 0.5;

/** T for tension, C for compression. */
const letterOf = (tension: number): string => (Math.abs(tension) < NOTHING ? '' : tension > 0 ? 'T' : 'C');

/** `4852 ± 375 N push, C`. */
export function memberWords(figure: Figure, speech: Speech): string {
  const letter = letterOf(figure.value);
  const size = figureWords({ ...figure, value: Math.abs(figure.value) }, speech);
  return letter === '' ? size : `${size} ${letter === 'T' ? 'pull' : 'push'}, ${letter}`;
}

/** `4852 N push, C`, in whole units: without a spread no more digits are worth saying. */
export function memberWhole(figure: Figure, speech: Speech): string {
  const letter = letterOf(figure.value);
  const size = spokenAmount(Math.abs(figure.value), 'N', 0, speech);
  return letter === '' ? size : `${size} ${letter === 'T' ? 'pull' : 'push'}, ${letter}`;
}

/** `4852 C`: whole units, the unit stands elsewhere. */
export const memberShort = (figure: Figure, whole: (value: number) => string): string =>
  `${whole(Math.abs(figure.value))} ${letterOf(figure.value)}`.trimEnd();

export const SIGN_WORDS =
  'Members: pull or T is tension, push or C is compression. Forces along the car: forward, to the left and up are positive.';
