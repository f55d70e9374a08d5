/** One big number by big keys: digits, point, sign, a step up or down; nothing is filled in that was not pressed. */
import { readAmount } from '../../units/read.ts';
import { plain } from '../../units/show.ts';

interface Props {
  readonly name: string;
  readonly unit: string;
  /** As printed on the key. */
  readonly word: string;
  readonly digits: number;
  readonly step: number;
  readonly text: string;
  readonly onType: (text: string) => void;
  readonly onTake: () => void;
}

const DIGITS = ['7', '8', '9', '4', '5', '6', '1', '2', '3'] as const;

/** What is wrong with a text as a number of this unit; undefined where nothing is, or nothing is typed. */
export function wrongNumber(text: string, unit: string, si: string): string | undefined {
  if (text.trim() === '') return undefined;
  const read = readAmount(`${text.replace('−', '-')} ${unit}`, si);
  return read.ok ? undefined : read.why;
}

export function NumberPad({ name, word, digits, step, text, onType, onTake }: Props) {
  const value = Number(text.replace('−', '-'));
  const press = (key: string): void => onType(key === '.' && text.includes('.') ? text : text + key);
  const turn = (): void => onType(text.startsWith('−') ? text.slice(1) : `−${text}`);
  const by = (sign: number): void => {
    // from what was typed, and from nothing else
    if (text === '' || !Number.isFinite(value)) return;
    onType(plain(value + sign * step, digits).replaceAll('\u2009', ''));
  };
  const key = (label: string, says: string, act: () => void, disabled = false) => (
    <button key={says} type="button" className="pad-key" aria-label={says} disabled={disabled} onClick={act}>
      {label}
    </button>
  );
  return (
    <div className="pad">
      <p className="pad-number">
        <input
          type="text"
          // its own keys stand below: the phone's would cover the car
          inputMode="none"
          autoComplete="off"
          aria-label={`${name}, ${word}`}
          value={text}
          onChange={(event) => onType(event.target.value.replace('-', '−').replace(',', '.'))}
          onKeyDown={(event) => {
            if (event.key === 'Enter') onTake();
          }}
        />
        <span aria-hidden="true">{word}</span>
      </p>
      <div className="pad-keys">
        {DIGITS.map((digit) => key(digit, digit, () => press(digit)))}
        {key('±', 'other sign', turn)}
        {key('0', '0', () => press('0'))}
        {key('.', 'point', () => press('.'))}
        {key(`− ${plain(step, digits)}`, `less by ${step} ${word}`, () => by(-1), text === '')}
        {key('⌫', 'take back', () => onType(text.slice(0, -1)), text === '')}
        {key(`+ ${plain(step, digits)}`, `more by ${step} ${word}`, () => by(1), text === '')}
      </div>
    </div>
  );
}
