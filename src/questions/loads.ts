/** What every wheel, member, rocker and spring carries while the car does something. */
import type { Car } from '../car/read.ts';
import { putLoadFigures } from '../loadpath/figures/loads.ts';
import { putWheelLoads } from '../loadpath/figures/wheel-loads.ts';
import { type Doing, endOf, sideOf, WHEEL_NAMES, type WheelName } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { CRACK_TEST_CAUTION, LOAD_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { Figure, Wheel } from './figure.ts';
import { isRefusal } from './refusal.ts';
import { figuresOf, figuresWithSpread, inOrder, type Pass } from './spread-of-figures.ts';
import { standingAsFiled } from './standing-as-filed.ts';
import { leftOutNotes, strengthNotes } from './strength-notes.ts';
import { type WorkingAnswer, workingOfPass } from './working.ts';

export interface WheelLoads {
  readonly wheel: Wheel;
  readonly figures: readonly Figure[];
}

export interface LoadsReached {
  readonly reached: true;
  readonly doing: Doing;
  readonly wheels: readonly WheelLoads[];
  /** What is left of the equations of the whole car, N. */
  readonly residual: number;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type LoadsAnswer =
  | LoadsReached
  | { readonly reached: false; readonly doing: Doing; readonly message: string };

export const wheelNamed = ({ end, side }: Wheel): WheelName =>
  `${end}${side === 'left' ? 'Left' : 'Right'}` as WheelName;

const asWheel = (name: WheelName): Wheel => ({ end: endOf(name), side: sideOf(name) });

/** Loads at the wheels asked for, or at all four. */
export function loadsOf(
  car: Car,
  doing: Doing,
  options: { readonly spread?: boolean; readonly wheels?: readonly Wheel[] } = {},
): LoadsAnswer {
  if (car.form.body === undefined) {
    return {
      reached: false,
      doing,
      message:
        'The file has no body: without the height of the centre of gravity no load moves from wheel to wheel. Measure it by the raised axle and write it under body, centreOfGravityHeight.',
    };
  }
  const names = (options.wheels ?? WHEEL_NAMES.map(asWheel)).map(wheelNamed);
  const pass: Pass = (numbers, put) => {
    putWheelLoads(car.form, names, doing, numbers, put);
  };
  try {
    const all = options.spread === false ? figuresOf(car, pass) : figuresWithSpread(car, pass);
    const standing = standingAsFiled(car, doing);
    // each wheel puts its own load first
    const starts = all.flatMap(({ id }, k) => (id === 'tyreLoad' ? [k] : []));
    const wheels = names.map((name, k) => ({
      wheel: asWheel(name),
      figures: inOrder(all.slice(starts[k], starts[k + 1])),
    }));
    return {
      reached: true,
      doing,
      wheels,
      residual: standing.residual,
      notes: notesOn(car, doing, wheels),
      cautions: [LOAD_CAUTION, CRACK_TEST_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason)) return { reached: false, doing, message: reason.message };
    throw reason;
  }
}

export interface LoadWorkingAsked {
  readonly wheel: Wheel;
  readonly doing: Doing;
  readonly figure: string;
}

export function workingOfLoads(car: Car, { wheel, doing, figure }: LoadWorkingAsked): WorkingAnswer {
  const name = wheelNamed(wheel);
  const pass: Pass = (numbers, put) => {
    putWheelLoads(car.form, [name], doing, numbers, put);
  };
  return workingOfPass(car, figure, pass, (put, working) => {
    putLoadFigures(car.form, name, doing, new Numbers(car.values), put, working);
  });
}

function notesOn(car: Car, doing: Doing, wheels: readonly WheelLoads[]): string[] {
  const lifted = wheels
    .filter(({ figures }) => figures.find(({ id }) => id === 'tyreLoad')?.value === 0)
    .map(({ wheel }) => `${wheel.end} ${wheel.side}`);
  const struck = Object.values(doing.strikes).some((each) => each !== 0);
  const told: readonly (readonly [boolean, string])[] = [
    [lifted.length > 0, `Off the ground: ${lifted.join(', ')}.`],
    [
      doing.speed > 0 && car.form.air === undefined,
      'The file tells no forces of the air, so the speed adds neither downforce nor drag.',
    ],
    [
      car.form.brakes === undefined && doing.longitudinal < 0,
      'The file tells no share of the brakes, so each axle brakes by its load.',
    ],
    [
      struck,
      'A kerb is taken as a load at rest: the tub stays where it is and the wheel goes where its spring lets it. Damper force and the inertia of the wheel are not in it; a real strike is shorter and can be higher.',
    ],
  ];
  const words = told.filter(([holds]) => holds).map(([, each]) => each);
  return [...strengthNotes(wheels), ...words, ...leftOutNotes(car, doing, wheels)];
}
