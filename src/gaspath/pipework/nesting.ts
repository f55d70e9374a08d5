/**
 * Nesting: which pieces are cut from which lengths of stock, so that the least stock is used.
 *
 * In    sizes of the pieces; kinds of stock with size and cost; what one cut takes away. Sizes are metres of straight
 *       tube or radians of bends of one radius: the sums are the same
 * Out   stock opened, with its pieces in the order in which they come off, and whether less is proved impossible
 *
 * Best fit decreasing gives a first answer; branch and bound then looks for a cheaper one, and when it has looked
 * everywhere the answer is the cheapest there is. Many like pieces can outlast its patience: it then says so.
 */
export interface StockKind {
  readonly name: string;
  readonly size: number;
  /** What one costs: money where every kind has a price, else its size. */
  readonly cost: number;
}

export interface NestedStock<P> {
  readonly kind: StockKind;
  readonly pieces: readonly P[];
  /** What is left behind the last cut. */
  readonly left: number;
}

export interface Nest<P> {
  readonly stock: readonly NestedStock<P>[];
  readonly cost: number;
  /** True where no cheaper nest exists; false where the search was given up before it could tell. */
  readonly proved: boolean;
}

export interface Sized {
  readonly size: number;
}

/** Nodes of the search: some tenths of a second. */
const PATIENCE = 400_000;

/** Relative; sizes that are equal but for rounding fit. */
const ROUNDING = 1e-9;

interface Open {
  readonly kind: StockKind;
  /** Room for pieces that each bring their own cut; the last piece of a length needs none. [PW-9] */
  room: number;
  readonly items: number[];
}

/**
 * Least cost of stock for the pieces.  [PW-9]
 *
 * @throws Error where a piece is larger than every kind of stock: the caller has parted those
 */
export function nest<P extends Sized>(
  pieces: readonly P[],
  kinds: readonly StockKind[],
  cut: number,
): Nest<P> {
  const order = pieces.map((_, i) => i).sort((a, b) => pieces[b]!.size - pieces[a]!.size || a - b);
  const sizes = order.map((i) => pieces[i]!.size + cut);
  const largest = Math.max(0, ...kinds.map((each) => each.size));
  const slack = ROUNDING * largest;
  if (sizes.some((size) => size > largest + cut + slack)) throw new Error('a piece is larger than any stock');

  const first = bestFit(sizes, kinds, cut, slack);
  const found = search(sizes, kinds, cut, slack, first);
  const stock = found.open.map(({ kind, items, room }) => ({
    kind,
    pieces: items.map((k) => pieces[order[k]!]!),
    left: Math.max(0, room - cut),
  }));
  return { stock, cost: costOf(found.open), proved: found.proved };
}

const costOf = (open: readonly Open[]): number => open.reduce((sum, { kind }) => sum + kind.cost, 0);

/** Each piece, largest first, where it leaves least; a new stock is the cheapest for its size that takes it. */
function bestFit(sizes: readonly number[], kinds: readonly StockKind[], cut: number, slack: number): Open[] {
  const open: Open[] = [];
  sizes.forEach((size, k) => {
    let best: Open | undefined;
    for (const each of open) {
      if (each.room + slack >= size && (best === undefined || each.room < best.room)) best = each;
    }
    if (best === undefined) {
      const kind = kinds
        .filter((each) => each.size + cut + slack >= size)
        .reduce((a, b) => (b.cost / b.size < a.cost / a.size ? b : a));
      best = { kind, room: kind.size + cut, items: [] };
      open.push(best);
    }
    best.room -= size;
    best.items.push(k);
  });
  return open.map((each) => smallest(each, kinds, cut, slack));
}

/** The same pieces from the cheapest stock that takes them all. */
function smallest(open: Open, kinds: readonly StockKind[], cut: number, slack: number): Open {
  const used = open.kind.size + cut - open.room;
  const kind = kinds
    .filter((each) => each.size + cut + slack >= used)
    .reduce((a, b) => (b.cost < a.cost || (b.cost === a.cost && b.size < a.size) ? b : a), open.kind);
  return { kind, room: kind.size + cut - used, items: open.items };
}

function search(
  sizes: readonly number[],
  kinds: readonly StockKind[],
  cut: number,
  slack: number,
  first: readonly Open[],
): { readonly open: readonly Open[]; readonly proved: boolean } {
  let best = first;
  let least = costOf(first);
  let nodes = 0;
  // cheapest way to hold one unit of size, and the cheapest stock at all: no nest costs less than both say
  const perSize = Math.min(...kinds.map((each) => each.cost / (each.size + cut)));
  const cheapest = Math.min(...kinds.map((each) => each.cost));
  const alike = new Set(kinds.map((each) => each.cost / cheapest)).size === 1;
  const remaining = suffixSums(sizes);
  const open: Open[] = [];
  const worthwhile = 1e-9 * Math.max(least, Number.MIN_VALUE);

  const bound = (k: number, cost: number): number => {
    // room in what is open may hold the rest; what it cannot hold is paid for
    const room = open.reduce((sum, each) => sum + Math.max(0, each.room), 0);
    const missing = remaining[k]! - room - slack * (open.length + 1);
    if (missing <= 0) return cost;
    const more = missing * perSize;
    return cost + (alike ? Math.ceil(more / cheapest - 1e-9) * cheapest : Math.max(more, cheapest));
  };

  const place = (k: number, cost: number): void => {
    nodes += 1;
    if (nodes > PATIENCE || bound(k, cost) >= least - worthwhile) return;
    if (k === sizes.length) {
      best = open.map((each) => ({ ...each, items: [...each.items] }));
      least = cost;
      return;
    }
    const size = sizes[k]!;
    const tried = new Set<string>();
    for (const each of [...open].sort((a, b) => a.room - b.room)) {
      const key = each.room.toPrecision(10);
      // two with the same room, or a piece like the last put beyond where that one went: the same nest again
      if (each.room + slack < size || tried.has(key)) continue;
      tried.add(key);
      each.room -= size;
      each.items.push(k);
      place(k + 1, cost);
      each.items.pop();
      each.room += size;
    }
    for (const kind of kinds) {
      if (kind.size + cut + slack < size) continue;
      open.push({ kind, room: kind.size + cut - size, items: [k] });
      place(k + 1, cost + kind.cost);
      open.pop();
    }
  };
  if (sizes.length > 0) place(0, 0);
  return { open: best, proved: nodes <= PATIENCE };
}

function suffixSums(sizes: readonly number[]): number[] {
  const sums = new Array<number>(sizes.length + 1).fill(0);
  for (let k = sizes.length - 1; k >= 0; k -= 1) sums[k] = sums[k + 1]! + sizes[k]!;
  return sums;
}
