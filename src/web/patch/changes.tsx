/** What to change in one go, what will then be read, which reading not to trust, and what is to be read next. */
import { useState } from 'react';
import { nothingWords, provedWords, type SetUpAnswer, type SetUpReached } from '../../questions/index.ts';
import type { Asked } from '../engine/ask.ts';
import { Remarks } from '../loads/remarks.tsx';
import { usePage } from '../state.tsx';
import { EffectTable } from './effect-table.tsx';
import { amountWords, WHEEL_WORDS } from './words.ts';

export function Changes({ setUp }: { readonly setUp: Asked<SetUpAnswer> }) {
  if (setUp.state === 'waiting') return <p role="status">Working the set-up out.</p>;
  if (setUp.state === 'failed') return <p role="alert">{setUp.message}</p>;
  const { answer } = setUp;
  if (!answer.reached) {
    return (
      <section>
        <p role="alert">{answer.message}</p>
        {(answer.problems ?? []).map(({ message, remedy }) => (
          <p key={message} className="note">
            {message} {remedy}
          </p>
        ))}
      </section>
    );
  }
  return <Told is={answer} />;
}

function Told({ is }: { readonly is: SetUpReached }) {
  const { doubts, moves, outOfReach, next, learnt, notes, cautions } = is;
  const [open, setOpen] = useState(false);
  return (
    <>
      {doubts.length > 0 && (
        <section>
          <h3>Not to be trusted yet</h3>
          {doubts.map(({ message, remedy }) => (
            <p key={message} className="note">
              {message} {remedy}
            </p>
          ))}
        </section>
      )}
      <section>
        <h3>
          {moves.length > 0
            ? 'Change, in this order'
            : outOfReach.length === 0
              ? 'Nothing to change'
              : 'Nothing that helps'}
        </h3>
        <ol className="moves">
          {moves.map(({ adjuster, words }) => (
            <li key={adjuster}>
              <b>{adjuster}</b>: {words}
            </li>
          ))}
        </ol>
        <p className="soft">{moves.length > 0 ? provedWords(is) : nothingWords(is)}</p>
        {outOfReach.map((words) => (
          <p key={words} className="note">
            {words}
          </p>
        ))}
      </section>
      <Forecast is={is} />
      {next.length > 0 && (
        <section>
          <h3>Read next</h3>
          {next.map(({ id, words, takes, again }) => (
            <p key={id}>
              {words}
              {again ? ', once more' : ''}: takes {Math.round(100 * takes)} % off what is unsure
            </p>
          ))}
        </section>
      )}
      {learnt.map(({ wheel, of, stiffer, u }) => (
        <p key={`${wheel} ${of}`} className="soft">
          Learnt: the {of} at {WHEEL_WORDS[wheel]} is {(100 * stiffer).toFixed(0)} ± {(100 * u).toFixed(0)} %
          stiffer than the file has it.
        </p>
      ))}
      <section>
        <p>
          <button type="button" className="word" aria-expanded={open} onClick={() => setOpen(!open)}>
            What one turn of each does
          </button>
        </p>
        {open && <EffectTable />}
      </section>
      {notes.map((words) => (
        <p key={words} className="soft">
          {words}
        </p>
      ))}
      <Remarks notes={[]} cautions={cautions} />
    </>
  );
}

function Forecast({ is }: { readonly is: SetUpReached }) {
  const { speech } = usePage();
  return (
    <section>
      <h3>What will then be read</h3>
      <table className="pipes floor-readings stacked">
        <caption className="unseen">Readings before and after the moves</caption>
        <thead>
          <tr>
            <th scope="col">reading</th>
            <th scope="col">now</th>
            <th scope="col">then</th>
            <th scope="col">sheet</th>
          </tr>
        </thead>
        <tbody>
          {is.readings.map(({ id, words, unit, before, willRead, wanted, tolerance, u, inTolerance }) => (
            <tr key={id}>
              <th scope="row">{words}</th>
              <td className="number">{amountWords(id, before, unit, speech)}</td>
              <td className="number" data-off={!inTolerance}>
                {amountWords(id, willRead, unit, speech)}
                <span className="soft"> ± {amountWords(id, u, unit, speech, true)}</span>
                {!inTolerance && ' ✕'}
              </td>
              <td className="number">
                {amountWords(id, wanted, unit, speech)}
                <span className="soft"> ± {amountWords(id, tolerance, unit, speech, true)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="soft">
        Now: on pads of one height. Then: as the scales and gauges of this floor will show it.
      </p>
    </section>
  );
}
