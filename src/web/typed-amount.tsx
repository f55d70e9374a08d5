/** An amount by typing: a figure in the unit beside it, or with a unit of its own. */
import { useId, useState } from 'react';
import { readAmount } from '../units/read.ts';
import { plain, printedUnit } from '../units/show.ts';
import { fromSI } from '../units/unit.ts';

interface Props {
  readonly name: string;
  /** SI; undefined where nothing is given. */
  readonly value: number | undefined;
  readonly si: string;
  /** In which it is shown and typed without a unit. */
  readonly unit: string;
  readonly digits: number;
  readonly onTake: (value: number) => void;
  /** What emptying it does; left out, it stays as it was. */
  readonly onEmpty?: () => void;
}

export function TypedAmount({ name, value, si, unit, digits, onTake, onEmpty }: Props) {
  const [draft, setDraft] = useState<string>();
  const [wrong, setWrong] = useState<string>();
  const id = useId();
  const spoken = value === undefined ? '' : plain(fromSI(value, unit), digits);
  const word = printedUnit(unit);
  const leave = (): void => {
    setDraft(undefined);
    setWrong(undefined);
  };
  const take = (text: string): void => {
    const typed = text.trim();
    if (typed === '' || typed === spoken) {
      if (typed === '' && value !== undefined) onEmpty?.();
      leave();
      return;
    }
    const read = readAmount(/^[-+−]?[\d.]+$/.test(typed) ? `${typed} ${word}` : typed, si);
    if (!read.ok) {
      setWrong(read.why);
      return;
    }
    leave();
    onTake(read.is.value);
  };
  return (
    <span className="typed">
      <input
        type="text"
        inputMode="decimal"
        aria-label={word === '' ? name : `${name}, ${word}`}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : id}
        value={draft ?? spoken}
        onChange={(event) => setDraft(event.target.value)}
        onBlur={() => {
          if (draft !== undefined) take(draft);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take(draft ?? spoken);
          if (event.key === 'Escape' && draft !== undefined) {
            event.stopPropagation();
            leave();
          }
        }}
      />
      <span aria-hidden="true">{word}</span>
      {wrong !== undefined && (
        <span id={id} role="alert" className="typed-told">
          {wrong}.
        </span>
      )}
    </span>
  );
}
