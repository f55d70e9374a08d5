/**
 * The demo cars against a second working of them by another road (tests/reference/independent_model.py): free rigid
 * bodies and kept lengths solved by SciPy, every derivative a finite difference, the springing from its energy alone.
 * Its springs, bars and curves rest on SciPy's quad, root, brentq and PchipInterpolator.
 *
 * Where Python with SciPy is there, it is asked afresh; else its recorded answer is used, and the test says so.
 * To remake the record after a change of the demo cars (wants Python 3 with NumPy and SciPy):
 * (FLATPATCH_PYTHON names another Python than the two that are tried):
 *   FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/independent.test.ts
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { axleFigures, cornerFigures } from '../../src/questions/index.ts';
import { answeredByPython, handedCar, plain, recordIsOf, SHEAR_MODULUS } from '../reference/recorded.ts';

const REMAKE = 'FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/independent.test.ts';
const NAMES = ['fenwold-201', 'ashgarth-501', 'pellmoor-7b'] as const;
const ENDS = ['front', 'rear'] as const;
const SIDES = ['left', 'right'] as const;
const TRAVELS = [-0.006, 0, 0.01, 0.02];
/** Left and right wheel at travels of their own. */
const ROLLED: readonly (readonly [number, number])[] = [
  [0.006, -0.004],
  [-0.006, 0.008],
];
const RACKS = [0, 0.005];

type Numbers = Readonly<Record<string, number>>;
type Answers = Readonly<Record<string, Readonly<Record<string, Readonly<Record<string, Numbers | number>>>>>>;

const handed = NAMES.map((name) => [name, handedCar(name)] as const);
const cars = Object.fromEntries(handed.map(([name, { car }]) => [name, car]));

function asked(): string {
  const forms = Object.entries(cars).map(([name, car]) => {
    const { front, rear, brakes, body } = plain(car.form) as Record<string, unknown>;
    return [name, { front, rear, brakes: brakes ?? {}, body: body ?? {} }];
  });
  return JSON.stringify({
    cars: Object.fromEntries(forms),
    shearModulus: SHEAR_MODULUS,
    travels: TRAVELS,
    rolled: ROLLED,
    racks: RACKS,
  });
}

const OF_MODEL = {
  script: 'tests/reference/independent_model.py',
  record: 'tests/reference/independent_model.json',
  remake: REMAKE,
  cars: Object.fromEntries(handed.map(([name, { hash }]) => [name, hash])),
  digits: 12,
};
const reference = answeredByPython<Answers>({ ...OF_MODEL, asked: asked() });

/** Our figure's name, the other's name. */
const OF_A_CORNER: Readonly<Record<string, string>> = {
  camber: 'camber',
  toe: 'toe',
  bumpSteer: 'toePerTravel',
  camberGain: 'camberPerTravel',
  caster: 'caster',
  kingpinInclination: 'kingpin',
  scrubRadius: 'scrubRadius',
  mechanicalTrail: 'mechanicalTrail',
  halfTrack: 'halfTrack',
  sideSlope: 'rearwardLocked',
  instantCentreAcross: 'instantCentreAcross',
  instantCentreHeight: 'instantCentreHeight',
  rockerAngle: 'rocker',
  twistPerWheel: 'rockerPerTravel',
  turnChange: 'rockerChange',
  springPerWheel: 'springPerWheel',
  ratioChange: 'springPerWheelChange',
  springLength: 'unitLength',
  coilForce: 'coilForce',
  coilRate: 'coilRate',
  rubberForce: 'rubberForce',
  springForce: 'unitForce',
  barRate: 'barRate',
  barTwist: 'barTwist',
  barTorque: 'barTorque',
  barStress: 'barStress',
  wheelRate: 'wheelRate',
  wheelLoad: 'groundLoad',
  rideRate: 'rideRate',
};
const OF_AN_AXLE: Readonly<Record<string, string>> = {
  track: 'track',
  rollCentreHeight: 'rollCentreHeight',
  rollCentreOffset: 'rollCentreOffset',
  rollCentreForce: 'rollCentreForce',
  antiDive: 'brakingLinks',
  antiLift: 'brakingLinks',
  antiSquat: 'drivingLinks',
  heaveForce: 'heaveForce',
};
/** Those that hold the rate of the anti-roll bar, which is told apart below where its arms are blades. */
const WITH_BAR: Readonly<Record<string, string>> = {
  antiRollBarRate: 'antiRollBarRate',
  antiRollBarOneWheel: 'antiRollBarOneWheel',
  antiRollBarRoll: 'antiRollBarRoll',
  heaveRate: 'heaveRate',
  heaveRide: 'heaveRide',
  heaveFrequency: 'heaveFrequency',
  rollRate: 'rollRate',
};

/**
 * A ten-millionth of the value. The floors, in SI, stand for the noise of differences where a value goes through
 * nought: positions come out to 1e-16 m, a first difference over 0.5 mm to 1e-12, a second to 1e-8 or so.
 */
const PART = 1e-7;
const FLOOR = 1e-10;
const FLOOR_OF_SECOND = 1e-7;

function compare(
  where: string,
  ours: Numbers,
  other: Numbers,
  names: Readonly<Record<string, string>>,
): number {
  let compared = 0;
  for (const [our, their] of Object.entries(names)) {
    const value = ours[our];
    const expected = other[their];
    if (value === undefined) continue;
    assert.ok(expected !== undefined, `${where}: the reference has no ${their}`);
    const floor = our === 'turnChange' || our === 'ratioChange' ? FLOOR_OF_SECOND : FLOOR;
    const off = Math.abs(value - expected);
    assert.ok(off <= PART * Math.abs(expected) + floor, `${where}: ${our} ${value}, reference ${expected}`);
    compared += 1;
  }
  return compared;
}

const numbersOf = (figures: readonly { readonly id: string; readonly value: number }[]): Numbers =>
  Object.fromEntries(figures.map((figure) => [figure.id, figure.value]));

const racksOf = (end: 'front' | 'rear'): readonly number[] => (end === 'front' ? RACKS : [0]);

function cornerOf(
  name: string,
  end: 'front' | 'rear',
  side: 'left' | 'right',
  travel: number,
  rack: number,
): Numbers {
  const answer = cornerFigures(cars[name]!, { end, side }, { travel, rack }, {});
  assert.ok('figures' in answer, `${name} ${end} ${side} is reached at ${travel} m`);
  return numbersOf(answer.figures);
}

function axleOf(name: string, end: 'front' | 'rear', left: number, right: number, rack: number): Numbers {
  const wheels = { left, right };
  const answer = axleFigures(cars[name]!, end, { front: wheels, rear: wheels, rack }, {});
  assert.ok('figures' in answer, `${name} ${end} is reached`);
  return numbersOf(answer.figures);
}

const theirs = (name: string, what: string, key: string): Numbers =>
  reference.answers[name]![what]![key] as Numbers;

test('the record is of these car files', (t) => {
  t.diagnostic(`compared with ${reference.from}`);
  recordIsOf(OF_MODEL);
});

for (const name of NAMES) {
  test(`${name}: every corner as by the independent model`, () => {
    let compared = 0;
    for (const end of ENDS)
      for (const side of SIDES)
        for (const rack of racksOf(end))
          for (const travel of TRAVELS) {
            const key = `${travel}/${rack}`;
            const ours = cornerOf(name, end, side, travel, rack);
            const where = `${name} ${end} ${side} at ${key}`;
            compared += compare(where, ours, theirs(name, `${end}-${side}`, key), OF_A_CORNER);
          }
    assert.ok(compared > 24 * 20, `${compared} figures compared`);
  });

  test(`${name}: where stops, rubbers and springs come in`, () => {
    for (const end of ENDS)
      for (const side of SIDES) {
        const events = reference.answers[name]![`${end}-${side}-events`] as unknown as Numbers;
        const ours = cornerOf(name, end, side, 0, 0);
        const seen = compare(
          `${name} ${end} ${side}`,
          ours,
          events,
          Object.fromEntries(Object.keys(events).map((event) => [event, event])),
        );
        assert.equal(seen, Object.keys(events).length);
      }
  });

  test(`${name}: every axle as by the independent model`, () => {
    let compared = 0;
    for (const end of ENDS) {
      const bladed = cars[name]!.form[end].antiRollBar?.leftBlade !== undefined;
      for (const rack of racksOf(end))
        for (const [left, right] of [...TRAVELS.map((z) => [z, z] as const), ...ROLLED]) {
          const key = `${left}/${right}/${rack}`;
          const names = bladed ? OF_AN_AXLE : { ...OF_AN_AXLE, ...WITH_BAR };
          const ours = axleOf(name, end, left, right, rack);
          compared += compare(`${name} ${end} at ${key}`, ours, theirs(name, end, key), names);
        }
    }
    assert.ok(compared > 18 * 4, `${compared} figures compared`);
  });
}

// A blade clamped at some way from the bar's axis: its tip gives F*L^3/(3*E*I) by the length L that bends, the torque
// is F*a and the twist that much divided by a, with a the distance of the drop link's joint from the axis. So the rate
// is k_tip*a^2, not k_tip*L^2 (beam of one clamped end: any handbook, such as Gere, Mechanics of Materials, table of
// deflections of cantilevers, from memory; energy F*d/2 gives the same).
test('ashgarth-501: front anti-roll bar with blades, whose lever is the arm and not the length that bends', () => {
  for (const rack of RACKS)
    for (const [left, right] of [...TRAVELS.map((z) => [z, z] as const), ...ROLLED]) {
      const key = `${left}/${right}/${rack}`;
      const ours = axleOf('ashgarth-501', 'front', left, right, rack);
      compare(`ashgarth-501 front at ${key}`, ours, theirs('ashgarth-501', 'front', key), WITH_BAR);
    }
});

// A toed wheel that goes up turns about its own axle too, and its lowest point is not always the same point of the
// tyre. What the track grows by is the movement of the lowest point.
test('the outboard movement of the contact point is what the half track grows by, steered as well', () => {
  for (const name of NAMES)
    for (const rack of RACKS) {
      const ours = cornerOf(name, 'front', 'left', 0.01, rack);
      const other = theirs(name, 'front-left', `0.01/${rack}`);
      compare(`${name} front left, rack ${rack}`, ours, other, { frontSlope: 'lateralPerTravel' });
    }
});
