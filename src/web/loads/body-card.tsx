/** Every force on one body, gear case or tub, the greatest first. */
import { useMemo } from 'react';
import { type BodyForcesAnswer, caseForces, type Doing, tubForces } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import type { Car } from '../engine/answers.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { DoingChoice } from './doing-choice.tsx';
import { PlaneOfCase } from './plane-of-case.tsx';
import { LoadsToPrint } from './print-words.tsx';
import { Remarks } from './remarks.tsx';
import { useDoing } from './use-case.ts';

const WAYS = ['forward', 'left', 'up'] as const;

export interface Body {
  readonly forces: (car: Car, doing: Doing) => BodyForcesAnswer;
  /** What closes, before "to 1e-12 of the largest". */
  readonly closing: string;
}

export const CASE: Body = {
  forces: caseForces,
  closing: 'The suspension\u2019s part of them closes with what ground and wheels put on the corners',
};
export const TUB: Body = { forces: tubForces, closing: 'Together they leave nothing: all of them close' };

export function BodyCard({ of }: { of: Body }) {
  const { speech } = usePage();
  const { car } = useCar();
  const doing = useDoing();
  const answer = useMemo(() => of.forces(car, doing), [of, car, doing]);
  const newtons = (value: number): string => spokenAmount(value, 'N', 0, speech);
  if (!answer.reached) {
    return (
      <>
        <DoingChoice />
        <p role="status">{answer.message}</p>
      </>
    );
  }
  const rows = [...answer.forces]
    .filter(({ size, moment }) => size > 0.5 || moment > 0.05)
    .sort((a, b) => b.size - a.size);
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
        {of.closing} to {answer.residual.toExponential(0)} of the largest.
      </p>
      {of === CASE && <PlaneOfCase />}
      <LoadsToPrint />
      <Remarks notes={answer.notes} cautions={answer.cautions} />
    </>
  );
}
