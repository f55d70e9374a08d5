/** What one spec says at the stop that is looked at: its figures as it stands, or under what the car is doing. */
import { useMemo } from 'react';
import {
  type BodyForcesReached,
  caseForces,
  type Doing,
  type Figure,
  type JointReached,
  jointOf,
  loadsOf,
  tubForces,
} from '../../questions/index.ts';
import type { Car, CarSource } from '../engine/answers.ts';
import { useDoing } from '../loads/use-case.ts';
import { isLoaded, type Place } from '../place.ts';
import { useFigures } from '../sheet/use-corner.ts';

export interface OfSpec {
  readonly figures: readonly Figure[];
  /** Why there are none. */
  readonly message?: string;
  readonly joint?: JointReached;
}

/** Under a load without spread: both sides follow at once. */
export function useOfSpec(
  of: { readonly car: Car; readonly source: CarSource; readonly key: string },
  place: Place,
): OfSpec {
  const corner = useFigures(of, place);
  const doing = useDoing();
  const { car } = of;
  const { stop, joint } = place;
  const { end, side } = place.wheel;
  const loaded = isLoaded(place);
  const under = useMemo(
    () => (loaded ? underLoad(car, { stop, joint, wheel: { end, side } }, doing) : undefined),
    [loaded, car, stop, joint, end, side, doing],
  );
  if (under !== undefined) return under;
  return corner.reached ? { figures: corner.figures } : { figures: [], message: corner.message };
}

function underLoad(
  car: Car,
  { stop, joint, wheel }: Pick<Place, 'stop' | 'joint' | 'wheel'>,
  doing: Doing,
): OfSpec {
  if (stop === 'studs') {
    const is = jointOf(car, joint, doing, { spread: false });
    return is.reached ? { figures: is.figures, joint: is } : { figures: [], message: is.message };
  }
  if (stop === 'case' || stop === 'tub') {
    const is = stop === 'case' ? caseForces(car, doing) : tubForces(car, doing);
    return is.reached ? { figures: asFigures(is, stop) } : { figures: [], message: is.message };
  }
  const is = loadsOf(car, doing, { spread: false, wheels: [wheel] });
  return is.reached ? { figures: is.wheels[0]!.figures } : { figures: [], message: is.message };
}

/** Forces of a list by their names, so that they pair as figures do. */
const asFigures = ({ forces }: BodyForcesReached, stop: 'case' | 'tub'): readonly Figure[] =>
  forces.map(({ name, size }) => ({
    id: name,
    stop,
    means: name,
    symbol: 'F',
    value: size,
    unit: 'N',
    rank: 2,
  }));
