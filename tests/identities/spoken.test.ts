/** How amounts are spoken: true minus, no powers of ten in a sentence, and nothing where only rounding is left. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { show, spokenAmount, spokenFigures } from '../../src/units/show.ts';
import { real } from '../draw.ts';

test('what rounding leaves of nothing is shown as 0, without a spread', () => {
  assert.deepEqual(show(3e-12, 'N', 'mm-N', 1.6e-8), { text: '0', unit: 'N' });
  // a spread that a workshop could read keeps the value, however small that is
  assert.deepEqual(show(0, 'N', 'mm-N', 0.02), { text: '0.000', spread: '0.020', unit: 'N' });
  assert.equal(show(2e-9, 'm', 'mm-N', 1e-7).spread, '0.00010');
  // a value that is something keeps its small spread
  assert.equal(show(5, 'N', 'mm-N', 1e-8).text, '5.000000000');
});

test('amounts in sentences', () => {
  assert.equal(spokenAmount(-0.0073, 'm', 1), '−7.3 mm');
  assert.equal(spokenAmount(-0.00001, 'm', 1), '0.0 mm');
  assert.equal(spokenAmount(-0.0254, 'm', 2, 'in-lbf'), '−1.00 in');
  assert.equal(spokenFigures(1280, 'N m'), '1280 N·m');
});

test('no sign of the keyboard for minus, and no power of ten below a million', () => {
  fc.assert(
    fc.property(real(-9e5, 9e5), (value) => {
      const text = spokenFigures(value, 'N');
      assert.doesNotMatch(text, /-/);
      if (Math.abs(value) > 1e-3) assert.doesNotMatch(text, /e/);
    }),
  );
});
