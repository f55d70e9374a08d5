/** The grips on the drawing, each a button for the keyboard, and what is told while a hand pulls. */
import type { HandTold, PrimariesScene } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { type Frame, projected } from '../scene/look.ts';
import { usePage } from '../state.tsx';
import { type Grip, gripName, sameGrip } from './grips.ts';
import type { HandAnswer } from './protocol.ts';

interface Props {
  readonly grips: readonly Grip[];
  readonly chosen: Grip | undefined;
  readonly frame: Frame;
  readonly onChoose: (grip: Grip) => void;
  readonly onKeyDown: (grip: Grip, event: React.KeyboardEvent) => void;
  readonly onBlur: () => void;
}

export function HandGrips({ grips, chosen, frame, onChoose, onKeyDown, onBlur }: Props) {
  return (
    <div className="grips">
      {grips.map((grip) => {
        const { x, y } = projected(frame, grip.at);
        const name = gripName(grip);
        return (
          <button
            key={name}
            type="button"
            className="grip"
            data-what={grip.what}
            data-kept={grip.kept}
            style={{ left: x, top: y }}
            aria-pressed={sameGrip(chosen, grip)}
            aria-label={grip.kept ? `${name}, kept` : name}
            onFocus={() => onChoose(grip)}
            onKeyDown={(event) => onKeyDown(grip, event)}
            onBlur={onBlur}
          />
        );
      })}
    </div>
  );
}

interface LinesProps {
  readonly told: HandTold;
  readonly scene: Pick<PrimariesScene, 'ports'>;
  readonly chosen: Grip | undefined;
  readonly frame: Frame;
}

/** The straights of the chosen pipe drawn out to where they meet: a sharp bend has its corner far outside. */
export function CornerLines({ told, scene, chosen, frame }: LinesProps) {
  if (chosen?.what !== 'bend') return null;
  const { cylinder } = chosen;
  const pipe = told.set.pipes.find((each) => each.cylinder === cylinder);
  const port = scene.ports.find((each) => each.cylinder === cylinder);
  if (pipe === undefined || port === undefined) return null;
  const corners = told.bends.filter((each) => each.cylinder === cylinder).map(({ at }) => at);
  const points = [port.at, ...corners, told.set.collector.inlets[pipe.inlet - 1]!].map((at) => {
    const { x, y } = projected(frame, at);
    return `${x.toFixed(1)},${y.toFixed(1)}`;
  });
  return (
    <svg className="over" aria-hidden="true">
      <polyline className="corner-line under" points={points.join(' ')} />
      <polyline className="corner-line" points={points.join(' ')} />
    </svg>
  );
}

/** The length, and the least room of what is moved; in words, with a mark, where there is none. */
export function HandTells({ hand }: { readonly hand: HandAnswer }) {
  const { speech } = usePage();
  const { told, live, mending, says } = hand;
  const { tight, stop, set } = told;
  const more = speech === 'mm-N' ? 0 : 1;
  const long = (value: number): string => spokenAmount(value, 'm', 1 + more, speech);
  const breached = live && tight !== undefined && tight.spare < 0;
  const room =
    tight === undefined
      ? 'nothing near'
      : breached
        ? `✕ ${long(-tight.spare)} too near ${tight.against}`
        : `least room ${long(tight.gap)} to ${tight.against}, ${long(tight.spare)} to spare`;
  const lines = mending
    ? ['The rest gives way …']
    : [...(live ? [`length ${long(set.target)} held`, room] : [says]), stop].filter(
        (line) => line !== undefined,
      );
  if (lines.length === 0) return null;
  return (
    <output className="hand-tells" aria-live={live ? 'off' : 'polite'}>
      {lines.map((line) => (
        <span key={line} data-breached={breached && line === room}>
          {line}
        </span>
      ))}
    </output>
  );
}
