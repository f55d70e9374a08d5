/**
 * A pipe whose tube steps: which tube each element is of, how much of each is cut, what it weighs.
 *
 * In    a pipe; or elements and where the steps come, from which it is made
 * Out   the tubes with their lengths as cut, reducers, weight, where steps stand
 *
 * A tube that is slipped over the other, or into it, is cut longer by the lap. A swaged end is of the tube that is
 * opened: its wall thins as it grows, and its weight stays.
 */
import type { Kilogram, Metre } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { stations } from './centreline.ts';
import {
  developedLength,
  type Element,
  elementLength,
  massOfTube,
  NO_LENGTH,
  type Pipe,
  type StepJoin,
  type Tube,
  type TubeStep,
  tubeOf,
} from './pipe.ts';

const reducerWeight = formula({
  symbol: 'm_c',
  means: 'weight of a reducer whose diameter and wall change evenly',
  is: 'π/6*l*ρ*((D_1 - w_1)*w_1 + (D_1 + D_2 - w_1 - w_2)*(w_1 + w_2) + (D_2 - w_2)*w_2)',
  unit: 'kg',
  terms: {
    l: { unit: 'm', means: 'length along its middle' },
    ρ: { unit: 'kg/m^3', means: 'density' },
    D_1: { unit: 'm', means: 'outer diameter before it' },
    w_1: { unit: 'm', means: 'wall before it' },
    D_2: { unit: 'm', means: 'outer diameter behind it' },
    w_2: { unit: 'm', means: 'wall behind it' },
  },
  source: 'PW-36',
  holds: "a straight cone; Simpson's rule, which is exact since the area of its wall is of second degree",
});

const steppedWeight = formula({
  symbol: 'm',
  means: 'weight of a pipe whose tube steps, without flange and weld',
  is: 'T + C',
  unit: 'kg',
  terms: {
    T: { unit: 'kg', means: 'its tubes, each by its length as cut' },
    C: { unit: 'kg', means: 'its reducers' },
  },
  source: 'PW-37',
});

/** A reducer: the element that is one, and what it joins. */
export interface ReducerOf {
  readonly element: number;
  readonly before: Tube;
  readonly behind: Tube;
}

export const reducersOf = (pipe: Pick<Pipe, 'tube' | 'steps'>): readonly ReducerOf[] =>
  (pipe.steps ?? []).flatMap(({ element, tube, join }) =>
    join.kind === 'reducer'
      ? [{ element: element - 1, before: tubeOf(pipe, element - 1), behind: tube }]
      : [],
  );

export const isReducer = (pipe: Pick<Pipe, 'tube' | 'steps'>, element: number): boolean =>
  reducersOf(pipe).some((each) => each.element === element);

/** By how much the element is cut longer than it is drawn, to lie over the tube before it or within it. */
export const lapOf = ({ steps }: Pick<Pipe, 'steps'>, element: number): Metre => {
  const join = steps?.find((each) => each.element === element)?.join;
  return join?.kind === 'slipped over' ? join.length : 0;
};

/** A tube of one size in a pipe. */
export interface TubeRun {
  readonly tube: Tube;
  /** Its elements, the last not counted in; a reducer behind it is not among them. */
  readonly from: number;
  readonly to: number;
  /** Along its middle, lap counted in. */
  readonly cut: Metre;
}

export function runsOf(pipe: Pick<Pipe, 'tube' | 'steps' | 'elements'>): readonly TubeRun[] {
  const { elements, steps = [] } = pipe;
  return [pipe.tube, ...steps.map(({ tube }) => tube)].map((tube, k): TubeRun => {
    const from = steps[k - 1]?.element ?? 0;
    const next = steps[k];
    const to = next === undefined ? elements.length : next.element - (next.join.kind === 'reducer' ? 1 : 0);
    const drawn = elements.slice(from, to).reduce((sum, each) => sum + elementLength(each), 0);
    return { tube, from, to, cut: drawn + lapOf(pipe, from) };
  });
}

/** Weight of the pipe.  [PW-3, PW-36, PW-37] */
export function pipeMass(pipe: Pipe, working?: Working): Kilogram {
  if (pipe.steps === undefined || pipe.steps.length === 0)
    return massOfTube(pipe.tube, developedLength(pipe, working), working);
  const T = runsOf(pipe).reduce((sum, { tube, cut }) => sum + massOfTube(tube, cut, working), 0);
  const C = reducersOf(pipe).reduce(
    (sum, { element, before: one, behind: two }) =>
      sum +
      reducerWeight(
        {
          l: elementLength(pipe.elements[element]!),
          ρ: two.density,
          D_1: one.od,
          w_1: one.wall,
          D_2: two.od,
          w_2: two.wall,
        },
        working,
      ),
    0,
  );
  return steppedWeight({ T, C }, working);
}

/** A step by where it comes: from the flange along the middle, where the tube before it ends or begins to open. */
export interface StepAt {
  readonly at: Metre;
  readonly tube: Tube;
  readonly join: StepJoin;
}

/**
 * Elements cut where the tubes change, with the steps by their elements.
 *
 * @param at  in the order of the flow, each on a straight that has room for its join
 */
export function steppedElements(
  elements: readonly Element[],
  at: readonly StepAt[],
): { readonly elements: readonly Element[]; readonly steps: readonly TubeStep[] } {
  const parts: Element[] = [...elements];
  const steps = at.map(({ at: s, tube, join }): TubeStep => {
    if (join.kind === 'reducer') cutAt(parts, s, false);
    const laps = join.kind === 'slipped over';
    return { element: cutAt(parts, laps ? s : s + join.length, laps), tube, join };
  });
  return { elements: parts, steps };
}

/**
 * Parts the straight that lies at a length from the flange; the element that begins there.
 *
 * @param lap  a straight must begin there, were it of no length
 */
function cutAt(parts: Element[], s: Metre, lap: boolean): number {
  let begins = 0;
  for (const [k, element] of parts.entries()) {
    const long = elementLength(element);
    if (Math.abs(s - begins) < NO_LENGTH && (!lap || element.kind === 'straight')) return k;
    const within = s - begins;
    if (element.kind === 'straight' && within > 0 && within <= long + NO_LENGTH) {
      const rest = Math.max(0, long - within);
      if (rest < NO_LENGTH && !lap) return k + 1;
      parts.splice(
        k,
        1,
        { kind: 'straight', length: long - rest },
        { kind: 'straight', length: rest < NO_LENGTH ? 0 : rest },
      );
      return k + 1;
    }
    begins += long;
  }
  throw new Error('a step that stands on no straight: whoever lays a pipe has looked');
}

/** Where the outside changes at a step, from the flange: the larger tube's end, or where the tube begins to open. */
export function stepPlaces(pipe: Pick<Pipe, 'tube' | 'steps' | 'start' | 'elements'>): readonly {
  readonly s: Metre;
  readonly before: Tube;
  readonly behind: Tube;
  readonly join: StepJoin;
}[] {
  const begins = stations(pipe);
  return (pipe.steps ?? []).map(({ element, tube, join }) => {
    const before = tubeOf(pipe, element - 1);
    const { s } = begins[element]!;
    // the smaller of two tubes that lie in one another ends within the larger
    const back = join.kind === 'slipped over' && before.od > tube.od ? 0 : join.length;
    return { s: s - back, before, behind: tube, join };
  });
}
