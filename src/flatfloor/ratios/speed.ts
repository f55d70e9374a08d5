/**
 * Road speed by engine speed, with tyres that grow.
 *
 * In    how far one turn of the wheel goes, how that grows with speed, slip, ratio
 * Out   speed
 * Holds growth by the square of speed, as the pull of its own mass grows a tyre
 *
 * RA-n are the equations of docs/theory/ratios.md.
 */
import type { CarForm } from '../../car/read.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Metre, MetrePerSecond, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

export interface Rolling {
  /** Rolling radius at a walk. */
  readonly radius: Metre;
  /** Growth per speed squared, s²/m². */
  readonly growth: number;
  readonly slip: Ratio;
}

const radiusOf = formula({
  symbol: 'r_0',
  means: 'rolling radius at a walk',
  is: 'U/(2*π)',
  unit: 'm',
  terms: { U: { unit: 'm', means: 'distance of one turn of the driven wheels' } },
  source: 'RA-3',
});

const growthOf = formula({
  symbol: 'κ',
  means: 'growth of the tyre over speed squared',
  is: 'g/v_g^2',
  unit: 's^2/m^2',
  terms: {
    g: { unit: '1', means: 'growth at that speed' },
    v_g: { unit: 'm/s', means: 'speed at which it has grown so much' },
  },
  source: 'RA-3',
  holds: 'growth by the square of speed',
});

const NO_GROWTH: Origin = { kind: 'constant', what: 'the file tells no growth' };
const NO_SLIP: Origin = { kind: 'constant', what: 'the file tells no slip' };

export type RollingForm = NonNullable<CarForm['rolling']>;

export const slipOrigin = ({ slip }: RollingForm): Origin =>
  slip === undefined ? NO_SLIP : fromReading(slip);

export function rollingOf(form: RollingForm, numbers: Numbers, working?: Working): Rolling {
  const { distance, growth, growthSpeed, slip } = form;
  const radius = radiusOf({ U: numbers.of(distance) }, working, { U: fromReading(distance) });
  const known = growth !== undefined && growthSpeed !== undefined;
  return {
    radius,
    growth: known
      ? growthOf({ g: numbers.of(growth), v_g: numbers.of(growthSpeed) }, working, {
          g: fromReading(growth),
          v_g: fromReading(growthSpeed),
        })
      : 0,
    slip: numbers.or(slip, 0),
  };
}

const stillOf = formula({
  symbol: 'c',
  means: 'road speed, did the tyre not grow',
  is: 'ω*r_0*(1 - s)/i',
  unit: 'm/s',
  terms: {
    ω: { unit: 'rad/s', means: 'engine speed' },
    r_0: { unit: 'm', means: 'rolling radius at a walk' },
    s: { unit: '1', means: 'slip of the driven tyres' },
    i: { unit: '1', means: 'turns of the crank for one of the wheel' },
  },
  source: 'RA-4',
});

const grownOf = formula({
  symbol: 'v',
  means: 'road speed',
  is: '2*c/(1 + sqrt(1 - 4*κ*c^2))',
  unit: 'm/s',
  terms: {
    c: { unit: 'm/s', means: 'road speed, did the tyre not grow' },
    κ: { unit: 's^2/m^2', means: 'growth of the tyre over speed squared' },
  },
  source: 'RA-4',
  holds: 'growth by the square of speed, both as told and as it feeds on itself',
});

/** Road speed at an engine speed. [RA-4] */
export function speedAt(
  ω: number,
  i: Ratio,
  rolling: Rolling,
  working?: Working,
  from?: { readonly ω?: Origin; readonly s?: Origin; readonly κ?: Origin },
): MetrePerSecond {
  const c = stillOf({ ω, r_0: rolling.radius, s: rolling.slip, i }, working, {
    ...(from?.ω === undefined ? {} : { ω: from.ω }),
    ...(from?.s === undefined ? {} : { s: from.s }),
  });
  return grownOf({ c, κ: rolling.growth }, working, rolling.growth === 0 ? { κ: NO_GROWTH } : {});
}

/** Engine speed at a road speed: the same the other way round. [RA-4] */
export const engineSpeedAt = (v: MetrePerSecond, i: Ratio, { radius, growth, slip }: Rolling): number =>
  (v * i) / (radius * (1 + growth * v * v) * (1 - slip));
