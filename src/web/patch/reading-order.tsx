/** The order of the work beside the step: where one is, and a way back to what was passed over. */
import { GROUPS, type Step } from './steps.ts';

interface Props {
  readonly steps: readonly Step[];
  readonly at: number;
  readonly go: (to: number) => void;
}

export function ReadingOrder({ steps, at, go }: Props) {
  const here = steps[at]?.group;
  return (
    <ol className="reading-order" aria-label="Order of the work">
      {GROUPS.filter((group) => steps.some((each) => each.group === group)).map((group) => {
        const first = steps.findIndex((each) => each.group === group);
        const last = steps.findLastIndex((each) => each.group === group);
        return (
          <li key={group}>
            <button
              type="button"
              data-done={last < at}
              aria-current={group === here ? 'step' : undefined}
              onClick={() => go(first)}
            >
              {group}
            </button>
          </li>
        );
      })}
      <li>
        <button
          type="button"
          aria-current={here === undefined ? 'step' : undefined}
          onClick={() => go(steps.length)}
        >
          sheet
        </button>
      </li>
    </ol>
  );
}
