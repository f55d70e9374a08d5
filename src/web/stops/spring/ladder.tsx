/** A set of bars that steps the wheel rate evenly between two rates. */
import { useState } from 'react';
import type { LadderAnswer } from '../../../questions/index.ts';
import { printedUnit, spokenUnit } from '../../../units/show.ts';
import { ask } from '../../engine/ask.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';
import { Choice, Material } from './choice.tsx';
import { type AmountTexts, Overtaken, readAll, Told, TypedAmounts } from './typed-amount.tsx';
import { useQuestion } from './use-question.ts';

const FIRST: AmountTexts = {
  from: { name: 'softest wheel rate', si: 'N/m', text: '' },
  to: { name: 'stiffest wheel rate', si: 'N/m', text: '' },
  count: { name: 'how many bars', si: '1', text: '5' },
  step: { name: 'what the grinder holds', si: 'm', text: '0.05 mm' },
};
const WITHOUT_BAR: AmountTexts = {
  activeLength: { name: 'active length of the bars', si: 'm', text: '300 mm' },
};

const EVEN = ['difference', 'ratio'] as const;

export function Ladder() {
  const { source, car } = useCar();
  const { place } = usePage();
  const hasBar = car.form[place.wheel.end][place.wheel.side].bar !== undefined;
  const [texts, setTexts] = useState<AmountTexts>(hasBar ? FIRST : { ...FIRST, ...WITHOUT_BAR });
  const [even, setEven] = useState<(typeof EVEN)[number]>('difference');
  const [material, setMaterial] = useState('300M bar');
  const question = useQuestion<LadderAnswer>();
  const values = readAll(texts);
  const ready = values?.from !== undefined && values.to !== undefined && values.count !== undefined;
  return (
    <>
      <form
        className="question"
        onSubmit={(event) => {
          event.preventDefault();
          if (!ready) return;
          const { from, to, count, step, activeLength } = values as Record<string, number | undefined>;
          question.put(() =>
            ask('ladder', source, place.wheel, {
              from: from!,
              to: to!,
              count: count!,
              even,
              ...(step === undefined ? {} : { step }),
              ...(hasBar ? {} : { material }),
              ...(activeLength === undefined ? {} : { activeLength }),
            }),
          );
        }}
      >
        {!hasBar && <Material kind="bar" chosen={material} onChoose={setMaterial} />}
        <TypedAmounts
          texts={texts}
          onType={(key, text) => setTexts((before) => ({ ...before, [key]: { ...before[key]!, text } }))}
        />
        <Choice name="even steps by" of={EVEN} chosen={even} onChoose={setEven} />
        <button type="submit" className="word chief" disabled={!ready || question.waiting}>
          Make the ladder
        </button>
        <Told message={question.message} />
      </form>
      <Overtaken is={question.overtaken} />
      {question.answer !== undefined && <Rungs answer={question.answer} />}
    </>
  );
}

function Rungs({ answer }: { answer: LadderAnswer }) {
  const { speech } = usePage();
  const head = (name: string, si: string) => (
    <th scope="col">
      {name}, {printedUnit(spokenUnit(si, speech))}
    </th>
  );
  return (
    <section className="proposal" aria-label="Ladder of bars">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it */}
      <section className="wide-table" tabIndex={0} aria-label="Bars of the ladder">
        <table className="rungs">
          <thead>
            <tr>
              {head('diameter', 'm')}
              {head('wheel rate', 'N/m')}
              {head('off by', 'N/m')}
              {head('twist', 'rad')}
              {head('stress', 'Pa')}
              {head('mass', 'kg')}
            </tr>
          </thead>
          <tbody>
            {answer.rungs.map((rung) => (
              <tr key={rung.diameter}>
                <th scope="row" className="number">
                  {spoken(rung.diameter, 'm', speech).text}
                </th>
                <td className="number">{spoken(rung.wheelRate, 'N/m', speech).text}</td>
                <td className="number">{spoken(rung.error, 'N/m', speech).text}</td>
                <td className="number">{spoken(rung.twist, 'rad', speech).text}</td>
                <td className="number">{spoken(rung.stress, 'Pa', speech).text}</td>
                <td className="number">{spoken(rung.mass, 'kg', speech).text}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p>The steps are uneven by {Math.round(answer.unevenness * 1000) / 10} % of a step at the most.</p>
      {[...answer.notes, ...answer.cautions].map((line) => (
        <p key={line} className="note">
          {line}
        </p>
      ))}
    </section>
  );
}
