/** One reading: the value before stays beside the new one and is never filled in. */
import { spreadWords } from '../../measured/reading.ts';
import { printedUnit, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import { useCar } from '../sheet/car-file.tsx';
import { useDraft } from './draft.ts';
import type { ReadingOf } from './fields.ts';
import { ReadingForm } from './reading-form.tsx';
import { newStamp } from './stamp.ts';

export function ReadingField({ field }: { field: ReadingOf }) {
  const { file, car } = useCar();
  const { notes, reading } = field;
  const [draft, setDraft] = useDraft(`${file.id} ${car.spec} ${field.path.join('.')}`);
  const stands = reading?.text ?? '';
  const open = !field.surveyed && !reading?.mirrored;

  return (
    <div className="field" data-path={field.path.join('.')}>
      <div className="field-head">
        <p className="field-means">{notes.means}</p>
        {open && draft === undefined && (
          <button
            type="button"
            className="plain-word"
            aria-label={`${reading === undefined ? 'Measure' : 'Measure again'}: ${notes.means}`}
            onClick={() => setDraft({ value: '', unit: notes.unit, spread: '', ...newStamp(), was: stands })}
          >
            {reading === undefined ? 'measure' : 'measure again'}
          </button>
        )}
      </div>
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
      {draft !== undefined && <ReadingForm field={field} draft={draft} setDraft={setDraft} />}
    </div>
  );
}

function qualityOf({ reading, kind }: ReadingOf): string {
  if (reading === undefined) return '';
  const unit = spokenUnit(reading.unit, 'mm-N');
  const u = `± ${Number(fromSI(reading.u, unit).toPrecision(2))} ${printedUnit(unit)}`;
  const who = [reading.by && `by ${reading.by}`, reading.on, reading.instrument].filter(Boolean).join(', ');
  return `${reading.u > 0 ? `${u}${kind === 'point' ? ' each way' : ''}; ` : ''}${spreadWords(reading)}${who === '' ? '' : `; ${who}`}`;
}
