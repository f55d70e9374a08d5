/** A found set in its car, on the card: hot beside cold, the nuts of its flanges, the way it comes off. */
import { useEffect, useState } from 'react';
import {
  hotGapWords,
  hotRows,
  hotVerdict,
  hotWords,
  nutsVerdict,
  type PrimariesInCar,
  removalWords,
  scanForms,
  socketWords,
  spannerWords,
} from '../../questions/index.ts';
import { fetchScan } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { usePage } from '../state.tsx';
import type { InCarAsked, InCarTold } from './in-car-worker.ts';

interface State {
  /** Of which set: another one asks anew. */
  readonly of: string;
  readonly told?: InCarTold;
}

/** @param file  the set in its exchange form, while no finder is at work on it */
export function InCar({ file }: { readonly file: string }) {
  const { place } = usePage();
  const { id, car, source } = useCar();
  const { bank } = place;
  const [state, setState] = useState<State>();
  const asked = state?.of === file;
  useEffect(() => {
    if (!asked) return;
    const worker = new Worker(new URL('./in-car-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<InCarTold>) => setState({ of: file, told: data });
    worker.onerror = () => setState({ of: file, told: { message: 'The looking broke off. Try it again.' } });
    const open = async (): Promise<void> => {
      const scans: Record<string, Uint8Array> = {};
      for (const [name, form] of Object.entries(scanForms(car))) scans[name] = await fetchScan(id, form.file);
      const told: InCarAsked = { source, side: bank, scans, file };
      worker.postMessage(told);
    };
    open().catch((reason: Error) => setState({ of: file, told: { message: reason.message } }));
    return () => worker.terminate();
  }, [asked, file, bank, car, id, source]);
  const told = asked ? state.told : undefined;
  return (
    <section className="in-car">
      <h3>In the car</h3>
      {!asked && (
        <p>
          <button type="button" className="word" onClick={() => setState({ of: file })}>
            Look at it hot, at its nuts, and how it comes off
          </button>
        </p>
      )}
      {asked && told === undefined && <p role="status">Looking; some seconds.</p>}
      {told !== undefined && 'message' in told && <p role="alert">{told.message}</p>}
      {told !== undefined && 'is' in told && <Told is={told.is} />}
    </section>
  );
}

function Told({ is: { hot, nuts, removal } }: { readonly is: PrimariesInCar }) {
  const { speech, place } = usePage();
  return (
    <>
      <h4>Hot</h4>
      <p data-holds={hot.holds}>
        <b>{hotVerdict(hot, speech)}</b>
      </p>
      <HotGaps hot={hot} />
      {hotWords(hot, speech).map((words) => (
        <p key={words} className="soft">
          {words}
        </p>
      ))}
      <h4>Nuts of the flanges</h4>
      {nuts.reached ? (
        <>
          <p>{nutsVerdict(nuts, speech)}</p>
          <table className="pipes nuts">
            <caption className="unseen">Socket and open spanner on each nut</caption>
            <thead>
              <tr>
                <th scope="col">cyl.</th>
                <th scope="col">nut</th>
                <th scope="col">socket</th>
                <th scope="col">open spanner</th>
              </tr>
            </thead>
            <tbody>
              {nuts.nuts.map((each) => (
                <tr key={`${each.cylinder} ${each.stud}`}>
                  <th scope="row">{each.cylinder}</th>
                  <td>{each.where}</td>
                  <td>{socketWords(each, speech)}</td>
                  <td>{spannerWords(each, speech)}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <p className="soft">Left and right as seen from the tube, looking at the head.</p>
        </>
      ) : (
        <p className="note">{nuts.message}</p>
      )}
      <h4>Taking it off</h4>
      {removalWords(removal, place.bank, speech).map((words) => (
        <p key={words}>{words}</p>
      ))}
    </>
  );
}

/** No more rows than the card has room for. */
const MOST_ROWS = 8;

function HotGaps({ hot }: { readonly hot: PrimariesInCar['hot'] }) {
  const { speech } = usePage();
  const rows = hotRows(hot).slice(0, MOST_ROWS);
  if (rows.length === 0) return null;
  return (
    <table className="pipes gaps">
      <caption className="unseen">Gaps hot beside cold</caption>
      <thead>
        <tr>
          <th scope="col">cyl.</th>
          <th scope="col">to</th>
          <th scope="col">asked</th>
          <th scope="col">cold</th>
          <th scope="col">hot</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((gap) => {
          const said = hotGapWords(gap, hot, speech);
          return (
            <tr key={`${gap.cylinder} ${gap.against}`}>
              <th scope="row">{gap.cylinder}</th>
              <td>{gap.against}</td>
              <td className="number">{said.asked}</td>
              <td className="number">{said.cold}</td>
              <td className="number">
                {gap.hot !== undefined && gap.hot < gap.asked ? <b>{said.hot}</b> : said.hot}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
