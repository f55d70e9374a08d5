/** The record of how an answer was reached: what is declared wrongly, shown wrongly or taken from the wrong place is told. */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import {
  type FormulaDeclaration,
  type FormulaStep,
  formula,
  recheck,
  type Step,
  Working,
} from '../../src/working/working.ts';
import { near } from '../near.ts';

const second: FormulaDeclaration<'D'> = {
  symbol: 'J',
  means: 'polar second moment of a solid bar',
  is: 'π*D^4/32',
  unit: 'm^4',
  terms: { D: { unit: 'm', means: 'diameter' } },
  source: 'Gere & Goodno, eq. 3-11 (from memory)',
};
const rate: FormulaDeclaration<'G' | 'J' | 'L'> = {
  symbol: 'k_t',
  means: 'torsional rate',
  is: 'G*J/L',
  unit: 'N m/rad',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus' },
    J: { unit: 'm^4', means: 'polar second moment' },
    L: { unit: 'm', means: 'length' },
  },
  source: 'Gere & Goodno, eq. 3-16 (from memory)',
};

/** The bar of house use: 20 mm solid, 300 mm, 80 GPa. */
function steps(): readonly Step[] {
  const working = new Working();
  const J = formula(second)({ D: 0.02 }, working);
  formula(rate)({ G: 80e9, J, L: 0.3 }, working);
  return working.steps;
}

test('20 mm solid steel, 300 mm long: 4189 N·m/rad by hand, and nothing to object to', () => {
  const [J, k] = steps();
  near(J!.value, 1.5708e-8, 5e-13); // by hand, five figures
  near(k!.value, 4189, 0.5); // by hand, four figures
  assert.deepEqual(k!.terms[1]!.from, { kind: 'step', symbol: 'J' });
  assert.deepEqual(recheck(steps()), []);
});

test('a declaration that cannot stand throws when it is made', () => {
  const declare = (change: Partial<FormulaDeclaration<string>>) => () => formula({ ...rate, ...change });
  assert.throws(declare({ is: 'G*J/L*2/2 + L' }), /units do not agree/);
  assert.throws(declare({ unit: 'N/m' }), /has not the unit N\/m/);
  assert.throws(declare({ unit: 'N mm/grad' }), /no such unit/);
  assert.throws(declare({ is: 'G*J/L_0' }), /term L_0 is not declared/);
  assert.throws(declare({ is: 'G*J' }), /term L is declared and not used/);
  assert.throws(declare({ is: 'G*J/(L' }), /cannot read the formula/);
  assert.throws(declare({ terms: { ...rate.terms, G: { unit: 'GPascal', means: '' } } }), /no such unit/);
  // a square left out, and a modulus given as a force: both are faults of unit
  assert.throws(() => formula({ ...second, is: 'π*D^3/32' }), /has not the unit/);
  assert.throws(declare({ terms: { ...rate.terms, G: { unit: 'N', means: '' } } }), /has not the unit/);
});

/** The steps with the last one changed. */
const planted = (change: Partial<FormulaStep>): readonly Step[] => {
  const [J, k] = steps();
  return [J!, { ...(k as FormulaStep), ...change }];
};

test('a factor of two planted in the value or in the formula is found', () => {
  const k = steps()[1] as FormulaStep;
  for (const steps of [planted({ value: 2 * k.value }), planted({ formula: '2*G*J/L' })]) {
    const faults = recheck(steps);
    assert.equal(faults.length, 1);
    assert.equal(faults[0]!.step, 1);
    assert.match(faults[0]!.what, /works out as/);
  }
});

test('the least that is told: a value off by one part in 1e11, while 1e-13 is rounding', () => {
  const k = steps()[1]!.value;
  assert.equal(recheck(planted({ value: k * (1 + 1e-11) })).length, 1);
  assert.equal(recheck(planted({ value: k * (1 + 1e-13) })).length, 0);
});

test('a wrong unit is found, of the result and of a term', () => {
  assert.match(recheck(planted({ unit: 'N/m' }))[0]!.what, /has not the unit/);
  const k = steps()[1] as FormulaStep;
  const terms = k.terms.map((term) => (term.symbol === 'L' ? { ...term, unit: 'm^2' } : term));
  assert.match(recheck(planted({ terms }))[0]!.what, /has not the unit/);
});

test('a term left out, or one too many, is found', () => {
  const { terms } = steps()[1] as FormulaStep;
  assert.match(recheck(planted({ terms: terms.slice(1) }))[0]!.what, /term G is not declared/);
  const more = [...terms, { ...terms[0]!, symbol: 'E' }];
  assert.match(recheck(planted({ terms: more }))[0]!.what, /term E is declared and not used/);
});

test('a term that is said to come from a step with another value, from a later one, or from none, is found', () => {
  const [J, k] = steps();
  const other = { ...J!, value: J!.value * 1.000001 };
  assert.match(recheck([other, k!])[0]!.what, /works out as/);
  const moved = recheck([other, k!]).filter(({ step }) => step === 1);
  assert.match(moved[0]!.what, /is said to come from J/);
  assert.match(recheck([k!, J!])[0]!.what, /is said to come from J/);
  assert.match(recheck([k!])[0]!.what, /is said to come from J/);
});

test('a term takes the step that gave it exactly, not one that is merely named alike', () => {
  const working = new Working();
  formula(second)({ D: 0.02 }, working);
  const J = formula(second)({ D: 0.03 }, working);
  formula(rate)({ G: 80e9, J: J * (1 + 1e-15), L: 0.3 }, working);
  assert.equal(working.steps[2]!.terms[1]!.from, undefined);
  assert.equal(working.stepOf('J', J), working.steps[1]);
});

test('where there is no number there, both say so', () => {
  const working = new Working();
  formula(rate)({ G: 80e9, J: Number.NaN, L: 0.3 }, working);
  assert.deepEqual(recheck(working.steps), []);
  const [step] = working.steps;
  assert.equal(recheck([{ ...step!, value: 1 }]).length, 1);
});
