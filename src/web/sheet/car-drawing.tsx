/** The drawing itself with the figures that stand on it, the hand that moves it, and the scale of travel. */
import { useMemo, useState } from 'react';
import { type Figure, type Stop, travelOf, type Wheel } from '../../questions/figure.ts';
import { ForceDrawing } from '../loads/force-drawing.tsx';
import { stanceOf, wheelName } from '../place.ts';
import { useColours } from '../scene/colours.ts';
import { useHands } from '../scene/hands.ts';
import type { Weight } from '../scene/ink.ts';
import { SolidDrawing } from '../scene/solid-drawing.tsx';
import { usePage } from '../state.tsx';
import { useCar } from './car-file.tsx';
import { ViewChoice, WheelChoice } from './controls.tsx';
import { Dimensions } from './dimensions.tsx';
import { Ground } from './ground.tsx';
import { ModeChoice } from './mode-choice.tsx';
import { Slide } from './slide.tsx';
import { TrackDimension } from './track-dimension.tsx';
import { type CornerAnswer, useDrawing } from './use-corner.ts';
import { labelSize, onlyEnd, useFrame } from './use-frame.ts';
import { useSize } from './use-size.ts';

/** The page's scales end here even where the linkage goes further. Metres. */
const FURTHEST = 0.08;
const WITHIN = 1e-4;

export function rangeOf(corner: CornerAnswer): { low: number; high: number } {
  const { range } = corner;
  if (range === undefined) return { low: -0.05, high: 0.05 };
  return { low: Math.max(-FURTHEST, range.droop + WITHIN), high: Math.min(FURTHEST, range.bump - WITHIN) };
}

interface Props {
  readonly corner: CornerAnswer;
  readonly lit: Figure | undefined;
  readonly onLight: (figure: Figure | undefined) => void;
}

export function CarDrawing({ corner, lit, onLight }: Props) {
  const { place, go, speech } = usePage();
  const { car } = useCar();
  const { standing, drawing } = useDrawing(place);
  const [paper, size] = useSize();
  const [zoom, setZoom] = useState(1);
  const colours = useColours();
  const figures = useMemo(() => onDrawing(corner, place.stop), [corner, place.stop]);
  const label = useMemo(() => labelSize(size.width), [size.width]);
  const { frame, sides } = useFrame({ place, standing, size, label, figures: figures.length, zoom });
  const { low, high } = rangeOf(corner);
  const only = onlyEnd(place.view, place.wheel.end);

  const hands = useHands({
    drawing,
    frame,
    only,
    turn: place.turn,
    onTake: (wheel) =>
      go((from) => ({
        wheel,
        travel: travelOf(stanceOf(from), wheel),
        ...(wheel.end === 'rear' && { rack: 0 }),
      })),
    onLift: (_, by) => go((from) => ({ travel: Math.min(high, Math.max(low, from.travel + by)) })),
    onSteer: (by) => go((from) => ({ rack: Math.min(RACK, Math.max(-RACK, from.rack + by)) })),
    onTurn: (turn) =>
      go((from) => ({ turn, view: from.view === 'car' || from.view === 'plan' ? 'car' : 'free' })),
    onZoom: (factor) => setZoom((before) => Math.min(8, Math.max(0.6, before * factor))),
  });

  const chosen = place.way === 'load' ? place.stop : undefined;
  const weight = (wheel: Wheel, stop: Stop): Weight => {
    const here = wheel.end === place.wheel.end && wheel.side === place.wheel.side;
    if (lit !== undefined) return here && stop === lit.stop ? 'lit' : 'faded';
    return here && stop === chosen ? 'chosen' : 'plain';
  };
  const [title, more] = titleOf(place.view, place.wheel);
  const inkKey = `${wheelName(place.wheel)} ${chosen} ${lit?.stop} ${JSON.stringify(colours)}`;
  const events = corner.reached
    ? corner.events.map((event) => ({ at: event.travel, words: event.what }))
    : [];

  return (
    <main className="drawing" aria-label="Drawing">
      <header className="drawing-head">
        <h1>
          {title}
          <span className="more">{more}</span>
        </h1>
        <ViewChoice />
      </header>
      <Slide
        name="travel"
        value={place.travel}
        low={low}
        high={high}
        speech={speech}
        stands="up"
        marks={events}
        onMove={(travel) => go({ travel })}
      />
      <div
        className="paper"
        ref={paper}
        {...hands}
        onWheel={(event) =>
          setZoom((before) => Math.min(8, Math.max(0.6, before * Math.exp(-event.deltaY * 0.001))))
        }
      >
        {size.width > 0 && (
          <>
            <SolidDrawing
              drawing={drawing}
              frame={frame}
              width={size.width}
              height={size.height}
              only={only}
              chosen={place.wheel}
              weight={weight}
              colours={colours}
              inkKey={inkKey}
              told={`${title}${more}, drawn from its points`}
            />
            <Ground
              view={place.view}
              frame={frame}
              ground={standing.ground}
              left={sides === 'right' ? 8 : label.column + 14}
              right={size.width - (sides === 'left' ? 8 : label.column + 14)}
            />
            <TrackDimension drawing={drawing} frame={frame} />
            <ForceDrawing car={car} frame={frame} size={size} />
            <Dimensions
              figures={figures}
              drawing={drawing}
              wheel={place.wheel}
              frame={frame}
              size={size}
              label={label}
              sides={sides}
              speech={speech}
              onLight={onLight}
              onOpen={(figure) => go({ figure: figure.id })}
            />
          </>
        )}
        {!corner.reached && (
          <p className="not-reached" role="status">
            {corner.message}
          </p>
        )}
      </div>
      <div className="strip">
        <WheelChoice />
        <ModeChoice high={high} />
        {place.wheel.end === 'front' && (
          <Slide
            name="rack"
            value={place.rack}
            low={-RACK}
            high={RACK}
            speech={speech}
            stands="across"
            onMove={(rack) => go({ rack })}
          />
        )}
        {zoom !== 1 && (
          <button type="button" className="plain-word" onClick={() => setZoom(1)}>
            all of it
          </button>
        )}
      </div>
    </main>
  );
}

const RACK = 0.03;

/** The few large figures of the stop. */
export const onDrawing = (corner: CornerAnswer, stop: Stop): readonly Figure[] =>
  corner.reached
    ? chief(corner.figures.filter((figure) => figure.stop === stop && Number.isFinite(figure.value)))
    : [];

const FEWEST = 3;
const MOST = 7;

function chief(figures: readonly Figure[]): readonly Figure[] {
  const first = figures.filter((figure) => figure.rank === 1);
  const second = figures.filter((figure) => figure.rank === 2);
  return [...first, ...second.slice(0, Math.max(0, FEWEST - first.length))].slice(0, MOST);
}

function titleOf(view: string, wheel: Wheel): readonly [string, string] {
  const axle = `${wheel.end === 'front' ? 'Front' : 'Rear'} axle`;
  switch (view) {
    case 'front':
      return [axle, ', seen from ahead'];
    case 'rear':
      return [axle, ', seen from behind'];
    case 'side':
      return [`From the ${wheel.side}`, ''];
    case 'plan':
      return ['Plan', ''];
    case 'free':
      return [axle, ', in the round'];
    default:
      return ['The whole car', ''];
  }
}
