/** The card of the flat floor: a sheet that is being read, or what the chosen sheet says at this stop. */
import {
  type FloorSheetRead,
  type FloorSheets,
  type SetUpAnswer,
  STANDING_CAUTION,
} from '../../questions/index.ts';
import type { Asked } from '../engine/ask.ts';
import { GaugeChoice } from '../gauges/gauge-choice.tsx';
import { usePage } from '../state.tsx';
import { Changes } from './changes.tsx';
import { FloorToPrint } from './print-words.tsx';
import { ReadingNow } from './reading-now.tsx';
import type { Step } from './steps.ts';
import { type Running, STATES } from './use-run.ts';
import { bare, KINDS_AT, kindOf, PAD_WORDS, type PadStop, placeWords, said, TYPED } from './words.ts';

interface Props {
  readonly stop: PadStop;
  readonly sheets: FloorSheets;
  readonly read: FloorSheetRead | undefined;
  readonly steps: readonly Step[];
  readonly running: Running;
  readonly setUp: Asked<SetUpAnswer>;
}

export function PatchCard({ stop, sheets, read, steps, running, setUp }: Props) {
  const words = PAD_WORDS[stop];
  const { run } = running;
  return (
    <aside className="card" id="card" aria-label={words.title} tabIndex={-1}>
      <h2>{run === undefined ? words.title : 'On the pads'}</h2>
      {run === undefined ? (
        <>
          <GaugeChoice stop={stop} />
          <p className="soft">{words.is}</p>
          <Begin running={running} />
          {stop === 'changes' ? (
            <>
              <Changes setUp={setUp} />
              {setUp.state === 'answered' && setUp.answer.reached && (
                <FloorToPrint kinds={['adjustments', 'set-up']} />
              )}
            </>
          ) : (
            <>
              <SheetChoice sheets={sheets} read={read} />
              <Readings stop={stop} sheets={sheets} read={read} />
              <FloorToPrint kinds={['set-up']} />
            </>
          )}
        </>
      ) : (
        <ReadingNow running={running} run={run} steps={steps} sheets={sheets} />
      )}
      <p className="caution">
        <b>Caution.</b> {STANDING_CAUTION}
      </p>
    </aside>
  );
}

function Begin({ running }: { readonly running: Running }) {
  return (
    <section>
      <h3>Read the car on the pads</h3>
      <p className="row">
        {STATES.map((state) => (
          <button key={state} type="button" className="word" onClick={() => running.begin(state)}>
            {state}
          </button>
        ))}
      </p>
    </section>
  );
}

function SheetChoice({ sheets, read }: Pick<Props, 'sheets' | 'read'>) {
  const { go } = usePage();
  if (sheets.read.length < 2) return null;
  return (
    <fieldset className="words card-words">
      <legend className="unseen">Sheet</legend>
      {sheets.read.map(({ name }) => (
        <button
          key={name}
          type="button"
          aria-pressed={name === read?.name}
          onClick={() => go({ read: name })}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}

function Readings({ stop, sheets, read }: Pick<Props, 'stop' | 'sheets' | 'read'>) {
  const { speech } = usePage();
  if (read === undefined) {
    return <p>No sheet was read yet. Two people at the pads and this page make one in a few minutes.</p>;
  }
  const kinds = KINDS_AT[stop];
  const rows = read.readings.filter(({ id }) => kinds.includes(kindOf(id)));
  return (
    <section>
      <h3>
        {read.name}
        <span className="soft"> {[read.on, read.by].filter(Boolean).join(', ')}</span>
      </h3>
      {rows.length === 0 && <p className="soft">Nothing of this was read on that sheet.</p>}
      {rows.length > 0 && (
        <table className="pipes floor-readings">
          <caption className="unseen">Readings</caption>
          <thead>
            <tr>
              <th scope="col">where</th>
              <th scope="col">read</th>
              <th scope="col">sheet</th>
            </tr>
          </thead>
          {kinds
            .filter((kind) => rows.some(({ id }) => kindOf(id) === kind))
            .map((kind) => (
              <tbody key={kind}>
                {kinds.length > 1 && (
                  <tr>
                    <th scope="rowgroup" colSpan={3}>
                      {TYPED[kind]!.name}
                    </th>
                  </tr>
                )}
                {rows
                  .filter(({ id }) => kindOf(id) === kind)
                  .map(({ id, value, u }) => {
                    const wanted = sheets.wanted.find((each) => each.id === id);
                    return (
                      <tr key={id}>
                        <th scope="row" className={kinds.length > 1 ? 'of-kind' : undefined}>
                          {placeWords(id)}
                        </th>
                        <td className="number">
                          {said(kind, value, speech)} <span className="soft">± {bare(kind, u, speech)}</span>
                        </td>
                        <td className="number">
                          {wanted === undefined
                            ? ''
                            : `${said(kind, wanted.value, speech)} ± ${bare(kind, wanted.tolerance, speech)}`}
                        </td>
                      </tr>
                    );
                  })}
              </tbody>
            ))}
        </table>
      )}
    </section>
  );
}
