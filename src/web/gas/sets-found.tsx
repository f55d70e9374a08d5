/** The sets that were found, side by side: what the shop weighs of each; one is chosen and drawn. */
import type { OneOfSets } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { usePage } from '../state.tsx';
import type { Finding } from './use-finding.ts';

export function SetsFound({ finding }: { readonly finding: Finding }) {
  const { progress, hand, going, choose } = finding;
  const sets = progress?.sets ?? [];
  if (sets.length < 2) return null;
  const moved = hand !== undefined && !hand.told.asFound;
  return (
    <section>
      <h3>Sets to choose from</h3>
      <table className="pipes sets">
        <caption className="unseen">The sets that were found</caption>
        <thead>
          <tr>
            <th scope="col">set</th>
            <th scope="col">room</th>
            <th scope="col">bends</th>
            <th scope="col">turned</th>
            <th scope="col">welds</th>
          </tr>
        </thead>
        <tbody>
          {sets.map((each) => (
            <SetRow
              key={each.strand}
              of={each}
              chosen={each.strand === progress?.chosen}
              // while the finder is at work the newest is looked at
              disabled={moved || going}
              onChoose={choose}
            />
          ))}
        </tbody>
      </table>
      <p className="soft">
        Room: the least beyond what was asked, cold.
        {sets.some(({ passed }) => passed > 0) && ' ≠ not in rotation round the collector.'}
        {sets.some(({ beaten }) => beaten) && ' ↓ another is better in all of it.'}
        {moved && ' The chosen one is moved by hand; put back as it was found, another can be chosen.'}
      </p>
    </section>
  );
}

interface RowProps {
  readonly of: OneOfSets;
  readonly chosen: boolean;
  readonly disabled: boolean;
  readonly onChoose: (strand: number) => void;
}

function SetRow({ of, chosen, disabled, onChoose }: RowProps) {
  const { speech } = usePage();
  // inches ask for one more place than millimetres
  const more = speech === 'mm-N' ? 0 : 1;
  const { strand, number, spare, passed, bends, turned, welds, beaten } = of;
  return (
    <tr data-lit={chosen}>
      <th scope="row">
        <button
          type="button"
          className="balloon"
          aria-pressed={chosen}
          aria-label={`Set ${number}${passed > 0 ? ', not in rotation' : ''}${beaten ? ', another is better in all of it' : ''}: look at this one`}
          disabled={disabled}
          onClick={() => onChoose(strand)}
        >
          {number}
        </button>
        {passed > 0 && <span aria-hidden="true"> ≠</span>}
        {beaten && <span aria-hidden="true"> ↓</span>}
      </th>
      <td className="number">
        {spare === undefined ? 'nothing near' : spokenAmount(spare, 'm', 1 + more, speech)}
      </td>
      <td className="number">{bends}</td>
      <td className="number">{spokenAmount(turned, 'rad', 0)}</td>
      <td className="number">{welds}</td>
    </tr>
  );
}
