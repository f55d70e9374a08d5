/**
 * A sheet of a car as PDF, for the command line and the server.
 *
 * In    what kind of sheet, of which car, and what that kind is asked with; date and version are handed in
 * Out   the bytes of the PDF
 */

import type { RatiosReached } from '../questions/index.ts';
import {
  type AskedOf,
  type PrimariesSheetMatter,
  primariesSheetOf,
  ratioSheetOf,
  type SheetAnswer,
  type SheetKind,
  type SheetOn,
  sheetOf,
} from '../sheets/index.ts';
import { paperMeasure, renderPdf } from './pdf.ts';

export {
  CORNER_SHEETS,
  isCornerSheet,
  LOAD_SHEETS,
  type LoadSheetAsked,
  SHEET_KINDS,
  type SheetAsked,
  type SheetKind,
} from '../sheets/index.ts';

/** There is no such sheet: the wheel does not come there, the car has not the part, or the file does not tell enough. The message is for the user. */
export class NoSheet extends Error {}

/** The laid-out sheet, measured in the fonts that it is printed in: for a preview. */
export const sheetPages = <K extends SheetKind>(kind: K, asked: AskedOf[K]): SheetAnswer =>
  sheetOf(kind, asked, paperMeasure());

/** @throws NoSheet */
export async function sheetPdf<K extends SheetKind>(kind: K, asked: AskedOf[K]): Promise<Buffer> {
  const answer = sheetPages(kind, asked);
  if (!answer.made) throw new NoSheet(answer.message);
  return renderPdf(answer.document);
}

export const primariesPdf = (asked: SheetOn & { readonly matter: PrimariesSheetMatter }): Promise<Buffer> =>
  renderPdf(primariesSheetOf(asked, paperMeasure()));

export const ratioPdf = (asked: SheetOn & { readonly matter: RatiosReached }): Promise<Buffer> =>
  renderPdf(ratioSheetOf(asked, paperMeasure()));
