/** Two specs under one load: against each spec asked alone, a spec against itself, and four studs against six. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { compareJoints, compareLoads, jointOf, loadsOf, usualDoing } from '../../src/questions/index.ts';
import { demo, demoSource } from './demo.ts';

const CAR = 'fenwold-201';
const FOUR = 'as arrived';
const SIX = 'proposal, six studs to the tub';
const STRETCH = 'lower studs by stretch';
const QUICK = { spread: false } as const;
const { doing } = usualDoing('rear-kerb')!;
const asked = (a: string, b: string) => ({ source: demoSource(CAR), specs: [a, b] as const, doing });

test('a spec against itself: every figure in both, and no difference', () => {
  const wheel = { end: 'rear', side: 'left' } as const;
  const joint = compareJoints(asked(SIX, SIX), 'engineToTub', QUICK);
  for (const { rows, notReached } of [joint, compareLoads(asked(FOUR, FOUR), [wheel], QUICK)]) {
    assert.deepEqual(notReached, []);
    assert.ok(rows.length > 10);
    for (const { id, a, b, difference } of rows) {
      assert.ok(a !== undefined && b !== undefined, id);
      if (Number.isFinite(a.value)) assert.equal(difference, 0, id);
    }
  }
  assert.ok(joint.notes.every((note) => !note.startsWith(`${SIX}: `)));
});

test('four studs against six: the middle pair stands in one alone, the rest is each spec asked by itself', () => {
  const { rows, joints, cautions } = compareJoints(asked(FOUR, SIX), 'engineToTub', QUICK);
  const alone = [FOUR, SIX].map((spec) => {
    const is = jointOf(demo(CAR, spec), 'engineToTub', doing, QUICK);
    assert.ok(is.reached);
    return is;
  });
  const [four, six] = alone;
  for (const { id, a, b, difference } of rows) {
    const [left, right] = alone.map((is) => is.figures.find((figure) => figure.id === id)?.value);
    assert.equal(a?.value, left, id);
    assert.equal(b?.value, right, id);
    if (left !== undefined && right !== undefined) assert.equal(difference, right - left, id);
    else assert.equal(difference, undefined, id);
  }
  assert.equal(rows.length, new Set([...four!.figures, ...six!.figures].map(({ id }) => id)).size);
  const lone = rows.filter(({ a, b }) => a === undefined || b === undefined);
  assert.ok(lone.length > 0 && lone.every(({ id, a }) => a === undefined && id.startsWith('stud.middle ')));
  assert.deepEqual(
    joints.map(({ spec, worst }) => [spec, worst]),
    [
      [FOUR, four!.worst],
      [SIX, six!.worst],
    ],
  );
  for (const { breaksFirst } of joints)
    assert.match(breaksFirst.at(-1)!, /^Nearest to it under this load is/);
  assert.ok(joints[1]!.breaksFirst.some((words) => words.includes('middle left')));
  assert.deepEqual(cautions, four!.cautions);
});

test('another way of tightening: the lower studs have another preload, the upper sort breaks at the same load', () => {
  const { joints, rows } = compareJoints(asked(FOUR, STRETCH), 'engineToTub', QUICK);
  assert.ok(rows.some(({ id, difference }) => id.startsWith('stud.lower ') && Math.abs(difference ?? 0) > 1));
  // what breaks a stud is thread, metal and engagement, whatever it is tightened by
  const sorts = joints.map(({ breaksFirst }) => breaksFirst.slice(0, -1));
  assert.deepEqual(sorts[0], sorts[1]);
});

test('another way about: differences with the other sign; wheels told apart where there are two', () => {
  const wheels = [
    { end: 'front', side: 'left' },
    { end: 'rear', side: 'left' },
  ] as const;
  const there = compareLoads(asked(FOUR, 'as run'), wheels, QUICK);
  const back = compareLoads(asked('as run', FOUR), wheels, QUICK);
  const key = ({ of, id }: { of?: string; id: string }): string => `${of} ${id}`;
  const others = new Map(back.rows.map((row) => [key(row), row.difference]));
  let moved = 0;
  for (const row of there.rows) {
    if (row.difference === undefined) continue;
    assert.equal(row.difference, -others.get(key(row))! + 0, key(row));
    if (row.difference !== 0) moved += 1;
  }
  assert.ok(moved > 5, `${moved} differ`);
  const alone = loadsOf(demo(CAR, 'as run'), doing, { ...QUICK, wheels });
  assert.ok(alone.reached);
  const rear = alone.wheels[1]!.figures.find(({ id }) => id === 'tyreLoad')!;
  assert.equal(there.rows.find((row) => key(row) === 'rear left tyreLoad')!.b!.value, rear.value);
});

test('a spec that is not there is a problem, and not an empty answer without a word', () => {
  assert.ok(compareJoints(asked(FOUR, 'nothing'), 'engineToTub', QUICK).problems.length > 0);
});

test('nearest to breaking, by hand: the most in each stud over the load at which its sort gives way', () => {
  const is = jointOf(demo(CAR), 'engineToTub', doing, QUICK);
  assert.ok(is.reached);
  const number = (text: string): number => Number(text.replace(/[\s\u2009]/g, ''));
  const ways = is.breaksFirst.flatMap((words) => {
    const told = /\(([^)]*)\): first .* at about ([\d\s\u2009]+) N\./.exec(words);
    return told === null ? [] : told[1]!.split(', ').map((name) => [name, number(told[2]!)] as const);
  });
  assert.equal(ways.length, 4);
  const shares = ways.map(([name, breaks]) => {
    const most = is.figures.find(({ id }) => id === `stud.${name}.forceMost`)!.value;
    return { name, share: most / breaks };
  });
  const nearest = shares.reduce((a, b) => (b.share > a.share ? b : a));
  // the four are not alike, or any would do
  assert.ok(nearest.share - Math.min(...shares.map(({ share }) => share)) > 0.01);
  assert.ok(
    is.breaksFirst.some((words) => words.startsWith(`Nearest to it under this load is ${nearest.name}:`)),
  );
});
