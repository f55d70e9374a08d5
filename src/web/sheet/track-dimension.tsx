/** The track as a dimension under the ground line (in the manner of ISO 129-1), in the views along the car. */

import { useMemo } from 'react';
import type { Drawing } from '../../questions/drawing-types.ts';
import { axleFigures } from '../../questions/index.ts';
import { unitAfter } from '../../units/show.ts';
import { stanceOf } from '../place.ts';
import { type Frame, projected } from '../scene/look.ts';
import { AXLE_FIGURE } from '../slip/working-slip.tsx';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { useCar } from './car-file.tsx';

const BELOW = 34;

export function TrackDimension({ drawing, frame }: { drawing: Drawing; frame: Frame }) {
  const { place, go, speech } = usePage();
  const { car } = useCar();
  const { end } = place.wheel;
  const stance = stanceOf(place);
  const stands = JSON.stringify(stance);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for the stance
  const figure = useMemo(() => {
    const answer = axleFigures(car, end, stance);
    return answer.reached ? answer.figures.find((each) => each.id === 'track') : undefined;
  }, [car, end, stands]);
  const spots = drawing.corners
    .filter((corner) => corner.wheel.end === end)
    .map((corner) => projected(frame, corner.tyre.contact))
    .sort((a, b) => a.x - b.x);
  const [left, right] = spots;
  if (
    (place.view !== 'front' && place.view !== 'rear') ||
    figure === undefined ||
    left === undefined ||
    right === undefined
  ) {
    return null;
  }
  const y = Math.max(left.y, right.y) + BELOW;
  const shown = spoken(figure.value, figure.unit, speech);
  const arrow = (x: number, way: 1 | -1): string => `M${x} ${y}l${way * 12} -3.5v7z`;
  return (
    <>
      <svg className="dimension" aria-hidden="true">
        <path
          d={`M${left.x} ${left.y + 4}V${y + 6}M${right.x} ${right.y + 4}V${y + 6}M${left.x} ${y}H${right.x}`}
        />
        <path className="arrows" d={arrow(left.x, 1) + arrow(right.x, -1)} />
      </svg>
      <button
        type="button"
        className="dimension-value"
        style={{ left: (left.x + right.x) / 2, top: y }}
        aria-label={`${figure.means}, ${end} axle: ${shown.text}${unitAfter(shown.unit)}. Open the working.`}
        onPointerDown={(event) => event.stopPropagation()}
        onClick={() => go({ figure: `${AXLE_FIGURE}track` })}
      >
        <span>
          <b className="number">{shown.text}</b>
          {unitAfter(shown.unit)}
        </span>
      </button>
    </>
  );
}
