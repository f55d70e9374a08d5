/** Reads the steps of a tube in `primaries-problem/1`: an optional list under `tube`. */
import { type RouteStep, STEP_JOINS } from './problem.ts';
import type { Reader } from './reader.ts';
import { MOST_STEPS } from './shape.ts';
import { reachOf } from './steps.ts';

/** A cone shorter than this is none, mm. */
const SHORTEST_REDUCER = 1;

export function readSteps(r: Reader, of: unknown, target: number): readonly RouteStep[] {
  const list = r.list(of, '$.tube.steps');
  if (list.length > MOST_STEPS)
    r.wrong('$.tube.steps', `${list.length} steps; no more than ${MOST_STEPS} would do.`);
  const steps = list.map((each, k) => readStep(r, each, `$.tube.steps[${k}]`));
  // with something wrong already, what hangs on the figures would only be told twice
  if (r.problems.length > 0) return steps;
  let free = 0;
  steps.forEach((step, k) => {
    const at = `$.tube.steps[${k}].from`;
    const { before, behind } = reachOf(step);
    const begins = step.from - step.within - before;
    if (begins < free)
      r.wrong(
        at,
        k === 0
          ? `its join may begin ${begins.toFixed(1)} mm from the flange, before the pipe does.`
          : `its join may begin ${begins.toFixed(1)} mm from the flange, and the one before it end at ${free.toFixed(1)} mm.`,
        'Steps stand one behind the other, each with its join and what it may be off.',
      );
    free = step.from + step.within + behind;
  });
  if (steps.length > 0 && free >= target)
    r.wrong(
      `$.tube.steps[${steps.length - 1}].from`,
      `its join may end ${free.toFixed(1)} mm from the flange; the pipe ends at ${target} mm.`,
    );
  return steps;
}

function readStep(r: Reader, of: unknown, at: string): RouteStep {
  const step = r.object(of, at);
  const od = r.number(step.od, `${at}.od`, 10, 150);
  const join = r.object(step.join ?? { kind: 'slipped over', length: 0 }, `${at}.join`);
  const kind = r.text(join.kind, `${at}.join.kind`, STEP_JOINS) as RouteStep['join']['kind'];
  const radii =
    step.radii === undefined
      ? undefined
      : r.list(step.radii, `${at}.radii`).map((each, k) => r.number(each, `${at}.radii[${k}]`, od / 2, 2000));
  if (radii?.length === 0)
    r.wrong(`${at}.radii`, 'the list is empty; left out, the radii of the problem count for this size too.');
  return {
    from: r.number(step.from, `${at}.from`, 0, 5000),
    within: step.within === undefined ? 0 : r.number(step.within, `${at}.within`, 0, 500),
    od,
    wall: r.number(step.wall, `${at}.wall`, 0.2, od / 2),
    join: {
      kind,
      length: r.number(join.length, `${at}.join.length`, kind === 'reducer' ? SHORTEST_REDUCER : 0, 500),
    },
    ...(radii === undefined ? {} : { radii }),
  };
}
