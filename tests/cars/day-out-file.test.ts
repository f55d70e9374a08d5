/** Slips in what the file tells of pressures, brakes and fuel are told with their code and place. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readCar } from '../../src/car/read.ts';
import { demoSource } from './demo.ts';

const slip = (from: string, to: string) => {
  const source = demoSource('fenwold-201', (text) => {
    assert.ok(text.includes(from), from);
    return text.replace(from, to);
  });
  const read = readCar(source);
  const lines = source.text.split('\n');
  const all = read.ok ? read.car.warnings : read.problems;
  return all.map(({ code, weight, line }) => ({ code, weight, at: lines[line! - 1]?.trim() }));
};

test('each slip, its weight, and the line it stands in', () => {
  for (const [from, to, code, weight, at] of [
    ['hot: 1.70 bar', 'hot: 0.70 bar', 'pressures/least', 'error', 'front: { hot: 0.70 bar'],
    ['offset: 1.5 mm', 'offset: 35 mm', 'brakes/bar', 'error', 'bar: { width'],
    ['laps: 14, pad: 17.3 mm', 'laps: 0, pad: 17.3 mm', 'brakes/wear', 'error', '- { laps: 0, pad: 17.3'],
    ['laps: 31, pad: 16.4 mm', 'laps: 31, pad: 18.4 mm', 'brakes/wear', 'error', '- { laps: 31, pad: 18.4'],
    [
      'laps: 31, pad: 16.4 mm',
      'laps: 31, pad: 7.4 mm',
      'brakes/thickness',
      'warning',
      '- { laps: 31, pad: 7.4',
    ],
    ['tank: 120 l', 'tank: 20 l', 'fuel/tank', 'error', 'surveyed: 28.2 l'],
    // 28.2 l of 0.745 kg/l are the 21 kg that the floor has aboard
    ['surveyed: 28.2 l', 'surveyed: 36 l', 'floor/fuel-twice', 'warning', 'fuel: { mass: 21 kg'],
    ['at: -1180, 0, 240 mm', 'at: -1080, 0, 240 mm', 'floor/fuel-twice', 'warning', 'fuel: { mass: 21 kg'],
  ] as const) {
    const found = slip(from, to);
    assert.equal(found.length, 1, JSON.stringify(found));
    assert.deepEqual([found[0]!.code, found[0]!.weight], [code, weight]);
    assert.ok(found[0]!.at?.startsWith(at), found[0]!.at);
  }
});

test('a unit of another kind, and none, are told as everywhere', () => {
  assert.equal(slip('limit: 10800 rpm', 'limit: 10800')[0]!.code, 'field/no-unit');
  assert.equal(slip('specific: 305 g/kW h', 'specific: 305 g')[0]!.code, 'field/unreadable');
  assert.equal(slip('tank: 120 l', 'tank: 12000 l')[0]!.code, 'field/out-of-range');
});
