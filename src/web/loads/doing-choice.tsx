/** What the car is doing: a small picture for each, the arrow where the tyres push it. */
import { type Doing, USUAL_DOINGS } from '../../questions/index.ts';
import { usePage } from '../state.tsx';

export function DoingChoice() {
  const { place, go } = usePage();
  const chosen = USUAL_DOINGS.find(({ name }) => name === place.doing);
  return (
    <>
      <fieldset className="words doings">
        <legend className="unseen">What the car is doing</legend>
        {USUAL_DOINGS.map(({ name, means, doing }) => (
          <button
            key={name}
            type="button"
            aria-pressed={place.doing === name}
            title={means}
            onClick={() => go({ doing: name })}
          >
            <CarPicture doing={doing} />
            {name.replaceAll('-', ' ')}
          </button>
        ))}
      </fieldset>
      <p className="doing-means">{chosen?.means}</p>
    </>
  );
}

/** The car in plan, nose up; in a dip or with the air on it from the side. */
function CarPicture({ doing }: { doing: Doing }) {
  const { longitudinal, lateral, vertical, speed, strikes } = doing;
  const down = vertical !== 0 || (longitudinal === 0 && lateral === 0 && speed > 60);
  const arrow = [
    longitudinal === 0 ? '' : longitudinal < 0 ? 'M26 8v14m-3-4l3 4l3-4' : 'M26 22V8m-3 4l3-4l3 4',
    // the left of the car is at the left of the picture, nose up
    lateral === 0 ? '' : lateral > 0 ? 'M24 15H8m4-3l-4 3l4 3' : 'M28 15h16m-4-3l4 3l-4 3',
  ].join('');
  const struck = [
    strikes.frontLeft === undefined ? '' : 'M13 2l5 0l-2.5-4z',
    strikes.rearLeft === undefined ? '' : 'M11 30l6 0l-3 -5z',
  ].join('');
  if (down) {
    return (
      <svg className="car-picture" viewBox="0 -2 52 34" aria-hidden="true">
        <path d="M6 20l8-5l8-1l5-5l6 0l6 5l8 1v5" />
        <circle cx={14} cy={21} r={5} />
        <circle cx={40} cy={21} r={5} />
        <path className="ground" d="M2 27h48" />
        <path className="arrow" d={vertical !== 0 ? 'M27 29v-9m-3 3l3-3l3 3' : 'M27 -1v9m-3-3l3 3l3-3'} />
      </svg>
    );
  }
  return (
    <svg className="car-picture" viewBox="0 -2 52 34" aria-hidden="true">
      <path d="M24 1h4l1 8l2 3v12l-2 4h-6l-2-4V12l2-3z" />
      <path d="M14 4h5v6h-5zM33 4h5v6h-5zM12 20h6v8h-6zM34 20h6v8h-6z" />
      <path className="arrow" d={arrow} />
      {struck !== '' && <path className="kerb" d={struck} />}
    </svg>
  );
}
