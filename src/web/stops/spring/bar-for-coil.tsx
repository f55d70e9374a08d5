/** Which torsion bar does the coil's work at this wheel: what is asked. */
import { useState } from 'react';
import type { BarAsked, BarProposal } from '../../../questions/index.ts';
import { ask } from '../../engine/ask.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { usePage } from '../../state.tsx';
import { BarProposed } from './bar-proposal.tsx';
import { Choice, Material } from './choice.tsx';
import { type AmountTexts, Overtaken, readAll, Told, TypedAmounts } from './typed-amount.tsx';
import { useQuestion } from './use-question.ts';

const FIRST: AmountTexts = {
  boreRatio: { name: 'bore over diameter (0: solid)', si: '1', text: '0' },
  lengthFrom: { name: 'active length, from', si: 'm', text: '200 mm' },
  lengthTo: { name: 'active length, to', si: 'm', text: '450 mm' },
  diameterStep: { name: 'what the grinder holds', si: 'm', text: '0.05 mm' },
  overtravel: { name: 'rocker angle past full bump (empty: a tenth)', si: 'rad', text: '' },
  rocker: { name: 'spline teeth, rocker end (empty: not asked)', si: '1', text: '' },
  anchor: { name: 'spline teeth, anchor end', si: '1', text: '' },
};

const MATCHES = ['the whole travel', 'about standing'] as const;
const SURFACES = ['as turned', 'ground', 'ground and peened'] as const;

export function BarForCoil() {
  const { source } = useCar();
  const { place } = usePage();
  const [material, setMaterial] = useState('300M bar');
  const [match, setMatch] = useState<(typeof MATCHES)[number]>('the whole travel');
  const [surface, setSurface] = useState<(typeof SURFACES)[number]>('ground');
  const [preset, setPreset] = useState<'yes' | 'no'>('no');
  const [texts, setTexts] = useState(FIRST);
  const question = useQuestion<BarProposal>();
  const values = readAll(texts);
  const oneSpline = (values?.rocker === undefined) !== (values?.anchor === undefined);
  const put = (): void => {
    if (values === undefined || oneSpline) return;
    const { rocker, anchor, ...amounts } = values;
    const asked: BarAsked = {
      material,
      match,
      surface,
      preset: preset === 'yes',
      ...amounts,
      ...(rocker === undefined || anchor === undefined ? {} : { splines: { rocker, anchor } }),
    };
    question.put(() => ask('barForCoil', source, place.wheel, asked));
  };
  return (
    <>
      <form
        className="question"
        onSubmit={(event) => {
          event.preventDefault();
          put();
        }}
      >
        <Material kind="bar" chosen={material} onChoose={setMaterial} />
        <Choice name="match the coil over" of={MATCHES} chosen={match} onChoose={setMatch} wide />
        <TypedAmounts
          texts={texts}
          onType={(key, text) => setTexts((before) => ({ ...before, [key]: { ...before[key]!, text } }))}
        />
        {oneSpline && <p className="told">Give the teeth of both ends, or of neither.</p>}
        <Choice name="surface" of={SURFACES} chosen={surface} onChoose={setSurface} />
        <Choice name="preset by its maker" of={['no', 'yes']} chosen={preset} onChoose={setPreset} />
        <button
          type="submit"
          className="word chief"
          disabled={values === undefined || oneSpline || question.waiting}
        >
          Find the bar
        </button>
        {question.waiting && <p aria-busy="true">Weighing bars.</p>}
        <Told message={question.message} />
      </form>
      <Overtaken is={question.overtaken} />
      {question.answer !== undefined && <BarProposed answer={question.answer} />}
    </>
  );
}
