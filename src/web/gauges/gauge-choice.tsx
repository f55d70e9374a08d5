/** What the card of a stop at the pads shows: the sheet as it was read, or a reading by hand. */
import type { PadStop } from '../patch/words.ts';
import { gaugeOf } from '../place.ts';
import { usePage } from '../state.tsx';
import { GAUGE_WORDS, GAUGES_AT } from './words.ts';

interface Props {
  readonly stop: PadStop;
  /** Whether a sheet is being read. */
  readonly reading?: boolean;
}

export function GaugeChoice({ stop, reading = false }: Props) {
  const { place, go } = usePage();
  const gauges = GAUGES_AT[stop];
  const chosen = gaugeOf(place);
  if (gauges.length === 0) return null;
  return (
    <fieldset className="words card-words">
      <legend className="unseen">What the card shows</legend>
      {[undefined, ...gauges].map((gauge) => (
        <button
          key={gauge ?? ''}
          type="button"
          aria-pressed={gauge === chosen}
          onClick={() => go({ gauge, figure: undefined })}
        >
          {gauge === undefined ? (reading ? 'reading' : 'as read') : GAUGE_WORDS[gauge].name}
        </button>
      ))}
    </fieldset>
  );
}
