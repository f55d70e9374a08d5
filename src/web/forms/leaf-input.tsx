/** One place of a new part: a reading with its unit on the key, a word, or a short table typed line by line. */
import { useId } from 'react';
import type { Draft } from './draft.ts';
import { columnsOf, type Leaf, type Path, wordOf } from './fields.ts';
import { leafKey } from './part-of-draft.ts';
import { unitWord } from './stamp.ts';
import { choicesOf, WordInput } from './word-field.tsx';

interface Props {
  readonly leaf: Leaf;
  readonly part: Path;
  readonly draft: Draft;
  readonly onType: (key: string, text: string) => void;
}

export function LeafInput({ leaf, part, draft, onType }: Props) {
  const id = useId();
  const { node, path } = leaf;
  const key = leafKey(leaf);
  const value = draft[key] ?? '';
  const type = (text: string): void => onType(key, text);
  if (node.items !== undefined) {
    const head = columnsOf(node).map((column) => `${column.key} (${unitWord(column.notes.unit)})`);
    return (
      <div className="typing">
        <label htmlFor={id}>
          {node.title}: {head.join(', ')}; a row a line
        </label>
        <textarea
          id={id}
          rows={4}
          className="mono"
          value={value}
          onChange={(event) => type(event.target.value)}
        />
      </div>
    );
  }
  const { reading } = node;
  return (
    <div className="typing">
      <label htmlFor={id}>
        {node.title}
        {ofEnd(path)}
        {reading !== undefined && (
          <span className="soft">
            , {reading.kind === 'point' ? 'x, y, z in mm' : unitWord(reading.unit)}
          </span>
        )}
      </label>
      {reading === undefined ? (
        <WordInput id={id} of={choicesOf([...part, ...path], wordOf(node)?.of)} value={value} onType={type} />
      ) : (
        <>
          <input
            id={id}
            className="number"
            inputMode={reading.kind === 'point' ? 'text' : 'decimal'}
            value={value}
            aria-describedby={`${id} how`}
            onChange={(event) => type(event.target.value)}
          />
          <p id={`${id} how`} className="soft whole">
            {reading.measure}
          </p>
        </>
      )}
    </div>
  );
}

/** Two ends of a bar ask the same words. */
const ofEnd = (path: Path): string =>
  path.includes('rockerEnd') ? ', rocker end' : path.includes('anchorEnd') ? ', anchor end' : '';
