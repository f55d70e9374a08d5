/** What it was that came nearest and was breached, in the words of the shop. */
import type { Miss } from '../gaspath/route/search.ts';

/** By how much. Angles the finder weighs at a lever of its own, which is no measure of the shop's: undefined. */
export const missBy = ({ what, by }: Pick<Miss, 'what' | 'by'>): string | undefined =>
  what === 'angle' ? undefined : `${by.toFixed(2)} mm`;

export const MISS_WORDS: Readonly<Record<Miss['what'], string>> = {
  length: 'the length',
  straight: 'a straight that must be longer',
  angle: 'a bend that turns too far',
  step: 'a step of the tube that does not come on a straight',
  shell: 'the distance to the shell',
  solid: 'the distance to a solid',
  bounds: 'the bounds',
  'collector body': 'the distance to the body of the collector',
  'pipe to pipe': 'the distance of two pipes',
  self: 'the distance of a pipe to itself',
  pose: 'the room of the collector',
  'kept bend': 'a bend that is to be kept where it is',
};
