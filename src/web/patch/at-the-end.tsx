/** The end of a reading: what was not so, where and with what it was read, its name, and into the car file. */
import { useState } from 'react';
import { type FloorSheets, holdWords } from '../../questions/index.ts';
import { printedUnit, type Speech } from '../../units/show.ts';
import { Conflict } from '../forms/conflict.tsx';
import { useKeep } from '../forms/use-keep.ts';
import { usePage } from '../state.tsx';
import { LookedOver } from './looked-over.tsx';
import { MovesDone } from './moves-done.tsx';
import { wrongNumber } from './number-pad.tsx';
import {
  changesOf,
  notSoOf,
  type Run,
  TOLD_TEMPERATURES,
  TOLD_WORDS,
  TOOL_NAMES,
  TOOLS,
  toldBefore,
} from './run.ts';
import type { Running } from './use-run.ts';
import { kindOf } from './words.ts';

interface Props {
  readonly running: Running;
  readonly run: Run;
  readonly sheets: FloorSheets;
  readonly missing: number;
  readonly onBack: () => void;
  /** Goes back to a reading; undefined where there is no such step. */
  readonly to: (id: string) => (() => void) | undefined;
}

export function AtTheEnd({ running, run, sheets, missing, onBack, to }: Props) {
  const { go, speech } = usePage();
  const { told, conflict, waiting, tell, send, clear } = useKeep();
  const [name, setName] = useState(`${run.state}, ${run.on}`);
  const notSo = notSoOf(run);
  const wrong = wrongTemperature(run, speech);
  const keep = async (): Promise<void> => {
    const called = name.trim();
    if (called === '') {
      tell(['Give the sheet a name, such as "as found, 11 May".']);
      return;
    }
    const kept = await send(changesOf(run, called, sheets.instruments), `The sheet ${called} is kept.`);
    if (!kept) return;
    running.drop();
    go({ read: called, floor: 'changes' });
  };
  return (
    <>
      <h3>All read</h3>
      {missing > 0 && (
        <p className="note">{missing} were not read. What is not read leaves the answer less sure.</p>
      )}
      <LookedOver run={run} sheets={sheets} called={name.trim()} to={to} />
      {notSo.length > 0 && (
        <section className="not-so">
          <p>This was not so; it is kept with the sheet:</p>
          <ul>
            {notSo.map((id) => (
              <li key={id} className={id === 'locks' || id === 'marks' ? 'caution' : undefined}>
                <b>Not so:</b> {holdWords(id, sheets.aboard)}
              </li>
            ))}
          </ul>
        </section>
      )}
      {run.state === 'as set' && <MovesDone running={running} run={run} />}
      <ReadWith running={running} run={run} sheets={sheets} />
      <label>
        read by
        <input type="text" value={run.by} onChange={({ target }) => running.change({ by: target.value })} />
      </label>
      <label>
        keep it in the car file as
        <input type="text" value={name} onChange={({ target }) => setName(target.value)} />
      </label>
      {wrong !== undefined && <p role="alert">{wrong}.</p>}
      <p className="row">
        <button
          type="button"
          className="word chief pad-wide"
          disabled={waiting || wrong !== undefined}
          onClick={() => void keep()}
        >
          Keep the sheet
        </button>
      </p>
      {told.map((line) => (
        <p key={line} role="alert">
          {line}
        </p>
      ))}
      {conflict !== undefined && <Conflict conflict={conflict} onTaken={clear} />}
      <p className="row">
        <button type="button" className="plain-word" onClick={onBack}>
          back
        </button>
        <button type="button" className="plain-word" onClick={running.drop}>
          throw this sheet away
        </button>
      </p>
    </>
  );
}

const unitOf = (speech: Speech): string => (speech === 'mm-N' ? 'degC' : 'degF');

/** A temperature as it was typed, in its own unit. */
const bareTemperature = (text: string | undefined): string => (text ?? '').replace(/ deg[CF]$/, '');

function wrongTemperature({ told }: Run, speech: Speech): string | undefined {
  return Object.keys(TOLD_TEMPERATURES)
    .map((key) => wrongNumber(bareTemperature(told[key]), unitOf(speech), 'K'))
    .find((each) => each !== undefined);
}

/** Where it was read and with what; the last sheet's are taken by a press and not filled in as if they were looked at. */
function ReadWith({ running, run, sheets }: Pick<Props, 'running' | 'run' | 'sheets'>) {
  const { speech } = usePage();
  const { told, typed } = run;
  const set = (more: Readonly<Record<string, string>>): void =>
    running.change({ told: { ...told, ...more } });
  const before = sheets.read.findLast((each) => Object.keys(toldBefore(each)).length > 0);
  const tools = TOOL_NAMES.filter((tool) =>
    Object.keys(typed).some((id) => TOOLS[tool].kinds.some((kind) => kind === kindOf(id))),
  );
  return (
    <>
      {before !== undefined && (
        <p className="row">
          <button type="button" className="word pad-wide" onClick={() => set(toldBefore(before))}>
            Take floor and instruments from “{before.name}”
          </button>
        </p>
      )}
      {tools.map((tool) => (
        <label key={tool}>
          {TOOLS[tool].name}, by its name
          <input
            type="text"
            list={`tools ${tool}`}
            value={told[`with.${tool}`] ?? ''}
            onChange={({ target }) => set({ [`with.${tool}`]: target.value })}
          />
          <datalist id={`tools ${tool}`}>
            {Object.entries(sheets.instruments)
              .filter(([, kind]) => kind === TOOLS[tool].class)
              .map(([each]) => (
                <option key={each} value={each} />
              ))}
          </datalist>
        </label>
      ))}
      {Object.entries(TOLD_WORDS).map(([key, words]) => (
        <label key={key}>
          {words}
          <input
            type="text"
            value={told[key] ?? ''}
            onChange={({ target }) => set({ [key]: target.value })}
          />
        </label>
      ))}
      <div className="told-pair">
        {Object.entries(TOLD_TEMPERATURES).map(([key, words]) => (
          <label key={key}>
            {words}, {printedUnit(unitOf(speech))}
            <input
              type="text"
              inputMode="decimal"
              autoComplete="off"
              value={bareTemperature(told[key])}
              onChange={({ target }) =>
                set({ [key]: target.value.trim() === '' ? '' : `${target.value} ${unitOf(speech)}` })
              }
            />
          </label>
        ))}
      </div>
    </>
  );
}
