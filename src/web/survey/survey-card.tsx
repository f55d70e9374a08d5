/** How well the car is known: the state of its readings, and what its survey says. */

import { useMemo } from 'react';
import { pointsInWords } from '../../car/point-words.ts';
import { type SurveyAnswer, stateOfReadings } from '../../questions/index.ts';
import { unitAfter } from '../../units/show.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { AllDoubts } from '../stops/doubt-notes.tsx';

export function SurveyCard() {
  const { go } = usePage();
  const { car, surveyed, key, source } = useCar();
  const state = useMemo(() => stateOfReadings(car), [car]);
  const asked = useAnswer(surveyed ? key : undefined, () => ask('survey', source), 0);
  return (
    <aside className="card" id="card" aria-label="State of the readings" tabIndex={-1}>
      <h2>State of the readings</h2>
      <p>
        {state.total} readings. {state.stated} say how well they are known or with what they were read;{' '}
        {state.usual} have only the spread that is usual for such a reading; {state.mirrored} on the right are
        taken from the left.
      </p>
      <button type="button" className="word" onClick={() => go({ card: 'figures' })}>
        Back to the stop
      </button>
      <AllDoubts />
      {!surveyed && (
        <p className="soft">
          The file has no survey. With points by arm, tape lengths and a datum under "survey", residuals,
          outliers and left against right stand here.
        </p>
      )}
      {surveyed && asked.state === 'waiting' && <p aria-busy="true">Adjusting the survey.</p>}
      {asked.state === 'failed' && <p role="status">{asked.message}</p>}
      {asked.state === 'answered' && asked.answer !== undefined && <Told answer={asked.answer} />}
    </aside>
  );
}

function Told({ answer }: { answer: SurveyAnswer }) {
  const { speech } = usePage();
  const length = (value: number): string => {
    const shown = spoken(value, 'm', speech);
    return `${shown.text}${unitAfter(shown.unit)}`;
  };
  const { comparison } = answer;
  return (
    <>
      <h3>The survey</h3>
      <p>{answer.whole.sentence}</p>
      {answer.outliers.length > 0 && (
        <ul className="outliers">
          {answer.outliers.map((outlier) => (
            <li key={outlier.id} className="caution">
              {outlier.sentence}
            </li>
          ))}
        </ul>
      )}
      {answer.undetermined.length > 0 && (
        <p className="note">
          Points that the readings do not fix:{' '}
          {answer.undetermined.map((each) => pointsInWords(each.point)).join(', ')}.
        </p>
      )}
      {answer.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      {comparison !== undefined && (
        <section>
          <h3>Left against right: is the car bent?</h3>
          <p>{comparison.sentence}</p>
          <ul className="sentences">
            {[...comparison.pairs, ...comparison.lengths]
              .sort((a, b) => a.corrected - b.corrected)
              .map((pair) => (
                <li key={pair.name} className={pair.differs ? 'differs' : undefined}>
                  {pair.sentence}
                </li>
              ))}
          </ul>
        </section>
      )}
      <h3>Residuals, the largest first</h3>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it */}
      <section className="wide-table" tabIndex={0} aria-label="Residuals">
        <table className="rungs">
          <thead>
            <tr>
              <th scope="col">reading</th>
              <th scope="col">left over</th>
              <th scope="col">checked</th>
            </tr>
          </thead>
          <tbody>
            {residualsOf(answer).map(({ id, means, size, checked }) => (
              <tr key={id}>
                <th scope="row">{means}</th>
                <td className="number">{length(size)}</td>
                <td>{checked}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      {answer.said.map((line) => (
        <p key={line} className="soft">
          {line}
        </p>
      ))}
    </>
  );
}

const MOST = 25;

function residualsOf({ readings }: SurveyAnswer) {
  return readings
    .map(({ id, means, components, checked }) => ({
      id,
      means,
      checked,
      size: Math.hypot(...components.map((component) => component.residual)),
    }))
    .filter(({ checked }) => checked !== 'not at all')
    .sort((a, b) => b.size - a.size)
    .slice(0, MOST);
}
