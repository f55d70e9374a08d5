/** What looks odd, told: at the stop that it concerns, and all together with the way to each stop. */
import { useId } from 'react';
import { wheelName } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { countWords, type Doubt, doubtsAt, doubtsOf } from './doubts.ts';
import { STOPS } from './words.ts';

const keyOf = ({ problem }: Doubt): string => `${problem.code} ${problem.path} ${problem.message}`;

function Words({ doubt }: { doubt: Doubt }) {
  const { message, remedy } = doubt.problem;
  return (
    <p>
      <b>
        <span className="look-here" aria-hidden="true" /> Look here.
      </b>{' '}
      {message} {remedy}
    </p>
  );
}

/** Those of the stop and wheel that are open. */
export function DoubtsOfStop() {
  const { place } = usePage();
  const { car } = useCar();
  return doubtsAt(car.warnings, place.wheel, place.stop).map((doubt) => (
    <div key={keyOf(doubt)} className="doubt">
      <Words doubt={doubt} />
    </div>
  ));
}

/** All of the car. */
export function AllDoubts() {
  const id = useId();
  const { car } = useCar();
  if (car.warnings.length === 0) return null;
  return (
    <section aria-labelledby={id}>
      <h3 id={id}>{countWords(car.warnings.length)}</h3>
      <ul className="doubts">
        {doubtsOf(car.warnings).map((doubt) => (
          <li key={keyOf(doubt)} className="doubt">
            <Words doubt={doubt} />
            <ToStop doubt={doubt} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function ToStop({ doubt: { stop, end, side } }: { doubt: Doubt }) {
  const { go } = usePage();
  if (stop === undefined || end === undefined) return null;
  const wheel = { end, side: side ?? 'left' } as const;
  return (
    <button type="button" className="plain-word" onClick={() => go({ stop, wheel, card: 'readings' })}>
      To the {STOPS[stop].name}, {side === undefined ? `${end} axle` : wheelName(wheel)}
    </button>
  );
}
