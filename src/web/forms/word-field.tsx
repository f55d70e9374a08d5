/** A choice or a word of the file: kind of rod, form of an end, material, thread. */
import { useId } from 'react';
import { materialChoices } from '../../questions/index.ts';
import { useCar } from '../sheet/car-file.tsx';
import { type Draft, useDraft } from './draft.ts';
import { keptAt, type Path, type WordOf } from './fields.ts';
import { KeepFoot, Overwritten } from './keep-foot.tsx';
import { useKeep } from './use-keep.ts';

export function WordField({ field }: { field: WordOf }) {
  const { file, car } = useCar();
  const id = useId();
  const keeping = useKeep();
  const { path, means, stands = '' } = field;
  const [draft, setDraft] = useDraft(`${file.id} ${car.spec} ${path.join('.')}`);
  const send = async (now: Draft): Promise<void> => {
    const value = now.value?.trim() ?? '';
    if (await keeping.send([{ path: keptAt(car, path), value }], `${means}: ${value} kept.`))
      setDraft(undefined);
  };
  return (
    <div className="field" data-path={path.join('.')}>
      <div className="field-head">
        <p className="field-means">{means}</p>
        {draft === undefined && (
          <button
            type="button"
            className="plain-word"
            aria-label={`Change: ${means}`}
            onClick={() => setDraft({ value: '', was: stands })}
          >
            {stands === '' ? 'say' : 'change'}
          </button>
        )}
      </div>
      <p className="field-stands">{stands || <span className="soft">not in the file</span>}</p>
      {draft !== undefined && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void send(draft);
          }}
        >
          <Overwritten draft={draft} stands={stands} />
          <div className="typing">
            <label htmlFor={`${id} word`}>{means}</label>
            <WordInput
              id={`${id} word`}
              of={choicesOf(path, field.of)}
              value={draft.value ?? ''}
              onType={(value) => setDraft({ ...draft, value })}
            />
          </div>
          <KeepFoot
            id={id}
            keeping={keeping}
            ready={(draft.value ?? '').trim() !== ''}
            onLeave={() => setDraft(undefined)}
          />
        </form>
      )}
    </div>
  );
}

interface InputProps {
  readonly id: string;
  readonly of: readonly string[] | undefined;
  readonly value: string;
  readonly onType: (value: string) => void;
}

/** A list where the file knows what may stand here, else a line. Nothing is chosen beforehand. */
export function WordInput({ id, of, value, onType }: InputProps) {
  if (of === undefined)
    return <input id={id} value={value} onChange={(event) => onType(event.target.value)} />;
  return (
    <select id={id} className="whole" value={value} onChange={(event) => onType(event.target.value)}>
      <option value="">choose</option>
      {of.map((each) => (
        <option key={each}>{each}</option>
      ))}
    </select>
  );
}

/** A material is one of the table: wire for a coil, bar stock for a bar. */
export function choicesOf(path: Path, of: readonly string[] | undefined): readonly string[] | undefined {
  if (path.at(-1) !== 'material') return of;
  const kind = path.includes('coil') ? 'wire' : 'bar';
  return materialChoices()
    .filter((material) => material.kind === kind)
    .map(({ name }) => name);
}
