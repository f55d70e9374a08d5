/** Invented answers of loads and of a bolted joint, made by hand, for the tests of the sheets. No engine stands behind them. */
import type { BodyForcesReached } from '../../src/questions/body-forces.ts';
import { type Figure, STANDING, type Wheel } from '../../src/questions/figure.ts';
import type { JointReached } from '../../src/questions/joint.ts';
import type { JointCases } from '../../src/questions/joint-cases.ts';
import { type LoadCases, MEMBERS } from '../../src/questions/load-cases.ts';
import type { LoadsReached } from '../../src/questions/loads.ts';
import type { TighteningReached } from '../../src/questions/tightening.ts';

const CAUTIONS = ['Studs hold the car together.', 'The makers always come first.'];

const WHEELS: readonly Wheel[] = [
  { end: 'front', side: 'left' },
  { end: 'front', side: 'right' },
  { end: 'rear', side: 'left' },
  { end: 'rear', side: 'right' },
];

const doing = (name: string, means: string) => ({ name, means, doing: STANDING });
export const STILL = doing('standing', 'at rest on level ground');
export const DIP = doing('dip', 'bottom of a dip');

const figure = (id: string, value: number, unit = 'N', u?: number): Figure => ({
  id,
  stop: 'links',
  means: id,
  symbol: 'F',
  value,
  unit,
  rank: 1,
  ...(u === undefined ? {} : { spread: { u, shares: [], unknown: [] } }),
});

/** Pulls and pushes in turn, so that both words stand on the sheet. */
const loadsOf = (size: number, u?: number): LoadsReached => ({
  reached: true,
  doing: STANDING,
  residual: 0,
  notes: ['A kerb is taken as a load at rest.'],
  cautions: CAUTIONS,
  wheels: WHEELS.map((wheel, k) => ({
    wheel,
    figures: [
      figure('tyreLoad', 1000 * size + k, 'N', u),
      figure('travelUnderLoad', 0.01 * size, 'm'),
      ...MEMBERS.flatMap((name, row) => [
        figure(`tension.${name}`, (row % 2 === 0 ? 1 : -1) * size * (1234 + 100 * row + k), 'N', u),
        figure(`yieldShare.${name}`, 0.1 * size, 'share'),
        figure(`bucklingShare.${name}`, row % 2 === 0 ? 0 : 0.2 * size, 'share'),
      ]),
      figure('rockerPivotForce', 2345 * size, 'N', u),
    ],
  })),
});

export const inventedCase: BodyForcesReached = {
  reached: true,
  doing: STANDING,
  forces: [
    {
      name: 'rocker pivot, left',
      at: [0, 0, 0],
      force: [100, -200, 300],
      size: 374,
      moment: 12,
      couple: [0, 12, 0],
    },
  ],
  resultant: { force: [100, -200, 300], moment: [1, 2, 3] },
  residual: 1e-12,
  notes: ['All rear suspension is taken to stand on the case.'],
  cautions: CAUTIONS,
};

export const inventedLoads: LoadsReached = loadsOf(2, 123);

export const inventedCases: LoadCases = {
  cases: [
    { doing: STILL, loads: loadsOf(1), gearCase: inventedCase },
    { doing: DIP, loads: loadsOf(3), gearCase: inventedCase },
  ],
  without: [
    { doing: doing('kerb', 'left front wheel on a kerb'), message: 'The wheel does not come there.' },
  ],
};

const STUDS = [
  { name: 'lower left', y: 0.2, z: -0.19 },
  { name: 'lower right', y: -0.2, z: -0.19 },
  { name: 'upper left', y: 0.21, z: 0.19 },
  { name: 'upper right', y: -0.21, z: 0.19 },
] as const;

const drawn = STUDS.map((stud, k) => ({
  ...stud,
  hole: 0.011,
  pad: 0.042,
  left: 15000 + 1000 * k,
  pressed: 30000,
  tension: 36000 + 100 * k,
  at: [-1.35, stud.y, stud.z] as const,
  open: [],
}));

export const inventedJoint: JointReached = {
  reached: true,
  joint: 'engineToTub',
  doing: STANDING,
  worst: 'lower left',
  left: 'Least is left at lower left: 15 kN of 30 kN on its pad, at the low end of the preload.',
  breaksFirst: ['M12 (lower left): first the stud breaks in tension, at about 90 kN.'],
  figures: [
    figure('pull', -1200, 'N', 270),
    figure('bending', -11000, 'N m', 76),
    figure('openedLow', 0.0123, 'share'),
    figure('slipMargin', 0.63, '1', 0.02),
    ...STUDS.flatMap(({ name }, k) => [
      figure(`stud.${name}.preloadLow`, 28000, 'N', 680),
      figure(`stud.${name}.preload`, 35000, 'N', 800),
      figure(`stud.${name}.preloadHigh`, 48000, 'N', 970),
      figure(`stud.${name}.force`, 36000 + 100 * k, 'N', 807),
      figure(`stud.${name}.pad`, 15000 + 1000 * k, 'N', 701),
      figure(`stud.${name}.yieldShare`, 0.625, 'share', 0.013),
      figure(`stud.${name}.heat`, 4864, 'N', 486),
    ]),
    figure('dowel.dowel left', 1800, 'N', 560),
  ],
  face: { studs: drawn, dowels: [{ name: 'dowel left', y: 0.15, z: -0.19 }] },
  notes: ['Least is left at lower left.', '7/16-20 UNF: first the stud breaks in tension.'],
  cautions: CAUTIONS,
};

const inCase = (of: typeof STILL, left: number) => ({
  doing: of,
  worst: 'lower left',
  opened: 0,
  slip: 3.57,
  dowel: 1959,
  studs: STUDS.map(({ name }, k) => ({
    stud: name,
    left: left + k,
    pressed: 30000,
    tension: 36000 - left / 10,
  })),
});

const hardest = inCase(DIP, 15000);
export const inventedJointCases: JointCases = {
  cases: [inCase(STILL, 24000), hardest],
  without: [],
  hardest,
};

const torqueFigure = (setting: number, atNut: number, text: string) => ({
  atNut,
  setting,
  rounds: [0.3, 0.6, 1, 1].map((share) => share * setting),
  lubricant: 'engine oil',
  preload: { low: 28000, middle: 35000, high: 48000 },
  yieldShare: 0.625,
  text,
});

export const inventedTightening: TighteningReached = {
  reached: true,
  joint: 'engineToTub',
  rounds: [0.3, 0.6, 1, 1],
  studs: STUDS.map((stud, k) => ({
    ...stud,
    number: k + 1,
    sort: k < 2 ? 'lower' : 'upper',
    pad: 0.042,
    hole: 0.011,
  })),
  dowels: [{ name: 'dowel left', y: 0.15, z: -0.19 }],
  sorts: [
    {
      name: 'lower',
      studs: ['lower left', 'lower right'],
      thread: 'M12x1.25',
      material: '10.9',
      materialMeans: 'steel of property class 10.9, to 16 mm',
      parent: 'cast aluminium',
      engaged: 0.024,
      running: 2,
      wrench: 0.32,
      file: torqueFigure(60, 60, '60 N m'),
      toSet: 'file',
      compared: "Builder's figure: none in the file. Ask him before the first build.",
    },
    {
      name: 'upper',
      studs: ['upper left', 'upper right'],
      thread: 'M10x1.25',
      material: '10.9',
      materialMeans: 'steel of property class 10.9, to 16 mm',
      parent: 'cast aluminium',
      engaged: 0.02,
      running: 0,
      wrench: 0.32,
      crowfoot: 0.038,
      file: torqueFigure(40, 44.75, '40 N m'),
      builder: {
        atNut: 40,
        text: '40 N m',
        source: 'an invented sheet',
        lubricant: 'engine oil',
        figure: torqueFigure(35.75, 40, '40 N m'),
      },
      toSet: 'choose',
      compared: "At the nut the file's figure is 12 % above the builder's, with the same lubricant.",
    },
  ],
  holdPoints: ['COLD: engine, case and studs at shop temperature.', 'Dowels home, by hand: dowel left.'],
  afterwards: ['Witness mark over stud, nut and face of each, in paint.'],
  rule: 'Order: begins at a dowel.',
  notes: ['lower: friction and wrench alone put the preload up to 20 % below its middle.'],
  cautions: CAUTIONS,
};
