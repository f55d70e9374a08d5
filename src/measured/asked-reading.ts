/** An amount that was typed with the question, as a reading beside those of the file: it has its spread like them. */
import { instrumentClass, ownUncertainty } from './instrument.ts';
import type { Reading } from './reading.ts';

export interface AskedAmount {
  /** SI. */
  readonly value: number;
  /** One standard uncertainty as typed, SI. */
  readonly u?: number;
  /** As typed. */
  readonly text: string;
}

export interface AskedItem {
  /** Name of it within its question: `ambient`. */
  readonly name: string;
  readonly means: string;
  /** SI unit. */
  readonly unit: string;
  readonly amount: AskedAmount;
  /** Class of the instrument that usually reads it: its spread applies where none was typed. */
  readonly usual: string;
}

/** @param index  its place in the list of numbers */
export function askedReading(item: AskedItem, index: number): Reading {
  const { name, means, unit, amount, usual } = item;
  const kind = instrumentClass(usual);
  if (kind === undefined) throw new Error(`no such instrument: ${usual}`);
  return {
    index,
    path: `asked.${name}`,
    means,
    value: amount.value,
    unit,
    text: amount.text,
    shared: 0,
    mirrored: false,
    ...(amount.u === undefined
      ? { u: ownUncertainty(kind, amount.value, unit), spread: { kind: 'usual', class: kind.name } as const }
      : { u: amount.u, spread: { kind: 'stated' } as const }),
  };
}
