/** Invented answers of the flat floor, made by hand, for the tests of its sheets. No engine stands behind them. */
import type { Drawing, DrawnCorner } from '../../src/questions/drawing-types.ts';
import type {
  Act,
  AdjustersReached,
  AdjustmentCardReached,
  CardMove,
  FloorSheetRead,
  FloorSheets,
  SetUpReached,
  SetUpSheetReached,
} from '../../src/questions/index.ts';

const DEG = Math.PI / 180;
const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;
type Name = (typeof WHEELS)[number];

const CAUTIONS = ['Stands under the car.', 'The makers always come first.'];

const byWheel = <T>(of: (wheel: Name) => T): Readonly<Record<Name, T>> =>
  Object.fromEntries(WHEELS.map((wheel) => [wheel, of(wheel)])) as Record<Name, T>;

/** A car of 2.8 m, tracks of 1.5 m, with one wishbone a side. */
const corner = (wheel: Name): DrawnCorner => {
  const [x, y] = [wheel.startsWith('front') ? 0 : -2.8, wheel.endsWith('Left') ? 0.75 : -0.75];
  return {
    wheel: {
      end: wheel.startsWith('front') ? 'front' : 'rear',
      side: wheel.endsWith('Left') ? 'left' : 'right',
    },
    points: {},
    tyre: {
      centre: [x, y, 0.3],
      axis: [0, Math.sign(y), 0],
      contact: [x, y, 0],
      loadedRadius: 0.3,
      tyreWidth: 0.25,
      rimDiameter: 0.33,
    },
    rocker: { pivot: [x, 0, 0.4], axis: [1, 0, 0], joints: [], angle: 0 },
    members: [
      {
        id: `${wheel}.leg`,
        name: 'leg',
        kind: 'wishbone leg',
        stop: 'links',
        from: [x + 0.2, y / 4, 0.2],
        to: [x, y * 0.9, 0.2],
        diameter: 0.02,
      },
    ],
    held: false,
  };
};

export const inventedCar: Drawing = {
  corners: WHEELS.map(corner),
  antiRollBars: [],
  sections: [0.2, -0.2, -2.6, -3].map((x) => [
    [x, 0.2, 0.2],
    [x, -0.2, 0.2],
    [x, 0, 0.5],
  ]),
  ground: 0,
};

const found: FloorSheetRead = {
  name: 'found on a Friday',
  state: 'as found',
  on: '2004-05-07',
  by: 'Moss',
  note: undefined,
  bars: 'disconnected',
  readings: [
    ...WHEELS.map((wheel, k) => ({ id: `weight.${wheel}`, value: [120, 140, 190, 170][k]!, u: 0.3 })),
    ...WHEELS.map((wheel, k) => ({
      id: `camber.${wheel}`,
      value: [-2.75, -2.5, -1.25, -1.25][k]! * DEG,
      u: 0.03 * DEG,
    })),
    { id: 'height.nose', value: 0.0345, u: 1e-4 },
    { id: 'height.rear left', value: 0.0605, u: 1e-4 },
  ],
};

export const inventedSheets: FloorSheets = {
  wanted: [
    { id: 'height.nose', value: 0.035, tolerance: 0.0005, stated: true },
    { id: 'height.rear left', value: 0.06, tolerance: 0.0005, stated: true },
    { id: 'cross', value: 0.5, tolerance: 0.003, stated: true },
    ...WHEELS.map((wheel, k) => ({
      id: `camber.${wheel}`,
      value: [-2.75, -2.75, -1.25, -1.25][k]! * DEG,
      tolerance: 0.1 * DEG,
      stated: true,
    })),
  ],
  read: [found],
  heights: ['nose', 'rear left', 'rear right'],
  heightsAt: { nose: [0.3, 0, 0.04], 'rear left': [-2.4, 0.2, 0.06], 'rear right': [-2.4, -0.2, 0.06] },
  aboard: [{ name: 'driver', mass: 75 }],
};

/** The sums of the weights by hand: 620 kg, of which (140 + 190)/620 stand across, 260/620 in front, 310/620 left. */
const SUMS = { total: 620, cross: 330 / 620, frontShare: 260 / 620, leftShare: 0.5 } as const;

const values = new Map([
  ...found.readings.map(({ id, value }) => [id, value] as const),
  ...Object.entries(SUMS),
]);

export const inventedSetUpSheet: SetUpSheetReached = {
  reached: true,
  note: 'the old team kept it',
  sheets: inventedSheets,
  columns: [
    {
      state: 'as found',
      read: {
        ...found,
        aboard: [{ name: 'driver', mass: 74 }],
        moved: [{ adjuster: 'front left pushrod', units: -2 }],
      },
      values,
    },
    { state: 'as set', values: new Map() },
    { state: 'after run', values: new Map() },
  ],
  corners: byWheel((wheel) => ({
    spring: wheel.startsWith('front')
      ? { kind: 'bar', rate: undefined, diameter: 0.0185 }
      : { kind: 'coil', rate: 150e3, wire: 0.012 },
    packers: wheel.startsWith('front') ? 0.004 : undefined,
  })),
  axles: {
    front: { bar: { kind: 'U-bar', diameter: 0.022, blades: [30 * DEG, 60 * DEG] }, heaveGap: 0.001 },
    rear: { bar: undefined, heaveGap: undefined },
  },
  patch: {
    pads: byWheel((wheel) => (wheel === 'rearRight' ? 0.0004 : 0)),
    risesForward: 0,
    risesLeft: 0.001,
  },
  notes: ['A note of the invented sheet.'],
  cautions: CAUTIONS,
};

const move = (
  adjuster: string,
  kind: CardMove['kind'],
  units: number,
  unit: string,
  act: Act,
  locked = false,
): CardMove => ({ adjuster, kind, units, unit, words: `${adjuster} as in words`, act, locked });

/** One of each way that there is to move something. */
export const inventedMoves: readonly CardMove[] = [
  move('front left tyre', 'pressure', 1, '0.1 bar', { by: 'pressure', from: 1.3e5, to: 1.4e5 }),
  move('ballast nose', 'ballast', -2, 'piece', { by: 'ballast', from: 3, to: 2, piece: 0.5 }),
  move('front left caster shims', 'caster shims', 10, '0.1 mm', {
    by: 'shift',
    moves: 'upper wishbone',
    forward: [{ thickness: 0.001, pieces: 1 }],
    rearward: [],
    length: 0.001,
  }),
  move('front left camber shims', 'camber shims', -3, '0.1 mm', {
    by: 'stack',
    at: 'upper outer',
    put: [{ thickness: 0.0002, pieces: 1 }],
    taken: [{ thickness: 0.0005, pieces: 1 }],
    before: 0.0025,
    after: 0.0022,
    most: 0.006,
  }),
  move(
    'rear left toe link',
    'track rod',
    1,
    'half turn',
    {
      by: 'end',
      longer: true,
      way: 'anticlockwise',
      perTurn: 2,
      length: 0.00075,
      size: 'M10x1.5',
      ends: [{ hand: 'right', engaged: 0.024, engagedAfter: 0.02325, least: 0.015 }],
    },
    true,
  ),
  move('front right bar splines', 'splines', 3, 'vernier step', {
    by: 'splines',
    rocker: 3,
    anchor: -3,
    angle: 0.008,
  }),
  move(
    'front right anchor screw',
    'anchor',
    -4,
    'flat',
    { by: 'anchor', tighter: false, angle: 0.02, left: 0.007 },
    true,
  ),
  move(
    'rear right spring platform',
    'platform',
    9,
    'slot',
    { by: 'platform', tighter: true, perTurn: 8, length: 0.00225, left: 0.01 },
    true,
  ),
  move(
    'front left pushrod',
    'rod',
    2,
    'flat',
    {
      by: 'tube',
      longer: true,
      way: 'clockwise',
      perTurn: 6,
      length: 0.000706,
      size: '3/8-24 UNF',
      ends: [
        { hand: undefined, engaged: 0.024, engagedAfter: 0.02365, least: 0.0143 },
        { hand: undefined, engaged: 0.024, engagedAfter: 0.02365, least: 0.0143 },
      ],
    },
    true,
  ),
];

const standing = (
  [
    ...WHEELS.map((wheel, k) => [`weight.${wheel}`, [131, 129, 179, 181][k]!, 'kg', 0.4] as const),
    ...WHEELS.map(
      (wheel, k) => [`camber.${wheel}`, [-2.7, -2.4, -1.2, -1.3][k]! * DEG, 'rad', 0.05 * DEG] as const,
    ),
    ['height.nose', 0.0351, 'm', 0.0001] as const,
    ['height.rear left', 0.0602, 'm', 0.0001] as const,
    ['cross', 309 / 620, 'share', 0.001] as const,
    ['total', 620, 'kg', 0.5] as const,
  ] as const
).map(([id, value, unit, u]) => ({
  id,
  words: id,
  unit,
  found: value,
  after: value,
  onThisFloor: value,
  u,
}));

const setUp: SetUpReached = {
  reached: true,
  sheets: [found.name],
  doubts: [
    {
      code: 'floor/invented',
      message: 'The nose reads low.',
      remedy: 'Read it again.',
      paths: [],
      weight: 'warning',
    },
  ],
  moves: inventedMoves.map(({ act: _, locked: __, ...rest }) => rest),
  readings: inventedSheets.wanted.map(({ id, value, tolerance, stated }) => {
    const then = standing.find((each) => each.id === id)!;
    return {
      id,
      words: id,
      unit: then.unit,
      wanted: value,
      tolerance,
      toleranceStated: stated,
      before: value,
      after: then.onThisFloor,
      willRead: then.onThisFloor,
      u: then.u,
      inTolerance: Math.abs(then.onThisFloor - value) <= tolerance,
    };
  }),
  fits: [],
  standing,
  outOfReach: ['camber, front right: stopped by front right camber shims (no shims left to take out).'],
  proved: true,
  leastWork: true,
  next: [{ id: 'toe.frontLeft', words: 'toe, front left', takes: 0.2, again: false }],
  learnt: [],
  notes: ['A note of the invented set-up.'],
  cautions: CAUTIONS,
};

const effects: AdjustersReached = {
  reached: true,
  readings: standing.map(({ id, words, unit }) => ({ id, words, unit })),
  adjusters: [
    {
      name: 'front left pushrod',
      kind: 'rod',
      unit: 'flat',
      step: 0.000353,
      stepUnit: 'm',
      down: 12,
      up: 9,
      stops: { up: 'thread', down: 'thread' },
      effects: standing.map((_, k) => (k === 0 ? 1.2345 : k === 4 ? 0.0123 * DEG : 0)),
    },
    {
      name: 'front left drop link',
      kind: 'drop link',
      unit: 'flat',
      step: 0.0003,
      stepUnit: 'm',
      down: 3,
      up: 4,
      stops: { up: 'thread', down: 'thread' },
      effects: standing.map(() => 0),
    },
  ],
  notes: [],
  cautions: CAUTIONS,
};

export const inventedCard: AdjustmentCardReached = {
  reached: true,
  setUp,
  sheets: inventedSheets,
  from: found,
  values,
  moves: inventedMoves,
  pressures: { frontLeft: 1.35e5, frontRight: 1.35e5, rearLeft: 1.3e5, rearRight: undefined },
  before: ['Pads are level.', 'Pressures first.'],
  afterwards: ['Every jam nut is tight.', 'Read again.'],
  effects,
};
