/** Brake bias from bores and bar against the loads of the axles, pedal and line pressures, wear. */
import type { Car } from '../car/read.ts';
import { decelerationName, putBrakes } from '../flatfloor/brakes/put-brakes.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';
import { BRAKE_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { floorAnswer, floorRefused, type ToldAnswer, type ToldOptions } from './floor-answer.ts';
import { type ToldFigure, withAsked } from './floor-figures.ts';

export interface BrakesAsked extends ToldOptions {
  readonly speed: number;
  /** m/s², positive. */
  readonly decelerations: readonly number[];
}

/** Decelerations that are looked at where none are asked for. */
export const USUAL_DECELERATIONS: readonly number[] = [0.5, 1, 1.5, 2].map((each) => each * STANDARD_GRAVITY);

export function brakesOf(car: Car, asked: BrakesAsked): ToldAnswer {
  const { brakes, body } = car.form;
  if (brakes?.system === undefined) {
    return floorRefused('The file tells no bores, bar, pads and discs: write them under brakes, system.');
  }
  if (body === undefined) {
    return floorRefused(
      'The file has no body: without the height of the centre of gravity the loads of the axles under braking are not known.',
    );
  }
  const { decelerations, speed } = asked;
  if (!(speed >= 0)) return floorRefused('The car goes forward here: the speed is not below nothing.');
  if (decelerations.length === 0 || decelerations.some((each) => !(each > 0))) {
    return floorRefused('A deceleration is above nothing, such as 1.5 g.');
  }
  if (new Set(decelerations.map(decelerationName)).size < decelerations.length) {
    return floorRefused('Two of the decelerations are the same to 0.01 g.');
  }
  const { system } = brakes;
  return floorAnswer(
    withAsked(car, []),
    (numbers, put, working) =>
      putBrakes({ car: car.form, system, speed, decelerations }, numbers, put, working),
    asked,
    (figures) => ({ notes: notesOn(car, figures), cautions: [BRAKE_CAUTION, STANDING_CAUTION] }),
  );
}

const valueIn = (figures: readonly ToldFigure[], of: string, id: string): ToldFigure | undefined =>
  figures.find((each) => each.of === of && each.id === id);

function notesOn(car: Car, figures: readonly ToldFigure[]): string[] {
  const { brakes, air } = car.form;
  const { bar } = brakes!.system!;
  const share = valueIn(figures, 'car', 'frontShare')!;
  const filed = brakes!.frontShare;
  const apart = Math.abs(share.value - filed.value);
  const unsure = 2 * Math.hypot(filed.u, share.spread?.u ?? 0);
  const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;
  const decelerations = [...new Set(figures.map(({ of }) => of))].filter((of) => of.endsWith(' g'));
  const rearFirst = decelerations.filter(
    (of) => valueIn(figures, of, 'rearGrip')!.value > valueIn(figures, of, 'frontGrip')!.value,
  );
  const beyond = decelerations.filter((of) => {
    const room = bar.room?.value ?? bar.width.value / 2;
    return Math.abs(valueIn(figures, of, 'barForIdeal')!.value) > room;
  });
  const thin = figures.filter(({ id, value }) => id.endsWith('Laps') && value <= 0);
  const none = decelerations.filter((of) => valueIn(figures, of, 'pedalForce')!.value <= 0);
  const told: readonly (readonly [boolean, string])[] = [
    [
      rearFirst.length > 0,
      `At ${rearFirst.join(', ')} the rear tyres are asked for more than the front: they lock first, and the car spins. Move the bar towards the front.`,
    ],
    [
      apart > unsure,
      `brakes.frontShare of the file is ${percent(filed.value)}, bores, bar and pads give ${percent(share.value)}: more apart than their spreads. The load cases are worked with that of the file.`,
    ],
    [
      beyond.length > 0,
      `For both axles to ask alike at ${beyond.join(', ')} the bar would stand further off than it may: other bores are wanted.`,
    ],
    [
      thin.length > 0,
      `At or below its least thickness: ${thin.map(({ of, id }) => `${of} ${id.replace('Laps', '')}`).join(', ')}. Change before the car moves.`,
    ],
    [none.length > 0, `At ${none.join(', ')} the drag alone slows the car so.`],
    [air === undefined, 'The file tells no forces of the air: the loads are those without downforce.'],
  ];
  return [
    ...told.filter(([holds]) => holds).map(([, each]) => each),
    'The share at which both axles ask alike rises with deceleration: with the bar set so that the front still asks for more at the hardest braking that is met, the front locks first everywhere below. In the wet less is asked, and the bar may go rearward for it, never the other way round. Engine braking comes on top at the rear and is not counted.',
    'Friction of the pads is that of one temperature, alike front and rear. Measure line pressures at both ends with gauges at one pedal force, and prove the bias on a straight, from low speeds up.',
  ];
}
