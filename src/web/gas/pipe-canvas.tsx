/** The canvas of the primaries; where a browser has no WebGL, their middle lines as a flat drawing. */
import { useEffect, useRef, useState } from 'react';
import { projected } from '../scene/look.ts';
import type { PipeBoard, PipesShown } from './pipe-board.ts';

export function PipeCanvas({ told, ...shown }: PipesShown & { readonly told: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const board = useRef<PipeBoard>(undefined);
  const [state, setState] = useState<'coming' | 'here' | 'flat'>('coming');
  useEffect(() => {
    let wanted = true;
    import('./pipe-board.ts')
      .then((made) => {
        if (!wanted || canvas.current === null) return;
        board.current = new made.PipeBoard(canvas.current);
        setState('here');
      })
      .catch(() => wanted && setState('flat'));
    return () => {
      wanted = false;
      board.current?.dispose();
      board.current = undefined;
    };
  }, []);
  const { scene, set, lit, cutAt, frame, width, height, colours } = shown;
  useEffect(() => {
    if (state === 'here' && width > 0) {
      board.current?.show({ scene, set, lit, cutAt, frame, width, height, colours });
    }
  }, [state, scene, set, lit, cutAt, frame, width, height, colours]);
  return (
    <>
      <canvas ref={canvas} className="solid" data-state={state} role="img" aria-label={told} />
      {state === 'flat' && (
        <svg className="flat-paper" width={width} height={height} aria-hidden="true">
          {set?.pipes.map(({ cylinder, line }) => (
            <polyline
              key={cylinder}
              className="pipe-line"
              strokeWidth={scene.od * frame.scale}
              points={line
                .map((point) => {
                  const { x, y } = projected(frame, point);
                  return `${x.toFixed(1)},${y.toFixed(1)}`;
                })
                .join(' ')}
            />
          ))}
        </svg>
      )}
    </>
  );
}
