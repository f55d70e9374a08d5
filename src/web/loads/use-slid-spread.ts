/**
 * Spread under a slider: while one is held, the worker works out the knots of its slide, those nearest to the hand
 * first, and what the page works out itself takes its spread from between them.
 */
import { useEffect, useMemo, useRef, useState } from 'react';
import {
  type Doing,
  type Figure,
  knotsOf,
  knotsRound,
  slideRange,
  slidTo,
  withSpreadBetween,
} from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';

interface Found {
  readonly of: string;
  readonly at: ReadonlyMap<number, readonly Figure[]>;
}

interface Asked {
  /** What is asked, all but the case; a change drops the knots. */
  readonly question: string;
  readonly doing: Doing;
  /** Without spread, as worked out on the page. */
  readonly figures: readonly Figure[] | undefined;
  /** Figures with their spread in a case; none where it cannot be. */
  asking(doing: Doing): Promise<readonly Figure[]>;
}

const nearest = (of: readonly number[], value: number): number | undefined =>
  [...of].sort((a, b) => Math.abs(a - value) - Math.abs(b - value))[0];

/** The figures with the spread that is known for them while a slider is held; the same ones where none is. */
export function useSlidSpread({ question, doing, figures, asking }: Asked): Asked['figures'] {
  const { slid, place } = usePage();
  const { stop } = place;
  const { car, key } = useCar();
  const [found, find] = useState<Found>();
  const value = slid === undefined ? 0 : doing[slid];
  const hand = useRef(value);
  hand.current = value;
  // the case but for what is slid, so that the slide itself keeps its knots
  const of =
    slid === undefined || figures === undefined
      ? undefined
      : `${question} ${key} ${slid} ${JSON.stringify(slidTo(doing, slid, 0))}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the knots stay where the hand took hold
  const knots = useMemo(() => (slid === undefined ? [] : knotsOf(slideRange(car, slid, doing[slid]))), [of]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for all that the knots depend on
  useEffect(() => {
    if (of === undefined || slid === undefined) return;
    let current = true;
    const at = new Map<number, readonly Figure[]>();
    const work = async (): Promise<void> => {
      while (current && at.size < knots.length) {
        const next = nearest(
          knots.filter((knot) => !at.has(knot)),
          hand.current,
        )!;
        at.set(next, await asking(slidTo(doing, slid, next)));
        if (current) find({ of, at: new Map(at) });
      }
    };
    // a worker that broke off leaves the figures without ± until the hand rests
    work().catch(() => undefined);
    return () => {
      current = false;
    };
  }, [of]);

  return useMemo(() => {
    if (figures === undefined || of === undefined || found?.of !== of) return figures;
    const [below, above] = knotsRound(knots, value);
    const [a, b] = [found.at.get(below), found.at.get(above)];
    if (a === undefined || b === undefined) return figures;
    // only what is looked at: all of a wheel's figures would take longer than a frame
    const looked = figures.filter((figure) => figure.stop === stop);
    const surer = withSpreadBetween(looked, value, { knot: below, figures: a }, { knot: above, figures: b });
    return [...surer, ...figures.filter((figure) => figure.stop !== stop)];
  }, [figures, of, found, knots, value, stop]);
}
