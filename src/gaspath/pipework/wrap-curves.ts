/**
 * Cuts through a tube as heights round its skin: square, mitre, saddle, through a stock bend.
 *
 * In    sizes of the tubes and how they meet
 * Out   height of the cut along the tube for a place round it
 * Place 0 to 2π round the tube; what 0 is stands with each. Heights grow towards the cut end
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { alongSkin } from './stock.ts';

/** Height of the cut at a place round the tube. */
export type WrapCurve = (place: Radian, working?: Working) => Metre;

export const squareCut: WrapCurve = () => 0;

const PLACE = { unit: 'rad', means: 'place round the tube' } as const;

const mitreHeight = formula({
  symbol: 'h',
  means: 'height of a mitre above its lowest place',
  is: 'r*tan(a)*(1 - cos(ψ))',
  unit: 'm',
  terms: {
    r: { unit: 'm', means: 'half the outer diameter' },
    a: { unit: 'rad', means: 'mitre, from a square cut' },
    ψ: PLACE,
  },
  source: 'PW-15',
});

/** A mitre `mitre` from square; 0 is its lowest place.  [PW-15] */
export const mitreCut =
  (of: { readonly od: Metre; readonly mitre: Radian }): WrapCurve =>
  (place, working) =>
    mitreHeight({ r: of.od / 2, a: of.mitre, ψ: place }, working);

const saddleHeight = formula({
  symbol: 'h',
  means: 'from where the axes pass each other back along the branch to the skin of the main tube',
  is: 'sqrt(R^2 - (r*sin(ψ) + e)^2)/sin(β) - r*cos(ψ)/tan(β)',
  unit: 'm',
  terms: {
    R: { unit: 'm', means: 'half the outer diameter of the main tube' },
    r: { unit: 'm', means: 'radius of the branch at which the cut lies' },
    e: { unit: 'm', means: 'how far the axes pass each other' },
    β: { unit: 'rad', means: 'angle between the axes' },
    ψ: PLACE,
  },
  source: 'PW-16',
  holds: 'while the whole branch meets the main tube: r + |e| not above R',
});

export interface Saddle {
  readonly main: { readonly od: Metre };
  readonly branch: { readonly od: Metre; readonly wall: Metre };
  /** Between the axes, above 0, below 180°. */
  readonly angle: Radian;
  /** How far the axes pass each other; 0 where they meet. */
  readonly offset: Metre;
  /**
   * Which edge of the branch sits on the main tube. The bore of a thick branch is the one that touches at the sides;
   * the paper is laid round the outside all the same.
   */
  readonly sits: 'outside' | 'bore';
}

/** Why this is no saddle, or undefined. */
export function saddleFault(of: Saddle): string | undefined {
  if (!(of.angle > 0 && of.angle < Math.PI))
    return 'the angle between the tubes must be above 0 and below 180°';
  const r = of.branch.od / 2;
  return r + Math.abs(of.offset) > (of.main.od / 2) * (1 + 1e-12)
    ? 'the branch stands over the edge of the main tube: it must be no larger, offset counted in'
    : undefined;
}

/**
 * A branch on a main tube. Place 0 is on the side of the wide angle, and the cut's material is at greater heights:
 * the height is measured from the point of the branch's axis nearest to the main axis.  [PW-16]
 */
export const saddleCut = (of: Saddle): WrapCurve => {
  const r = of.branch.od / 2 - (of.sits === 'bore' ? of.branch.wall : 0);
  return (place, working) =>
    saddleHeight({ R: of.main.od / 2, r, e: of.offset, β: of.angle, ψ: place }, working);
};

/** A cut through the centre of a stock bend, `angle` from its end; 0 is its outside.  [PW-7] */
export const bendCut =
  (of: { readonly radius: Metre; readonly od: Metre; readonly angle: Radian }): WrapCurve =>
  (place, working) =>
    alongSkin(of, place, working);
