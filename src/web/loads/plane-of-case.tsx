/** What the gear case hands forward through a plane that the reader chooses. */
import { useMemo, useState } from 'react';
import { caseAtPlane } from '../../questions/index.ts';
import { spokenAmount, spokenUnit } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { TypedAmount } from '../typed-amount.tsx';
import { useDoing } from './use-case.ts';

const FORCES = ['forward', 'to the left', 'up'] as const;
const MOMENTS = ['torsion, about forward', 'about the left', 'about up'] as const;

export function PlaneOfCase() {
  const { speech } = usePage();
  const { car } = useCar();
  const doing = useDoing();
  // to begin with the line of the rear wheels, at the height of their centres
  const { wheelCentre } = car.form.rear.left.points;
  const [x, setX] = useState(wheelCentre.value[0]);
  const [height, setHeight] = useState(wheelCentre.value[2]);
  const answer = useMemo(() => caseAtPlane(car, doing, { x, height }), [car, doing, x, height]);
  const typed = { si: 'm', unit: spokenUnit('m', speech), digits: speech === 'mm-N' ? 0 : 2 } as const;
  return (
    <section>
      <h3>Through a plane across the case</h3>
      <div className="typed-row">
        <span>plane at x, behind the front axle negative</span>
        <TypedAmount name="plane at x" value={x} {...typed} onTake={setX} />
      </div>
      <div className="typed-row">
        <span>moments about the centre line at the height of</span>
        <TypedAmount name="height of the moments" value={height} {...typed} onTake={setHeight} />
      </div>
      {answer.reached ? (
        <div className="figure-rows">
          {FORCES.map((way, k) => (
            <div key={way} className="figure-row rank-2">
              <span className="row-means">{way}</span>
              <b className="row-value number">{spokenAmount(answer.force[k]!, 'N', 0, speech)}</b>
            </div>
          ))}
          {MOMENTS.map((way, k) => (
            <div key={way} className="figure-row rank-2">
              <span className="row-means">{way}</span>
              <b className="row-value number">{spokenAmount(answer.moment[k]!, 'N m', 0, speech)}</b>
            </div>
          ))}
        </div>
      ) : (
        <p role="status">{answer.message}</p>
      )}
      {answer.reached && (
        <p className="note">
          {answer.count === 0
            ? 'Nothing acts behind this plane.'
            : `Of ${answer.count} forces behind it; what the joint to the engine holds is what goes through the plane at its face.`}
        </p>
      )}
    </section>
  );
}
