/** Ride frequencies and damping as surveyed, axle by axle and of the whole car: beside heights on the same springs. */
import { useMemo } from 'react';
import { AS_SURVEYED, type End } from '../../questions/figure.ts';
import { axleFigures, carFigures } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { AXLE_FIGURE, CAR_FIGURE } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { FigureRow } from '../stops/figure-row.tsx';

/** Those of body and wheels on their springs and dampers. */
const ABOUT = /(Frequency|damping(Low|High)|Damping(Low|High))$/;

/** After the spreads of the heights themselves. Milliseconds. */
const REST = 2000;

export function Frequencies() {
  return (
    <>
      <OfAxle end="front" />
      <OfAxle end="rear" />
      <OfCar />
    </>
  );
}

function OfAxle({ end }: { readonly end: End }) {
  const { place, go } = usePage();
  const { car, key, source } = useCar();
  const quick = useMemo(() => axleFigures(car, end, AS_SURVEYED), [car, end]);
  const sure = useAnswer(
    `${key} ${end} as surveyed`,
    () => ask('axle', source, end, AS_SURVEYED, { spread: true }),
    REST,
  );
  const wheel = { end, side: place.wheel.side };
  return (
    <Rows
      title={`${end === 'front' ? 'Front' : 'Rear'} axle, as surveyed`}
      answer={sure.state === 'answered' ? sure.answer : quick}
      onOpen={(id) => go({ figure: `${AXLE_FIGURE}${id}`, wheel, travel: 0, rack: 0 })}
    />
  );
}

function OfCar() {
  const { go } = usePage();
  const { car, key, source } = useCar();
  const quick = useMemo(() => carFigures(car), [car]);
  const sure = useAnswer(`${key} whole car`, () => ask('car', source, { spread: true }), REST);
  return (
    <Rows
      title="Whole car, as surveyed"
      answer={sure.state === 'answered' ? sure.answer : quick}
      onOpen={(id) => go({ figure: `${CAR_FIGURE}${id}` })}
    />
  );
}

interface RowsProps {
  readonly title: string;
  readonly answer: ReturnType<typeof carFigures>;
  readonly onOpen: (id: string) => void;
}

function Rows({ title, answer, onOpen }: RowsProps) {
  if (!answer.reached) return null;
  const shown = answer.figures.filter(({ id }) => ABOUT.test(id));
  if (shown.length === 0) return null;
  return (
    <section>
      <h3>{title}</h3>
      <div className="figure-rows">
        {shown.map((figure) => (
          <FigureRow key={figure.id} figure={figure} onOpen={() => onOpen(figure.id)} />
        ))}
      </div>
    </section>
  );
}
