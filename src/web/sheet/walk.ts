/**
 * The walk along the line, read aloud: the stop, its lead figure with spread, what looks odd, what comes next. Under a
 * load case the force is followed instead.
 */
import { useEffect, useRef } from 'react';
import type { Problem } from '../../measured/problem.ts';
import { LOAD_PATH, type Stop } from '../../questions/figure.ts';
import { type Speech, unitAfter } from '../../units/show.ts';
import { useFollowed } from '../loads/following.tsx';
import { isBehindCorners, isLoaded, wheelName } from '../place.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { countWords, doubtsAt } from '../stops/doubts.ts';
import { STOPS } from '../stops/words.ts';
import { useCar } from './car-file.tsx';
import type { CornerAnswer } from './use-corner.ts';

/** The spread is waited for so long; then the figure is said without it. */
const PATIENCE = 2500;

/** Says each stop once as it is arrived at; a wheel that moves says nothing. */
export function useWalkAloud(corner: CornerAnswer): void {
  const { place, say, speech } = usePage();
  const { car } = useCar();
  const said = useRef('');
  const here = `${place.way} ${place.stop} ${wheelName(place.wheel)}`;
  const followed = useFollowed(place.way === 'load' && isLoaded(place));
  const whole =
    place.way !== 'load' ||
    followed !== undefined ||
    !corner.reached ||
    isBehindCorners(place.stop) ||
    hasSpread(corner, place.stop);

  // biome-ignore lint/correctness/useExhaustiveDependencies: said when one arrives, and when the spread is there
  useEffect(() => {
    if (place.way !== 'load' || said.current === here) return;
    const tell = (): void => {
      said.current = here;
      say(
        followed === undefined
          ? sentenceOf(place.stop, corner, car.warnings, speech)
          : `${STOPS[place.stop].title}. ${followed.says}`,
      );
    };
    if (whole) {
      tell();
      return;
    }
    const timer = setTimeout(tell, PATIENCE);
    return () => clearTimeout(timer);
  }, [here, whole]);
}

const leadOf = (corner: Extract<CornerAnswer, { reached: true }>, stop: Stop) => {
  const own = corner.figures.filter((figure) => figure.stop === stop && Number.isFinite(figure.value));
  return own.find((figure) => figure.rank === 1) ?? own[0];
};

const hasSpread = (corner: Extract<CornerAnswer, { reached: true }>, stop: Stop): boolean =>
  leadOf(corner, stop)?.spread !== undefined;

export function sentenceOf(
  stop: Stop,
  corner: CornerAnswer,
  warnings: readonly Problem[],
  speech: Speech,
): string {
  const { title, is } = STOPS[stop];
  const next = LOAD_PATH[LOAD_PATH.indexOf(stop) + 1];
  const end = next === undefined ? 'This is the end of the line.' : `Next: ${STOPS[next].name}.`;
  // behind the corners: no figure of one wheel stands for them
  if (isBehindCorners(stop)) return `${title}. ${is} ${end}`;
  if (!corner.reached) return `${title}. ${corner.message} ${end}`;
  const lead = leadOf(corner, stop);
  const doubts = doubtsAt(warnings, corner.wheel, stop);
  const odd = doubts.length === 0 ? '' : `${countWords(doubts.length)}: ${doubts[0]!.problem.message} `;
  return `${title}, ${wheelName(corner.wheel)}. ${lead === undefined ? '' : `${figureWords(lead, speech)}. `}${odd}${end}`;
}

function figureWords(
  { means, value, unit, spread }: NonNullable<ReturnType<typeof leadOf>>,
  speech: Speech,
): string {
  const shown = spoken(value, unit, speech, spread?.u);
  const within = shown.spread === undefined ? '' : ` plus or minus ${shown.spread}`;
  return `${means.slice(0, 1).toUpperCase()}${means.slice(1)} ${shown.text}${within}${unitAfter(shown.unit)}`;
}
