/**
 * Stacks of real shims: which thicknesses can be made of the pieces at hand, and of how few moves.
 *
 * In    shims fitted, shims in the box
 * Out   every change of a stack that can be made, with the pieces that go in and come out
 */
import type { Metre } from '../units/quantity.ts';

export interface Shims {
  readonly thickness: Metre;
  readonly pieces: number;
}

/** One way to change a stack. */
export interface StackChange {
  readonly change: Metre;
  /** Pieces by thickness: positive go in, negative come out. */
  readonly pieces: ReadonlyMap<Metre, number>;
  /** Pieces handled. */
  readonly handled: number;
}

/** Metres: thicknesses are told apart to a micrometre. */
const APART: Metre = 1e-6;
const key = (x: Metre): number => Math.round(x / APART);

/** More pieces than this are not handled at one stack. */
const MOST_HANDLED = 6;

/**
 * Every change that a stack of `fitted` shims can take from the box, within `most`; of two ways to one thickness the
 * one that handles fewer pieces.
 */
export function stackChanges(
  fitted: readonly Shims[],
  box: readonly Shims[],
  most: Metre,
  handled = MOST_HANDLED,
): readonly StackChange[] {
  const now = fitted.reduce((sum, { thickness, pieces }) => sum + thickness * pieces, 0);
  const moves = [
    ...fitted.map(({ thickness, pieces }) => ({ thickness, sign: -1, pieces })),
    ...box.map(({ thickness, pieces }) => ({ thickness, sign: 1, pieces })),
  ];
  return reached(moves, handled).filter(
    ({ change }) => now + change <= most + APART && now + change >= -APART,
  );
}

/** Every change made by shifting pieces of one stack to another: positive, from the first to the second. */
export function shiftChanges(
  first: readonly Shims[],
  second: readonly Shims[],
  handled = MOST_HANDLED,
): readonly StackChange[] {
  const moves = [
    ...first.map(({ thickness, pieces }) => ({ thickness, sign: 1, pieces })),
    ...second.map(({ thickness, pieces }) => ({ thickness, sign: -1, pieces })),
  ];
  return reached(moves, handled);
}

/** Shims with the pieces of a change put in, or with −1 taken out. */
export function added(to: readonly Shims[], { pieces }: StackChange, sign: 1 | -1): readonly Shims[] {
  const left = new Map<number, Shims>();
  const put = (thickness: Metre, n: number): void => {
    const before = left.get(key(thickness))?.pieces ?? 0;
    left.set(key(thickness), { thickness, pieces: before + n });
  };
  for (const each of to) put(each.thickness, each.pieces);
  for (const [thickness, n] of pieces) put(thickness, sign * n);
  return [...left.values()].filter((each) => each.pieces > 0);
}

function reached(
  moves: readonly { readonly thickness: Metre; readonly sign: number; readonly pieces: number }[],
  handled: number,
): readonly StackChange[] {
  let known = new Map<number, StackChange>([[0, { change: 0, pieces: new Map(), handled: 0 }]]);
  for (const { thickness, sign, pieces } of moves) {
    const next = new Map(known);
    for (const from of known.values()) {
      for (let n = 1; n <= pieces && from.handled + n <= handled; n += 1) {
        const change = from.change + sign * n * thickness;
        const before = next.get(key(change));
        if (before !== undefined && before.handled <= from.handled + n) continue;
        const of = new Map(from.pieces);
        of.set(thickness, (of.get(thickness) ?? 0) + sign * n);
        next.set(key(change), { change, pieces: of, handled: from.handled + n });
      }
    }
    known = next;
  }
  return [...known.values()].sort((a, b) => a.change - b.change);
}

/** Whether the box holds all that these changes take from it, what they give back taken in. */
export function boxHolds(box: readonly Shims[], changes: readonly StackChange[]): boolean {
  const left = new Map<number, number>();
  for (const { thickness, pieces } of box) left.set(key(thickness), (left.get(key(thickness)) ?? 0) + pieces);
  for (const { pieces } of changes)
    for (const [thickness, n] of pieces) left.set(key(thickness), (left.get(key(thickness)) ?? 0) - n);
  return [...left.values()].every((n) => n >= 0);
}
