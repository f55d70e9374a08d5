/** Looks beside the page at a found set in its car: hot, the nuts of its flanges, the way it comes off. */
import {
  type Holdable,
  openCar,
  type PrimariesInCar,
  primariesInCar,
  readPrimaries,
  type ScanInCar,
  scanForms,
  scanOf,
} from '../../questions/index.ts';
import type { CarSource } from '../engine/answers.ts';

export interface InCarAsked {
  readonly source: CarSource;
  readonly side: 'left' | 'right';
  readonly scans: Readonly<Record<string, Uint8Array>>;
  /** The set as a file of the exchange form. */
  readonly file: string;
  /** What the finder was asked to hold of it. */
  readonly kinds: readonly Holdable[];
}

export type InCarTold = { readonly is: PrimariesInCar } | { readonly message: string };

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<InCarAsked>) => void;
  postMessage: (told: InCarTold) => void;
};

function answer({ source, side, scans, file, kinds }: InCarAsked): InCarTold {
  const read = openCar(source);
  if (!read.ok) return { message: read.problems.map(({ message }) => message).join(' ') };
  const laid: ScanInCar[] = [];
  for (const name of Object.keys(scanForms(read.car))) {
    const is = scanOf(read.car, name, scans[name]);
    if (!is.reached)
      return { message: is.problems.map(({ message }) => `Scan ${name}: ${message}`).join(' ') };
    laid.push(is);
  }
  const set = readPrimaries(file);
  if (!set.ok) return { message: set.message };
  const is = primariesInCar(read.car, side, laid, set.solution, kinds);
  return is === undefined ? { message: 'The problem of this bank cannot be put.' } : { is };
}

scope.onmessage = ({ data }) => scope.postMessage(answer(data));
