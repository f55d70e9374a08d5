/** One field with its name: ticked, chosen or typed. */
import { useId, useState } from 'react';
import { settledDoings, sheetNames, withoutUnit, withUnit } from '../../questions/index.ts';
import { printedUnit } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { type Field, textsWith } from './fields.ts';

/** The text of a field in the address, and how it is changed. */
export function useText(card: string, key: string): readonly [text: string, type: (typed: string) => void] {
  const { place, go } = usePage();
  return [
    place.asked[`${card}.${key}`] ?? '',
    (typed) => go(({ asked }) => ({ asked: textsWith(card, asked, { [key]: typed }) })),
  ];
}

interface Props {
  readonly card: string;
  readonly field: Field;
  readonly wrong: string | undefined;
}

export function ListField({ card, field, wrong }: Props) {
  const id = useId();
  const { speech } = usePage();
  const { car } = useCar();
  const { key, of, units } = field;
  const [text, type] = useText(card, key);
  if (of === 'tick') {
    return (
      <label className="tick-word">
        <input
          type="checkbox"
          checked={text === 'yes'}
          onChange={({ target }) => type(target.checked ? 'yes' : '')}
        />
        {field.name}
      </label>
    );
  }
  const unit = units?.[speech === 'mm-N' ? 0 : 1];
  const choices =
    of === 'cases' ? settledDoings(car).map((each) => each.name) : of === 'sheets' ? sheetNames(car) : of;
  // names of cases are words with dashes; those of sheets are the workshop's own
  const said = (name: string | undefined) => (of === 'sheets' ? name : name?.replaceAll('-', ' '));
  return (
    <div className="asked" data-long={field.long === true}>
      <label htmlFor={id}>
        {field.name}
        {unit !== undefined && `, ${printedUnit(unit)}`}
        {field.usual !== undefined && choices === undefined && (
          <span className="soft"> (else {field.usual})</span>
        )}
      </label>
      {choices === undefined ? (
        <TypedText id={id} card={card} field={field} wrong={wrong} />
      ) : (
        <select id={id} value={text} onChange={({ target }) => type(target.value)}>
          <option value="">{said(field.usual)}</option>
          {choices
            .filter((each) => each !== field.usual)
            .map((each) => (
              <option key={each} value={each}>
                {said(each)}
              </option>
            ))}
        </select>
      )}
      {wrong !== undefined && (
        <p id={`${id}-told`} className="told">
          {wrong}.
        </p>
      )}
    </div>
  );
}

interface TypedProps extends Props {
  readonly id: string;
  /** Where its name stands on the page for the eye alone. */
  readonly label?: string;
}

/** What is typed. A bare number is taken in the unit that stands beside it; what is in another one shows its own. */
export function TypedText({ id, card, field, wrong, label }: TypedProps) {
  const { speech } = usePage();
  const [text, type] = useText(card, field.key);
  const [draft, setDraft] = useState<string>();
  const unit = field.units?.[speech === 'mm-N' ? 0 : 1];
  const take = (typed: string): void => {
    if (unit === undefined) {
      type(typed);
      return;
    }
    // a phone's number keys have a comma where its owner's language has one
    const own = typed.replace(',', '.');
    setDraft(own);
    type(own.trim() === '' ? '' : withUnit(own, unit));
  };
  return (
    <input
      id={id}
      className="number"
      autoComplete="off"
      inputMode={unit === undefined || field.signed === true ? 'text' : 'decimal'}
      value={draft ?? (unit === undefined ? text : withoutUnit(text, unit))}
      aria-label={label}
      title={field.such === undefined ? undefined : `such as ${field.such}`}
      aria-invalid={wrong !== undefined}
      aria-describedby={wrong === undefined ? undefined : `${id}-told`}
      onChange={({ target }) => take(target.value)}
      onBlur={() => setDraft(undefined)}
    />
  );
}
