/**
 * What prints from the browser: the sheet of the corner in true millimetres, the same as its PDF.
 *
 * It is laid out by the worker once the hand rests, and stands hidden until the printer asks for it. Ctrl-P waits
 * for it when it is not there yet.
 */
import { useEffect, useState } from 'react';
import { pageSvg } from '../../sheets/index.ts';
import { ask, useAnswer } from '../engine/ask.ts';
import { wheelName } from '../place.ts';
import { useCar } from '../sheet/car-file.tsx';
import { DATE } from '../sheet/title-block.tsx';
import { positionOf } from '../sheet/use-corner.ts';
import { usePage } from '../state.tsx';
import { measuredLetters } from './letters.ts';

/** Put in when the page is built. */
declare const FLATPATCH_VERSION: string;

/** Longer than the figures wait: the sheet may come after them. Milliseconds. */
const REST = 1500;

export function PrintedSheet({ workshop }: { workshop: string | undefined }) {
  const { place, speech, say } = usePage();
  const { key, source } = useCar();
  const [wanted, want] = useState(false);
  const kind = place.stop === 'spring' ? 'spring' : 'corner';
  const paper = speech === 'mm-N' ? 'A4' : 'Letter';
  const at = positionOf(place);
  const asked = useAnswer(
    `${key} ${kind} ${wheelName(place.wheel)} ${at.travel} ${at.rack} ${speech} ${workshop}`,
    async () =>
      ask('sheet', source, await measuredLetters(), kind, {
        wheel: place.wheel,
        at,
        workshop: workshop ?? '',
        date: DATE.format(new Date()),
        version: FLATPATCH_VERSION,
        paper,
        speech,
      }),
    REST,
  );

  useEffect(() => {
    const pressed = (event: KeyboardEvent): void => {
      if (event.key.toLowerCase() !== 'p' || !(event.ctrlKey || event.metaKey)) return;
      if (asked.state === 'answered') return;
      event.preventDefault();
      say('Laying the sheet out; it prints in a moment.');
      want(true);
    };
    addEventListener('keydown', pressed);
    return () => removeEventListener('keydown', pressed);
  }, [asked.state, say]);

  useEffect(() => {
    if (!wanted || asked.state === 'waiting') return;
    print();
    want(false);
  }, [wanted, asked.state]);

  if (asked.state !== 'answered' || !asked.answer.made) {
    const why =
      asked.state === 'failed'
        ? asked.message
        : asked.state === 'answered' && !asked.answer.made
          ? asked.answer.message
          : 'The sheet was not laid out yet when this was printed. Print again.';
    return (
      <div className="printed">
        <p>{why}</p>
      </div>
    );
  }
  const { title, pages } = asked.answer.document;
  return (
    <div className="printed" aria-hidden="true" data-paper={paper}>
      {pages.map((page, k) => (
        <div
          // biome-ignore lint/suspicious/noArrayIndexKey: pages stand in their order
          key={k}
          className="printed-page"
          // biome-ignore lint/security/noDangerouslySetInnerHtml: made by pageSvg, which escapes every text
          dangerouslySetInnerHTML={{ __html: pageSvg(page, title) }}
        />
      ))}
    </div>
  );
}
