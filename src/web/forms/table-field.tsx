/** A measured curve, row by row: what stands is shown above each new figure, and an empty place keeps it. */
import { useId } from 'react';
import { useCar } from '../sheet/car-file.tsx';
import { type Draft, useDraft } from './draft.ts';
import type { TableOf } from './fields.ts';
import { KeepFoot, Overwritten } from './keep-foot.tsx';
import { changesOf, MORE, standsOf, TAKEN_OUT, wrongRows } from './table-changes.ts';
import { TableRows } from './table-rows.tsx';
import { useKeep } from './use-keep.ts';

export function TableField({ field }: { field: TableOf }) {
  const { file, car } = useCar();
  const id = useId();
  const keeping = useKeep();
  const { path, means, columns, rows } = field;
  const [draft, setDraft] = useDraft(`${file.id} ${car.spec} ${path.join('.')}`);
  const mirrored = rows[0] !== undefined && Object.values(rows[0]).some((reading) => reading.mirrored);
  const stands = standsOf(field);

  const send = async (now: Draft): Promise<void> => {
    const wrong = wrongRows(field, now);
    keeping.tell(wrong);
    if (wrong.length > 0) return;
    const changes = changesOf(car, field, now);
    if (changes.length === 0) {
      keeping.tell(['Nothing was typed: the curve stays as it stands.']);
      return;
    }
    if (await keeping.send(changes, `${means}: kept.`)) setDraft(undefined);
  };

  return (
    <div className="field" data-path={path.join('.')}>
      <div className="field-head">
        <p className="field-means">{means}</p>
        {!mirrored && draft === undefined && (
          <button
            type="button"
            className="plain-word"
            aria-label={`Measure again: ${means}`}
            onClick={() => setDraft({ was: stands, [MORE]: rows.length === 0 ? '3' : '0' })}
          >
            {rows.length === 0 ? 'measure' : 'measure again'}
          </button>
        )}
      </div>
      {mirrored && <p className="soft">Taken from the left. Measure it there.</p>}
      {draft === undefined && <TableRows field={field} />}
      {draft !== undefined && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void send(draft);
          }}
        >
          <p className="soft">
            {columns[0]?.notes.measure} What stands is above each place; an empty place keeps it.
          </p>
          <Overwritten draft={draft} stands={stands} />
          <TableRows
            field={field}
            draft={draft}
            onType={(place, text) => setDraft({ ...draft, [place]: text })}
            onTakeOut={(row) => setDraft(toggled(draft, `${TAKEN_OUT}${row}`))}
          />
          <button
            type="button"
            className="plain-word"
            onClick={() => setDraft({ ...draft, [MORE]: String(Number(draft[MORE] ?? 0) + 1) })}
          >
            one more row
          </button>
          <KeepFoot id={id} keeping={keeping} onLeave={() => setDraft(undefined)} />
        </form>
      )}
    </div>
  );
}

function toggled(draft: Draft, key: string): Draft {
  const { [key]: was, ...rest } = draft;
  return was === undefined ? { ...rest, [key]: 'yes' } : rest;
}
