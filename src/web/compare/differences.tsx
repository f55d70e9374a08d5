/** The narrow column between two specs: each figure of the stop on both sides, and what it differs by. */
import { useMemo } from 'react';
import { compareSpecs } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { Problems } from '../sheet/problems.tsx';
import { positionOf } from '../sheet/use-corner.ts';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { STOPS } from '../stops/words.ts';

export function Differences({ against }: { against: string }) {
  const { place, speech } = usePage();
  const { car, source, key } = useCar();
  const at = positionOf(place);
  const { end, side } = place.wheel;
  const { travel, rack } = at;
  const quick = useMemo(
    () => compareSpecs(source, car.spec, against, { end, side }, { travel, rack }),
    [source, car.spec, against, end, side, travel, rack],
  );
  const sure = useAnswer(`${key} ${against} ${end} ${side} ${travel} ${rack}`, () =>
    ask('compare', source, car.spec, against, { end, side }, at, { spread: true }),
  );
  const answer = sure.state === 'answered' ? sure.answer : quick;
  const rows = answer.rows.filter((row) => row.stop === place.stop && (row.a ?? row.b)!.rank < 3);
  const value = (figure: (typeof rows)[number]['a']) => {
    if (figure === undefined || !Number.isFinite(figure.value)) return '—';
    const shown = spoken(figure.value, figure.unit, speech, figure.spread?.u);
    return shown.text;
  };
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
    <section className="differences" aria-label="Differences" tabIndex={0}>
      <h2>{STOPS[place.stop].title}</h2>
      {answer.problems.length > 0 && <Problems problems={answer.problems} />}
      {answer.notReached.map((line) => (
        <p key={line}>{line}</p>
      ))}
      {rows.length === 0 && <p>{STOPS[place.stop].toCome?.[0] ?? 'Neither spec has a figure here.'}</p>}
      {rows.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{car.spec}</th>
              <th scope="col">difference</th>
              <th scope="col">{against}</th>
            </tr>
          </thead>
          {rows.map((row) => {
            const shown =
              row.difference === undefined
                ? undefined
                : spoken(row.difference, row.unit, speech, leastSpread(row));
            const { unit } = spoken(row.a?.value ?? row.b?.value ?? 0, row.unit, speech);
            const same = row.difference !== undefined && Number((shown?.text ?? '0').replace('−', '-')) === 0;
            return (
              <tbody key={row.id} className={same ? 'same' : undefined}>
                <tr>
                  <th scope="rowgroup" colSpan={3}>
                    {row.means}
                    {unit !== '' && <span className="soft">, {unit}</span>}
                  </th>
                </tr>
                <tr>
                  <td className="number">{value(row.a)}</td>
                  <td className="number">
                    <b>
                      {shown === undefined
                        ? '—'
                        : same
                          ? 'same'
                          : `${row.difference! > 0 ? '+' : ''}${shown.text}`}
                    </b>
                  </td>
                  <td className="number">{value(row.b)}</td>
                </tr>
              </tbody>
            );
          })}
        </table>
      )}
    </section>
  );
}

/** The difference is spoken as finely as the surer of the two figures: what both share falls out of it. */
function leastSpread({
  a,
  b,
}: {
  a?: { spread?: { u: number } };
  b?: { spread?: { u: number } };
}): number | undefined {
  const known = [a?.spread?.u, b?.spread?.u].filter((u) => u !== undefined && u > 0) as number[];
  return known.length === 0 ? undefined : Math.min(...known);
}
