/** The order of the work beside the step: where one is, and a way back to what was passed over. */
import { useEffect, useRef } from 'react';
import { GROUPS, type Step } from './steps.ts';

interface Props {
  readonly steps: readonly Step[];
  readonly at: number;
  readonly go: (to: number) => void;
}

export function ReadingOrder({ steps, at, go }: Props) {
  const here = steps[at]?.group;
  const line = useRef<HTMLOListElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the line is longer than the card: where one stands is brought into it
  useEffect(() => {
    const now = line.current?.querySelector<HTMLElement>('[aria-current]')?.closest('li');
    if (now) line.current!.scrollLeft = now.offsetLeft - (line.current!.clientWidth - now.offsetWidth) / 2;
  }, [here]);
  return (
    <ol className="reading-order" aria-label="Order of the work" ref={line}>
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
