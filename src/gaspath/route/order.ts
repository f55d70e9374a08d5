/**
 * Which pipe may go to which inlet.
 *
 * Free: any inlet, each used once. By rotation: round the collector the inlets follow the firing order, one way
 * or the other, from any inlet. Where so many inlets may be passed over, the next best orders are legal too: those in
 * which a pulse enters not beside the one before it but farther on.  [RT-22]
 */
import type { RouteProblem } from './problem.ts';

/**
 * Inlets that are passed over in one round of the firing order, all told: none in rotation. Where the collector has
 * inlets without a pipe, the way from the last pulse back to the first does not count.  [RT-22]
 */
function passedOver(
  firing: readonly number[],
  inletOf: (port: number) => number,
  n: number,
  sense: 'either' | '+' | '-',
): number {
  const last = firing.length === n ? n : firing.length - 1;
  let sum = 0;
  for (let k = 0; k < last; k++) {
    const ahead = (inletOf(firing[(k + 1) % firing.length]!) - inletOf(firing[k]!) + n) % n;
    const steps = sense === '+' ? ahead : sense === '-' ? n - ahead : Math.min(ahead, n - ahead);
    sum += Math.max(0, steps - 1);
  }
  return sum;
}

/** Inlets that are passed over with the inlets of all pipes so; none where any order will do.  [RT-22] */
export const overOf = ({ order, collector }: RouteProblem, inlets: readonly number[]): number =>
  order.mode === 'free' ? 0 : passedOver(order.firing, (port) => inlets[port]!, collector.n, order.sense);

/** All legal lists of inlet by pipe, those in rotation first. Free orders of seven pipes are already 5040: more than that are not listed. */
export function legalOrders(problem: RouteProblem): readonly (readonly number[])[] {
  const { order, collector, ports } = problem;
  const n = collector.n;
  if (order.mode === 'rotation' && (order.passed ?? 0) > 0) {
    const { passed = 0 } = order;
    return anyOrder(n, ports.length)
      .map((inlets) => ({ inlets, over: overOf(problem, inlets) }))
      .filter(({ over }) => over <= passed)
      .sort((a, b) => a.over - b.over)
      .map(({ inlets }) => inlets);
  }
  if (order.mode === 'rotation') {
    const senses = order.sense === 'either' ? [1, -1] : order.sense === '+' ? [1] : [-1];
    const made: number[][] = [];
    for (const sense of senses)
      for (let offset = 0; offset < n; offset++) {
        const inlets = ports.map(() => -1);
        order.firing.forEach((port, step) => {
          inlets[port] = (((offset + sense * step) % n) + n) % n;
        });
        if (!made.some((each) => each.every((inlet, i) => inlet === inlets[i]))) made.push(inlets);
      }
    return made;
  }
  return anyOrder(n, ports.length);
}

function anyOrder(n: number, ports: number): readonly (readonly number[])[] {
  const made: number[][] = [];
  const used = new Array<boolean>(n).fill(false);
  const inlets: number[] = [];
  const next = (): void => {
    if (made.length >= MOST_ORDERS) return;
    if (inlets.length === ports) {
      made.push([...inlets]);
      return;
    }
    for (let k = 0; k < n; k++) {
      if (used[k]) continue;
      used[k] = true;
      inlets.push(k);
      next();
      inlets.pop();
      used[k] = false;
    }
  };
  next();
  return made;
}

const MOST_ORDERS = 5040;

/** Least distance between the straights p1 q1 and p2 q2, numbers in one array each. */
function between(
  p1: ArrayLike<number>,
  q1: ArrayLike<number>,
  p2: ArrayLike<number>,
  q2: ArrayLike<number>,
): number {
  let least = Infinity;
  // a coarse walk does: this only ranks
  for (let s = 0; s <= 8; s++)
    for (let t = 0; t <= 8; t++) {
      let d = 0;
      for (let c = 0; c < 3; c++) {
        const x = p1[c]! + (s / 8) * (q1[c]! - p1[c]!) - p2[c]! - (t / 8) * (q2[c]! - p2[c]!);
        d += x * x;
      }
      least = Math.min(least, d);
    }
  return Math.sqrt(least);
}

/**
 * How badly the straight lines from ports to inlets get in each other's way, for each order: the sum of what
 * each pair lacks to `need`, mm.
 */
export function crossings(
  orders: readonly (readonly number[])[],
  ports: readonly ArrayLike<number>[],
  inlets: readonly ArrayLike<number>[],
  need: number,
): Float64Array {
  const n = ports.length;
  const m = inlets.length;
  const lack = new Float64Array(n * m * n * m).fill(-1);
  const scores = new Float64Array(orders.length);
  orders.forEach((order, at) => {
    let sum = 0;
    for (let i = 0; i < n; i++)
      for (let j = i + 1; j < n; j++) {
        const key = ((i * m + order[i]!) * n + j) * m + order[j]!;
        if (lack[key]! < 0)
          lack[key] = Math.max(
            0,
            need - between(ports[i]!, inlets[order[i]!]!, ports[j]!, inlets[order[j]!]!),
          );
        sum += lack[key]!;
      }
    scores[at] = sum;
  });
  return scores;
}
