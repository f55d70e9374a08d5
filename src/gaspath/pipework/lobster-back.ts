/**
 * A lobster-back: a bend of straight pieces, cut and welded at mitres.
 *
 * In    radius and angle of the bend it stands for, number of joints
 * Out   mitre of each cut, lengths of the pieces, and the path, which is longer than the arc
 * Not   bends whose ends are no joint: each end here runs on straight into the tube beside it
 */
import type { Metre, Radian } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

const mitreOf = formula({
  symbol: 'a',
  means: 'mitre of each cut, from square',
  is: 'θ/(2*n)',
  unit: 'rad',
  terms: {
    θ: { unit: 'rad', means: 'angle of the whole bend' },
    n: { unit: '1', means: 'joints' },
  },
  source: 'PW-12',
});

const pieceOf = formula({
  symbol: 'p',
  means: 'length of a middle piece at this distance from the centre of the bend',
  is: '2*ρ*tan(a)',
  unit: 'm',
  terms: {
    ρ: { unit: 'm', means: 'distance from the centre of the bend' },
    a: { unit: 'rad', means: 'mitre' },
  },
  source: 'PW-13',
});

const pathOf = formula({
  symbol: 'l_n',
  means: 'length of the path through the pieces',
  is: '2*n*R*tan(a)',
  unit: 'm',
  terms: {
    n: { unit: '1', means: 'joints' },
    R: { unit: 'm', means: 'radius of the arc that the middles of the pieces touch' },
    a: { unit: 'rad', means: 'mitre' },
  },
  source: 'PW-14',
  holds: 'for the line of middles; it is always longer than the arc that it touches',
});

export interface LobsterBack {
  readonly mitre: Radian;
  /** Middle pieces: one fewer than joints. */
  readonly middlePieces: number;
  /** Of a middle piece, at the three lines. An end piece is half of one. */
  readonly piece: { readonly inside: Metre; readonly centre: Metre; readonly outside: Metre };
  readonly path: Metre;
  /** Over the true arc. */
  readonly longer: Metre;
}

/** @param of what the bend is; `joints` at least 1 and so many that a mitre stays below 45°  [PW-12 to PW-14] */
export function lobsterBack(
  of: { readonly radius: Metre; readonly angle: Radian; readonly od: Metre; readonly joints: number },
  working?: Working,
): LobsterBack {
  const { radius: R, angle: θ, od, joints: n } = of;
  const a = mitreOf({ θ, n }, working);
  const at = (ρ: Metre): Metre => pieceOf({ ρ, a }, working);
  const path = pathOf({ n, R, a }, working);
  return {
    mitre: a,
    middlePieces: n - 1,
    piece: { inside: at(R - od / 2), centre: at(R), outside: at(R + od / 2) },
    path,
    longer: path - R * θ,
  };
}
