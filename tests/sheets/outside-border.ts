/** What of a sheet stands outside its border, the centring marks of ISO 5457 not counted. */
import { borderOf } from '../../src/sheets/frame.ts';
import type { Mark, Page, PaperName, PaperPoint, SheetDocument } from '../../src/sheets/page.ts';
import type { TextMeasure } from '../../src/sheets/text-measure.ts';

interface Corner {
  readonly point: PaperPoint;
  readonly what: string;
}

function cornersOf(mark: Mark, measure: TextMeasure): Corner[] {
  if (mark.kind === 'polyline') return mark.points.map((point) => ({ point, what: 'line' }));
  if (mark.kind === 'arc') {
    const { centre, radius } = mark;
    return [-radius, radius].map((r) => ({ point: { x: centre.x + r, y: centre.y + r }, what: 'arc' }));
  }
  const wide = measure.width(mark.text, mark.size, mark.weight);
  const start = mark.at.x - (mark.align === 'left' ? 0 : mark.align === 'middle' ? wide / 2 : wide);
  return [
    { point: { x: start, y: mark.at.y - 0.7 * mark.size }, what: mark.text },
    { point: { x: start + wide, y: mark.at.y }, what: mark.text },
  ];
}

const isCentring = (point: PaperPoint, page: Page): boolean =>
  Math.abs(point.x - page.size.width / 2) < 1e-9 || Math.abs(point.y - page.size.height / 2) < 1e-9;

export function outsideBorder(sheet: SheetDocument, paper: PaperName, measure: TextMeasure): string[] {
  const { x, y, width, height } = borderOf(paper);
  // 1e-6 mm: sums of decimals
  const within = (value: number, from: number, run: number): boolean =>
    value >= from - 1e-6 && value <= from + run + 1e-6;
  return sheet.pages.flatMap((page, index) =>
    page.marks
      .flatMap((mark) => cornersOf(mark, measure))
      .filter(
        ({ point }) => !isCentring(point, page) && !(within(point.x, x, width) && within(point.y, y, height)),
      )
      .map(
        ({ point, what }) => `sheet ${index + 1}: ${what} at ${point.x.toFixed(1)}, ${point.y.toFixed(1)}`,
      ),
  );
}
