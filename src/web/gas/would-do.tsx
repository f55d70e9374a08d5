/** Where nothing fits: what would let it, one thing at a time, as it is found. */
import type { Finding } from './use-finding.ts';

export function WouldDo({ finding }: { readonly finding: Finding }) {
  const { causes, progress, going, eased, ease, stopEasing } = finding;
  const nothing = causes.length > 0 || (!going && progress?.stands === 'held' && progress.set === undefined);
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
