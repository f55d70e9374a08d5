/** Two hands changed the file: both are shown, and neither is lost. */
import type { Kept } from '../client.ts';
import { useCar } from '../sheet/car-file.tsx';

interface Props {
  readonly conflict: Extract<Kept, { kind: 'conflict' }>;
  readonly onTaken: () => void;
}

export function Conflict({ conflict, onTaken }: Props) {
  const { takeTheirs } = useCar();
  const { theirs, mine } = differing(conflict.theirs, conflict.mine);
  return (
    <div className="conflict" role="alert">
      <p>
        <b>Another hand changed this file meanwhile.</b> Nothing was written. Lines that differ:
      </p>
      <div className="both">
        <div>
          <h4>In the file now</h4>
          <pre className="mono">{theirs.join('\n') || 'nothing more'}</pre>
        </div>
        <div>
          <h4>With your change</h4>
          <pre className="mono">{mine.join('\n') || 'nothing more'}</pre>
        </div>
      </div>
      <button
        type="button"
        className="word"
        onClick={() => {
          takeTheirs(conflict.theirs, conflict.version);
          onTaken();
        }}
      >
        Take the file as it is now; what I typed stays here to be kept or left
      </button>
    </div>
  );
}

/** Lines that only one of the two texts has, in order. */
function differing(theirs: string, mine: string): { theirs: readonly string[]; mine: readonly string[] } {
  const only = (a: string, b: string): readonly string[] => {
    const left = new Map<string, number>();
    for (const line of b.split(/\r?\n/)) left.set(line, (left.get(line) ?? 0) + 1);
    return a.split(/\r?\n/).filter((line) => {
      const count = left.get(line) ?? 0;
      if (count > 0) left.set(line, count - 1);
      return count === 0;
    });
  };
  return { theirs: only(theirs, mine), mine: only(mine, theirs) };
}
