/** Which wheel, what moves, the rack, and the views: each a word to press. */
import type { Wheel } from '../../questions/figure.ts';
import { MODES, type Mode } from '../place.ts';
import { VIEWS, type View } from '../scene/look.ts';
import { usePage } from '../state.tsx';
import { VIEW_KEYS } from './keys.ts';

const WHEELS: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

const MODE_WORDS: Readonly<Record<Mode, string>> = {
  wheel: 'this wheel',
  heave: 'both wheels',
  roll: 'rolled',
};

/** The four wheels as the car lies, nose up. */
export function WheelChoice() {
  const { place, go } = usePage();
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
        </button>
      ))}
    </fieldset>
  );
}

/** A view along the car is turned to the end that is looked at. */
const viewFor = (view: View, wheel: Wheel): { view?: View } =>
  view === 'front' || view === 'rear' ? { view: wheel.end } : {};

export function ModeChoice() {
  const { place, go } = usePage();
  return (
    <fieldset className="words">
      <legend className="unseen">What moves</legend>
      {MODES.map((mode) => (
        <button key={mode} type="button" aria-pressed={place.mode === mode} onClick={() => go({ mode })}>
          {MODE_WORDS[mode]}
        </button>
      ))}
    </fieldset>
  );
}

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
