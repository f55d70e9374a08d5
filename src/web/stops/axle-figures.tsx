/** What both corners make together at this stop, and what the whole car does: roll centre, antis, rates, frequencies. */
import { useMemo } from 'react';
import type { Figure } from '../../questions/figure.ts';
import { axleFigures, carFigures } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { stanceOf } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { AXLE_FIGURE, CAR_FIGURE } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { FigureRow } from './figure-row.tsx';

export function AxleFigures() {
  const { place } = usePage();
  const { car, key, source } = useCar();
  const stance = stanceOf(place);
  const { end } = place.wheel;
  const stands = JSON.stringify(stance);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for the stance
  const quick = useMemo(() => axleFigures(car, end, stance), [car, end, stands]);
  const sure = useAnswer(quick.reached ? `${key} ${end} ${stands}` : undefined, () =>
    ask('axle', source, end, stance, { spread: true }),
  );
  const answer = sure.state === 'answered' ? sure.answer : quick;
  return (
    <>
      <Together title={end === 'front' ? 'Front axle' : 'Rear axle'} prefix={AXLE_FIGURE} answer={answer} />
      <CarFigures />
    </>
  );
}

function CarFigures() {
  const { car, key, source } = useCar();
  const quick = useMemo(() => carFigures(car), [car]);
  const sure = useAnswer(quick.reached ? key : undefined, () => ask('car', source, { spread: true }), 400);
  return (
    <Together
      title="Whole car, as surveyed"
      prefix={CAR_FIGURE}
      answer={sure.state === 'answered' ? sure.answer : quick}
    />
  );
}

interface TogetherProps {
  readonly title: string;
  readonly prefix: string;
  readonly answer: ReturnType<typeof axleFigures>;
}

function Together({ title, prefix, answer }: TogetherProps) {
  const { place, go } = usePage();
  const own = (figure: Figure): boolean => figure.stop === place.stop && figure.rank < 3;
  if (answer.reached && !answer.figures.some(own)) return null;
  return (
    <section>
      <h3>{title}</h3>
      {!answer.reached && <p role="status">{answer.message}</p>}
      {answer.reached && (
        <div className="figure-rows">
          {answer.figures.filter(own).map((figure) => (
            <FigureRow
              key={figure.id}
              figure={figure}
              onOpen={() => go({ figure: `${prefix}${figure.id}` })}
            />
          ))}
        </div>
      )}
      {answer.reached &&
        answer.notes.map((note) => (
          <p key={note} className="note">
            {note}
          </p>
        ))}
    </section>
  );
}
