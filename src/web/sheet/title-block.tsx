/** The title block (in the manner of ISO 7200): what the sheet is of, and where spec, units and light are changed. */
import { useMemo } from 'react';
import { stateOfReadings } from '../../questions/index.ts';
import type { Workshop } from '../client.ts';
import { DAY_WORDS } from '../day/words.ts';
import type { Light } from '../light.ts';
import { useCase } from '../loads/use-case.ts';
import { dayOf, isLoaded, type Mode } from '../place.ts';
import { usePage } from '../state.tsx';
import { countWords } from '../stops/doubts.ts';
import { useCar } from './car-file.tsx';
import { travelWords } from './travel.ts';

const DOING: Readonly<Record<Mode, (wheel: string, end: string, travel: string) => string>> = {
  wheel: (wheel, _, travel) => `${wheel} at ${travel}`,
  heave: (_, end, travel) => `both ${end} wheels at ${travel}`,
  roll: (wheel, end, travel) => `${end} axle rolled, ${wheel} at ${travel}`,
};

export const DATE = new Intl.DateTimeFormat('en-CA', { year: 'numeric', month: '2-digit', day: '2-digit' });

export function TitleBlock({ workshop }: { workshop: Workshop | undefined }) {
  const { place, go, speech, setSpeech, light, setLight } = usePage();
  const { car, id, away } = useCar();
  const state = useMemo(() => stateOfReadings(car), [car]);
  const onFloor = workshop?.cars.find((each) => each.id === id);
  const { name, chassis } = car.form.car;
  const still = place.travel === 0 && place.rack === 0;
  const loaded = isLoaded(place);
  const { means } = useCase();
  const day = dayOf(place);
  const doing =
    day !== undefined
      ? DAY_WORDS[day].title.toLowerCase()
      : loaded
        ? means
        : still
          ? 'standing as surveyed'
          : place.travel === 0
            ? 'wheels as surveyed'
            : DOING[place.mode](
                `${place.wheel.end} ${place.wheel.side}`,
                place.wheel.end,
                travelWords(place.travel, speech),
              );
  const turned =
    loaded || day !== undefined || place.rack === 0 ? '' : `, rack ${travelWords(place.rack, speech)}`;

  return (
    <section className="title-block" aria-label="Title block">
      <div className="cell wide">
        <span className="cell-name">workshop</span>
        <button
          type="button"
          className="plain-word floor-word"
          onClick={() => go({ car: undefined, figure: undefined, against: undefined, spec: undefined })}
        >
          {workshop?.name ?? 'the floor'}
        </button>
        {(car.form.car.invented || onFloor?.invented) && <span className="invented">invented example</span>}
      </div>
      <div className="cell wide">
        <span className="cell-name">car</span>
        <b>
          {name}
          {chassis !== undefined && ` · ${chassis}`}
        </b>
        <span className="date">{DATE.format(new Date())}</span>
      </div>
      <label className="cell">
        <span className="cell-name">spec</span>
        <select
          value={car.spec}
          onChange={(event) =>
            go({ spec: event.target.value === car.specs[0] ? undefined : event.target.value })
          }
        >
          {car.specs.map((spec) => (
            <option key={spec}>{spec}</option>
          ))}
        </select>
      </label>
      <label className="cell">
        <span className="cell-name">beside it</span>
        <select
          value={place.against ?? ''}
          onChange={(event) =>
            go({ against: event.target.value === '' ? undefined : event.target.value, figure: undefined })
          }
        >
          <option value="">nothing</option>
          {car.specs
            .filter((spec) => spec !== car.spec)
            .map((spec) => (
              <option key={spec}>{spec}</option>
            ))}
        </select>
      </label>
      {away !== undefined && (
        <p className="cell wide away" role="status">
          {away} What is shown is the file as it last came.
        </p>
      )}
      <div className="cell wide">
        <span className="cell-name">doing</span>
        <span>
          {doing}
          {turned}
        </span>
      </div>
      <div className="cell wide">
        <span className="cell-name">readings</span>
        <button
          type="button"
          className="plain-word"
          onClick={() =>
            go({ card: place.card === 'survey' ? 'figures' : 'survey', way: 'load', against: undefined })
          }
        >
          {state.usual} of {state.total} with usual spread only{' '}
          {car.warnings.length > 0 && (
            <span className="odd">
              <span className="look-here" aria-hidden="true" /> {countWords(car.warnings.length)}
            </span>
          )}
        </button>
      </div>
      <label className="cell">
        <span className="cell-name">units</span>
        <select value={speech} onChange={(event) => setSpeech(event.target.value as typeof speech)}>
          <option value="mm-N">mm · N</option>
          <option value="in-lbf">in · lbf</option>
        </select>
      </label>
      <label className="cell">
        <span className="cell-name">light</span>
        <select value={light} onChange={(event) => setLight(event.target.value as Light)}>
          <option value="as the machine">by machine</option>
          <option value="day">day</option>
          <option value="night">night</option>
        </select>
      </label>
    </section>
  );
}
