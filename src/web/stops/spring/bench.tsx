/** A bar on the bench: torque and angle typed line by line, and the rate that they say. */
import { useId, useState } from 'react';
import type { BenchAnswer } from '../../../questions/index.ts';
import { readAmount } from '../../../units/read.ts';
import { ask } from '../../engine/ask.ts';
import { useCar } from '../../sheet/car-file.tsx';
import { spoken } from '../../spoken.ts';
import { usePage } from '../../state.tsx';
import { Told } from './typed-amount.tsx';
import { useQuestion } from './use-question.ts';

interface Line {
  readonly torque: number;
  readonly twist: number;
  readonly way: 'on' | 'off';
}

/** `50 N m, 1.02 deg` and, coming off, `50 N m, 1.05 deg, off`. */
function readLines(text: string): { readonly lines: readonly Line[]; readonly wrong?: string } {
  const lines: Line[] = [];
  for (const [k, line] of text.split('\n').entries()) {
    if (line.trim() === '') continue;
    const [torqueText = '', twistText = '', way = 'on'] = line.split(/[,;]/).map((part) => part.trim());
    const torque = readAmount(torqueText, 'N m');
    const twist = readAmount(twistText, 'rad');
    if (!torque.ok) return { lines, wrong: `Line ${k + 1}: ${torque.why}.` };
    if (!twist.ok) return { lines, wrong: `Line ${k + 1}: ${twist.why}.` };
    if (way !== 'on' && way !== 'off') return { lines, wrong: `Line ${k + 1}: the last word is on or off.` };
    lines.push({ torque: torque.is.value, twist: twist.is.value, way });
  }
  return { lines };
}

export function Bench() {
  const id = useId();
  const { source } = useCar();
  const { speech } = usePage();
  const [text, setText] = useState('');
  const question = useQuestion<BenchAnswer>();
  const { lines, wrong } = readLines(text);
  const answer = question.answer;
  return (
    <>
      <form
        className="question"
        onSubmit={(event) => {
          event.preventDefault();
          question.put(() => ask('bench', source, { readings: lines }));
        }}
      >
        <label htmlFor={id}>torque, angle, and off when coming off; a reading a line</label>
        <textarea
          id={id}
          rows={7}
          className="mono"
          placeholder={'50 N m, 1.02 deg\n100 N m, 2.05 deg\n50 N m, 1.05 deg, off'}
          value={text}
          onChange={(event) => setText(event.target.value)}
        />
        <Told message={wrong} />
        <button
          type="submit"
          className="word chief"
          disabled={wrong !== undefined || lines.length < 3 || question.waiting}
        >
          Work the rate out
        </button>
        <Told message={question.message} />
      </form>
      {answer !== undefined && (
        <section className="proposal" aria-label="Rate on the bench">
          <p className="slip-value">
            <b className="number">
              {spoken(answer.test.all.rate, 'N m/rad', speech, answer.test.all.u).text}
            </b>
            <span className="number">
              {' '}
              ± {spoken(answer.test.all.rate, 'N m/rad', speech, answer.test.all.u).spread}
            </span>{' '}
            {spoken(answer.test.all.rate, 'N m/rad', speech).unit}
          </p>
          <p>
            {Math.round(answer.test.all.confidence * 100)} of 100 such intervals hold the rate:{' '}
            {answer.test.all.interval.map((each) => spoken(each, 'N m/rad', speech).text).join(' to ')}{' '}
            {spoken(answer.test.all.rate, 'N m/rad', speech).unit}.
          </p>
          {[...answer.test.told, ...answer.cautions].map((line) => (
            <p key={line} className="note">
              {line}
            </p>
          ))}
        </section>
      )}
    </>
  );
}
