/** Every reading of the standing car, and every figure of the weighing, can be worked out again from what is shown. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { type ReadingWorking, standOnFloor, weighing } from '../../src/questions/index.ts';
import { recheck } from '../../src/working/working.ts';
import { everyDemo } from './demo.ts';

const weighed = () => everyDemo().filter(({ car }) => car.form.body !== undefined);

function stands(working: ReadingWorking | undefined, value: number, where: string): void {
  assert.ok(working !== undefined, where);
  const { steps, readings } = working;
  assert.deepEqual(recheck(steps), [], where);
  const last = steps.at(-1);
  assert.ok(
    last !== undefined && Object.is(last.value, value),
    `${where}: ends in ${last?.symbol} ${last?.value}`,
  );
  for (const step of steps) {
    assert.match(step.source, /^FF-\d+/, `${where}, ${step.symbol}`);
    for (const { symbol, from } of step.terms) {
      assert.ok(from !== undefined, `${where}: ${symbol} in ${step.symbol} comes from nowhere`);
      if (from.kind === 'reading') assert.ok(readings[from.path] !== undefined, `${where}: ${from.path}`);
    }
  }
}

for (const { name, car } of weighed()) {
  test(`${name}: every reading on the pads is worked out in steps that stand`, () => {
    const asked = { bars: 'connected', spread: false } as const;
    const is = standOnFloor(car, asked);
    assert.ok(is.reached);
    for (const { id, value } of is.readings) {
      const again = standOnFloor(car, { ...asked, working: id });
      assert.ok(again.reached);
      stands(again.working, value, id);
    }
  });

  test(`${name}: every figure of the weighing is worked out in steps that stand`, () => {
    const asked = { raised: { front: { value: 283.4, u: 0.3 }, lift: { value: 0.4, u: 1e-3 } } };
    const is = weighing(car, asked);
    assert.ok(is.reached);
    for (const { id, value } of is.figures) {
      const again = weighing(car, { ...asked, working: id });
      assert.ok(again.reached);
      stands(again.working, value, id);
    }
  });
}
