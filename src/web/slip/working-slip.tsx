/** The working slip: how a figure came about, with every number's origin and what its spread is made of. */

import { useEffect, useRef } from 'react';
import { JOINT_WORDS, type WorkingReached } from '../../questions/index.ts';
import { unitAfter } from '../../units/show.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCase } from '../loads/use-case.ts';
import { stanceOf, wheelName } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { travelWords } from '../sheet/travel.ts';
import { positionOf } from '../sheet/use-corner.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { Shares } from './shares.tsx';
import { StepOfWorking } from './step.tsx';

/** Figures of an axle are named so in the address: `axle.rollRate`. */
export const AXLE_FIGURE = 'axle.';
/** Those of the whole car: `car.frontRollShare`. */
export const CAR_FIGURE = 'car.';
/** Those of a wheel under what the car is doing: `load.tension.rod`; and of a bolted joint: `joint.pull`. */
export const LOAD_FIGURE = 'load.';
export const JOINT_FIGURE = 'joint.';

export function WorkingSlip({ figure, onClose }: { figure: string; onClose: () => void }) {
  const { place, speech } = usePage();
  const { key, source } = useCar();
  const slip = useRef<HTMLElement>(null);
  const from = useRef<Element | null>(null);
  const { wheel } = place;
  const at = positionOf(place);
  const stance = stanceOf(place);
  const ofAxle = figure.startsWith(AXLE_FIGURE);
  const ofCar = figure.startsWith(CAR_FIGURE);
  const ofLoad = figure.startsWith(LOAD_FIGURE);
  const ofJoint = figure.startsWith(JOINT_FIGURE);
  const { doing, means } = useCase();
  const asked = useAnswer(
    `${key} ${wheelName(wheel)} ${JSON.stringify(ofAxle ? stance : at)} ${JSON.stringify(doing)} ${place.joint} ${figure}`,
    () => {
      if (ofLoad) {
        return ask('workingOfLoads', source, { wheel, doing, figure: figure.slice(LOAD_FIGURE.length) });
      }
      if (ofJoint) {
        const asked = { joint: place.joint, doing, figure: figure.slice(JOINT_FIGURE.length) };
        return ask('workingOfJoint', source, asked);
      }
      if (ofAxle) return ask('workingOfAxle', source, wheel.end, stance, figure.slice(AXLE_FIGURE.length));
      if (ofCar) return ask('workingOfCar', source, figure.slice(CAR_FIGURE.length));
      return ask('working', source, { wheel, at, figure });
    },
    60,
  );

  useEffect(() => {
    from.current = document.activeElement;
    slip.current?.focus();
    return () => (from.current as HTMLElement | null)?.focus?.();
  }, []);

  return (
    <section className="slip" role="dialog" aria-label="Working" ref={slip} tabIndex={-1}>
      <header>
        <p className="soft">
          {'Working · '}
          {ofCar && 'whole car as surveyed'}
          {ofLoad && `${wheelName(wheel)}, ${means}`}
          {ofJoint && `${JOINT_WORDS[place.joint]}, ${means}`}
          {!ofCar && !ofLoad && !ofJoint && (
            <>
              {ofAxle ? `${wheel.end} axle` : wheelName(wheel)} at {travelWords(at.travel, speech)}
            </>
          )}
        </p>
        <button type="button" className="word" onClick={onClose}>
          Close <kbd>Esc</kbd>
        </button>
      </header>
      {asked.state === 'waiting' && <p aria-busy="true">Working it out.</p>}
      {asked.state === 'failed' && <p role="status">{asked.message}</p>}
      {asked.state === 'answered' && !asked.answer.reached && <p role="status">{asked.answer.message}</p>}
      {asked.state === 'answered' && asked.answer.reached && <Told working={asked.answer} />}
    </section>
  );
}

type Working = WorkingReached;

function Told({ working }: { working: Working }) {
  const { speech } = usePage();
  const { figure, steps } = working;
  const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
  const other = spoken(figure.value, figure.unit, speech === 'mm-N' ? 'in-lbf' : 'mm-N', figure.spread?.u);
  return (
    <>
      <h2>{figure.means}</h2>
      <p className="slip-value">
        <b className="number">{shown.text}</b>
        {shown.spread !== undefined && <span className="number"> ± {shown.spread}</span>}
        {unitAfter(shown.unit)}
        {other.unit !== shown.unit && (
          <span className="soft number">
            {' '}
            = {other.text}
            {unitAfter(other.unit)}
          </span>
        )}
      </p>
      {figure.say !== undefined && <p className="soft">{figure.say}</p>}
      {figure.spread !== undefined && <Shares spread={figure.spread} unit={figure.unit} working={working} />}
      <section>
        <h3>{steps.length === 1 ? 'The step' : `${steps.length} steps`}, the last gives the figure</h3>
        {steps.length === 0 && <p className="soft">The figure is a reading as it stands in the file.</p>}
        <ol className="steps">
          {steps.map((step, k) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: steps never change places, and a symbol may come twice
            <li key={`${step.symbol} ${k}`}>
              <StepOfWorking step={step} working={working} />
            </li>
          ))}
        </ol>
      </section>
    </>
  );
}
