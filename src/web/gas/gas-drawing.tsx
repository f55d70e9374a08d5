/** The primaries drawn, turned by hand, with the scan cut open by a plane across the car. */
import { useId, useMemo, useState } from 'react';
import { add, scale, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { PrimariesScene, PrimariesSet } from '../../questions/index.ts';
import { useColours } from '../scene/colours.ts';
import { useHands } from '../scene/hands.ts';
import { framed, lookOf } from '../scene/look.ts';
import { ViewChoice } from '../sheet/controls.tsx';
import { useSize } from '../sheet/use-size.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { gripsOf } from './grips.ts';
import type { HandMode } from './hand-card.tsx';
import { CornerLines, HandGrips, HandTells } from './hand-grips.tsx';
import { Marks } from './marks.tsx';
import { PipeCanvas } from './pipe-canvas.tsx';
import type { Finding } from './use-finding.ts';
import { useGrips } from './use-grips.ts';

/** No wheel stands here for a hand to take: it only turns the view. */
const NO_WHEELS: Drawing = { corners: [], antiRollBars: [], sections: [], ground: 0 };
const nothing = (): void => undefined;

interface Props {
  readonly finding: Finding;
  readonly lit: number | undefined;
  readonly pulses: boolean;
  readonly onPulses: (on: boolean) => void;
  readonly mode: HandMode;
  readonly onMode: (mode: HandMode) => void;
}

export function GasDrawing({ finding, lit, pulses, onPulses, mode, onMode }: Props) {
  const { place, go } = usePage();
  const [paper, size] = useSize();
  const [zoom, setZoom] = useState(1);
  const colours = useColours();
  const { scene, progress, refused, found, hand, does } = finding;
  const bendsAt = mode.on ? finding.bendsAt : undefined;
  // while there is no set: what came nearest to one
  const set = progress?.set ?? progress?.near;
  const { azimuth, elevation } = place.turn;
  const round = place.view === 'free' || place.view === 'car';
  const frame = useMemo(() => {
    // seen from the bank's own side: what is to the left for the one is to the right for the other
    const turn = { azimuth: place.bank === 'left' ? azimuth : -azimuth, elevation };
    const look = lookOf(place.view, turn, place.bank, size.width > size.height);
    const area = {
      left: 40,
      top: 30,
      width: Math.max(80, size.width - 80),
      height: Math.max(60, size.height - 70),
    };
    // a hand that pulls does not move the paper
    return framed(look, pointsOf(scene, found ?? progress?.near, bendsAt, round), area, zoom);
  }, [place.view, place.bank, azimuth, elevation, round, size, scene, found, progress?.near, bendsAt, zoom]);
  const behind = useHands({
    drawing: NO_WHEELS,
    frame,
    turn: { azimuth, elevation },
    onTake: nothing,
    onLift: nothing,
    onSteer: nothing,
    onTurn: (turn) => go({ turn, view: 'free' }),
    onZoom: (factor) => setZoom((before) => Math.min(8, Math.max(0.6, before * factor))),
  });
  const shown = mode.on && scene !== undefined ? hand : undefined;
  const grips = shown === undefined ? [] : gripsOf(shown.told, scene!, lit);
  const choose = (chosen: HandMode['chosen']): void => onMode({ ...mode, chosen });
  const hands = useGrips({
    behind,
    grips,
    frame,
    told: shown?.live === false ? shown.told : undefined,
    live: shown?.live === true,
    does,
    onChoose: choose,
    mend: mode.mend,
  });
  const ends = useMemo(() => endsOf(scene), [scene]);
  const cutAt =
    place.cut === undefined || ends === undefined
      ? undefined
      : ends.rear + place.cut * (ends.front - ends.rear);
  return (
    <main className="drawing gas" aria-label="Drawing">
      <header className="drawing-head">
        <h1>
          Primaries<span className="more">, {place.bank} bank</span>
        </h1>
        <ViewChoice />
      </header>
      <div
        className="paper"
        ref={paper}
        {...hands.pointers}
        onWheel={(event) =>
          setZoom((before) => Math.min(8, Math.max(0.6, before * Math.exp(-event.deltaY * 0.001))))
        }
      >
        {scene !== undefined && size.width > 0 && (
          <>
            <PipeCanvas
              scene={scene}
              set={set}
              lit={lit}
              cutAt={cutAt}
              frame={frame}
              width={size.width}
              height={size.height}
              colours={colours}
              told={`Primaries of the ${place.bank} bank${progress?.set === undefined ? ', none found yet' : ''}`}
            />
            <Marks
              scene={scene}
              set={set}
              lit={lit}
              frame={frame}
              pulses={pulses}
              {...(shown?.live === true && shown.told.tight !== undefined ? { moved: shown.told.tight } : {})}
            />
            {progress?.set === undefined && progress?.near !== undefined && (
              <p className="not-a-set">What came nearest. It is no set.</p>
            )}
            {shown !== undefined && (
              <>
                <CornerLines told={shown.told} chosen={mode.chosen} frame={frame} scene={scene} />
                <HandGrips
                  grips={grips}
                  chosen={mode.chosen}
                  frame={frame}
                  onChoose={choose}
                  onKeyDown={hands.onKeyDown}
                  onBlur={hands.onBlur}
                />
                <HandTells hand={shown} />
              </>
            )}
          </>
        )}
        {scene === undefined && (
          <p className="not-reached" role="status">
            {refused.length === 0 ? 'The scan is being read.' : refused.join(' ')}
          </p>
        )}
      </div>
      <div className="strip">
        {ends !== undefined && <Cut ends={ends} at={cutAt} />}
        <label className="tick-word">
          <input
            type="checkbox"
            checked={pulses}
            disabled={set === undefined}
            onChange={(event) => onPulses(event.target.checked)}
          />
          pulses in firing order
        </label>
        {zoom !== 1 && (
          <button type="button" className="plain-word" onClick={() => setZoom(1)}>
            all of it
          </button>
        )}
      </div>
    </main>
  );
}

interface Ends {
  readonly rear: number;
  readonly front: number;
}

function Cut({ ends, at }: { readonly ends: Ends; readonly at: number | undefined }) {
  const { place, go, speech } = usePage();
  const id = useId();
  const share = place.cut ?? 1;
  const shown = at === undefined ? undefined : spoken(at, 'm', speech);
  const words = shown === undefined ? 'whole' : `at x ${shown.text} ${shown.unit}`;
  return (
    <div className="cut">
      <label htmlFor={id}>cover cut open</label>
      <input
        id={id}
        type="range"
        min={0}
        max={1}
        step={0.01}
        value={share}
        aria-valuetext={words}
        onChange={(event) => {
          const to = Number(event.target.value);
          go({ cut: to >= 1 ? undefined : to });
        }}
      />
      <span className="number">{words}</span>
      <span className="unseen">
        from x {ends.rear.toFixed(2)} m to {ends.front.toFixed(2)} m
      </span>
    </div>
  );
}

function endsOf(scene: PrimariesScene | undefined): Ends | undefined {
  const { corners } = scene?.shell ?? {};
  if (corners === undefined || corners.length === 0) return undefined;
  let [rear, front] = [Infinity, -Infinity];
  for (let k = 0; k < corners.length; k += 3) {
    rear = Math.min(rear, corners[k]!);
    front = Math.max(front, corners[k]!);
  }
  return { rear, front };
}

/** Room round the pipes, metres. */
const ROOM = 0.09;

/** What must be on the paper: ports, pipes and collector, with some room; a ball of it in views that turn. */
function pointsOf(
  scene: PrimariesScene | undefined,
  set: PrimariesSet | undefined,
  bends: readonly Vec3[] | undefined,
  round: boolean,
): Vec3[] {
  if (scene === undefined) return [];
  const collector =
    set === undefined
      ? []
      : [set.collector.mouth, add(set.collector.mouth, scale(set.collector.axis, scene.collector.length))];
  const ways = scene.ports.map(({ at, way }) => add(at, scale(way, 0.15)));
  const points = [
    ...scene.ports.map(({ at }) => at),
    ...ways,
    ...(set?.pipes.flatMap(({ line }) => line) ?? []),
    ...collector,
    ...(bends ?? []),
  ];
  const bound = (of: (...values: number[]) => number): Vec3 => {
    const at = (k: 0 | 1 | 2): number => points.reduce((held, point) => of(held, point[k]), points[0]![k]);
    return [at(0), at(1), at(2)];
  };
  const [low, high] = [bound(Math.min), bound(Math.max)];
  const around = ([x, y, z]: Vec3, by: number): Vec3 => [x + by, y + by, z + by];
  if (!round) return [around(low, -ROOM), around(high, ROOM)];
  const middle = scale(add(low, high), 0.5);
  const radius = 0.36 * Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) + ROOM;
  return [0, 1, 2].flatMap((axis): Vec3[] =>
    [radius, -radius].map(
      (by) => middle.map((value, k) => (k === axis ? value + by : value)) as unknown as Vec3,
    ),
  );
}
