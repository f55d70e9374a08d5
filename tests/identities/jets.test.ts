/** Numbers with their derivatives, and unknowns tied by equations: held against differences and closed forms. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { type Equations, NotTied, TiedStores, tied } from '../../src/maths/implied-jets.ts';
import { type Jet, Jets } from '../../src/maths/jets.ts';
import { near } from '../near.ts';

const small = fc.double({ min: 0.3, max: 1.4, noNaN: true });

/** A function through every operation. */
const through = (j: Jets, x: Jet, y: Jet): Jet => {
  const v = [x, y, j.mul(x, y)] as const;
  const w = j.cross(v, [y, x, j.sin(x)]);
  return j.add(
    j.div(j.atan2(j.dot(v, [y, x, y]), j.scale(j.cos(y), -3, 0.4)), j.sqrt(j.add(x, y))),
    j.mul(j.asin(j.scale(x, 0.5)), j.length(w)),
  );
};

test('first and second derivatives are those of differences', () =>
  fc.assert(
    fc.property(small, small, (x, y) => {
      const at = (a: number, b: number) => {
        const j = new Jets(2, 1);
        const of = through(j, j.variable(a, 0), j.variable(b, 1));
        return {
          value: j.value(of),
          first: [j.first(of, 0), j.first(of, 1)],
          second: [j.second(of, 0, 0), j.second(of, 0, 1)],
        };
      };
      const h = 1e-5;
      const here = at(x, y);
      const [xUp, xDown, yUp, yDown] = [at(x + h, y), at(x - h, y), at(x, y + h), at(x, y - h)];
      // h² of the third derivative and rounding over h: both below 1e-6 of what stands here
      const tolerance =
        1e-6 *
        (1 + Math.abs(here.value) + Math.max(...here.first.map(Math.abs), ...here.second.map(Math.abs))) *
        50;
      near(here.first[0]!, (xUp.value - xDown.value) / (2 * h), tolerance);
      near(here.first[1]!, (yUp.value - yDown.value) / (2 * h), tolerance);
      near(here.second[0]!, (xUp.first[0]! - xDown.first[0]!) / (2 * h), tolerance);
      near(here.second[1]!, (yUp.first[0]! - yDown.first[0]!) / (2 * h), tolerance);
    }),
  ));

test('an unknown tied by an equation has the derivatives of its closed form', () => {
  // x² = p q, so x = √(p q)
  const stores = new TiedStores(1, 2, 1);
  const equation: Equations = (j, [x], [p, q]) => [j.sub(j.mul(x!, x!), j.mul(p!, q!))];
  const {
    jets: [x],
  } = tied(equation, Float64Array.of(1), [2, 3], stores, { closed: 1e-14, stride: 1 });
  const root = Math.sqrt(6);
  const { jets } = stores;
  // a few roundings of numbers near one
  near(jets.value(x!), root, 1e-14);
  near(jets.first(x!, 0), 3 / (2 * root), 1e-14);
  near(jets.second(x!, 0, 0), -9 / (4 * root ** 3), 1e-14);
  near(jets.second(x!, 0, 1), 1 / (2 * root) - 6 / (4 * root ** 3), 1e-14);
});

test('an equation that nothing fulfils is told, and does not end the next search', () => {
  const stores = new TiedStores(1, 1, 0);
  const equation: Equations = (j, [x], [p]) => [j.add(j.mul(x!, x!), p!)];
  const how = { closed: 1e-14, stride: 1 };
  assert.throws(() => tied(equation, Float64Array.of(1), [2], stores, how), NotTied);
  near(tied(equation, Float64Array.of(1), [-2], stores, how).at[0]!, Math.SQRT2, 1e-14);
});
