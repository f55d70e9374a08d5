/** Figures of the upright: how the wheel stands and how that changes with travel. */

import { formula, type Working } from '../../working/working.ts';
import type { Attitude } from '../corner/attitude.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import type { SprungCorner } from '../sprung-corner.ts';
import { notesOf, type Put } from './note.ts';

const note = notesOf('upright');
const solved = { method: 'the linkage closed at this travel', source: 'LP-16' } as const;
const derived = { method: 'first derivative of the closed linkage', source: 'LP-16' } as const;

const camber = note({
  id: 'camber',
  lead: true,
  means: 'camber',
  symbol: 'γ',
  unit: 'rad',
  anchor: 'wheelCentre',
  rank: 1,
  say: 'negative: top leans inboard',
  ...solved,
});
const toe = note({
  id: 'toe',
  means: 'toe, this wheel',
  symbol: 'δ',
  unit: 'rad',
  anchor: 'contact',
  rank: 1,
  say: 'positive: in',
  ...solved,
});
const toeAtRim = note({
  id: 'toeAtRim',
  means: 'toe, this wheel, at the rim',
  symbol: 't_δ',
  unit: 'm',
  anchor: 'contact',
  rank: 2,
  say: 'positive: in',
});
const bumpSteer = note({
  id: 'bumpSteer',
  means: 'toe change per bump travel',
  symbol: 'δ_z',
  unit: 'rad/m',
  anchor: 'toeOuter',
  rank: 2,
  say: 'positive: toes in as the wheel rises',
  ...derived,
});
const camberGain = note({
  id: 'camberGain',
  means: 'camber change per bump travel',
  symbol: 'γ_z',
  unit: 'rad/m',
  anchor: 'upperOuter',
  rank: 2,
  ...derived,
});
const caster = note({
  id: 'caster',
  means: 'caster',
  symbol: 'τ_c',
  unit: 'rad',
  anchor: 'upperOuter',
  rank: 1,
  say: 'positive: top leans back',
  ...solved,
  source: 'LP-17',
});
const kingpin = note({
  id: 'kingpinInclination',
  means: 'kingpin inclination',
  symbol: 'σ',
  unit: 'rad',
  anchor: 'upperOuter',
  rank: 2,
  say: 'positive: top leans inboard',
  ...solved,
  source: 'LP-17',
});
const scrub = note({
  id: 'scrubRadius',
  means: 'scrub radius',
  symbol: 'r_s',
  unit: 'm',
  anchor: 'contact',
  rank: 2,
  say: 'positive: contact point outboard of the steering axis',
  ...solved,
  source: 'LP-18',
});
const trail = note({
  id: 'mechanicalTrail',
  means: 'mechanical trail',
  symbol: 'n_t',
  unit: 'm',
  anchor: 'contact',
  rank: 2,
  say: 'positive: contact point behind the steering axis',
  ...solved,
  source: 'LP-18',
});
const centreTravel = note({
  id: 'wheelCentreHeight',
  means: 'wheel centre above the contact point',
  symbol: 'h_w',
  unit: 'm',
  anchor: 'wheelCentre',
  rank: 3,
  ...solved,
  source: 'LP-10',
});

const rimToe = formula({
  symbol: 't_δ',
  means: 'toe, this wheel, at the rim',
  is: 'D_r*sin(δ)',
  unit: 'm',
  terms: {
    D_r: { unit: 'm', means: 'diameter at which toe is read' },
    δ: { unit: 'rad', means: 'toe, this wheel' },
  },
  source: 'LP-16',
});

export function uprightFigures(
  of: SprungCorner,
  numbers: Numbers,
  attitude: Attitude,
  put: Put,
  working?: Working,
): void {
  put(camber, attitude.camber.value);
  put(toe, attitude.toe.value);
  const { rimDiameter } = of.form.wheel;
  const diameter = numbers.of(rimDiameter);
  put(toeAtRim, rimToe({ D_r: diameter, δ: attitude.toe.value }, working, { D_r: fromReading(rimDiameter) }));
  put(bumpSteer, attitude.toe.perTravel);
  put(camberGain, attitude.camber.perTravel);
  put(caster, attitude.caster.value);
  put(kingpin, attitude.kingpinInclination.value);
  put(scrub, attitude.scrubRadius.value);
  put(trail, attitude.mechanicalTrail.value);
  put(centreTravel, attitude.wheelCentreHeight.value);
}
