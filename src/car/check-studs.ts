/** Slips in the studs of a flange: no standard thread, too thick for their holes, too short for flange and nut. */
import { hexagonOf } from '../materials/spanner.ts';
import { threadNamed, threadsLike } from '../materials/thread.ts';
import type { Problem } from '../measured/problem.ts';
import type { ExhaustForm } from './check-exhaust.ts';

const tell = (code: string, path: string, message: string, remedy: string): Problem => ({
  code: `exhaust/${code}`,
  path: `exhaust.${path}`,
  message,
  remedy,
  weight: 'error',
});

/** Whether the studs of a flange can hold it. */
export function checkStuds({ flange, given }: ExhaustForm): readonly Problem[] {
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

const mm = (metres: number): string => `${Number((1000 * metres).toFixed(1))} mm`;
