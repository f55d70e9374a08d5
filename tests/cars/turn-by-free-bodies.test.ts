/**
 * A steady turn without air against free bodies (tests/reference/floor_model.py), and why the roll of the handbook is
 * another one: term by term.
 *
 * To remake the record after a change of the demo cars (wants Python 3 with NumPy and SciPy):
 *   FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/turn-by-free-bodies.test.ts
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { carStanding } from '../../src/loadpath/loads/car-equilibrium.ts';
import { STANDING, WHEEL_NAMES } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { transferUnder } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { answeredByPython, handedCar, plain, recordIsOf, SHEAR_MODULUS } from '../reference/recorded.ts';
import { everyDemo } from './demo.ts';
import { amountOf } from './floor-workings.ts';

const REMAKE = 'FLATPATCH_REMAKE=1 node --import tsx --test tests/cars/turn-by-free-bodies.test.ts';
const NAMES = ['fenwold-201', 'ashgarth-501'] as const;
const G = 9.80665;
/** A turn so gentle that nothing bends, and one near the grip of such tyres. */
const TURNS = [
  { key: 'gentle', lateral: 0.05 * G },
  { key: 'hard', lateral: 1.3 * G },
] as const;

const handed = NAMES.map((name) => ({ name, ...handedCar(name) }));
const OF_MODEL = {
  script: 'tests/reference/floor_model.py',
  record: 'tests/reference/floor_turn.json',
  remake: REMAKE,
  cars: Object.fromEntries(handed.map(({ name, hash }) => [name, hash])),
  digits: 9,
};
type Figures = Readonly<Record<string, number>>;
const reference = answeredByPython<Readonly<Record<string, Readonly<Record<string, Figures>>>>>({
  ...OF_MODEL,
  asked: JSON.stringify({
    cars: Object.fromEntries(
      handed.map(({ name, car }) => {
        const { front, rear, body, floor } = plain(car.form) as Record<string, unknown>;
        return [name, { front, rear, body, floor }];
      }),
    ),
    shearModulus: SHEAR_MODULUS,
    asked: Object.fromEntries(NAMES.map((name) => [name, TURNS])),
  }),
});

test('the record is of these car files', (t) => {
  t.diagnostic(`compared with ${reference.from}`);
  recordIsOf(OF_MODEL);
});

for (const { name, car } of handed) {
  for (const { key, lateral } of TURNS) {
    test(`${name}, ${key} turn: loads, travels and roll as by free bodies`, (t) => {
      const theirs = reference.answers[name]![key]!;
      const numbers = new Numbers(car.values);
      let [newtons, metres] = [0, 0];
      for (const [when, doing] of [
        ['rest', STANDING],
        ['turn', { ...STANDING, lateral }],
      ] as const) {
        const ours = carStanding(car.form, doing, numbers);
        for (const wheel of WHEEL_NAMES) {
          const [, side, load] = ours.wheels[wheel].ground;
          newtons = Math.max(newtons, Math.abs(load - theirs[`${when}.load.${wheel}`]!));
          newtons = Math.max(newtons, Math.abs(side - theirs[`${when}.side.${wheel}`]!));
          metres = Math.max(metres, Math.abs(ours.wheels[wheel].travel - theirs[`${when}.travel.${wheel}`]!));
        }
        near(-Math.atan(ours.ground.perLeft), theirs[`${when}.roll`]!, 1e-6, `roll, ${when}`);
        near(Math.atan(ours.ground.perForward), theirs[`${when}.pitch`]!, 1e-6, `pitch, ${when}`);
      }
      t.diagnostic(`apart by ${newtons.toExponential(1)} N and ${metres.toExponential(1)} m`);
      // half a newton of the scales stands in the spring there and beside it here (LL-5)
      assert.ok(newtons < 2e-3, `${newtons} N`);
      assert.ok(metres < 1e-7, `${metres} m`);
    });
  }
}

/**
 * Roll of the car in equilibrium, which the free bodies above confirm, beside the handbook's and its two terms. A
 * beam axle's couple and rigid tyres would leave both terms nothing, so each must be there for the sum to come out.
 */
test('a gentle turn: the handbook and two terms of the links make the roll and the split of every demo car', () => {
  for (const { name, car } of everyDemo().filter((each) => each.car.form.body !== undefined)) {
    const a_y = 0.02 * G;
    const found = transferUnder(car, { doing: { ...STANDING, lateral: a_y }, spread: false });
    const of = (id: string): number => amountOf(found, id);
    const roll = (of('car.rollGradient') * a_y) / G;
    // sprung parts over the tyres, lean of the weight by the roll axis and not by the very path: 3 in a thousand
    near(of('car.linkedRoll') / roll, 1, 0.004, `${name}, roll`);
    // each term is a part of it that none may leave out
    assert.ok(of('car.rollByCouples') > 0.05 * roll, `${name}: ${of('car.rollByCouples') / roll}`);
    assert.ok(of('car.rollByTyres') > 0.03 * roll, `${name}: ${of('car.rollByTyres') / roll}`);
    assert.ok(of('car.handbookRoll') < 0.9 * roll, name);
    for (const end of ['front', 'rear'])
      near(of(`${end}.linkedLateral`) / of(`${end}.lateral`), 1, 0.006, `${name}, ${end}`);
  }
});
