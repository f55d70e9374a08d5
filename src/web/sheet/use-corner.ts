/**
 * The figures of the chosen corner: at once without spread, and with it when the hand rests.
 *
 * While the spread is on its way the figures stand without ±; an old ± is never shown beside a new figure.
 */
import { useMemo } from 'react';
import { AS_SURVEYED, type Position, rackOf, travelOf, type Wheel } from '../../questions/figure.ts';
import { cornerFigures, drawCar } from '../../questions/index.ts';
import type { Car, CarSource } from '../engine/answers.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { type Place, stanceOf } from '../place.ts';
import { useCar } from './car-file.tsx';

export type CornerAnswer = ReturnType<typeof cornerFigures>;

export const positionOf = (place: Place, wheel: Wheel = place.wheel): Position => {
  const stance = stanceOf(place);
  return { travel: travelOf(stance, wheel), rack: rackOf(stance, wheel) };
};

export function useCorner(place: Place): CornerAnswer {
  const { car, key, source } = useCar();
  return useFigures({ car, source, key }, place);
}

/** The same of a car that is not the open one, such as the spec beside it. */
export function useFigures(
  { car, source, key }: { readonly car: Car; readonly source: CarSource; readonly key: string },
  place: Place,
): CornerAnswer {
  const { travel, rack } = positionOf(place);
  const { end, side } = place.wheel;
  const quick = useMemo(
    () => cornerFigures(car, { end, side }, { travel, rack }),
    [car, end, side, travel, rack],
  );
  const sure = useAnswer(quick.reached ? `${key} ${end} ${side} ${travel} ${rack}` : undefined, () =>
    ask('corner', source, { end, side }, { travel, rack }, { spread: true }),
  );
  return sure.state === 'answered' && sure.answer.reached ? sure.answer : quick;
}

export function useDrawing(place: Place) {
  const { car } = useCar();
  const stance = stanceOf(place);
  const standing = useMemo(() => drawCar(car, AS_SURVEYED), [car]);
  const { front, rear, rack } = stance;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the four travels and the rack are the stance
  const drawing = useMemo(
    () => drawCar(car, stance),
    [car, front.left, front.right, rear.left, rear.right, rack],
  );
  return { standing, drawing };
}
