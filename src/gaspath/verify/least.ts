/** The least value of a function that cannot fall faster than its argument moves: nothing between samples is missed. */

export interface Least {
  readonly value: number;
  readonly s: number;
}

/** Intervals shorter than this are taken as seen, mm. */
const FINEST = 0.004;

/**
 * The least value below `need` on an interval, or undefined where there is none.
 *
 * `slope` bounds how fast the function changes. An interval of width h with f at its middle cannot reach below
 * f - slope h / 2; what could is halved. How deep a breach goes is told to about half a millimetre of place.
 */
export function leastBelow(
  f: (s: number) => number,
  from: number,
  to: number,
  need: number,
  slope = 1,
): Least | undefined {
  if (!(to >= from)) return undefined;
  let worst: Least | undefined;
  const todo: [number, number][] = [[from, to]];
  // the ends count by themselves
  for (const s of [from, to]) {
    const value = f(s);
    if (value < need && value < (worst?.value ?? Infinity)) worst = { value, s };
  }
  while (todo.length > 0) {
    const [a, b] = todo.pop()!;
    const s = (a + b) / 2;
    const value = f(s);
    if (value < need && value < (worst?.value ?? Infinity)) worst = { value, s };
    const lowest = value - (slope * (b - a)) / 2;
    if (lowest >= need || b - a < FINEST) continue;
    if (worst !== undefined && (lowest >= worst.value || b - a < 0.5)) continue;
    todo.push([a, s], [s, b]);
  }
  return worst;
}
