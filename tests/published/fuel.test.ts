/**
 * Fuel by handbook conversions and by hand.
 *
 * [bsfc]   1 lb/hp h is 608.277 g/kW h (encyclopedia article on brake-specific fuel consumption, seen)
 * [petrol] 12 laps of 1.35 l, two of them again out and in, 3 l of reserve: 21.9 l; common practice, no source
 * [API]    petrol grows by 0.095 % a kelvin at 15 °C (petroleum measurement tables, from memory)
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { fuelFor } from '../../src/questions/index.ts';
import { toSI } from '../../src/units/unit.ts';
import { demo } from '../cars/demo.ts';
import { amountOf, reachedFloor, workingsHold } from '../cars/floor-workings.ts';
import { near } from '../near.ts';

const CAR = 'fenwold-201';
const given = (value: number, u?: number) => ({ value, text: 'typed', ...(u === undefined ? {} : { u }) });

test('every working stands and ends in its figure: as read, by length, by power', () => {
  for (const asked of [
    { laps: 12 },
    { laps: 9, lap: given(5100), temperature: given(301), aboard: given(0.006) },
    { laps: 9, work: { power: given(3e5), open: given(0.52), time: given(86) } },
  ]) {
    workingsHold((working) =>
      fuelFor(demo(CAR), { ...asked, spread: false, ...(working === undefined ? {} : { working }) }),
    );
  }
});

test('[petrol] a session by hand, with what the pick-up of the file leaves', () => {
  const found = fuelFor(demo(CAR), { laps: 12, slowPart: given(1, 0), reserve: given(0.003, 0) });
  // 12 × 1.35 + 2 × 1.35 + 3 = 21.9, and 1.8 l that cannot be reached
  near(amountOf(found, 'session.needed') * 1000, 21.9 + 1.8, 1e-9);
  near(amountOf(found, 'session.mass'), (21.9 + 1.8) * 0.745, 1e-9);
  near(amountOf(found, 'session.left') * 1000, 4.8, 1e-9);
  // (120 − 1.8 − 3)/1.35 − 2
  near(amountOf(found, 'session.range'), 115.2 / 1.35 - 2, 1e-9);
  const figure = reachedFloor(found).figures.find(({ id }) => id === 'burnt')!;
  // 14 laps of ± 0.05 l
  near(figure.spread!.u * 1000, 14 * 0.05, 1e-6);
});

test('[bsfc] fuel by power, and pounds for horsepower hours', () => {
  // the printed factor has six figures
  near(toSI(1, 'lb/hp h') / toSI(1, 'g/kW h'), 608.277, 0.0005);
  const found = fuelFor(demo(CAR), {
    laps: 1,
    work: { power: given(300e3), open: given(0.5), time: given(90) },
  });
  // 305 g/kW h × 300 kW × 45/3600 h = 1143.75 g; over 0.745 kg/l
  near(amountOf(found, 'session.perLap') * 1000, 1.14375 / 0.745, 1e-9);
});

test('[API] density of petrol falls by 0.7 g/l a kelvin', () => {
  const warm = fuelFor(demo(CAR), { laps: 1, temperature: given(288.15 + 20) });
  near(amountOf(warm, 'session.density'), 745 / (1 + 0.00095 * 20), 1e-9);
  // trade figure for petrol: 0.7 to 0.8 g/l a kelvin
  near((745 - amountOf(warm, 'session.density')) / 20, 0.7, 0.05);
});

test('weights: start and end differ by what is burnt, and by its place', () => {
  const found = fuelFor(demo(CAR), { laps: 20 });
  const PADS = ['front left', 'front right', 'rear left', 'rear right'];
  const sum = (of: string): number => PADS.reduce((all, pad) => all + amountOf(found, `${of}.${pad}`), 0);
  // the equilibrium is closed to 1e-7 N
  near(sum('at the start') - sum('at the end'), amountOf(found, 'session.burntMass'), 1e-6);
  assert.ok(amountOf(found, 'at the end.frontShare') > 0.3);
});

test('a reserve that is less than the doubt, a cell that is too small, and what is missing are told', () => {
  const doubtful = reachedFloor(fuelFor(demo(CAR), { laps: 40, perLap: given(1.35e-3, 0.1e-3) }));
  assert.ok(doubtful.notes.some((note) => note.includes('would run dry')));
  const much = reachedFloor(fuelFor(demo(CAR), { laps: 100 }));
  assert.ok(much.notes.some((note) => note.startsWith('More than the cell holds (120.0 l)')));
  assert.ok(much.cautions.some((each) => each.includes('extinguisher')));
  const none = fuelFor(demo('pellmoor-7b'), { laps: 3 });
  assert.ok(!none.reached && none.message.includes('no fuel'));
});
