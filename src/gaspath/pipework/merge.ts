/**
 * The merge of a collector: tubes of a ring that lean together and are cut where they meet their neighbours.
 *
 * In    number of tubes, their size, how far they lean, where the outlet is cut square
 * Out   height of the cut round a tube, back along it from where its axis meets that of the collector
 * Place 0 is outermost, π innermost, seen from the collector's axis
 *
 * Each tube is cut by the two planes through the collector's axis half-way to its neighbours, and all by one square cut
 * where the outlet begins.
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import type { WrapCurve } from './wrap-curves.ts';

const PLACE = { unit: 'rad', means: 'place round the tube, 0 outermost' } as const;
const LEAN = { unit: 'rad', means: 'lean of the tube to the axis of the collector' } as const;
const RADIUS = { unit: 'm', means: 'half the outer diameter' } as const;

const toNeighbour = formula({
  symbol: 'h_n',
  means: 'back along the tube from the meeting of the axes to the plane half-way to the neighbour',
  is: 'r*(abs(sin(ψ))/tan(π/n) - cos(ψ)*cos(γ))/sin(γ)',
  unit: 'm',
  terms: { r: RADIUS, n: { unit: '1', means: 'tubes in the ring' }, γ: LEAN, ψ: PLACE },
  source: 'PW-17',
  holds: 'for tubes that lean; parallel ones (γ = 0) touch along a line and are not cut across',
});

const toOutlet = formula({
  symbol: 'h_o',
  means: 'back along the tube from the meeting of the axes to the square cut of the outlet',
  is: '(r*cos(ψ)*sin(γ) + q)/cos(γ)',
  unit: 'm',
  terms: {
    r: RADIUS,
    γ: LEAN,
    q: { unit: 'm', means: 'square cut before the meeting of the axes, along the axis of the collector' },
    ψ: PLACE,
  },
  source: 'PW-18',
});

export interface Merge {
  readonly tubes: number;
  readonly od: Metre;
  /** Each tube to the collector's axis, above 0, below 90°. */
  readonly lean: Radian;
  /** The outlet's square cut, before (+) or behind (−) the point where the axes meet; none where it is left long. */
  readonly outlet?: Metre;
}

export function mergeFault(of: Merge): string | undefined {
  if (!(Number.isInteger(of.tubes) && of.tubes >= 2)) return 'a merge wants two tubes or more';
  if (!(of.lean > 0 && of.lean < Math.PI / 2))
    return 'tubes that do not lean have no merge cut: they lie side by side and the collector is a cone behind them';
  return undefined;
}

/** Height of the cut, measured back from the point where the axes meet.  [PW-17, PW-18] */
export const mergeCut =
  (of: Merge): WrapCurve =>
  (place, working?: Working) => {
    const terms = { r: of.od / 2, γ: of.lean, ψ: place };
    const beside = toNeighbour({ ...terms, n: of.tubes }, working);
    // an outlet left long cuts nothing
    return of.outlet === undefined ? beside : Math.max(beside, toOutlet({ ...terms, q: of.outlet }, working));
  };

const besideEachOther = formula({
  symbol: 'ρ',
  means: 'radius of the ring on which parallel tubes touch their neighbours',
  is: 'D/(2*sin(π/n))',
  unit: 'm',
  terms: { D: { unit: 'm', means: 'outer diameter' }, n: { unit: '1', means: 'tubes in the ring' } },
  source: 'PW-19',
});

/** Least ring of parallel tubes.  [PW-19] */
export const touchingRing = (od: Metre, tubes: number, working?: Working): Metre =>
  besideEachOther({ D: od, n: tubes }, working);

const meeting = formula({
  symbol: 'q_r',
  means: 'from the plane of the ring of inlets to the point where the axes meet',
  is: 'ρ/tan(γ)',
  unit: 'm',
  terms: { ρ: { unit: 'm', means: 'radius of the ring of inlets' }, γ: LEAN },
  source: 'PW-20',
});

/** How far behind the inlets the axes meet.  [PW-20] */
export const meetingPoint = (ringRadius: Metre, lean: Radian, working?: Working): Metre =>
  meeting({ ρ: ringRadius, γ: lean }, working);
