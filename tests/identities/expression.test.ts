/**
 * The reader of formulas. Order of signs as in print and in ISO 80000-2 (from memory): powers first and from the
 * right, then a leading minus, products from the left, sums from the left. JavaScript's own operators
 * (ECMAScript, multiplicative and additive expressions) are the other reckoner.
 */
import assert from 'node:assert/strict';
import { test } from 'node:test';
import fc from 'fast-check';
import { ownUnit } from '../../src/units/unit.ts';
import {
  compile,
  dimensionOf,
  type Expression,
  parse,
  symbolsIn,
  toMathML,
} from '../../src/working/expression.ts';
import { near } from '../near.ts';
import { tagsClose } from './well-formed.ts';

const work = (text: string, terms: Record<string, number> = {}): number => compile(parse(text))(terms);

test('powers before a leading minus, and from the right', () => {
  assert.equal(work('-a^2', { a: 3 }), -9);
  assert.equal(work('(-a)^2', { a: 3 }), 9);
  assert.equal(work('2^3^2'), 512);
  assert.equal(work('(2^3)^2'), 64);
  assert.equal(work('2*-a', { a: 3 }), -6);
  assert.equal(work('-a*b', { a: 2, b: 5 }), -10);
  assert.equal(work('a^-1', { a: 4 }), 0.25);
});

test('differences and quotients from the left', () => {
  assert.equal(work('a - b - c', { a: 10, b: 3, c: 2 }), 5);
  assert.equal(work('a - (b - c)', { a: 10, b: 3, c: 2 }), 9);
  assert.equal(work('a/b/c', { a: 12, b: 3, c: 2 }), 2);
  assert.equal(work('a/b*c', { a: 12, b: 3, c: 2 }), 8);
  assert.equal(work('a + b*c^2', { a: 1, b: 2, c: 3 }), 19);
});

test('functions, π and numbers as they are written', () => {
  near(work('sqrt(a^2 + b^2)', { a: 3, b: 4 }), 5, 0);
  near(work('2*π*atan2(1, 1)'), Math.PI ** 2 / 2, 1e-15);
  near(work('min(3, 1, 2) + max(4, 6)'), 7, 0);
  near(work('1.5e-3 + .5'), 0.5015, 0);
  assert.deepEqual([...symbolsIn(parse('π*d^4*G/(32*L)'))].sort(), ['G', 'L', 'd']);
});

test('what is no formula is our mistake and throws, with the place', () => {
  for (const text of ['', 'a +', '(a', 'a)', 'a b', 'a $ b', 'f(a)', '1..2 + ', 'sqrt(a', ',', '2 ^']) {
    assert.throws(() => parse(text), Error, text);
  }
});

test('units: sums must agree, exponents are pure, roots halve', () => {
  const units = (terms: Record<string, string>) =>
    Object.fromEntries(Object.entries(terms).map(([name, unit]) => [name, ownUnit(unit).dimension]));
  const of = (text: string, terms: Record<string, string>) => dimensionOf(parse(text), units(terms));
  assert.deepEqual(of('G*J/L', { G: 'Pa', J: 'm^4', L: 'm' }), ownUnit('N m/rad').dimension);
  assert.deepEqual(of('sqrt(k/m)', { k: 'N/m', m: 'kg' }), ownUnit('Hz').dimension);
  assert.deepEqual(of('abs(F)*2', { F: 'N' }), ownUnit('N').dimension);
  assert.deepEqual(of('atan2(a, b)', { a: 'm', b: 'm' }), ownUnit('rad').dimension);
  assert.throws(() => of('a + b', { a: 'm', b: 'N' }), /do not agree/);
  assert.throws(() => of('a^b', { a: 'm', b: 'm' }), /do not agree/);
  assert.throws(() => of('a^n', { a: 'm', n: '1' }), /do not agree/);
  assert.throws(() => of('sin(a)', { a: 'm' }), /do not agree/);
  assert.throws(() => of('max(a, 0)', { a: 'm' }), /do not agree/);
  assert.throws(() => of('a*c', { a: 'm' }), /has no unit/);
});

interface Written {
  /** As a formula has it, and as the other reckoner has it: powers there need brackets behind a minus. */
  readonly ours: string;
  readonly script: string;
}

const leaf: fc.Arbitrary<Written> = fc
  .constantFrom('a', 'b', 'c', '2', '3', '0.5', 'π')
  .map((ours) => ({ ours, script: ours === 'π' ? 'Math.PI' : ours }));
const signs = fc.constantFrom('+', '-', '*', '/');

/** Signs one after another without brackets, so that the order of signs is what decides. */
const anyFormula = fc.letrec<{ formula: Written }>((tie) => ({
  formula: fc.oneof(
    { depthSize: 'small', withCrossShrink: true },
    leaf,
    fc.tuple(signs, tie('formula'), tie('formula')).map(([sign, a, b]) => ({
      ours: `${a.ours} ${sign} ${b.ours}`,
      script: `${a.script} ${sign} ${b.script}`,
    })),
    tie('formula').map((a) => ({ ours: `(${a.ours})`, script: `(${a.script})` })),
    tie('formula').map((a) => ({ ours: `-(${a.ours})`, script: `-(${a.script})` })),
    tie('formula').map((a) => ({ ours: `(${a.ours})^2`, script: `((${a.script})**2)` })),
    tie('formula').map((a) => ({ ours: `-(${a.ours})^2`, script: `-((${a.script})**2)` })),
    tie('formula').map((a) => ({ ours: `sin(${a.ours})`, script: `Math.sin(${a.script})` })),
  ),
})).formula;

const TERMS = { a: 1.7, b: -0.6, c: 2.9 } as const;

test('any formula comes to what the other reckoner makes of the same text', () =>
  fc.assert(
    fc.property(anyFormula, ({ ours, script }) => {
      const other = new Function('a', 'b', 'c', `return ${script}`) as (...terms: number[]) => number;
      const found = compile(parse(ours))(TERMS);
      const expected = other(TERMS.a, TERMS.b, TERMS.c);
      if (!Number.isFinite(expected)) assert.ok(!Number.isFinite(found));
      // the same operations in the same order on the same doubles; x² is a product here and there
      else near(found, expected, 1e-12 * Math.max(1, Math.abs(expected)));
    }),
    { numRuns: 300 },
  ));

/** The tree with every bracket, as text again. */
function written(tree: Expression): string {
  switch (tree.kind) {
    case 'number':
      return tree.text;
    case 'symbol':
      return tree.name;
    case 'negative':
      return `(-${written(tree.of)})`;
    case 'operation':
      return `(${written(tree.left)}${tree.sign}${written(tree.right)})`;
    case 'call':
      return `${tree.name}(${tree.of.map(written).join(',')})`;
  }
}

test('any formula written out with every bracket is the same formula', () =>
  fc.assert(
    fc.property(anyFormula, ({ ours }) => {
      const tree = parse(ours);
      assert.ok(Object.is(compile(parse(written(tree)))(TERMS), compile(tree)(TERMS)), ours);
    }),
    { numRuns: 300 },
  ));

test('any formula is set as MathML whose tags close, with fractions as fractions', () => {
  fc.assert(
    fc.property(anyFormula, ({ ours }) => tagsClose(toMathML(parse(ours)))),
    { numRuns: 200 },
  );
  assert.equal(toMathML(parse('a/b')), '<mfrac><mrow><mi>a</mi></mrow><mrow><mi>b</mi></mrow></mfrac>');
  assert.equal(
    toMathML(parse('(a + b)*c_d')),
    '<mrow><mrow><mo>(</mo><mrow><mi>a</mi><mo>+</mo><mi>b</mi></mrow><mo>)</mo></mrow><mo>·</mo><msub><mi>c</mi><mtext>d</mtext></msub></mrow>',
  );
});

test('brackets in print: what is subtracted, multiplied or raised keeps its own', () => {
  const brackets = (text: string): number => toMathML(parse(text)).split('<mo>(</mo>').length - 1;
  assert.equal(brackets('a - (b - c)'), 1);
  assert.equal(brackets('a - (b + c)'), 1);
  assert.equal(brackets('(a - b) - c'), 0);
  assert.equal(brackets('(a + b)^2'), 1);
  assert.equal(brackets('-(a + b)'), 1);
  assert.equal(brackets('(a*b)^2'), 1);
  assert.equal(brackets('(a^b)^2'), 1);
  assert.equal(brackets('a*-b'), 1);
  assert.equal(brackets('(a + b)/(c + d)'), 0);
});
