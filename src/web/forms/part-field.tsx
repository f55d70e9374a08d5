/** A part that the file does not have: all that it must say of itself, typed at once and kept as one. */
import { useId } from 'react';
import { useCar } from '../sheet/car-file.tsx';
import { type Draft, useDraft } from './draft.ts';
import { keptAt, type Leaf, leavesOf, type PartOf } from './fields.ts';
import { KeepFoot, Word } from './keep-foot.tsx';
import { LeafInput } from './leaf-input.tsx';
import { partOf } from './part-of-draft.ts';
import { partWords } from './part-words.ts';
import { newStamp, rememberHand } from './stamp.ts';
import { useKeep } from './use-keep.ts';

export function PartField({ field: { path, node } }: { field: PartOf }) {
  const { file, car } = useCar();
  const id = useId();
  const keeping = useKeep();
  const [draft, setDraft] = useDraft(`${file.id} ${car.spec} ${path.join('.')}`);
  const name = partWords(path);
  const leaves = leavesOf(node);

  const send = async (now: Draft): Promise<void> => {
    const part = partOf(leaves, now);
    keeping.tell(part.ok ? [] : part.wrong);
    if (!part.ok) return;
    rememberHand(now);
    if (await keeping.send([{ path: keptAt(car, path), value: part.is }], `${name}: kept.`))
      setDraft(undefined);
  };

  return (
    <div className="field" data-path={path.join('.')}>
      <div className="field-head">
        <p className="field-means">{name}</p>
        {draft === undefined && (
          <button
            type="button"
            className="plain-word"
            aria-label={`Add: ${name}`}
            onClick={() => setDraft(newStamp())}
          >
            add
          </button>
        )}
      </div>
      {draft === undefined && <p className="soft">not in the file</p>}
      {draft !== undefined && (
        <form
          onSubmit={(event) => {
            event.preventDefault();
            void send(draft);
          }}
        >
          {leaves.map((leaf: Leaf) => (
            <LeafInput
              key={leaf.path.join('.')}
              leaf={leaf}
              part={path}
              draft={draft}
              onType={(key, text) => setDraft({ ...draft, [key]: text })}
            />
          ))}
          <div className="typing">
            {(['with', 'by', 'on'] as const).map((key) => (
              <Word
                key={key}
                id={`${id} ${key}`}
                name={key === 'with' ? 'with (instrument, all of these)' : key}
                value={draft[key] ?? ''}
                {...(key === 'with' && { list: Object.keys(car.form.instruments ?? {}) })}
                onType={(text) => setDraft({ ...draft, [key]: text })}
              />
            ))}
          </div>
          <KeepFoot id={id} keeping={keeping} onLeave={() => setDraft(undefined)} />
        </form>
      )}
    </div>
  );
}
