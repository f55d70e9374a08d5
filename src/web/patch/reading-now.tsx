/** Reading a sheet on the pads: one thing at a time, a hold to answer or a number to read, in the order of the work. */
import { useEffect, useRef, useState } from 'react';
import type { FloorSheets } from '../../questions/index.ts';
import { printedUnit } from '../../units/show.ts';
import { FromGauge } from '../gauges/put-into-sheet.tsx';
import { usePage } from '../state.tsx';
import { AtTheEnd } from './at-the-end.tsx';
import { NumberPad, wrongNumber } from './number-pad.tsx';
import { PreloadWords } from './preload-words.tsx';
import { ReadingOrder } from './reading-order.tsx';
import { type Run, workedFrom } from './run.ts';
import type { Step } from './steps.ts';
import { BarsAsFound, Clicks, Moved, Wings } from './told-steps.tsx';
import type { Running } from './use-run.ts';
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
  // what is read once more is one reading
  const number = [...new Set(steps.flatMap((each) => (each.what === 'read' ? [each.id] : [])))];
  const done = number.filter((id) => run.typed[id] !== undefined).length;
  const under = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: of each step what is asked is seen, not the keys alone
  useEffect(() => {
    under.current?.scrollIntoView({ block: 'start' });
  }, [step?.key]);
  return (
    <section className="reading-now">
      <p className="soft" role="status">
        {run.state}, {run.on}: {done} of {number.length} readings
      </p>
      <progress max={number.length} value={done} aria-label="readings taken" />
      <ReadingOrder steps={steps} at={at} go={go} />
      {step === undefined ? (
        <AtTheEnd
          running={running}
          run={run}
          sheets={sheets}
          missing={number.length - done}
          onBack={() => go(at - 1)}
          to={(id) => {
            // what was read once more is read there
            const place = steps.findLastIndex((each) => each.what === 'read' && each.id === id);
            return place < 0 ? undefined : () => go(place);
          }}
        />
      ) : (
        <div className="reading-step" ref={under}>
          {/* of its own key: what is half typed at one step is not the next one's */}
          <Now key={step.key} step={step} run={run} sheets={sheets} change={change} at={at} />
          <Back at={at} go={go} />
        </div>
      )}
    </section>
  );
}

export interface StepProps {
  readonly run: Run;
  readonly change: Running['change'];
  readonly at: number;
}

function Now({ step, sheets, ...of }: StepProps & { readonly step: Step; readonly sheets: FloorSheets }) {
  switch (step.what) {
    case 'hold':
      return <Hold step={step} {...of} />;
    case 'bars as found':
      return <BarsAsFound {...of} />;
    case 'read':
      return <One id={step.id} again={step.group === 'once more'} sheets={sheets} {...of} />;
    case 'moved':
      return <Moved pass={step.pass} {...of} />;
    case 'clicks':
      return <Clicks sheets={sheets} {...of} />;
    case 'wings':
      return <Wings sheets={sheets} {...of} />;
  }
}

function Hold({ step, run, change, at }: StepProps & { readonly step: Extract<Step, { what: 'hold' }> }) {
  const { id } = step;
  const answer = (is: boolean): void => change({ held: { ...run.held, [id]: is }, at: at + 1 });
  return (
    <>
      <h3>Before going on</h3>
      <p className="hold-says">{step.says}</p>
      {id === 'links' && <PreloadWords />}
      {run.held[id] !== undefined && (
        <p className="soft">answered: {run.held[id] ? 'it is so' : 'it is not'}</p>
      )}
      <p className="row">
        <button type="button" className="word chief pad-wide" onClick={() => answer(true)}>
          It is so
        </button>
        <button type="button" className="word pad-wide" onClick={() => answer(false)}>
          It is not; go on all the same
        </button>
      </p>
    </>
  );
}

function One({
  id,
  again,
  run,
  sheets,
  change,
  at,
}: StepProps & { readonly id: string; readonly again: boolean; readonly sheets: FloorSheets }) {
  const { speech } = usePage();
  const k = speech === 'mm-N' ? 0 : 1;
  const kind = TYPED[kindOf(id)]!;
  const unit = kind.units[k];
  const word = printedUnit(unit);
  const typed = run.typed[id];
  // what was typed in another unit is shown in its own words and not turned into this one
  // what is read once more is read, not taken over
  const own =
    !again && typed?.endsWith(` ${unit}`) === true && !typed.includes('±')
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
          data-lit={isLit(wheel, lit)}
          x={wheel.endsWith('Left') ? 4 : 42}
          y={wheel.startsWith('front') ? 12 : 56}
          width={wheel.startsWith('front') ? 13 : 14}
          height={18}
        />
      ))}
    </svg>
  );
}

/** Of a wheel its own name, of an axle or a side both wheels. */
const isLit = (wheel: (typeof WHEEL_KEYS)[number], lit: string): boolean =>
  wheel === lit || ` ${WHEEL_WORDS[wheel]} `.includes(` ${lit} `);
