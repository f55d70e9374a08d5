/** The rows of a measured curve: as they stand, or with a place for each new figure. */
import type { Draft } from './draft.ts';
import type { TableOf } from './fields.ts';
import { unitWord } from './stamp.ts';
import { isOut, placeOf, rowCount } from './table-changes.ts';

interface Props {
  readonly field: TableOf;
  readonly draft?: Draft;
  readonly onType?: (place: string, text: string) => void;
  readonly onTakeOut?: (row: number) => void;
}

export function TableRows({ field, draft, onType, onTakeOut }: Props) {
  const { columns, rows, means } = field;
  const count = rowCount(field, draft);
  if (count === 0) return <p className="soft">not in the file</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
    <section className="wide-table" tabIndex={0} aria-label={means}>
      <table className="rungs curve-rows">
        <thead>
          <tr>
            {columns.map(({ key, notes }) => (
              <th key={key} scope="col">
                {key}, {unitWord(notes.unit)}
              </th>
            ))}
            {onTakeOut !== undefined && (
              <th scope="col">
                <span className="unseen">take the row out</span>
              </th>
            )}
          </tr>
        </thead>
        <tbody>
          {Array.from({ length: count }, (_, row) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is known by its place alone
            <tr key={row} className={isOut(draft, row) ? 'out' : undefined}>
              {columns.map(({ key }) => (
                <td key={key}>
                  <span className="number">{rows[row]?.[key]?.text}</span>
                  {onType !== undefined && !isOut(draft, row) && (
                    <input
                      className="number"
                      inputMode="decimal"
                      aria-label={`row ${row + 1}, ${key}`}
                      value={draft?.[placeOf(row, key)] ?? ''}
                      onChange={(event) => onType(placeOf(row, key), event.target.value)}
                    />
                  )}
                </td>
              ))}
              {onTakeOut !== undefined && (
                <td>
                  <button
                    type="button"
                    className="plain-word"
                    aria-pressed={isOut(draft, row)}
                    aria-label={`take row ${row + 1} out`}
                    onClick={() => onTakeOut(row)}
                  >
                    {isOut(draft, row) ? 'leave in' : 'out'}
                  </button>
                </td>
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
