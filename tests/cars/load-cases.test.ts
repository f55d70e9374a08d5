/** All default cases of the demo cars: the largest of each member, and the hardest case of a joint, taken again by hand. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { putLoadFigures } from '../../src/loadpath/figures/loads.ts';
import { STANDING } from '../../src/loadpath/loads/doing.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  doingsOf,
  figureNamed,
  figuresAt,
  jointCases,
  jointOf,
  largestOf,
  loadCases,
  loadsOf,
  MEMBERS,
  shareLeft,
} from '../../src/questions/index.ts';
import { near } from '../near.ts';
import { demo, WHEELS } from './demo.ts';

const CAR = 'fenwold-201';

/** Of every kind of figure one: tyre, joint, member, its strength, rocker, bar, spring. */
const ASKED = [
  'tyreLoad',
  'tyreSide',
  'lowerBallJoint',
  'tension.rod',
  'tension.lowerRear',
  'yieldShare.lowerRear',
  'rockerPivotForce',
  'dropLinkForce',
  'unitForceUnderLoad',
];

test('every case is the answer of its own question, and the largest of each member is the largest of them', () => {
  const car = demo(CAR);
  const of = loadCases(car);
  const doings = doingsOf(car);
  assert.equal(of.cases.length, doings.length);
  const values = (wheel: (typeof WHEELS)[number], id: string): number[] =>
    doings.map(({ doing }) => {
      const is = loadsOf(car, doing, { spread: false, wheels: [wheel] });
      assert.ok(is.reached);
      return figureNamed(figuresAt(is, wheel), id)!.value;
    });
  const wheel = WHEELS[2]!;
  for (const [k, largest] of largestOf(of, wheel).entries()) {
    const forces = values(wheel, `tension.${MEMBERS[k]}`);
    const most = Math.max(...forces);
    assert.equal(largest.pull?.figure.value, most > 0 ? most : undefined);
    const least = Math.min(...forces);
    assert.equal(largest.push?.figure.value, least < 0 ? least : undefined);
    if (largest.push !== undefined)
      assert.equal(largest.push.doing.name, doings[forces.indexOf(least)]!.name);
    const shares = values(wheel, `bucklingShare.${MEMBERS[k]}`);
    assert.equal(largest.buckles!.figure.value, Math.max(...shares));
  }
});

test('the hardest case of a joint keeps the least part of a pad, and each stud says what its own case says', () => {
  const car = demo(CAR);
  const of = jointCases(car, 'engineToTub');
  assert.equal(of.cases.length, doingsOf(car).length);
  const least = of.cases.map(({ studs }) => Math.min(...studs.map(shareLeft)));
  assert.equal(of.hardest, of.cases[least.indexOf(Math.min(...least))]);
  const { doing, studs, opened } = of.hardest!;
  const is = jointOf(car, 'engineToTub', doing.doing, { spread: false });
  assert.ok(is.reached);
  for (const { stud, left } of studs)
    assert.equal(left, is.figures.find(({ id }) => id === `stud.${stud}.pad`)!.value);
  assert.equal(opened, is.figures.find(({ id }) => id === 'openedLow')!.value);
});

test('a car whose joints nobody has described has no hardest case, and each case says why', () => {
  const car = demo('ashgarth-501');
  const of = jointCases(car, 'engineToTub');
  assert.equal(of.hardest, undefined);
  assert.equal(of.without.length, doingsOf(car).length);
  assert.match(of.without[0]!.message, /does not describe the joint/);
});

test('± of a wheel by slopes about the place of the car is that of the car made to stand again for each reading', () => {
  const car = demo(CAR);
  const [wheel] = WHEELS;
  for (const name of ['cornering', 'kerb'] as const) {
    const { doing } = doingsOf(car).find((each) => each.name === name)!;
    const is = loadsOf(car, doing, { wheels: [wheel!] });
    assert.ok(is.reached);
    const figures = figuresAt(is, wheel!).filter(({ id }) => ASKED.includes(id));
    assert.equal(figures.length, ASKED.length);
    const worst = new Set(
      figures.flatMap(({ spread }) => spread!.shares.slice(0, 6).map(({ path }) => path)),
    );
    for (const { path, moves } of car.inputs.filter((each) => worst.has(each.path))) {
      const change = new Map<string, number>();
      for (const [index, step] of moves) {
        for (const sign of [1, -1]) {
          const values = Float64Array.from(car.values);
          values[index]! += sign * step;
          // numbers of their own: nothing is taken over, and no slope helps
          putLoadFigures(car.form, 'frontLeft', doing, new Numbers(values), ({ id }, value) => {
            change.set(id, (change.get(id) ?? 0) + (sign * value) / 2);
          });
        }
      }
      for (const { id, spread } of figures) {
        const share = spread!.shares.find((each) => each.path === path);
        // a fiftieth of the whole ±: a ± is told to two digits
        near(share?.contribution ?? 0, change.get(id)!, spread!.u / 50, `${name}, ${id} by ${path}`);
      }
    }
  }
});

/**
 * By hand: at rest a tyre bears what its scale showed, 138.6 kg, read to 0.25 kg on scales that are off by 0.1 % of
 * what they show; two independent parts add as the root of their squares (GUM, JCGM 100:2008, 5.1.2, from memory).
 * The rod bears a sum of two forces, each linear: what the scale shows, less what the wheel weighs (superposition).
 */
test('± of a wheel at rest by hand, from the scale up', () => {
  const car = demo(CAR);
  const [wheel] = WHEELS;
  const is = loadsOf(car, STANDING, { wheels: [wheel!] });
  assert.ok(is.reached);
  const figure = (id: string) => figuresAt(is, wheel!).find((each) => each.id === id)!;
  const part = (id: string, path: string): number =>
    Math.abs(figure(id).spread!.shares.find((each) => each.path === path)!.contribution);
  const g = 9.80665;
  near(figure('tyreLoad').value, 138.6 * g, 1e-6);
  near(part('tyreLoad', 'front.left.scale'), 0.25 * g, 1e-3);
  near(part('tyreLoad', 'instruments.blue scales'), 0.001 * 138.6 * g, 1e-3);
  near(figure('tyreLoad').spread!.u, g * Math.hypot(0.25, 0.1386), 5e-3);
  const { scale, unsprung } = car.form.front.left;
  const lifted = (part('tension.rod', 'front.left.scale') / 0.25) * scale.value;
  const hung = (part('tension.rod', 'front.left.unsprung') / unsprung.u) * unsprung.value;
  near(lifted - hung, Math.abs(figure('tension.rod').value), 0.5);
});
