/**
 * How sure a figure is: the uncertainty budget, by moving each reading by ± one standard uncertainty.
 *
 * In    the readings as numbers, how far each is moved, which inputs move which numbers, and a function that works
 *       out all figures from the numbers
 * Out   the standard uncertainty of every figure and each input's share of its variance, worst first
 * Holds while figures are near enough linear over ± one standard uncertainty, and inputs are independent of one
 *       another. What several readings have in common (an instrument's scale, a survey's reading) is one input that
 *       moves them all; its part is the sum of theirs, sign and all, so that what cancels cancels
 *
 * [GUM] JCGM 100:2008, 5.1.3 note 2: contributions by finite differences Z_i = ½(f(x+u) − f(x−u)); 5.1.4 and
 *       5.2.2 note 1: the common influence is taken as an input quantity of its own
 */
export interface SpreadInput {
  readonly label: string;
  /** Path of the reading, or the name of what is shared. */
  readonly path: string;
  /** Which numbers move, and by how much for one standard uncertainty. */
  readonly moves: readonly (readonly [index: number, step: number])[];
}

export interface Share {
  readonly label: string;
  readonly path: string;
  /** This input's contribution to the standard uncertainty, SI of the figure, with its sign. */
  readonly contribution: number;
  /** Part of the variance, 0 to 1. */
  readonly share: number;
}

export interface Spread {
  readonly u: number;
  readonly shares: readonly Share[];
  /** Inputs whose move put the figure out of reach, so that their part is not in `u`. */
  readonly unknown: readonly string[];
}

/** Works out all figures from the numbers; `moved` is the one number that differs from those as read, if any. */
export type FiguresOf = (values: Float64Array, out: Float64Array, moved?: number) => void;

export interface SpreadOptions {
  /** Numbers that the figures lean on; the others are not moved. All of them unless given. */
  readonly leaned?: ReadonlySet<number>;
}

/**
 * Spread of every figure at once: two passes for each number that can move.
 *
 * @param figures  may throw, or leave NaN, where a figure does not exist
 * @throws what `figures` throws at the readings themselves
 */
export function spreadOf(
  values: Float64Array,
  inputs: readonly SpreadInput[],
  figures: FiguresOf,
  count: number,
  options: SpreadOptions = {},
): readonly Spread[] {
  const taking = inputs.filter((input) => input.moves.some(([index]) => options.leaned?.has(index) ?? true));
  const slopes = slopesOf(values, stepsOf(taking, options.leaned), figures, count);
  const parts = taking.map((input) => contributionsOf(input, slopes, count));
  return Array.from({ length: count }, (_, k) => budget(taking, parts, k));
}

/** What one input does to every figure: the sum over the numbers that it moves, sign and all. */
function contributionsOf(
  { moves }: SpreadInput,
  slopes: ReadonlyMap<number, Float64Array>,
  count: number,
): Float64Array {
  const sum = new Float64Array(count);
  for (const [index, step] of moves) {
    const slope = slopes.get(index);
    if (slope === undefined) continue;
    for (let k = 0; k < count; k += 1) sum[k] = sum[k]! + slope[k]! * step;
  }
  return sum;
}

/** How far each number is moved to find its slope: its own standard uncertainty, or the largest that is shared. */
function stepsOf(inputs: readonly SpreadInput[], leaned?: ReadonlySet<number>): ReadonlyMap<number, number> {
  const steps = new Map<number, number>();
  for (const { moves } of inputs) {
    for (const [index, step] of moves) {
      if (step === 0 || leaned?.has(index) === false) continue;
      steps.set(index, Math.max(Math.abs(step), steps.get(index) ?? 0));
    }
  }
  return steps;
}

/** d(figure)/d(number) over ± its step, by number. */
function slopesOf(
  values: Float64Array,
  steps: ReadonlyMap<number, number>,
  figures: FiguresOf,
  count: number,
): ReadonlyMap<number, Float64Array> {
  const middle = new Float64Array(count);
  const up = new Float64Array(count);
  const down = new Float64Array(count);
  figures(values, middle);
  const moved = Float64Array.from(values);
  const slopes = new Map<number, Float64Array>();
  for (const [index, step] of steps) {
    const at = (sign: number, out: Float64Array): void => {
      moved[index] = values[index]! + sign * step;
      attempt(figures, moved, out, index);
      moved[index] = values[index]!;
    };
    at(1, up);
    at(-1, down);
    slopes.set(
      index,
      Float64Array.from(middle, (value, k) => difference(value, up[k]!, down[k]!) / step),
    );
  }
  return slopes;
}

function attempt(figures: FiguresOf, values: Float64Array, out: Float64Array, moved: number): void {
  try {
    figures(values, out, moved);
  } catch {
    // this move left the reachable range: told as unknown, never taken as nothing
    out.fill(Number.NaN);
  }
}

/** Half the two-sided difference, or the one-sided one where the figure exists on one side only. */
function difference(middle: number, up: number, down: number): number {
  if (Number.isFinite(up) && Number.isFinite(down)) return (up - down) / 2;
  if (Number.isFinite(up)) return up - middle;
  return middle - down;
}

/**
 * Contributions below this, in SI, are the rounding of the machine and not a movement of the figure: a millionth
 * of a micrometre, of a micronewton, of a microradian.
 */
const ROUNDING = 1e-12;

function budget(inputs: readonly SpreadInput[], parts: readonly Float64Array[], k: number): Spread {
  return budgetOf(inputs.map(({ label, path }, row) => ({ label, path, contribution: parts[row]![k]! })));
}

/** The budget of independent contributions; those that are not finite are told as unknown. */
function budgetOf(contributions: readonly Omit<Share, 'share'>[]): Spread {
  let variance = 0;
  const unknown: string[] = [];
  const shares: Share[] = [];
  for (const { label, path, contribution } of contributions) {
    if (!Number.isFinite(contribution)) unknown.push(path);
    else if (Math.abs(contribution) > ROUNDING) {
      variance += contribution * contribution;
      shares.push({ label, path, contribution, share: 0 });
    }
  }
  shares.sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
  return {
    u: Math.sqrt(variance),
    shares: shares.map((each) => ({ ...each, share: each.contribution ** 2 / variance })),
    unknown,
  };
}

/**
 * The spread somewhere between two places where it is known: each input's contribution on the straight line between
 * its two, sign and all, so that what changes sign on the way cancels on the way.
 *
 * Holds while contributions are near enough straight between the two. An input that is unknown at either is unknown.
 *
 * @param part  how far from `a` towards `b`, 0 to 1
 */
export function spreadBetween(a: Spread, b: Spread, part: number): Spread {
  const at = new Map<string, Omit<Share, 'share'>>();
  const add = (of: Spread, weight: number): void => {
    for (const { label, path, contribution } of of.shares) {
      const before = at.get(path)?.contribution ?? 0;
      at.set(path, { label, path, contribution: before + weight * contribution });
    }
    for (const path of of.unknown) at.set(path, { label: path, path, contribution: Number.NaN });
  };
  add(a, 1 - part);
  add(b, part);
  return budgetOf([...at.values()]);
}
