/** What both corners make together: roll centre, antis, rates and frequencies of the axle. */
import { useMemo } from 'react';
import { axleFigures } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { stanceOf } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { AXLE_FIGURE } from '../slip/working-slip.tsx';
import { usePage } from '../state.tsx';
import { FigureRow } from './figure-row.tsx';

export function AxleFigures() {
  const { place, go } = usePage();
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
    <section>
      <h3>{end === 'front' ? 'Front' : 'Rear'} axle</h3>
      {answer.reached ? (
        <div className="figure-rows">
          {answer.figures
            .filter((figure) => figure.rank < 3)
            .map((figure) => (
              <FigureRow
                key={figure.id}
                figure={figure}
                onOpen={() => go({ figure: `${AXLE_FIGURE}${figure.id}` })}
              />
            ))}
        </div>
      ) : (
        <p role="status">{answer.message}</p>
      )}
    </section>
  );
}
