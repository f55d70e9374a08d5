/** The line along the foot of the sheet: four ways as tabs, and the stops of the chosen way in their order. */
import { useEffect, useRef } from 'react';
import { LOAD_PATH, type Stop, type Wheel } from '../../questions/figure.ts';
import { DAY_STOPS, DAY_WORDS } from '../day/words.ts';
import type { Car } from '../engine/answers.ts';
import { GAS_LINE } from '../gas/words.ts';
import { PAD_STOPS } from '../patch/words.ts';
import { arrived, GAS_STOPS, isBehindCorners, WAYS } from '../place.ts';
import { usePage } from '../state.tsx';
import { doubtsAt } from '../stops/doubts.ts';
import { STOPS, WAY_WORDS } from '../stops/words.ts';
import { useCar } from './car-file.tsx';
import type { CornerAnswer } from './use-corner.ts';
import { useWalkAloud } from './walk.ts';

export function StopLine({ corner }: { corner: CornerAnswer }) {
  const { place, go } = usePage();
  const { car } = useCar();
  const toCome = WAY_WORDS[place.way].toCome;

  useWalkAloud(corner);

  return (
    <nav className="line" aria-label="Ways and stops">
      <div className="ways" role="tablist" aria-label="Ways through the car">
        {WAYS.map((way) => (
          <button
            key={way}
            type="button"
            role="tab"
            aria-selected={place.way === way}
            className="way"
            data-way={way}
            onClick={() => go({ way, card: 'figures' })}
          >
            {WAY_WORDS[way].name}
          </button>
        ))}
      </div>
      {place.way === 'gas' && <GasStops />}
      {place.way === 'floor' && <FloorStops />}
      {place.way === 'load' && (
        <ol className="stops">
          {LOAD_PATH.map((stop) => {
            const mark = markOf(stop, corner, car, place.wheel);
            return (
              <li key={stop}>
                <button
                  type="button"
                  className="stop"
                  data-stop={stop}
                  data-mark={mark}
                  aria-current={place.stop === stop ? 'step' : undefined}
                  onClick={() => go((from) => arrived(stop, from))}
                >
                  <span className="dot" aria-hidden="true" />
                  <span className="stop-name">{STOPS[stop].name}</span>
                  <span className="stop-mark">{MARK_WORDS[mark]}</span>
                </button>
              </li>
            );
          })}
        </ol>
      )}
      {toCome !== undefined && (
        <ol className="stops to-come" aria-label={`Stops to come of the ${WAY_WORDS[place.way].name}`}>
          {toCome.stops.map((stop) => (
            <li key={stop} className="stop" data-mark="to-come">
              <span className="dot" aria-hidden="true" />
              <span className="stop-name">{stop}</span>
            </li>
          ))}
        </ol>
      )}
    </nav>
  );
}

/** The pads in the order of the work, then what a day out asks. */
function FloorStops() {
  const { place, go } = usePage();
  const { car } = useCar();
  const { form } = car;
  const line = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: where the line is longer than the page, one is brought to where one stands
  useEffect(() => {
    const here = line.current?.querySelector<HTMLElement>('[aria-current]')?.closest('li');
    if (here) line.current!.scrollLeft = here.offsetLeft - (line.current!.clientWidth - here.offsetWidth) / 2;
  }, [place.floor]);
  return (
    <ol className="stops many" ref={line}>
      {PAD_STOPS.map((stop) => (
        <LaterStop
          key={stop}
          name={stop}
          stop={stop}
          here
          told={form.floor !== undefined}
          current={place.floor === stop}
          onGo={() => go({ floor: stop, gauge: undefined, figure: undefined })}
        />
      ))}
      {DAY_STOPS.map((stop) => (
        <LaterStop
          key={stop}
          name={DAY_WORDS[stop].name}
          stop={stop}
          here
          told={DAY_WORDS[stop].told(form)}
          current={place.floor === stop}
          onGo={() => go({ floor: stop, gauge: undefined, figure: undefined })}
        />
      ))}
    </ol>
  );
}

/** Primaries and collector are worked out; the rest of the line is to come. */
function GasStops() {
  const { place, go } = usePage();
  const { car } = useCar();
  const told = car.form.exhaust !== undefined;
  return (
    <ol className="stops">
      {GAS_LINE.map((stop) => (
        <LaterStop
          key={stop}
          name={stop}
          stop={stop}
          here={GAS_STOPS.some((each) => each === stop)}
          told={told}
          current={place.gas === stop}
          onGo={() => go({ gas: GAS_STOPS.find((each) => each === stop)! })}
        />
      ))}
    </ol>
  );
}

interface LaterProps {
  readonly name: string;
  readonly stop: string;
  /** Worked out already. */
  readonly here: boolean;
  /** Whether the file tells of it. */
  readonly told: boolean;
  readonly current: boolean;
  readonly onGo: () => void;
}

/** A stop of a way that is not the load path. */
function LaterStop({ name, stop, here, told, current, onGo }: LaterProps) {
  if (!here) {
    return (
      <li className="stop" data-mark="to-come">
        <span className="dot" aria-hidden="true" />
        <span className="stop-name">{name}</span>
        <span className="stop-mark">to come</span>
      </li>
    );
  }
  return (
    <li>
      <button
        type="button"
        className="stop"
        data-stop={stop}
        data-mark={told ? 'well' : 'untold'}
        aria-current={current ? 'step' : undefined}
        onClick={onGo}
      >
        <span className="dot" aria-hidden="true" />
        <span className="stop-name">{name}</span>
        <span className="stop-mark">{told ? '' : MARK_WORDS.untold}</span>
      </button>
    </li>
  );
}

type Mark = 'well' | 'untold' | 'amiss';

const MARK_WORDS: Readonly<Record<Mark, string>> = {
  well: '',
  untold: 'not told',
  amiss: 'look here',
};

/** A shape as well as a word: round where all is well, a square of dashes where the file does not tell, a diamond to look at. */
function markOf(stop: Stop, corner: CornerAnswer, { form, warnings }: Car, wheel: Wheel): Mark {
  if ((stop === 'studs' || stop === 'tub') && form.joints === undefined) return 'untold';
  if (stop === 'tub' && form.masses === undefined) return 'untold';
  if (isBehindCorners(stop)) return form.body === undefined ? 'untold' : 'well';
  if (!corner.reached || doubtsAt(warnings, wheel, stop).length > 0) return 'amiss';
  return corner.figures.some(
    (figure) =>
      figure.stop === stop &&
      figure.rank < 3 &&
      figure.say !== undefined &&
      figure.value < 0 &&
      /margin|left/i.test(figure.id),
  )
    ? 'amiss'
    : 'well';
}
