/** What a set must hold in the car: asked of the finder, or only looked at afterwards. */
import { HOLD_WORDS, holdableOf } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import type { Finding } from './use-finding.ts';

export function HoldChoice({ finding }: { readonly finding: Finding }) {
  const { hold, onHold, going } = finding;
  const { car } = useCar();
  const { place } = usePage();
  return (
    <fieldset className="hold-choice" disabled={going}>
      <legend>A set must hold</legend>
      {holdableOf(car, place.bank).map((kind) => (
        <label key={kind} className="tick-word">
          <input
            type="checkbox"
            checked={hold.includes(kind)}
            onChange={(event) => onHold(kind, event.target.checked)}
          />
          {HOLD_WORDS[kind]}
        </label>
      ))}
    </fieldset>
  );
}
