/**
 * A template as DXF for a cutting table: millimetres, a layer for each use of a line, arcs as arcs.
 *
 * In    a template
 * Out   the text of the file
 */
import { DxfWriter, point2d, point3d, Units } from '@tarikjabiri/dxf';
import type { LineUse, Point2, Template } from '../gaspath/pipework/index.ts';

const MM_PER_M = 1e3;
const DEG = 180 / Math.PI;

/** Layers by what they are for. Colours are the format's own numbers: 7 black or white, 8 grey, 5 blue. */
const LAYERS: Readonly<Record<LineUse | 'text', { readonly name: string; readonly colour: number }>> = {
  cut: { name: 'CUT', colour: 7 },
  edge: { name: 'EDGE', colour: 8 },
  mark: { name: 'MARK', colour: 5 },
  text: { name: 'TEXT', colour: 8 },
};

const TEXT_HEIGHT = 2.5;

export function wrapDxf(template: Template): string {
  const dxf = new DxfWriter();
  dxf.setUnits(Units.Millimeters);
  for (const { name, colour } of Object.values(LAYERS)) dxf.addLayer(name, colour, 'CONTINUOUS');
  const flat = ({ x, y }: Point2) => point2d(x * MM_PER_M, y * MM_PER_M);
  const deep = ({ x, y }: Point2) => point3d(x * MM_PER_M, y * MM_PER_M, 0);
  for (const drawn of template.lines) {
    const layerName = LAYERS[drawn.use].name;
    if (drawn.kind === 'polyline') {
      const flags = drawn.closed ? 1 : 0;
      dxf.addLWPolyline(
        drawn.points.map((each) => ({ point: flat(each) })),
        { layerName, flags },
      );
    } else if (drawn.to - drawn.from >= 2 * Math.PI - 1e-9) {
      dxf.addCircle(deep(drawn.centre), drawn.radius * MM_PER_M, { layerName });
    } else {
      const { centre, radius, from, to } = drawn;
      dxf.addArc(deep(centre), radius * MM_PER_M, from * DEG, to * DEG, { layerName });
    }
  }
  for (const { at, text } of template.labels) {
    dxf.addText(deep(at), TEXT_HEIGHT, text, { layerName: LAYERS.text.name });
  }
  return dxf.stringify();
}
