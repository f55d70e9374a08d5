/** The flat patch as a line with hatching under it, in the views that look along it. */
import { type Frame, projected, type View } from '../scene/look.ts';

interface Props {
  readonly view: View;
  readonly frame: Frame;
  readonly ground: number;
  /** Where the columns of figures leave off. */
  readonly left: number;
  readonly right: number;
}

/** How far the line goes to each side of the middle, metres. */
const GROUND = 2.2;

export function Ground({ view, frame, ground, left, right }: Props) {
  if (view === 'plan' || view === 'free' || view === 'car') return null;
  const { y } = projected(frame, [frame.centre[0], frame.centre[1], ground]);
  const [from, to] = [
    Math.max(left, frame.x - GROUND * frame.scale),
    Math.min(right, frame.x + GROUND * frame.scale),
  ];
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
