/** What a shell needs of the sheets: make one, show it as SVG, and know what a page is. */

export type { SheetAnswer } from './answer.ts';
export type { FloorSheetAsked, LoadSheetAsked, SheetOn } from './asked-sheet.ts';
export type { BarOrder } from './bar-order.ts';
export { CASE_ROWS, type CaseRows, type CaseTableAsked, caseTable } from './case-table.ts';
export {
  type AskedOf,
  CORNER_SHEETS,
  FLOOR_SHEETS,
  type FloorSheet,
  isCornerSheet,
  isFloorSheet,
  LOAD_SHEETS,
  type LoadSheet,
  primariesSheetOf,
  ratioSheetOf,
  SHEET_KINDS,
  type SheetAsked,
  type SheetKind,
  sheetOf,
} from './of-car.ts';
export { PAPER, type Page, type PaperName, type SheetDocument } from './page.ts';
export type { PrimariesSheetMatter } from './primaries-sheet.ts';
export { pageSvg } from './svg.ts';
export type { TextMeasure } from './text-measure.ts';
