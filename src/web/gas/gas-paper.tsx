/** Pipes on paper: turned by hand, the scan cut open by a plane across the car, pulses in firing order. */
import { type ReactNode, useId, useMemo } from 'react';
import type { PrimariesScene } from '../../questions/index.ts';
import { useColours } from '../scene/colours.ts';
import { ViewChoice } from '../sheet/controls.tsx';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { Marks, type MarksShown } from './marks.tsx';
import { PipeCanvas } from './pipe-canvas.tsx';
import type { Paper } from './use-paper.ts';

interface Props extends Omit<MarksShown, 'frame' | 'pulses'> {
  readonly title: string;
  /** Said behind the title where there is room. */
  readonly more: string;
  readonly on: Paper;
  /** In the place of the paper's own hands. */
  readonly pointers?: Paper['pointers'];
  readonly scene: PrimariesScene | undefined;
  readonly told: string;
  /** What is drawn is no set yet: it only came nearest. */
  readonly isNear: boolean;
  /** Why there is nothing to draw. */
  readonly refused: readonly string[];
  readonly pulses: boolean;
  readonly onPulses: (on: boolean) => void;
  readonly children?: ReactNode;
}

export function GasPaper({ title, more, on, scene, told, isNear, refused, children, ...of }: Props) {
  const { place } = usePage();
  const colours = useColours();
  const { paper, size, frame, zoom, nearer } = on;
  const { groups, lit, runs, pulses, onPulses, moved, pointers = on.pointers } = of;
  const ends = useMemo(() => endsOf(scene), [scene]);
  const cutAt =
    place.cut === undefined || ends === undefined
      ? undefined
      : ends.rear + place.cut * (ends.front - ends.rear);
  return (
    <main className="drawing gas" aria-label="Drawing">
      <header className="drawing-head">
        <h1>
          {title}
          <span className="more">, {more}</span>
        </h1>
        <ViewChoice />
      </header>
      <div
        className="paper"
        ref={paper}
        {...pointers}
        onWheel={(event) => nearer(Math.exp(-event.deltaY * 0.001))}
      >
        {scene !== undefined && size.width > 0 && (
          <>
            <PipeCanvas
              scene={scene}
              groups={groups}
              lit={lit}
              cutAt={cutAt}
              frame={frame}
              width={size.width}
              height={size.height}
              colours={colours}
              told={told}
            />
            <Marks
              groups={groups}
              lit={lit}
              frame={frame}
              pulses={pulses}
              runs={runs}
              {...(moved === undefined ? {} : { moved })}
            />
            {isNear && <p className="not-a-set">What came nearest. It is no set.</p>}
            {children}
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
            disabled={runs.length === 0}
            onChange={(event) => onPulses(event.target.checked)}
          />
          pulses in firing order
        </label>
        {zoom !== 1 && (
          <button type="button" className="plain-word" onClick={() => nearer()}>
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
