/**
 * How much water vapour air can hold, and how heavily the air weighs at a height.
 *
 * PR-n are the equations of docs/theory/pressures.md.
 */
import type { Kelvin, Pascal } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

const IF97: Origin = { kind: 'table', name: 'IAPWS-IF97, region 4' };

/** Coefficients of IAPWS-IF97, region 4, n1 to n10. */
const N = [
  0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.1202082470247e5, -0.32325550322333e7,
  0.1491510861353e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
] as const;

const reducedOf = formula({
  symbol: 'ϑ',
  means: 'temperature as the saturation equation takes it',
  is: 'T/K_1 + n_9/(T/K_1 - n_10)',
  unit: '1',
  terms: {
    T: { unit: 'K', means: 'temperature' },
    K_1: { unit: 'K', means: 'one kelvin' },
    n_9: { unit: '1', means: 'coefficient' },
    n_10: { unit: '1', means: 'coefficient' },
  },
  source: 'PR-1',
});

const quadratic = (symbol: 'A' | 'B' | 'C', names: readonly [string, string, string], first: boolean) =>
  formula({
    symbol,
    means: `coefficient ${symbol} of the saturation equation`,
    is: first ? `ϑ^2 + ${names[1]}*ϑ + ${names[2]}` : `${names[0]}*ϑ^2 + ${names[1]}*ϑ + ${names[2]}`,
    unit: '1',
    terms: Object.fromEntries(
      ['ϑ', ...(first ? names.slice(1) : names)].map((name) => [
        name,
        { unit: '1', means: name === 'ϑ' ? 'temperature as the equation takes it' : 'coefficient' },
      ]),
    ) as Record<string, { unit: string; means: string }>,
    source: 'PR-1',
  });

const A_OF = quadratic('A', ['', 'n_1', 'n_2'], true);
const B_OF = quadratic('B', ['n_3', 'n_4', 'n_5'], false);
const C_OF = quadratic('C', ['n_6', 'n_7', 'n_8'], false);

const saturationOf = formula({
  symbol: 'p_s',
  means: 'pressure at which water vapour at this temperature begins to condense',
  is: 'p_1*(2*C/(-B + sqrt(B^2 - 4*A*C)))^4',
  unit: 'Pa',
  terms: {
    p_1: { unit: 'Pa', means: 'one megapascal' },
    A: { unit: '1', means: 'coefficient' },
    B: { unit: '1', means: 'coefficient' },
    C: { unit: '1', means: 'coefficient' },
  },
  source: 'PR-1',
  holds: 'over liquid water, 0 to 374 °C; below freezing a little high, as over water and not ice',
});

/** Saturation pressure of water. [PR-1; IAPWS-IF97, region 4] */
export function saturationPressure(T: Kelvin, working?: Working, from?: Origin): Pascal {
  const table = { n_1: IF97, n_2: IF97, n_3: IF97, n_4: IF97, n_5: IF97, n_6: IF97, n_7: IF97, n_8: IF97 };
  const ϑ = reducedOf({ T, K_1: 1, n_9: N[8], n_10: N[9] }, working, {
    n_9: IF97,
    n_10: IF97,
    K_1: { kind: 'constant', what: 'unit' },
    ...(from === undefined ? {} : { T: from }),
  });
  const A = A_OF({ ϑ, n_1: N[0], n_2: N[1] }, working, table);
  const B = B_OF({ ϑ, n_3: N[2], n_4: N[3], n_5: N[4] }, working, table);
  const C = C_OF({ ϑ, n_6: N[5], n_7: N[6], n_8: N[7] }, working, table);
  return saturationOf({ p_1: 1e6, A, B, C }, working, { p_1: { kind: 'constant', what: 'unit' } });
}

const pressureAtHeight = formula({
  symbol: 'p_a',
  means: 'pressure of the air at this height',
  is: 'p_0*(1 - L*H/T_0)^5.25588',
  unit: 'Pa',
  terms: {
    p_0: { unit: 'Pa', means: 'pressure of the air at sea level' },
    L: { unit: 'K/m', means: 'fall of temperature with height' },
    H: { unit: 'm', means: 'height above the sea' },
    T_0: { unit: 'K', means: 'standard temperature at sea level' },
  },
  source: 'PR-2',
  holds: 'the standard atmosphere, up to 11 km; the weather moves it by ± 2 % and is in p_0',
});

/** ISO 2533: 101 325 Pa, 288.15 K, 6.5 K a kilometre. */
export const STANDARD_SEA_LEVEL: Pascal = 101_325;

const ISO2533: Origin = { kind: 'table', name: 'ISO 2533' };

/** [PR-2; ISO 2533] */
export const airPressureAt = (
  { seaLevel, height }: { readonly seaLevel: Pascal; readonly height: number },
  working?: Working,
  from: { readonly seaLevel?: Origin; readonly height?: Origin } = {},
): Pascal =>
  pressureAtHeight({ p_0: seaLevel, L: 0.0065, H: height, T_0: 288.15 }, working, {
    L: ISO2533,
    T_0: ISO2533,
    ...(from.seaLevel === undefined ? {} : { p_0: from.seaLevel }),
    ...(from.height === undefined ? {} : { H: from.height }),
  });
