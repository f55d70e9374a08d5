/**
 * What cannot be answered is said in a sentence: no crash, and no figure that is none. Asked of every question, with
 * what comes out of a broken script or a slip of the hand.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { readCar } from '../../src/car/read.ts';
import {
  axleFigures,
  type BarAsked,
  barForCoil,
  barLadder,
  carFigures,
  cornerCurves,
  cornerFigures,
  type LadderAsked,
  workingOf,
  workingOfAxle,
} from '../../src/questions/index.ts';
import { DEMO_CARS, demo, demoSource, WHEELS } from './demo.ts';

const NONE = Number.NaN;
const PLACES = [
  [NONE, 0],
  [0, NONE],
  [1e9, 0],
  [-1e9, 0],
  [Number.POSITIVE_INFINITY, 0],
  [Number.NEGATIVE_INFINITY, 0],
  [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
] as const;

test('travel or rack that is no number, or beyond all reach, is told in a sentence by every question', () => {
  for (const name of DEMO_CARS) {
    const car = demo(name);
    for (const [travel, rack] of PLACES) {
      const where = `${name} at ${travel}, ${rack}`;
      const stance = { front: { left: travel, right: 0 }, rear: { left: 0, right: travel }, rack };
      const wheel = WHEELS[0]!;
      const at = { travel, rack };
      const answers = [
        cornerFigures(car, wheel, at),
        cornerFigures(car, wheel, at, { spread: true }),
        workingOf(car, { wheel, at, figure: 'wheelRate' }),
        axleFigures(car, 'front', stance),
        workingOfAxle(car, 'front', stance, 'rollRate'),
      ];
      for (const answer of answers) {
        assert.ok(!answer.reached, where);
        assert.match(answer.message, /^The .*\.$/, where);
      }
    }
  }
});

test('a curve past the end of the linkage has nothing there, and no number that is none', () => {
  const car = demo('pellmoor-7b');
  const curves = cornerCurves(car, WHEELS[0]!, { rack: 0, from: -0.3, to: 0.3, count: 7 });
  for (const { values } of curves.columns) {
    assert.equal(values.length, 7);
    assert.ok(values.every((value) => value === null || Number.isFinite(value)));
    assert.equal(values[0], null);
    assert.equal(values[6], null);
  }
  assert.ok(curves.columns.some(({ values }) => values[3] !== null));
});

test('bars that cannot be asked for: limits, steps, teeth, overtravel', () => {
  const car = demo('fenwold-201');
  const asks: readonly Partial<BarAsked>[] = [
    { material: 'cheese' },
    { diameterFrom: NONE },
    { diameterFrom: 0.02, diameterTo: 0.01 },
    { lengthFrom: -1 },
    { lengthFrom: 0.001, lengthTo: 0.002 },
    { boreRatio: 1 },
    { boreRatio: NONE },
    { diameterStep: 0 },
    { overtravel: NONE },
    { overtravel: -0.1 },
    { splines: { rocker: NONE, anchor: 47 } },
    { splines: { rocker: 0, anchor: 0 } },
    { splines: { rocker: 48.5, anchor: 47 } },
    { splines: { rocker: 1e7, anchor: 1e7 - 1 } },
    { rack: [] },
  ];
  for (const ask of asks) {
    const answer = barForCoil(car, WHEELS[0]!, { material: '300M bar', ...ask });
    assert.ok(!answer.reached, JSON.stringify(ask));
    assert.match(answer.message, /\.$/);
  }
});

test('ladders that cannot be asked for', () => {
  const ask: LadderAsked = { from: 8e4, to: 1.2e5, count: 3, even: 'difference' };
  const asks: readonly Partial<LadderAsked>[] = [
    { from: NONE },
    { from: 2e5 },
    { to: Number.POSITIVE_INFINITY },
    { count: 1 },
    { count: 2.5 },
    { step: 0 },
    { step: NONE },
    { step: -1 },
    { activeLength: 0 },
    { activeLength: NONE },
  ];
  const car = demo('ashgarth-501');
  assert.ok(barLadder(car, WHEELS[0]!, ask).reached);
  for (const each of asks)
    assert.ok(!barLadder(car, WHEELS[0]!, { ...ask, ...each }).reached, JSON.stringify(each));
});

/** Places in the text of a file where a measured number stands, before the specs. */
function numbersIn(text: string): readonly { readonly start: number; readonly end: number }[] {
  const upTo = text.indexOf('\nspecs:');
  return [...text.matchAll(/(?<=[ "])-?\d+(?:\.\d+)?(?=,| (?:mm|deg|kg|N|kN|kg m\^2|N\/mm|%))/g)]
    .map((match) => ({ start: match.index, end: match.index + match[0].length }))
    .filter(({ end }) => upTo < 0 || end < upTo);
}

test('a file with one number wrong, however wrong: problems, or answers that say what they are', () => {
  const source = demoSource('pellmoor-7b');
  const places = numbersIn(source.text);
  assert.ok(places.length > 100);
  const stance = { front: { left: 0.01, right: -0.01 }, rear: { left: -0.01, right: 0.01 }, rack: 0.005 };
  fc.assert(
    fc.property(
      fc.nat(places.length - 1),
      fc.constantFrom(0, -1, 10, 0.1, 100, 1.3, 1e-9, 0.5),
      (index, factor) => {
        const { start, end } = places[index]!;
        const value = Number(source.text.slice(start, end)) * factor;
        const text = source.text.slice(0, start) + String(value) + source.text.slice(end);
        const read = readCar({ ...source, text });
        if (!read.ok) {
          for (const { code, message, line } of read.problems) {
            assert.ok(code !== '' && message !== '');
            assert.ok(line !== undefined && line > 0, message);
          }
          return;
        }
        for (const wheel of WHEELS) {
          const answer = cornerFigures(read.car, wheel, { travel: 0, rack: 0 });
          if (!answer.reached) assert.notEqual(answer.message, '');
        }
        for (const endOf of ['front', 'rear'] as const) axleFigures(read.car, endOf, stance);
        carFigures(read.car);
      },
    ),
    { numRuns: 150 },
  );
});
