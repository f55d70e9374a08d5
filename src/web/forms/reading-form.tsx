/** A new reading is typed: number, unit, spread, and who read it with what and when. */
import { useId } from 'react';
import { plain, printedUnit, spokenUnit } from '../../units/show.ts';
import { useCar } from '../sheet/car-file.tsx';
import type { Draft } from './draft.ts';
import { keptAt, type ReadingOf } from './fields.ts';
import { KeepFoot, Overwritten, Word } from './keep-foot.tsx';
import { rememberHand, stamped, unitWord, wrongWith } from './stamp.ts';
import { useKeep } from './use-keep.ts';

interface Props {
  readonly field: ReadingOf;
  readonly draft: Draft;
  readonly setDraft: (draft: Draft | undefined) => void;
}

export function ReadingForm({ field, draft, setDraft }: Props) {
  const { car } = useCar();
  const id = useId();
  const keeping = useKeep();
  const { notes, kind, path } = field;
  const { told } = keeping;
  const type = (part: Draft): void => setDraft({ ...draft, ...part });

  const send = async (): Promise<void> => {
    const text = textOf(draft, notes.si);
    const wrong = wrongWith(text, kind, notes);
    keeping.tell(wrong === undefined ? [] : [wrong]);
    if (wrong !== undefined) return;
    rememberHand(draft);
    const change = { path: keptAt(car, path), value: stamped(text, draft) };
    if (await keeping.send([change], `${notes.means}: ${text} kept.`)) setDraft(undefined);
  };

  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p className="soft">
        {notes.measure} {rangeWords(field)}
      </p>
      <Overwritten draft={draft} stands={field.reading?.text ?? ''} />
      <div className="typing">
        <label htmlFor={`${id} value`}>{kind === 'point' ? 'x, y, z' : 'new reading'}</label>
        <input
          id={`${id} value`}
          className="number"
          inputMode={kind === 'point' ? 'text' : 'decimal'}
          value={draft.value ?? ''}
          aria-invalid={told.length > 0}
          aria-describedby={told.length > 0 ? `${id} told` : undefined}
          onChange={(event) => type({ value: event.target.value })}
        />
        <label htmlFor={`${id} unit`} className="unseen">
          unit
        </label>
        <select id={`${id} unit`} value={draft.unit} onChange={(event) => type({ unit: event.target.value })}>
          {unitsOf(field).map((unit) => (
            <option key={unit} value={unit}>
              {unitWord(unit)}
            </option>
          ))}
        </select>
        <label htmlFor={`${id} spread`}>± one standard uncertainty</label>
        <input
          id={`${id} spread`}
          className="number"
          inputMode="decimal"
          value={draft.spread ?? ''}
          onChange={(event) => type({ spread: event.target.value })}
        />
        <Word
          id={`${id} with`}
          name="with (instrument)"
          value={draft.with ?? ''}
          list={Object.keys(car.form.instruments ?? {})}
          onType={(value) => type({ with: value })}
        />
        <Word id={`${id} by`} name="by" value={draft.by ?? ''} onType={(value) => type({ by: value })} />
        <Word
          id={`${id} on`}
          name="on (2026-03-14)"
          value={draft.on ?? ''}
          onType={(value) => type({ on: value })}
        />
      </div>
      <KeepFoot id={id} keeping={keeping} onLeave={() => setDraft(undefined)} />
    </form>
  );
}

const unitsOf = ({ notes }: ReadingOf): readonly string[] => [
  ...new Set([notes.unit, spokenUnit(notes.si, 'in-lbf')]),
];

const textOf = ({ value = '', unit = '', spread = '' }: Draft, si: string): string => {
  const spoken = si === '1' && unit === '1' ? '' : ` ${unit}`;
  const within = spread.trim() === '' ? '' : ` ± ${spread.trim()}${spoken}`;
  return `${value.trim()}${spoken}${within}`;
};

const rangeWords = ({ kind, notes }: ReadingOf): string => {
  if (kind === 'point') return 'x forward, y to the left, z up, in car axes.';
  const unit = printedUnit(notes.unit);
  return `What can be: ${plain(notes.min, digits(notes.min))} to ${plain(notes.max, digits(notes.max))} ${unit}.`;
};

const digits = (value: number): number => (Number.isInteger(value) ? 0 : 2);
