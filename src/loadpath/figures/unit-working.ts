/**
 * What the working shows of the damper unit: how far it is compressed, what each part of it gives there, and how
 * its rate is made up. The figures do not need it; whoever follows a wheel rate down to its readings does.
 */
import { formula, type Origin, type Term, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';

const compressionOf = formula({
  symbol: 'c',
  means: 'compression of the unit from the surveyed position',
  is: 'l_0 - l',
  unit: 'm',
  terms: {
    l_0: { unit: 'm', means: 'damper unit as surveyed, eye to eye' },
    l: { unit: 'm', means: 'damper unit at this travel, eye to eye' },
  },
  source: 'LP-4',
});

const rateOf = formula({
  symbol: 'k_u',
  means: 'rate of the damper unit at this length',
  is: 'k_c + k_r + k_d',
  unit: 'N/m',
  terms: {
    k_c: { unit: 'N/m', means: 'slope of the coil at this length' },
    k_r: { unit: 'N/m', means: 'slope of the bump rubber at this length' },
    k_d: { unit: 'N/m', means: 'slope of the droop stop at this length' },
  },
  source: 'SP-35',
});

const told = (what: string): Origin => ({ kind: 'constant', what });

/** Writes the steps from the solved length to the force of each part and the rate of the whole. */
export function workUnit(of: SprungCorner, numbers: Numbers, now: WheelForce, working: Working): void {
  const { springing, form } = of;
  const { compression: c, unit } = now;
  working.add({
    kind: 'solved',
    symbol: 'l_0',
    means: 'damper unit as surveyed, eye to eye',
    method: 'the linkage closed at the surveyed position',
    value: of.surveyedLength,
    unit: 'm',
    source: 'LP-4',
    terms: [],
  });
  compressionOf({ l_0: of.surveyedLength, l: now.ratios.unitLength }, working);
  const solved = (
    symbol: string,
    means: string,
    step: { readonly value: number; readonly unit: string; readonly method: string; readonly source: string },
    terms: readonly Term[],
  ): void => working.add({ kind: 'solved', symbol, means, terms: [...compressed, ...terms], ...step });
  const compressed: readonly Term[] = [
    {
      symbol: 'c',
      means: 'compression of the unit from the surveyed position',
      value: c,
      unit: 'm',
      from: { kind: 'step', symbol: 'c' },
    },
  ];
  if (springing.coil !== undefined) {
    const method = 'law of the coil: free, helper, coil, solid';
    const terms = coilTerms(of, numbers);
    solved('F_c', 'force of the coil', { value: unit.coil, unit: 'N', method, source: 'SP-30' }, terms);
    const slope = {
      value: springing.coil.rate(c),
      unit: 'N/m',
      method: `slope of the ${method}`,
      source: 'SP-30',
    };
    solved('k_c', 'slope of the coil at this length', slope, terms);
  }
  if (springing.rubber !== undefined) {
    const method = 'measured curve of the rubber';
    const terms = rubberTerms(of, numbers);
    solved(
      'F_r',
      'force of the bump rubber',
      { value: unit.rubber, unit: 'N', method, source: 'SP-33' },
      terms,
    );
    const slope = {
      value: springing.rubber.rate(c),
      unit: 'N/m',
      method: `slope of the ${method}`,
      source: 'SP-33',
    };
    solved('k_r', 'slope of the bump rubber at this length', slope, terms);
  }
  const stop = springing.droopStop?.rate(c) ?? 0;
  rateOf({ k_c: springing.coil?.rate(c) ?? 0, k_r: springing.rubber?.rate(c) ?? 0, k_d: stop }, working, {
    ...(form.coil === undefined ? { k_c: told('no coil') } : {}),
    ...(springing.rubber === undefined ? { k_r: told('no bump rubber') } : {}),
    k_d: told(stop === 0 ? 'clear of the droop stop' : 'the droop stop, taken as stiff'),
  });
}

function coilTerms({ springing, form }: SprungCorner, numbers: Numbers): readonly Term[] {
  const helper = form.coil!.helper;
  const step = (symbol: string, means: string, value: number, unit: string): Term => ({
    symbol,
    means,
    value,
    unit,
    from: { kind: 'step', symbol },
  });
  return [
    step('R', 'rate of the coil spring', springing.coilRate!, 'N/m'),
    step('c_f', 'compression at which the coil is free', springing.coilFreeAt!, 'm'),
    step('c_s', 'compression at which the coil is solid', springing.coilSolidAt!, 'm'),
    ...(helper === undefined
      ? []
      : [
          {
            symbol: 'R_h',
            means: 'rate of the helper',
            value: numbers.of(helper.rate),
            unit: 'N/m',
            from: fromReading(helper.rate),
          },
          {
            symbol: 's_h',
            means: 'travel of the helper, free to solid',
            value: numbers.of(helper.travel),
            unit: 'm',
            from: fromReading(helper.travel),
          },
        ]),
  ];
}

function rubberTerms({ form }: SprungCorner, numbers: Numbers): readonly Term[] {
  const { gap, packers } = form.bumpRubber!;
  return [
    { symbol: 'g_r', means: 'gap to the rubber', value: numbers.of(gap), unit: 'm', from: fromReading(gap) },
    ...(packers === undefined
      ? []
      : [
          {
            symbol: 'h_p',
            means: 'packers',
            value: numbers.of(packers),
            unit: 'm',
            from: fromReading(packers),
          },
        ]),
  ];
}
