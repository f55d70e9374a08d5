/** A template as SVG in true millimetres, with its ruler. */
import type { Template } from '../gaspath/pipework/index.ts';
import { pageSvg } from '../sheets/svg.ts';
import type { TextMeasure } from '../sheets/text-measure.ts';
import { onePage } from './wrap-page.ts';

/** Capitals and figures of a text font are about this wide, as part of its size: only where lines break hangs on it. */
const roughly: TextMeasure = { width: (words, size) => 0.55 * size * words.length };

export const wrapSvg = (template: Template, measure: TextMeasure = roughly): string =>
  pageSvg(onePage(template, measure), template.name);
