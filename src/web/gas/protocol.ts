/** What the page tells the finder beside it, and what the finder tells back: plain data both ways. */
import type { FindingStands, PrimariesScene, PrimariesSet, SavedFinding } from '../../questions/index.ts';
import type { CarSource } from '../engine/answers.ts';

export type Told =
  | {
      readonly kind: 'open';
      readonly source: CarSource;
      readonly side: 'left' | 'right';
      readonly scans: Readonly<Record<string, Uint8Array>>;
      /** Shown at once where a run of the same problem was saved. */
      readonly saved?: SavedFinding;
      readonly seed: number;
    }
  | { readonly kind: 'find'; readonly seed: number; readonly saved?: SavedFinding }
  | { readonly kind: 'hold' };

export interface Progress {
  readonly kind: 'progress';
  readonly stands: FindingStands | 'held';
  readonly starts: number;
  readonly nearest?: string;
  readonly set?: PrimariesSet;
  /** The set as a file of the exchange form. */
  readonly file?: string;
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
  | Progress;
