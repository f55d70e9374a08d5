/**
 * Pages to PDF, in true millimetres, black and white, fonts embedded.
 *
 * In    a laid-out document
 * Out   the bytes of a PDF, the same bytes for the same document: its date is the one on the sheet
 *
 * One point is 25.4/72 mm. Ink is set by DeviceGray operators alone.
 */
import PDFDocument from 'pdfkit';
import type {
  ArcMark,
  FontWeight,
  Mark,
  Page,
  PolylineMark,
  SheetDocument,
  TextMark,
} from '../sheets/page.ts';
import type { TextMeasure } from '../sheets/text-measure.ts';
import { type Coverage, fontFiles, runsOf } from './fonts.ts';

export const POINTS_PER_MM = 72 / 25.4;

const pt = (mm: number): number => mm * POINTS_PER_MM;

interface Setter extends TextMeasure {
  put(mark: TextMark): void;
}

/** The font program behind the document's current font, for the one question that is asked of it. */
interface FontProgram {
  readonly font: { hasGlyphForCodePoint(codePoint: number): boolean };
}

function setterOf(doc: PDFKit.PDFDocument): Setter {
  const coverages = new Map<FontWeight, Coverage[]>();
  for (const weight of ['regular', 'bold'] as const) {
    coverages.set(
      weight,
      fontFiles(weight).map(({ name, path }): Coverage => {
        doc.registerFont(name, path);
        doc.font(name);
        const { font } = (doc as unknown as { readonly _font: FontProgram })._font;
        return { font: name, has: (codePoint) => font.hasGlyphForCodePoint(codePoint) };
      }),
    );
  }
  const known = new Map<string, number>();
  /** Widths grow with the size: each text is measured once, at 1 mm. */
  const width = (text: string, size: number, weight: FontWeight): number => {
    const key = `${weight} ${text}`;
    let one = known.get(key);
    if (one === undefined) {
      one = runsOf(text, coverages.get(weight)!).reduce(
        (sum, run) => sum + doc.font(run.font).fontSize(1).widthOfString(run.text),
        0,
      );
      known.set(key, one);
    }
    return one * size;
  };
  const put = (mark: TextMark): void => {
    if (mark.text === '') return;
    const whole = width(mark.text, mark.size, mark.weight);
    const shift = mark.align === 'left' ? 0 : mark.align === 'middle' ? whole / 2 : whole;
    doc.save();
    if (mark.turn !== 0) doc.rotate(-mark.turn, { origin: [pt(mark.at.x), pt(mark.at.y)] });
    let x = mark.at.x - shift;
    for (const run of runsOf(mark.text, coverages.get(mark.weight)!)) {
      doc.font(run.font).fontSize(pt(mark.size));
      doc.text(run.text, pt(x), pt(mark.at.y), { lineBreak: false, baseline: 'alphabetic' });
      x += doc.widthOfString(run.text) / POINTS_PER_MM;
    }
    doc.restore();
  };
  return { width, put };
}

/** A measure of the fonts that the paper is set in. */
export const paperMeasure = (): TextMeasure => setterOf(new PDFDocument({ autoFirstPage: false }));

export async function renderPdf(sheet: SheetDocument): Promise<Buffer> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    lang: 'en-GB',
    displayTitle: true,
    info: {
      Title: sheet.title,
      Author: sheet.workshop,
      Creator: `Flatpatch ${sheet.version}`,
      Producer: 'Flatpatch',
      CreationDate: new Date(`${sheet.date}T00:00:00Z`),
    },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<Buffer>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve(Buffer.concat(chunks)));
    doc.on('error', reject);
  });
  const setter = setterOf(doc);
  for (const page of sheet.pages) pagePdf(doc, page, setter);
  doc.end();
  return done;
}

function pagePdf(doc: PDFKit.PDFDocument, page: Page, setter: Setter): void {
  doc.addPage({ size: [pt(page.size.width), pt(page.size.height)], margin: 0 });
  for (const mark of page.marks) markPdf(doc, mark, setter);
}

function markPdf(doc: PDFKit.PDFDocument, mark: Mark, setter: Setter): void {
  switch (mark.kind) {
    case 'text':
      setter.put(mark);
      return;
    case 'polyline':
      polylinePdf(doc, mark);
      return;
    case 'arc':
      arcPdf(doc, mark);
      return;
  }
}

function stroked(doc: PDFKit.PDFDocument, mark: PolylineMark | ArcMark): void {
  doc.lineWidth(pt(mark.weight)).lineCap('butt').lineJoin('miter');
  if (mark.dash !== undefined)
    doc.addContent(`[${mark.dash.map((each) => pt(each).toFixed(3)).join(' ')}] 0 d`);
}

function polylinePdf(doc: PDFKit.PDFDocument, mark: PolylineMark): void {
  const [first, ...rest] = mark.points;
  if (first === undefined) return;
  doc.save();
  stroked(doc, mark);
  if (mark.fill !== undefined) doc.addContent(`${mark.fill} g`);
  doc.moveTo(pt(first.x), pt(first.y));
  for (const point of rest) doc.lineTo(pt(point.x), pt(point.y));
  const paint = mark.fill === undefined ? 'S' : mark.weight === 0 ? 'f' : 'B';
  doc.addContent(`${mark.closed ? 'h ' : ''}${paint}`);
  doc.restore();
}

function arcPdf(doc: PDFKit.PDFDocument, mark: ArcMark): void {
  const { centre, radius } = mark;
  doc.save();
  stroked(doc, mark);
  if (Math.abs(mark.to - mark.from) >= 360) doc.circle(pt(centre.x), pt(centre.y), pt(radius));
  else {
    const at = (angle: number): string =>
      `${pt(centre.x + radius * Math.cos((angle * Math.PI) / 180))} ${pt(centre.y - radius * Math.sin((angle * Math.PI) / 180))}`;
    const large = Math.abs(mark.to - mark.from) > 180 ? 1 : 0;
    doc.path(
      `M ${at(mark.from)} A ${pt(radius)} ${pt(radius)} 0 ${large} ${mark.to > mark.from ? 0 : 1} ${at(mark.to)}`,
    );
  }
  doc.addContent('S');
  doc.restore();
}
