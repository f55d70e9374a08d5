/** All figures of an axle, in one order: its links, its rates, its frequency and damping. */
import type { CarForm } from '../../car/read.ts';
import type { Working } from '../../working/working.ts';
import { formula } from '../../working/working.ts';
import { type AxleAt, type AxleState, axleState } from '../axle-of-car.ts';
import { attitudeOf } from '../corner/attitude.ts';
import type { Numbers } from '../numbers.ts';
import { putAxleLinks } from './axle-links.ts';
import { putRates } from './axle-rates.ts';
import { noteSolved, notesOf, type Put, recorded } from './note.ts';

const tyre = notesOf('tyre');

const track = tyre({ id: 'track', means: 'track', symbol: 't', unit: 'm', rank: 1 });

const trackOf = formula({
  symbol: 't',
  means: 'track',
  is: 'b_l + b_r',
  unit: 'm',
  terms: {
    b_l: { unit: 'm', means: 'left contact point to centre plane' },
    b_r: { unit: 'm', means: 'right contact point to centre plane' },
  },
  source: 'LP-53',
});

/** Puts every figure of an axle. @throws Unreachable, DegenerateCorner, BarOpen */
export function putAxleFigures(
  form: CarForm,
  end: 'front' | 'rear',
  at: AxleAt,
  numbers: Numbers,
  putting: Put,
  working?: Working,
): AxleState {
  const put = working === undefined ? putting : recorded(putting, working);
  const state = axleState(form[end], at, numbers, working);
  const { left, right } = state;
  const [b_l, b_r] = [left, right].map((side) => attitudeOf(side.state).halfTrack.value) as [number, number];
  noteSolved(working, 'the linkage closed at this travel', 'LP-10', () => [
    { symbol: 'b_l', means: 'left contact point to centre plane', value: b_l, unit: 'm' },
    { symbol: 'b_r', means: 'right contact point to centre plane', value: b_r, unit: 'm' },
  ]);
  const t = trackOf({ b_l, b_r }, working);
  put(track, t);
  putAxleLinks(form, end, state, numbers, put);
  putRates(state, t, numbers, put, working);
  return state;
}
