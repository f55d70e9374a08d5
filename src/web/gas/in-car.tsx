/** A found set in its car, on the card: hot beside cold, the nuts of its flanges, the way it comes off. */
import { useEffect, useState } from 'react';
import { type Holdable, type LookedAt, lookedTold, type ToldSection } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import { fetchScans } from './fetch-scans.ts';
import type { InCarAsked, InCarTold } from './in-car-worker.ts';

interface State {
  /** Of which set: another one asks anew. */
  readonly of: string;
  readonly told?: InCarTold;
}

interface Props {
  /** The set in its exchange form, or those of all parts as one file, while no finder is at work on it. */
  readonly file: string;
  readonly side: 'left' | 'right';
  /** The part of that bank, where it has several. */
  readonly part?: string | undefined;
  /** What the finder was asked to hold of it; left out where it was what the car file asks. */
  readonly kinds?: readonly Holdable[];
  /** It stands behind a collector and on no head. */
  readonly isBehind?: boolean;
}

export function InCar({ file, side, part, kinds, isBehind = false }: Props) {
  const { id, car, source } = useCar();
  const [state, setState] = useState<State>();
  const asked = state?.of === file;
  useEffect(() => {
    if (!asked) return;
    const worker = new Worker(new URL('./in-car-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<InCarTold>) => setState({ of: file, told: data });
    worker.onerror = () => setState({ of: file, told: { message: 'The looking broke off. Try it again.' } });
    const open = async (): Promise<void> => {
      const scans = await fetchScans(id, car);
      const told: InCarAsked = { source, side, part, scans, file, kinds };
      worker.postMessage(told);
    };
    open().catch((reason: Error) => setState({ of: file, told: { message: reason.message } }));
    return () => worker.terminate();
  }, [asked, file, kinds, side, part, car, id, source]);
  const told = asked ? state.told : undefined;
  return (
    <section className="in-car">
      <h3>In the car</h3>
      {!asked && (
        <p>
          <button type="button" className="word" onClick={() => setState({ of: file })}>
            {isBehind ? 'Look at it hot' : 'Look at it hot, at its nuts, and how it comes off'}
          </button>
        </p>
      )}
      {asked && told === undefined && <p role="status">Looking; some seconds.</p>}
      {told !== undefined && 'message' in told && <p role="alert">{told.message}</p>}
      {told !== undefined && 'is' in told && <Told is={told.is} side={side} />}
    </section>
  );
}

/** No more rows of gaps than the card has room for. */
const MOST_ROWS = 8;

function Told({ is, side }: { readonly is: LookedAt; readonly side: Props['side'] }) {
  const { speech } = usePage();
  return lookedTold(is, { side, speech, most: MOST_ROWS }).map((section) => (
    <Section key={section.kind} section={section} />
  ));
}

function Section({ section: { kind, title, lead, holds, table, after } }: { readonly section: ToldSection }) {
  return (
    <>
      <h4>{title}</h4>
      {lead.map((words) => (
        <p key={words} data-holds={holds}>
          {kind === 'hot' || kind === 'holds' ? <b>{words}</b> : words}
        </p>
      ))}
      {table !== undefined && table.rows.length > 0 && <Rows kind={kind} table={table} />}
      {after.map((words) => (
        <p key={words} className={kind === 'removal' ? undefined : 'soft'}>
          {words}
        </p>
      ))}
    </>
  );
}

/** Of the gaps how they come nearer can be seen from both; the tools of a nut stand below each other: the card is narrow. */
const COLUMNS = { hot: 5, nuts: 2 } as const;

function Rows({
  kind,
  table: { caption, columns, rows },
}: {
  readonly kind: ToldSection['kind'];
  readonly table: NonNullable<ToldSection['table']>;
}) {
  const alone = kind === 'hot' ? COLUMNS.hot : COLUMNS.nuts;
  const below = kind === 'hot' ? [] : columns.slice(alone);
  return (
    <table className={kind === 'hot' ? 'pipes gaps' : 'pipes nuts'}>
      <caption className="unseen">{caption}</caption>
      <thead>
        <tr>
          {columns.slice(0, alone).map(({ brief }) => (
            <th key={brief} scope="col">
              {brief}
            </th>
          ))}
          {below.length > 0 && <th scope="col">what goes on it</th>}
        </tr>
      </thead>
      <tbody>
        {rows.map(({ cells, lacks }) => (
          <tr key={cells.join(' ')}>
            <th scope="row">{cells[0]}</th>
            {columns.slice(1, alone).map(({ brief, number }, k) => (
              <td key={brief} className={number === true ? 'number' : undefined}>
                {lacks && k === alone - 2 ? <b>{cells[k + 1]}</b> : cells[k + 1]}
              </td>
            ))}
            {below.length > 0 && (
              <td>
                {below.map(({ title }, k) => (
                  <span key={title}>
                    <b>{title}</b> {cells[alone + k]}
                  </span>
                ))}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}
