/** Where nothing fits: what would let it, one thing at a time, as it is found. */
import type { EasedTold } from './protocol.ts';

interface Props {
  /** Nothing was found, and nothing is looked for. */
  readonly nothing: boolean;
  readonly eased: EasedTold | undefined;
  readonly ease: () => void;
  readonly stopEasing: () => void;
}

export function WouldDo({ nothing, eased, ease, stopEasing }: Props) {
  if (!nothing && eased === undefined) return null;
  return (
    <section className="would-do">
      <h3>What would do</h3>
      {eased === undefined && (
        <p>
          <button type="button" className="word" onClick={ease}>
            Look for the least change that lets it fit
          </button>
        </p>
      )}
      {eased?.of !== undefined && <p className="soft">Of the {eased.of}, the other parts where they lie.</p>}
      {eased?.eased.map(({ what, words, by }) => (
        <p key={what} className={by === undefined ? 'soft' : 'note'}>
          {words}
        </p>
      ))}
      {eased?.now !== undefined && (
        <>
          <p role="status">Looking: {eased.now}.</p>
          <p>
            <button type="button" className="word" onClick={stopEasing}>
              That is enough
            </button>
          </p>
        </>
      )}
      {eased !== undefined && eased.now === undefined && (
        <p className="soft">
          One thing is changed at a time; each such set was checked. That less would not do is not proved.
          Length and diameter are the engine builder’s to change.
        </p>
      )}
    </section>
  );
}
