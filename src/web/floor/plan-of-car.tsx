/** A car in plan to a stated scale: nose up in its bay, nose to the left on the patch. */
import type { Drawing } from '../../questions/drawing-types.ts';
import { extent } from '../scene/bodies.ts';
import { FlatDrawing } from '../scene/flat-drawing.tsx';
import { FIRST_TURN, framed, lookOf } from '../scene/look.ts';

/** Pixels per metre on the floor; the patch is drawn half as large again. */
const SCALE = { bay: 78, patch: 150 } as const;
const ROOM = { bay: { width: 190, height: 330 }, patch: { width: 640, height: 330 } } as const;

export function PlanOfCar({ drawing, kind }: { drawing: Drawing | undefined; kind: 'bay' | 'patch' }) {
  const { width, height } = ROOM[kind];
  const look = lookOf('plan', FIRST_TURN, 'left', kind === 'patch');
  const area = { left: 0, top: 0, width, height };
  const metre = SCALE[kind];
  return (
    <svg className="plan" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      {kind === 'patch' && <Plates width={width} height={height} metre={metre} />}
      {drawing !== undefined && (
        <FlatDrawing drawing={drawing} frame={{ ...framed(look, extent(drawing), area), scale: metre }} />
      )}
      <path className="ruler" d={`M${(width - metre) / 2} ${height - 8}v-6h${metre}v6`} />
    </svg>
  );
}

/** The plates of the patch: one under each wheel's track, ruled each half metre. */
function Plates({ width, height, metre }: { width: number; height: number; metre: number }) {
  const lines: string[] = [];
  for (let x = 0; x <= width; x += metre / 2) lines.push(`M${x} 0V${height}`);
  for (let y = 0; y <= height; y += metre / 2) lines.push(`M0 ${y}H${width}`);
  return <path className="plates" d={lines.join('')} />;
}
