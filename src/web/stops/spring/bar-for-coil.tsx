/** Which torsion bar does the coil's work at this wheel. */
import { useState } from 'react';
import type { BarProposal } from '../../../questions/index.ts';
import { ask } from '../../engine/ask.ts';
import { wheelName } from '../../place.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';
import { Facts } from './facts.tsx';
import { KeepSpec } from './keep-spec.tsx';
import { TwoCurves } from './two-curves.tsx';
import { type AmountTexts, readAll, Told, TypedAmounts } from './typed-amount.tsx';
import { useQuestion } from './use-question.ts';

const FIRST: AmountTexts = {
  boreRatio: { name: 'bore as a part of the diameter (0: solid)', si: '1', text: '0' },
  lengthFrom: { name: 'active length, from', si: 'm', text: '200 mm' },
  lengthTo: { name: 'active length, to', si: 'm', text: '450 mm' },
  diameterStep: { name: 'what the grinder holds', si: 'm', text: '0.05 mm' },
  overtravel: { name: 'rocker angle past full bump (empty: a tenth of the travel)', si: 'rad', text: '' },
};

export function BarForCoil() {
  const { source } = useCar();
  const { place } = usePage();
  const [material, setMaterial] = useState('300M bar');
  const [texts, setTexts] = useState(FIRST);
  const question = useQuestion<BarProposal>();
  const values = readAll(texts);
  return (
    <>
      <form
        className="question"
        onSubmit={(event) => {
          event.preventDefault();
          if (values !== undefined)
            question.put(() => ask('barForCoil', source, place.wheel, { material, ...values }));
        }}
      >
        <label htmlFor="bar-material">material, by its name in the table</label>
        <input id="bar-material" value={material} onChange={(event) => setMaterial(event.target.value)} />
        <TypedAmounts
          texts={texts}
          onType={(key, text) => setTexts((before) => ({ ...before, [key]: { ...before[key]!, text } }))}
        />
        <button type="submit" className="word chief" disabled={values === undefined || question.waiting}>
          Find the bar
        </button>
        {question.waiting && <p aria-busy="true">Weighing bars.</p>}
        <Told message={question.message} />
      </form>
      {question.answer !== undefined && <Proposal answer={question.answer} />}
    </>
  );
}

function Proposal({ answer }: { answer: BarProposal }) {
  const { speech } = usePage();
  const [chosen] = answer.bars;
  if (chosen === undefined) return null;
  const size = spoken(chosen.diameter, 'm', speech);
  const life = chosen.life;
  return (
    <section className="proposal" aria-label="Proposal">
      <h3>
        Bar of {size.text} {size.unit}
        {chosen.bore > 0 && `, bore ${spoken(chosen.bore, 'm', speech).text} ${size.unit}`}
      </h3>
      <Facts
        facts={[
          ['rate of the bar', chosen.rate, 'N m/rad'],
          ['parallel length', chosen.parallelLength, 'm'],
          ['active length', chosen.activeLength, 'm'],
          ['head diameter', chosen.headDiameter, 'm'],
          ['radius at the heads', chosen.filletRadius, 'm'],
          ['twist as surveyed', chosen.twistAsSurveyed, 'rad'],
          ['shear stress at full bump', chosen.fullBump.stress, 'Pa'],
          ['shear stress past full bump', chosen.overtravel.stress, 'Pa'],
          ['yield in shear, low end of the table', chosen.shearYield, 'Pa'],
          ['torque it cannot match, at the worst', chosen.worst.difference, 'N m'],
          ['torque that no bar can match, mean', answer.cannotMatch, 'N m'],
          ['smallest spline step', chosen.splineStep, 'rad'],
          ['mass of the bar, heads not counted', chosen.mass, 'kg'],
          ['mass of the coil', answer.coilMass, 'kg'],
          ['hand', chosen.hand],
          [
            'life at an assumed demonstration day, days',
            life === undefined ? undefined : `${round(life.low)} to ${round(life.high)}`,
          ],
        ]}
      />
      {answer.notes.map((note) => (
        <p key={note} className="note">
          {note}
        </p>
      ))}
      <TwoCurves
        travel={answer.travel}
        names={['coil', 'bar']}
        torque={{ now: answer.torqueCoil, proposed: chosen.torque }}
        wheelRate={{ now: answer.wheelRateCoil, proposed: chosen.wheelRate }}
      />
      {answer.cautions.map((caution) => (
        <p key={caution} className="caution">
          <b>Caution.</b> {caution}
        </p>
      ))}
      <KeepSpec
        suggested={`bar ${size.text} ${size.unit}, ${wheelName(answer.wheel)}`.replaceAll('\u2009', ' ')}
        note={`torsion bar in place of the coil, ${wheelName(answer.wheel)}`}
        changes={answer.change}
      />
    </section>
  );
}

/** Two digits: a life has no more. */
const round = (value: number): string =>
  value > 1e6 ? 'more than a million' : String(Number(value.toPrecision(2)));
