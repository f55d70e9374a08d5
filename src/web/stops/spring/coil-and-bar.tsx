/** Coil and bar side by side as the car stands: wheel rate and mass, and what they differ by. */
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';

interface Props {
  /** What is there now, and what is to take its place. */
  readonly names: readonly [now: string, proposed: string];
  readonly wheelRate: readonly [now: number, proposed: number];
  /** Left out where the masses are not known. */
  readonly mass?: readonly [now: number, proposed: number];
}

export function CoilAndBar({ names, wheelRate, mass }: Props) {
  const rows = [
    ['wheel rate as the car stands', 'N/m', wheelRate],
    ...(mass === undefined ? [] : ([['mass', 'kg', mass]] as const)),
  ] as const;
  return (
    <table className="side-by-side">
      <thead>
        <tr>
          <th scope="col">
            <span className="unseen">what</span>
          </th>
          <th scope="col">{names[0]}</th>
          <th scope="col">{names[1]}</th>
          <th scope="col">difference</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(([name, unit, [now, proposed]]) => (
          <Row key={name} name={name} unit={unit} now={now} proposed={proposed} />
        ))}
      </tbody>
    </table>
  );
}

function Row({ name, unit, now, proposed }: { name: string; unit: string; now: number; proposed: number }) {
  const { speech } = usePage();
  const less = proposed - now;
  const said = (value: number): string => spoken(value, unit, speech).text;
  return (
    <tr>
      <th scope="row">
        {name}, {spoken(now, unit, speech).unit}
      </th>
      <td className="number">{said(now)}</td>
      <td className="number">{said(proposed)}</td>
      <td className="number">
        <b>
          {less > 0 ? '+' : ''}
          {said(less)}
        </b>
      </td>
    </tr>
  );
}
