/**
 * Expressions as a handbook prints them on one line: `G*J/L`, `sqrt(a^2 + b^2)`, `π*(D^4 - d^4)/32`.
 *
 * In    text
 * Out   a tree that can be worked out in numbers, in dimensions, and printed again as MathML
 * Not   a programming language: no assignment, no comparison, no text
 */
import { combine, type Dimension, sameDimension } from '../units/unit.ts';

export type Expression =
  | { readonly kind: 'number'; readonly value: number; readonly text: string }
  | { readonly kind: 'symbol'; readonly name: string }
  | { readonly kind: 'negative'; readonly of: Expression }
  | {
      readonly kind: 'operation';
      readonly sign: '+' | '-' | '*' | '/' | '^';
      readonly left: Expression;
      readonly right: Expression;
    }
  | { readonly kind: 'call'; readonly name: FunctionName; readonly of: readonly Expression[] };

const FUNCTIONS = {
  sqrt: Math.sqrt,
  sin: Math.sin,
  cos: Math.cos,
  tan: Math.tan,
  asin: Math.asin,
  acos: Math.acos,
  atan: Math.atan,
  atan2: Math.atan2,
  abs: Math.abs,
  exp: Math.exp,
  ln: Math.log,
  min: Math.min,
  max: Math.max,
} as const;
type FunctionName = keyof typeof FUNCTIONS;

const CONSTANTS: Readonly<Record<string, number>> = { π: Math.PI, pi: Math.PI };

const TOKEN = /\s*(?:(\d+\.?\d*(?:e[-+]?\d+)?|\.\d+)|([\p{L}_][\p{L}\p{N}_′]*)|([-+*/^(),]))/uy;

interface Token {
  readonly kind: 'number' | 'word' | 'mark' | 'end';
  readonly text: string;
}

function tokens(text: string): Token[] {
  const found: Token[] = [];
  TOKEN.lastIndex = 0;
  let at = 0;
  while (text.slice(at).trim() !== '') {
    TOKEN.lastIndex = at;
    const match = TOKEN.exec(text);
    if (match === null) throw new Error(`cannot read the formula "${text}" at character ${at + 1}`);
    at = TOKEN.lastIndex;
    if (match[1] !== undefined) found.push({ kind: 'number', text: match[1] });
    else if (match[2] !== undefined) found.push({ kind: 'word', text: match[2] });
    else found.push({ kind: 'mark', text: match[3]! });
  }
  found.push({ kind: 'end', text: '' });
  return found;
}

/** How tightly a sign binds, and whether it leans to the right (`a^b^c` is a^(b^c)). */
const SIGNS: Readonly<Record<string, readonly [binding: number, right: boolean]>> = {
  '+': [1, false],
  '-': [1, false],
  '*': [2, false],
  '/': [2, false],
  '^': [4, true],
};

/** Reads an expression. A formula is written by us, so a faulty one is our own mistake and throws. */
export function parse(text: string): Expression {
  const list = tokens(text);
  let at = 0;
  const fail = (): never => {
    throw new Error(`cannot read the formula "${text}" near "${list[at]!.text}"`);
  };
  const take = (mark: string): void => {
    if (list[at]!.text !== mark) fail();
    at += 1;
  };
  const primary = (): Expression => {
    const token = list[at]!;
    at += 1;
    if (token.kind === 'number') return { kind: 'number', value: Number(token.text), text: token.text };
    if (token.kind === 'word') {
      if (list[at]!.text !== '(') return { kind: 'symbol', name: token.text };
      if (!(token.text in FUNCTIONS)) throw new Error(`no such function: ${token.text} in "${text}"`);
      at += 1;
      const of = [expression(0)];
      while (list[at]!.text === ',') {
        at += 1;
        of.push(expression(0));
      }
      take(')');
      return { kind: 'call', name: token.text as FunctionName, of };
    }
    if (token.text === '(') {
      const inner = expression(0);
      take(')');
      return inner;
    }
    // a leading minus binds looser than a power (−a² is −(a²)) and tighter than a product
    if (token.text === '-') return { kind: 'negative', of: expression(3) };
    at -= 1;
    return fail();
  };
  const expression = (least: number): Expression => {
    let left = primary();
    for (;;) {
      const sign = SIGNS[list[at]!.kind === 'mark' ? list[at]!.text : ''];
      if (sign === undefined || sign[0] < least) return left;
      const text = list[at]!.text as '+';
      at += 1;
      left = { kind: 'operation', sign: text, left, right: expression(sign[1] ? sign[0] : sign[0] + 1) };
    }
  };
  const whole = expression(0);
  if (list[at]!.kind !== 'end') fail();
  return whole;
}

/** Names that must be given a value. */
export function symbolsIn(tree: Expression): ReadonlySet<string> {
  const names = new Set<string>();
  const walk = (node: Expression): void => {
    if (node.kind === 'symbol' && !(node.name in CONSTANTS)) names.add(node.name);
    if (node.kind === 'negative') walk(node.of);
    if (node.kind === 'operation') [node.left, node.right].forEach(walk);
    if (node.kind === 'call') node.of.forEach(walk);
  };
  walk(tree);
  return names;
}

export type Terms = Readonly<Record<string, number>>;

/** Turns the tree into a function of its terms, once, so that working it out again is cheap. */
export function compile(tree: Expression): (terms: Terms) => number {
  switch (tree.kind) {
    case 'number': {
      const { value } = tree;
      return () => value;
    }
    case 'symbol': {
      const { name } = tree;
      const constant = CONSTANTS[name];
      return constant !== undefined ? () => constant : (terms) => terms[name]!;
    }
    case 'negative': {
      const of = compile(tree.of);
      return (terms) => -of(terms);
    }
    case 'operation':
      return operate(tree.sign, compile(tree.left), compile(tree.right), tree.right);
    case 'call': {
      const work = FUNCTIONS[tree.name] as (...values: number[]) => number;
      const of = tree.of.map(compile);
      const [first, second] = of;
      if (of.length === 1) return (terms) => work(first!(terms));
      if (of.length === 2) return (terms) => work(first!(terms), second!(terms));
      return (terms) => work(...of.map((each) => each(terms)));
    }
  }
}

type Worked = (terms: Terms) => number;

function operate(sign: '+' | '-' | '*' | '/' | '^', a: Worked, b: Worked, right: Expression): Worked {
  switch (sign) {
    case '+':
      return (terms) => a(terms) + b(terms);
    case '-':
      return (terms) => a(terms) - b(terms);
    case '*':
      return (terms) => a(terms) * b(terms);
    case '/':
      return (terms) => a(terms) / b(terms);
    case '^':
      if (right.kind === 'number' && right.value === 2) {
        return (terms) => {
          const base = a(terms);
          return base * base;
        };
      }
      return (terms) => a(terms) ** b(terms);
  }
}

const PURE: Dimension = [0, 0, 0, 0];

/** Dimension of the expression; throws a sentence when metres are added to newtons or an exponent has a unit. */
export function dimensionOf(tree: Expression, of: Readonly<Record<string, Dimension>>): Dimension {
  switch (tree.kind) {
    case 'number':
      return PURE;
    case 'symbol': {
      if (tree.name in CONSTANTS) return PURE;
      const dimension = of[tree.name];
      if (dimension === undefined) throw new Error(`${tree.name} has no unit`);
      return dimension;
    }
    case 'negative':
      return dimensionOf(tree.of, of);
    case 'operation': {
      const left = dimensionOf(tree.left, of);
      if (tree.sign === '^') return powered(left, tree.right, of);
      const right = dimensionOf(tree.right, of);
      if (tree.sign === '*') return combine(left, right, 1);
      if (tree.sign === '/') return combine(left, right, -1);
      return agree(left, right, tree.sign);
    }
    case 'call': {
      const parts = tree.of.map((each) => dimensionOf(each, of));
      if (tree.name === 'sqrt') return parts[0]!.map((power) => power / 2) as unknown as Dimension;
      if (tree.name === 'abs') return parts[0]!;
      const common = parts.reduce((a, b) => agree(a, b, tree.name));
      if (tree.name === 'min' || tree.name === 'max') return common;
      if (tree.name === 'atan2') return PURE;
      return agree(common, PURE, tree.name);
    }
  }
}

function powered(base: Dimension, exponent: Expression, of: Readonly<Record<string, Dimension>>): Dimension {
  agree(dimensionOf(exponent, of), PURE, 'an exponent');
  if (symbolsIn(exponent).size > 0) return agree(base, PURE, 'a power with a symbol above');
  return combine(PURE, base, compile(exponent)({}));
}

function agree(a: Dimension, b: Dimension, where: string): Dimension {
  if (!sameDimension(a, b)) throw new Error(`units do not agree at ${where}: [${a}] and [${b}]`);
  return a;
}

const escaped = (text: string): string => text.replaceAll('&', '&amp;').replaceAll('<', '&lt;');

const SPELT: Readonly<Record<string, string>> = { pi: 'π' };

/** One symbol as MathML: what follows the underscore is set below. */
export function symbolMathML(name: string): string {
  const [base, ...below] = name.split('_');
  const letter = `<mi>${escaped(SPELT[base!] ?? base!)}</mi>`;
  return below.length === 0 ? letter : `<msub>${letter}<mtext>${escaped(below.join(' '))}</mtext></msub>`;
}

/** The expression as presentation MathML (without the outer `math` element), fractions as fractions. */
export function toMathML(tree: Expression, put: (name: string) => string = symbolMathML): string {
  const show = (node: Expression): string => {
    switch (node.kind) {
      case 'number':
        return `<mn>${node.text}</mn>`;
      case 'symbol':
        return node.name in CONSTANTS ? symbolMathML(node.name) : put(node.name);
      case 'negative':
        return `<mrow><mo>−</mo>${held(node.of, 3)}</mrow>`;
      case 'operation':
        if (node.sign === '/')
          return `<mfrac><mrow>${show(node.left)}</mrow><mrow>${show(node.right)}</mrow></mfrac>`;
        if (node.sign === '^')
          return `<msup><mrow>${held(node.left, 5)}</mrow><mrow>${show(node.right)}</mrow></msup>`;
        if (node.sign === '*') return `<mrow>${held(node.left, 2)}<mo>·</mo>${held(node.right, 2)}</mrow>`;
        return `<mrow>${show(node.left)}<mo>${node.sign === '-' ? '−' : '+'}</mo>${held(node.right, node.sign === '-' ? 2 : 1)}</mrow>`;
      case 'call':
        if (node.name === 'sqrt') return `<msqrt>${show(node.of[0]!)}</msqrt>`;
        return `<mrow><mi>${node.name}</mi><mo>(</mo>${node.of.map(show).join('<mo>,</mo>')}<mo>)</mo></mrow>`;
    }
  };
  const held = (node: Expression, least: number): string =>
    binding(node) < least ? `<mrow><mo>(</mo>${show(node)}<mo>)</mo></mrow>` : show(node);
  return show(tree);
}

function binding(node: Expression): number {
  if (node.kind === 'negative') return 1;
  if (node.kind !== 'operation') return 9;
  // a fraction bar already holds its parts together
  return node.sign === '/' ? 4 : SIGNS[node.sign]![0];
}
