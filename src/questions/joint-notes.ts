/** What is said of a joint beside its figures: cold against warm, plates, and where the method ends. */
import type { JointName } from '../loadpath/joint/joint-of-car.ts';
import type { JointUnderLoad } from '../loadpath/joint/joint-under.ts';
import type { WorkedSort } from '../loadpath/joint/stud-of-car.ts';
import { show, spokenFigures } from '../units/show.ts';

const N = (value: number): string => spokenFigures(value, 'N');

/** Said once under every joint, on page, command line and paper. */
export const SCOPE_NOTE =
  'Where this joint leaves VDI 2230: that guideline treats one bolt between parts stiff round it. Here several studs share one face, both bodies are taken as flat and stiff, and prying, the bend of flange or bulkhead, and bending of the stud itself are not in it.';

/** Cold and warm side by side, and why a nut is only turned cold. */
export function warmNotes(of: JointUnderLoad): string[] {
  if (of.warm === 0) return [];
  const sorts = [...new Set(of.studs.map(({ sort }) => sort))];
  const names = (sort: WorkedSort): string =>
    of.studs.flatMap((stud) => (stud.sort === sort ? [stud.name] : [])).join(', ');
  const rise = `${Math.round(of.warm)} K warmer`;
  const told = sorts.map((sort) => {
    const middle = `${N(sort.preload.middle)} cold, ${N(sort.hot.middle)} warm`;
    if (sort.heat >= 0) {
      return `${rise}, ${names(sort)} gain ${N(sort.heat)} of preload (${middle}): the parts grow more than the stud. Tighten cold only: set warm to the same figure, ${N(Math.max(0, sort.preload.low - sort.heat))} is left at the low end once all is cold.`;
    }
    return `${rise}, ${names(sort)} lose ${N(-sort.heat)} of preload (${middle}): the stud grows more than the parts. Tighten cold only, and judge the joint warm.`;
  });
  const least = (warmth: 'cold' | 'hot') =>
    of.studs.reduce((a, b) => (b.pads[warmth].low < a.pads[warmth].low ? b : a));
  const [cold, hot] = [least('cold'), least('hot')];
  const [c, h] = [cold.pads.cold.low, hot.pads.hot.low];
  const lower = h < c ? 'warm' : 'cold';
  return [
    ...told,
    `Least on a pad at the low end: cold ${N(c)} (${cold.name}), warm ${N(h)} (${hot.name}). The lower of the two is ${lower}.`,
  ];
}

/** Plates that carry, and those that the warm engine bends. */
export function plateNotes({ plates }: JointUnderLoad): string[] {
  return plates.flatMap(({ name, least, most, bent }) => [
    N(least) === N(most)
      ? `${name} carries ${N(most)} along the car, pull positive.`
      : `${name} carries between ${N(least)} and ${N(most)} along the car, pull positive.`,
    ...(bent === undefined || bent.growth === 0
      ? []
      : [
          `The warm engine bends ${name} by ${show(bent.growth, 'm').text} mm, ${Math.round(bent.stress / 1e6)} MPa at its fixings. That is why such plates are thin: a stiff one would be held by the block and work its studs.`,
        ]),
  ]);
}

/** A stud that is set by its stretch, with nothing said of what is on its thread. */
export const dryNotes = (of: JointUnderLoad): string[] =>
  of.studs.some(({ sort }) => !sort.twistKnown)
    ? [
        'A stud here is set by stretch or angle and has no lubricant in the file: what the thread’s friction twists it by is not in its stress over yield.',
      ]
    : [];

/** Where the torque of the crank is, when the car is driven. */
export function crankNote(joint: JointName, crank: number | undefined): string {
  if (joint === 'engineToTub') {
    return 'The torque of the crank is not in it: it acts at the face between case and engine, and goes into the engine again before the tub.';
  }
  if (crank === undefined) {
    return 'The torque of the crank is not in it: the file does not tell it. Write under engine which way it turns, and its turns for one of the wheel or its torque.';
  }
  const down = crank < 0 ? 'left' : 'right';
  return `The torque of the crank is in it: ${spokenFigures(Math.abs(crank), 'N m')}, which presses the case down on its ${down}. It goes into the engine again before the tub.`;
}
