/** What the engine says of the sheet before it is kept: readings that cannot be used or are doubted, to be read again. */

import type { FloorSheets } from '../../questions/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { useCar } from '../sheet/car-file.tsx';
import { changesOf, type Run } from './run.ts';
import { kindOf, placeWords, TYPED } from './words.ts';

interface Props {
  readonly run: Run;
  readonly sheets: FloorSheets;
  readonly called: string;
  /** Goes back to a reading; undefined where there is no such step. */
  readonly to: (id: string) => (() => void) | undefined;
}

/** Who types the sheet's name is not answered letter by letter. Milliseconds. */
const REST = 350;

export function LookedOver({ run, sheets, called, to }: Props) {
  const { key, source } = useCar();
  const changes = changesOf(run, called === '' ? run.state : called, sheets.instruments);
  const name = String(changes.at(-1)!.path[2]);
  const is = useAnswer(
    `look ${key} ${JSON.stringify(changes)}`,
    () => ask('sheetLooked', source, name, changes),
    REST,
  );
  if (is.state === 'waiting') return <p role="status">Looking the sheet over.</p>;
  // what went wrong in looking is told when it is kept
  if (is.state === 'failed') return null;
  if (is.answer.length === 0) return <p className="soft">Looked over: nothing in it contradicts the car.</p>;
  return (
    <section aria-label="Doubted before it is kept">
      <h3>Look at these before it is kept</h3>
      {is.answer.map(({ message, remedy, readings, weight }) => (
        <div key={message} className="note" data-weight={weight}>
          <p>
            <b>{weight === 'error' ? 'Cannot be used.' : 'Doubted.'}</b> {message} {remedy}
          </p>
          <p className="row">
            {readings.map((id) => {
              const go = to(id);
              return go === undefined ? null : (
                <button key={id} type="button" className="word" onClick={go}>
                  read {TYPED[kindOf(id)]?.name ?? kindOf(id)}, {placeWords(id)} again
                </button>
              );
            })}
          </p>
        </div>
      ))}
    </section>
  );
}
