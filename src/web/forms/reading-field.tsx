/** One reading: the value before stays beside the new one and is never filled in. */
import { useId, useState } from 'react';
import { spreadWords } from '../../measured/reading.ts';
import { readPoint, readWithSpread } from '../../units/read.ts';
import { plain, printedUnit, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import type { Kept } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';
import { DATE } from '../sheet/title-block.tsx';
import { usePage } from '../state.tsx';
import { Conflict } from './conflict.tsx';
import { type Draft, useDraft } from './draft.ts';
import { type Field, keptAt } from './fields.ts';

const OWN_HAND = 'own hand';

export function ReadingField({ field }: { field: Field }) {
  const { file, car, keep } = useCar();
  const { say } = usePage();
  const { notes, reading } = field;
  const id = useId();
  const [draft, setDraft] = useDraft(`${file.id} ${car.spec} ${field.path.join('.')}`);
  const [told, setTold] = useState<readonly string[]>([]);
  const [conflict, setConflict] = useState<Extract<Kept, { kind: 'conflict' }>>();
  const [waiting, setWaiting] = useState(false);
  const stands = reading?.text ?? '';

  const begin = (): void =>
    setDraft({
      value: '',
      unit: notes.unit,
      spread: '',
      with: '',
      by: localStorage.getItem(OWN_HAND) ?? '',
      on: DATE.format(new Date()),
      was: stands,
    });

  const send = async (now: Draft): Promise<void> => {
    const text = textOf(now, notes.si);
    const wrong = wrongWith(text, field);
    setTold(wrong === undefined ? [] : [wrong]);
    if (wrong !== undefined) return;
    localStorage.setItem(OWN_HAND, now.by);
    setWaiting(true);
    try {
      const kept = await keep([{ path: keptAt(car, field.path), value: stamped(text, now) }]);
      if (kept.kind === 'kept') {
        setDraft(undefined);
        setConflict(undefined);
        say(`${notes.means}: ${text} kept.`);
      } else if (kept.kind === 'conflict') setConflict(kept);
      else
        setTold(kept.problems.map((problem) => [problem.message, problem.remedy].filter(Boolean).join(' ')));
    } catch (reason) {
      setTold([`${(reason as Error).message} What you typed is still here.`]);
    } finally {
      setWaiting(false);
    }
  };

  return (
    <div className="field" data-path={field.path.join('.')}>
      <p className="field-means">{notes.means}</p>
      <p className="field-stands">
        {reading === undefined ? (
          <span className="soft">not in the file</span>
        ) : (
          <span className="number">{stands}</span>
        )}
        {reading !== undefined && <span className="soft"> {qualityOf(field)}</span>}
      </p>
      {field.surveyed && (
        <p className="soft">This point comes from the survey; change the survey's readings instead.</p>
      )}
      {reading?.mirrored && (
        <p className="soft">Taken from the left. Measure it there, or write this side into car.yaml.</p>
      )}
      {!field.surveyed && !reading?.mirrored && draft === undefined && (
        <button
          type="button"
          className="plain-word"
          aria-label={`Measure again: ${notes.means}`}
          onClick={begin}
        >
          {reading === undefined ? 'measure' : 'measure again'}
        </button>
      )}
      {draft !== undefined && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void send(draft);
          }}
        >
          <p className="soft">
            {notes.measure} {rangeWords(field)}
          </p>
          {draft.was !== stands && (
            <p className="note" role="status">
              While you typed, another hand changed this from "{draft.was || 'nothing'}" to "
              {stands || 'nothing'}". Yours is still below.
            </p>
          )}
          <div className="typing">
            <label htmlFor={`${id} value`}>{field.kind === 'point' ? 'x, y, z' : 'new reading'}</label>
            <input
              id={`${id} value`}
              className="number"
              inputMode={field.kind === 'point' ? 'text' : 'decimal'}
              value={draft.value}
              aria-invalid={told.length > 0}
              aria-describedby={told.length > 0 ? `${id} told` : undefined}
              onChange={(event) => setDraft({ ...draft, value: event.target.value })}
            />
            <label htmlFor={`${id} unit`} className="unseen">
              unit
            </label>
            <select
              id={`${id} unit`}
              value={draft.unit}
              onChange={(event) => setDraft({ ...draft, unit: event.target.value })}
            >
              {unitsOf(field).map((unit) => (
                <option key={unit} value={unit}>
                  {printedUnit(unit) || 'number'}
                </option>
              ))}
            </select>
            <label htmlFor={`${id} spread`}>± one standard uncertainty</label>
            <input
              id={`${id} spread`}
              className="number"
              inputMode="decimal"
              value={draft.spread}
              onChange={(event) => setDraft({ ...draft, spread: event.target.value })}
            />
            <Word
              id={`${id} with`}
              name="with (instrument)"
              value={draft.with}
              list={Object.keys(car.form.instruments ?? {})}
              onType={(value) => setDraft({ ...draft, with: value })}
            />
            <Word
              id={`${id} by`}
              name="by"
              value={draft.by}
              onType={(value) => setDraft({ ...draft, by: value })}
            />
            <Word
              id={`${id} on`}
              name="on (2026-03-14)"
              value={draft.on}
              onType={(value) => setDraft({ ...draft, on: value })}
            />
          </div>
          {told.length > 0 && (
            <div id={`${id} told`} role="alert" className="told">
              {told.map((line) => (
                <p key={line}>{line}</p>
              ))}
            </div>
          )}
          {conflict !== undefined && <Conflict conflict={conflict} onTaken={() => setConflict(undefined)} />}
          <p className="row">
            <button type="submit" className="word chief" disabled={waiting || conflict !== undefined}>
              Keep
            </button>
            <button
              type="button"
              className="plain-word"
              onClick={() => {
                setDraft(undefined);
                setTold([]);
                setConflict(undefined);
              }}
            >
              leave it
            </button>
          </p>
        </form>
      )}
    </div>
  );
}

interface WordProps {
  readonly id: string;
  readonly name: string;
  readonly value: string;
  readonly list?: readonly string[];
  readonly onType: (value: string) => void;
}

function Word({ id, name, value, list = [], onType }: WordProps) {
  return (
    <>
      <label htmlFor={id}>{name}</label>
      <input
        id={id}
        value={value}
        list={list.length > 0 ? `${id} list` : undefined}
        onChange={(event) => onType(event.target.value)}
      />
      {list.length > 0 && (
        <datalist id={`${id} list`}>
          {list.map((each) => (
            <option key={each} value={each} />
          ))}
        </datalist>
      )}
    </>
  );
}

const unitsOf = ({ notes }: Field): readonly string[] => [
  ...new Set([notes.unit, spokenUnit(notes.si, 'in-lbf')]),
];

const textOf = (draft: Draft, si: string): string => {
  const unit = si === '1' && draft.unit === '1' ? '' : ` ${draft.unit}`;
  const spread = draft.spread.trim() === '' ? '' : ` ± ${draft.spread.trim()}${unit}`;
  return `${draft.value.trim()}${unit}${spread}`;
};

function stamped(text: string, draft: Draft): unknown {
  const known = (['with', 'by', 'on'] as const).filter((key) => draft[key].trim() !== '');
  if (known.length === 0) return text;
  return { is: text, ...Object.fromEntries(known.map((key) => [key, draft[key].trim()])) };
}

function wrongWith(text: string, { kind, notes }: Field): string | undefined {
  const read = kind === 'point' ? readPoint(text) : readWithSpread(text, notes.si);
  return read.ok ? undefined : `${notes.means}: ${read.why}.`;
}

const rangeWords = ({ kind, notes }: Field): string => {
  if (kind === 'point') return 'x forward, y to the left, z up, in car axes.';
  const unit = printedUnit(notes.unit);
  return `What can be: ${plain(notes.min, digits(notes.min))} to ${plain(notes.max, digits(notes.max))} ${unit}.`;
};

const digits = (value: number): number => (Number.isInteger(value) ? 0 : 2);

function qualityOf({ reading, kind }: Field): string {
  if (reading === undefined) return '';
  const unit = spokenUnit(reading.unit, 'mm-N');
  const u = `± ${Number(fromSI(reading.u, unit).toPrecision(2))} ${printedUnit(unit)}`;
  const who = [reading.by && `by ${reading.by}`, reading.on, reading.instrument].filter(Boolean).join(', ');
  return `${reading.u > 0 ? `${u}${kind === 'point' ? ' each way' : ''}; ` : ''}${spreadWords(reading)}${who === '' ? '' : `; ${who}`}`;
}
