/** The foot of everything that is typed into the file: what is wrong, the other hand's change, keep, leave. */
import { Conflict } from './conflict.tsx';
import type { Draft } from './draft.ts';
import type { Keeping } from './use-keep.ts';

interface Props {
  readonly id: string;
  readonly keeping: Keeping;
  readonly ready?: boolean;
  readonly onLeave: () => void;
}

export function KeepFoot({ id, keeping, ready = true, onLeave }: Props) {
  const { told, conflict, waiting, clear } = keeping;
  return (
    <>
      {told.length > 0 && (
        <div id={`${id} told`} role="alert" className="told">
          {told.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
      {conflict !== undefined && <Conflict conflict={conflict} onTaken={clear} />}
      <p className="row">
        <button type="submit" className="word chief" disabled={waiting || !ready || conflict !== undefined}>
          Keep
        </button>
        <button
          type="button"
          className="plain-word"
          onClick={() => {
            clear();
            onLeave();
          }}
        >
          leave it
        </button>
      </p>
    </>
  );
}

/** Said where the file changed under what is being typed. */
export function Overwritten({ draft, stands }: { draft: Draft; stands: string }) {
  return draft.was === undefined || draft.was === stands ? null : (
    <p className="note" role="status">
      While you typed, another hand changed this from "{draft.was || 'nothing'}" to "{stands || 'nothing'}".
      Yours is still below.
    </p>
  );
}

interface WordProps {
  readonly id: string;
  readonly name: string;
  readonly value: string;
  readonly list?: readonly string[];
  readonly onType: (value: string) => void;
}

/** A word, with the known ones offered. */
export function Word({ id, name, value, list = [], onType }: WordProps) {
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
