/** What of a joint would break first, in words: by sort of stud when one is pulled, and which stud this load brings nearest. */
import { boundsOf, type JointUnderLoad } from '../loadpath/joint/joint-under.ts';
import type { WorkedSort } from '../loadpath/joint/stud-of-car.ts';
import { spokenFigures } from '../units/show.ts';

const WAYS = [
  ['tension', 'the stud breaks in tension'],
  ['studThread', 'the thread of the stud strips'],
  ['parentThread', 'the thread of the parent strips'],
] as const;

const N = (value: number): string => spokenFigures(value, 'N');

const weakest = ({ breaking }: WorkedSort) => {
  const [way, words] = WAYS.reduce((a, b) => (breaking[b[0]] < breaking[a[0]] ? b : a));
  return { way, words, at: breaking[way] };
};

/** By sort of stud: what gives way first when one is pulled, and at which load. */
export function firstToBreak({ studs }: JointUnderLoad): string[] {
  const sorts = [...new Set(studs.map(({ sort }) => sort))];
  return sorts.map((sort) => {
    const names = studs.filter((stud) => stud.sort === sort).map(({ name }) => name);
    const { way, words, at } = weakest(sort);
    const better =
      way === 'tension'
        ? ''
        : ' A stud that breaks is seen; a thread that strips is not: more engagement or an insert.';
    return `${sort.thread.name} (${names.join(', ')}): first ${words}, at about ${N(at)}.${better}`;
  });
}

/** The stud that pulls most of what breaks it, with both ends of the preload, cold and warm. */
export function nearestToBreaking({ studs }: JointUnderLoad): string {
  const all = studs.map(({ name, sort, forces }) => ({
    name,
    ...weakest(sort),
    most: boundsOf(forces).most,
  }));
  const { name, most, at, words } = all.reduce((a, b) => (b.most / b.at > a.most / a.at ? b : a));
  return `Nearest to it under this load is ${name}: up to ${N(most)} in it, of the ${N(at)} at which ${words}.`;
}

/** What is left at the stud whose pad keeps least. */
export function leastLeft(of: JointUnderLoad): string {
  const { name, pad, sort } = worstOf(of);
  return pad.low > 0
    ? `Least is left at ${name}: ${N(pad.low)} of ${N(sort.preload.low)} on its pad, at the low end of the preload.`
    : `The face has opened at ${name} at the low end of the preload: from there on the stud feels all of the load.`;
}

/** The stud whose pad keeps least. */
export const worstOf = ({ studs }: JointUnderLoad): JointUnderLoad['studs'][number] =>
  studs.reduce((a, b) => (b.pad.low < a.pad.low ? b : a));
