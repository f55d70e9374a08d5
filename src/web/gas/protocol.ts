/** What the page tells the finder beside it, and what the finder tells back: plain data both ways. */
import type {
  EasedPrimaries,
  FindingStands,
  HandAsk,
  HandKeep,
  HandTold,
  Holdable,
  HoldingStands,
  OneOfSets,
  PrimariesScene,
  PrimariesSet,
  SavedFinding,
  SavedHand,
} from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import type { CarSource } from '../engine/answers.ts';

/** What is looked for. */
export interface Wanted {
  readonly seed: number;
  /** Sets, all told. */
  readonly sets: number;
  /** What a set must hold in the car. */
  readonly hold: readonly Holdable[];
  /** The set that is looked at; the first where none is chosen. */
  readonly chosen?: number;
}

export type Told =
  | ({
      readonly kind: 'open';
      readonly source: CarSource;
      readonly side: 'left' | 'right';
      readonly scans: Readonly<Record<string, Uint8Array>>;
      /** Shown at once where a run of the same problem was saved. */
      readonly saved?: SavedFinding;
      /** What was done by hand to the set of that run. */
      readonly hand?: SavedHand;
    } & Wanted)
  | ({ readonly kind: 'find'; readonly saved?: SavedFinding } & Wanted)
  | { readonly kind: 'hold' }
  /** One of the sets that were found. */
  | { readonly kind: 'choose'; readonly strand: number }
  /** What would let them fit, one thing at a time. */
  | { readonly kind: 'ease'; readonly seed: number; readonly speech: Speech }
  | { readonly kind: 'hand'; readonly does: HandDoes };

export type HandDoes =
  | { readonly do: 'pull'; readonly ask: HandAsk }
  /** Where there is no room the rest gives way, if it may. */
  | { readonly do: 'let go'; readonly mend: boolean }
  | { readonly do: 'keep'; readonly what: HandKeep; readonly on: boolean }
  | { readonly do: 'take' | 'undo' | 'redo' | 'found' | 'mend' };

export interface HandAnswer {
  readonly kind: 'hand';
  /** A hand pulls, and the set lies as it pulls; else the set is at rest and stands. */
  readonly live: boolean;
  readonly mending: boolean;
  readonly told: HandTold;
  /** What came of it, where there is more to say than what stood in the way. */
  readonly says?: string;
  readonly file?: string;
  readonly saved?: SavedHand;
}

export interface EasedTold {
  readonly kind: 'eased';
  /** Which part, of several. */
  readonly of?: string;
  readonly eased: readonly Omit<EasedPrimaries, 'solution'>[];
  /** What is tried now; left out when it is at its end. */
  readonly now?: string;
}

export interface Progress {
  readonly kind: 'progress';
  readonly stands: FindingStands | 'held';
  readonly starts: number;
  readonly nearest?: string;
  /** What a set must hold in the car, and how that stands. */
  readonly holding?: HoldingStands;
  /** What came nearest as it lies, while there is no set. */
  readonly near?: PrimariesSet;
  readonly set?: PrimariesSet;
  /** The set as a file of the exchange form. */
  readonly file?: string;
  /** All that stand, of which `set` is the chosen one. */
  readonly sets: readonly OneOfSets[];
  readonly chosen?: number;
  /** Sets that are looked for, all told. */
  readonly wanted: number;
  readonly saved: SavedFinding;
}

export type Answered =
  | {
      readonly kind: 'opened';
      readonly scene: PrimariesScene;
      readonly notes: readonly string[];
    }
  | { readonly kind: 'refused'; readonly messages: readonly string[] }
  | { readonly kind: 'impossible'; readonly causes: readonly string[] }
  | EasedTold
  | HandAnswer
  | Progress;
