/**
 * A sheet of a car as PDF, for the command line and the server.
 *
 * In    what kind of sheet, of which car, wheel and position; date and version are handed in
 * Out   the bytes of the PDF
 */
import { type SheetAnswer, type SheetAsked, type SheetKind, sheetOf } from '../sheets/index.ts';
import { paperMeasure, renderPdf } from './pdf.ts';

export { SHEET_KINDS, type SheetAsked, type SheetKind } from '../sheets/index.ts';

/** There is no such sheet of this corner: it does not come there, or has not the part. The message is for the user. */
export class NoSheet extends Error {}

/** The laid-out sheet, measured in the fonts that it is printed in: for a preview. */
export const sheetPages = (kind: SheetKind, asked: SheetAsked): SheetAnswer =>
  sheetOf(kind, asked, paperMeasure());

/** @throws NoSheet */
export async function sheetPdf(kind: SheetKind, asked: SheetAsked): Promise<Buffer> {
  const answer = sheetPages(kind, asked);
  if (!answer.made) throw new NoSheet(answer.message);
  return renderPdf(answer.document);
}
