/** What may be asked at the spring: a bar for the coil, a coil for the bar, a ladder of bars, a bar on the bench. */
import { useState } from 'react';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { BarForCoil } from './spring/bar-for-coil.tsx';
import { Bench } from './spring/bench.tsx';
import { CoilForBar } from './spring/coil-for-bar.tsx';
import { Ladder } from './spring/ladder.tsx';

const QUESTIONS = {
  'Bar for the coil': BarForCoil,
  'Coil for the bar': CoilForBar,
  'Ladder of bars': Ladder,
  'Bar on the bench': Bench,
} as const;
type Question = keyof typeof QUESTIONS;

export function SpringQuestions() {
  const { place } = usePage();
  const { car } = useCar();
  const { coil, bar } = car.form[place.wheel.end][place.wheel.side];
  const sensible = (Object.keys(QUESTIONS) as Question[]).filter(
    (name) =>
      (name !== 'Bar for the coil' || coil !== undefined) &&
      (name !== 'Coil for the bar' || bar !== undefined),
  );
  const [wanted, want] = useState<Question>();
  const question = wanted !== undefined && sensible.includes(wanted) ? wanted : sensible[0]!;
  const Asked = QUESTIONS[question];
  return (
    <div className="spring-questions">
      <label htmlFor="spring-question" className="unseen">
        Question
      </label>
      <select
        id="spring-question"
        value={question}
        onChange={(event) => want(event.target.value as Question)}
      >
        {sensible.map((name) => (
          <option key={name} value={name}>
            {name}
          </option>
        ))}
      </select>
      <Asked key={`${question} ${place.wheel.end} ${place.wheel.side} ${car.spec}`} />
    </div>
  );
}
