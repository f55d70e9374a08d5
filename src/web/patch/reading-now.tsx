/** Reading a sheet on the pads: one thing at a time, a hold to answer or a number to read, in the order of the work. */
import { useState } from 'react';
import type { FloorSheets } from '../../questions/index.ts';
import { printedUnit } from '../../units/show.ts';
import { Conflict } from '../forms/conflict.tsx';
import { useKeep } from '../forms/use-keep.ts';
import { FromGauge } from '../gauges/put-into-sheet.tsx';
import { usePage } from '../state.tsx';
import { NumberPad, wrongNumber } from './number-pad.tsx';
import type { Step } from './steps.ts';
import { type Run, type Running, sheetForFile, workedFrom } from './use-run.ts';
import { kindOf, placeWords, said, TYPED, WHEEL_KEYS, WHEEL_WORDS } from './words.ts';

interface Props {
  readonly running: Running;
  readonly run: Run;
  readonly steps: readonly Step[];
  readonly sheets: FloorSheets;
}

export function ReadingNow({ running, run, steps, sheets }: Props) {
  const at = Math.min(run.at, steps.length);
  const step = steps[at];
  const { change } = running;
  const go = (to: number): void => change({ at: Math.max(0, Math.min(steps.length, to)) });
  const number = steps.filter(({ what }) => what === 'read');
  const done = number.filter((each) => each.what === 'read' && run.typed[each.id] !== undefined).length;
  return (
    <section className="reading-now">
      <p className="soft" role="status">
        {run.state}, {run.on}: {done} of {number.length} readings
      </p>
      <progress max={number.length} value={done} aria-label="readings taken" />
      {step === undefined ? (
        <AtTheEnd running={running} run={run} missing={number.length - done} onBack={() => go(at - 1)} />
      ) : step.what === 'hold' ? (
        <Hold key={step.id} step={step} run={run} change={change} at={at} go={go} />
      ) : (
        <One key={step.id} id={step.id} run={run} sheets={sheets} change={change} at={at} go={go} />
      )}
    </section>
  );
}

interface StepProps {
  readonly run: Run;
  readonly change: Running['change'];
  readonly at: number;
  readonly go: (to: number) => void;
}

function Hold({ step, run, change, at, go }: StepProps & { readonly step: Extract<Step, { what: 'hold' }> }) {
  const answer = (is: boolean): void => {
    const held = run.held.filter((each) => each !== step.id);
    change({ held: is ? [...held, step.id] : held, at: at + 1 });
  };
  return (
    <>
      <h3>Before going on</h3>
      <p className="hold-says">{step.says}</p>
      <p className="row">
        <button type="button" className="word chief pad-wide" onClick={() => answer(true)}>
          It is so
        </button>
        <button type="button" className="word pad-wide" onClick={() => answer(false)}>
          It is not; go on all the same
        </button>
      </p>
      <Back at={at} go={go} />
    </>
  );
}

function One({
  id,
  run,
  sheets,
  change,
  at,
  go,
}: StepProps & { readonly id: string; readonly sheets: FloorSheets }) {
  const { speech } = usePage();
  const k = speech === 'mm-N' ? 0 : 1;
  const kind = TYPED[kindOf(id)]!;
  const unit = kind.units[k];
  const word = printedUnit(unit);
  const typed = run.typed[id];
  // what was typed in another unit is shown in its own words and not turned into this one
  const own =
    typed?.endsWith(` ${unit}`) === true && !typed.includes('±')
      ? typed.slice(0, -unit.length - 1).replace('-', '−')
      : '';
  const from = workedFrom(run, id);
  const [text, setText] = useState(own);
  const wrong = wrongNumber(text, unit, kind.si);
  const before = [...sheets.read].reverse().find(({ readings }) => readings.some((each) => each.id === id));
  const was = before?.readings.find((each) => each.id === id);
  const wanted = sheets.wanted.find((each) => each.id === id);
  const say = (value: number): string => said(kindOf(id), value, speech);
  // what was typed in other words, or worked out, stands until another number is typed
  const stands = text.trim() === '' && typed !== undefined && own === '';
  const take = (): void => {
    if (wrong !== undefined) return;
    if (stands) {
      change({ at: at + 1 });
      return;
    }
    const { [id]: _, ...others } = run.typed;
    change({
      typed: text.trim() === '' ? others : { ...others, [id]: `${text.trim().replace('−', '-')} ${unit}` },
      at: at + 1,
    });
  };
  return (
    <>
      <h3>
        {kind.name}, <b>{placeWords(id)}</b>
      </h3>
      <div className="reading-place">
        <WheelKey lit={id.slice(id.indexOf('.') + 1)} />
        <p className="soft">
          {was === undefined ? 'not read before' : `${before!.name}: ${say(was.value)}`}
          {wanted !== undefined && (
            <>
              <br />
              sheet: {say(wanted.value)} ± {say(wanted.tolerance)}
            </>
          )}
          {typed !== undefined && own === '' && (
            <>
              <br />
              {from === undefined ? 'typed before' : `worked from ${from}`}: {typed}
            </>
          )}
        </p>
      </div>
      <NumberPad
        name={`${kind.name}, ${placeWords(id)}`}
        unit={unit}
        word={word}
        digits={kind.digits[k]}
        step={kind.step[k]}
        text={text}
        onType={setText}
        onTake={take}
      />
      {wrong !== undefined && <p role="alert">{wrong}.</p>}
      <p className="row">
        <button type="button" className="word chief pad-wide" disabled={wrong !== undefined} onClick={take}>
          {stands ? 'Keep it; next' : text.trim() === '' ? 'Not read; next' : 'Next'}
        </button>
      </p>
      <FromGauge id={id} />
      <Back at={at} go={go} />
    </>
  );
}

function Back({ at, go }: { readonly at: number; readonly go: (to: number) => void }) {
  return (
    <p className="row">
      <button type="button" className="plain-word" disabled={at === 0} onClick={() => go(at - 1)}>
        back
      </button>
    </p>
  );
}

/** The four wheels as the car lies, nose up; the one that is read is filled. */
function WheelKey({ lit }: { readonly lit: string }) {
  return (
    <svg className="wheel-key" viewBox="0 0 60 84" aria-hidden="true">
      <path d="M30 4 22 24V62L26 80H34L38 62V24Z" />
      {WHEEL_KEYS.map((wheel) => (
        <rect
          key={wheel}
          data-lit={wheel === lit || WHEEL_WORDS[wheel] === lit}
          x={wheel.endsWith('Left') ? 4 : 42}
          y={wheel.startsWith('front') ? 12 : 56}
          width={wheel.startsWith('front') ? 13 : 14}
          height={18}
        />
      ))}
    </svg>
  );
}

function AtTheEnd({
  running,
  run,
  missing,
  onBack,
}: {
  readonly running: Running;
  readonly run: Run;
  readonly missing: number;
  readonly onBack: () => void;
}) {
  const { go } = usePage();
  const { told, conflict, waiting, tell, send, clear } = useKeep();
  const [name, setName] = useState(`${run.state}, ${run.on}`);
  const keep = async (): Promise<void> => {
    const called = name.trim();
    if (called === '') {
      tell(['Give the sheet a name, such as "as found, 11 May".']);
      return;
    }
    const kept = await send(
      [{ path: ['floor', 'read', called], value: sheetForFile(run) }],
      `The sheet ${called} is kept.`,
    );
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
      <label>
        read by
        <input type="text" value={run.by} onChange={({ target }) => running.change({ by: target.value })} />
      </label>
      <label>
        keep it in the car file as
        <input type="text" value={name} onChange={({ target }) => setName(target.value)} />
      </label>
      <p className="row">
        <button type="button" className="word chief pad-wide" disabled={waiting} onClick={() => void keep()}>
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
