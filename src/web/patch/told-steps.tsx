/** Steps that are neither a hold nor a reading: bars as found, what was moved, clicks and wings. */
import type { FloorSheets } from '../../questions/index.ts';
import { plain } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { wrongNumber } from './number-pad.tsx';
import type { StepProps } from './reading-now.tsx';
import { CLICK_NAMES } from './run.ts';
import { WHEEL_KEYS, WHEEL_WORDS } from './words.ts';

export function BarsAsFound({ run, change, at }: StepProps) {
  const answer = (bars: 'connected' | 'disconnected'): void => change({ bars, at: at + 1 });
  return (
    <>
      <h3>Bars as the car came</h3>
      <p className="hold-says">
        Undo nothing: as found is how the car stood when it came. How are the drop links of the anti-roll
        bars?
      </p>
      {run.bars !== undefined && (
        <p className="soft">answered: {run.bars === 'connected' ? 'on' : 'off, or no bars'}</p>
      )}
      <p className="row">
        <button type="button" className="word chief pad-wide" onClick={() => answer('connected')}>
          They are on
        </button>
        <button type="button" className="word pad-wide" onClick={() => answer('disconnected')}>
          They are off, or there is no bar
        </button>
      </p>
    </>
  );
}

export function Moved({ pass, run, change, at }: StepProps & { readonly pass: number }) {
  return (
    <>
      <h3>Before the bars go on</h3>
      <p className="hold-says">
        Was a rod, platform, link or shim moved since heights, camber and toe were {pass > 1 ? 'last ' : ''}
        read? One adjuster moves them all.
      </p>
      <p className="row">
        <button
          type="button"
          className="word chief pad-wide"
          onClick={() => change({ passes: pass - 1, at: at + 1 })}
        >
          Nothing was moved
        </button>
        <button
          type="button"
          className="word pad-wide"
          onClick={() => change({ passes: Math.max(run.passes, pass), at: at + 1 })}
        >
          Something was; read once more
        </button>
      </p>
    </>
  );
}

interface FormProps extends StepProps {
  readonly sheets: FloorSheets;
}

/** The clicks of every damper, counted; what the last sheet has stands beside the boxes and is not filled in. */
export function Clicks({ sheets, run, change, at }: FormProps) {
  const { told } = run;
  const before = sheets.read.findLast(({ clicks }) => clicks !== undefined);
  const from = told.clicksFrom ?? before?.clicks?.from ?? 'full soft';
  const keys = WHEEL_KEYS.flatMap((wheel) =>
    Object.keys(CLICK_NAMES).map((name) => `clicks.${wheel}.${name}`),
  );
  const wrong = keys.find((key) => !/^\d{0,2}$/.test(told[key]?.trim() ?? ''));
  const typed = keys.some((key) => (told[key] ?? '').trim() !== '');
  const set = (key: string, text: string): void =>
    change({ told: { ...told, clicksFrom: from, [key]: text } });
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong === undefined) change({ at: at + 1 });
      }}
    >
      <h3>Clicks of the dampers</h3>
      <fieldset className="words card-words">
        <legend>counted from</legend>
        {(['full soft', 'full hard'] as const).map((each) => (
          <button
            key={each}
            type="button"
            aria-pressed={each === from}
            onClick={() => change({ told: { ...told, clicksFrom: each } })}
          >
            {each}
          </button>
        ))}
      </fieldset>
      <table className="pipes told-boxes">
        <caption className="unseen">Clicks</caption>
        <thead>
          <tr>
            <th scope="col">wheel</th>
            {Object.values(CLICK_NAMES).map((name) => (
              <th scope="col" key={name}>
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {WHEEL_KEYS.map((wheel) => (
            <tr key={wheel}>
              <th scope="row">{WHEEL_WORDS[wheel]}</th>
              {(['bump', 'rebound'] as const).map((name) => {
                const key = `clicks.${wheel}.${name}`;
                const was = before?.clicks?.[wheel]?.[name];
                return (
                  <td key={name}>
                    <input
                      type="text"
                      inputMode="numeric"
                      autoComplete="off"
                      aria-label={`${name}, ${WHEEL_WORDS[wheel]}`}
                      value={told[key] ?? ''}
                      onChange={({ target }) => set(key, target.value)}
                    />
                    {was !== undefined && <span className="soft"> was {was}</span>}
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
      {before !== undefined && (
        <p className="soft">
          was: {before.name}, from {before.clicks!.from}
        </p>
      )}
      {wrong !== undefined && <p role="alert">Clicks are whole numbers.</p>}
      <Onward wrong={wrong !== undefined} typed={typed} not="Not counted; next" />
    </form>
  );
}

const WINGS = ['front', 'rear'] as const;

/** Angles of the wings, by the names that the last sheet gave them. */
export function Wings({ sheets, run, change, at }: FormProps) {
  const { told } = run;
  const before = sheets.read.findLast(({ wings }) => Object.keys(wings).length > 0);
  const names = before === undefined ? WINGS : Object.keys(before.wings);
  // kept with its unit, typed without it
  const bare = (key: string): string => (told[key] ?? '').replace(/ deg$/, '');
  const wrong = names
    .map((name) => wrongNumber(bare(`wings.${name}`), 'deg', 'rad'))
    .find((each) => each !== undefined);
  const set = (key: string, text: string): void =>
    change({ told: { ...told, [key]: text.trim() === '' ? '' : `${text.replace(',', '.')} deg` } });
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        if (wrong === undefined) change({ at: at + 1 });
      }}
    >
      <h3>Wings</h3>
      <p className="soft">Angle to the floor, nose down positive.</p>
      {names.map((name) => {
        const was = before?.wings[name];
        return (
          <label key={name}>
            <span>
              {name}, °
              {was !== undefined && <span className="soft"> was {plain(fromSI(was, 'deg'), 1)}</span>}
            </span>
            <input
              type="text"
              inputMode="decimal"
              autoComplete="off"
              value={bare(`wings.${name}`)}
              onChange={({ target }) => set(`wings.${name}`, target.value)}
            />
          </label>
        );
      })}
      {wrong !== undefined && <p role="alert">{wrong}.</p>}
      <Onward
        wrong={wrong !== undefined}
        typed={names.some((name) => bare(`wings.${name}`) !== '')}
        not="Not read; next"
      />
    </form>
  );
}

function Onward({
  wrong,
  typed,
  not,
}: {
  readonly wrong: boolean;
  readonly typed: boolean;
  readonly not: string;
}) {
  return (
    <p className="row">
      <button type="submit" className="word chief pad-wide" disabled={wrong}>
        {typed ? 'Next' : not}
      </button>
    </p>
  );
}
