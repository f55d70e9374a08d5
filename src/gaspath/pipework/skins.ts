/**
 * A pipe as slices of one form each, outside and bore: what a CAD kernel lays down one behind the other.
 *
 * In    a pipe without faults
 * Out   slices along the flow; where two that follow each other differ, a flat ring closes the shoulder between them
 *
 * Where tubes lie in one another the slice is solid from the bore of the inner to the outside of the outer: the play
 * between them is left out.
 */
import type { Metre } from '../../units/quantity.ts';
import { into, type Place, stations } from './centreline.ts';
import { type Element, elementLength, NO_LENGTH, type Pipe, type Tube, tubeOf } from './pipe.ts';
import { isReducer } from './stepped.ts';

/** Radius where a slice begins and where it ends. */
export type Flare = readonly [Metre, Metre];

export interface Slice {
  readonly element: Element;
  readonly from: Place;
  readonly outer: Flare;
  readonly bore: Flare;
}

const outerOf = ({ od }: Tube): Metre => od / 2;
const boreOf = ({ od, wall }: Tube): Metre => od / 2 - wall;

export function slicesOf(pipe: Pipe): readonly Slice[] {
  const begins = stations(pipe);
  return pipe.elements.flatMap((element, k): Slice[] => {
    const long = elementLength(element);
    if (long < NO_LENGTH) return [];
    const tube = tubeOf(pipe, k);
    const from = begins[k]!;
    const step = pipe.steps?.find((each) => each.element === k + 1);
    const cone = (behind: Tube): Pick<Slice, 'outer' | 'bore'> => ({
      outer: [outerOf(tube), outerOf(behind)],
      bore: [boreOf(tube), boreOf(behind)],
    });
    const even = (outer: Metre, bore: Metre): Pick<Slice, 'outer' | 'bore'> => ({
      outer: [outer, outer],
      bore: [bore, bore],
    });
    const plain = even(outerOf(tube), boreOf(tube));
    if (isReducer(pipe, k))
      return [{ element, from, ...cone(pipe.steps!.find((s) => s.element === k + 1)!.tube) }];
    if (step === undefined || step.join.kind === 'reducer' || step.join.length < NO_LENGTH)
      return [{ element, from, ...plain }];
    // of the straight before a step its end is the join
    const { length } = step.join;
    const inner = tube.od < step.tube.od ? tube : step.tube;
    const outer = inner === tube ? step.tube : tube;
    const join = step.join.kind === 'swaged' ? cone(step.tube) : even(outerOf(outer), boreOf(inner));
    const last: Slice = {
      element: { kind: 'straight', length },
      from: into(element, from, long - length),
      ...join,
    };
    if (long - length < NO_LENGTH) return [last];
    return [{ element: { kind: 'straight', length: long - length }, from, ...plain }, last];
  });
}
