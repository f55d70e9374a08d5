/** Fields of a stop of the day out: each amount typed with its unit, kept in the address. */
import { useId, useState } from 'react';
import { type DayName, type DayRead, settledDoings } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { DAY_FIELDS, type DayField, type DayFields } from './words.ts';

interface Props {
  readonly name: DayName;
  readonly read: DayRead;
}

export function DayForm({ name, read }: Props) {
  return (
    <form className="question day-form" onSubmit={(event) => event.preventDefault()}>
      {DAY_FIELDS[name].map((group) => (
        <Group key={group.title ?? ''} name={name} read={read} group={group} />
      ))}
    </form>
  );
}

function Group({ name, read, group }: Props & { readonly group: DayFields }) {
  const { place } = usePage();
  const { title, fields } = group;
  // what was typed is not hidden when the page is opened again
  const [open, setOpen] = useState(fields.some(({ key }) => `${name}.${key}` in place.asked));
  const inside = fields.map((field) => <Field key={field.key} name={name} read={read} field={field} />);
  if (title === undefined) return <>{inside}</>;
  return (
    <details open={open} onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary className="word">{title}</summary>
      <div className="day-group">{inside}</div>
    </details>
  );
}

function Field({ name, read, field }: Props & { readonly field: DayField }) {
  const id = useId();
  const { place, go } = usePage();
  const { car } = useCar();
  const { key, of } = field;
  const text = place.asked[`${name}.${key}`] ?? '';
  const wrong = read.wrong[key];
  const type = (typed: string): void =>
    go(({ asked: { [`${name}.${key}`]: _, ...rest } }) => ({
      asked: typed === '' ? rest : { ...rest, [`${name}.${key}`]: typed },
    }));
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
  const choices = of === 'cases' ? settledDoings(car).map((each) => each.name) : of;
  return (
    <div className="asked" data-long={field.long === true}>
      <label htmlFor={id}>
        {field.name}
        {field.usual !== undefined && choices === undefined && (
          <span className="soft"> (else {field.usual})</span>
        )}
      </label>
      {choices === undefined ? (
        <input
          id={id}
          className="number"
          autoComplete="off"
          value={text}
          title={field.such === undefined ? undefined : `such as ${field.such}`}
          aria-invalid={wrong !== undefined}
          aria-describedby={wrong === undefined ? undefined : `${id} told`}
          onChange={({ target }) => type(target.value)}
        />
      ) : (
        <select id={id} value={text} onChange={({ target }) => type(target.value)}>
          <option value="">{field.usual?.replaceAll('-', ' ')}</option>
          {choices
            .filter((each) => each !== field.usual)
            .map((each) => (
              <option key={each} value={each}>
                {each.replaceAll('-', ' ')}
              </option>
            ))}
        </select>
      )}
      {wrong !== undefined && (
        <p id={`${id} told`} className="told">
          {wrong}.
        </p>
      )}
    </div>
  );
}
