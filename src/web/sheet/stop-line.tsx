/** The line along the foot of the sheet: four ways as tabs, and the stops of the chosen way in their order. */
import { useEffect } from 'react';
import { LOAD_PATH, type Stop } from '../../questions/figure.ts';
import type { Speech } from '../../units/show.ts';
import { WAYS } from '../place.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { STOPS, WAY_WORDS } from '../stops/words.ts';
import type { CornerAnswer } from './use-corner.ts';

export function StopLine({ corner }: { corner: CornerAnswer }) {
  const { place, go, say, speech } = usePage();
  const toCome = WAY_WORDS[place.way].toCome;

  // biome-ignore lint/correctness/useExhaustiveDependencies: said when one arrives at a stop, not while a wheel moves
  useEffect(() => {
    if (place.way === 'load') say(sentenceOf(place.stop, corner, speech));
  }, [place.way, place.stop, place.wheel]);

  return (
    <nav className="line" aria-label="Ways and stops">
      <div className="ways" role="tablist" aria-label="Ways through the car">
        {WAYS.map((way) => (
          <button
            key={way}
            type="button"
            role="tab"
            aria-selected={place.way === way}
            className="way"
            data-way={way}
            onClick={() => go({ way, card: 'figures' })}
          >
            {WAY_WORDS[way].name}
          </button>
        ))}
      </div>
      {toCome === undefined ? (
        <ol className="stops">
          {LOAD_PATH.map((stop) => (
            <li key={stop}>
              <button
                type="button"
                className="stop"
                data-stop={stop}
                data-mark={markOf(stop, corner)}
                aria-current={place.stop === stop ? 'step' : undefined}
                onClick={() => go({ stop, card: place.card === 'ask' ? 'figures' : place.card })}
              >
                <span className="dot" aria-hidden="true" />
                <span className="stop-name">{STOPS[stop].name}</span>
                {STOPS[stop].toCome && <span className="stop-mark">later</span>}
                {markOf(stop, corner) === 'amiss' && <span className="stop-mark">look here</span>}
              </button>
            </li>
          ))}
        </ol>
      ) : (
        <ol className="stops to-come" aria-label={`Stops to come of the ${WAY_WORDS[place.way].name}`}>
          {toCome.stops.map((stop) => (
            <li key={stop} className="stop" data-mark="to-come">
              <span className="dot" aria-hidden="true" />
              <span className="stop-name">{stop}</span>
            </li>
          ))}
        </ol>
      )}
    </nav>
  );
}

/** A shape as well as a word: round where all is well, a square of dashes to come, a diamond to look at. */
function markOf(stop: Stop, corner: CornerAnswer): 'well' | 'to-come' | 'amiss' {
  if (STOPS[stop].toCome !== undefined) return 'to-come';
  if (!corner.reached) return 'amiss';
  return corner.figures.some(
    (figure) =>
      figure.stop === stop &&
      figure.rank < 3 &&
      figure.say !== undefined &&
      figure.value < 0 &&
      /margin|left/i.test(figure.id),
  )
    ? 'amiss'
    : 'well';
}

function sentenceOf(stop: Stop, corner: CornerAnswer, speech: Speech): string {
  const words = STOPS[stop];
  if (words.toCome !== undefined) return `${words.title}. ${words.toCome[0]}`;
  if (!corner.reached) return `${words.title}. ${corner.message}`;
  const told = corner.figures
    .filter((figure) => figure.stop === stop && figure.rank === 1)
    .map((figure) => {
      const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
      return `${figure.means} ${shown.text} ${shown.unit}`.trim();
    });
  return `${words.title}, ${corner.wheel.end} ${corner.wheel.side}. ${told.join('; ')}.`;
}
