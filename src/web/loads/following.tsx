/** Where the force of this stop came from and where it goes, and the step to the next. */
import { useMemo } from 'react';
import { LOAD_PATH } from '../../questions/figure.ts';
import { type Followed, followForce } from '../../questions/index.ts';
import { arrived } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { STOPS } from '../stops/words.ts';
import { useDoing } from './use-case.ts';

/** The sentence of the stop where the reader is. */
export function useFollowed(on: boolean): Followed | undefined {
  const { place, speech } = usePage();
  const { car } = useCar();
  const doing = useDoing();
  const { stop, joint } = place;
  const { end, side } = place.wheel;
  return useMemo(
    () => (on ? followForce(car, stop, { doing, wheel: { end, side }, joint, speech }) : undefined),
    [on, car, stop, doing, end, side, joint, speech],
  );
}

export function Following() {
  const { place, go } = usePage();
  const followed = useFollowed(true);
  const next = LOAD_PATH[LOAD_PATH.indexOf(place.stop) + 1];
  // why it cannot be told stands on the card already
  if (followed?.reached !== true) return null;
  return (
    <section className="following" aria-label="Following the force">
      <p>{followed.says}</p>
      {next !== undefined && (
        <button
          type="button"
          className="word"
          aria-keyshortcuts="ArrowRight"
          onClick={() => go((from) => arrived(next, from))}
        >
          follow it to the {STOPS[next].name} <kbd>→</kbd>
        </button>
      )}
    </section>
  );
}
