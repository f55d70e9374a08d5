/**
 * How sure the figures are: against drawing every reading at random (JCGM 101:2008, propagation of distributions
 * by a Monte Carlo method), against plain arithmetic without anything kept, and where the answer is known.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import type { Car } from '../../src/car/read.ts';
import { putAxleFigures } from '../../src/loadpath/figures/axle.ts';
import { putCornerFigures } from '../../src/loadpath/figures/corner.ts';
import type { Put } from '../../src/loadpath/figures/note.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import { spreadOf } from '../../src/measured/spread.ts';
import {
  AS_SURVEYED,
  axleFigures,
  cornerFigures,
  type Figure,
  type Wheel,
} from '../../src/questions/index.ts';
import { DEMO_CARS, demo, demoSource, opened } from '../cars/demo.ts';
import { near } from '../near.ts';

const AT = { travel: 0.005, rack: 0 } as const;
const FRONT_LEFT: Wheel = { end: 'front', side: 'left' };

/** Even numbers from 0 to 1 by the Park and Miller rule (Communications of the ACM 31, 1988; from memory). */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Normal numbers by Box and Muller (1958). */
function normal(seed: number): () => number {
  const even = generator(seed);
  return () => Math.sqrt(-2 * Math.log(even())) * Math.cos(2 * Math.PI * even());
}

const figureOf = (car: Car, values: Float64Array, id: string): number => {
  let found = Number.NaN;
  putCornerFigures(car.form.front, 'left', AT, new Numbers(values), (note, value) => {
    if (note.id === id) found = value;
  });
  return found;
};

function spreadOfFigure(car: Car, id: string): NonNullable<Figure['spread']> {
  const answer = cornerFigures(car, FRONT_LEFT, AT, { spread: true });
  assert.ok(answer.reached);
  return answer.figures.find((figure) => figure.id === id)!.spread!;
}

/** Standard deviation of a figure over draws of the inputs (all, or those named). */
function drawn(car: Car, id: string, draws: number, only?: string): number {
  const next = normal(20260209);
  const inputs = car.inputs.filter(({ path }) => only === undefined || path === only);
  const found: number[] = [];
  for (let k = 0; k < draws; k += 1) {
    const values = Float64Array.from(car.values);
    for (const { moves } of inputs) {
      const by = next();
      for (const [index, step] of moves) values[index] = values[index]! + by * step;
    }
    found.push(figureOf(car, values, id));
  }
  const mean = found.reduce((a, b) => a + b) / draws;
  return Math.sqrt(found.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (draws - 1));
}

test('the spread of a wheel rate is what drawing all readings at random gives: coil, bar and surveyed car', () => {
  const draws = 700;
  for (const name of DEMO_CARS) {
    const car = demo(name);
    const { u } = spreadOfFigure(car, 'wheelRate');
    // a standard deviation from n draws is known to 1/√(2n), 2.7 % here: four of these, and the bend of the
    // figure over ± one standard uncertainty, well under a percent
    near(drawn(car, 'wheelRate', draws) / u, 1, 4 / Math.sqrt(2 * draws), name);
  }
});

test('so is each of the three largest shares, drawn alone', () => {
  const draws = 250;
  for (const name of DEMO_CARS) {
    const car = demo(name);
    for (const { path, contribution } of spreadOfFigure(car, 'wheelRate').shares.slice(0, 3)) {
      const alone = drawn(car, 'wheelRate', draws, path);
      // 4.5 % sampling error of 250 draws, four of these
      near(alone / Math.abs(contribution), 1, 4 / Math.sqrt(2 * draws), `${name}, ${path}`);
    }
  }
});

test('the same, over all figures: kept parts change nothing', () => {
  for (const name of DEMO_CARS.slice(0, 2)) {
    const car = demo(name);
    const passes = [
      {
        answer: cornerFigures(car, FRONT_LEFT, AT, { spread: true }),
        pass: (numbers: Numbers, put: Put) => {
          putCornerFigures(car.form.front, 'left', AT, numbers, put);
        },
      },
      {
        answer: axleFigures(car, 'rear', AS_SURVEYED, { spread: true }),
        pass: (numbers: Numbers, put: Put) => {
          putAxleFigures(car.form, 'rear', { left: 0, right: 0, rack: 0 }, numbers, put);
        },
      },
    ];
    for (const { answer, pass } of passes) {
      assert.ok(answer.reached);
      const plain = spreadOf(
        car.values,
        car.inputs,
        (values, out) => {
          let k = 0;
          pass(new Numbers(values), (_, value) => {
            out[k] = value;
            k += 1;
          });
        },
        answer.figures.length,
      );
      const ids: string[] = [];
      pass(new Numbers(car.values), ({ id }) => ids.push(id));
      assert.equal(ids.length, answer.figures.length);
      for (const figure of answer.figures) {
        if (figure.spread === undefined) continue;
        const { u, shares } = plain[ids.indexOf(figure.id)]!;
        const where = `${name}, ${figure.id}`;
        // places are found to 1e-12 m, from different starts, where a reading moves a point by 1e-4 m or so
        near(figure.spread.u, u, 1e-6 * u, where);
        const first = shares[0];
        if (first !== undefined && first.share > 0.4)
          assert.equal(figure.spread.shares[0]!.path, first.path, where);
      }
    }
  }
});

/** The car with every reading as it is but one instrument, which all points name, and nothing else unsure. */
function scaledCar(): Car {
  const car = demo('pellmoor-7b');
  const lengths = car.readings.filter(({ unit }) => unit === 'm');
  return {
    ...car,
    inputs: [
      {
        label: 'scale of the tape',
        path: 'instruments.tape',
        moves: lengths.map(({ index, value }) => [index, 1e-4 * value] as const),
      },
    ],
  };
}

test('one scale for all lengths: ratios and angles do not move, lengths move by the scale', () => {
  // by geometry: a car that is larger all over by 1e-4 has the same angles and ratios, as long as travel grows too
  const at = { travel: 0, rack: 0 };
  const answer = cornerFigures(scaledCar(), FRONT_LEFT, at, { spread: true });
  assert.ok(answer.reached);
  const of = (id: string): Figure => answer.figures.find((figure) => figure.id === id)!;
  for (const id of ['springPerWheel', 'camber', 'caster', 'kingpinInclination', 'frontSlope', 'sideSlope']) {
    const { spread, value } = of(id);
    // what is left is rounding: places found to 1e-12 m, over lengths of 1 m and a scale of 1e-4
    assert.ok(spread!.u <= 1e-7 * Math.max(1, Math.abs(value)), `${id}: ${spread!.u}`);
  }
  for (const id of ['halfTrack', 'mechanicalTrail', 'scrubRadius', 'springLength']) {
    const { spread, value } = of(id);
    near(spread!.u, 1e-4 * Math.abs(value), 1e-8, id);
  }
  // a measured spring on unchanged ratios: the elastic part stands, the change of ratio goes with 1/length
  near(of('wheelRateForceTerm').spread!.u, 1e-4 * Math.abs(of('wheelRateForceTerm').value), 0.2);
  near(of('ratioChange').spread!.u, 1e-4 * Math.abs(of('ratioChange').value), 1e-6);
});

test('the same tape error taken for every length by itself would be told far too large', () => {
  const common = scaledCar();
  const apart = {
    ...common,
    inputs: common.inputs[0]!.moves.map((move) => ({
      label: 'one',
      path: `reading ${move[0]}`,
      moves: [move],
    })),
  };
  const u = (car: Car): number => {
    const answer = cornerFigures(car, FRONT_LEFT, { travel: 0, rack: 0 }, { spread: true });
    assert.ok(answer.reached);
    return answer.figures.find(({ id }) => id === 'springPerWheel')!.spread!.u;
  };
  assert.ok(u(apart) > 100 * u(common));
});

test('a mirrored car has its roll centre in its centre plane, whatever its points are worth', () => {
  const name = DEMO_CARS.find((each) => each.startsWith('pellmoor'))!;
  const source = demoSource(name);
  const text = source.text.replace(/\n {2}right:\n[\s\S]*?(?=\n {2}\w|\n\w)/g, '\n  right: mirrored');
  const answer = axleFigures(opened({ ...source, text }), 'front', AS_SURVEYED, { spread: true });
  assert.ok(answer.reached);
  const offset = answer.figures.find(({ id }) => id === 'rollCentreOffset')!;
  const height = answer.figures.find(({ id }) => id === 'rollCentreHeight')!;
  near(offset.value, 0, 1e-9); // a crossing of two normals that are alike to 1e-12
  assert.ok(height.spread!.u > 1e-3);
  assert.ok(offset.spread!.u < 1e-6 * height.spread!.u, `${offset.spread!.u}`);
});
