/**
 * Figures of the spring: wheel rate with both its terms, force, torque, twist, stress, and what is left before
 * something takes over.
 */
import { springMaterial, tensileStrength } from '../../materials/spring-material.ts';
import { formula, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { coilMass, coilStress, solidLength, surgeFrequency } from '../spring/coil-spring.ts';
import { barMass, skinStress } from '../spring/torsion-bar.ts';
import { barOf, coilOf } from '../spring-of-car.ts';
import { type SprungCorner, type TravelMarks, travelMarks, type WheelForce } from '../sprung-corner.ts';
import { notesOf, type Put } from './note.ts';

const note = notesOf('spring');

const wheelRate = note({
  id: 'wheelRate',
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
const springForce = note({
  id: 'springForce',
  means: 'force of the damper unit: coil, rubber, gas, stop',
  symbol: 'F_u',
  unit: 'N',
  anchor: 'damperTub',
  rank: 1,
});
const coilForce = note({
  id: 'coilForce',
  means: 'force of the coil',
  symbol: 'F_c',
  unit: 'N',
  anchor: 'damperTub',
  rank: 2,
  method: 'law of the coil: free, helper, coil, solid',
  source: 'SP-30',
});
const rubberForce = note({
  id: 'rubberForce',
  means: 'force of the bump rubber',
  symbol: 'F_r',
  unit: 'N',
  anchor: 'damperTub',
  rank: 2,
  method: 'measured curve of the rubber',
  source: 'SP-33',
});
const springLength = note({
  id: 'springLength',
  means: 'damper unit, eye to eye',
  symbol: 'l',
  unit: 'm',
  anchor: 'damperTub',
  rank: 2,
  method: 'the linkage closed at this travel',
  source: 'LP-9',
});
const coilRateNote = note({
  id: 'coilRate',
  means: 'rate of the coil',
  symbol: 'R',
  unit: 'N/m',
  anchor: 'damperTub',
  rank: 2,
});
const coilStressNote = note({
  id: 'coilStress',
  means: 'shear stress in the wire, inside of the coil',
  symbol: 'τ',
  unit: 'Pa',
  anchor: 'damperTub',
  rank: 2,
});
const solidMargin = note({
  id: 'solidMargin',
  means: 'compression left before the coil is solid',
  symbol: 'c_l',
  unit: 'm',
  anchor: 'damperTub',
  rank: 2,
});
const coilMassNote = note({
  id: 'coilMass',
  means: 'mass of the coil',
  symbol: 'm',
  unit: 'kg',
  anchor: 'damperTub',
  rank: 3,
});
const surge = note({
  id: 'surgeFrequency',
  means: 'surge frequency of the coil',
  symbol: 'f_e',
  unit: 'Hz',
  anchor: 'damperTub',
  rank: 3,
});
const barTwist = note({
  id: 'barTwist',
  means: 'twist of the torsion bar',
  symbol: 'φ',
  unit: 'rad',
  anchor: 'rockerPivot',
  rank: 1,
  say: 'positive in bump',
});
const barTorque = note({
  id: 'barTorque',
  means: 'torque of the torsion bar',
  symbol: 'T',
  unit: 'N m',
  anchor: 'rockerPivot',
  rank: 2,
});
const barStress = note({
  id: 'barStress',
  means: 'shear stress at the skin of the bar',
  symbol: 'τ',
  unit: 'Pa',
  anchor: 'rockerPivot',
  rank: 1,
});
const barStressPart = note({
  id: 'barStressPart',
  means: 'stress as a part of the tensile strength',
  symbol: 'n_τ',
  unit: 'share',
  anchor: 'rockerPivot',
  rank: 3,
});
const barRate = note({
  id: 'barRate',
  means: 'rate of the torsion bar',
  symbol: 'k_t',
  unit: 'N m/rad',
  anchor: 'rockerPivot',
  rank: 2,
});
const barMassNote = note({
  id: 'barMass',
  means: 'mass of the torsion bar, heads not counted',
  symbol: 'm_b',
  unit: 'kg',
  anchor: 'rockerPivot',
  rank: 3,
  method: 'volume of bar and transitions times density',
  source: 'SP-28',
});

const MARKS: readonly (readonly [keyof TravelMarks, ReturnType<typeof note>])[] = (
  [
    ['droopStop', 'droopStopTravel', 'travel at which the droop stop takes over', 'z_d'],
    ['coilFree', 'coilFreeTravel', 'travel at which the coil comes free of its seat', 'z_f'],
    ['barSlack', 'barSlackTravel', 'travel at which the bar is slack', 'z_0'],
    ['rubber', 'rubberTravel', 'travel at which the bump rubber touches', 'z_r'],
    ['coilSolid', 'coilSolidTravel', 'travel at which the coil is solid', 'z_s'],
    ['closed', 'closedTravel', 'travel at which the damper is closed', 'z_c'],
  ] as const
).map(([mark, id, means, symbol]) => [
  mark,
  note({
    id,
    means,
    symbol,
    unit: 'm',
    anchor: 'wheelCentre',
    rank: mark === 'rubber' || mark === 'droopStop' ? 2 : 3,
    method: 'the linkage solved for the length at which it happens',
    source: 'LP-47',
  }),
]);

const fullBumpStress = note({
  id: 'barStressFullBump',
  means: 'shear stress at the skin with the damper closed',
  symbol: 'τ_b',
  unit: 'Pa',
  anchor: 'rockerPivot',
  rank: 2,
  method: 'torque with the damper closed, then as the stress above',
  source: 'SP-23',
});
const fullBumpMargin = note({
  id: 'solidMarginFullBump',
  means: 'compression left before the coil is solid, damper closed',
  symbol: 'c_b',
  unit: 'm',
  anchor: 'damperTub',
  rank: 2,
});
const droopPreload = note({
  id: 'droopPreload',
  means: 'load at the wheel before it leaves its droop stop',
  symbol: 'P_d',
  unit: 'N',
  anchor: 'contact',
  rank: 2,
  method: 'springing at the droop stop, stop not counted',
  source: 'LP-48',
});

const unitSum = formula({
  symbol: 'F_u',
  means: 'force of the damper unit',
  is: 'F_c + F_r + F_g + F_s',
  unit: 'N',
  terms: {
    F_c: { unit: 'N', means: 'force of the coil' },
    F_r: { unit: 'N', means: 'force of the bump rubber' },
    F_g: { unit: 'N', means: 'force of the damper gas' },
    F_s: { unit: 'N', means: 'force of the droop stop (negative: it pulls)' },
  },
  source: 'SP-35',
});

const twist = formula({
  symbol: 'φ',
  means: 'twist of the torsion bar',
  is: 'φ_0 + θ',
  unit: 'rad',
  terms: {
    φ_0: { unit: 'rad', means: 'twist of the bar as surveyed' },
    θ: { unit: 'rad', means: 'rocker turned from the surveyed position' },
  },
  source: 'LP-41',
});

const torque = formula({
  symbol: 'T',
  means: 'torque of the torsion bar',
  is: 'k_t*φ',
  unit: 'N m',
  terms: {
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
    φ: { unit: 'rad', means: 'twist of the bar' },
  },
  source: 'SP-36',
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

const marginOf = (symbol: string, means: string) =>
  formula({
    symbol,
    means,
    is: 'c_s - c',
    unit: 'm',
    terms: {
      c_s: { unit: 'm', means: 'compression, from the surveyed position, at which the coil is solid' },
      c: { unit: 'm', means: 'compression of the unit from the surveyed position' },
    },
    source: 'SP-31',
  });
const marginNow = marginOf('c_l', 'compression left before the coil is solid');
const marginClosed = marginOf('c_b', 'compression left before the coil is solid, damper closed');

const partOfStrength = formula({
  symbol: 'n_τ',
  means: 'stress as a part of the tensile strength',
  is: 'τ/R_m',
  unit: 'share',
  terms: {
    τ: { unit: 'Pa', means: 'shear stress at the skin of the bar' },
    R_m: { unit: 'Pa', means: 'least tensile strength' },
  },
  source: 'SP-24',
});

const NO_UNIT = { kind: 'constant', what: 'no damper unit' } as const;
const NO_BAR = { kind: 'constant', what: 'no torsion bar' } as const;

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

function unitFigures(of: SprungCorner, numbers: Numbers, now: WheelForce, put: Put, working?: Working): void {
  if (!of.hasUnit) return;
  const { unit, compression, ratios } = now;
  const { coil } = of.form;
  put(springLength, ratios.unitLength);
  if (coil !== undefined) put(coilForce, unit.coil);
  if (of.springing.rubber !== undefined) put(rubberForce, unit.rubber);
  const F_u = unitSum({ F_c: unit.coil, F_r: unit.rubber, F_g: unit.gas, F_s: unit.droopStop }, working, {
    ...(coil === undefined ? { F_c: { kind: 'constant', what: 'no coil' } as const } : {}),
    ...(of.springing.rubber === undefined
      ? { F_r: { kind: 'constant', what: 'no bump rubber' } as const }
      : {}),
    F_g:
      of.form.damper?.gasForce === undefined
        ? { kind: 'constant', what: 'no gas force given' }
        : fromReading(of.form.damper.gasForce),
    F_s: {
      kind: 'constant',
      what: unit.droopStop === 0 ? 'clear of the droop stop' : 'held by the droop stop',
    },
  });
  put(springForce, F_u);
  if (coil === undefined) return;
  const { coil: sizes, from } = coilOf(coil, numbers);
  put(coilRateNote, of.springing.coilRate!);
  put(
    coilStressNote,
    coilStress(sizes, unit.coil, 'EN 13906-1', working, { ...from, F: { kind: 'step', symbol: 'F_c' } }),
  );
  put(solidMargin, marginNow({ c_s: of.springing.coilSolidAt!, c: compression }, working));
  put(coilMassNote, coilMass(sizes, working, from));
  put(surge, surgeFrequency(sizes, working, from));
  // said here so that the working of a margin can be followed to coils and wire
  if (working !== undefined) solidLength(sizes, working, from);
}

function barFigures(
  of: SprungCorner,
  numbers: Numbers,
  now: WheelForce,
  put: Put,
  working?: Working,
): number {
  const { bar } = of.form;
  const { springing } = of;
  if (bar === undefined) return 0;
  const { bar: sizes, from } = barOf(bar, numbers);
  put(barRate, springing.barRate!);
  const φ = twist({ φ_0: springing.barTwistAtSurvey!, θ: now.ratios.angle }, working, {
    ...(bar.twist === undefined ? {} : { φ_0: fromReading(bar.twist) }),
  });
  put(barTwist, φ);
  const T = torque({ k_t: springing.barRate!, φ }, working);
  put(barTorque, T);
  const τ = skinStress(sizes, T, working, from);
  put(barStress, τ);
  const material = bar.material === undefined ? undefined : springMaterial(bar.material);
  const strength = material === undefined ? undefined : tensileStrength(material, sizes.diameter);
  if (strength !== undefined) {
    put(
      barStressPart,
      partOfStrength({ τ, R_m: strength.low }, working, {
        R_m: { kind: 'table', name: `${material!.name}, low end` },
      }),
    );
  }
  put(barMassNote, barMass(sizes));
  return T;
}

function markFigures(of: SprungCorner, numbers: Numbers, put: Put, working?: Working): void {
  const marks = travelMarks(of);
  const { springing, form } = of;
  const present: Record<keyof TravelMarks, boolean> = {
    droopStop: springing.droopStop !== undefined,
    coilFree: springing.coil !== undefined,
    rubber: springing.rubber !== undefined,
    coilSolid: springing.coil !== undefined,
    closed: springing.closedAt !== undefined,
    barSlack: springing.barRate !== undefined,
  };
  for (const [mark, note] of MARKS) if (present[mark]) put(note, marks[mark]);
  if (springing.droopStop !== undefined) {
    put(droopPreload, Number.isNaN(marks.droopStop) ? Number.NaN : of.wheelAt(marks.droopStop).force);
  }
  if (springing.closedAt === undefined) return;
  if (springing.coil !== undefined) {
    put(fullBumpMargin, marginClosed({ c_s: springing.coilSolidAt!, c: springing.closedAt }, working));
  }
  if (form.bar !== undefined) {
    const { bar: sizes } = barOf(form.bar, numbers);
    const closed = Number.isNaN(marks.closed) ? undefined : of.wheelAt(marks.closed);
    put(fullBumpStress, closed === undefined ? Number.NaN : skinStress(sizes, closed.torque));
  }
}
