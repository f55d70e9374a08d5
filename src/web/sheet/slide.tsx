/** A slider with a scale, that is also typed: travel up and down, the rack from side to side. */
import { type CSSProperties, useId, useState } from 'react';
import { readAmount } from '../../units/read.ts';
import type { Speech } from '../../units/show.ts';
import { plain } from '../../units/show.ts';
import { fromSI, toSI } from '../../units/unit.ts';
import { scaleOf, travelWords } from './travel.ts';

interface Props {
  readonly name: string;
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly speech: Speech;
  readonly stands: 'up' | 'across';
  readonly marks?: readonly { readonly at: number; readonly words: string }[];
  readonly onMove: (value: number) => void;
}

export function Slide({ name, value, low, high, speech, stands, marks = [], onMove }: Props) {
  const id = useId();
  const scale = scaleOf(low, high, speech, stands === 'up' ? 9 : 4);
  const words = travelWords(value, speech);
  const held = Math.min(high, Math.max(low, value));
  return (
    <div className={`slide ${stands}`}>
      <label htmlFor={id}>{name}</label>
      <div className="slide-scale">
        {scale.marks.map((mark) => (
          <span
            key={mark.words}
            className="tick"
            style={{ '--at': mark.part } as CSSProperties}
            aria-hidden="true"
          >
            {mark.words}
          </span>
        ))}
        {marks
          .filter((mark) => mark.at > low && mark.at < high)
          .map((mark) => (
            <span
              key={mark.words}
              className="event"
              title={`${mark.words} at ${travelWords(mark.at, speech)}`}
              style={{ '--at': (mark.at - low) / (high - low) } as CSSProperties}
              aria-hidden="true"
            />
          ))}
        <input
          id={id}
          type="range"
          min={low}
          max={high}
          step={scale.step}
          value={held}
          aria-valuetext={words}
          aria-orientation={stands === 'up' ? 'vertical' : 'horizontal'}
          onChange={(event) => onMove(Number(event.target.value))}
        />
      </div>
      <Typed name={name} value={value} unit={scale.unit} onMove={onMove} />
    </div>
  );
}

interface TypedProps {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly onMove: (value: number) => void;
}

/** The same by typing: a figure in the unit on the key, or with a unit of its own. */
function Typed({ name, value, unit, onMove }: TypedProps) {
  const [draft, setDraft] = useState<string>();
  const [wrong, setWrong] = useState<string>();
  const id = useId();
  const spoken = plain(fromSI(value, unit), unit === 'mm' ? 1 : 2);
  const leave = (): void => {
    setDraft(undefined);
    setWrong(undefined);
  };
  const take = (text: string): void => {
    // emptied: the wheel stays where it is
    if (text.trim() === '') {
      leave();
      return;
    }
    const figure = /^[-+−]?[\d.]+$/.test(text.trim()) ? `${text.trim()} ${unit}` : text;
    const read = readAmount(figure, 'm');
    if (!read.ok) {
      setWrong(read.why);
      return;
    }
    leave();
    onMove(Math.min(toSI(200, 'mm'), Math.max(toSI(-200, 'mm'), read.is.value)));
  };
  return (
    <span className="typed">
      <input
        type="text"
        inputMode="decimal"
        aria-label={`${name}, ${unit}`}
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
      <span aria-hidden="true">{unit}</span>
      {wrong !== undefined && (
        <span id={id} role="alert" className="typed-told">
          {wrong}.
        </span>
      )}
    </span>
  );
}
