/** Gears of a demo car: workings, identities between its figures, choice from its stock, slips in the file. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readCar } from '../../src/car/read.ts';
import { type RatiosAnswer, type RatiosReached, ratiosOf } from '../../src/questions/index.ts';
import { toSI } from '../../src/units/unit.ts';
import { near } from '../near.ts';
import { demo, demoSource } from './demo.ts';
import { amountOf, workingsHold } from './floor-workings.ts';

const CAR = 'fenwold-201';
const rpm = (turns: number): number => toSI(turns, 'rpm');
const kmh = (speed: number): number => speed / 3.6;

function reached(answer: RatiosAnswer): RatiosReached {
  assert.ok(answer.reached, answer.reached ? '' : answer.message);
  return answer;
}

test('every working stands and ends in its figure', () => {
  workingsHold((working) => ratiosOf(demo(CAR), working === undefined ? {} : { working }));
});

test('second gear by hand: 15/41 by 9/31 at 10 800 rpm, 2.030 m a turn, 2 % slip, 1.4 % of growth at 250 km/h', () => {
  const is = ratiosOf(demo(CAR), { spread: false });
  const i = (41 / 15) * (31 / 9);
  const c = ((10_800 / 60) * 2.03 * 0.98) / i;
  const κ = 0.014 / kmh(250) ** 2;
  let v = c;
  for (let k = 0; k < 60; k += 1) v = c * (1 + κ * v * v);
  near(amountOf(is, 'gear 2.speed'), v, 1e-9);
  near(amountOf(is, 'gear 2.after') / rpm(1), (10_800 * (38 / 17)) / (41 / 15), 1e-6);
});

test('spread of a road speed by hand: distance, slip, growth', () => {
  const is = reached(ratiosOf(demo(CAR), {}));
  const figure = is.figures.find(({ of, id }) => of === 'gear 1' && id === 'perThousand')!;
  const { distance, slip } = demo(CAR).form.rolling!;
  const relative = Math.hypot(distance.u / distance.value, slip!.u / (1 - slip!.value));
  // 0.1 %: by differences
  near(figure.spread!.u, figure.value * relative, 1e-3 * figure.value * relative);
});

test('at the top speed thrust is what resists', () => {
  const is = reached(ratiosOf(demo(CAR), { working: 'car.topSpeed' }));
  const step = is.working!.steps.at(-1)!;
  assert.ok(step.kind === 'solved' && Math.abs(step.residual!.value) < 1e-5, 'closes');
  const power = amountOf(is, 'car.resistance') * amountOf(is, 'car.topSpeed');
  // what is made there, times efficiency and what slip leaves, within what the curve differs from its peak
  assert.ok(power < amountOf(is, 'car.peakPower') * 0.92 && power > amountOf(is, 'car.peakPower') * 0.86);
});

test('speeds wanted: the best set with two changes is no better than with all, and each stays in its hubs', () => {
  const targets = [105, 140, 175, 210, 245, 285].map(kmh);
  const all = reached(ratiosOf(demo(CAR), { targets, finals: true, spread: false }));
  const two = reached(ratiosOf(demo(CAR), { targets, changes: 2, spread: false }));
  assert.ok(all.chosen![0]!.miss <= two.chosen![0]!.miss);
  assert.ok(two.chosen![0]!.changed.length <= 2);
  assert.ok(['12/43', '13/43'].includes(all.pairs[0]!.text));
  assert.deepEqual(
    all.chosen!.map(({ miss }) => miss),
    all.chosen!.map(({ miss }) => miss).sort((a, b) => a - b),
  );
  const wrong = ratiosOf(demo(CAR), { targets: targets.slice(1) });
  assert.ok(!wrong.reached && wrong.message.includes('6 gears and 5 speeds'));
});

test('notes: a gear that is too tall, a limit that holds, no brake sheet', () => {
  const short = reached(
    ratiosOf(demo(CAR), { final: { driver: 7, driven: 31, text: '7/31' }, spread: false }),
  );
  assert.ok(short.notes.some((note) => note.includes('would pull a taller gear')));
  const tall = reached(
    ratiosOf(demo(CAR), { final: { driver: 12, driven: 31, text: '12/31' }, spread: false }),
  );
  assert.ok(tall.notes.some((note) => note.includes('too tall')));
  const { engine, ...form } = demo(CAR).form;
  const { brakeSheet: _, ...rest } = engine!;
  const bare = reached(ratiosOf({ ...demo(CAR), form: { ...form, engine: rest } }, {}));
  assert.ok(bare.notes.some((note) => note.includes('no change speed')));
  assert.equal(bare.thrust.length, 0);
});

test('slips in the file are told with their place', () => {
  const slip = (from: string, to: string) => {
    const read = readCar(demoSource(CAR, (text) => text.replace(from, to)));
    const all = read.ok ? read.car.warnings : read.problems;
    return all.map(({ code, line }) => ({ code, line: line !== undefined }));
  };
  const told = (code: string) => ({ code, line: true });
  assert.deepEqual(slip('12/43, 15/41, 17/38', '12/43, 17/38, 15/41'), [told('gearbox/order')]);
  assert.deepEqual(slip('final: 9/31', 'final: 31/9'), [told('gearbox/final')]);
  assert.deepEqual(slip('pair: 14/42', 'pair: 14/62'), [told('gearbox/distance')]);
  assert.deepEqual(slip('speed: 6500 rpm', 'speed: 5000 rpm'), [told('engine/brake-sheet')]);
  assert.deepEqual(slip('  growthSpeed: 250 km/h\n', ''), [told('rolling/growth')]);
  assert.deepEqual(slip('pair: 14/42', 'pair: 14-42'), [told('field/form')]);
});
