/** The floor: the workshop in plan, the flat patch in the middle, the cars in their bays. */
import { type CSSProperties, useState } from 'react';
import type { CarOnFloor, Workshop } from '../client.ts';
import { usePage } from '../state.tsx';
import { AddCar } from './add-car.tsx';
import { Bay } from './bay.tsx';

interface Props {
  readonly workshop: Workshop | undefined;
  readonly failed: string | undefined;
  readonly again: () => void;
}

const ON_PATCH = 'on the patch';

export function Floor({ workshop, failed, again }: Props) {
  const { go, dark, setLight } = usePage();
  const [adding, setAdding] = useState(false);
  const open = (car: CarOnFloor): void => {
    localStorage.setItem(ON_PATCH, car.id);
    go({ car: car.id });
  };

  if (workshop === undefined) {
    return (
      <main className="notice" aria-busy={failed === undefined}>
        <h1>{failed === undefined ? 'The floor' : 'The workshop does not answer'}</h1>
        <p>{failed ?? 'Fetching the cars.'}</p>
        {failed !== undefined && (
          <button type="button" className="word" onClick={again}>
            Try again
          </button>
        )}
      </main>
    );
  }
  const last = localStorage.getItem(ON_PATCH);
  const onPatch = workshop.cars.find((car) => car.id === last) ?? workshop.cars[0];
  const bays = workshop.cars.filter((car) => car !== onPatch);

  return (
    <main className="floor">
      <header className="floor-head">
        <h1>{workshop.name}</h1>
        {workshop.invented && <span className="invented">invented example</span>}
        <button type="button" className="plain-word" onClick={() => setLight(dark ? 'day' : 'night')}>
          {dark ? 'day' : 'night'}
        </button>
      </header>
      <div className="walls" style={{ '--rows': Math.ceil((bays.length + 1) / 2) } as CSSProperties}>
        {onPatch !== undefined && (
          <Bay car={onPatch} place="Flat patch" kind="patch" onOpen={() => open(onPatch)} />
        )}
        {bays.map((car, k) => (
          <Bay key={car.id} car={car} place={`Bay ${k + 1}`} kind="bay" onOpen={() => open(car)} />
        ))}
        <section className="bay empty" aria-label={`Bay ${bays.length + 1}, empty`}>
          <p className="bay-name">Bay {bays.length + 1}</p>
          {adding ? (
            <AddCar
              taken={workshop.cars.map((car) => car.id)}
              onAdded={(id) => {
                setAdding(false);
                again();
                go({ car: id });
              }}
              onLeave={() => setAdding(false)}
            />
          ) : (
            <>
              <p>{workshop.cars.length === 0 ? 'The floor is empty.' : 'Empty.'}</p>
              <button type="button" className="word" onClick={() => setAdding(true)}>
                Add a car
              </button>
            </>
          )}
        </section>
      </div>
      <footer className="floor-foot soft">
        Cars are drawn from their own points. Figures are estimates, to be confirmed by measurement and by a
        competent engineer.
      </footer>
    </main>
  );
}
