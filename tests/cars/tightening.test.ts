/**
 * The card of the demo car's joint, and of files that were changed on purpose: whose figure is set, what is refused,
 * what the crowfoot does to the setting.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { readCar } from '../../src/car/read.ts';
import {
  figuresToSet,
  jointOf,
  type TighteningReached,
  tighteningOf,
  usualDoing,
} from '../../src/questions/index.ts';
import {
  bothTorqueWords,
  bothWrenchWords,
  wrenchMark,
  wrenchWords,
} from '../../src/questions/wrench-mark.ts';
import { near } from '../near.ts';
import { demo, demoSource, opened } from './demo.ts';

const CAR = 'fenwold-201';

function changed(what: string | RegExp, to: string): string {
  const { text } = demoSource(CAR, (whole) => {
    const after = whole.replace(what, to);
    assert.notEqual(after, whole, `${what} is in the file`);
    return after;
  });
  return text;
}

function reached(
  text?: string,
  joint: Parameters<typeof tighteningOf>[1] = 'engineToTub',
): TighteningReached {
  const car = text === undefined ? demo(CAR) : opened({ text });
  const is = tighteningOf(car, joint);
  assert.ok(is.reached, is.reached ? '' : is.message);
  return is;
}

const BUILDER = / {8}builder: \{[^\n]*\n/;
const sort = (of: TighteningReached, name: string) => of.sorts.find((each) => each.name === name)!;

test('the demo joint: crosswise from the dowel, the lower by the builder, the upper left to a person', () => {
  const is = reached();
  assert.deepEqual(
    is.studs.map(({ name }) => name),
    ['lower left', 'upper right', 'upper left', 'lower right'],
  );
  assert.equal(sort(is, 'lower').toSet, 'builder');
  const upper = sort(is, 'upper');
  assert.equal(upper.toSet, 'choose');
  assert.deepEqual(
    figuresToSet(upper).map(({ whose }) => whose),
    ['builder', 'file'],
  );
  assert.match(upper.compared, /12 % above the builder's/); // by hand: 358/320 = 1.119
  assert.ok(is.holdPoints[0]!.includes('upper'), 'the choice is the first hold point');
  assert.ok(is.holdPoints.some((words) => /dowel left, dowel right/.test(words)));
});

test('FAA AC 43.13-1B, section 7 (from memory): a wrench with an extension is set to T L/(L + E)', () => {
  const upper = sort(reached(), 'upper');
  // the builder's 40 N m at the nut, wrench 320 mm, crowfoot 38 mm
  near(upper.builder!.figure!.setting, (40 * 320) / 358, 1e-9);
  near(upper.file!.atNut, (40 * 358) / 320, 1e-9);
  const [first] = upper.builder!.figure!.rounds;
  // 2 N m of running torque and three tenths of the rest, both through the crowfoot
  near(first!, ((2 + 0.3 * 38) * 320) / 358, 1e-9);
});

test('the preload of the file is that of the joint itself, and that of the same figure by the builder', () => {
  const lower = sort(reached(), 'lower');
  const joint = jointOf(demo(CAR), 'engineToTub', usualDoing('standing')!.doing, { spread: false });
  assert.ok(joint.reached);
  const preload = joint.figures.find(({ id }) => id === 'stud.lower left.preload')!.value;
  near(lower.file!.preload.middle, preload, 1e-9 * preload);
  near(lower.builder!.figure!.preload.high, lower.file!.preload.high, 1e-9 * preload);
});

test('no builder in the file: the file is set, and the card says so', () => {
  const is = reached(undefined, 'caseToEngine');
  const [flange] = is.sorts;
  assert.equal(flange!.toSet, 'file');
  assert.match(flange!.compared, /none in the file/);
  assert.equal(is.studs[0]!.name, 'flange 1', 'begins by the left dowel');
});

test('a builder who names no lubricant gives no value; alone he is refused', () => {
  const text = changed('torque: 62 N m, lubricant: molybdenum disulphide paste,', 'torque: 62 N m,');
  const lower = sort(reached(text), 'lower');
  assert.equal(lower.toSet, 'choose');
  assert.deepEqual(
    figuresToSet(lower).map(({ whose }) => whose),
    ['file'],
  );
  assert.match(lower.compared, /names no lubricant/);
  const alone = text.replace(
    '        torque: 62 N m\n        running: 2.5 N m\n',
    '        running: 2.5 N m\n',
  );
  const is = tighteningOf(opened({ text: alone }), 'engineToTub');
  assert.ok(!is.reached);
  assert.match(is.message, /joints\.engineToTub\.sorts\.lower has neither/);
});

test('the builder alone is set; another lubricant than the file is a choice, whatever the torques', () => {
  const alone = sort(reached(changed('        torque: 62 N m\n', '')), 'lower');
  assert.equal(alone.toSet, 'builder');
  assert.equal(alone.file, undefined);
  const oil = changed(
    'torque: 62 N m, lubricant: molybdenum disulphide paste,',
    'torque: 62 N m, lubricant: engine oil,',
  );
  const lower = sort(reached(oil), 'lower');
  assert.equal(lower.toSet, 'choose');
  assert.match(lower.compared, /different lubricants/);
  // common practice, no source: a lubricant alone moves the preload by tens of per cent
  assert.ok(lower.builder!.figure!.preload.middle < 0.85 * lower.file!.preload.middle);
});

test('friction measured with the paste of the file is not the friction of the builder’s oil', () => {
  const text = changed(
    '        lubricant: molybdenum disulphide paste\n        wrench: 320 mm\n        crowfoot: 0 mm\n',
    '        lubricant: molybdenum disulphide paste\n        threadFriction: 0.1 ± 0.002\n        faceFriction: 0.1 ± 0.002\n        wrench: 320 mm\n        crowfoot: 0 mm\n',
  );
  const oil = text.replace(
    'torque: 62 N m, lubricant: molybdenum disulphide paste,',
    'torque: 62 N m, lubricant: engine oil,',
  );
  const band = (of: TighteningReached): number => {
    const { low, high } = sort(of, 'lower').builder!.figure!.preload;
    return high / low;
  };
  assert.ok(band(reached(text)) < 1.3 && band(reached(oil)) > 1.5);
});

test('a joint that is not described, a lubricant that is in no table: told where', () => {
  const none = tighteningOf(demo('ashgarth-501'), 'engineToTub');
  assert.ok(!none.reached);
  assert.match(none.message, /joints, engineToTub/);
  const text = changed('lubricant: molybdenum disulphide paste, source', 'lubricant: moly grease, source');
  const read = readCar({ text });
  assert.ok(!read.ok);
  const [problem] = read.problems;
  assert.equal(problem!.code, 'joint/unknown-name');
  assert.equal(problem!.path, 'joints.engineToTub.sorts.lower.builder.lubricant');
  assert.ok(problem!.line !== undefined);
});

test('without a builder and without his key every figure of the joint stands as it stood', () => {
  const before = demo(CAR);
  const after = opened({ text: changed(BUILDER, '') });
  const { doing } = usualDoing('dip')!;
  const figures = [before, after].map((car) => {
    const is = jointOf(car, 'engineToTub', doing, { spread: false });
    assert.ok(is.reached);
    return is.figures.map(({ value }) => value);
  });
  assert.deepEqual(figures[0], figures[1]);
});

test('NIST SP 811 (2008), B.8: 1 lbf ft = 1.355 818 N m; settings stand on the marks of a scale', () => {
  assert.equal(wrenchWords(62.2, 'mm-N'), '62 N·m');
  assert.equal(wrenchWords(20.35, 'mm-N'), '20.5 N·m');
  // by hand: 62 / 1.355818 = 45.73
  assert.equal(wrenchWords(62, 'in-lbf'), '46 lbf·ft');
  near(wrenchMark(62, 'in-lbf'), 46 * 1.355818, 1e-5);
  assert.equal(bothWrenchWords(62, 'mm-N'), '62 N·m [45.7 lbf·ft]');
  assert.equal(bothTorqueWords(44.75, 'mm-N'), '44.8 N·m [33.0 lbf·ft]');
});
