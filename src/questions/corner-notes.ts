/** What must be said beside the figures of a corner: stops that carry, springs that are loose, hands, life. */

import { handOfBar } from '../loadpath/bar-hand.ts';
import { RATE_JUMPS } from '../loadpath/figures/marks.ts';
import type { Numbers } from '../loadpath/numbers.ts';
import { type BarSurface, barLife, dutyFromParts } from '../loadpath/spring/bar-life.ts';
import { relaxationCaution } from '../loadpath/spring/coil-limits.ts';
import { coilStress, leastGaps } from '../loadpath/spring/coil-spring.ts';
import { reversals } from '../loadpath/spring/presetting.ts';
import { skinStress } from '../loadpath/spring/torsion-bar.ts';
import { barOf, coilOf } from '../loadpath/spring-of-car.ts';
import { type SprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import { shearYield, springMaterial, tensileStrength } from '../materials/spring-material.ts';
import { show, spokenAmount, unitAfter } from '../units/show.ts';
import { DEMONSTRATION_DAY } from './duty.ts';
import type { Figure } from './figure.ts';
import type { TravelRange } from './travel-range.ts';

const mm = (value: number): string => spokenAmount(value, 'm', 1);

/** At this travel: a stop that carries, a coil that is loose, a bar that reverses. */
export function standNotes(of: SprungCorner, travel: number): string[] {
  const marks = travelMarks(of);
  const told: readonly (readonly [boolean, string])[] = [
    [
      travel < marks.droopStop,
      `The wheel hangs on its droop stop from ${mm(marks.droopStop)} down; below it the damper would have to stretch.`,
    ],
    [travel < marks.coilFree, `The coil is loose on its seat below ${mm(marks.coilFree)}.`],
    [
      travel < marks.barSlack,
      `Below ${mm(marks.barSlack)} the bar is twisted backwards; a preset bar must not be.`,
    ],
    [travel > marks.rubber, `The bump rubber works above ${mm(marks.rubber)}.`],
    [
      travel > marks.coilSolid,
      `The coil is solid above ${mm(marks.coilSolid)}: the load goes straight into tub or case.`,
    ],
    [
      travel > marks.closed,
      `The damper would be closed at ${mm(marks.closed)}; the wheel does not come here.`,
    ],
    [
      marks.coilSolid < marks.closed,
      'The coil goes solid before the damper closes or the rubber ends: look at the free length and the packers.',
    ],
    [
      pressedPastMeasured(of, travel),
      'The bump rubber is pressed further than it was measured; its force here is a guess.',
    ],
  ];
  return told.filter(([holds]) => holds).map(([, words]) => words);
}

/** Spreads of a mark within which a position may lie on either side of it. */
const EITHER_SIDE = 2;

/** Where the position cannot be told from a mark at which the rate jumps, and the spread of a rate means little. */
export function jumpNotes(figures: readonly Figure[], travel: number): string[] {
  return figures
    .filter(
      ({ id, value, spread }) =>
        RATE_JUMPS.includes(id) && spread !== undefined && Math.abs(travel - value) < EITHER_SIDE * spread.u,
    )
    .map(({ means, value, unit, spread }) => {
      const mark = show(value, unit, 'mm-N', spread!.u);
      return `This position cannot be told from the ${means} (${mark.text} ± ${mark.spread}${unitAfter(mark.unit)}): the rates jump there, the car may be on either side, and their ± here is rough.`;
    });
}

function pressedPastMeasured(of: SprungCorner, travel: number): boolean {
  const known = of.springing.rubber?.knownUpTo;
  if (known === undefined || !of.hasUnit) return false;
  return of.ratiosAt(0).unitLength - of.ratiosAt(travel).unitLength > known;
}

/** Of the spring itself, whatever the travel: hand and life of a bar, gaps and relaxation of a coil. */
export function springNotes(of: SprungCorner, range: TravelRange, numbers: Numbers): string[] {
  return [...barNotes(of, range, numbers), ...coilNotes(of, numbers)];
}

/** What the car file calls the surface, and what the table of life does. */
const SURFACES: Readonly<Record<string, BarSurface>> = {
  turned: 'as turned',
  ground: 'ground',
  'ground and shot-peened': 'ground and peened',
};

function barNotes(of: SprungCorner, range: TravelRange, numbers: Numbers): string[] {
  const form = of.form.bar;
  if (form === undefined) return [];
  const notes: string[] = [];
  const { bar } = barOf(form, numbers);
  const inside = [range.droop, 0, range.bump].map((travel) => 0.999 * travel);
  const torques = inside.map((travel) => of.wheelAt(travel).torque);
  const hand = handOfBar(of, numbers);
  if (hand === undefined)
    notes.push(
      'Where the anchor holds the bar is not in the file (barAnchor), so nothing is said of its hand.',
    );
  else {
    const told = reversals({ presetHand: hand.presetFor, workingHand: hand.works, torques });
    notes.push(...told.map(({ what }) => `${what.slice(0, 1).toUpperCase()}${what.slice(1)}.`));
  }
  const material = form.material === undefined ? undefined : springMaterial(form.material);
  if (material === undefined) {
    notes.push('The material of the bar is not named, so nothing is said of its yield and life.');
    return notes;
  }
  const full = skinStress(bar, torques[2]!);
  const yields = shearYield(material, bar.diameter);
  if (yields !== undefined && full > yields) {
    notes.push(
      `At full bump the skin of the bar (${(full / 1e6).toFixed(0)} MPa) is past the yield in shear that the table gives for ${material.name} (${(yields / 1e6).toFixed(0)} MPa, before presetting).`,
    );
  }
  const strength = tensileStrength(material, bar.diameter);
  if (strength === undefined) return notes;
  const { repeats } = barLife({
    tensileStrength: strength.low,
    diameter: bar.diameter,
    surface: SURFACES[form.surface ?? 'ground']!,
    residualAtSkin: 0,
    duty: dutyFromParts(full, DEMONSTRATION_DAY),
  });
  notes.push(
    `Life of the bar on an assumed demonstration day: between ${count(repeats.low)} and ${count(repeats.high)} days, presetting not counted. An estimate by class of surface; crack tests rule.`,
  );
  return notes;
}

/** Two figures are all that a fatigue life deserves. */
const count = (days: number): string =>
  days > 1e5 ? 'more than 100 000' : Number(days.toPrecision(2)).toString();

/** 45 °C beside an engine: common practice, no source. */
const WORKING_TEMPERATURE = 318;

function coilNotes(of: SprungCorner, numbers: Numbers): string[] {
  const form = of.form.coil;
  if (form === undefined) return [];
  const notes: string[] = [];
  const { coil } = coilOf(form, numbers);
  const { closedAt, coilSolidAt } = of.springing;
  const gaps = leastGaps(coil);
  if (closedAt !== undefined && coilSolidAt! - closedAt < gaps) {
    notes.push(
      `With the damper closed ${mm(Math.max(0, coilSolidAt! - closedAt))} are left before the coil is solid; EN 13906-1 asks for ${mm(gaps)} under a moving load (from memory).`,
    );
  }
  const material = form.material === undefined ? undefined : springMaterial(form.material);
  const strength = material === undefined ? undefined : tensileStrength(material, coil.wire);
  if (material === undefined || strength === undefined) {
    notes.push(
      'The strength of the wire is not in the table at this diameter, so nothing is said of its fatigue and loss of length: ask for the certificate.',
    );
    return notes;
  }
  const caution = relaxationCaution({
    stress: coilStress(coil, of.wheelAt(0).unit.coil),
    tensileStrength: strength.low,
    temperature: WORKING_TEMPERATURE,
    hottest: material.hottest.value,
  });
  if (caution !== undefined) notes.push(caution);
  return notes;
}
