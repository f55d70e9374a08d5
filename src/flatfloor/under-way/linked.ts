/**
 * Lateral transfer by the handbook with the links of both wheels counted: what a handbook's roll leaves out.
 *
 * In    the handbook's parts of each axle, how much a wheel leans for each metre of bump
 * Out   roll and transfer of each axle, small angles, and what each of the two terms adds to the roll
 *
 * A handbook lets the tyres of an axle bear the couple of its unsprung mass, as those of a beam axle do, and lets the
 * tyres squash under what the springs carry alone. With links the part of that couple that does not pass straight
 * through goes into the tub; and tyres squash under all of their load. UW-n: docs/theory/under-way.md.
 */
import type { Kilogram, Metre, Newton, NewtonMetre, Radian } from '../../units/quantity.ts';
import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

const UNSPRUNG = {
  m_u: { unit: 'kg', means: 'unsprung mass of the axle' },
  a_y: { unit: 'm/s^2', means: 'lateral acceleration' },
  h_u: { unit: 'm', means: 'height of its centre, that of the wheel centres' },
  κ: { unit: 'rad/m', means: 'lean of a wheel for each metre of bump, seen from the front' },
} as const;

export const meanLean = formula({
  symbol: 'κ',
  means: 'lean of a wheel for each metre of bump, seen from the front, mean of both',
  is: '(κ_l + κ_r)/2',
  unit: 'rad/m',
  terms: {
    κ_l: { unit: 'rad/m', means: 'left wheel, top inboard positive' },
    κ_r: { unit: 'rad/m', means: 'right wheel, top inboard positive' },
  },
  source: 'UW-12',
});

export const directTransfer = formula({
  symbol: 'ΔF_b',
  means: 'part of the unsprung transfer that goes straight through, as with a beam axle',
  is: 'm_u*a_y*h_u*κ/2',
  unit: 'N',
  terms: UNSPRUNG,
  source: 'UW-12',
  holds: 'wheels that lean one over the half track for each metre of bump are those of a beam axle',
});

export const coupleIntoTub = formula({
  symbol: 'M_c',
  means: 'part of the unsprung couple that the links hand to the tub',
  is: 'm_u*a_y*h_u - ΔF_b*t',
  unit: 'N m',
  terms: {
    m_u: UNSPRUNG.m_u,
    a_y: UNSPRUNG.a_y,
    h_u: UNSPRUNG.h_u,
    ΔF_b: { unit: 'N', means: 'part that goes straight through' },
    t: { unit: 'm', means: 'track' },
  },
  source: 'UW-12',
});

export const tyreLean = formula({
  symbol: 'ψ',
  means: 'lean on the tyres by what does not pass the springs',
  is: 't*(ΔF_g + ΔF_b)/K_y',
  unit: 'rad',
  terms: {
    t: { unit: 'm', means: 'track' },
    ΔF_g: { unit: 'N', means: 'through the links' },
    ΔF_b: { unit: 'N', means: 'of the unsprung mass, straight through' },
    K_y: { unit: 'N m/rad', means: 'roll rate of the tyres alone' },
  },
  source: 'UW-13',
});

const RATES = {
  K_1: { unit: 'N m/rad', means: 'front roll rate, tyres in series' },
  K_2: { unit: 'N m/rad', means: 'rear roll rate, tyres in series' },
} as const;
const LEANING = {
  m_s: { unit: 'kg', means: 'sprung mass' },
  g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
  h_φ: { unit: 'm', means: 'its centre of gravity above the roll axis' },
} as const;

export const rollOfCouples = formula({
  symbol: 'φ_m',
  means: 'more roll, by the unsprung couples that the links hand to the tub',
  is: '(M_1 + M_2)/(K_1 + K_2 - m_s*g_0*h_φ)',
  unit: 'rad',
  terms: {
    M_1: { unit: 'N m', means: 'couple in front' },
    M_2: { unit: 'N m', means: 'couple behind' },
    ...RATES,
    ...LEANING,
  },
  source: 'UW-13',
});

export const rollOfTyres = formula({
  symbol: 'φ_y',
  means: 'more roll, by tyres under what does not pass the springs',
  is: '(K_1*ψ_1 + K_2*ψ_2)/(K_1 + K_2 - m_s*g_0*h_φ)',
  unit: 'rad',
  terms: {
    ...RATES,
    ψ_1: { unit: 'rad', means: 'lean on the front tyres' },
    ψ_2: { unit: 'rad', means: 'lean on the rear tyres' },
    ...LEANING,
  },
  source: 'UW-13',
});

export const linkedRollOf = formula({
  symbol: 'φ_l',
  means: 'roll angle, small angles, links counted',
  is: 'φ + φ_m + φ_y',
  unit: 'rad',
  terms: {
    φ: { unit: 'rad', means: 'roll by the handbook' },
    φ_m: { unit: 'rad', means: 'by the unsprung couples' },
    φ_y: { unit: 'rad', means: 'by the tyres' },
  },
  source: 'UW-13',
  holds: 'small angles, rates and links as surveyed',
});

export const linkedLateral = formula({
  symbol: 'ΔF_l',
  means: 'lateral transfer of the axle, handbook with links counted',
  is: 'K_φy*(φ_l - ψ)/t + ΔF_g + ΔF_b',
  unit: 'N',
  terms: {
    K_φy: { unit: 'N m/rad', means: 'roll rate of the axle, tyres in series' },
    φ_l: { unit: 'rad', means: 'roll angle' },
    ψ: { unit: 'rad', means: 'lean on the tyres by what does not pass the springs' },
    t: { unit: 'm', means: 'track' },
    ΔF_g: { unit: 'N', means: 'through the links' },
    ΔF_b: { unit: 'N', means: 'of the unsprung mass, straight through' },
  },
  source: 'UW-14',
});

/** What the handbook knows of an axle. */
export interface LinkedAxle {
  readonly track: Metre;
  /** Roll rate with the tyres in series, and of the tyres alone, N m/rad. */
  readonly rate: number;
  readonly tyres: number;
  readonly unsprung: Kilogram;
  readonly height: Metre;
  /** Lean of left and right wheel for each metre of bump, top inboard positive. */
  readonly lean: { readonly left: number; readonly right: number };
  /** Through the links. */
  readonly links: Newton;
}

export interface LinkedCar {
  readonly a_y: number;
  readonly m_s: Kilogram;
  readonly h_φ: Metre;
  /** By the handbook. */
  readonly roll: Radian;
}

export interface Linked {
  readonly byCouples: Radian;
  readonly byTyres: Radian;
  readonly roll: Radian;
  readonly front: Newton;
  readonly rear: Newton;
}

interface Own {
  readonly direct: Newton;
  readonly couple: NewtonMetre;
  readonly onTyres: Radian;
}

/** [UW-12 to UW-14] @param putting  called for each figure when it is worked out */
export function linkedTransfer(
  axles: { readonly front: LinkedAxle; readonly rear: LinkedAxle },
  { a_y, m_s, h_φ, roll: φ }: LinkedCar,
  putting: (which: keyof Linked, value: number) => void,
  working?: Working,
): void {
  const own = ({ track: t, tyres: K_y, unsprung: m_u, height: h_u, lean, links: ΔF_g }: LinkedAxle): Own => {
    for (const side of ['left', 'right'] as const) {
      working?.add({
        kind: 'solved',
        symbol: side === 'left' ? 'κ_l' : 'κ_r',
        means: `${side} wheel's lean for each metre of bump, top inboard positive`,
        method: 'first derivative of the closed linkage',
        value: lean[side],
        unit: 'rad/m',
        source: 'LP-13',
        terms: [],
      });
    }
    const κ = meanLean({ κ_l: lean.left, κ_r: lean.right }, working);
    const ΔF_b = directTransfer({ m_u, a_y, h_u, κ }, working);
    return {
      direct: ΔF_b,
      couple: coupleIntoTub({ m_u, a_y, h_u, ΔF_b, t }, working),
      onTyres: tyreLean({ t, ΔF_g, ΔF_b, K_y }, working),
    };
  };
  const of = { front: own(axles.front), rear: own(axles.rear) };
  const step = (symbol: string) => ({ kind: 'step', symbol }) as const;
  const rates = { K_1: axles.front.rate, K_2: axles.rear.rate };
  const leaning = { m_s, g_0: STANDARD_GRAVITY, h_φ };
  const from = { K_1: step('K_φy'), K_2: step('K_φy'), g_0: { kind: 'constant', what: 'standard' } as const };
  const φ_m = rollOfCouples({ M_1: of.front.couple, M_2: of.rear.couple, ...rates, ...leaning }, working, {
    ...from,
    M_1: step('M_c'),
    M_2: step('M_c'),
  });
  putting('byCouples', φ_m);
  const φ_y = rollOfTyres({ ψ_1: of.front.onTyres, ψ_2: of.rear.onTyres, ...rates, ...leaning }, working, {
    ...from,
    ψ_1: step('ψ'),
    ψ_2: step('ψ'),
  });
  putting('byTyres', φ_y);
  const φ_l = linkedRollOf({ φ, φ_m, φ_y }, working);
  putting('roll', φ_l);
  for (const end of ['front', 'rear'] as const) {
    const { rate: K_φy, track: t, links: ΔF_g } = axles[end];
    const { direct: ΔF_b, onTyres: ψ } = of[end];
    putting(end, linkedLateral({ K_φy, φ_l, ψ, t, ΔF_g, ΔF_b }, working));
  }
}
