/** Figures of the spring: the wheel rate with both its terms, then unit, bar, and what happens along the travel. */
import { formula, type Working } from '../../working/working.ts';
import type { Numbers } from '../numbers.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';
import { barFigures } from './bar.ts';
import { markFigures } from './marks.ts';
import { NO_BAR, NO_UNIT, notesOf, type Put } from './note.ts';
import { unitFigures } from './unit.ts';

const note = notesOf('spring');

const wheelRate = note({
  id: 'wheelRate',
  lead: true,
  means: 'wheel rate',
  symbol: 'k_w',
  unit: 'N/m',
  anchor: 'wheelCentre',
  rank: 1,
  say: 'springing of this wheel alone, without tyre and anti-roll bar',
});

const elastic = note({
  id: 'wheelRateElastic',
  means: 'wheel rate from the spring rate',
  symbol: 'k_e',
  unit: 'N/m',
  anchor: 'rockerPivot',
  rank: 2,
});

const byForce = note({
  id: 'wheelRateForceTerm',
  means: 'wheel rate from force times change of ratio',
  symbol: 'k_f',
  unit: 'N/m',
  anchor: 'rockerPivot',
  rank: 2,
});

const K_TERMS = {
  k_u: { unit: 'N/m', means: 'rate of the damper unit at this length' },
  r: { unit: '1', means: 'spring per wheel' },
  k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
  s: { unit: 'rad/m', means: 'rocker turn per wheel travel' },
} as const;

const F_TERMS = {
  F_u: { unit: 'N', means: 'force of the damper unit' },
  r_z: { unit: '1/m', means: 'change of spring per wheel with travel' },
  T: { unit: 'N m', means: 'torque of the bar' },
  s_z: { unit: 'rad/m^2', means: 'change of rocker turn per wheel with travel' },
} as const;

const elasticOf = formula({
  symbol: 'k_e',
  means: 'wheel rate from the spring rate',
  is: 'k_u*r^2 + k_t*s^2',
  unit: 'N/m',
  terms: K_TERMS,
  source: 'LP-45',
});

const byForceOf = formula({
  symbol: 'k_f',
  means: 'wheel rate from force times change of ratio',
  is: 'F_u*r_z + T*s_z',
  unit: 'N/m',
  terms: F_TERMS,
  source: 'LP-45',
});

const wheelRateOf = formula({
  symbol: 'k_w',
  means: 'wheel rate',
  is: 'k_e + k_f',
  unit: 'N/m',
  terms: {
    k_e: { unit: 'N/m', means: 'wheel rate from the spring rate' },
    k_f: { unit: 'N/m', means: 'wheel rate from force times change of ratio' },
  },
  source: 'LP-45',
  holds: 'at this travel; the rate of a wheel is the slope of its force, and both change along the travel',
});

export function springFigures(
  of: SprungCorner,
  numbers: Numbers,
  now: WheelForce,
  put: Put,
  working?: Working,
): void {
  const { ratios, unit } = now;
  const { springing } = of;
  unitFigures(of, numbers, now, put, working);
  const T = barFigures(of, numbers, now, put, working);
  const k_e = elasticOf(
    { k_u: unit.rate, r: ratios.unit, k_t: springing.barRate ?? 0, s: ratios.turn },
    working,
    {
      ...(of.hasUnit ? {} : { k_u: NO_UNIT, r: NO_UNIT }),
      ...(springing.barRate === undefined ? { k_t: NO_BAR } : {}),
    },
  );
  const k_f = byForceOf({ F_u: unit.total, r_z: ratios.unitChange, T, s_z: ratios.turnChange }, working, {
    ...(of.hasUnit ? {} : { F_u: NO_UNIT, r_z: NO_UNIT }),
    ...(springing.barRate === undefined ? { T: NO_BAR } : {}),
  });
  put(elastic, k_e);
  put(byForce, k_f);
  put(wheelRate, wheelRateOf({ k_e, k_f }, working));
  markFigures(of, numbers, put, working);
}
