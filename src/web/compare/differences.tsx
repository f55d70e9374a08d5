/** The narrow column between two specs: each figure of the stop on both sides, and what it differs by. */
import { differenceWords, type Figure, SAME } from '../../questions/index.ts';
import type { Opened } from '../engine/answers.ts';
import { useCar } from '../sheet/car-file.tsx';
import { Problems } from '../sheet/problems.tsx';
import { spoken } from '../spoken.ts';
import { usePage } from '../state.tsx';
import { STOPS } from '../stops/words.ts';
import { useOfSpec } from './of-spec.ts';
import type { OtherSpec } from './other-spec.ts';
import { rowsOf } from './rows.ts';
import { type JointOfSpec, TwoJoints } from './two-joints.tsx';

export function Differences({ other }: { other: OtherSpec }) {
  const { place } = usePage();
  const { title } = STOPS[place.stop];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, so the keyboard must reach it
    <section className="differences" aria-label="Differences" tabIndex={0}>
      <h2>{title}</h2>
      {other.opened.state === 'waiting' && <p aria-busy="true">Reading the other spec.</p>}
      {other.opened.state === 'failed' && <p role="status">{other.opened.message}</p>}
      {other.opened.state === 'answered' && <Told other={other} opened={other.opened.answer} />}
    </section>
  );
}

function Told({ other, opened }: { other: OtherSpec; opened: Opened }) {
  return opened.ok ? (
    <Rows other={other} opened={opened} />
  ) : (
    <Problems problems={opened.problems} text={other.source.text} />
  );
}

function Rows({ other, opened }: { other: OtherSpec; opened: Extract<Opened, { ok: true }> }) {
  const { place, speech } = usePage();
  const { car, source, key } = useCar();
  const a = useOfSpec({ car, source, key }, place);
  const b = useOfSpec({ car: opened.car, source: other.source, key: other.key }, place);
  const rows = rowsOf(a.figures, b.figures, place.stop);
  const joints = [
    { spec: car.spec, joint: a.joint },
    { spec: opened.car.spec, joint: b.joint },
  ].filter((each): each is JointOfSpec => each.joint !== undefined);
  const value = (figure: Figure | undefined): string =>
    figure === undefined || !Number.isFinite(figure.value)
      ? '—'
      : spoken(figure.value, figure.unit, speech, figure.spread?.u).text;
  return (
    <>
      {a.message !== undefined && <p role="status">{`${car.spec}: ${a.message}`}</p>}
      {b.message !== undefined && <p role="status">{`${opened.car.spec}: ${b.message}`}</p>}
      <TwoJoints of={joints} />
      {rows.length === 0 && <p>Neither spec has a figure here.</p>}
      {rows.length > 0 && (
        <table>
          <thead>
            <tr>
              <th scope="col">{car.spec}</th>
              <th scope="col">difference</th>
              <th scope="col">{opened.car.spec}</th>
            </tr>
          </thead>
          {rows.map((row) => {
            const { unit } = spoken(row.a?.value ?? row.b?.value ?? 0, row.unit, speech);
            const difference = differenceWords(row, speech);
            return (
              <tbody key={row.id} className={difference === SAME ? 'same' : undefined}>
                <tr>
                  <th scope="rowgroup" colSpan={3}>
                    {row.means}
                    {unit !== '' && <span className="soft">, {unit}</span>}
                  </th>
                </tr>
                <tr>
                  <td className="number">{value(row.a)}</td>
                  <td className="number">
                    <b>{difference}</b>
                  </td>
                  <td className="number">{value(row.b)}</td>
                </tr>
              </tbody>
            );
          })}
        </table>
      )}
    </>
  );
}
