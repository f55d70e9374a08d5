/** An empty bay takes a car: its file, chosen or pasted. */
import { useId, useState } from 'react';
import { addCar } from '../client.ts';
import type { Problem } from '../engine/answers.ts';
import { Problems } from '../sheet/problems.tsx';

interface Props {
  readonly taken: readonly string[];
  readonly onAdded: (id: string) => void;
  readonly onLeave: () => void;
}

/** The longest file that is read: the form of the file allows no more. */
const LONGEST = 4_000_000;

export function AddCar({ taken, onAdded, onLeave }: Props) {
  const id = useId();
  const [text, setText] = useState('');
  const [folder, setFolder] = useState<string>();
  const [problems, setProblems] = useState<readonly Problem[]>([]);
  const [failed, setFailed] = useState<string>();
  const name = folder ?? folderOf(text, taken);

  const take = async (): Promise<void> => {
    setFailed(undefined);
    setProblems([]);
    try {
      const added = await addCar(name, text);
      if (added.kind === 'added') onAdded(name);
      else setProblems(added.problems);
    } catch (reason) {
      setFailed((reason as Error).message);
    }
  };

  return (
    <form
      className="add-car"
      onSubmit={(event) => {
        event.preventDefault();
        void take();
      }}
    >
      <label htmlFor={`${id} file`}>Choose a car file (car.yaml)</label>
      <input
        id={`${id} file`}
        type="file"
        accept=".yaml,.yml,text/yaml"
        onChange={(event) => {
          const chosen = event.target.files?.[0];
          if (chosen === undefined) return;
          if (chosen.size > LONGEST) setFailed('That file is longer than any car file.');
          else void chosen.text().then(setText);
        }}
      />
      <label htmlFor={`${id} text`}>or paste its text</label>
      <textarea
        id={`${id} text`}
        rows={6}
        className="mono"
        spellCheck={false}
        value={text}
        onChange={(event) => setText(event.target.value)}
      />
      <label htmlFor={`${id} folder`}>Folder name</label>
      <input
        id={`${id} folder`}
        value={name}
        onChange={(event) => setFolder(event.target.value.toLowerCase().replace(/[^a-z0-9-]/g, '-'))}
      />
      <p className="row">
        <button type="submit" className="word chief" disabled={text.trim() === '' || name === ''}>
          Bring it in
        </button>
        <button type="button" className="plain-word" onClick={onLeave}>
          leave it
        </button>
      </p>
      <p className="soft">
        docs/car-file.md describes the file and shows a whole one. The demo cars can be copied.
      </p>
      {failed !== undefined && <p role="alert">{failed}</p>}
      {problems.length > 0 && (
        <div role="alert">
          <p>The car was not brought in:</p>
          <Problems problems={problems} text={text} />
        </div>
      )}
    </form>
  );
}

/** A folder name from the car's own name that is not taken yet. */
function folderOf(text: string, taken: readonly string[]): string {
  if (text.trim() === '') return '';
  // only a suggestion, so the file need not be read for it
  const name = /^\s+name:[ \t]*(.{1,80})/m.exec(text)?.[1] ?? 'car';
  const plain =
    name
      .toLowerCase()
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-|-$/g, '') || 'car';
  for (let k = 1; ; k += 1) {
    const wanted = k === 1 ? plain : `${plain}-${k}`;
    if (!taken.includes(wanted)) return wanted;
  }
}
