/** What a shell needs of the sheets: make one, show it as SVG, and know what a page is. */
export type { BarOrder } from './bar-order.ts';
export { SHEET_KINDS, type SheetAnswer, type SheetAsked, type SheetKind, sheetOf } from './of-car.ts';
export { PAPER, type Page, type PaperName, type SheetDocument } from './page.ts';
export { pageSvg } from './svg.ts';
export type { TextMeasure } from './text-measure.ts';
