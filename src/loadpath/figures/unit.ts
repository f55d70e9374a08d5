/** Figures of the damper unit: length, force, coil stress, and what is left before the coil is solid. */
import { springMaterial, tensileStrength } from '../../materials/spring-material.ts';
import { formula, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { buckling, goodmanFactor } from '../spring/coil-limits.ts';
import { coilMass, coilStress, surgeFrequency } from '../spring/coil-spring.ts';
import { coilOf } from '../spring-of-car.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';
import { notesOf, type Put } from './note.ts';
import { workUnit } from './unit-working.ts';

const note = notesOf('spring');

const springForce = note({
  id: 'springForce',
  means: 'force of the damper unit',
  symbol: 'F_u',
  unit: 'N',
  anchor: 'damperTub',
  rank: 1,
  say: 'coil, bump rubber, gas and stop together',
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
  source: 'LP-4',
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

const bucklingAt = note({
  id: 'coilBucklesAt',
  means: 'compression at which the coil bows, standing free between flat seats',
  symbol: 's_k',
  unit: 'm',
  anchor: 'damperTub',
  rank: 3,
  say: 'no figure: it cannot bow. Over a damper body it rubs instead',
});

const fatigue = note({
  id: 'coilFatigueFactor',
  means: 'factor against fatigue of the coil between free and damper closed (Goodman, wire not peened)',
  symbol: 'n_f',
  unit: '1',
  anchor: 'damperTub',
  rank: 3,
  say: 'by limits tested on small wire; thick wire bears less',
  method: 'stress at the inside of the coil against the Goodman line',
  source: 'SP-17',
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

export const marginOf = (symbol: string, means: string) =>
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

/** Least tensile strength of the wire, where the material table goes so far. */
function strengthOfWire(material: string | undefined, wire: number): number | undefined {
  const found = material === undefined ? undefined : springMaterial(material);
  return found === undefined ? undefined : tensileStrength(found, wire)?.low;
}

export function unitFigures(
  of: SprungCorner,
  numbers: Numbers,
  now: WheelForce,
  put: Put,
  working?: Working,
): void {
  if (!of.hasUnit) return;
  const { unit, compression, ratios } = now;
  const { coil } = of.form;
  put(springLength, ratios.unitLength);
  if (working !== undefined) workUnit(of, numbers, now, working);
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
  // without a coil the unit is a damper, and its force no large figure
  put(coil === undefined ? { ...springForce, rank: 2 } : springForce, F_u);
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
  const bows = buckling(sizes, 'both ends flat and guided', working, from);
  put(bucklingAt, bows.kind === 'buckles' ? bows.at : Number.NaN);
  const strength = strengthOfWire(coil.material, sizes.wire);
  const { closedAt, coilFreeAt } = of.springing;
  if (strength !== undefined && closedAt !== undefined && closedAt > coilFreeAt!) {
    const high = of.springing.coil!.force(Math.min(closedAt, of.springing.coilSolidAt!));
    put(
      fatigue,
      goodmanFactor(sizes, { low: 0, high }, { tensileStrength: strength, surface: 'not peened' }),
    );
  }
}
