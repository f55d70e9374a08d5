/**
 * A position that cannot be told from one at which the rate jumps: the answer says so, and says nothing elsewhere.
 *
 * GUM (JCGM 100:2008) 5.1.2 note and 4.1.4: the first-order law of propagation holds where the function is nearly
 * linear over the spread of its inputs; at a kink it is not.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { cornerFigures, type Wheel } from '../../src/questions/index.ts';
import { DEMO_CARS, demo, WHEELS } from './demo.ts';

const JUMPS = ['droopStopTravel', 'coilFreeTravel', 'rubberTravel', 'coilSolidTravel', 'closedTravel'];
const WORDS = /cannot be told from/;

function asked(name: string, wheel: Wheel, travel: number, spread = true) {
  const answer = cornerFigures(demo(name), wheel, { travel, rack: 0 }, { spread });
  assert.ok(answer.reached, 'the wheel comes there');
  const jumps = answer.figures.filter(({ id, value }) => JUMPS.includes(id) && Number.isFinite(value));
  return { jumps, told: answer.notes.filter((note) => WORDS.test(note)) };
}

test('told at the touch of the bump rubber of every demo corner that has one, and only with the spread', () => {
  let seen = 0;
  for (const name of DEMO_CARS) {
    for (const wheel of WHEELS) {
      const rubber = asked(name, wheel, 0).jumps.find(({ id }) => id === 'rubberTravel');
      if (rubber === undefined) continue;
      seen += 1;
      const at = asked(name, wheel, rubber.value);
      assert.ok(
        at.told.some((note) => note.includes(rubber.means)),
        `${name} ${wheel.end} ${wheel.side}: ${at.told.join(' ')}`,
      );
      assert.deepEqual(asked(name, wheel, rubber.value, false).told, []);
    }
  }
  assert.ok(seen >= 4, 'demo cars have bump rubbers');
});

test('not told where every jump is further off than two of its spreads', () => {
  for (const name of DEMO_CARS) {
    for (const wheel of WHEELS) {
      for (const travel of [0, 0.004, 0.015]) {
        const { jumps, told } = asked(name, wheel, travel);
        const near = jumps.filter(({ value, spread }) => Math.abs(value - travel) < 2 * spread!.u);
        assert.equal(told.length, near.length, `${name} ${wheel.end} ${wheel.side} at ${travel}`);
      }
    }
  }
});
