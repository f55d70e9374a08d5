/** Files of the pipework for printers, cutting tables and other programs. */
export { glbOfPipes, stepOf, stlOf } from './solids.ts';
export { wrapDxf } from './wrap-dxf.ts';
export { type WrapPrint, wrapPdf } from './wrap-pdf.ts';
export { wrapSvg } from './wrap-svg.ts';
