/** The sheet folded in two: one spec on each side in the same view, and between them what differs. */
import { useMemo } from 'react';
import type { Stop, Wheel } from '../../questions/figure.ts';
import { AS_SURVEYED, drawCar } from '../../questions/index.ts';
import type { Car } from '../engine/answers.ts';
import { DoingPictures } from '../loads/doing-choice.tsx';
import { ForceDrawing } from '../loads/force-drawing.tsx';
import { useDoing } from '../loads/use-case.ts';
import { isBehindCorners, isLoaded, stanceOf, wheelName } from '../place.ts';
import { useColours } from '../scene/colours.ts';
import { useHands } from '../scene/hands.ts';
import type { Weight } from '../scene/ink.ts';
import { SolidDrawing } from '../scene/solid-drawing.tsx';
import { rangeOf } from '../sheet/car-drawing.tsx';
import { useCar } from '../sheet/car-file.tsx';
import { ViewChoice, WheelChoice } from '../sheet/controls.tsx';
import { Ground } from '../sheet/ground.tsx';
import { ModeChoice } from '../sheet/mode-choice.tsx';
import { Slide } from '../sheet/slide.tsx';
import { useCorner } from '../sheet/use-corner.ts';
import { type LabelSize, onlyEnd, useFrame } from '../sheet/use-frame.ts';
import { useSize } from '../sheet/use-size.ts';
import { usePage } from '../state.tsx';
import { Differences } from './differences.tsx';
import { useTravelUnderLoad } from './of-spec.ts';
import { useOtherSpec } from './other-spec.ts';

const NO_LABELS: LabelSize = { kind: 'none', column: 0 };

export function Folded({ against }: { against: string }) {
  const { place, go, speech } = usePage();
  const { car } = useCar();
  const { low, high } = rangeOf(useCorner(place));
  const other = useOtherSpec(against);
  const { opened } = other;
  const besideCar = opened.state === 'answered' && opened.answer.ok ? opened.answer.car : undefined;
  return (
    <main className="folded" aria-label={`${car.spec} beside ${against}`}>
      <header className="drawing-head">
        <h1>Two specs, {wheelName(place.wheel)}</h1>
        <ViewChoice />
      </header>
      <div className="halves">
        <Half spec={car.spec} car={car} />
        <Differences other={other} />
        <Half spec={against} car={besideCar} />
      </div>
      <div className="strip">
        <WheelChoice />
        {!isBehindCorners(place.stop) && <HandOrLoad />}
        {isLoaded(place) ? (
          <DoingPictures />
        ) : (
          <>
            <ModeChoice high={high} />
            <Slide
              name="travel"
              value={place.travel}
              low={low}
              high={high}
              speech={speech}
              stands="across"
              onMove={(travel) => go({ travel })}
            />
          </>
        )}
        <button type="button" className="word" onClick={() => go({ against: undefined })}>
          Unfold
        </button>
      </div>
    </main>
  );
}

/** Whether the wheel is moved by hand, or a load says where it stands. */
function HandOrLoad() {
  const { place, go } = usePage();
  const loaded = isLoaded(place);
  return (
    <fieldset className="words">
      <legend className="unseen">What moves the wheel</legend>
      <button type="button" aria-pressed={!loaded} onClick={() => go({ card: 'figures' })}>
        by hand
      </button>
      <button type="button" aria-pressed={loaded} onClick={() => go({ card: 'loads' })}>
        under a load
      </button>
    </fieldset>
  );
}

/** One side of the fold; its paper stays empty until the spec is read. */
function Half({ spec, car }: { spec: string; car: Car | undefined }) {
  const { place, go } = usePage();
  const [paper, size] = useSize();
  const colours = useColours();
  const { rack } = useDoing();
  const loaded = useTravelUnderLoad(car, place);
  const stance = stanceOf(loaded === undefined ? place : { ...place, travel: loaded, mode: 'wheel', rack });
  const stands = JSON.stringify(stance);
  const standing = useMemo(() => (car === undefined ? EMPTY : drawCar(car, AS_SURVEYED)), [car]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the text stands for the stance
  const drawing = useMemo(() => (car === undefined ? EMPTY : drawCar(car, stance)), [car, stands]);
  const { frame } = useFrame({ place, standing, size, label: NO_LABELS, figures: 0, zoom: 1 });
  const only = onlyEnd(place.view, place.wheel.end);
  const hands = useHands({
    drawing,
    frame,
    only,
    turn: place.turn,
    onTake: (wheel) => go({ wheel }),
    onLift: (_, by) => go((from) => ({ travel: Math.min(0.08, Math.max(-0.08, from.travel + by)) })),
    onSteer: (by) => go((from) => ({ rack: from.rack + by })),
    onTurn: (turn) =>
      go((from) => ({ turn, view: from.view === 'car' || from.view === 'plan' ? 'car' : 'free' })),
    onZoom: () => undefined,
  });
  const weight = (wheel: Wheel, stop: Stop): Weight =>
    wheel.end === place.wheel.end && wheel.side === place.wheel.side && stop === place.stop
      ? 'chosen'
      : 'plain';
  return (
    <section className="half" aria-label={spec}>
      <h2>{spec}</h2>
      <div className="paper" ref={paper} {...hands}>
        {size.width > 0 && car !== undefined && (
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
              told={`${spec}, drawn from its points`}
              inkKey={`${wheelName(place.wheel)} ${place.stop} ${JSON.stringify(colours)}`}
            />
            <Ground
              view={place.view}
              frame={frame}
              ground={standing.ground}
              left={8}
              right={size.width - 8}
            />
            <ForceDrawing car={car} frame={frame} size={size} />
          </>
        )}
      </div>
    </section>
  );
}

const EMPTY = { corners: [], antiRollBars: [], sections: [], ground: 0 } as const;
