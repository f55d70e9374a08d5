/**
 * Templates as PDF in true millimetres, every page with a ruler; one longer than the paper goes over several pages.
 *
 * In    templates, paper, what stands in the file's head; the date is handed in
 * Out   the bytes of the PDF
 */
import type { Template } from '../gaspath/pipework/index.ts';
import { paperMeasure, renderPdf } from '../paper/pdf.ts';
import type { PaperName } from '../sheets/page.ts';
import { tiledPages } from './wrap-page.ts';

export interface WrapPrint {
  readonly title: string;
  readonly workshop: string;
  /** `2004-05-06` */
  readonly date: string;
  readonly version: string;
  readonly paper: PaperName;
}

export function wrapPdf(templates: readonly Template[], print: WrapPrint): Promise<Buffer> {
  const measure = paperMeasure();
  const { paper, ...of } = print;
  return renderPdf({ ...of, pages: templates.flatMap((each) => tiledPages(each, paper, measure)) });
}
