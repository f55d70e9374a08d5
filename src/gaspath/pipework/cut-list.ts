/**
 * The cut list: every piece of every pipe in the order in which it is welded on.
 *
 * In    pipes, the rack, the length that all are to have
 * Out   rows with lengths at outside, middle and inside, the stock each piece comes from, clock marks, the filler;
 *       stock to fetch, what it costs, welds
 * Sign  a clock mark is positive clockwise seen with the flow, from flange to collector
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { clockAngle, clockMark } from './bend-table.ts';
import { stations } from './centreline.ts';
import { type Filler, fillerFor } from './filler.ts';
import { type BendPiece, type FromBend, type FromTube, type Piece, type Pieces, piecesOf } from './pieces.ts';
import { type Bend, developedLength, NO_LENGTH, type Pipe, type Tube } from './pipe.ts';
import { alongSkin, type Rack } from './stock.ts';
import { type Ends, type Weld, weldsOf } from './welds.ts';

interface Row {
  readonly pipe: string;
  /** Along the flow, from 1. */
  readonly place: number;
  readonly tube: Tube;
}

export interface BendCut extends Row {
  readonly kind: 'bend';
  readonly radius: Metre;
  readonly angle: Radian;
  readonly outside: Metre;
  readonly middle: Metre;
  readonly inside: Metre;
  readonly from: FromBend | undefined;
  /** Straight legs that stay on, before and behind along the flow. */
  readonly legs: readonly [Metre, Metre];
  /** From the bend plane of the piece of bend before this one; none at the first. */
  readonly clock: Radian | undefined;
  /** The same round the skin. */
  readonly clockArc: Metre | undefined;
}

export interface StraightCut extends Row {
  readonly kind: 'straight';
  /** As drawn, or as the filler wants it; with the lap. */
  readonly length: Metre;
  /** Of it, over the tube before or within it; nought away from a step. */
  readonly lap: Metre;
  readonly from: FromTube | undefined;
  readonly filler: Filler | undefined;
}

/** Bought as it is. */
export interface ReducerCut extends Row {
  readonly kind: 'reducer';
  readonly length: Metre;
  readonly to: Tube;
  readonly from: undefined;
}

export type Cut = BendCut | StraightCut | ReducerCut;

export interface StockUse {
  readonly name: string;
  readonly count: number;
  readonly price: number | undefined;
}

export interface CutList {
  readonly rows: readonly Cut[];
  readonly pieces: Pieces;
  readonly stock: readonly StockUse[];
  readonly welds: readonly Weld[];
  readonly fillers: readonly Filler[];
  /** What cannot be made so, as sentences. */
  readonly problems: readonly string[];
  /** No nest uses less; false where the search was given up. */
  readonly proved: boolean;
  /** Reducers to buy, one a kind. */
  readonly reducers: readonly {
    readonly tube: Tube;
    readonly to: Tube;
    readonly length: Metre;
    readonly count: number;
  }[];
}

/** @param target that all pipes are to have; the pieces nest by the filler as it is cut */
export function cutList(pipes: readonly Pipe[], rack: Rack, target: Metre, ends: Ends): CutList {
  const fillers = pipes.map((pipe) => fillerFor(pipe, target));
  const cut = pipes.map((pipe, k) => withFiller(pipe, fillers[k]));
  const pieces = piecesOf(
    cut,
    rack,
    fillers.map((each) => each?.element),
  );
  const rows = cut.flatMap((pipe, k) => rowsOf(pipe, k, pieces, fillers[k]));
  return {
    rows,
    pieces,
    stock: stockUsed(pieces, rack),
    welds: cut.flatMap((pipe, k) => weldsOf(pipe, k, pieces, ends)),
    problems: [
      ...pipes.flatMap((pipe, k) => fillerProblem(pipe, fillers[k], target)),
      ...pieces.missing,
      ...pieces.tooShort,
    ],
    reducers: reducersUsed(rows),
    fillers: fillers.filter((each): each is Filler => each !== undefined),
    proved:
      pieces.bendNests.every(({ nest }) => nest.proved) && pieces.tubeNests.every(({ nest }) => nest.proved),
  };
}

function reducersUsed(rows: readonly Cut[]): CutList['reducers'] {
  const found = new Map<string, CutList['reducers'][number]>();
  for (const row of rows) {
    if (row.kind !== 'reducer') continue;
    const { tube, to, length } = row;
    const key = [tube.od, tube.wall, to.od, to.wall, length].join(' ');
    found.set(key, { tube, to, length, count: (found.get(key)?.count ?? 0) + 1 });
  }
  return [...found.values()];
}

function fillerProblem(pipe: Pipe, filler: Filler | undefined, target: Metre): string[] {
  const mm = (length: Metre): string => `${(length * 1e3).toFixed(1)} mm`;
  const off = target - developedLength(pipe);
  if (filler === undefined) {
    return Math.abs(off) < NO_LENGTH
      ? []
      : [`pipe ${pipe.name}: it is ${mm(off)} from the common length and has no straight to take that`];
  }
  return filler.cut > 0
    ? []
    : [`pipe ${pipe.name}: its longest straight, ${mm(filler.drawn)}, cannot be ${mm(-off)} shorter`];
}

const withFiller = (pipe: Pipe, filler: Filler | undefined): Pipe =>
  filler === undefined
    ? pipe
    : {
        ...pipe,
        elements: pipe.elements.map((each, k) =>
          k === filler.element && each.kind === 'straight'
            ? { ...each, length: Math.max(0, filler.cut) }
            : each,
        ),
      };

function rowsOf(pipe: Pipe, k: number, pieces: Pieces, filler: Filler | undefined): Cut[] {
  const begins = stations(pipe);
  let last: Bend | undefined;
  return pieces.byPipe[k]!.map((piece, i): Cut => {
    const row = { pipe: pipe.name, place: i + 1, tube: piece.tube };
    if (piece.kind === 'reducer')
      return { ...row, kind: 'reducer', length: piece.length, to: piece.to, from: undefined };
    if (piece.kind === 'straight') {
      return {
        ...row,
        kind: 'straight',
        length: piece.length,
        lap: piece.lap,
        from: pieces.tubeOf.get(piece),
        filler: filler?.element === piece.element ? filler : undefined,
      };
    }
    const bend = pipe.elements[piece.element] as Bend;
    // parts of one bend lie in one plane
    const clock =
      last === undefined ? undefined : last === bend ? 0 : clockAngle(last, bend, begins[piece.element]!.t);
    last = bend;
    const skin = { radius: piece.radius, od: piece.tube.od, angle: piece.angle };
    return {
      ...row,
      kind: 'bend',
      radius: piece.radius,
      angle: piece.angle,
      outside: alongSkin(skin, 0),
      middle: piece.radius * piece.angle,
      inside: alongSkin(skin, Math.PI),
      from: pieces.bendOf.get(piece),
      legs: legsOf(piece, pieces),
      clock,
      clockArc: clock === undefined ? undefined : clockMark(piece.tube.od, clock),
    };
  });
}

function legsOf(piece: BendPiece, pieces: Pieces): readonly [Metre, Metre] {
  const legs = pieces.legs.get(piece) ?? [];
  const sum = (before: boolean): Metre =>
    legs
      .filter((each) => each.element < piece.element === before)
      .reduce((all, each) => all + each.length, 0);
  return [sum(true), sum(false)];
}

function stockUsed(pieces: Pieces, rack: Rack): StockUse[] {
  const opened: readonly { readonly kind: { readonly name: string }; readonly pieces: readonly Piece[] }[] = [
    ...pieces.bendNests.flatMap(({ nest }) => nest.stock),
    ...pieces.tubeNests.flatMap(({ nest }) => nest.stock),
  ];
  return [...rack.bends, ...rack.tubes].flatMap(({ name, price }) => {
    const count = opened.filter(({ kind }) => kind.name === name).length;
    return count === 0 ? [] : [{ name, count, price }];
  });
}
