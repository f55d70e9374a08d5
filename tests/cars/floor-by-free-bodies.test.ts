/**
 * The car on four pads against a second working by another road (tests/reference/floor_model.py): free bodies under
 * joint forces instead of virtual work, positions by SciPy, what an adjuster does by differences of whole solutions.
 *
 * To remake the record after a change of the demo cars (wants Python 3 with NumPy and SciPy):
 *   FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/floor-by-free-bodies.test.ts
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { adjustersOf } from '../../src/flatfloor/adjusters.ts';
import { floorCarOf } from '../../src/flatfloor/floor-car.ts';
import { Floor } from '../../src/flatfloor/stand.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { near } from '../near.ts';
import { answeredByPython, handedCar, plain, recordIsOf, SHEAR_MODULUS } from '../reference/recorded.ts';

const REMAKE = 'FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/floor-by-free-bodies.test.ts';
const NAMES = ['fenwold-201', 'ashgarth-501'] as const;

type Changes = Readonly<Record<string, number>>;
type Readings = Readonly<Record<string, number>>;
interface Standing {
  readonly readings: Readings;
  readonly matrix: Readonly<Record<string, Readings>>;
}

/** Pads as no floor has them, a slope, and something moved at every corner. */
const UNEVEN: Changes = {
  'frontRight.pad': 0.0021,
  'rearLeft.pad': -0.0013,
  'rearRight.pad': 0.0017,
  'frontLeft.rod': 0.0011,
  'rearRight.rod': -0.0009,
  'frontRight.toe': 0.0008,
  'rearLeft.toe': -0.0012,
  'frontLeft.camber': 0.0007,
  'rearRight.camber': 0.0011,
  'frontRight.caster': 0.001,
  'rearLeft.caster': -0.0008,
  'rearLeft.platform': 0.001,
  'frontLeft.anchor': 0.004,
  'frontRight.pressure': 8000,
  'rearLeft.tyre': 0.07,
  'frontLeft.spring': 0.03,
  'front.leftLink': 0.0007,
  'rear.rightLink': -0.0005,
  mass: 3,
  massForward: -1.5,
  massLeft: 0.6,
};
const TILTED: Changes = { ...UNEVEN, risesForward: 0.003, risesLeft: -0.002 };

const handed = NAMES.map((name) => {
  const { car, hash } = handedCar(name);
  const numbers = new Numbers(car.values);
  const prepared = floorCarOf(car.form, numbers);
  return { name, car, hash, prepared, floor: new Floor(prepared, true), numbers };
});
type Handed = (typeof handed)[number];

/** One unit of every adjuster of the file, and a millimetre of each pad. */
function stepsOf({ car, prepared, numbers }: Handed): Record<string, readonly [string, number]> {
  const { names } = prepared.changes;
  return Object.fromEntries([
    ...adjustersOf(car.form, prepared.changes, numbers).map(
      ({ name, change, step }) => [name, [names[change]!, step]] as const,
    ),
    ...['frontLeft', 'frontRight', 'rearLeft', 'rearRight'].map(
      (wheel) => [`${wheel} pad`, [`${wheel}.pad`, 1e-3]] as const,
    ),
  ]);
}

/** Those changes that the car has: what stands at no adjuster of its file moves all the same. */
const CASES = [
  { key: 'as surveyed, bars off', bars: false, changes: {} as Changes, matrix: false },
  { key: 'uneven pads, bars off', bars: false, changes: UNEVEN, matrix: true },
  { key: 'uneven pads, bars on', bars: true, changes: UNEVEN, matrix: true },
  { key: 'tilted floor, bars off', bars: false, changes: TILTED, matrix: false },
] as const;

function asked(): string {
  return JSON.stringify({
    cars: Object.fromEntries(
      handed.map(({ name, car }) => {
        const { front, rear, body, floor } = plain(car.form) as Record<string, unknown>;
        return [name, { front, rear, body, floor }];
      }),
    ),
    shearModulus: SHEAR_MODULUS,
    asked: Object.fromEntries(
      handed.map((each) => [
        each.name,
        [
          ...CASES.map(({ key, bars, changes, matrix }) => ({
            key,
            state: { bars, changes },
            ...(matrix ? { steps: stepsOf(each) } : {}),
          })),
          { key: 'tilted floor, tyres that hold', state: { bars: false, changes: TILTED, grip: true } },
        ],
      ]),
    ),
  });
}

const OF_MODEL = {
  script: 'tests/reference/floor_model.py',
  record: 'tests/reference/floor_model.json',
  remake: REMAKE,
  cars: Object.fromEntries(handed.map(({ name, hash }) => [name, hash])),
  digits: 10,
};
const reference = answeredByPython<Readonly<Record<string, Readonly<Record<string, Standing>>>>>({
  ...OF_MODEL,
  asked: asked(),
});

function standing({ floor, prepared }: Handed, { bars, changes }: { bars: boolean; changes: Changes }) {
  const all = prepared.changes.none();
  for (const [name, value] of Object.entries(changes)) all[prepared.changes.index(name)] = value;
  return floor.stand({ changes: all, bars: { front: bars, rear: bars } });
}

/** SI. */
const unitOf = (id: string): string => {
  const kind = id.split('.')[0]!;
  if (['weight', 'total'].includes(kind)) return 'kg';
  if (['cross', 'frontShare', 'leftShare'].includes(kind)) return 'share';
  if (['camber', 'toe', 'caster'].includes(kind)) return 'rad';
  return kind === 'barTorque' ? 'N m' : 'm';
};

/**
 * Both close their equations to a micronewton on springs of 1e5 N/m, and the record has ten digits. What is left is
 * where the half newton stands by which a wheel's centre rises less than its contact: in the preload of the spring
 * there, beside it here (LL-5). Over the millimetres that the car moves that is tens of milligrams and some nanometres.
 */
const APART: Readonly<Record<string, number>> = { kg: 1e-4, share: 2e-7, m: 2e-8, rad: 1e-7, 'N m': 2e-4 };
/** Of what one unit does: the same, and a difference of fourth order over it. */
const PART = 2e-6;

test('the record is of these car files', (t) => {
  t.diagnostic(`compared with ${reference.from}`);
  recordIsOf(OF_MODEL);
});

for (const each of handed) {
  const answers = reference.answers[each.name]!;
  for (const of of CASES) {
    test(`${each.name}, ${of.key}: every reading as by free bodies`, (t) => {
      const used = { readings: 0, matrix: 0 };
      const ours = standing(each, of);
      const { readings, matrix } = answers[of.key]!;
      let compared = 0;
      for (const [id, value] of Object.entries(readings)) {
        const found = ours.readings.get(id);
        assert.ok(found !== undefined, id);
        near(found.value, value, APART[unitOf(id)]!, id);
        used.readings = Math.max(used.readings, Math.abs(found.value - value) / APART[unitOf(id)]!);
        compared += 1;
      }
      assert.ok(compared > 30, `${compared} readings`);
      t.diagnostic(`readings apart by ${used.readings.toFixed(2)} of what is allowed`);
      if (!of.matrix) return;
      const steps = stepsOf(each);
      for (const [label, effects] of Object.entries(matrix)) {
        const [change, amount] = steps[label]!;
        const column = each.prepared.changes.index(change);
        for (const [id, effect] of Object.entries(effects)) {
          const found = ours.readings.get(id)!.by[column]! * amount;
          const apart = PART * Math.abs(effect) + APART[unitOf(id)]!;
          near(found, effect, apart, `${id} by one unit of ${label}`);
          used.matrix = Math.max(used.matrix, Math.abs(found - effect) / apart);
        }
      }
      assert.equal(Object.keys(matrix).length, Object.keys(steps).length);
      t.diagnostic(`what one unit does apart by ${used.matrix.toFixed(2)} of what is allowed`);
    });
  }

  // A floor that rises by 3 mm a metre pulls the car along itself by 18 N; the tyres hold it, and the links hand a
  // part of that to the springs. The program leaves it out (flat-floor.md, where it stops holding): this much.
  test(`${each.name}: what a slope does through the links is less than the scales show`, () => {
    const [without, held] = ['tilted floor, bars off', 'tilted floor, tyres that hold'].map(
      (key) => answers[key]!.readings,
    );
    for (const [id, value] of Object.entries(without!)) {
      const off = Math.abs(held![id]! - value);
      if (unitOf(id) === 'kg') assert.ok(off < 0.1, `${id}: ${off} kg`);
      if (id.startsWith('height')) assert.ok(off < 2e-5, `${id}: ${off} m`);
    }
  });
}
