/** Figures of the torsion bar: twist, torque, stress, rate, mass. */
import { shearYield, springMaterial, tensileStrength } from '../../materials/spring-material.ts';
import { formula, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { yieldTorque } from '../spring/presetting.ts';
import { vernierStep } from '../spring/spline.ts';
import { barMass, skinStress } from '../spring/torsion-bar.ts';
import { barOf } from '../spring-of-car.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';
import { noteSolved, notesOf, type Put } from './note.ts';

const note = notesOf('spring');

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

const yieldAt = note({
  id: 'barYieldTwist',
  means: 'twist at which the skin yields, bar not preset',
  symbol: 'φ_Y',
  unit: 'rad',
  anchor: 'rockerPivot',
  rank: 3,
});

const splineStep = note({
  id: 'barSplineStep',
  means: 'finest step of the anchor, both ends moved against one another',
  symbol: 'ψ',
  unit: 'rad',
  anchor: 'rockerPivot',
  rank: 3,
  method: 'whole turn over the least common multiple of the two numbers of teeth',
  source: 'SP-43',
});

const twistAtYield = formula({
  symbol: 'φ_Y',
  means: 'twist at which the skin yields',
  is: 'T_Y/k_t',
  unit: 'rad',
  terms: {
    T_Y: { unit: 'N m', means: 'torque at which the skin yields' },
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar' },
  },
  source: 'SP-37',
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

export function barFigures(
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
  const yieldShear = material === undefined ? undefined : shearYield(material, sizes.diameter);
  if (yieldShear !== undefined) {
    noteSolved(working, `share of the tensile strength, ${material!.name}, low end`, 'SP-37', () => [
      { symbol: 'τ_y', means: 'yield in shear', value: yieldShear, unit: 'Pa' },
    ]);
    const T_Y = yieldTorque({ ...sizes, yieldShear }, working, from);
    put(yieldAt, twistAtYield({ T_Y, k_t: springing.barRate! }, working));
  }
  const [first, second] = [bar.rockerEnd.splines, bar.anchorEnd.splines];
  if (first !== undefined && second !== undefined) {
    put(splineStep, vernierStep({ first: numbers.of(first), second: numbers.of(second) }));
  }
  put(barMassNote, barMass(sizes));
  return T;
}
