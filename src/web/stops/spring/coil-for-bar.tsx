/** Which coil in the damper unit does the bar's work at this wheel. */
import { useState } from 'react';
import type { CoilProposal } from '../../../questions/index.ts';
import { ask } from '../../engine/ask.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { usePage } from '../../state.tsx';
import { CoilAndBar } from './coil-and-bar.tsx';
import { Facts } from './facts.tsx';
import { TwoCurves } from './two-curves.tsx';
import { type AmountTexts, Overtaken, readAll, Told, TypedAmounts } from './typed-amount.tsx';
import { useQuestion } from './use-question.ts';

const FIRST: AmountTexts = {
  seatLength: { name: 'between the spring seats as surveyed', si: 'm', text: '' },
};

export function CoilForBar() {
  const { source } = useCar();
  const { place } = usePage();
  const [texts, setTexts] = useState(FIRST);
  const question = useQuestion<CoilProposal>();
  const seatLength = readAll(texts)?.seatLength;
  const coil = question.answer?.coils[0];
  return (
    <>
      <form
        className="question"
        onSubmit={(event) => {
          event.preventDefault();
          if (seatLength !== undefined)
            question.put(() => ask('coilForBar', source, place.wheel, { seatLength }));
        }}
      >
        <TypedAmounts
          texts={texts}
          onType={(key, text) => setTexts((before) => ({ ...before, [key]: { ...before[key]!, text } }))}
        />
        <p className="soft">What the platform of the damper gives, such as 120 mm.</p>
        <button type="submit" className="word chief" disabled={seatLength === undefined || question.waiting}>
          Find the coil
        </button>
        <Told message={question.message} />
      </form>
      <Overtaken is={question.overtaken} />
      {question.answer !== undefined && coil !== undefined && (
        <section className="proposal" aria-label="Proposal">
          <h3>The coil that comes nearest</h3>
          <CoilAndBar
            names={['bar', 'coil']}
            wheelRate={[question.answer.wheelRateBarStanding, coil.wheelRateStanding]}
          />
          <Facts
            facts={[
              ['rate', coil.rate, 'N/m'],
              ['free length', coil.freeLength, 'm'],
              ['greatest force', coil.greatestForce, 'N'],
              ['torque it cannot match, at the worst', coil.worst.difference, 'N m'],
              ['left before solid at full bump', coil.bindMargin, 'm'],
            ]}
          />
          {question.answer.notes.map((note) => (
            <p key={note} className="note">
              {note}
            </p>
          ))}
          <TwoCurves
            travel={question.answer.travel}
            names={['bar', 'coil']}
            torque={{ now: question.answer.torqueBar, proposed: coil.torque }}
            wheelRate={{ now: question.answer.wheelRateBar, proposed: coil.wheelRate }}
          />
          {question.answer.cautions.map((caution) => (
            <p key={caution} className="caution">
              <b>Caution.</b> {caution}
            </p>
          ))}
        </section>
      )}
    </>
  );
}
