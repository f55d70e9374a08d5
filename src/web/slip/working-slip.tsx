/** The working slip: how a figure came about, with every number's origin and what its spread is made of. */

import { useEffect, useRef } from 'react';
import type { Spread } from '../../measured/spread.ts';
import type { Figure } from '../../questions/figure.ts';
import {
  askedSo,
  type DayQuestion,
  type GaugeQuestion,
  JOINT_WORDS,
  type WorkingAnswer,
  type WorkingReached,
} from '../../questions/index.ts';
import { unitAfter } from '../../units/show.ts';
import { DAY_FIGURE } from '../day/figures.tsx';
import { useDayRead } from '../day/use-day.ts';
import { DAY_WORDS } from '../day/words.ts';
import type { CarSource } from '../engine/answers.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { GAUGE_FIGURE } from '../gauges/gauge-card.tsx';
import { useGaugeRead } from '../gauges/use-gauge.ts';
import { GAUGE_WORDS } from '../gauges/words.ts';
import { useCase } from '../loads/use-case.ts';
import { dayOf, gaugeOf, stanceOf, wheelName } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { travelWords } from '../sheet/travel.ts';
import { positionOf } from '../sheet/use-corner.ts';
import { type SpokenFigure, spokenOwn } from '../spoken.ts';
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
  const day = dayOf(place);
  const ofDay = day !== undefined && figure.startsWith(DAY_FIGURE);
  const { question } = useDayRead(day ?? 'transfer');
  const gauge = gaugeOf(place);
  const ofGauge = gauge !== undefined && figure.startsWith(GAUGE_FIGURE);
  const gauged = useGaugeRead(gauge ?? 'weighing').question;
  const { doing, means } = useCase();
  const asked = useAnswer<Answer>(
    `${key} ${wheelName(wheel)} ${JSON.stringify(ofAxle ? stance : at)} ${JSON.stringify(doing)} ${place.joint} ${figure} ${ofDay ? JSON.stringify(question) : ofGauge ? JSON.stringify(gauged) : ''}`,
    async () => {
      if (ofDay) return workingOfDay(source, question, figure.slice(DAY_FIGURE.length));
      if (ofGauge) return workingOfGauge(source, gauged, figure.slice(GAUGE_FIGURE.length));
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
          {ofDay && `${DAY_WORDS[day].title}, ${ownerOf(figure)}`}
          {ofGauge && GAUGE_WORDS[gauge].title}
          {!ofCar && !ofLoad && !ofJoint && !ofDay && !ofGauge && (
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

/** `day.100 km/h.front of floor` belongs to `100 km/h`. */
const ownerOf = (figure: string): string => figure.slice(DAY_FIGURE.length, figure.lastIndexOf('.'));

/** What the slip shows: a figure of a day out has units of its own and belongs to no stop of the load path. */
interface Working extends Pick<WorkingReached, 'reached' | 'steps' | 'readings'> {
  readonly figure: Pick<Figure, 'means' | 'say'> &
    SpokenFigure & {
      /** What its ± is made of is told where that is known reading by reading. */
      readonly spread?: Spread | { readonly u: number };
    };
}

type Answer = Working | Exclude<WorkingAnswer, WorkingReached>;

async function workingOfDay(
  source: CarSource,
  question: DayQuestion | undefined,
  figure: string,
): Promise<Answer> {
  const no = (message: string): Answer => ({ reached: false, message });
  if (question === undefined) return no('What is asked for at this stop is not typed in full.');
  const answer = await ask('day', source, askedSo(question, { working: figure }));
  if (!answer.reached) return answer;
  if (answer.working === undefined) return no(`There is no figure "${figure}" here.`);
  return { reached: true, ...answer.working };
}

async function workingOfGauge(
  source: CarSource,
  question: GaugeQuestion | undefined,
  id: string,
): Promise<Answer> {
  const no = (message: string): Answer => ({ reached: false, message });
  if (question === undefined) return no('What is asked for on this card is not typed in full.');
  const answer = await ask('gauge', source, question, id);
  if (!answer.reached) return answer;
  const figure = answer.figures.find((each) => each.id === id);
  const working = 'working' in answer ? answer.working : undefined;
  if (figure === undefined || working === undefined) return no(`There is no working of "${id}" here.`);
  const { words, value, unit, u } = figure;
  return { reached: true, ...working, figure: { means: words, value, unit, spread: { u } } };
}

function Told({ working }: { readonly working: Working }) {
  const { speech } = usePage();
  const { figure, steps } = working;
  const shown = spokenOwn(figure, speech);
  const other = spokenOwn(figure, speech === 'mm-N' ? 'in-lbf' : 'mm-N');
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
      {figure.spread !== undefined && 'shares' in figure.spread && (
        <Shares spread={figure.spread} figure={figure} working={working} />
      )}
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
