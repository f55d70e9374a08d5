/** Tyre pressures of a car: bleed and set agree, spread by hand, workings, and what is refused. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type PressuresAsked, pressuresFor } from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo } from './demo.ts';
import { amountOf, reachedFloor, workingsHold } from './floor-workings.ts';

const K = (celsius: number): number => celsius + 273.15;
const given = (value: number, u?: number) => ({ value, text: 'typed', ...(u === undefined ? {} : { u }) });

const CAR = 'fenwold-201';
const PLAIN: PressuresAsked = {
  air: given(K(15), 0),
  barometer: given(100_000, 0),
  fill: 'dry nitrogen',
  humidity: given(0, 0),
};
const RUN = {
  place: { end: 'front', side: 'left' },
  cold: given(1.2e5, 0),
  at: given(K(15), 0),
  hot: given(1.72e5, 0),
} as const;

test('every working stands and ends in its figure: dry, wet, learnt, bled', () => {
  const asked: PressuresAsked = {
    air: given(K(18)),
    water: given(0.004),
    height: given(300),
    heightSet: given(40),
    purges: 2,
    runs: [RUN],
    now: [{ place: { end: 'front', side: 'left' }, pressure: given(1.8e5), temperature: given(K(78)) }],
  };
  workingsHold((working) => pressuresFor(demo(CAR), working === undefined ? asked : { ...asked, working }));
  workingsHold((working) => pressuresFor(demo(CAR), working === undefined ? PLAIN : { ...PLAIN, working }));
});

test('dry gas by hand: (G + p)·T_1/T_2·β − p', () => {
  const found = pressuresFor(demo(CAR), PLAIN);
  // the file: 1.70 bar, 88 °C, 0.4 %; 1e-3 Pa: the search closes to 1e-6
  near(amountOf(found, 'front.coldPressure'), ((1.7e5 + 1e5) * 1.004 * K(15)) / K(88) - 1e5, 1e-3);
});

test('spread of dry gas by hand', () => {
  const found = reachedFloor(pressuresFor(demo(CAR), PLAIN));
  const figure = found.figures.find(({ of, id }) => of === 'front' && id === 'coldPressure')!;
  const filled = (2.7e5 * 1.004 * K(15)) / K(88);
  // ± 0.02 bar of the target, 5 K of the gas, 0.2 % of the volume, as filed
  const u = Math.hypot((2000 * 1.004 * K(15)) / K(88), (filled * 5) / K(88), (filled * 0.002) / 1.004);
  // 0.1 %: a spread is by differences, straight to second order
  near(figure.spread!.u, u, 1e-3 * u);
});

test('set again to what was bled to, the tyre reads its target', () => {
  const asked: PressuresAsked = {
    ...PLAIN,
    runs: [RUN],
    now: [
      { place: { end: 'front', side: 'left' }, pressure: given(1.72e5, 0), temperature: given(K(84), 0) },
    ],
  };
  const found = pressuresFor(demo(CAR), asked);
  near(amountOf(found, 'front left.coldAfter'), amountOf(found, 'front left.coldPressure'), 1e-3);
  // the run said how hot the gas gets: T·β·(1.72 + 1)/(1.2 + 1)
  near(amountOf(found, 'front left.gasTemperature'), (K(15) * 1.004 * 2.72) / 2.2, 1e-9);
});

test('what a tyre set 10 K warmer wants more is what it is told to want', () => {
  const cold = amountOf(pressuresFor(demo(CAR), PLAIN), 'front.coldPressure');
  const warm = amountOf(pressuresFor(demo(CAR), { ...PLAIN, set: given(K(25), 0) }), 'front.coldPressure');
  near(warm - cold, amountOf(pressuresFor(demo(CAR), PLAIN), 'front.perTenKelvin'), 1e-3);
});

test('counted by gauge pressure the rise would be wrong by a factor of more than two', () => {
  const rise = amountOf(pressuresFor(demo(CAR), PLAIN), 'front.rise');
  const byGauge = 1.7e5 * (1 - K(15) / K(88));
  assert.ok(rise > 1.5 * byGauge, `${rise} against ${byGauge}`);
});

test('a higher place asks for the same absolute pressure', () => {
  const low = amountOf(
    pressuresFor(demo(CAR), { ...PLAIN, barometerSet: given(101_000, 0) }),
    'front.coldPressure',
  );
  const here = amountOf(pressuresFor(demo(CAR), PLAIN), 'front.coldPressure');
  near(low - here, -1000, 1e-3, 'set at 10 mbar more of air, the gauge shows 10 mbar less');
});

test('more water lowers what is to be set, and a dry tyre is told beside it', () => {
  const asked = { ...PLAIN, air: given(K(15)), water: given(0.005) };
  const found = pressuresFor(demo(CAR), asked);
  assert.ok(amountOf(found, 'front.coldPressure') < amountOf(found, 'front.coldDry') - 8000);
});

test('below the tyre maker’s least is told', () => {
  const found = reachedFloor(
    pressuresFor(demo(CAR), { ...PLAIN, hot: [{ place: { end: 'rear' }, amount: given(1.2e5) }] }),
  );
  assert.ok(
    found.notes.some((note) => note.startsWith('Below the least cold pressure') && note.includes('rear')),
  );
  assert.ok(found.cautions.some((each) => each.includes('tyre maker')));
});

test('without targets it is told what to write', () => {
  const { pressures: _, ...form } = demo(CAR).form;
  const found = pressuresFor({ ...demo(CAR), form }, PLAIN);
  assert.ok(!found.reached && found.message.includes('--hot'));
});

test('what cannot be is told before anything is worked out: colder than any place, too damp, bar for millibar', () => {
  const told = (asked: Partial<PressuresAsked>): string => {
    const is = pressuresFor(demo(CAR), { ...PLAIN, ...asked });
    assert.ok(!is.reached);
    return is.message;
  };
  assert.match(
    told({ air: { value: -126.85, text: '-400 degC' } }),
    /"-400 degC"; what can be is -40 °C to 60 °C/,
  );
  assert.match(told({ humidity: { value: 1.8, text: '180 %' } }), /relative humidity is "180 %"/);
  assert.match(told({ barometer: { value: 10.04e5, text: '10.04 bar' } }), /barometer at the track/);
  assert.match(told({ gas: [{ place: { end: 'rear' }, amount: { value: 900, text: '627 degC' } }] }), /rear/);
});
