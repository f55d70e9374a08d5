/** Slips in the set-up part of the file: names that are none, more ballast than fits, a pressure out of its range. */

import { distance } from '../maths/vec3.ts';
import { nearest, type Problem } from '../measured/problem.ts';
import { spokenAmount } from '../units/show.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type Form = Placed<RawCar>;

export function checkFloor(form: Form): readonly Problem[] {
  return [
    ...checkNames(form),
    ...checkBallast(form),
    ...checkCorners(form),
    ...checkThreads(form),
    ...checkFuel(form),
  ];
}

const error = (code: string, path: string, message: string, remedy: string): Problem => ({
  code,
  path,
  message,
  remedy,
  weight: 'error',
});

const named = (name: string, known: readonly string[], nothing: string): string => {
  const near = nearest(name, known);
  return known.length === 0
    ? nothing
    : `It has: ${known.join(', ')}.${near === undefined ? '' : ` Did you mean "${near}"?`}`;
};

function checkNames({ floor }: Form): Problem[] {
  if (floor === undefined) return [];
  const points = Object.keys(floor.heights ?? {});
  const aboard = Object.keys(floor.aboard ?? {});
  const places = Object.keys(floor.ballast ?? {});
  const heights = (path: string, of: Readonly<Record<string, unknown>> | undefined): Problem[] =>
    Object.keys(of ?? {})
      .filter((name) => !points.includes(name))
      .map((name) =>
        error(
          'floor/unknown-height',
          `${path}.height.${name}`,
          `Height of "${name}": the car has no such measuring point.`,
          named(
            name,
            points,
            'Write the measuring points under floor, heights, each with its place on the tub.',
          ),
        ),
      );
  return [
    ...aboard
      .filter((name) => places.includes(name))
      .map((name) =>
        error(
          'floor/name-twice',
          `floor.ballast.${name}`,
          `"${name}" is a place for ballast and something aboard too.`,
          'Give the two different names.',
        ),
      ),
    ...heights('floor.sheet', floor.sheet?.height),
    ...Object.entries(floor.read ?? {}).flatMap(([sheet, read]) => [
      ...heights(`floor.read.${sheet}.readings`, read.readings.height),
      ...Object.keys(read.aboard ?? {})
        .filter((name) => !aboard.includes(name) && !places.includes(name))
        .map((name) =>
          error(
            'floor/unknown-aboard',
            `floor.read.${sheet}.aboard.${name}`,
            `${sheet}: "${name}" is aboard, but the file does not say where in the car it is.`,
            named(
              name,
              [...aboard, ...places],
              'Write it under floor, aboard, with its mass as surveyed and its place.',
            ),
          ),
        ),
    ]),
  ];
}

const checkBallast = ({ floor }: Form): Problem[] =>
  Object.entries(floor?.ballast ?? {})
    .filter(([, { fitted, most }]) => fitted.value > most.value)
    .map(([name]) =>
      error(
        'floor/ballast',
        `floor.ballast.${name}.fitted`,
        `Ballast ${name}: more is fitted than may be fitted there.`,
        'Weigh what is there, and ask what its mounting carries.',
      ),
    );

function checkCorners(form: Form): Problem[] {
  return (['front', 'rear'] as const).flatMap((end) =>
    (['left', 'right'] as const).flatMap((side) => {
      const corner = form[end][side];
      const path = `${end}.${side}`;
      const tyre = corner.adjusters?.tyre;
      return [
        ...(tyre !== undefined &&
        (tyre.pressure.value < tyre.least.value || tyre.pressure.value > tyre.most.value)
          ? [
              error(
                'floor/pressure',
                `${path}.adjusters.tyre.pressure`,
                `${end === 'front' ? 'Front' : 'Rear'} ${side}, tyre pressure as surveyed lies outside least and most.`,
                'Look which of the three was misread.',
              ),
            ]
          : []),
      ];
    }),
  );
}

/** What is said of two ends where the thread has one hand alone. */
function checkThreads(form: Form): Problem[] {
  return (['front', 'rear'] as const).flatMap((end) => {
    const { left, right, antiRollBar: bar } = form[end];
    const threads = [
      [`${end}.left.rod.thread`, left.rod.thread],
      [`${end}.right.rod.thread`, right.rod.thread],
      [`${end}.left.toeLink.thread`, left.toeLink?.thread],
      [`${end}.right.toeLink.thread`, right.toeLink?.thread],
      [`${end}.antiRollBar.leftLink.thread`, bar?.leftLink?.thread],
      [`${end}.antiRollBar.rightLink.thread`, bar?.rightLink?.thread],
    ] as const;
    return threads.flatMap(([at, thread]): Problem[] => {
      if (thread === undefined || thread.hands === 'left and right') return [];
      const { other, rightHandAt } = thread;
      return [
        ...(other === undefined
          ? []
          : [
              error(
                'floor/one-thread',
                `${at}.other`,
                'A thread at the other end is described, but the hands are not "left and right".',
                'Write hands: left and right, or leave the other end out.',
              ),
            ]),
        ...(rightHandAt === undefined
          ? []
          : [
              error(
                'floor/one-thread',
                `${at}.rightHandAt`,
                'The end with the right-hand thread is told, but the hands are not "left and right".',
                'Write hands: left and right, or leave rightHandAt out.',
              ),
            ]),
      ];
    });
  });
}

/** Two readings of one thing that differ by more are not of one car: one in a thousand. */
const APART = 3.29;
/** The middle of the fuel moves with its level by less than this, m: common practice, no source. */
const LEVEL = 0.06;

/** Fuel is told among what is aboard on the flat floor, and by itself for the day out: the same fuel at the survey. */
function checkFuel({ floor, fuel }: Form): Problem[] {
  const aboard = floor?.aboard?.fuel;
  if (aboard === undefined || fuel === undefined) return [];
  const told: string[] = [];
  const { surveyed, density } = fuel;
  if (density !== undefined) {
    const mass = surveyed.value * density.value;
    const u = Math.hypot(aboard.mass.u, surveyed.u * density.value, surveyed.value * density.u);
    if (Math.abs(mass - aboard.mass.value) > APART * u)
      told.push(
        `${spokenAmount(aboard.mass.value, 'kg', 1)} aboard, and ${spokenAmount(surveyed.value, 'm^3', 1)} surveyed, which is ${spokenAmount(mass, 'kg', 1)}`,
      );
  }
  const off = distance(aboard.at.value, fuel.at.value);
  if (off > LEVEL) told.push(`its middle ${spokenAmount(off, 'm', 0)} apart`);
  return told.length === 0
    ? []
    : [
        {
          code: 'floor/fuel-twice',
          path: 'floor.aboard.fuel',
          message: `The fuel at the survey is told twice, under floor, aboard and under fuel, and not alike: ${told.join('; ')}.`,
          remedy: 'Look which is right and write the other like it: set-up and day out would be of two cars.',
          weight: 'warning',
        },
      ];
}
