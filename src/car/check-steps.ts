/**
 * Slips in the steps of a primary's tube: places that do not rise, a step beyond the pipe's end, one that steps down, a
 * tube too large for the collector, tubes that do not go over one another, bends that the rack has not in a size.
 */
import type { Problem } from '../measured/problem.ts';
import type { ExhaustForm } from './check-exhaust.ts';

type StepForm = NonNullable<ExhaustForm['tube']['steps']>[number];

/** Where the file leaves it open (common practice, no source). Metres. */
export const USUAL_STEP = { within: 5e-3, lap: 10e-3, swaged: 20e-3 } as const;

/** What is stamped on a tube and what a vernier reads on it may differ so much. */
const SAME_SIZE = 0.3e-3;
/** Play of a tube in another that a weld still bridges, and what a tube is opened by hand (common practice, no source). */
const PLAY = 1e-3;
const OPENED = 0.6e-3;

export const joinOf = ({ join = 'slipped over', joinLength }: StepForm) => ({
  kind: join,
  length: joinLength ?? (join === 'swaged' ? USUAL_STEP.swaged : USUAL_STEP.lap),
});

/** From flange to collector as the file has it, its spreads left out. */
function pipeLength({ given }: ExhaustForm): number {
  const before =
    given.from === 'flange'
      ? 0
      : (given.flange?.value ?? 0) + (given.from === 'valve seat' ? (given.portLength?.value ?? 0) : 0);
  return given.length - before - (given.to === 'merge point' ? (given.mergeDepth?.value ?? 0) : 0);
}

export function checkSteps(exhaust: ExhaustForm): readonly Problem[] {
  const { tube, bends } = exhaust;
  const long = pipeLength(exhaust);
  let before = { outside: tube.outside.value, wall: tube.wall.value };
  let ends = 0;
  return (tube.steps ?? []).flatMap((step, k) => {
    const problems: Problem[] = [];
    const tell = (
      code: string,
      at: string,
      message: string,
      remedy: string,
      weight: Problem['weight'] = 'error',
    ): void => {
      problems.push({
        code: `exhaust/${code}`,
        path: `exhaust.tube.steps.${k}.${at}`,
        message,
        remedy,
        weight,
      });
    };
    const outside = step.outside.value;
    const wall = step.wall.value;
    const within = step.within ?? USUAL_STEP.within;
    const { kind, length } = joinOf(step);
    const lapped = kind === 'slipped over';
    const begins = step.from - within - (lapped ? length : 0);
    if (begins < ends) {
      tell(
        'step-order',
        'from',
        k === 0
          ? `The step at ${mm(step.from)}: its join may begin before the flange.`
          : `The step at ${mm(step.from)}: its join may begin at ${mm(begins)}, and the one before it end at ${mm(ends)}.`,
        'Write steps in the order of the flow, each with room for its join and what it may be off.',
      );
    }
    ends = step.from + within + (lapped ? 0 : length);
    if (ends + bends.atCollector > long) {
      tell(
        'step-beyond',
        'from',
        `The step at ${mm(step.from)} may end at ${mm(ends)}; from flange to collector the pipe is ${mm(long)}, and ${mm(bends.atCollector)} of it are the straight at the collector.`,
        'It counts from the flange along the middle, not from the valve seat.',
      );
    }
    if (outside < before.outside) {
      tell(
        'step-down',
        'outside',
        `The tube steps down here, from ${mm(before.outside)} to ${mm(outside)}.`,
        'Primaries step up towards the collector; look whether two are swapped.',
        'warning',
      );
    }
    if (wall >= outside / 4)
      tell(
        'wall',
        'wall',
        `A wall of ${mm(wall)} leaves little of a tube of ${mm(outside)}.`,
        'Measure the wall at a clean cut end.',
      );
    if (kind === 'reducer' && step.joinLength === undefined)
      tell(
        'step-reducer',
        'joinLength',
        'A reducer needs its length.',
        'Write joinLength: rule along its middle.',
      );
    if (lapped) {
      const [inner, outer] =
        outside >= before.outside
          ? [before.outside, outside - 2 * wall]
          : [outside, before.outside - 2 * before.wall];
      const play = outer - inner;
      if (play > PLAY || play < -OPENED) {
        tell(
          'step-fit',
          'outside',
          play > 0
            ? `Slipped over, the larger tube has ${mm(play)} of play on the smaller.`
            : `The larger tube's bore of ${mm(outer)} does not go over the smaller's ${mm(inner)}.`,
          play > 0
            ? 'A swaged end or a reducer would do, or a tube of a size between.'
            : 'A swaged end or a reducer would do, or a larger tube.',
          'warning',
        );
      }
    }
    (step.radii ?? bends.radii).forEach((radius, r) => {
      const at = step.radii === undefined ? 'outside' : `radii.${r}`;
      if (radius <= outside / 2)
        tell(
          'bend-too-tight',
          at,
          `A bend of centreline radius ${mm(radius)} in a tube of ${mm(outside)} folds into itself.`,
          'Write the radii of this size under the step.',
        );
      else if (!onRack(exhaust, outside, radius))
        tell(
          'step-radius',
          at,
          `The rack has no bend of radius ${mm(radius)} in tube of ${mm(outside)}.`,
          'Write outside beside each stock bend of this size, or the radii that it is had in under the step.',
          'warning',
        );
    });
    before = { outside, wall };
    return problems;
  });
}

/** Whether the rack, where one is told, has a bend of a radius in a size. */
function onRack({ rack, tube }: ExhaustForm, outside: number, radius: number): boolean {
  if (rack === undefined) return true;
  return rack.bends.some(
    (each) =>
      Math.abs(each.radius - radius) < 1e-6 &&
      Math.abs((each.outside ?? tube.outside.value) - outside) <= SAME_SIZE,
  );
}

const mm = (metres: number): string => `${Number((1000 * metres).toFixed(1))} mm`;
