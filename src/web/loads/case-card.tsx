/** Every force on the gear case, the greatest first. */
import { useMemo } from 'react';
import { caseForces } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { DoingChoice } from './doing-choice.tsx';
import { LoadsToPrint } from './print-words.tsx';
import { Remarks } from './remarks.tsx';
import { useDoing } from './use-case.ts';

const WAYS = ['forward', 'left', 'up'] as const;

export function CaseCard() {
  const { speech } = usePage();
  const { car } = useCar();
  const doing = useDoing();
  const answer = useMemo(() => caseForces(car, doing), [car, doing]);
  const newtons = (value: number): string => spokenAmount(value, 'N', 0, speech);
  if (!answer.reached) {
    return (
      <>
        <DoingChoice />
        <p role="status">{answer.message}</p>
      </>
    );
  }
  const rows = [...answer.forces].filter(({ size }) => size > 0.5).sort((a, b) => b.size - a.size);
  return (
    <>
      <DoingChoice />
      <div className="figure-rows">
        {rows.map(({ name, size, force, moment }) => (
          <div key={name} className="figure-row rank-2">
            <span className="row-means">{name}</span>
            <span className="row-value">
              <b className="number">{newtons(size)}</b>
            </span>
            <span className="row-say soft">
              {WAYS.map((way, k) => `${way} ${newtons(force[k]!)}`).join(', ')}
              {moment > 0.05 && `; with a couple of ${spokenAmount(moment, 'N m', 1, speech)}`}
            </span>
          </div>
        ))}
      </div>
      <p className="note">
        All of them close with what ground and wheels put on the corners to {answer.residual.toExponential(0)}{' '}
        of the largest.
      </p>
      <LoadsToPrint />
      <Remarks notes={answer.notes} cautions={answer.cautions} />
    </>
  );
}
