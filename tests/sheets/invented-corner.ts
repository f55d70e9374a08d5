/** An invented corner's answer, made by hand, for the tests of the sheets. No engine stands behind it. */
import type { CornerReached } from '../../src/questions/corner.ts';
import type { DrawnCorner } from '../../src/questions/drawing-types.ts';
import type { TravelColumns } from '../../src/sheets/travel-curves.ts';

const spread = (u: number, label: string) => ({
  u,
  shares: [{ label, path: 'front.left.rate', contribution: u, share: 0.81 }],
  unknown: [],
});

export const inventedAnswer: CornerReached = {
  reached: true,
  wheel: { end: 'front', side: 'left' },
  at: { travel: 0.0127, rack: 0 },
  figures: [
    {
      id: 'wheelRate',
      stop: 'spring',
      means: 'wheel rate',
      symbol: 'k_w',
      value: 175126.8,
      unit: 'N/m',
      rank: 1,
      spread: spread(1751, 'bar diameter'),
    },
    {
      id: 'camber',
      stop: 'upright',
      means: 'camber',
      symbol: 'γ',
      value: -0.0349066,
      unit: 'rad',
      rank: 1,
      say: 'negative: top leans inboard',
      spread: spread(0.001, 'camber'),
    },
    {
      id: 'barTwist',
      stop: 'spring',
      means: 'twist of the torsion bar',
      symbol: 'φ',
      value: 0.174533,
      unit: 'rad',
      rank: 1,
    },
    {
      id: 'instantCentreHeight',
      stop: 'links',
      means: 'instant centre in front view, height above the ground',
      symbol: 'z_ic',
      value: Number.NaN,
      unit: 'm',
      rank: 2,
      say: 'links parallel',
    },
  ],
  events: [
    { travel: 0.03, what: 'bump rubber touches', kind: 'stop' },
    { travel: 0.05, what: 'damper is closed', kind: 'limit' },
  ],
  range: { bump: 0.05, droop: -0.025, bumpBy: 'damper closed', droopBy: 'droop stop' },
  notes: ['The bar is slack below −20 mm.'],
  cautions: ['A wound bar holds energy.', 'The makers always come first.'],
};

const travel = Array.from({ length: 31 }, (_, k) => -0.025 + 0.0025 * k);

export const inventedCurves: TravelColumns = {
  travel,
  columns: [
    { id: 'wheelRate', means: 'wheel rate', unit: 'N/m', values: travel.map((z) => 175000 + 1e6 * z) },
    { id: 'camber', means: 'camber', unit: 'rad', values: travel.map((z) => -0.03 - 0.4 * z) },
    {
      id: 'toe',
      means: 'toe, this wheel',
      unit: 'rad',
      values: travel.map((z) => (z < 0 ? null : 1e-3 * z)),
    },
  ],
};

export const inventedDrawn: DrawnCorner = {
  wheel: { end: 'front', side: 'left' },
  points: { contact: [0, 0.75, 0], upperOuter: [0, 0.66, 0.44], lowerOuter: [0, 0.69, 0.18] },
  tyre: {
    centre: [0, 0.74, 0.31],
    axis: [0, Math.cos(0.035), Math.sin(0.035)],
    contact: [0, 0.75, 0],
    loadedRadius: 0.31,
    tyreWidth: 0.29,
    rimDiameter: 0.33,
  },
  rocker: {
    pivot: [0, 0.2, 0.52],
    axis: [1, 0, 0],
    joints: [
      [0, 0.24, 0.58],
      [0, 0.16, 0.56],
    ],
    angle: 0.1,
  },
  members: [
    {
      id: 'upper',
      name: 'upper wishbone',
      kind: 'wishbone leg',
      stop: 'links',
      from: [0.1, 0.25, 0.42],
      to: [0, 0.66, 0.44],
      diameter: 0.022,
    },
    {
      id: 'rod',
      name: 'pushrod',
      kind: 'rod',
      stop: 'links',
      from: [0, 0.64, 0.2],
      to: [0, 0.24, 0.58],
      diameter: 0.024,
    },
  ],
  coil: { from: [0, 0.16, 0.56], to: [0, 0.02, 0.4], meanDiameter: 0.06, wireDiameter: 0.01, coils: 7 },
  bar: { from: [0, 0.2, 0.52], to: [-0.4, 0.2, 0.5], diameter: 0.018, twist: 0.17, headDiameter: 0.026 },
  held: false,
};
