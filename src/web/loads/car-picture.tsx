/** A small picture of what the car is doing: the arrow where the tyres push it, a wedge where a kerb is. */
import { type Doing, WHEEL_NAMES, type WheelName } from '../../questions/index.ts';

/** A wedge ahead of a front wheel, behind a rear one; the left of the car is at the left of the picture, nose up. */
const KERBS: Readonly<Record<WheelName, string>> = {
  frontLeft: 'M13 2l5 0l-2.5-4z',
  frontRight: 'M39 2l-5 0l2.5-4z',
  rearLeft: 'M11 30l6 0l-3-5z',
  rearRight: 'M41 30l-6 0l3-5z',
};

/** The car in plan, nose up; in a dip or with the air on it from the side. */
export function CarPicture({ doing }: { doing: Doing }) {
  const { longitudinal, lateral, vertical, speed, strikes } = doing;
  const down = vertical !== 0 || (longitudinal === 0 && lateral === 0 && speed > 60);
  const arrow = [
    longitudinal === 0 ? '' : longitudinal < 0 ? 'M26 8v14m-3-4l3 4l3-4' : 'M26 22V8m-3 4l3-4l3 4',
    // the left of the car is at the left of the picture, nose up
    lateral === 0 ? '' : lateral > 0 ? 'M24 15H8m4-3l-4 3l4 3' : 'M28 15h16m-4-3l4 3l-4 3',
  ].join('');
  const struck = WHEEL_NAMES.filter((wheel) => (strikes[wheel] ?? 0) > 0)
    .map((wheel) => KERBS[wheel])
    .join('');
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
