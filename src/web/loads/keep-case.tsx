/** Writes the case as it is typed into the car file, under a name. */
import { useId, useState } from 'react';
import type { Doing } from '../../questions/index.ts';
import { Conflict } from '../forms/conflict.tsx';
import { useKeep } from '../forms/use-keep.ts';
import { usePage } from '../state.tsx';
import { caseForFile } from './case-for-file.ts';

export function KeepCase({ doing }: { doing: Doing }) {
  const { go } = usePage();
  const { told, conflict, waiting, tell, send, clear } = useKeep();
  const [name, setName] = useState('');
  const id = useId();
  const keep = async (): Promise<void> => {
    const called = name.trim();
    if (called === '') {
      tell(['Give the case a name, such as "slow bend".']);
      return;
    }
    const kept = await send(
      [{ path: ['cases', called], value: caseForFile(doing) }],
      `The case ${called} is kept.`,
    );
    if (!kept) return;
    setName('');
    go({ doing: called, changed: undefined, log: undefined, row: undefined });
  };
  return (
    <div className="keep-case">
      <label htmlFor={id}>keep it in the car file as</label>
      <input id={id} type="text" value={name} onChange={({ target }) => setName(target.value)} />
      <button type="button" disabled={waiting} onClick={() => void keep()}>
        keep the case
      </button>
      {told.map((line) => (
        <p key={line} role="alert">
          {line}
        </p>
      ))}
      {conflict !== undefined && <Conflict conflict={conflict} onTaken={clear} />}
    </div>
  );
}
