/**
 * Which cylinders fire when, from the firing order alone: that the engine fires evenly is taken.
 *
 * A collector is fed evenly where its k cylinders fire 720/k degrees of crank apart: pairs 360, threes 240 (common
 * practice, no source).
 */

/** Degrees of crank between the firings of the cylinders, one after the other, round the 720 of a four-stroke. */
export function firingGaps(firing: readonly number[], cylinders: readonly number[]): readonly number[] {
  const each = 720 / firing.length;
  const at = cylinders.map((cylinder) => firing.indexOf(cylinder)).sort((a, b) => a - b);
  return at.map((place, k) => ((at[k + 1] ?? at[0]! + firing.length) - place) * each);
}

export const firesEvenly = (firing: readonly number[], cylinders: readonly number[]): boolean =>
  firingGaps(firing, cylinders).every((gap) => Math.abs(gap - 720 / cylinders.length) < 1e-9);

/** The cylinders in the order in which they fire. */
export const inFiringOrder = (firing: readonly number[], cylinders: readonly number[]): readonly number[] =>
  firing.filter((each) => cylinders.includes(each));

/**
 * All ways to put cylinders into groups of these sizes; groups of one size are not told apart.
 *
 * @example
 * // six into two threes: ten ways; four into two pairs: three
 * splits([1, 2, 3, 4, 5, 6], [3, 3])
 */
export function splits(
  cylinders: readonly number[],
  sizes: readonly number[],
): readonly (readonly (readonly number[])[])[] {
  const [first, ...rest] = cylinders;
  if (first === undefined) return [[]];
  // the first cylinder is in one of the groups; of groups of one size in the first
  return [...new Set(sizes)].flatMap((size) => {
    const at = sizes.indexOf(size);
    const others = sizes.filter((_, k) => k !== at);
    return chosen(rest, size - 1).flatMap((more) =>
      splits(
        rest.filter((each) => !more.includes(each)),
        others,
      ).map((groups) => [[first, ...more], ...groups]),
    );
  });
}

function chosen(from: readonly number[], count: number): readonly (readonly number[])[] {
  if (count === 0) return [[]];
  return from.flatMap((each, k) => chosen(from.slice(k + 1), count - 1).map((more) => [each, ...more]));
}
