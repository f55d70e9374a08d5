/** Slips in what is told of pressures, brakes and fuel: figures that cannot all be of one car, and some that can hurt. */
import type { Problem } from '../measured/problem.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type Form = Placed<RawCar>;

const ENDS = ['front', 'rear'] as const;

const tell = (
  code: string,
  path: string,
  message: string,
  remedy: string,
  weight: Problem['weight'] = 'error',
): Problem => ({ code, path, message: `${message}.`, remedy, weight });

export const checkDayOut = (form: Form): readonly Problem[] => [
  ...leastPressures(form),
  ...balanceBar(form),
  ...wearFalls(form),
  ...cellHolds(form),
];

function leastPressures({ pressures }: Form): Problem[] {
  if (pressures === undefined) return [];
  return ENDS.flatMap((end) => {
    const { hot, least } = pressures[end];
    if (least === undefined || least.value <= hot.value) return [];
    return [
      tell(
        'pressures/least',
        `pressures.${end}.hot`,
        `The ${end} tyres are wanted at ${hot.text} hot, below their least of ${least.text} cold`,
        'Hot and cold the wrong way round, or another unit?',
      ),
    ];
  });
}

function balanceBar({ brakes }: Form): Problem[] {
  const bar = brakes?.system?.bar;
  if (bar === undefined || Math.abs(bar.offset.value) < bar.width.value / 2) return [];
  return [
    tell(
      'brakes/bar',
      'brakes.system.bar.offset',
      `The bearing of the balance bar stands ${bar.offset.text} off the middle, beyond its clevises (${bar.width.text} apart)`,
      'Counted from the middle between the clevises, towards the front one.',
    ),
  ];
}

function wearFalls({ brakes }: Form): Problem[] {
  const system = brakes?.system;
  if (system === undefined) return [];
  return ENDS.flatMap((end) => {
    const { wear = [], leastPad, leastDisc } = system[end];
    const path = `brakes.system.${end}.wear`;
    return wear.flatMap((reading, k) => {
      const before = wear[k - 1];
      const problems: Problem[] = [];
      if (before !== undefined && reading.laps.value <= before.laps.value) {
        problems.push(
          tell(
            'brakes/wear',
            `${path}.${k}.laps`,
            `Wear of the ${end} brakes: ${reading.laps.text} laps come after ${before.laps.text}`,
            'First reading first; laps are counted from it on.',
          ),
        );
      }
      for (const [what, least] of [
        ['pad', leastPad],
        ['disc', leastDisc],
      ] as const) {
        const [now, then] = [reading[what], before?.[what]];
        // one instrument reads a hair thicker now and then: two of its spreads
        if (
          now !== undefined &&
          then !== undefined &&
          now.value > then.value + 2 * Math.hypot(now.u, then.u)
        ) {
          problems.push(
            tell(
              'brakes/wear',
              `${path}.${k}.${what}`,
              `The ${end} ${what} grew from ${then.text} to ${now.text}`,
              'A new one? Then its readings begin anew.',
            ),
          );
        }
        if (now !== undefined && least !== undefined && k === wear.length - 1 && now.value <= least.value) {
          problems.push(
            tell(
              'brakes/thickness',
              `${path}.${k}.${what}`,
              `The ${end} ${what} is at ${now.text}; its least is ${least.text}`,
              'Change it before the car moves.',
              'warning',
            ),
          );
        }
      }
      return problems;
    });
  });
}

function cellHolds({ fuel }: Form): Problem[] {
  const tank = fuel?.tank;
  if (fuel === undefined || tank === undefined) return [];
  return (['surveyed', 'unusable'] as const).flatMap((key) => {
    const volume = fuel[key];
    if (volume === undefined || volume.value <= tank.value) return [];
    return [
      tell(
        'fuel/tank',
        `fuel.${key}`,
        `${key === 'surveyed' ? 'Aboard at the survey' : 'Out of reach of the pick-up'}: ${volume.text}; the cell holds ${tank.text}`,
        'Litres or gallons?',
      ),
    ];
  });
}
