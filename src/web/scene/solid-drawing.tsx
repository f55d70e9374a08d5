/** The canvas on which the board draws, and the flat drawing until (or in case) the board cannot. */
import { useMemo } from 'react';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Stop, Wheel } from '../../questions/figure.ts';
import { FlatDrawing } from './flat-drawing.tsx';
import type { Colours, Weight } from './ink.ts';
import type { Frame } from './look.ts';
import { useBoard } from './use-board.ts';

const carBoard = () => import('./board.ts').then((made) => made.Board);

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
  const { drawing, frame, width, height, only, weight, colours, inkKey } = props;
  // weight is a new function at every turn; the ink key says when it says something else
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const drawn = useMemo(
    () =>
      width === 0
        ? undefined
        : { drawing, frame, width, height, ...(only && { only }), weight, colours, inkKey },
    [drawing, frame, width, height, only, colours, inkKey],
  );
  const [canvas, state] = useBoard(carBoard, drawn);

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
