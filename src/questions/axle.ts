/** What an axle and the whole car do: roll centres, antis, rates in heave and roll, frequencies, damping. */
import type { Car } from '../car/read.ts';
import { putAxleFigures } from '../loadpath/figures/axle.ts';
import { putCarFigures } from '../loadpath/figures/car.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { STANDING_CAUTION } from './cautions.ts';
import type { End, Figure, Stance } from './figure.ts';
import { isRefusal } from './refusal.ts';
import { figuresOf, figuresWithSpread, inOrder, type Pass } from './spread-of-figures.ts';
import { type WorkingAnswer, workingOfPass } from './working.ts';

export interface AxleReached {
  readonly reached: true;
  readonly figures: readonly Figure[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type AxleAnswer = AxleReached | { readonly reached: false; readonly message: string };

const axleAt = (end: End, stance: Stance) => ({ ...stance[end], rack: end === 'front' ? stance.rack : 0 });

const axlePass =
  (car: Car, end: End, stance: Stance): Pass =>
  (numbers, put) => {
    putAxleFigures(car.form, end, axleAt(end, stance), numbers, put);
  };

const carPass =
  (car: Car): Pass =>
  (numbers, put) =>
    putCarFigures(car.form, numbers, put);

export function axleFigures(
  car: Car,
  end: End,
  stance: Stance,
  options: { readonly spread?: boolean } = {},
): AxleAnswer {
  return answer(car, axlePass(car, end, stance), options, () => axleNotes(car, end));
}

/** The whole car as surveyed. */
export const carFigures = (car: Car, options: { readonly spread?: boolean } = {}): AxleAnswer =>
  answer(car, carPass(car), options, () => bodyNotes(car));

export const workingOfAxle = (car: Car, end: End, stance: Stance, figure: string): WorkingAnswer =>
  workingOfPass(car, figure, axlePass(car, end, stance), (put, working) => {
    putAxleFigures(car.form, end, axleAt(end, stance), new Numbers(car.values), put, working);
  });

export const workingOfCar = (car: Car, figure: string): WorkingAnswer =>
  workingOfPass(car, figure, carPass(car), (put, working) =>
    putCarFigures(car.form, new Numbers(car.values), put, working),
  );

function answer(
  car: Car,
  pass: Pass,
  options: { readonly spread?: boolean },
  notes: () => string[],
): AxleAnswer {
  try {
    const figures = inOrder(options.spread ? figuresWithSpread(car, pass) : figuresOf(car, pass));
    return { reached: true, figures, notes: notes(), cautions: [STANDING_CAUTION] };
  } catch (reason) {
    if (isRefusal(reason)) {
      return { reached: false, message: reason.message };
    }
    throw reason;
  }
}

function axleNotes(car: Car, end: End): string[] {
  const axle = car.form[end];
  const notes: string[] = [];
  if (axle.antiRollBar !== undefined) {
    const missing = (['left', 'right'] as const).filter(
      (side) => axle[side].points.dropLinkArm === undefined || axle[side].points.dropLinkRocker === undefined,
    );
    if (missing.length > 0)
      notes.push(
        `The anti-roll bar is not counted: the points of its drop link are not there (${missing.join(', ')}).`,
      );
    else notes.push('The anti-roll bar is taken as free of load in the surveyed position.');
  }
  if (axle.heave !== undefined && axle.heave.gap.value < 0) {
    notes.push(
      'The heave spring is preloaded as surveyed; the springs of the two corners are taken to carry the whole load of the scales.',
    );
  }
  notes.push(...bodyNotes(car));
  return notes;
}

function bodyNotes(car: Car): string[] {
  const notes: string[] = [];
  if (car.form.body === undefined)
    notes.push('No height of the centre of gravity is given, so no anti-dive, anti-lift or anti-squat.');
  if (car.form.brakes === undefined)
    notes.push('The brakes are not described, so no anti-dive and no anti-lift.');
  if (
    car.form.body !== undefined &&
    (car.form.body.rollInertia === undefined || car.form.body.pitchInertia === undefined)
  ) {
    notes.push('A moment of inertia is missing, so a frequency of roll or pitch is too.');
  }
  return notes;
}
