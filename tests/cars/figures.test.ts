/**
 * Every demo car, in every spec, through every question that gives figures: what is shown is what was worked out,
 * can be worked out again from what is shown, and knows how sure it is.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Car } from '../../src/car/read.ts';
import { putAxleFigures } from '../../src/loadpath/figures/axle.ts';
import { putCarFigures } from '../../src/loadpath/figures/car.ts';
import { putCornerFigures } from '../../src/loadpath/figures/corner.ts';
import type { FigureNote, Put } from '../../src/loadpath/figures/note.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import {
  AS_SURVEYED,
  axleFigures,
  carFigures,
  cornerFigures,
  type Figure,
  type Stance,
  workingOf,
  workingOfAxle,
  workingOfCar,
} from '../../src/questions/index.ts';
import { ownUnit } from '../../src/units/unit.ts';
import { parse, symbolMathML, toMathML } from '../../src/working/expression.ts';
import { recheck, Working } from '../../src/working/working.ts';
import { tagsClose } from '../identities/well-formed.ts';
import { near } from '../near.ts';
import { everyDemo, WHEELS } from './demo.ts';

/** Travels in metres and rack: as surveyed, in droop past the coils' seats, on the rubbers, steered. */
const PLACES = [
  { travel: 0, rack: 0 },
  { travel: -0.025, rack: 0 },
  { travel: 0.022, rack: 0 },
  { travel: 0.006, rack: 0.012 },
] as const;

const ENDS = ['front', 'rear'] as const;
const LEANT: Stance = {
  front: { left: 0.008, right: -0.01 },
  rear: { left: 0.006, right: -0.009 },
  rack: 0.004,
};

interface Pass {
  readonly put: readonly { readonly note: FigureNote; readonly value: number }[];
  readonly working: Working;
}

function recordOf(pass: (put: Put, working: Working) => void): Pass {
  const working = new Working();
  const put: { note: FigureNote; value: number }[] = [];
  pass((note, value) => put.push({ note, value }), working);
  return { put, working };
}

function standsWorkedOut({ put, working }: Pass, where: string): void {
  assert.deepEqual(recheck(working.steps), [], where);
  assert.equal(new Set(put.map(({ note }) => note.id)).size, put.length, `${where}: a name twice`);
  for (const { note, value } of put) {
    const step = working.stepOf(note.symbol, value);
    if (!Number.isFinite(value)) continue;
    assert.ok(step, `${where}: no step gives ${note.id} (${note.symbol} = ${value})`);
    const units = [step.unit, note.unit].map((unit) => ownUnit(unit).dimension);
    assert.deepEqual(units[0], units[1], `${where}: ${note.id} in ${note.unit}, its step in ${step.unit}`);
  }
  for (const step of working.steps) {
    assert.notEqual(step.source, '', `${where}: ${step.symbol} has no source`);
    tagsClose(symbolMathML(step.symbol));
    if (step.kind === 'formula') tagsClose(toMathML(parse(step.formula)));
    for (const term of step.terms)
      assert.ok(term.from, `${where}: ${term.symbol} in ${step.symbol} comes from nowhere`);
  }
}

function hasItsSpread(plain: readonly Figure[], spread: readonly Figure[], where: string): void {
  assert.deepEqual(
    spread.map(({ spread: _, ...figure }) => figure),
    plain,
    `${where}: the spread changed a figure`,
  );
  for (const figure of spread) {
    const name = `${where}: ${figure.id}`;
    if (!Number.isFinite(figure.value)) {
      assert.equal(figure.spread, undefined, name);
      continue;
    }
    assert.ok(figure.spread, name);
    const { u, shares } = figure.spread;
    assert.ok(Number.isFinite(u) && u >= 0, name);
    const total = shares.reduce((sum, { share }) => sum + share, 0);
    // up to five hundred shares, each rounded once
    near(total, shares.length === 0 ? 0 : 1, 1e-12, name);
    const square = shares.reduce((sum, { contribution }) => sum + contribution ** 2, 0);
    near(square, u ** 2, 1e-12 * u ** 2, name);
    for (const { label, path } of shares) assert.ok(label !== '' && path !== '', name);
  }
}

const cornerRecord = (car: Car, wheel: (typeof WHEELS)[number], at: (typeof PLACES)[number]): Pass =>
  recordOf((put, working) => {
    putCornerFigures(car.form[wheel.end], wheel.side, at, new Numbers(car.values), put, working);
  });

for (const { name, car } of everyDemo()) {
  test(`${name}: each figure of each corner is worked out in steps that stand`, () => {
    for (const wheel of WHEELS) {
      for (const at of PLACES) {
        const where = `${wheel.end} ${wheel.side} at ${at.travel} m, rack ${at.rack} m`;
        const pass = cornerRecord(car, wheel, at);
        standsWorkedOut(pass, where);
        const answer = cornerFigures(car, wheel, at);
        assert.ok(answer.reached, where);
        // the record changes nothing
        assert.deepEqual(
          new Map(answer.figures.map(({ id, value }) => [id, value])),
          new Map(pass.put.map(({ note, value }) => [note.id, value])),
        );
      }
    }
  });

  test(`${name}: each figure of axles and car is worked out in steps that stand`, () => {
    for (const stance of [AS_SURVEYED, LEANT]) {
      for (const end of ENDS) {
        const at = { ...stance[end], rack: end === 'front' ? stance.rack : 0 };
        const pass = recordOf((put, working) => {
          putAxleFigures(car.form, end, at, new Numbers(car.values), put, working);
        });
        standsWorkedOut(pass, end);
      }
    }
    standsWorkedOut(
      recordOf((put, working) => putCarFigures(car.form, new Numbers(car.values), put, working)),
      'car',
    );
  });

  test(`${name}: every figure has its spread, and the spread changes no figure`, () => {
    const at = PLACES[0];
    for (const wheel of WHEELS) {
      const where = `${wheel.end} ${wheel.side}`;
      const [plain, spread] = [false, true].map((each) => cornerFigures(car, wheel, at, { spread: each }));
      assert.ok(plain!.reached && spread!.reached, where);
      hasItsSpread(plain!.figures, spread!.figures, where);
      const rate = spread!.figures.find(({ id }) => id === 'wheelRate')!;
      assert.deepEqual(rate.spread!.unknown, [], where);
    }
    for (const end of ENDS) {
      const [plain, spread] = [false, true].map((each) => axleFigures(car, end, LEANT, { spread: each }));
      assert.ok(plain!.reached && spread!.reached, end);
      hasItsSpread(plain!.figures, spread!.figures, end);
    }
    const [plain, spread] = [false, true].map((each) => carFigures(car, { spread: each }));
    assert.ok(plain!.reached && spread!.reached);
    hasItsSpread(plain!.figures, spread!.figures, 'car');
  });
}

test('the working of a wheel rate leads down to the readings of the spring', () => {
  const cars = new Map(everyDemo().map(({ name, car }) => [name, car]));
  const paths = (name: string): string[] => {
    const answer = workingOf(cars.get(name)!, { wheel: WHEELS[0]!, at: PLACES[0], figure: 'wheelRate' });
    assert.ok(answer.reached);
    return answer.steps.flatMap(({ terms }) =>
      terms.flatMap(({ from }) => (from?.kind === 'reading' ? [from.path] : [])),
    );
  };
  const coil = paths('fenwold-201, as arrived');
  for (const path of ['front.left.coil.rate', 'front.left.scale', 'front.left.unsprung'])
    assert.ok(coil.includes(path), path);
  // both ends of this bar are alike, and one step then stands for both
  const bar = paths('ashgarth-501, as arrived');
  for (const path of ['diameter', 'parallelLength', 'anchorEnd.size', 'anchorEnd.headDiameter', 'twist'])
    assert.ok(bar.includes(`front.left.bar.${path}`), path);
});

test('the working of one figure: its steps alone, the last gives it, readings by their paths', () => {
  const { car } = everyDemo()[0]!;
  const stands = (answer: ReturnType<typeof workingOf>, id: string): void => {
    assert.ok(answer.reached, id);
    const { steps, figure, readings } = answer;
    assert.equal(figure.id, id);
    const last = steps.at(-1)!;
    assert.equal(last.symbol, figure.symbol);
    assert.ok(Object.is(last.value, figure.value));
    assert.deepEqual(recheck(steps), []);
    // nothing that the figure does not lean on: each step but the last is a term further down
    for (const [k, step] of steps.slice(0, -1).entries()) {
      const wanted = steps
        .slice(k + 1)
        .some(({ terms }) =>
          terms.some(({ from, value }) => from?.kind === 'step' && Object.is(value, step.value)),
        );
      assert.ok(wanted, `${id}: ${step.symbol} is not used`);
    }
    for (const { terms } of steps)
      for (const { from } of terms)
        if (from?.kind === 'reading') assert.ok(readings[from.path], `${id}: ${from.path}`);
  };
  const wheel = WHEELS[0]!;
  for (const id of ['wheelRate', 'wheelLoad', 'barStress', 'toeAtRim', 'rideFrequency'])
    stands(workingOf(car, { wheel, at: PLACES[0], figure: id }), id);
  for (const id of ['rollRateTyre', 'heaveFrequency', 'track', 'antiRollBarRoll'])
    stands(workingOfAxle(car, 'front', LEANT, id), id);
  for (const id of ['rollFrequency', 'bounceFrequency']) stands(workingOfCar(car, id), id);
  const none = workingOf(car, { wheel, at: PLACES[0], figure: 'wheelRat' });
  assert.ok(!none.reached && none.message.includes('wheelRate'));
});
