/**
 * Asking the worker. A worker that failed badly is thrown away and its waiting asks fail; the next ask starts a
 * new one.
 */
import { useEffect, useState } from 'react';
import type { CarSource } from './answers.ts';
import type { Ask, QuestionName, Questions, Reply } from './protocol.ts';

interface Waiting {
  readonly done: (answer: unknown) => void;
  readonly failed: (reason: Error) => void;
}

let worker: Worker | undefined;
let last = 0;
const waiting = new Map<number, Waiting>();

function started(): Worker {
  if (worker !== undefined) return worker;
  worker = new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<Reply>) => {
    const who = waiting.get(data.number);
    waiting.delete(data.number);
    if ('failed' in data) who?.failed(new Error(data.failed));
    else who?.done(data.answer);
  };
  worker.onerror = () => {
    worker?.terminate();
    worker = undefined;
    for (const each of waiting.values()) each.failed(new Error('The working out broke off. Try again.'));
    waiting.clear();
  };
  return worker;
}

export function ask<Q extends QuestionName>(
  question: Q,
  source: CarSource,
  ...asks: Questions[Q]['asks']
): Promise<Questions[Q]['answers']> {
  last += 1;
  const message: Ask<Q> = { number: last, question, source, asks };
  return new Promise((done, failed) => {
    waiting.set(message.number, { done: done as (answer: unknown) => void, failed });
    started().postMessage(message);
  });
}

export type Asked<T> =
  | { readonly state: 'waiting' }
  | { readonly state: 'answered'; readonly answer: T }
  | { readonly state: 'failed'; readonly message: string };

/**
 * The answer to a question that is asked once the hand rests. While a newer one is on its way the state is
 * `waiting`: an old answer is never shown for a new question.
 *
 * @param key  changes whenever the question does; undefined: nothing is asked
 */
export function useAnswer<T>(key: string | undefined, asking: () => Promise<T>, rest = 120): Asked<T> {
  const [held, hold] = useState<{ readonly key: string; readonly asked: Asked<T> }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key stands for all that the question depends on
  useEffect(() => {
    if (key === undefined) return;
    let current = true;
    const timer = setTimeout(() => {
      asking().then(
        (answer) => current && hold({ key, asked: { state: 'answered', answer } }),
        (reason: Error) => current && hold({ key, asked: { state: 'failed', message: reason.message } }),
      );
    }, rest);
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [key]);
  return held !== undefined && held.key === key ? held.asked : { state: 'waiting' };
}
