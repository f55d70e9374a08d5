/** After nothing was found: what would let the primaries fit, one thing at a time, in the time given. */
import type { EasedPrimaries, EasingPrimaries } from '../questions/index.ts';
import type { Speech } from '../units/show.ts';

export interface WouldDo {
  readonly eased: readonly EasedPrimaries[];
  /** Not everything was tried: the time was over, or it was stopped. */
  readonly cutShort: boolean;
}

export async function wouldDo(
  easing: EasingPrimaries,
  { seconds, units }: { readonly seconds: number; readonly units: Speech },
): Promise<WouldDo> {
  let stopped = false;
  const stop = (): void => {
    stopped = true;
  };
  // the second one ends the program as it would any other
  process.once('SIGINT', stop).once('SIGTERM', stop);
  const until = performance.now() + 1000 * seconds;
  let goesOn = true;
  while (goesOn && !stopped && performance.now() < until) {
    goesOn = easing.advance();
    // lets a key that was pressed be heard
    await new Promise((resolve) => setImmediate(resolve));
  }
  process.off('SIGINT', stop).off('SIGTERM', stop);
  return { eased: easing.found(units), cutShort: goesOn };
}

export const wouldDoLines = ({ eased, cutShort }: WouldDo): readonly string[] => [
  ...(eased.length === 0 ? [] : ['What would do, one thing changed at a time:']),
  ...eased.map(({ words }) => `- ${words}`),
  ...(cutShort ? ['Not everything was tried in the time: more --seconds tries more.'] : []),
  ...(eased.some(({ by }) => by !== undefined)
    ? [
        'Each such set was checked. That less would not do is not proved. Length and diameter are the engine builder’s to change.',
      ]
    : []),
];
