/** What a sheet is asked with beside its kind. */
import type { Car } from '../car/read.ts';
import type { NamedDoing } from '../questions/doing-words.ts';
import type { JointName } from '../questions/joint.ts';
import type { SetUpAsked } from '../questions/set-up.ts';
import type { Speech } from '../units/show.ts';
import type { PaperName } from './page.ts';

/** What stands on every sheet, whatever it is of. */
export interface SheetOn {
  readonly car: Car;
  readonly workshop: string;
  /** `2004-05-06`. */
  readonly date: string;
  readonly version: string;
  readonly paper: PaperName;
  readonly speech: Speech;
}

export interface FloorSheetAsked extends SheetOn {
  /** Version of the car file's text: any other text has another. */
  readonly fileVersion?: string;
  /** Of a set-up sheet: names of sheets that were read, each for the column of its state; left out, the last ones. */
  readonly read?: readonly string[];
  /** Of an adjustment card: what may be moved. */
  readonly moves?: SetUpAsked;
}

export interface LoadSheetAsked extends SheetOn {
  /** Left out: all default cases on a load sheet, the hardest of them on a joint sheet. */
  readonly doing?: NamedDoing;
  /** Of a joint sheet or a tightening card; left out, engine to tub. */
  readonly joint?: JointName;
}
