/** Which wheel and which view: each a word to press. */
import type { Wheel } from '../../questions/figure.ts';
import { VIEWS, type View } from '../scene/look.ts';
import { usePage } from '../state.tsx';
import { doubtsAt } from '../stops/doubts.ts';
import { useCar } from './car-file.tsx';
import { VIEW_KEYS } from './keys.ts';

const WHEELS: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

/** The four wheels as the car lies, nose up. */
export function WheelChoice() {
  const { place, go } = usePage();
  const { car } = useCar();
  return (
    <fieldset className="wheels">
      <legend className="unseen">Wheel</legend>
      {WHEELS.map((wheel) => (
        <button
          key={`${wheel.end} ${wheel.side}`}
          type="button"
          aria-pressed={place.wheel.end === wheel.end && place.wheel.side === wheel.side}
          onClick={() =>
            go((from) => ({ wheel, ...viewFor(from.view, wheel), ...(wheel.end === 'rear' && { rack: 0 }) }))
          }
        >
          {wheel.end === 'front' ? 'F' : 'R'}
          {wheel.side === 'left' ? 'L' : 'R'}
          <span className="unseen">, {`${wheel.end} ${wheel.side}`}</span>
          {doubtsAt(car.warnings, wheel).length > 0 && (
            <>
              <span className="look-here" aria-hidden="true" />
              <span className="unseen">, something looks odd</span>
            </>
          )}
        </button>
      ))}
    </fieldset>
  );
}

/** A view along the car is turned to the end that is looked at. */
const viewFor = (view: View, wheel: Wheel): { view?: View } =>
  view === 'front' || view === 'rear' ? { view: wheel.end } : {};

export function ViewChoice() {
  const { place, go } = usePage();
  return (
    <fieldset className="words views">
      <legend className="unseen">View</legend>
      {VIEWS.map((view) => (
        <button
          key={view}
          type="button"
          aria-pressed={place.view === view}
          aria-keyshortcuts={VIEW_KEYS[view]}
          onClick={() => go({ view })}
        >
          {view} <kbd>{VIEW_KEYS[view].toUpperCase()}</kbd>
        </button>
      ))}
    </fieldset>
  );
}
