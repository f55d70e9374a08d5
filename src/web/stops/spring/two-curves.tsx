/** What is there and what is to take its place, over travel: torque about the rocker axis, and wheel rate. */
import { printedUnit, spokenUnit } from '../../../units/show.ts';
import { fromSI } from '../../../units/unit.ts';
import { usePage } from '../../state.tsx';
import { Chart } from '../chart.tsx';

interface Pair {
  readonly now: readonly number[];
  readonly proposed: readonly number[];
}

interface Props {
  readonly travel: readonly number[];
  readonly names: readonly [now: string, proposed: string];
  readonly torque: Pair;
  readonly wheelRate: Pair;
}

export function TwoCurves({ travel, names, torque, wheelRate }: Props) {
  const { speech } = usePage();
  const lengthUnit = spokenUnit('m', speech);
  const across = travel.map((each) => fromSI(each, lengthUnit));
  const chart = (what: string, si: string, { now, proposed }: Pair) => {
    const unit = spokenUnit(si, speech);
    const spoken = (values: readonly number[]) => values.map((each) => fromSI(each, unit));
    return (
      <figure key={what}>
        <figcaption>
          {what}, {printedUnit(unit)}
        </figcaption>
        <Chart
          told={`${what} over travel: ${names[0]} and ${names[1]}`}
          across={across}
          acrossName="travel"
          lines={[
            { name: names[0], values: spoken(now), dashed: true, plain: true },
            { name: names[1], values: spoken(proposed) },
          ]}
          height={170}
        />
      </figure>
    );
  };
  return (
    <div className="curves">
      <p className="soft">Over travel in {lengthUnit}, bump to the right.</p>
      <ul className="legend">
        <li>
          <svg className="legend-line dashed" viewBox="0 0 44 10" aria-hidden="true">
            <path d="M0 5h44" />
          </svg>
          {names[0]}, dashed
        </li>
        <li>
          <svg className="legend-line" viewBox="0 0 44 10" aria-hidden="true">
            <path d="M0 5h44" />
          </svg>
          {names[1]}, whole
        </li>
      </ul>
      {chart('Torque about the rocker axis', 'N m', torque)}
      {chart('Wheel rate', 'N/m', wheelRate)}
    </div>
  );
}
