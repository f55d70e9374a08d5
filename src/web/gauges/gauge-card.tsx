/** The card of a reading by hand: what was read is typed, what comes of it stands below with what must be said beside. */
import { STANDING_CAUTION } from '../../questions/index.ts';
import { AskedForm } from '../asked/asked-form.tsx';
import { fieldsIn } from '../asked/fields.ts';
import { DayFigures } from '../day/figures.tsx';
import { Remarks } from '../loads/remarks.tsx';
import type { Step } from '../patch/steps.ts';
import type { Running } from '../patch/use-run.ts';
import type { PadStop } from '../patch/words.ts';
import { usePage } from '../state.tsx';
import { BumpSteerTable } from './bump-steer.tsx';
import { GaugeChoice } from './gauge-choice.tsx';
import { PutIntoSheet } from './put-into-sheet.tsx';
import { type Gauge, gaugedIn, ownedFigures } from './use-gauge.ts';
import { GAUGE_FIELDS, GAUGE_WORDS } from './words.ts';

/** Figures of a reading by hand are named so in the address: `gauge.behindFront`. */
export const GAUGE_FIGURE = 'gauge.';

interface Props {
  readonly stop: PadStop;
  readonly gauge: Gauge;
  readonly steps: readonly Step[];
  readonly running: Running;
}

export function GaugeCard({ stop, gauge, steps, running }: Props) {
  const { name, read } = gauge;
  const { title, is } = GAUGE_WORDS[name];
  return (
    <aside className="card gauge" id="card" aria-label={title} tabIndex={-1}>
      <h2>{title}</h2>
      <GaugeChoice stop={stop} reading={running.run !== undefined} />
      <p className="soft">{is}</p>
      <AskedForm card={name} groups={GAUGE_FIELDS[name]} read={read} />
      <Stands gauge={gauge} steps={steps} running={running} />
    </aside>
  );
}

function Stands({ gauge, steps, running }: Omit<Props, 'stop'>) {
  const { go } = usePage();
  const { name, is } = gauge;
  const caution = (
    <p className="caution">
      <b>Caution.</b> {STANDING_CAUTION}
    </p>
  );
  if (is === undefined)
    return (
      <>
        <ToBeTyped gauge={gauge} />
        {caution}
      </>
    );
  if (is.state === 'waiting') return <p role="status">Working it out.</p>;
  if (is.state === 'failed') return <p role="alert">{is.message}</p>;
  const { answer } = is;
  if (!answer.reached)
    return (
      <>
        <p role="alert">{answer.message}</p>
        {caution}
      </>
    );
  const gauged = gaugedIn(gauge);
  return (
    <>
      <LeftOut gauge={gauge} />
      {gauged !== undefined && <PutIntoSheet answer={gauged} steps={steps} running={running} />}
      {name === 'bump-steer' ? (
        <BumpSteerTable gauge={gauge} />
      ) : (
        <DayFigures
          figures={ownedFigures(answer)}
          open={name === 'weighing' ? ({ id }) => go({ figure: `${GAUGE_FIGURE}${id}` }) : undefined}
        />
      )}
      <Remarks notes={answer.notes} cautions={answer.cautions} />
    </>
  );
}

const namesOf = ({ name }: Gauge, keys: readonly string[]): readonly string[] =>
  fieldsIn(GAUGE_FIELDS[name])
    .filter(({ key }) => keys.includes(key))
    .map((field) => (field.such === undefined ? field.name : `${field.name}, such as ${field.such}`));

function ToBeTyped({ gauge }: { readonly gauge: Gauge }) {
  const { wrong, missing, half } = gauge.read;
  const names = namesOf(gauge, [...missing, ...half]);
  return (
    <p role="status">
      {Object.keys(wrong).length > 0
        ? 'What is marked above cannot be read.'
        : names.length > 0
          ? `Still to be typed: ${names.join('; ')}.`
          : GAUGE_WORDS[gauge.name].first}
    </p>
  );
}

/** What was begun and is not whole stays out of the answer, and is not passed over in silence. */
function LeftOut({ gauge }: { readonly gauge: Gauge }) {
  const names = namesOf(gauge, gauge.read.half);
  if (names.length === 0) return null;
  return <p role="status">Not counted until it is typed: {names.join('; ')}.</p>;
}
