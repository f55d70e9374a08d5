/**
 * Wraps: a cut curve unrolled to paper that is laid round the tube.
 *
 * In    a curve, the tube, the paper
 * Out   a template whose width is once round the tube
 *
 * Paper lies outside the skin: its middle has the larger circumference π(D + paper). The side of the paper towards the
 * tube's other end is straight, so that it can be laid square; its distance to the curve's datum is told.
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { type Merge, mergeCut } from './merge.ts';
import type { Template, TemplateLabel, TemplateLine } from './template.ts';
import { bendCut, mitreCut, type Saddle, saddleCut, squareCut, type WrapCurve } from './wrap-curves.ts';

const roundTube = formula({
  symbol: 'c',
  means: 'width of the paper: once round the tube',
  is: 'π*(D + t)',
  unit: 'm',
  terms: {
    D: { unit: 'm', means: 'outer diameter' },
    t: { unit: 'm', means: 'thickness of the paper' },
  },
  source: 'PW-21',
});

/** π(D + paper).  [PW-21] */
export const wrapWidth = (od: Metre, paper: Metre = 0, working?: Working): Metre =>
  roundTube({ D: od, t: paper }, working);

/** Paper between its straight side and the lowest place of the curve. */
const BAND: Metre = 0.02;

/** Steps round the tube; a multiple of 8, so that quarters are among them. 0.5°: chords are within 1e-5 of the curve's size. */
const STEPS = 720;

export interface WrapAsked {
  readonly name: string;
  readonly od: Metre;
  readonly curve: WrapCurve;
  /** What stands at the four quarters, from place 0 on. */
  readonly quarters: readonly [string, string, string, string];
  readonly notes: readonly string[];
  readonly paper?: Metre;
  /** The seam is put here, away from where it matters; quarters are labelled all the same. */
  readonly seam?: Radian;
  /** What the heights count from, where the tube's length hangs on it. */
  readonly datum?: string;
  /** The side of the curve whose tube is kept: below it (heights grow towards the cut) or above it. */
  readonly keep: 'below' | 'above';
  /** Height of the straight side, where it is laid to something; left out, a band away from the curve. */
  readonly side?: Metre;
}

export function wrap(asked: WrapAsked): Template {
  const width = wrapWidth(asked.od, asked.paper ?? 0);
  const seam = asked.seam ?? 0;
  const places = Array.from({ length: STEPS + 1 }, (_, i) => (2 * Math.PI * i) / STEPS);
  const heights = places.map((each) => asked.curve(each + seam));
  const lowest = Math.min(...heights);
  const highest = Math.max(...heights);
  const side = asked.side ?? (asked.keep === 'below' ? lowest - BAND : highest + BAND);
  // laid so that the kept tube is below the curve on paper, with the straight side at y = 0
  const y = (height: Metre): Metre => Math.abs(height - side);
  const top = Math.max(...heights.map(y));
  const points = places.map((each, i) => ({ x: (each / (2 * Math.PI)) * width, y: y(heights[i]!) }));
  const quarters = [0, 1, 2, 3].map((q) => ({
    name: asked.quarters[q]!,
    at: ((((q * Math.PI) / 2 - seam) / (2 * Math.PI)) % 1) + 1,
  }));
  const marks: TemplateLine[] = quarters.map(({ at }) => ({
    kind: 'polyline',
    use: 'mark',
    closed: false,
    points: [
      { x: (at % 1) * width, y: 0 },
      { x: (at % 1) * width, y: top },
    ],
  }));
  const labels: TemplateLabel[] = quarters.map(({ name, at }) => ({
    at: { x: (at % 1) * width + 0.001, y: 0.002 },
    text: name,
  }));
  const edge = (...ends: { x: Metre; y: Metre }[]): TemplateLine => ({
    kind: 'polyline',
    use: 'edge',
    closed: false,
    points: ends,
  });
  return {
    name: asked.name,
    notes: [
      ...asked.notes,
      ...(asked.datum === undefined
        ? []
        : [
            `The straight side is ${(Math.abs(side) * 1e3).toFixed(2)} mm along the tube from ${asked.datum}.`,
          ]),
      `Once round the tube is ${(width * 1e3).toFixed(2)} mm: the two short sides must meet.`,
    ],
    lines: [
      { kind: 'polyline', use: 'cut', closed: false, points },
      edge(points[0]!, { x: 0, y: 0 }, { x: width, y: 0 }, points.at(-1)!),
      ...marks,
    ],
    labels,
  };
}

const KEPT = 'Keep the tube under the paper; cut along the thick line.';

/** A square cut, to mark a tube round. */
export const squareWrap = (of: {
  readonly name: string;
  readonly od: Metre;
  readonly paper?: Metre;
}): Template =>
  wrap({
    ...of,
    curve: squareCut,
    quarters: ['0°', '90°', '180°', '270°'],
    notes: [KEPT],
    keep: 'below',
  });

export const mitreWrap = (of: {
  readonly name: string;
  readonly od: Metre;
  readonly mitre: Radian;
  readonly paper?: Metre;
}): Template =>
  wrap({
    ...of,
    curve: mitreCut(of),
    quarters: ['short side', '90°', 'long side', '270°'],
    notes: [KEPT],
    keep: 'below',
  });

export const saddleWrap = (of: Saddle & { readonly name: string; readonly paper?: Metre }): Template =>
  wrap({
    name: of.name,
    od: of.branch.od,
    ...(of.paper === undefined ? {} : { paper: of.paper }),
    curve: saddleCut(of),
    quarters: ['wide angle', '90°', 'narrow angle', '270°'],
    notes: [
      KEPT,
      'Places go round clockwise seen from the free end of the branch; its axis is offset towards 90°.',
    ],
    datum: 'where the axes pass each other',
    keep: 'above',
  });

export const bendWrap = (of: {
  readonly name: string;
  readonly od: Metre;
  readonly radius: Metre;
  readonly angle: Radian;
  readonly paper?: Metre;
}): Template =>
  wrap({
    ...of,
    curve: bendCut(of),
    quarters: ['outside', '90°', 'inside', '270°'],
    notes: [
      'A strip, laid from the end of the stock bend: its heights at the four lines are what to mark on the skin.',
      'Paper does not lie flat on a bend: mark outside, inside and both sides, and join them round the tube.',
    ],
    keep: 'below',
    side: 0,
    seam: Math.PI,
  });

export const mergeWrap = (of: Merge & { readonly name: string; readonly paper?: Metre }): Template =>
  wrap({
    name: of.name,
    od: of.od,
    ...(of.paper === undefined ? {} : { paper: of.paper }),
    curve: mergeCut(of),
    quarters: ['outermost', '90°', 'innermost', '270°'],
    notes: [KEPT, `All ${of.tubes} tubes are cut alike.`],
    datum: 'where the axes meet',
    keep: 'above',
  });
