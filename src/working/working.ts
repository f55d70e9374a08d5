/**
 * The record of how an answer was reached.
 *
 * A formula is declared once (`formula`), and that one declaration computes, is shown, and is checked again:
 * what the reader sees is what was worked out. A computation that is not one formula (a solved position, a
 * root) leaves a `solved` step that says by which method and how well it closed.
 */
import { ownUnit } from '../units/unit.ts';
import { compile, dimensionOf, type Expression, parse, symbolsIn } from './expression.ts';

/** Where a number that was put into a formula came from. */
export type Origin =
  | { readonly kind: 'reading'; readonly path: string }
  | { readonly kind: 'step'; readonly symbol: string }
  | { readonly kind: 'table'; readonly name: string }
  | { readonly kind: 'asked'; readonly what: string }
  | { readonly kind: 'constant'; readonly what: string };

export interface Term {
  readonly symbol: string;
  readonly means: string;
  /** SI. */
  readonly value: number;
  readonly unit: string;
  readonly from?: Origin;
}

export interface FormulaStep {
  readonly kind: 'formula';
  readonly symbol: string;
  readonly means: string;
  readonly formula: string;
  readonly value: number;
  readonly unit: string;
  readonly terms: readonly Term[];
  /** Where the formula stands in print or in docs/theory: `S1 ch. 4`, `LP-41`. */
  readonly source: string;
  /** Where it stops holding, in a sentence. */
  readonly holds?: string;
}

export interface SolvedStep {
  readonly kind: 'solved';
  readonly symbol: string;
  readonly means: string;
  readonly method: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  /** How far the conditions are from closing, in SI, and in words what that is. */
  readonly residual?: { readonly value: number; readonly unit: string; readonly of: string };
  readonly terms: readonly Term[];
}

export type Step = FormulaStep | SolvedStep;

export class Working {
  readonly steps: Step[] = [];

  add(step: Step): void {
    this.steps.push(step);
  }

  /** The last step that gave this symbol exactly this value, if any: the term then comes "from above". */
  stepOf(symbol: string, value: number): Step | undefined {
    return this.steps.findLast((step) => step.symbol === symbol && Object.is(step.value, value));
  }
}

export interface FormulaDeclaration<T extends string> {
  readonly symbol: string;
  readonly means: string;
  /** The formula in one line, in the book's symbols. */
  readonly is: string;
  readonly unit: string;
  readonly terms: Readonly<Record<T, { readonly unit: string; readonly means: string }>>;
  readonly source: string;
  readonly holds?: string;
}

export interface Formula<T extends string> {
  /** Works the formula out; with a working it also writes the step down, terms first. */
  (
    terms: Readonly<Record<T, number>>,
    working?: Working,
    from?: Readonly<Partial<Record<T, Origin>>>,
  ): number;
  readonly declaration: FormulaDeclaration<T>;
}

/**
 * Declares a formula. Symbols, terms and units are checked when it is declared, so a formula that adds metres
 * to newtons, or forgets a term, never gets as far as a figure.
 */
export function formula<T extends string>(declaration: FormulaDeclaration<T>): Formula<T> {
  const tree = parse(declaration.is);
  checkDeclaration(declaration, tree);
  const evaluate = compile(tree);
  const names = Object.keys(declaration.terms) as T[];
  const work = (
    terms: Readonly<Record<T, number>>,
    working?: Working,
    from?: Readonly<Partial<Record<T, Origin>>>,
  ): number => {
    const value = evaluate(terms);
    working?.add({
      kind: 'formula',
      symbol: declaration.symbol,
      means: declaration.means,
      formula: declaration.is,
      value,
      unit: declaration.unit,
      source: declaration.source,
      ...(declaration.holds === undefined ? {} : { holds: declaration.holds }),
      terms: names.map((name) => {
        const step = working.stepOf(name, terms[name]);
        const origin =
          from?.[name] ?? (step === undefined ? undefined : ({ kind: 'step', symbol: name } as const));
        const { unit, means } = declaration.terms[name];
        return {
          symbol: name,
          means,
          value: terms[name],
          unit,
          ...(origin === undefined ? {} : { from: origin }),
        };
      }),
    });
    return value;
  };
  return Object.assign(work, { declaration });
}

function checkDeclaration(declaration: FormulaDeclaration<string>, tree: Expression): void {
  const used = symbolsIn(tree);
  for (const name of used) {
    if (!(name in declaration.terms)) throw new Error(`${declaration.symbol}: term ${name} is not declared`);
  }
  for (const name of Object.keys(declaration.terms)) {
    if (!used.has(name)) throw new Error(`${declaration.symbol}: term ${name} is declared and not used`);
  }
  const dimensions = Object.fromEntries(
    Object.entries(declaration.terms).map(([name, term]) => [name, ownUnit(term.unit).dimension]),
  );
  const found = dimensionOf(tree, dimensions);
  const wanted = ownUnit(declaration.unit).dimension;
  if (found.some((power, index) => Math.abs(power - wanted[index]!) > 1e-9)) {
    throw new Error(`${declaration.symbol} = ${declaration.is} has not the unit ${declaration.unit}`);
  }
}

export interface Fault {
  readonly step: number;
  readonly symbol: string;
  readonly what: string;
}

/**
 * Works every formula step out again from what is shown (text, terms, units) and lists what does not stand.
 *
 * 1e-12 relative: the same double-precision operations in the same order; only a power of two may be rounded
 * differently. A term said to come from a step must be that step's value.
 */
export function recheck(steps: readonly Step[]): Fault[] {
  const faults: Fault[] = [];
  steps.forEach((step, index) => {
    const fault = (what: string): number => faults.push({ step: index, symbol: step.symbol, what });
    for (const term of step.terms) {
      if (term.from?.kind !== 'step') continue;
      const { symbol } = term.from;
      const given = steps
        .slice(0, index)
        .some((each) => each.symbol === symbol && Object.is(each.value, term.value));
      if (!given) fault(`${term.symbol} is said to come from ${symbol}, which has another value`);
    }
    if (step.kind !== 'formula') return;
    try {
      const tree = parse(step.formula);
      const declaration = { ...step, is: step.formula, terms: termTable(step.terms) };
      checkDeclaration(declaration, tree);
      const again = compile(tree)(Object.fromEntries(step.terms.map((term) => [term.symbol, term.value])));
      const close = Math.abs(again - step.value) <= 1e-12 * Math.max(Math.abs(again), Math.abs(step.value));
      if (!close && !(Number.isNaN(again) && Number.isNaN(step.value)))
        fault(`shown ${step.value}, works out as ${again}`);
    } catch (reason) {
      fault((reason as Error).message);
    }
  });
  return faults;
}

const termTable = (terms: readonly Term[]): Record<string, { unit: string; means: string }> =>
  Object.fromEntries(terms.map((term) => [term.symbol, { unit: term.unit, means: term.means }]));
