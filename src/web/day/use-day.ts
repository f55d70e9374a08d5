/** The question of a stop of the day out as it is typed, and its answers: at once without spread, then with it. */
import { useMemo } from 'react';
import {
  askedSo,
  type DayAnswer,
  type DayName,
  type DayQuestion,
  type DayRead,
  type RatiosReached,
  readDay,
} from '../../questions/index.ts';
import { textsOf } from '../asked/fields.ts';
import type { CarSource } from '../engine/answers.ts';
import { type Asked, ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

/** Who types a question is not answered letter by letter. Milliseconds. */
const REST = 350;
/** A spread keeps the worker for seconds: the hand has to rest longer. */
const LONG_REST = 1200;

export interface Day {
  readonly read: DayRead;
  /** Undefined where nothing can be asked yet. */
  readonly is: Asked<DayAnswer> | undefined;
  /** Whether the spreads are still on their way. */
  readonly spreading: boolean;
  /** The same of the spec beside it. */
  readonly against?: { readonly spec: string; readonly is: Asked<DayAnswer> };
}

/** The answer of the ratios, which has more than figures. */
export const ratiosIn = (answer: DayAnswer | undefined): RatiosReached | undefined =>
  answer?.reached === true && 'thrust' in answer ? (answer as RatiosReached) : undefined;

export function useDayRead(name: DayName): DayRead {
  const { place } = usePage();
  const { car } = useCar();
  const texts = JSON.stringify(textsOf(name, place.asked));
  return useMemo(() => readDay(name, JSON.parse(texts) as Record<string, string>, car), [name, texts, car]);
}

export function useDay(name: DayName): Day {
  const { place } = usePage();
  const { key, source, car } = useCar();
  const read = useDayRead(name);
  const spec = place.against !== undefined && car.specs.includes(place.against) ? place.against : undefined;
  const question = read.question;
  const own = useDayAnswer(key, source, question);
  const other = useMemo(() => ({ ...source, ...(spec === undefined ? {} : { spec }) }), [source, spec]);
  const beside = useDayAnswer(`${key} beside ${spec}`, other, spec === undefined ? undefined : question);
  return {
    read,
    is: question === undefined ? undefined : own.is,
    spreading: question !== undefined && own.spreading,
    ...(spec === undefined || question === undefined ? {} : { against: { spec, is: beside.is } }),
  };
}

function useDayAnswer(key: string, source: CarSource, question: DayQuestion | undefined) {
  const asking = question === undefined ? undefined : `day ${key} ${JSON.stringify(question)}`;
  const quick = useAnswer<DayAnswer>(
    asking,
    () => ask('day', source, askedSo(question!, { spread: false })),
    REST,
  );
  const reached = quick.state === 'answered' && quick.answer.reached;
  const sure = useAnswer<DayAnswer>(
    reached ? asking : undefined,
    () => ask('day', source, askedSo(question!, { spread: true })),
    LONG_REST,
  );
  return {
    is: sure.state === 'answered' ? sure : quick,
    spreading: reached && sure.state === 'waiting',
  };
}
