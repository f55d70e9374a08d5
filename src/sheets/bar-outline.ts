/**
 * The outline of a torsion bar with its shank interrupted: half of it, as distances along the axis and radii.
 *
 * In    the shape of the bar, a scale, the length there is on the paper
 * Out   both ends from head to break, millimetres on paper; the rocker end first
 */
import type { Metre } from '../units/quantity.ts';
import type { BarShape, OrderedHead } from './bar-order.ts';

/** Half the outline: distance along the axis and radius, millimetres on paper. */
export interface Profile {
  readonly x: number;
  readonly r: number;
}

/** Gap of the interrupted shank on the paper. */
export const BREAK = 5;

/** A head whose length or diameter is not known yet is drawn in this proportion to the bar. */
const UNKNOWN = { diameter: 1.5, length: 1 } as const;

export const headDiameter = (head: OrderedHead, bar: Metre): Metre =>
  head.headDiameter ?? UNKNOWN.diameter * bar;
export const headLength = (head: OrderedHead, bar: Metre): Metre =>
  head.length ?? UNKNOWN.length * headDiameter(head, bar);

export interface Lengths {
  readonly first: Metre;
  readonly second: Metre;
  readonly rockerHead: Metre;
  readonly anchorHead: Metre;
}

export interface Parts {
  readonly left: readonly Profile[];
  readonly right: readonly Profile[];
  readonly whole: number;
}

/** Both ends to scale from head to break. */
export function outline(order: BarShape, lengths: Lengths, k: number, room: number): Parts {
  const end = (head: OrderedHead, run: Metre, headRun: Metre): Profile[] => {
    const H = headDiameter(head, order.diameter) / 2;
    const shank = order.diameter / 2;
    const rise = riseOf(head, order.diameter, run).map(({ x, r }) => ({ x: headRun + run - x, r }));
    return [{ x: 0, r: H }, { x: headRun, r: H }, ...rise.reverse(), { x: headRun + run, r: shank }].map(
      ({ x, r }) => ({ x: x * k, r: r * k }),
    );
  };
  const left = end(order.rockerEnd, lengths.first, lengths.rockerHead);
  const right = end(order.anchorEnd, lengths.second, lengths.anchorHead);
  const [leftEnd, rightEnd] = [left.at(-1)!, right.at(-1)!];
  const whole = room;
  return {
    left: [...left, { x: (whole - BREAK - leftEnd.x - rightEnd.x) / 2 + leftEnd.x, r: leftEnd.r }],
    right: [...right, { x: (whole - BREAK - leftEnd.x - rightEnd.x) / 2 + rightEnd.x, r: rightEnd.r }].map(
      ({ x, r }) => ({
        x: whole - x,
        r,
      }),
    ),
    whole,
  };
}

/** From shank to head: distance from the end of the parallel length, and radius. */
function riseOf(head: OrderedHead, diameter: Metre, run: Metre): Profile[] {
  const shank = diameter / 2;
  if (head.form !== 'radius' || head.size === undefined || run === 0) return [];
  const R = head.size;
  const most = Math.asin(Math.min(1, run / R));
  return Array.from({ length: 13 }, (_, i) => {
    const φ = (most * i) / 12;
    return { x: R * Math.sin(φ), r: shank + R * (1 - Math.cos(φ)) };
  });
}

/** Radius of the bar this far from the end of the parallel length. */
export function radiusAt(head: OrderedHead, order: BarShape, along: Metre): Metre {
  const shank = order.diameter / 2;
  if (head.size === undefined || head.form === 'square') return shank;
  if (head.form === 'radius') return shank + head.size - Math.sqrt(Math.max(0, head.size ** 2 - along ** 2));
  return shank + ((headDiameter(head, order.diameter) / 2 - shank) * along) / head.size;
}
