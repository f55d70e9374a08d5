/** The scale that a slider runs along: its marks, what happens on the way, and the slider itself. */
import type { CSSProperties, InputHTMLAttributes } from 'react';
import type { Mark } from './marks.ts';

interface Props extends Omit<InputHTMLAttributes<HTMLInputElement>, 'onChange' | 'type'> {
  readonly marks: readonly Mark[];
  readonly events?: readonly { readonly part: number; readonly words: string }[];
  readonly onMove: (value: number) => void;
}

const at = (part: number) => ({ '--at': part }) as CSSProperties;

export function SlideScale({ marks, events = [], onMove, ...input }: Props) {
  return (
    <div className="slide-scale">
      {marks.map(({ part, words }) => (
        <span key={words} className="tick" style={at(part)} aria-hidden="true">
          {words}
        </span>
      ))}
      {events.map(({ part, words }) => (
        <span key={words} className="event" title={words} style={at(part)} aria-hidden="true" />
      ))}
      <input {...input} type="range" onChange={({ target }) => onMove(Number(target.value))} />
    </div>
  );
}
