/** Looks beside the page at a found set in its car: hot, the nuts of its flanges, the way it comes off. */
import { type Holdable, type LookedAt, setFiled } from '../../questions/index.ts';
import type { CarSource } from '../engine/answers.ts';
import { layScans } from './lay-scans.ts';

export interface InCarAsked {
  readonly source: CarSource;
  readonly side: 'left' | 'right';
  readonly scans: Readonly<Record<string, Uint8Array>>;
  /** The part of that bank, where it has several. */
  readonly part?: string | undefined;
  /** The set as a file, or those of all parts as one. */
  readonly file: string;
  /** What the finder was asked to hold of it; left out where it was what the car file asks. */
  readonly kinds?: readonly Holdable[] | undefined;
}

export type InCarTold = { readonly is: LookedAt } | { readonly message: string };

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<InCarAsked>) => void;
  postMessage: (told: InCarTold) => void;
};

function answer({ source, side, part, scans, file, kinds }: InCarAsked): InCarTold {
  const laid = layScans(source, scans);
  if (!laid.ok) return { message: laid.messages.join(' ') };
  const set = setFiled(laid.car, { side, part, text: file }, laid.scans);
  if (!set.reached) return { message: 'message' in set ? set.message : set.breaches.join(' ') };
  const is = set.looked(kinds);
  return is === undefined ? { message: 'The problem of this bank cannot be put.' } : { is };
}

scope.onmessage = ({ data }) => scope.postMessage(answer(data));
