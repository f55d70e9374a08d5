/** One car: fetched, read, and laid out as a sheet; or what keeps it from that. */
import type { Workshop } from '../client.ts';
import { usePage } from '../state.tsx';
import { OpenCarIs } from './car-file.tsx';
import { Problems } from './problems.tsx';
import { Sheet } from './sheet.tsx';
import { useCarFile } from './use-car-file.ts';

export function CarSheet({ id, workshop }: { id: string; workshop: Workshop | undefined }) {
  const { place, go } = usePage();
  const { fetched, show, again } = useCarFile(id, place.spec);
  const toFloor = (
    <button type="button" className="word" onClick={() => go({ car: undefined, figure: undefined })}>
      Back to the floor
    </button>
  );

  if (fetched.state === 'fetching' || fetched.state === 'opening') {
    return (
      <main className="notice" aria-busy="true">
        <p>
          {fetched.state === 'fetching'
            ? 'Fetching the car.'
            : 'Reading the car: its points, and its survey where it has one.'}
        </p>
      </main>
    );
  }
  if (fetched.state === 'failed') {
    return (
      <main className="notice">
        <h1>This car cannot be fetched</h1>
        <p>{fetched.message}</p>
        <p className="row">
          <button type="button" className="word" onClick={again}>
            Try again
          </button>
          {toFloor}
        </p>
      </main>
    );
  }
  const { shown, away } = fetched;
  const { read, file } = shown;
  if (!read.ok) {
    return (
      <main className="notice">
        <h1>{id}: the car file needs a hand</h1>
        <p>
          {read.problems.length === 1
            ? 'One thing stands in the way. Mend it'
            : `${read.problems.length} things stand in the way. Mend them`}{' '}
          in car.yaml; this page follows as soon as the file is kept.
        </p>
        <Problems problems={read.problems} text={file.text} />
        <p className="row">
          {toFloor}
          {place.spec !== undefined && (
            <button type="button" className="word" onClick={() => go({ spec: undefined })}>
              Show the file as it stands
            </button>
          )}
        </p>
      </main>
    );
  }
  return (
    <OpenCarIs shown={shown} car={read.car} surveyed={read.surveyed} away={away} show={show} again={again}>
      <Sheet workshop={workshop} />
    </OpenCarIs>
  );
}
