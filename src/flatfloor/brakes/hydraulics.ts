/**
 * From the pedal to the ground: bar, bores, pistons, pads.
 *
 * In    sizes of one axle's brakes, the bar
 * Out   force at the ground for a force on the pedal
 *
 * BR-n are the equations of docs/theory/brakes.md.
 */
import type { CarForm } from '../../car/read.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';

export type BrakeSystem = NonNullable<NonNullable<CarForm['brakes']>['system']>;
export type End = 'front' | 'rear';

export const barShare = formula({
  symbol: 'f',
  means: 'part of the bar’s force on the front cylinder',
  is: '1/2 + x_b/w',
  unit: '1',
  terms: {
    x_b: { unit: 'm', means: 'bearing off the middle of the bar, towards the front clevis' },
    w: { unit: 'm', means: 'bar, clevis to clevis' },
  },
  source: 'BR-1',
  holds: 'clevises free, bar square to its rods: at a slant it is held',
});

const areaOf = (symbol: string, means: string) =>
  formula({
    symbol,
    means,
    is: 'π*d^2/4',
    unit: 'm^2',
    terms: { d: { unit: 'm', means: 'diameter' } },
    source: 'BR-2',
  });

const CYLINDER = areaOf('A_c', 'area of the master cylinder');
const PISTON = areaOf('A_k', 'area of a piston of the caliper');

export const linePressure = formula({
  symbol: 'p',
  means: 'line pressure',
  is: 'F_r/A_c',
  unit: 'Pa',
  terms: {
    F_r: { unit: 'N', means: 'force on the rod of this cylinder' },
    A_c: { unit: 'm^2', means: 'area of the master cylinder' },
  },
  source: 'BR-2',
});

export const brakeTorque = formula({
  symbol: 'T_b',
  means: 'torque of the brake of one wheel',
  is: '2*μ*p*A_p*r_b',
  unit: 'N m',
  terms: {
    μ: { unit: '1', means: 'friction of pad on disc' },
    p: { unit: 'Pa', means: 'line pressure' },
    A_p: { unit: 'm^2', means: 'area of the pistons on one side' },
    r_b: { unit: 'm', means: 'radius at which the pads press' },
  },
  source: 'BR-3',
});

export const gainOf = formula({
  symbol: 'G_b',
  means: 'braking force of the axle at the ground for a force on its cylinder’s rod',
  is: '2*(2*μ*A_p*r_b)/(A_c*R)',
  unit: '1',
  terms: {
    μ: { unit: '1', means: 'friction of pad on disc' },
    A_p: { unit: 'm^2', means: 'area of the pistons on one side' },
    r_b: { unit: 'm', means: 'radius at which the pads press' },
    A_c: { unit: 'm^2', means: 'area of the master cylinder' },
    R: { unit: 'm', means: 'loaded radius of the tyre, mean of left and right' },
  },
  source: 'BR-4',
  holds: 'no booster, no spring of the seals, pads clear of the disc when let go',
});

export interface AxleBrake {
  readonly cylinder: number;
  readonly pistons: number;
  readonly gain: Ratio;
  readonly loadedRadius: number;
}

/** The brakes of an axle: areas and gain. [BR-2, BR-4] */
export function axleBrake(
  car: CarForm,
  system: BrakeSystem,
  end: End,
  numbers: Numbers,
  working?: Working,
): AxleBrake {
  const form = system[end];
  const cylinder = CYLINDER({ d: numbers.of(form.masterCylinder) }, working, {
    d: fromReading(form.masterCylinder),
  });
  let pistons = 0;
  for (const piston of form.pistons) {
    pistons += PISTON({ d: numbers.of(piston) }, working, { d: fromReading(piston) });
  }
  working?.add({
    kind: 'solved',
    symbol: 'A_p',
    means: 'area of the pistons on one side',
    method: 'sum of the pistons',
    value: pistons,
    unit: 'm^2',
    source: 'BR-2',
    terms: [],
  });
  const { left, right } = car[end];
  const loadedRadius = (numbers.of(left.wheel.loadedRadius) + numbers.of(right.wheel.loadedRadius)) / 2;
  const gain = gainOf(
    {
      μ: numbers.of(form.friction),
      A_p: pistons,
      r_b: numbers.of(form.radius),
      A_c: cylinder,
      R: loadedRadius,
    },
    working,
    { μ: fromReading(form.friction), r_b: fromReading(form.radius) },
  );
  return { cylinder, pistons, gain, loadedRadius };
}

export const frontShareOf = formula({
  symbol: 'Λ',
  means: 'front share of the braking force',
  is: 'f*G_1/(f*G_1 + (1 - f)*G_2)',
  unit: '1',
  terms: {
    f: { unit: '1', means: 'part of the bar’s force on the front cylinder' },
    G_1: { unit: '1', means: 'gain of the front brakes' },
    G_2: { unit: '1', means: 'gain of the rear brakes' },
  },
  source: 'BR-5',
});

/** Where the bar would stand for a front share. [BR-8] */
export const barFor = formula({
  symbol: 'x_i',
  means: 'bearing off the middle of the bar for that share',
  is: 'w*(Λ_i*G_2/(Λ_i*G_2 + (1 - Λ_i)*G_1) - 1/2)',
  unit: 'm',
  terms: {
    w: { unit: 'm', means: 'bar, clevis to clevis' },
    Λ_i: { unit: '1', means: 'front share that is wanted' },
    G_1: { unit: '1', means: 'gain of the front brakes' },
    G_2: { unit: '1', means: 'gain of the rear brakes' },
  },
  source: 'BR-8',
});
