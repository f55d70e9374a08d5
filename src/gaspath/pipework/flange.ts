/**
 * Template of a port flange: port, bolt holes, outline of the plate.
 *
 * In    shape of the port, bolts, how much plate is left round both
 * Out   a template in arcs and straight lines, origin at the middle of the port
 *
 * Shapes are bands round discs: a round port is one disc; an oval one two, with straight sides; a D half a disc on its
 * round side and two small ones at the corners of its flat side.
 */
import type { Metre } from '../../units/quantity.ts';
import { type Disc, hullOf, reach } from './hull.ts';
import type { Point2, Template, TemplateArc, TemplateLine } from './template.ts';

export type PortShape =
  | { readonly kind: 'round'; readonly diameter: Metre }
  /** Two half circles with straight sides between them. */
  | { readonly kind: 'oval'; readonly width: Metre; readonly height: Metre }
  /** Round at the top across its whole width, flat at the bottom, with rounded corners there. */
  | { readonly kind: 'D'; readonly width: Metre; readonly height: Metre; readonly corner: Metre };

export interface Bolt {
  readonly at: Point2;
  readonly hole: Metre;
}

export interface Flange {
  readonly name: string;
  readonly port: PortShape;
  readonly bolts: readonly Bolt[];
  /** Plate left round the port and round each bolt hole. */
  readonly land: { readonly port: Metre; readonly bolt: Metre };
}

/** What keeps this from being a flange, as sentences. */
export function flangeFaults(of: Flange): readonly string[] {
  const { port } = of;
  const faults: string[] = [];
  const say = (wrong: boolean, what: string): void => {
    if (wrong) faults.push(`flange ${of.name}: ${what}`);
  };
  if (port.kind === 'round') say(!(port.diameter > 0), 'the port must have a diameter');
  else say(!(port.width > 0 && port.height > 0), 'the port must have a width and a height');
  if (port.kind === 'D') {
    say(
      !(port.corner > 0 && port.corner <= port.width / 2),
      'corners must be rounded, and not beyond half the width',
    );
    say(port.height < port.width / 2 + port.corner, 'a D must be at least half its width and a corner high');
  }
  say(!(of.land.port > 0 && of.land.bolt > 0), 'plate must be left round port and bolts');
  const shape = portDiscs(port);
  for (const [k, bolt] of of.bolts.entries()) {
    say(!(bolt.hole > 0), `bolt hole ${k + 1} must have a diameter`);
    say(gapTo(shape, bolt) <= 0, `bolt hole ${k + 1} runs into the port`);
  }
  return faults;
}

export function portDiscs(port: PortShape): readonly Disc[] {
  const disc = (x: Metre, y: Metre, radius: Metre): Disc => ({ centre: { x, y }, radius });
  if (port.kind === 'round') return [disc(0, 0, port.diameter / 2)];
  const { width: w, height: h } = port;
  if (port.kind === 'oval') {
    const r = Math.min(w, h) / 2;
    return [-1, 1].map((side) => disc(side * (w / 2 - r), side * (h / 2 - r), r));
  }
  const c = port.corner;
  const top = { ...disc(0, h / 2 - w / 2, w / 2), over: [0, Math.PI] } as const;
  return [top, ...[-1, 1].map((side) => disc(side * (w / 2 - c), -h / 2 + c, c))];
}

/** Between the rim of a hole and a band round discs, by its directions: below nothing where they meet. */
function gapTo(shape: readonly Disc[], bolt: Bolt): Metre {
  const { x, y } = bolt.at;
  let most = -Infinity;
  // a convex shape is left behind in some direction; 0.25° apart they find it to well below a hundredth
  for (let k = 0; k < 1440; k += 1) {
    const angle = (k * Math.PI) / 720;
    const outline = Math.max(...shape.map((each) => reach(each, angle)));
    most = Math.max(most, x * Math.cos(angle) + y * Math.sin(angle) - outline);
  }
  return most - bolt.hole / 2;
}

const grown = (discs: readonly Disc[], by: Metre): Disc[] =>
  discs.map((each) => ({ ...each, radius: each.radius + by }));

export function flangeTemplate(of: Flange): Template {
  const port = portDiscs(of.port);
  const plate = [
    ...grown(port, of.land.port),
    ...of.bolts.map(({ at, hole }) => ({ centre: at, radius: hole / 2 + of.land.bolt })),
  ];
  const holes = of.bolts.map(
    ({ at, hole }): TemplateArc => ({
      kind: 'arc',
      use: 'cut',
      centre: at,
      radius: hole / 2,
      from: 0,
      to: 2 * Math.PI,
    }),
  );
  return {
    name: of.name,
    notes: [
      'Seen from the tube. Prick through the crosses and drill the holes before the outline is cut.',
      `${of.bolts.length} holes: ${of.bolts.map(({ hole }) => `${(hole * 1e3).toFixed(1)} mm`).join(', ')}.`,
    ],
    lines: [
      ...hullOf(plate, 'cut'),
      ...hullOf(port, 'cut'),
      ...holes,
      ...[{ x: 0, y: 0 }, ...of.bolts.map(({ at }) => at)].flatMap(cross),
    ],
    labels: [],
  };
}

const ARM: Metre = 0.004;

const cross = ({ x, y }: Point2): TemplateLine[] =>
  [
    [
      { x: x - ARM, y },
      { x: x + ARM, y },
    ],
    [
      { x, y: y - ARM },
      { x, y: y + ARM },
    ],
  ].map((points) => ({ kind: 'polyline', use: 'mark', closed: false, points }));
