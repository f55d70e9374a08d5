/** The figures of the stop, standing on the drawing with leaders to what they belong to. */
import { Fragment } from 'react';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { Figure, Wheel } from '../../questions/figure.ts';
import { type Speech, unitAfter } from '../../units/show.ts';
import { type Frame, projected, type Spot } from '../scene/look.ts';
import { spoken } from '../spoken.ts';
import { layLabels, leaderStart, type Paper, type Placed, type Sides } from './lay-labels.ts';
import type { LabelSize } from './use-frame.ts';
import type { Size } from './use-size.ts';

interface Props {
  readonly figures: readonly Figure[];
  readonly drawing: Drawing;
  readonly wheel: Wheel;
  readonly frame: Frame;
  readonly size: Size;
  readonly label: LabelSize;
  readonly sides: Sides;
  readonly speech: Speech;
  readonly onLight: (figure: Figure | undefined) => void;
  readonly onOpen: (figure: Figure) => void;
}

export function Dimensions({
  figures,
  drawing,
  wheel,
  frame,
  size,
  label,
  sides,
  speech,
  onLight,
  onOpen,
}: Props) {
  const paper: Paper = {
    width: size.width,
    top: 8,
    bottom: size.height - 8,
    column: label.column,
    gap: 6,
    sides,
  };
  const placed = layLabels(
    figures.map((figure) => ({
      id: figure.id,
      spot: anchorOf(figure, drawing, wheel, frame, paper),
      height: heightOf(figure, label, speech),
    })),
    paper,
  );
  return (
    <>
      <svg className="leaders" aria-hidden="true">
        {placed.map((each) => (
          <Leader key={each.id} label={each} paper={paper} />
        ))}
      </svg>
      {figures.map((figure, k) => {
        const at = placed.find((each) => each.id === figure.id)!;
        return (
          <Fragment key={figure.id}>
            <Label
              figure={figure}
              number={k + 1}
              at={at}
              label={label}
              speech={speech}
              onLight={onLight}
              onOpen={onOpen}
            />
          </Fragment>
        );
      })}
    </>
  );
}

/** Where the figure belongs, kept on the paper between the columns. */
function anchorOf(figure: Figure, drawing: Drawing, wheel: Wheel, frame: Frame, paper: Paper): Spot {
  const corner = drawing.corners.find(
    (each) => each.wheel.end === wheel.end && each.wheel.side === wheel.side,
  );
  const point = corner?.points[figure.anchor ?? 'wheelCentre'] ?? corner?.tyre.centre ?? frame.centre;
  const { x, y } = projected(frame, point);
  const edge = paper.column + 16;
  return {
    x: Math.min(paper.width - edge, Math.max(edge, x)),
    y: Math.min(paper.bottom, Math.max(paper.top, y)),
  };
}

/** Lines that the label takes, judged from its letters: 8.6 px a letter, 17 px a digit of the large figure. */
function heightOf(figure: Figure, { kind, column }: LabelSize, speech: Speech): number {
  if (kind === 'balloon' || kind === 'none') return 48;
  if (kind === 'short') return 50;
  const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
  const wide = 17 * shown.text.length + 9.5 * (shown.unit.length + (shown.spread?.length ?? -2) + 3);
  return 24 * Math.ceil((figure.means.length * 8.6) / column) + (wide > column - 12 ? 62 : 38);
}

function Leader({ label, paper }: { label: Placed; paper: Paper }) {
  const from = leaderStart(label, paper);
  const stub = label.column === 'left' ? 12 : -12;
  return (
    <>
      <polyline
        points={`${from.x - stub / 2},${from.y} ${from.x + stub},${from.y} ${label.spot.x},${label.spot.y}`}
      />
      <circle cx={label.spot.x} cy={label.spot.y} r="3.5" />
    </>
  );
}

interface LabelProps {
  readonly figure: Figure;
  readonly number: number;
  readonly at: Placed;
  readonly label: LabelSize;
  readonly speech: Speech;
  readonly onLight: (figure: Figure | undefined) => void;
  readonly onOpen: (figure: Figure) => void;
}

function Label({ figure, number, at, label, speech, onLight, onOpen }: LabelProps) {
  const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
  return (
    <button
      type="button"
      className={`label ${label.kind} ${at.column}`}
      data-figure={figure.id}
      title="Open the working"
      style={{ top: at.top, height: at.height, width: label.column - 8 }}
      onPointerDown={(event) => event.stopPropagation()}
      onPointerEnter={() => onLight(figure)}
      onPointerLeave={() => onLight(undefined)}
      onFocus={() => onLight(figure)}
      onBlur={() => onLight(undefined)}
      onClick={() => onOpen(figure)}
    >
      {label.kind === 'full' && <span className="label-means">{figure.means} </span>}
      {label.kind !== 'full' && <span className="balloon">{number}</span>}
      {label.kind !== 'balloon' && (
        <span className="label-value">
          <b className="number">{shown.text}</b>
          <span>{unitAfter(shown.unit)}</span>
          {label.kind === 'full' && shown.spread !== undefined && (
            <span className="soft number"> ±{shown.spread}</span>
          )}
        </span>
      )}
      {label.kind !== 'full' && <span className="unseen">, {figure.means}</span>}
    </button>
  );
}
