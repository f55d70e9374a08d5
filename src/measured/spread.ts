/**
 * How sure a figure is: the uncertainty budget, by moving each input by ± one standard uncertainty.
 *
 * In    the readings as numbers, a list of inputs (each moves one or several of the numbers by one standard
 *       uncertainty), and a function that works out all figures from the numbers
 * Out   the standard uncertainty of every figure and each input's share of its variance, worst first
 * Holds while figures are near enough linear over ± one standard uncertainty, and inputs are independent of one
 *       another; what several readings have in common (an instrument's scale, a survey) is an input of its own
 *
 * [GUM] JCGM 100:2008, 5.1.3 note 2 and 5.1.4: contributions by finite differences Z_i = ½(f(x+u) − f(x−u))
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

/**
 * Spread of every figure at once.
 *
 * @param figures  works out all figures from the numbers into `out`; may throw, or leave NaN, where a figure
 *                 does not exist
 * @throws Error when the figures do not exist at the readings themselves
 */
export function spreadOf(
  values: Float64Array,
  inputs: readonly SpreadInput[],
  figures: (values: Float64Array, out: Float64Array) => void,
  count: number,
): readonly Spread[] {
  const middle = new Float64Array(count);
  const up = new Float64Array(count);
  const down = new Float64Array(count);
  figures(values, middle);
  const moved = Float64Array.from(values);
  const contributions = inputs.map(() => new Float64Array(count));
  inputs.forEach((input, row) => {
    const at = (sign: number, out: Float64Array): void => {
      for (const [index, step] of input.moves) moved[index] = moved[index]! + sign * step;
      attempt(figures, moved, out);
      for (const [index] of input.moves) moved[index] = values[index]!;
    };
    at(1, up);
    at(-1, down);
    const into = contributions[row]!;
    for (let k = 0; k < count; k += 1) into[k] = difference(middle[k]!, up[k]!, down[k]!);
  });
  return Array.from({ length: count }, (_, k) => budget(inputs, contributions, k));
}

function attempt(
  figures: (values: Float64Array, out: Float64Array) => void,
  values: Float64Array,
  out: Float64Array,
): void {
  try {
    figures(values, out);
  } catch {
    // this input's move left the reachable range: told as unknown, never taken as nothing
    out.fill(Number.NaN);
  }
}

/** Half the two-sided difference, or the one-sided one where the figure exists on one side only. */
function difference(middle: number, up: number, down: number): number {
  if (Number.isFinite(up) && Number.isFinite(down)) return (up - down) / 2;
  if (Number.isFinite(up)) return up - middle;
  return middle - down;
}

function budget(inputs: readonly SpreadInput[], contributions: readonly Float64Array[], k: number): Spread {
  let variance = 0;
  const unknown: string[] = [];
  const shares: Share[] = [];
  inputs.forEach((input, row) => {
    const contribution = contributions[row]![k]!;
    if (!Number.isFinite(contribution)) {
      unknown.push(input.path);
      return;
    }
    if (contribution === 0) return;
    variance += contribution * contribution;
    shares.push({ label: input.label, path: input.path, contribution, share: 0 });
  });
  shares.sort((a, b) => Math.abs(b.contribution) - Math.abs(a.contribution));
  return {
    u: Math.sqrt(variance),
    shares: shares.map((each) => ({ ...each, share: each.contribution ** 2 / variance })),
    unknown,
  };
}
