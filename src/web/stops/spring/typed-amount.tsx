/** Fields of a question that take a figure with its unit, and say at once when it cannot be read. */
import { useId } from 'react';
import { readAmount } from '../../../units/read.ts';

export interface AmountText {
  readonly name: string;
  readonly si: string;
  /** Empty: not asked. */
  readonly text: string;
}

export type AmountTexts = Readonly<Record<string, AmountText>>;

/** The values in SI; undefined where one that is filled in cannot be read. */
export function readAll<T extends AmountTexts>(texts: T): Partial<Record<keyof T, number>> | undefined {
  const values: Partial<Record<keyof T, number>> = {};
  for (const [key, { text, si }] of Object.entries(texts)) {
    if (text.trim() === '') continue;
    const read = readAmount(text, si);
    if (!read.ok) return undefined;
    values[key as keyof T] = read.is.value;
  }
  return values;
}

interface Props {
  readonly texts: AmountTexts;
  readonly onType: (key: string, text: string) => void;
}

export function TypedAmounts({ texts, onType }: Props) {
  return (
    <>
      {Object.entries(texts).map(([key, amount]) => (
        <TypedAmount key={key} amount={amount} onType={(text) => onType(key, text)} />
      ))}
    </>
  );
}

function TypedAmount({ amount, onType }: { amount: AmountText; onType: (text: string) => void }) {
  const id = useId();
  const { name, text, si } = amount;
  const read = text.trim() === '' ? undefined : readAmount(text, si);
  const wrong = read !== undefined && !read.ok ? read.why : undefined;
  return (
    <div className="asked">
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        className="number"
        value={text}
        aria-invalid={wrong !== undefined}
        aria-describedby={wrong === undefined ? undefined : `${id} told`}
        onChange={(event) => onType(event.target.value)}
      />
      {wrong !== undefined && (
        <p id={`${id} told`} className="told">
          {wrong}.
        </p>
      )}
    </div>
  );
}

/** What was asked and cannot be answered, or what broke off. */
export function Told({ message }: { message: string | undefined }) {
  return message === undefined ? null : (
    <p role="alert" className="told">
      {message}
    </p>
  );
}

/** Beside an answer whose axle another hand, or this one, has changed in the file since. */
export function Overtaken({ is }: { is: boolean }) {
  return is ? (
    <p role="status" className="told">
      This axle was changed in the file since. What follows is for the file as it was: ask again.
    </p>
  ) : null;
}
