/** The flat patch as a line with hatching under it, in the views that look along it. */
import { type Frame, projected, type View } from '../scene/look.ts';
import type { LabelSize } from './use-frame.ts';

interface Props {
  readonly view: View;
  readonly frame: Frame;
  readonly ground: number;
  readonly width: number;
  readonly label: LabelSize;
}

export function Ground({ view, frame, ground, width, label }: Props) {
  if (view === 'plan' || view === 'free') return null;
  const { y } = projected(frame, [frame.centre[0], frame.centre[1], ground]);
  const [from, to] = [label.column + 8, width - label.column - 8];
  const count = Math.max(0, Math.floor((to - from) / 14));
  return (
    <svg className="ground" aria-hidden="true">
      <path d={`M${from} ${y}H${to}`} />
      <path
        className="hatch"
        d={Array.from({ length: count }, (_, k) => `M${from + 14 * k + 10} ${y}l-8 8`).join('')}
      />
    </svg>
  );
}
