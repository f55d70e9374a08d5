/**
 * The force on the drawing: members as thick as their force with a letter for pull or push, arrows at their places,
 * studs with what is left on their pads. The largest have their figure beside them; all have a title.
 */
import { useMemo } from 'react';
import { type Car, drawnForces, type ForcesDrawn } from '../../questions/index.ts';
import { spokenAmount } from '../../units/show.ts';
import { isLoaded } from '../place.ts';
import { type Frame, projected, type Spot } from '../scene/look.ts';
import { usePage } from '../state.tsx';
import { arrowPath, clearLabels, type Words } from './force-shapes.ts';
import { useDoing } from './use-case.ts';

/** Below these, N and N m, there is nothing to draw, as on the card. */
const NOTHING = 0.5;
const NO_COUPLE = 0.05;
/** Arrows that have their figure, at most. */
const TOLD = 5;

interface Props {
  readonly car: Car;
  readonly frame: Frame;
  readonly size: { readonly width: number; readonly height: number };
}

export function ForceDrawing({ car, frame, size }: Props) {
  const { place, speech } = usePage();
  const doing = useDoing();
  const on = place.way === 'load' && isLoaded(place);
  const { stop, joint } = place;
  const { end, side } = place.wheel;
  const drawn = useMemo(
    () => (on ? drawnForces(car, stop, { doing, joint, wheel: { end, side } }) : undefined),
    [on, car, stop, doing, joint, end, side],
  );
  if (drawn === undefined) return null;
  const newtons = (value: number): string => spokenAmount(Math.abs(value), 'N', 0, speech);
  const couples = (value: number): string => spokenAmount(value, 'N m', 0, speech);
  const longest = Math.min(120, size.width / 5);
  const spot = (at: ForcesDrawn['arrows'][number]['at']): Spot => projected(frame, at);
  const most = Math.max(1, ...drawn.arrows.map(({ size: force }) => force));
  const arrows = drawn.arrows
    .filter(({ size: force, moment }) => force > NOTHING || moment > NO_COUPLE)
    .sort((a, b) => b.size - a.size)
    .map((each) => {
      const from = spot(each.at);
      // the projection is parallel: a force is drawn in true direction, and shorter where it comes towards the eye
      const way = projected({ ...frame, scale: longest / most }, each.force);
      const none = projected({ ...frame, scale: longest / most }, [0, 0, 0]);
      const to = { x: from.x + way.x - none.x, y: from.y + way.y - none.y };
      return { ...each, from, to };
    });
  const words: readonly Words[] = [
    ...arrows.slice(0, TOLD).map(({ name, size: force, to }) => ({ id: name, text: newtons(force), at: to })),
    ...drawn.studs.map(({ name, left, at }) => ({ id: name, text: newtons(left), at: spot(at) })),
  ];
  const greatest = Math.max(1, ...drawn.members.map(({ tension }) => Math.abs(tension)));
  return (
    <svg className="forces" role="img" aria-label="Forces at this stop">
      {drawn.members.map(({ name, means, from, to, tension }, k) => {
        const [a, b] = [spot(from), spot(to)];
        // members that lie behind one another have their letters side by side
        const part = 0.3 + (0.4 * k) / Math.max(1, drawn.members.length - 1);
        return (
          <g key={name} className="member">
            <title>{`${means}: ${newtons(tension)} of ${tension < 0 ? 'push' : 'pull'}`}</title>
            <line
              x1={a.x}
              y1={a.y}
              x2={b.x}
              y2={b.y}
              strokeWidth={2 + (10 * Math.abs(tension)) / greatest}
              strokeDasharray={tension < 0 ? undefined : '14 5'}
            />
            <text x={a.x + part * (b.x - a.x)} y={a.y + part * (b.y - a.y)} textAnchor="middle" dy={6}>
              {tension < 0 ? 'C' : 'T'}
            </text>
          </g>
        );
      })}
      {drawn.members.length > 0 && (
        <text x={12} y={size.height - 12}>
          T: pull, in dashes. C: push.
        </text>
      )}
      {arrows.map(({ name, size: force, moment, from, to }) => (
        <g key={name} className="arrow">
          <title>
            {`${name}: ${newtons(force)}${moment > NO_COUPLE ? `, with a couple of ${couples(moment)}` : ''}`}
          </title>
          <circle cx={from.x} cy={from.y} r={3.5} />
          {force > NOTHING && <path d={arrowPath(from, to)} />}
          {moment > NO_COUPLE && (
            <path className="couple" d={`M${from.x - 9} ${from.y}a9 9 0 1 1 9 9m4 -4l-4 4l4 4`} />
          )}
        </g>
      ))}
      {drawn.studs.map(({ name, at, left, share, worst }) => {
        const { x, y } = spot(at);
        return (
          <g key={name} className="stud" data-worst={worst}>
            <title>{`${name}: ${newtons(left)} left on its pad${worst ? ', least of all' : ''}`}</title>
            <circle cx={x} cy={y} r={9} />
            <circle className="kept" cx={x} cy={y} r={9 * Math.sqrt(Math.max(0, Math.min(1, share)))} />
            {worst && <circle className="ring" cx={x} cy={y} r={14} />}
          </g>
        );
      })}
      {clearLabels(words, size).map(({ id, text, at }) => (
        <text key={id} className="told" x={at.x} y={at.y} textAnchor="middle">
          {text}
        </text>
      ))}
    </svg>
  );
}
