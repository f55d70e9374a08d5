/** Figures over travel, left and right together, with what happens on the way marked. */
import { useState } from 'react';
import { printedUnit, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { rangeOf } from '../sheet/car-drawing.tsx';
import { useCar } from '../sheet/car-file.tsx';
import { type CornerAnswer, positionOf } from '../sheet/use-corner.ts';
import { usePage } from '../state.tsx';
import { Chart } from './chart.tsx';

const COUNT = 81;
const MOST = 4;

const FIRST: Readonly<Record<string, readonly string[]>> = {
  tyre: ['camber', 'toe'],
  upright: ['caster', 'mechanicalTrail'],
  links: ['toe', 'instantCentreHeight'],
  rocker: ['rockerAngle', 'springPerWheel'],
  spring: ['wheelRate', 'barTwist', 'springLength'],
};

export function Curves({ corner }: { corner: CornerAnswer }) {
  const { place, speech } = usePage();
  const { key, source } = useCar();
  const [chosen, choose] = useState<readonly string[]>();
  const { end } = place.wheel;
  const { rack } = positionOf(place);
  const { low, high } = rangeOf(corner);
  const asking = (side: 'left' | 'right') =>
    ask('curves', source, { end, side }, { rack, from: low, to: high, count: COUNT });
  const left = useAnswer(`${key} ${end} left ${rack} ${low} ${high}`, () => asking('left'));
  const right = useAnswer(`${key} ${end} right ${rack} ${low} ${high}`, () => asking('right'));

  if (left.state === 'failed') return <p role="status">{left.message}</p>;
  if (left.state === 'waiting') return <p aria-busy="true">Working the curves out.</p>;
  const { columns, travel, events } = left.answer;
  const wanted = FIRST[place.stop] ?? [];
  const first = wanted.filter((id) => columns.some((column) => column.id === id));
  const ids = chosen ?? (first.length > 0 ? first : columns.slice(0, 2).map((column) => column.id));
  const lengthUnit = spokenUnit('m', speech);
  const across = travel.map((each) => fromSI(each, lengthUnit));

  return (
    <div className="curves">
      <p className="soft">
        Over travel in {lengthUnit}, bump to the right. Left wheel whole, right wheel dashed; the upright line
        is where the wheel stands.
      </p>
      {ids.map((id) => {
        const column = columns.find((each) => each.id === id);
        if (column === undefined) return null;
        const unit = spokenUnit(column.unit, speech);
        const inUnit = (values: readonly (number | null)[]) =>
          values.map((value) => (value === null || !Number.isFinite(value) ? null : fromSI(value, unit)));
        const other =
          right.state === 'answered' ? right.answer.columns.find((each) => each.id === id) : undefined;
        return (
          <figure key={id}>
            <figcaption>
              {column.means}
              {printedUnit(unit) !== '' && `, ${printedUnit(unit)}`}
            </figcaption>
            <Chart
              told={`${column.means} over travel, ${end} left and right`}
              across={across}
              acrossName="travel"
              lines={[
                { name: 'left', values: inUnit(column.values) },
                ...(other === undefined
                  ? []
                  : [{ name: 'right', values: inUnit(other.values), dashed: true, plain: true }]),
              ]}
              marks={events.map((event) => ({ at: fromSI(event.travel, lengthUnit), words: event.what }))}
              now={fromSI(positionOf(place).travel, lengthUnit)}
            />
          </figure>
        );
      })}
      {events.length > 0 && (
        <ul className="events">
          {events.map((event) => (
            <li key={`${event.what} ${event.travel}`}>
              <span className="number">
                {fromSI(event.travel, lengthUnit).toFixed(lengthUnit === 'mm' ? 1 : 2)}
              </span>{' '}
              {event.what}
            </li>
          ))}
        </ul>
      )}
      <fieldset className="columns">
        <legend>Other curves (up to {MOST} at once)</legend>
        {columns.map((column) => (
          <label key={column.id} className="tick-word">
            <input
              type="checkbox"
              checked={ids.includes(column.id)}
              disabled={!ids.includes(column.id) && ids.length >= MOST}
              onChange={(event) =>
                choose(event.target.checked ? [...ids, column.id] : ids.filter((each) => each !== column.id))
              }
            />
            {column.means}
          </label>
        ))}
      </fieldset>
    </div>
  );
}
