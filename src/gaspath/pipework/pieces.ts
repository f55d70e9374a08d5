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
import { NO_LENGTH, type Pipe } from './pipe.ts';
import { alongSkin, kerfAsAngle, type Rack, type StockBend, type StockTube } from './stock.ts';

export interface BendPiece {
  readonly kind: 'bend';
  readonly pipe: number;
  readonly element: number;
  /** Which part of the bend this is, of how many. */
  readonly part: number;
  readonly parts: number;
  readonly radius: Metre;
  readonly angle: Radian;
  /** The angle again: what nesting goes by. */
  readonly size: number;
}

export interface StraightPiece {
  readonly kind: 'straight';
  readonly pipe: number;
  readonly element: number;
  readonly length: Metre;
  readonly size: number;
}

export type Piece = BendPiece | StraightPiece;

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
  readonly bendOf: ReadonlyMap<Piece, FromBend>;
  readonly tubeOf: ReadonlyMap<Piece, FromTube>;
  /** Straights that are legs, by the piece that keeps them. */
  readonly legs: ReadonlyMap<BendPiece, readonly StraightPiece[]>;
  /** By radius: the bends of each radius nest for themselves. */
  readonly bendNests: readonly { readonly radius: Metre; readonly nest: Nest<BendPiece> }[];
  readonly tubeNest: Nest<StraightPiece> | undefined;
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
  const radii = [...new Set(bends.map((each) => Math.round(each.radius / SAME_RADIUS)))].sort(
    (a, b) => a - b,
  );

  const trimmed = new Set(all.flatMap((of, k) => of.filter((each) => each.element === fillers[k])));
  const bendOf = new Map<Piece, FromBend>();
  const legs = new Map<BendPiece, StraightPiece[]>();
  const bendNests = radii.flatMap((step) => {
    const radius = step * SAME_RADIUS;
    const stock = stockOf(rack, radius);
    const ofRadius = bends.filter((each) => Math.round(each.radius / SAME_RADIUS) === step);
    if (stock.length === 0) {
      missing.push(
        `no stock bend of radius ${(radius * 1e3).toFixed(1)} mm: ${ofRadius.length} pieces want it`,
      );
      return [];
    }
    const kinds = costed(
      stock.map((each) => ({ ...each, size: each.angle })),
      radius,
    );
    const kerf = kerfAsAngle(rack.kerf, radius);
    const found = nest(ofRadius, kinds, kerf);
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
    return [{ radius, nest: ordered }];
  });

  const kept = new Set([...legs.values()].flat());
  const byPipe = all.map((pieces) => pieces.filter((each) => each.kind === 'bend' || !kept.has(each)));
  const tubeOf = new Map<Piece, FromTube>();
  const tubeNest = nestTubes(byPipe, rack, missing);
  if (tubeNest !== undefined) {
    numbered(
      tubeNest,
      (kind, number, from, to, piece) => {
        tubeOf.set(piece, { stock: rack.tubes.find((each) => each.name === kind.name)!, number, from, to });
      },
      rack.kerf,
    );
  }
  const tooShort = byPipe.flat().flatMap((piece) => shortness(piece, pipes[piece.pipe]!, rack));
  return { byPipe, bendOf, tubeOf, legs, bendNests, tubeNest, missing, tooShort };
}

const stockOf = (rack: Rack, radius: Metre): readonly StockBend[] =>
  rack.bends.filter((each) => Math.abs(each.radius - radius) < SAME_RADIUS);

function piecesOfElement(pipe: Pipe, k: number, e: number, rack: Rack): Piece[] {
  const element = pipe.elements[e]!;
  if (element.kind === 'straight') {
    const { length } = element;
    return length < NO_LENGTH ? [] : [{ kind: 'straight', pipe: k, element: e, length, size: length }];
  }
  if (element.angle * element.radius < NO_LENGTH) return [];
  const most = Math.max(0, ...stockOf(rack, element.radius).map((each) => each.angle));
  const parts = most === 0 ? 1 : Math.max(1, Math.ceil(element.angle / most - SAME_ANGLE));
  const angle = element.angle / parts;
  return Array.from({ length: parts }, (_, i) => ({
    kind: 'bend',
    pipe: k,
    element: e,
    part: i + 1,
    parts,
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
  rack: Rack,
  missing: string[],
): Nest<StraightPiece> | undefined {
  const straights = byPipe.flat().filter((each): each is StraightPiece => each.kind === 'straight');
  const longest = Math.max(0, ...rack.tubes.map((each) => each.length));
  const fitting = straights.filter((each) => each.length <= longest);
  for (const each of straights) {
    if (each.length > longest)
      missing.push(`no straight tube as long as ${(each.length * 1e3).toFixed(1)} mm`);
  }
  if (rack.tubes.length === 0 || fitting.length === 0) return undefined;
  const kinds = costed(
    rack.tubes.map((each) => ({ ...each, size: each.length })),
    1,
  );
  return nest(fitting, kinds, rack.kerf);
}

function numbered<P extends Piece>(
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
    (each): each is StraightPiece => each !== undefined && each.kind === 'straight',
  );
}

function shortness(piece: Piece, pipe: Pipe, rack: Rack): string[] {
  const least = `${(rack.leastPiece * 1e3).toFixed(1)} mm is the least that can be held`;
  if (piece.kind === 'straight') {
    return piece.length >= rack.leastPiece
      ? []
      : [`pipe ${pipe.name}: a straight of ${(piece.length * 1e3).toFixed(1)} mm; ${least}`];
  }
  const inside = alongSkin({ ...piece, od: pipe.tube.od }, Math.PI);
  return inside >= rack.leastPiece
    ? []
    : [
        `pipe ${pipe.name}: a piece of bend of ${((piece.angle * 180) / Math.PI).toFixed(1)}° is ` +
          `${(inside * 1e3).toFixed(1)} mm at its inside; ${least}`,
      ];
}
