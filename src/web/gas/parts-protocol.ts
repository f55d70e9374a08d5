/** What the page tells the finder of several parts, and what that tells back: plain data both ways. */
import type {
  Banks,
  CarPart,
  PartsStand,
  PrimariesScene,
  PrimariesSet,
  RouteSolution,
  SavedParts,
} from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import type { CarSource } from '../engine/answers.ts';
import type { EasedTold, HandAnswer, HandDoes } from './protocol.ts';

export interface WantedParts {
  readonly seed: number;
  /** The bank that is found, where the other is to be its mirror image. */
  readonly mirror?: 'left' | 'right';
  readonly saved?: SavedParts;
  /** The sets as a hand has moved them since. */
  readonly moved?: readonly RouteSolution[];
}

export type ToldParts =
  | ({
      readonly kind: 'open';
      readonly source: CarSource;
      readonly banks: Banks;
      readonly scans: Readonly<Record<string, Uint8Array>>;
    } & WantedParts)
  | ({ readonly kind: 'find' } & WantedParts)
  | { readonly kind: 'hold' }
  /** What would let the part fit that does not. */
  | { readonly kind: 'ease'; readonly seed: number; readonly speech: Speech }
  /** Of the part of that title. */
  | { readonly kind: 'hand'; readonly title: string; readonly does: HandDoes };

/** One part as it is drawn and listed. */
export interface PartTold
  extends Pick<CarPart, 'side' | 'name' | 'title' | 'stage' | 'cylinders' | 'from'>,
    Pick<PrimariesScene, 'ports' | 'od' | 'collector'> {
  readonly set?: PrimariesSet;
}

export interface PartsProgress {
  readonly kind: 'progress';
  readonly stands: PartsStand | 'held';
  /** Nothing more is done by going on. */
  readonly isEnded: boolean;
  /** Things that must be held in the car and are not, of all parts. */
  readonly lacks?: number;
  /** What is looked for now. */
  readonly now?: string;
  readonly nearest?: string;
  /** Sets of all, once they stand. */
  readonly sets?: readonly PartTold[];
  /** The same as one file. */
  readonly file?: string;
  /** What the image of a bank lacks on its own side, or how far its flanges stand off; words. */
  readonly image?: { readonly suits: boolean; readonly says: readonly string[] };
  readonly saved: SavedParts;
  readonly moved?: readonly RouteSolution[];
}

/** What a hand does to one part. */
export interface PartHandAnswer extends HandAnswer {
  readonly title: string;
}

export type AnsweredParts =
  | {
      readonly kind: 'opened';
      readonly scene: PrimariesScene;
      readonly parts: readonly PartTold[];
      readonly notes: readonly string[];
    }
  | { readonly kind: 'refused'; readonly messages: readonly string[] }
  | { readonly kind: 'impossible'; readonly causes: readonly string[] }
  | EasedTold
  | PartHandAnswer
  | PartsProgress;
