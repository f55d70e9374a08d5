/** A short list of what a proposal comes to, spoken in the workshop's units. */
import { unitAfter } from '../../../units/show.ts';
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';

export type Fact = readonly [name: string, value: number | string | undefined, unit?: string];

export function Facts({ facts }: { facts: readonly Fact[] }) {
  const { speech } = usePage();
  return (
    <dl className="facts">
      {facts.map(([name, value, unit = '1']) => {
        if (value === undefined || (typeof value === 'number' && !Number.isFinite(value))) return null;
        const shown = typeof value === 'number' ? spoken(value, unit, speech) : { text: value, unit: '' };
        return (
          <div key={name}>
            <dt>{name}</dt>
            <dd>
              <b className="number">{shown.text}</b>
              {unitAfter(shown.unit)}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
