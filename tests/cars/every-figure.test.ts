/** All figures in one pass are those of the single questions, value and spread: nothing that is kept goes stale. */
import assert from 'node:assert/strict';
import test from 'node:test';
import {
  AS_SURVEYED,
  axleFigures,
  carFigures,
  cornerFigures,
  everyFigure,
} from '../../src/questions/index.ts';
import { DEMO_CARS, demo, WHEELS } from './demo.ts';

for (const name of DEMO_CARS) {
  test(`${name}: every figure in one pass, as asked one by one`, () => {
    const car = demo(name);
    const all = everyFigure(car, AS_SURVEYED);
    assert.ok(all.reached);
    const of = (place: string) =>
      new Map(all.figures.filter((each) => each.of === place).map(({ figure }) => [figure.id, figure]));
    const single = [
      ...WHEELS.map((wheel) => ({
        place: `${wheel.end} ${wheel.side}`,
        answer: cornerFigures(car, wheel, { travel: 0, rack: 0 }, { spread: true }),
      })),
      ...(['front', 'rear'] as const).map((end) => ({
        place: end,
        answer: axleFigures(car, end, AS_SURVEYED, { spread: true }),
      })),
      { place: 'car', answer: carFigures(car, { spread: true }) },
    ];
    for (const { place, answer } of single) {
      assert.ok(answer.reached);
      const found = of(place);
      assert.equal(found.size, answer.figures.length, place);
      for (const figure of answer.figures) {
        const other = found.get(figure.id)!;
        assert.ok(Object.is(other.value, figure.value), `${place} ${figure.id}`);
        const [u, v] = [figure.spread?.u ?? 0, other.spread?.u ?? 0];
        // 1e-9: the same differences, added up with more inputs around them
        assert.ok(Math.abs(u - v) <= 1e-9 * Math.max(u, v), `${place} ${figure.id}: ${u} ${v}`);
      }
    }
  });
}
