/** Which moves of the solved set-up were done before this sheet was read: told by a tick each, and kept with it. */
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import type { Run } from './run.ts';
import type { Running } from './use-run.ts';

/** A count of units as it stands in the file: without what rounding leaves of a whole number. */
const tidy = (units: number): number => Math.round(units * 1e6) / 1e6;

export function MovesDone({ running, run }: { readonly running: Running; readonly run: Run }) {
  const { key, source } = useCar();
  const asked = useAnswer(`set-up ${key}`, () => ask('setUp', source), 0);
  if (asked.state !== 'answered' || !asked.answer.reached) return null;
  const { moves } = asked.answer;
  if (moves.length === 0) return null;
  const moved = run.moved ?? {};
  const set = (adjuster: string, units: number, done: boolean): void => {
    const { [adjuster]: _, ...others } = moved;
    running.change({ moved: done ? { ...others, [adjuster]: tidy(units) } : others });
  };
  return (
    <fieldset className="moves-done">
      <legend>Moves done since the sheet before, as they were told</legend>
      {moves.map(({ adjuster, units, words }) => (
        <label key={adjuster} className="tick-word">
          <input
            type="checkbox"
            checked={moved[adjuster] === tidy(units)}
            onChange={({ target }) => set(adjuster, units, target.checked)}
          />
          <span>
            <b>{adjuster}</b>: {words}
          </span>
        </label>
      ))}
      <button
        type="button"
        className="word"
        onClick={() =>
          running.change({
            moved: Object.fromEntries(moves.map(({ adjuster, units }) => [adjuster, tidy(units)])),
          })
        }
      >
        All of them were done
      </button>
      <p className="soft">
        What was done otherwise than told is left without a tick, and written in the car file (moved).
      </p>
    </fieldset>
  );
}
