/** The car as a line drawing in one view: on the floor, and where a browser has no WebGL. */
import { memo } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Wheel } from '../../questions/figure.ts';
import { tyrePoints } from './bodies.ts';
import { type Frame, outline, projected } from './look.ts';

interface Props {
  readonly drawing: Drawing;
  readonly frame: Frame;
  readonly only?: End | undefined;
  /** The wheel whose links are drawn in the accent. */
  readonly chosen?: Wheel;
}

export const FlatDrawing = memo(function FlatDrawing({ drawing, frame, only, chosen }: Props) {
  const spot = (point: Vec3): string => {
    const { x, y } = projected(frame, point);
    return `${x.toFixed(1)},${y.toFixed(1)}`;
  };
  const corners = drawing.corners.filter((corner) => only === undefined || corner.wheel.end === only);
  return (
    <g className="flat">
      {drawing.sections.length > 1 && (
        <polygon
          className="hull"
          points={outline(drawing.sections.flat().map((point) => projected(frame, point)))
            .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
            .join(' ')}
        />
      )}
      {drawing.antiRollBars
        .filter(({ end }) => only === undefined || end === only)
        .map(({ end, line }) => (
          <polyline key={`bar ${end}`} className="bar" points={line.map(spot).join(' ')} />
        ))}
      {corners.map((corner) => (
        <g
          key={`${corner.wheel.end} ${corner.wheel.side}`}
          className={
            corner.wheel.end === chosen?.end && corner.wheel.side === chosen.side ? 'corner chosen' : 'corner'
          }
        >
          {corner.members.map((member) => (
            <polyline
              key={member.id}
              className="member"
              strokeWidth={Math.max(1.2, member.diameter * frame.scale)}
              points={`${spot(member.from)} ${spot(member.to)}`}
            />
          ))}
          {corner.coil && (
            <polyline
              className="member"
              strokeWidth={corner.coil.meanDiameter * frame.scale}
              points={`${spot(corner.coil.from)} ${spot(corner.coil.to)}`}
            />
          )}
          {corner.bar && (
            <polyline
              className="member"
              strokeWidth={Math.max(1.5, corner.bar.diameter * frame.scale)}
              points={`${spot(corner.bar.from)} ${spot(corner.bar.to)}`}
            />
          )}
          <polygon
            className="tyre"
            points={outline(tyrePoints(corner.tyre).map((point) => projected(frame, point)))
              .map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`)
              .join(' ')}
          />
        </g>
      ))}
    </g>
  );
});
