/**
 * How each reading of the flat floor comes from what the equilibrium found: declared once, computed and shown.
 *
 * In    loads of the tyres, the floor's plane as the tub sees it, directions of axles and steering axes, points
 * Out   the readings' values, with their steps where a working is wanted
 * Axes  as readings.ts
 *
 * FF-n: docs/theory/flat-floor.md.
 */
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { formula, type Origin, type Working } from '../working/working.ts';

/** What an equilibrium or a linkage gave, as a step of its own. */
export function solved(
  working: Working | undefined,
  of: { readonly symbol: string; readonly means: string; readonly unit: string; readonly value: number },
  how: keyof typeof HOW,
): number {
  if (working !== undefined && working.stepOf(of.symbol, of.value) === undefined)
    working.add({ kind: 'solved', ...of, ...HOW[how], terms: [] });
  return of.value;
}

const HOW = {
  rest: { method: 'equilibrium of the whole car on its pads', source: 'FF-13' },
  links: { method: 'joints by the lengths of the links where the car rests', source: 'FF-4' },
  bar: { method: 'angles by the two drop links where the car rests', source: 'FF-6' },
  stop: { method: 'travel at which the damper is drawn out', source: 'FF-27' },
} as const;

export const step = (symbol: string): Origin => ({ kind: 'step', symbol });

export const weightOf = formula({
  symbol: 'm_p',
  means: 'mass shown by the pad',
  is: 'N/g_0',
  unit: 'kg',
  terms: {
    N: { unit: 'N', means: 'load of the tyre on its pad' },
    g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
  },
  source: 'FF-15',
});

export const G_0 = { value: STANDARD_GRAVITY, from: { kind: 'constant', what: 'standard' } } as const;

export const heightOver = formula({
  symbol: 'h_p',
  means: 'height of the point over the floor',
  is: '(z - a - b*x - c*y)/sqrt(1 + b^2 + c^2)',
  unit: 'm',
  terms: {
    x: { unit: 'm', means: 'point of the tub, forward' },
    y: { unit: 'm', means: 'point of the tub, left' },
    z: { unit: 'm', means: 'point of the tub, up' },
    a: { unit: 'm', means: 'height of the floor at the tub’s origin, as the tub sees it' },
    b: { unit: '1', means: 'rise of the floor forward, as the tub sees it' },
    c: { unit: '1', means: 'rise of the floor to the left, as the tub sees it' },
  },
  source: 'FF-16',
});

export const rakeOf = formula({
  symbol: 'R_k',
  means: 'rake',
  is: 'h_r - h_f',
  unit: 'm',
  terms: {
    h_r: { unit: 'm', means: 'mean height of the points behind' },
    h_f: { unit: 'm', means: 'mean height of the points in front' },
  },
  source: 'FF-16',
});

export const camberOf = formula({
  symbol: 'γ',
  means: 'camber, negative where the top leans inboard',
  is: '-asin(ν)',
  unit: 'rad',
  terms: { ν: { unit: '1', means: 'part of the wheel’s axis, outboard, that goes up from the floor' } },
  source: 'FF-17',
});

export const toeOf = formula({
  symbol: 'δ',
  means: 'toe, positive in',
  is: 'atan2(a_f, a_o)',
  unit: 'rad',
  terms: {
    a_f: { unit: '1', means: 'part of the wheel’s axis that goes forward' },
    a_o: { unit: '1', means: 'part of the wheel’s axis that goes outboard' },
  },
  source: 'FF-17',
});

export const toeAtRimOf = formula({
  symbol: 'δ_D',
  means: 'toe at the rim',
  is: 'D*sin(δ)',
  unit: 'm',
  terms: {
    D: { unit: 'm', means: 'diameter of the rim' },
    δ: { unit: 'rad', means: 'toe' },
  },
  source: 'FF-17',
});

export const casterOf = formula({
  symbol: 'τ',
  means: 'caster, positive where the top leans back',
  is: 'atan2(-k_f, k_n)',
  unit: 'rad',
  terms: {
    k_f: { unit: 'm', means: 'from lower to upper joint, forward' },
    k_n: { unit: 'm', means: 'from lower to upper joint, up from the floor' },
  },
  source: 'FF-17',
});

export const trackOf = formula({
  symbol: 't',
  means: 'track',
  is: 's_l - s_r',
  unit: 'm',
  terms: {
    s_l: { unit: 'm', means: 'contact of the left tyre, along left' },
    s_r: { unit: 'm', means: 'contact of the right tyre, along left' },
  },
  source: 'FF-17',
});

export const wheelbaseOf = formula({
  symbol: 'L',
  means: 'wheelbase on this side',
  is: 'x_1 - x_2',
  unit: 'm',
  terms: {
    x_1: { unit: 'm', means: 'centre of the front wheel, along forward' },
    x_2: { unit: 'm', means: 'centre of the rear wheel, along forward' },
  },
  source: 'FF-17',
});

export const barTorqueOf = formula({
  symbol: 'T_b',
  means: 'torque of the anti-roll bar',
  is: 'k_b*ψ',
  unit: 'N m',
  terms: {
    k_b: { unit: 'N m/rad', means: 'rate of the bar, arms in series' },
    ψ: { unit: 'rad', means: 'twist of the bar' },
  },
  source: 'FF-6',
});

export const droopOf = formula({
  symbol: 'd',
  means: 'droop',
  is: 'z - z_s',
  unit: 'm',
  terms: {
    z: { unit: 'm', means: 'travel of the wheel where the car rests' },
    z_s: { unit: 'm', means: 'travel at which the damper is drawn out' },
  },
  source: 'FF-27',
});
