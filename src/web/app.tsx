/** The floor, or one car. */
import { useEffect, useState } from 'react';
import { fetchWorkshop, type Workshop, watchCars } from './client.ts';
import { Floor } from './floor/floor.tsx';
import { CarSheet } from './sheet/car-sheet.tsx';
import { usePage } from './state.tsx';

export function App() {
  const { place, said } = usePage();
  const [workshop, setWorkshop] = useState<Workshop>();
  const [failed, setFailed] = useState<string>();
  const [round, setRound] = useState(0);

  // biome-ignore lint/correctness/useExhaustiveDependencies: a new round asks again
  useEffect(() => {
    let current = true;
    fetchWorkshop().then(
      (answer) => {
        if (!current) return;
        setWorkshop(answer);
        setFailed(undefined);
      },
      (reason: Error) => current && setFailed(reason.message),
    );
    return () => {
      current = false;
    };
  }, [round]);

  useEffect(() => {
    const again = (): void => setRound((before) => before + 1);
    return watchCars(again, again);
  }, []);

  useEffect(() => {
    const car = workshop?.cars.find((each) => each.id === place.car);
    document.title = [car?.name, workshop?.name, 'Flatpatch'].filter(Boolean).join(' · ');
  }, [workshop, place.car]);

  return (
    <>
      {place.car === undefined ? (
        <Floor workshop={workshop} failed={failed} again={() => setRound((before) => before + 1)} />
      ) : (
        <CarSheet key={place.car} id={place.car} workshop={workshop} />
      )}
      <output className="unseen" aria-live="polite">
        {said}
      </output>
    </>
  );
}
