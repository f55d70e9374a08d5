/**
 * What lies on the shop's rack and what it costs.
 *
 * In    stock bends, straight tube, saw, prices
 * Out   the types, what a cut takes from a bend, the developed size of a piece of bend
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

/** A bend as bought: a 180° or 90° or 45° of one radius with straight legs at its ends. */
export interface StockBend {
  readonly name: string;
  readonly radius: Metre;
  readonly angle: Radian;
  /** Outer diameter; left out, that of the tube at the flange. */
  readonly od?: Metre;
  /** Straight tube before and behind the arc; 0 where it ends with the arc. */
  readonly legs: readonly [Metre, Metre];
  /** Of one, in the shop's money. */
  readonly price?: number;
}

export interface StockTube {
  readonly name: string;
  readonly length: Metre;
  /** Outer diameter; left out, that of the tube at the flange. */
  readonly od?: Metre;
  /** Of one length, in the shop's money. */
  readonly price?: number;
}

export interface Rack {
  readonly bends: readonly StockBend[];
  readonly tubes: readonly StockTube[];
  /** Width of the cut that the saw or disc makes. */
  readonly kerf: Metre;
  /** Shortest straight that can be held and cut, and shortest inside of a piece of bend. */
  readonly leastPiece: Metre;
}

/** Diameters that the trade has for the same: what is stamped on a tube, and what a vernier reads on it. */
const SAME_SIZE: Metre = 0.3e-3;

/** Whether a stock is of the tube that is wanted, in a pipe that has this one at its flange. */
export const isOfSize = (stock: { readonly od?: Metre }, wanted: Metre, atFlange: Metre): boolean =>
  Math.abs((stock.od ?? atFlange) - wanted) <= SAME_SIZE;

const kerfAngle = formula({
  symbol: 'κ',
  means: 'angle of bend that one cut takes, at the centreline',
  is: 'k/R',
  unit: 'rad',
  terms: {
    k: { unit: 'm', means: 'width of the cut' },
    R: { unit: 'm', means: 'radius of the centreline' },
  },
  source: 'PW-8',
  holds: 'for cuts on a line through the centre of the bend',
});

/** k/R.  [PW-8] */
export const kerfAsAngle = (kerf: Metre, radius: Metre, working?: Working): Radian =>
  kerfAngle({ k: kerf, R: radius }, working);

const skinLength = formula({
  symbol: 'h',
  means: 'length of a piece of bend along its skin',
  is: '(R + r*cos(ψ))*θ',
  unit: 'm',
  terms: {
    R: { unit: 'm', means: 'radius of the centreline' },
    r: { unit: 'm', means: 'half the outer diameter' },
    ψ: { unit: 'rad', means: 'place round the tube: 0 outside, 180° inside of the bend' },
    θ: { unit: 'rad', means: 'angle of the piece' },
  },
  source: 'PW-7',
});

/** Length along the skin at a place round the tube, 0 outside and π inside of the bend.  [PW-7] */
export const alongSkin = (
  of: { readonly radius: Metre; readonly od: Metre; readonly angle: Radian },
  place: Radian,
  working?: Working,
): Metre => skinLength({ R: of.radius, r: of.od / 2, ψ: place, θ: of.angle }, working);
