/** Fields that stand in rows and columns: distances at each wheel, rows of a gauge that are added and taken out. */
import { useId } from 'react';
import { printedUnit } from '../../units/show.ts';
import { usePage } from '../state.tsx';
import { TypedText, useText } from './field.tsx';
import { type FieldTable, fieldsIn, ROWS, textsWith } from './fields.ts';

interface Props {
  readonly card: string;
  readonly table: FieldTable;
  readonly wrong: Readonly<Record<string, string>>;
}

export function TypedTable({ card, table, wrong }: Props) {
  const id = useId();
  const { place, go, speech } = usePage();
  const { rows, columns, first } = table;
  const [kept, keep] = useText(card, ROWS);
  const unit = printedUnit(table.units[speech === 'mm-N' ? 0 : 1]);
  const typed = (key: string): string => place.asked[`${card}.${key}`] ?? '';
  const last = rows.findLastIndex(({ keys }) => keys.some((key) => typed(key) !== ''));
  const count = /^\d+$/.test(kept) ? Number(kept) : first;
  const shown = first === undefined ? rows : rows.slice(0, Math.max(count ?? 0, last + 1, 1));
  const fields = fieldsIn([table]);
  const takeOut = (k: number): void => {
    // those behind it move up
    const moved = shown
      .slice(k)
      .flatMap(({ keys }, at) =>
        keys.map((key, column) => [key, typed(shown[k + at + 1]?.keys[column] ?? '')] as const),
      );
    go(({ asked }) => ({
      asked: textsWith(card, asked, { ...Object.fromEntries(moved), [ROWS]: String(shown.length - 1) }),
    }));
  };
  return (
    <div className="typed-table" data-named={first === undefined}>
      <p id={id} className="soft">
        {table.caption}, {unit}
      </p>
      <table aria-labelledby={id}>
        <thead>
          <tr>
            {first === undefined && <td />}
            {columns.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
            {first !== undefined && <td />}
          </tr>
        </thead>
        {shown.map((row, k) => (
          <tbody key={row.name}>
            <tr>
              {first === undefined && <th scope="row">{row.name}</th>}
              {row.keys.map((key) => {
                const field = fields.find((each) => each.key === key)!;
                return (
                  <td key={key}>
                    <TypedText
                      id={`${id}-${key}`}
                      card={card}
                      field={field}
                      wrong={wrong[key]}
                      label={`${field.name}, ${unit}`}
                    />
                  </td>
                );
              })}
              {first !== undefined && (
                <td>
                  <button
                    type="button"
                    className="plain-word"
                    aria-label={`take ${row.name} out`}
                    disabled={shown.length === 1}
                    onClick={() => takeOut(k)}
                  >
                    ✕
                  </button>
                </td>
              )}
            </tr>
            {row.keys
              .filter((key) => wrong[key] !== undefined)
              .map((key) => (
                <tr key={`${key} told`}>
                  <td colSpan={columns.length + 1}>
                    <p id={`${id}-${key}-told`} className="told">
                      {wrong[key]}.
                    </p>
                  </td>
                </tr>
              ))}
          </tbody>
        ))}
      </table>
      {first !== undefined && (
        <p className="row">
          <button
            type="button"
            className="word"
            disabled={shown.length === rows.length}
            onClick={() => keep(String(shown.length + 1))}
          >
            Add a row
          </button>
        </p>
      )}
    </div>
  );
}
