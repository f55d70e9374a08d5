/** A sheet looked over before it is kept: the slips of the list, each at the readings that it is about. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { sheetLooked } from '../../src/questions/index.ts';
import { demoSource } from './demo.ts';

const SOURCE = demoSource('fenwold-201');
const NAME = 'as found, 2. time';

/** As the demo car was read on 11 May. */
const READINGS = {
  weight: { frontLeft: '130.1 kg', frontRight: '150.7 kg', rearLeft: '193.2 kg', rearRight: '172.7 kg' },
  height: {
    'front left': '37.6 mm',
    'front right': '37.9 mm',
    'rear left': '63.5 mm',
    'rear right': '63.6 mm',
  },
  camber: { frontLeft: '-2.18 deg', frontRight: '-2.46 deg', rearLeft: '-1.34 deg', rearRight: '-1.58 deg' },
  toeAtRim: { frontLeft: '-2.1 mm', frontRight: '0.0 mm', rearLeft: '2.4 mm', rearRight: '1.4 mm' },
};

const looked = (changed: Partial<Record<keyof typeof READINGS, Record<string, string>>> = {}) =>
  sheetLooked(SOURCE, NAME, {
    state: 'as found',
    bars: 'disconnected',
    readings: Object.fromEntries(
      Object.entries(READINGS).map(([kind, of]) => [
        kind,
        { ...of, ...changed[kind as keyof typeof READINGS] },
      ]),
    ),
  });

test('a sheet that is right is not doubted', () => {
  assert.deepEqual(looked(), []);
});

test('a pad that reads nothing', () => {
  const [doubt, ...more] = looked({ weight: { rearLeft: '0 kg' } });
  assert.deepEqual(more, []);
  assert.equal(doubt!.weight, 'error');
  assert.deepEqual(doubt!.readings, ['weight.rearLeft']);
  assert.match(doubt!.message, /rear left/);
});

test('a total that is not the car', () => {
  const doubts = looked({ weight: { rearLeft: '173.2 kg' } });
  assert.ok(doubts.some(({ message, readings }) => /add up to/.test(message) && readings.length === 4));
});

test('two weights entered at each other’s wheel, and a toe with the other sign', () => {
  const crossed = looked({ weight: { frontLeft: '193.2 kg', rearLeft: '130.1 kg' } });
  assert.ok(
    crossed.some(
      ({ readings }) => readings.includes('weight.frontLeft') && readings.includes('weight.rearLeft'),
    ),
  );
  const turned = looked({ toeAtRim: { rearLeft: '-2.4 mm' } });
  assert.ok(turned.some(({ readings }) => readings.includes('toeAtRim.rearLeft')));
});

test('an amount that is none, and a measuring point that the car has not', () => {
  const [amount] = looked({ camber: { frontLeft: '400 deg' } });
  assert.deepEqual([amount!.weight, amount!.readings], ['error', ['camber.frontLeft']]);
  const point = looked({ height: { nose: '60 mm' } });
  assert.ok(
    point.some(({ weight, readings }) => weight === 'error' && readings.join() === 'height.nose'),
    JSON.stringify(point),
  );
});
