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
import type { Metre } from '../../units/quantity.ts';
import type { Car, CarSource } from '../engine/answers.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useDoing } from '../loads/use-case.ts';
import { REST } from '../loads/use-loads.ts';
import { isBehindCorners, isLoaded, type Place } from '../place.ts';
import { useFigures } from '../sheet/use-corner.ts';

export interface OfSpec {
  readonly figures: readonly Figure[];
  /** Why there are none. */
  readonly message?: string;
  readonly joint?: JointReached;
}

interface Spec {
  readonly car: Car;
  readonly source: CarSource;
  readonly key: string;
}

/** At once without spread, so that both sides follow, and with it when the hand rests. */
export function useOfSpec(of: Spec, place: Place): OfSpec {
  const corner = useFigures(of, place);
  const doing = useDoing();
  const { car, source, key } = of;
  const { stop, joint } = place;
  const { end, side } = place.wheel;
  const loaded = isLoaded(place);
  const under = useMemo(
    () => (loaded ? underLoad(car, { stop, joint, wheel: { end, side } }, doing) : undefined),
    [loaded, car, stop, joint, end, side, doing],
  );
  const sure = useAnswer(
    under !== undefined && under.message === undefined && stop !== 'case' && stop !== 'tub'
      ? `under load ${key} ${stop === 'studs' ? joint : `${end} ${side}`} ${JSON.stringify(doing)}`
      : undefined,
    async (): Promise<readonly Figure[]> => {
      if (stop === 'studs') {
        const is = await ask('joint', source, joint, doing);
        return is.reached ? is.figures : [];
      }
      const is = await ask('loads', source, doing, { wheels: [{ end, side }] });
      return is.reached ? is.wheels[0]!.figures : [];
    },
    REST,
  );
  if (under !== undefined) {
    return sure.state === 'answered' && sure.answer.length > 0 ? { ...under, figures: sure.answer } : under;
  }
  return corner.reached ? { figures: corner.figures } : { figures: [], message: corner.message };
}

/** How far the load takes the wheel of a spec; undefined at what is no one wheel's, or where it cannot stand. */
export function useTravelUnderLoad(car: Car | undefined, place: Place): Metre | undefined {
  const doing = useDoing();
  const { end, side } = place.wheel;
  const on = car !== undefined && isLoaded(place) && !isBehindCorners(place.stop);
  return useMemo(() => {
    if (!on) return undefined;
    const is = loadsOf(car, doing, { spread: false, wheels: [{ end, side }] });
    return is.reached ? is.wheels[0]!.figures.find(({ id }) => id === 'travelUnderLoad')?.value : undefined;
  }, [on, car, doing, end, side]);
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
