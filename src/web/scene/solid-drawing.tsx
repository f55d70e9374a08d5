/** The canvas on which the board draws, and the flat drawing until (or in case) the board cannot. */
import { useEffect, useRef, useState } from 'react';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Stop, Wheel } from '../../questions/figure.ts';
import type { Board } from './board.ts';
import { FlatDrawing } from './flat-drawing.tsx';
import type { Colours, Weight } from './ink.ts';
import type { Frame } from './look.ts';

interface Props {
  readonly drawing: Drawing;
  readonly frame: Frame;
  readonly width: number;
  readonly height: number;
  readonly only?: End | undefined;
  readonly chosen: Wheel;
  readonly weight: (wheel: Wheel, stop: Stop) => Weight;
  readonly colours: Colours;
  readonly inkKey: string;
  /** What a listener is told in place of the picture. */
  readonly told: string;
}

export function SolidDrawing(props: Props) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const board = useRef<Board>(undefined);
  const [state, setState] = useState<'coming' | 'here' | 'flat'>('coming');

  useEffect(() => {
    let wanted = true;
    import('./board.ts')
      .then((made) => {
        if (!wanted || canvas.current === null) return;
        board.current = new made.Board(canvas.current);
        setState('here');
      })
      // a browser without WebGL2 gets the flat drawing, which says the same
      .catch(() => wanted && setState('flat'));
    return () => {
      wanted = false;
      board.current?.dispose();
      board.current = undefined;
    };
  }, []);

  const { drawing, frame, width, height, only, weight, colours, inkKey } = props;
  useEffect(() => {
    if (state !== 'here' || width === 0) return;
    board.current?.show({ drawing, frame, width, height, ...(only && { only }), weight, colours, inkKey });
  }, [state, drawing, frame, width, height, only, weight, colours, inkKey]);

  return (
    <>
      <canvas ref={canvas} className="solid" data-state={state} role="img" aria-label={props.told} />
      {state !== 'here' && (
        <svg className="flat-paper" width={width} height={height} aria-hidden="true">
          <FlatDrawing drawing={drawing} frame={frame} only={only} chosen={props.chosen} />
        </svg>
      )}
    </>
  );
}
