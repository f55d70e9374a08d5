/**
 * A set of pipes as pieces: which lie in which stock bend, which are straight, what is welded to what.
 *
 * In    pipes, the rack
 * Out   pieces of every pipe in order, with the stock that each comes from; stock used; what the rack cannot give
 *
 * A bend larger than any stock bend of its radius is made of equal parts. The first and last piece of a stock bend
 * may keep the straight leg there: where that leg is as long as the straight that follows it in the pipe, the leg is
 * that straight, and a weld is saved.
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { type Nest, nest, type StockKind } from './nesting.ts';
import { NO_LENGTH, type Pipe, type Tube, tubeOf } from './pipe.ts';
import { lapOf, reducersOf } from './stepped.ts';
import { alongSkin, isOfSize, kerfAsAngle, type Rack, type StockBend, type StockTube } from './stock.ts';

export interface BendPiece {
  readonly kind: 'bend';
  readonly pipe: number;
  readonly element: number;
  /** Which part of the bend this is, of how many. */
  readonly part: number;
  readonly parts: number;
  readonly tube: Tube;
  readonly radius: Metre;
  readonly angle: Radian;
  /** The angle again: what nesting goes by. */
  readonly size: number;
}

export interface StraightPiece {
  readonly kind: 'straight';
  readonly pipe: number;
  readonly element: number;
  readonly tube: Tube;
  /** As it is cut, lap counted in. */
  readonly length: Metre;
  /** Of it, over the tube before or within it. */
  readonly lap: Metre;
  readonly size: number;
}

/** Bought as it is, from one tube to the other. */
export interface ReducerPiece {
  readonly kind: 'reducer';
  readonly pipe: number;
  readonly element: number;
  readonly length: Metre;
  readonly tube: Tube;
  readonly to: Tube;
}

export type Piece = BendPiece | StraightPiece | ReducerPiece;

/** Where a piece of bend comes off its stock. */
export interface FromBend {
  readonly stock: StockBend;
  /** Which one of that kind, from 1. */
  readonly number: number;
  /** Angles within the stock bend, from the end at which cutting begins; the cuts between pieces are left out. */
  readonly from: Radian;
  readonly to: Radian;
}

export interface FromTube {
  readonly stock: StockTube;
  readonly number: number;
  readonly from: Metre;
  readonly to: Metre;
}

export interface Pieces {
  /** Of each pipe in order along the flow; a straight that is a leg of the piece beside it is not among them. */
  readonly byPipe: readonly (readonly Piece[])[];
  readonly bendOf: ReadonlyMap<BendPiece, FromBend>;
  readonly tubeOf: ReadonlyMap<StraightPiece, FromTube>;
  /** Straights that are legs, by the piece that keeps them. */
  readonly legs: ReadonlyMap<BendPiece, readonly StraightPiece[]>;
  /** The bends of each radius and size of tube nest for themselves. */
  readonly bendNests: readonly {
    readonly radius: Metre;
    readonly od: Metre;
    readonly nest: Nest<BendPiece>;
  }[];
  /** And the straights of each size. */
  readonly tubeNests: readonly { readonly od: Metre; readonly nest: Nest<StraightPiece> }[];
  /** What the rack cannot give, as sentences. */
  readonly missing: readonly string[];
  /** Pieces too short to hold and cut, as sentences. */
  readonly tooShort: readonly string[];
}

/** Radii that are the same rack number. */
const SAME_RADIUS: Metre = 1e-6;
/** Parts of a bend that are equal but for rounding need no further part. */
const SAME_ANGLE: Radian = 1e-9;

/** @param fillers of each pipe, the element that is cut to measure: it is never a leg */
export function piecesOf(
  pipes: readonly Pipe[],
  rack: Rack,
  fillers: readonly (number | undefined)[] = [],
): Pieces {
  const missing: string[] = [];
  const all = pipes.map((pipe, k) => pipe.elements.flatMap((_, e) => piecesOfElement(pipe, k, e, rack)));
  const bends = all.flat().filter((each): each is BendPiece => each.kind === 'bend');
  const kinds = kindsOf(bends, (each) => [Math.round(each.radius / SAME_RADIUS), each.tube.od]);
  const stepped = pipes.some(({ steps = [] }) => steps.length > 0);

  const trimmed = new Set(all.flatMap((of, k) => of.filter((each) => each.element === fillers[k])));
  const bendOf = new Map<BendPiece, FromBend>();
  const legs = new Map<BendPiece, StraightPiece[]>();
  const bendNests = kinds.flatMap(({ key: [step, od], of: ofRadius }) => {
    const radius = step! * SAME_RADIUS;
    const stock = stockOf(rack, radius, od!, pipes[ofRadius[0]!.pipe]!.tube.od);
    if (stock.length === 0) {
      missing.push(
        `no stock bend of radius ${mm(radius)}${stepped ? ` in tube of ${mm(od!)}` : ''}: ${ofRadius.length} pieces want it`,
      );
      return [];
    }
    const priced = costed(
      stock.map((each) => ({ ...each, size: each.angle })),
      radius,
    );
    const kerf = kerfAsAngle(rack.kerf, radius);
    const found = nest(ofRadius, priced, kerf);
    const { ordered, atFarEnd } = endsForLegs(found, stock, all, trimmed, rack.kerf, legs);
    numbered(
      ordered,
      (kind, number, from, to, piece) => {
        const back = atFarEnd.has(piece) ? kind.size - to : 0;
        const of = stock.find((each) => each.name === kind.name)!;
        bendOf.set(piece, { stock: of, number, from: from + back, to: to + back });
      },
      kerf,
    );
    return [{ radius, od: od!, nest: ordered }];
  });

  const kept = new Set<Piece>([...legs.values()].flat());
  const byPipe = all.map((pieces) => pieces.filter((each) => !kept.has(each)));
  const tubeOf = new Map<StraightPiece, FromTube>();
  const tubeNests = nestTubes(byPipe, pipes, rack, stepped, missing);
  for (const { nest: tubeNest } of tubeNests) {
    numbered(
      tubeNest,
      (kind, number, from, to, piece) => {
        tubeOf.set(piece, { stock: rack.tubes.find((each) => each.name === kind.name)!, number, from, to });
      },
      rack.kerf,
    );
  }
  const tooShort = byPipe.flat().flatMap((piece) => shortness(piece, pipes[piece.pipe]!, rack));
  return { byPipe, bendOf, tubeOf, legs, bendNests, tubeNests, missing, tooShort };
}

const stockOf = (rack: Rack, radius: Metre, od: Metre, atFlange: Metre): readonly StockBend[] =>
  rack.bends.filter((each) => Math.abs(each.radius - radius) < SAME_RADIUS && isOfSize(each, od, atFlange));

const mm = (length: Metre): string => `${(length * 1e3).toFixed(1)} mm`;

/** Pieces that nest together, least first by what tells them apart. */
function kindsOf<P>(
  pieces: readonly P[],
  keyOf: (piece: P) => readonly number[],
): { readonly key: readonly number[]; readonly of: readonly P[] }[] {
  const found = new Map<string, { readonly key: readonly number[]; readonly of: P[] }>();
  for (const piece of pieces) {
    const key = keyOf(piece);
    const kind = found.get(key.join(' '));
    if (kind === undefined) found.set(key.join(' '), { key, of: [piece] });
    else kind.of.push(piece);
  }
  return [...found.values()].sort((a, b) => a.key[0]! - b.key[0]! || (a.key[1] ?? 0) - (b.key[1] ?? 0));
}

function piecesOfElement(pipe: Pipe, k: number, e: number, rack: Rack): Piece[] {
  const element = pipe.elements[e]!;
  const tube = tubeOf(pipe, e);
  if (element.kind === 'straight') {
    const reducer = reducersOf(pipe).find((each) => each.element === e);
    if (reducer !== undefined) {
      const { before, behind } = reducer;
      return [{ kind: 'reducer', pipe: k, element: e, length: element.length, tube: before, to: behind }];
    }
    const lap = lapOf(pipe, e);
    const length = element.length + lap;
    return length < NO_LENGTH
      ? []
      : [{ kind: 'straight', pipe: k, element: e, tube, length, lap, size: length }];
  }
  if (element.angle * element.radius < NO_LENGTH) return [];
  const most = Math.max(0, ...stockOf(rack, element.radius, tube.od, pipe.tube.od).map((each) => each.angle));
  const parts = most === 0 ? 1 : Math.max(1, Math.ceil(element.angle / most - SAME_ANGLE));
  const angle = element.angle / parts;
  return Array.from({ length: parts }, (_, i) => ({
    kind: 'bend',
    pipe: k,
    element: e,
    part: i + 1,
    parts,
    tube,
    radius: element.radius,
    angle,
    size: angle,
  }));
}

interface Priced {
  readonly name: string;
  readonly size: number;
  readonly price?: number;
}

/** Money where all kinds have a price; else the tube in them, so that the least tube is used. */
const costed = (stock: readonly Priced[], perSize: number): StockKind[] => {
  const priced = stock.every((each) => each.price !== undefined && each.price > 0);
  return stock.map(({ name, size, price }) => ({ name, size, cost: priced ? price! : size * perSize }));
};

function nestTubes(
  byPipe: readonly (readonly Piece[])[],
  pipes: readonly Pipe[],
  rack: Rack,
  stepped: boolean,
  missing: string[],
): { readonly od: Metre; readonly nest: Nest<StraightPiece> }[] {
  const straights = byPipe.flat().filter((each): each is StraightPiece => each.kind === 'straight');
  return kindsOf(straights, ({ tube }) => [tube.od]).flatMap(({ key: [od], of }) => {
    const stock = rack.tubes.filter((each) => isOfSize(each, od!, pipes[of[0]!.pipe]!.tube.od));
    const longest = Math.max(0, ...stock.map((each) => each.length));
    const fitting = of.filter((each) => each.length <= longest);
    for (const each of of) {
      if (each.length > longest)
        missing.push(`no straight tube${stepped ? ` of ${mm(od!)}` : ''} as long as ${mm(each.length)}`);
    }
    if (stock.length === 0 || fitting.length === 0) return [];
    const priced = costed(
      stock.map((each) => ({ ...each, size: each.length })),
      1,
    );
    return [{ od: od!, nest: nest(fitting, priced, rack.kerf) }];
  });
}

function numbered<P extends BendPiece | StraightPiece>(
  found: Nest<P>,
  put: (kind: StockKind, number: number, from: number, to: number, piece: P) => void,
  cut: number,
): void {
  const count = new Map<string, number>();
  for (const { kind, pieces } of found.stock) {
    const number = (count.get(kind.name) ?? 0) + 1;
    count.set(kind.name, number);
    let at = 0;
    for (const piece of pieces) {
      put(kind, number, at, at + piece.size, piece);
      at += piece.size + cut;
    }
  }
}

interface Offer {
  readonly stock: number;
  readonly piece: BendPiece;
  readonly straight: StraightPiece;
}

/**
 * Puts those pieces at the ends of each stock bend whose neighbour in the pipe can be the leg there; longest legs
 * first, the filler never, since it is cut to measure.
 */
function endsForLegs(
  found: Nest<BendPiece>,
  stock: readonly StockBend[],
  all: readonly (readonly Piece[])[],
  notThese: ReadonlySet<Piece>,
  kerf: Metre,
  legs: Map<BendPiece, StraightPiece[]>,
): { readonly ordered: Nest<BendPiece>; readonly atFarEnd: ReadonlySet<BendPiece> } {
  const offers: Offer[] = found.stock.flatMap(({ pieces }, k) =>
    pieces.flatMap((piece) =>
      beside(piece, all[piece.pipe]!)
        .filter((straight) => !notThese.has(straight))
        .map((straight) => ({ stock: k, piece, straight })),
    ),
  );
  offers.sort((a, b) => b.straight.length - a.straight.length);
  const taken = new Set<StraightPiece>([...legs.values()].flat());
  const ends = found.stock.map((): (BendPiece | undefined)[] => [undefined, undefined]);
  for (const { stock: k, piece, straight } of offers) {
    if (taken.has(straight)) continue;
    const { kind } = found.stock[k]!;
    const long = stock.find((each) => each.name === kind.name)!.legs;
    const place = [0, 1].find((i) => {
      const other = ends[k]![1 - i];
      // both legs on one piece only where it is the whole of its stock bend
      const suits = other !== piece || piece.angle > kind.size - SAME_ANGLE;
      // trimmed to its length the leg loses a cut, unless it is that long as it comes
      const enough = long[i]! >= straight.length + kerf || Math.abs(long[i]! - straight.length) < NO_LENGTH;
      return ends[k]![i] === undefined && suits && enough;
    });
    if (place === undefined) continue;
    ends[k]![place] = piece;
    taken.add(straight);
    legs.set(piece, [...(legs.get(piece) ?? []), straight]);
  }
  const ordered = {
    ...found,
    stock: found.stock.map((each, k) => {
      const [first, last] = ends[k]!;
      const middle = each.pieces.filter((piece) => piece !== first && piece !== last);
      const whole = each.pieces.length === 1;
      return {
        ...each,
        pieces: whole ? each.pieces : [...(first ? [first] : []), ...middle, ...(last ? [last] : [])],
      };
    }),
  };
  // a piece that is its whole stock begins at the first end, whichever leg it keeps
  const far = ends.flatMap(([first, last]) => (last !== undefined && last !== first ? [last] : []));
  return { ordered, atFarEnd: new Set(far) };
}

/** Straights that the piece touches in its pipe. */
function beside(piece: BendPiece, pieces: readonly Piece[]): StraightPiece[] {
  const at = pieces.indexOf(piece);
  return [pieces[at - 1], pieces[at + 1]].filter(
    (each): each is StraightPiece => each?.kind === 'straight' && each.tube === piece.tube,
  );
}

function shortness(piece: Piece, pipe: Pipe, rack: Rack): string[] {
  const least = `${(rack.leastPiece * 1e3).toFixed(1)} mm is the least that can be held`;
  // it is bought as it is
  if (piece.kind === 'reducer') return [];
  if (piece.kind === 'straight') {
    return piece.length >= rack.leastPiece
      ? []
      : [`pipe ${pipe.name}: a straight of ${(piece.length * 1e3).toFixed(1)} mm; ${least}`];
  }
  const inside = alongSkin({ ...piece, od: piece.tube.od }, Math.PI);
  return inside >= rack.leastPiece
    ? []
    : [
        `pipe ${pipe.name}: a piece of bend of ${((piece.angle * 180) / Math.PI).toFixed(1)}° is ` +
          `${(inside * 1e3).toFixed(1)} mm at its inside; ${least}`,
      ];
}
