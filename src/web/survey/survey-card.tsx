/** How well the car is known: the state of its readings. */
import { useMemo } from 'react';
import { stateOfReadings } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

export function SurveyCard() {
  const { go } = usePage();
  const { car } = useCar();
  const state = useMemo(() => stateOfReadings(car), [car]);
  return (
    <aside className="card" id="card" aria-label="State of the readings" tabIndex={-1}>
      <h2>State of the readings</h2>
      <p>
        {state.total} readings. {state.stated} say how well they are known or with what they were read;{' '}
        {state.usual} have only the spread that is usual for such a reading; {state.mirrored} on the right are
        taken from the left.
      </p>
      {car.warnings.map((problem) => (
        <p key={`${problem.code} ${problem.path}`} className="note">
          {problem.message} {problem.remedy}
        </p>
      ))}
      <button type="button" className="word" onClick={() => go({ card: 'figures' })}>
        Back to the stop
      </button>
    </aside>
  );
}
