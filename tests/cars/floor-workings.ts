/** Every figure of an answer of the flat floor has a working that can be worked out again and ends in the figure. */
import assert from 'node:assert/strict';
import { floorId, type ToldAnswer, type ToldReached } from '../../src/questions/index.ts';
import { recheck } from '../../src/working/working.ts';

export function reachedFloor(answer: ToldAnswer): ToldReached {
  assert.ok(answer.reached, answer.reached ? '' : answer.message);
  return answer;
}

/** The value of one figure, by its name. */
export function amountOf(answer: ToldAnswer, id: string): number {
  const found = reachedFloor(answer).figures.find((each) => floorId(each) === id);
  assert.ok(found !== undefined, `there is no ${id}`);
  return found.value;
}

export function workingsHold(ask: (working?: string) => ToldAnswer): void {
  const { figures } = reachedFloor(ask());
  assert.ok(figures.length > 0);
  assert.equal(new Set(figures.map(floorId)).size, figures.length, 'names are unique');
  for (const figure of figures) {
    const id = floorId(figure);
    const { working } = reachedFloor(ask(id));
    assert.ok(working !== undefined, id);
    assert.deepEqual(recheck(working.steps), [], id);
    const last = working.steps.at(-1);
    assert.ok(last !== undefined, `${id} has no step`);
    if (Number.isFinite(figure.value))
      assert.ok(Object.is(last.value, figure.value), `${id} ends in ${last.symbol}`);
    for (const step of working.steps) assert.match(step.source, /^[A-Z]{2}-\d+/, `${id}, ${step.symbol}`);
  }
}
