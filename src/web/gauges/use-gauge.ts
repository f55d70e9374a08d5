/** A reading by hand as it is typed, and what the worker makes of it. */
import { useMemo } from 'react';
import {
  type GaugeAnswer,
  type GaugedAnswer,
  type GaugeRead,
  readGauge,
  sheetNames,
} from '../../questions/index.ts';
import { textsOf } from '../asked/fields.ts';
import type { OwnedFigure } from '../day/figures.tsx';
import { type Asked, ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { GAUGE_WORDS, type PageGauge } from './words.ts';

/** Who types is not answered letter by letter. Milliseconds. */
const REST = 350;

export interface Gauge {
  readonly name: PageGauge;
  readonly read: GaugeRead;
  /** Undefined where nothing can be asked yet. */
  readonly is: Asked<GaugeAnswer> | undefined;
}

export function useGaugeRead(name: PageGauge): GaugeRead {
  const { place } = usePage();
  const { car } = useCar();
  const texts = JSON.stringify(textsOf(name, place.asked));
  return useMemo(
    () => readGauge(GAUGE_WORDS[name].asks, JSON.parse(texts) as Record<string, string>, sheetNames(car)),
    [name, texts, car],
  );
}

export function useGauge(name: PageGauge): Gauge {
  const { key, source } = useCar();
  const read = useGaugeRead(name);
  const { question } = read;
  const is = useAnswer<GaugeAnswer>(
    question === undefined ? undefined : `gauge ${key} ${JSON.stringify(question)}`,
    () => ask('gauge', source, question!),
    REST,
  );
  return { name, read, is: question === undefined ? undefined : is };
}

/** The figures as the card shows them; those of the car weighed belong to the car. */
export const ownedFigures = (answer: GaugeAnswer): readonly OwnedFigure[] =>
  answer.reached
    ? answer.figures.map(({ id, words, unit, value, u, ...figure }) => ({
        of: 'of' in figure ? (figure as { of: string }).of : WEIGHED,
        id,
        means: words,
        unit,
        value,
        ...(u > 0 ? { spread: { u } } : {}),
      }))
    : [];

export const WEIGHED = 'car';

/** The answer of a gauge, whose figures belong to wheels, axles, rows; undefined until it is there. */
export const gaugedIn = ({ is }: Gauge): GaugedAnswer | undefined =>
  is?.state === 'answered' && is.answer.reached && is.answer.figures.some((each) => 'of' in each)
    ? (is.answer as GaugedAnswer)
    : undefined;
