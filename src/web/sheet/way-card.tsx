/** The card of a way that is not worked out yet: what will come, and what it will need. */
import type { Way } from '../place.ts';
import { WAY_WORDS } from '../stops/words.ts';

export function WayCard({ way }: { way: Way }) {
  const { name, toCome } = WAY_WORDS[way];
  return (
    <aside className="card" id="card" aria-label={name} tabIndex={-1}>
      <h2 className="way-title">{name}</h2>
      <p>{toCome?.will}</p>
      <p>{toCome?.needs}</p>
      <p className="soft">
        The car file will hold these beside what is there already. Nothing measured now is lost.
      </p>
    </aside>
  );
}
