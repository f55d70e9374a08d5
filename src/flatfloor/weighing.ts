/**
 * The car weighed: where its centre of gravity is by four pads, how high by raising an axle, what the pads are worth.
 *
 * In    masses on the pads, wheelbase, tracks, loaded radii, lift of the raised axle; a known mass on each pad
 * Out   centre of gravity, each with its spread
 * Axes  lengths forward of the rear axle and behind the front one as named; height above level ground
 *
 * FF-n: docs/theory/flat-floor.md.
 */
import { type Spread, spreadOf } from '../measured/spread.ts';
import type { Kilogram, Metre, Ratio } from '../units/quantity.ts';
import { formula, type Origin, type Working } from '../working/working.ts';
import { type PadOrigins, shareOf, wholeOf } from './shares.ts';

/** A number with its standard uncertainty. */
export interface Measured {
  readonly value: number;
  readonly u: number;
}

const behindFrontOf = formula({
  symbol: 'a',
  means: 'centre of gravity behind the front axle',
  is: 'L*m_r/m',
  unit: 'm',
  terms: {
    L: { unit: 'm', means: 'wheelbase' },
    m_r: { unit: 'kg', means: 'mass on the two rear pads' },
    m: { unit: 'kg', means: 'mass on all four pads' },
  },
  source: 'FF-33',
});

const onRear = formula({
  symbol: 'm_r',
  means: 'mass on the two rear pads',
  is: 'm_rl + m_rr',
  unit: 'kg',
  terms: {
    m_rl: { unit: 'kg', means: 'mass on the rear left pad' },
    m_rr: { unit: 'kg', means: 'mass on the rear right pad' },
  },
  source: 'FF-33',
});

const leftOfMiddleOf = formula({
  symbol: 'y_g',
  means: 'centre of gravity left of the middle',
  is: '(t_f*(m_fl - m_fr) + t_r*(m_rl - m_rr))/(2*m)',
  unit: 'm',
  terms: {
    t_f: { unit: 'm', means: 'front track' },
    t_r: { unit: 'm', means: 'rear track' },
    m_fl: { unit: 'kg', means: 'mass on the front left pad' },
    m_fr: { unit: 'kg', means: 'mass on the front right pad' },
    m_rl: { unit: 'kg', means: 'mass on the rear left pad' },
    m_rr: { unit: 'kg', means: 'mass on the rear right pad' },
    m: { unit: 'kg', means: 'mass on all four pads' },
  },
  source: 'FF-33',
});

const tiltOf = formula({
  symbol: 'θ',
  means: 'tilt of the car with its rear axle raised',
  is: 'asin((H + r_r - r_f)/sqrt(L^2 + (r_r - r_f)^2)) - asin((r_r - r_f)/sqrt(L^2 + (r_r - r_f)^2))',
  unit: 'rad',
  terms: {
    H: { unit: 'm', means: 'lift of the rear pads' },
    L: { unit: 'm', means: 'wheelbase' },
    r_f: { unit: 'm', means: 'loaded radius in front' },
    r_r: { unit: 'm', means: 'loaded radius behind' },
  },
  source: 'FF-34',
});

const heightOf = formula({
  symbol: 'h',
  means: 'height of the centre of gravity',
  is: 'r_f + (a*cos(θ) - (1 - m_f/m)*sqrt(L^2 + (r_r - r_f)^2)*cos(θ + asin((r_r - r_f)/sqrt(L^2 + (r_r - r_f)^2))))/sin(θ)',
  unit: 'm',
  terms: {
    r_f: { unit: 'm', means: 'loaded radius in front' },
    r_r: { unit: 'm', means: 'loaded radius behind' },
    a: { unit: 'm', means: 'centre of gravity behind the front axle' },
    θ: { unit: 'rad', means: 'tilt of the car with its rear axle raised' },
    m_f: { unit: 'kg', means: 'mass on the two front pads, rear axle raised' },
    m: { unit: 'kg', means: 'mass on all four pads' },
    L: { unit: 'm', means: 'wheelbase' },
  },
  source: 'FF-34',
});

export interface PadMasses<T> {
  readonly frontLeft: T;
  readonly frontRight: T;
  readonly rearLeft: T;
  readonly rearRight: T;
}

const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;

export interface Weighed {
  readonly total: Measured;
  readonly behindFront: Measured;
  readonly leftOfMiddle: Measured;
  /** Right front and left rear of the whole. */
  readonly cross: Measured;
  readonly frontShare: Measured;
  readonly leftShare: Measured;
}

/** Where wheelbase and tracks come from. */
type Lengths = Readonly<Partial<Record<'L' | 't_f' | 't_r', Origin>>>;

/** Centre of gravity as seen from above, and the shares, from four pads on a level floor.  [FF-15, FF-33] */
export function weighedOnPads(
  pads: PadMasses<Measured>,
  car: { readonly wheelbase: Measured; readonly frontTrack: Measured; readonly rearTrack: Measured },
  working?: Working,
  from: PadOrigins & Lengths = {},
): Weighed {
  const inputs = [...WHEELS.map((wheel) => pads[wheel]), car.wheelbase, car.frontTrack, car.rearTrack];
  const of = (values: ArrayLike<number>, to?: Working): readonly number[] => {
    const [m_fl, m_fr, m_rl, m_rr, L, t_f, t_r] = Array.from(values) as [
      Kilogram,
      Kilogram,
      Kilogram,
      Kilogram,
      Metre,
      Metre,
      Metre,
    ];
    const pad = { m_fl, m_fr, m_rl, m_rr };
    const m = wholeOf(pad, to, from);
    const m_r = onRear({ m_rl, m_rr }, to, from);
    return [
      m,
      behindFrontOf({ L, m_r, m }, to, from),
      leftOfMiddleOf({ t_f, t_r, ...pad, m }, to, from),
      shareOf('cross', pad, to, from),
      shareOf('frontShare', pad, to, from),
      shareOf('leftShare', pad, to, from),
    ];
  };
  const [total, behindFront, leftOfMiddle, cross, frontShare, leftShare] = measuredOf(inputs, of, working);
  return {
    total: total!,
    behindFront: behindFront!,
    leftOfMiddle: leftOfMiddle!,
    cross: cross!,
    frontShare: frontShare!,
    leftShare: leftShare!,
  };
}

export interface RaisedAxle {
  readonly wheelbase: Measured;
  readonly frontRadius: Measured;
  readonly rearRadius: Measured;
  /** Mass on all pads, and on the front ones, level. */
  readonly total: Measured;
  readonly frontLevel: Measured;
  /** Mass on the front pads with the rear pads raised, and how far they are raised. */
  readonly frontRaised: Measured;
  readonly lift: Measured;
}

/**
 * Height of the centre of gravity by raising the rear axle: links in place of dampers, tanks full, wheels free to
 * roll. Exact for loaded radii that differ.  [FF-34]
 */
export function heightByRaisedAxle(
  test: RaisedAxle,
  working?: Working,
  from: Readonly<Partial<Record<'L' | 'r_f' | 'r_r' | 'm' | 'm_f' | 'm_r' | 'H', Origin>>> = {},
): Measured & { readonly tilt: Measured } {
  const names = [
    'wheelbase',
    'frontRadius',
    'rearRadius',
    'total',
    'frontLevel',
    'frontRaised',
    'lift',
  ] as const;
  const of = (values: ArrayLike<number>, to?: Working): readonly number[] => {
    const [L, r_f, r_r, m, level, m_f, H] = Array.from(values) as [
      Metre,
      Metre,
      Metre,
      Kilogram,
      Kilogram,
      Kilogram,
      Metre,
    ];
    const a = behindFrontOf({ L, m_r: m - level, m }, to, from);
    const θ = tiltOf({ H, L, r_f, r_r }, to, from);
    return [heightOf({ r_f, r_r, a, θ, m_f, m, L }, to, from), θ];
  };
  const [height, tilt] = measuredOf(
    names.map((name) => test[name]),
    of,
    working,
  );
  return { ...height!, tilt: tilt! };
}

function measuredOf(
  inputs: readonly Measured[],
  of: (values: ArrayLike<number>, working?: Working) => readonly number[],
  working?: Working,
): readonly Measured[] {
  const values = Float64Array.from(inputs, ({ value }) => value);
  const found = of(values, working);
  const spreads: readonly Spread[] = spreadOf(
    values,
    inputs.map(({ u }, k) => ({ label: String(k), path: String(k), moves: [[k, u]] })),
    (moved, out) => {
      out.set(of(moved));
    },
    found.length,
  );
  return found.map((value, k) => ({ value, u: spreads[k]!.u }));
}

/** Difference beyond which a pad is not as its known mass says, in standard uncertainties. */
const BEYOND = 2;

export interface PadCheck {
  /** Shown over true: what its readings are to be divided by. */
  readonly factor: Measured;
  readonly agrees: boolean;
}

/** A pad under a known mass.  [FF-35] */
export function padChecked(shown: Measured, known: Measured): PadCheck {
  const factor: Ratio = shown.value / known.value;
  const u = factor * Math.hypot(shown.u / shown.value, known.u / known.value);
  return {
    factor: { value: factor, u },
    agrees: Math.abs(shown.value - known.value) <= BEYOND * Math.hypot(shown.u, known.u),
  };
}

/** Heights of the pads over a water level's surface from its readings down to each: the lowest reading is highest. */
export function padHeights(down: readonly Measured[]): readonly Measured[] {
  const [first] = down;
  if (first === undefined) return [];
  return down.map((each, k) => ({
    value: first.value - each.value,
    u: k === 0 ? 0 : Math.hypot(first.u, each.u),
  }));
}
