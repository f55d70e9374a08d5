/** The canvas of the primaries; where a browser has no WebGL, their middle lines as a flat drawing. */
import { useMemo } from 'react';
import { projected } from '../scene/look.ts';
import { useBoard } from '../scene/use-board.ts';
import type { PipesShown } from './pipe-board.ts';

const pipeBoard = () => import('./pipe-board.ts').then((made) => made.PipeBoard);

export function PipeCanvas({ told, ...shown }: PipesShown & { readonly told: string }) {
  const { scene, groups, lit, cutAt, frame, width, height, colours } = shown;
  const drawn = useMemo(
    () => (width === 0 ? undefined : { scene, groups, lit, cutAt, frame, width, height, colours }),
    [scene, groups, lit, cutAt, frame, width, height, colours],
  );
  const [canvas, state] = useBoard(pipeBoard, drawn);
  return (
    <>
      <canvas ref={canvas} className="solid" data-state={state} role="img" aria-label={told} />
      {state === 'flat' && (
        <svg className="flat-paper" width={width} height={height} aria-hidden="true">
          {groups.flatMap(({ name, od, set }) =>
            (set?.pipes ?? []).map(({ cylinder, line }) => (
              <polyline
                key={`${name} ${cylinder}`}
                className="pipe-line"
                strokeWidth={od * frame.scale}
                points={line
                  .map((point) => {
                    const { x, y } = projected(frame, point);
                    return `${x.toFixed(1)},${y.toFixed(1)}`;
                  })
                  .join(' ')}
              />
            )),
          )}
        </svg>
      )}
    </>
  );
}
