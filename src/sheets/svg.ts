/**
 * A page as SVG in true millimetres: the preview of what the PDF prints.
 *
 * In    a page
 * Out   an SVG document; its text is text, so that it can be searched and read aloud
 */
import type { ArcMark, Mark, Page, PolylineMark, TextMark } from './page.ts';

export const FONT_FAMILY = "'Atkinson Hyperlegible Next', 'DejaVu Sans', sans-serif";

export function pageSvg(page: Page, title: string): string {
  const { width, height } = page.size;
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}"`,
    ` role="img" font-family="${FONT_FAMILY}" fill="none" stroke="none" color="#000">`,
    `<title>${escaped(title)}</title>`,
    `<rect width="${width}" height="${height}" fill="#fff"/>`,
    ...page.marks.map(markSvg),
    '</svg>',
  ].join('');
}

function markSvg(mark: Mark): string {
  switch (mark.kind) {
    case 'text':
      return textSvg(mark);
    case 'polyline':
      return polylineSvg(mark);
    case 'arc':
      return arcSvg(mark);
  }
}

const ANCHOR = { left: 'start', middle: 'middle', right: 'end' } as const;

function textSvg(mark: TextMark): string {
  const { x, y } = mark.at;
  const turn = mark.turn === 0 ? '' : ` transform="rotate(${number(-mark.turn)} ${number(x)} ${number(y)})"`;
  const weight = mark.weight === 'bold' ? ' font-weight="700"' : '';
  const anchor = mark.align === 'left' ? '' : ` text-anchor="${ANCHOR[mark.align]}"`;
  return `<text x="${number(x)}" y="${number(y)}" font-size="${number(mark.size)}" fill="#000"${weight}${anchor}${turn}>${escaped(mark.text)}</text>`;
}

const stroke = (mark: PolylineMark | ArcMark): string =>
  mark.weight === 0
    ? ''
    : ` stroke="#000" stroke-width="${number(mark.weight)}"${mark.dash === undefined ? '' : ` stroke-dasharray="${mark.dash.map(number).join(' ')}"`}`;

function polylineSvg(mark: PolylineMark): string {
  const points = mark.points.map((point) => `${number(point.x)},${number(point.y)}`).join(' ');
  const grey = mark.fill === undefined ? '' : Math.round(mark.fill * 255).toString();
  const fill = grey === '' ? '' : ` fill="rgb(${grey},${grey},${grey})"`;
  return `<${mark.closed ? 'polygon' : 'polyline'} points="${points}"${fill}${stroke(mark)}/>`;
}

function arcSvg(mark: ArcMark): string {
  const { centre, radius, from, to } = mark;
  if (Math.abs(to - from) >= 360) {
    return `<circle cx="${number(centre.x)}" cy="${number(centre.y)}" r="${number(radius)}"${stroke(mark)}/>`;
  }
  const at = (angle: number): string =>
    `${number(centre.x + radius * Math.cos((angle * Math.PI) / 180))} ${number(centre.y - radius * Math.sin((angle * Math.PI) / 180))}`;
  const large = Math.abs(to - from) > 180 ? 1 : 0;
  const sweep = to > from ? 0 : 1;
  return `<path d="M ${at(from)} A ${number(radius)} ${number(radius)} 0 ${large} ${sweep} ${at(to)}"${stroke(mark)}/>`;
}

const number = (value: number): string => String(Math.round(value * 1000) / 1000);

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

const escaped = (words: string): string => words.replace(/[&<>"]/g, (letter) => ESCAPES[letter]!);
