/** A slider with a scale, that is also typed: travel up and down, the rack from side to side. */
import { useId } from 'react';
import type { Speech } from '../../units/show.ts';
import { TypedAmount } from '../typed-amount.tsx';
import { SlideScale } from './slide-scale.tsx';
import { scaleOf, travelWords } from './travel.ts';

/** No wheel and no rack goes farther, m. */
const FARTHEST = 0.2;

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
      <SlideScale
        id={id}
        marks={scale.marks}
        events={marks
          .filter((mark) => mark.at > low && mark.at < high)
          .map((mark) => ({
            part: (mark.at - low) / (high - low),
            words: `${mark.words} at ${travelWords(mark.at, speech)}`,
          }))}
        min={low}
        max={high}
        step={scale.step}
        value={held}
        aria-valuetext={words}
        aria-orientation={stands === 'up' ? 'vertical' : 'horizontal'}
        onMove={onMove}
      />
      <TypedAmount
        name={name}
        value={value}
        si="m"
        unit={scale.unit}
        digits={scale.unit === 'mm' ? 1 : 2}
        onTake={(typed) => onMove(Math.min(FARTHEST, Math.max(-FARTHEST, typed)))}
      />
    </div>
  );
}
