/** The table for use by hand: what one unit of each adjuster does to every reading. */
import { usePage } from '../state.tsx';
import { useAdjusters } from './use-set-up.ts';
import { amountWords, kindOf } from './words.ts';

/** Kinds that are read at the pads; the rest follows from them. */
const SHOWN = ['weight', 'cross', 'height', 'rake', 'camber', 'toeAtRim', 'caster'];

export function EffectTable() {
  const { speech } = usePage();
  const asked = useAdjusters(true);
  if (asked.state === 'waiting') return <p role="status">Working the table out.</p>;
  if (asked.state === 'failed') return <p role="alert">{asked.message}</p>;
  const { answer } = asked;
  if (!answer.reached) return <p role="alert">{answer.message}</p>;
  const columns = answer.readings
    .map((reading, k) => ({ ...reading, k }))
    .filter(({ id }) => SHOWN.includes(kindOf(id)));
  return (
    // a table wider than the card is moved within it, by the arrow keys too
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by the keyboard
    <section className="wide-table" aria-label="What one unit of each adjuster does" tabIndex={0}>
      <table className="pipes effects">
        <caption className="unseen">What one unit of each adjuster does to every reading</caption>
        <thead>
          <tr>
            <th scope="col">one unit of</th>
            {columns.map(({ id, words }) => (
              <th scope="col" key={id}>
                {words}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {answer.adjusters.map(({ name, unit, effects }) => (
            <tr key={name}>
              <th scope="row">
                {name}, {unit}
              </th>
              {columns.map(({ id, unit: si, k }) => (
                <td key={id} className="number">
                  {amountWords(id, effects[k]!, si, speech, true)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
      {answer.notes.map((words) => (
        <p key={words} className="soft">
          {words}
        </p>
      ))}
    </section>
  );
}
