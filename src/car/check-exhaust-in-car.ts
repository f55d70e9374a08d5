/** Slips in what the car file says of the exhaust in the car: studs that cannot hold a flange, a hot pipe colder than cold. */
import { hexagonOf } from '../materials/spanner.ts';
import { threadNamed, threadsLike } from '../materials/thread.ts';
import type { Problem } from '../measured/problem.ts';
import type { ExhaustForm } from './check-exhaust.ts';

/** How warm a car is when it is measured, where the file does not say, K. */
export const USUAL_COLD = 293.15;

const tell = (code: string, path: string, message: string, remedy: string): Problem => ({
  code: `exhaust/${code}`,
  path: `exhaust.${path}`,
  message,
  remedy,
  weight: 'error',
});

export const checkExhaustInCar = (exhaust: ExhaustForm): readonly Problem[] => [
  ...checkStud(exhaust),
  ...checkHot(exhaust),
];

function checkStud({ flange, given }: ExhaustForm): Problem[] {
  const stud = flange?.stud;
  if (flange === undefined || stud === undefined) return [];
  const thread = threadNamed(stud.thread);
  if (thread === undefined) {
    return [
      tell(
        'stud-thread',
        'flange.stud.thread',
        `There is no standard thread "${stud.thread}".`,
        `Nearest: ${threadsLike(stud.thread).join(', ')}.`,
      ),
    ];
  }
  const problems: Problem[] = [];
  flange.bolts.forEach(({ hole }, k) => {
    if (hole.value >= thread.major) return;
    problems.push(
      tell(
        'stud-hole',
        `flange.bolts.${k}.hole`,
        `A stud ${thread.name} does not go through a hole of ${mm(hole.value)}.`,
        'Measure hole and stud again.',
      ),
    );
  });
  const hexagon = hexagonOf(thread);
  const flats = stud.flats?.value ?? hexagon?.flats;
  const height = stud.nutHeight?.value ?? hexagon?.height;
  if (flats === undefined || height === undefined) {
    problems.push(
      tell(
        'stud-thread',
        'flange.stud.thread',
        `The table has no nut for ${thread.name}.`,
        'Measure the nut: write flats and nutHeight.',
      ),
    );
    return problems;
  }
  const plate = given.flange?.value ?? 0;
  if (stud.standsOut.value < plate + height) {
    problems.push(
      tell(
        'stud-short',
        'flange.stud.standsOut',
        `A stud that stands out ${mm(stud.standsOut.value)} does not reach through a flange of ${mm(plate)} and a nut of ${mm(height)}.`,
        'It counts from the face of the head, flange off.',
      ),
    );
  }
  return problems;
}

function checkHot({ hot }: ExhaustForm): Problem[] {
  if (hot === undefined) return [];
  const cold = hot.cold ?? USUAL_COLD;
  return hot.pipe > cold
    ? []
    : [
        tell(
          'hot-colder',
          'hot.pipe',
          'The hot pipe is no hotter than the cold one.',
          'pipe is the mean heat of its metal in use, cold that of the day it was measured.',
        ),
      ];
}

const mm = (metres: number): string => `${Number((1000 * metres).toFixed(1))} mm`;
