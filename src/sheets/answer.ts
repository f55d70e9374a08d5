/** A sheet that was asked for: laid out, or the sentence that says why there is none. */
import type { SheetDocument } from './page.ts';

export type SheetAnswer =
  | { readonly made: true; readonly document: SheetDocument }
  | { readonly made: false; readonly message: string };
