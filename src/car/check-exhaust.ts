/**
 * Slips in the description of the exhaust: cylinders that do not agree with the firing order, ports that face into the
 * head, tube thinner than its wall, a length whose ends are not told, two ports in one place.
 */
import { tubeMaterial, tubeMaterialsLike } from '../materials/tube-material.ts';
import { distance, length, sub, type Vec3 } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import { checkCollectors } from './check-collectors.ts';
import { checkSteps } from './check-steps.ts';
import { checkStuds } from './check-studs.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

export type ExhaustForm = NonNullable<Placed<RawCar>['exhaust']>;
export type BankForm = ExhaustForm['left'];
export type BankName = 'left' | 'right';

/** Shortest distance between the two points that tell a direction. */
const LEAST_REACH = 0.02;

export function checkExhaust({ exhaust }: Placed<RawCar>): readonly Problem[] {
  if (exhaust === undefined) return [];
  const banks = (['left', 'right'] as const).flatMap((side) => {
    const bank = exhaust[side];
    return bank === undefined ? [] : [[side, bank] as const];
  });
  return [
    ...checkTube(exhaust),
    ...checkSteps(exhaust),
    ...checkGiven(exhaust),
    ...checkFiring(
      exhaust,
      banks.map(([, bank]) => bank),
    ),
    ...banks.flatMap(([side, bank]) => checkBank(side, bank, exhaust)),
    ...banks.flatMap(([side, bank]) => checkCollectors(side, bank, exhaust)),
    ...banks.flatMap(([side, { secondaries }]) =>
      secondaries === undefined
        ? []
        : [
            ...checkTube(secondaries, `${side}.secondaries.`),
            ...checkRack(secondaries, `${side}.secondaries.`),
          ],
    ),
    ...checkKeepOuts(exhaust),
    ...checkRack(exhaust),
    ...checkStuds(exhaust),
  ];
}

const tell = (code: string, path: string, message: string, remedy: string): Problem => ({
  code,
  path: `exhaust.${path}`,
  message,
  remedy,
  weight: 'error',
});

/** @param under  where tube and bends stand in the exhaust */
function checkTube({ tube, bends }: Pick<ExhaustForm, 'tube' | 'bends'>, under = ''): Problem[] {
  const problems: Problem[] = [];
  if (tubeMaterial(tube.material) === undefined) {
    problems.push(
      tell(
        'exhaust/material',
        `${under}tube.material`,
        `There is no tube "${tube.material}" in the table.`,
        `Nearest: ${tubeMaterialsLike(tube.material).join(', ')}.`,
      ),
    );
  }
  if (tube.wall.value >= tube.outside.value / 4) {
    problems.push(
      tell(
        'exhaust/wall',
        `${under}tube.wall`,
        `A wall of ${mm(tube.wall.value)} leaves little of a tube of ${mm(tube.outside.value)}.`,
        'Measure the wall at a clean cut end.',
      ),
    );
  }
  bends.radii.forEach((radius, k) => {
    if (radius > tube.outside.value / 2) return;
    problems.push(
      tell(
        'exhaust/bend-too-tight',
        `${under}bends.radii.${k}`,
        `A bend of centreline radius ${mm(radius)} in a tube of ${mm(tube.outside.value)} folds into itself.`,
        'The radius counts to the middle of the tube, not to its inside.',
      ),
    );
  });
  return problems;
}

function checkGiven({ given, tube }: ExhaustForm): Problem[] {
  const problems: Problem[] = [];
  const needs = (key: 'portLength' | 'flange' | 'mergeDepth', because: string): void => {
    if (given[key] !== undefined) return;
    problems.push(
      tell(
        'exhaust/length-ends',
        `given.${key}`,
        `The length is given ${because}, so ${key} is needed.`,
        'Measure it, or ask the builder for the length between flange and collector.',
      ),
    );
  };
  if (given.from === 'valve seat') needs('portLength', 'from the valve seat');
  if (given.to === 'merge point') needs('mergeDepth', 'to the merge point');
  if (given.length < 3 * tube.outside.value) {
    problems.push(
      tell(
        'exhaust/length-short',
        'given.length',
        `A primary of ${mm(given.length)} is less than three tubes across.`,
        'Was it meant in inches?',
      ),
    );
  }
  return problems;
}

function checkFiring({ firing }: ExhaustForm, banks: readonly BankForm[]): Problem[] {
  const seen = new Set<number>();
  const problems: Problem[] = [];
  for (const each of firing) {
    if (seen.has(each)) {
      problems.push(
        tell('exhaust/firing', 'firing', `Cylinder ${each} fires twice.`, 'Write each cylinder once.'),
      );
    }
    seen.add(each);
  }
  const cylinders = banks.flatMap((bank) => bank.cylinders);
  for (const each of new Set(cylinders)) {
    if (!seen.has(each)) {
      problems.push(
        tell(
          'exhaust/firing',
          'firing',
          `Cylinder ${each} has a port and does not fire.`,
          'Add it to the firing order.',
        ),
      );
    }
    if (cylinders.filter((other) => other === each).length > 1) {
      problems.push(
        tell(
          'exhaust/cylinder-twice',
          'firing',
          `Cylinder ${each} has two ports.`,
          'Number the cylinders of the second bank on.',
        ),
      );
    }
  }
  return problems;
}

function checkBank(side: BankName, bank: BankForm, { tube }: ExhaustForm): Problem[] {
  const problems: Problem[] = [];
  const { ports, cylinders } = bank;
  if (ports.length !== cylinders.length) {
    problems.push(
      tell(
        'exhaust/port-count',
        `${side}.ports`,
        `The ${side} bank has ${cylinders.length} cylinders and ${ports.length} ports.`,
        'Write one port for each cylinder, front to rear.',
      ),
    );
  }
  const middle: Vec3 = average(ports.map(({ at }) => at.value));
  ports.forEach(({ at, outward }, k) => {
    const path = `${side}.ports.${k}`;
    if (distance(at.value, outward.value) < LEAST_REACH) {
      problems.push(
        tell(
          'exhaust/port-direction',
          `${path}.outward`,
          `Port ${k + 1} of the ${side} bank: its two points are ${mm(distance(at.value, outward.value))} apart.`,
          'Take the second at the far end of a straight plug, 80 mm out or more.',
        ),
      );
    } else if (Math.sign(outward.value[1] - at.value[1]) * Math.sign(middle[1]) < 0) {
      problems.push(
        tell(
          'exhaust/port-inward',
          `${path}.outward`,
          `Port ${k + 1} of the ${side} bank faces the middle of the car.`,
          'Look whether its two points are swapped, or the bank is the other one.',
        ),
      );
    }
    ports.slice(k + 1).forEach((other, j) => {
      if (distance(at.value, other.at.value) >= tube.outside.value) return;
      problems.push(
        tell(
          'exhaust/ports-near',
          `${side}.ports.${k + 1 + j}.at`,
          `Ports ${k + 1} and ${k + 2 + j} of the ${side} bank are ${mm(distance(at.value, other.at.value))} apart: two tubes of ${mm(tube.outside.value)} cannot leave them.`,
          'Measure both again.',
        ),
      );
    });
  });
  return problems;
}

/** Stock is told apart by its name alone. */
function checkRack({ rack }: Pick<ExhaustForm, 'rack'>, under = ''): Problem[] {
  const seen = new Set<string>();
  return [...(rack?.bends ?? []), ...(rack?.tubes ?? [])].flatMap(({ name }) => {
    const twice = seen.has(name);
    seen.add(name);
    return twice
      ? [
          tell(
            'exhaust/rack-twice',
            `${under}rack`,
            `"${name}" lies on the rack twice.`,
            'Give each its own name.',
          ),
        ]
      : [];
  });
}

function checkKeepOuts({ keepOuts }: ExhaustForm): Problem[] {
  return (keepOuts ?? []).flatMap(({ name, form, from, to, across }, k) => {
    const path = `keepOuts.${k}`;
    const span = sub(to.value, from.value);
    if (form === 'box') {
      return span.every((each) => Math.abs(each) > 1e-3)
        ? []
        : [
            tell(
              'exhaust/box-flat',
              `${path}.to`,
              `${name}: the box has no thickness.`,
              'Give two opposite corners.',
            ),
          ];
    }
    if (across === undefined) {
      return [
        tell(
          'exhaust/no-diameter',
          `${path}.across`,
          `${name}: a ${form} needs its diameter.`,
          'Write across.',
        ),
      ];
    }
    return length(span) > 1e-3
      ? []
      : [
          tell(
            'exhaust/rod-short',
            `${path}.to`,
            `${name}: its two ends are in one place.`,
            'Measure both ends.',
          ),
        ];
  });
}

const average = (points: readonly Vec3[]): Vec3 => [
  points.reduce((sum, p) => sum + p[0], 0) / points.length,
  points.reduce((sum, p) => sum + p[1], 0) / points.length,
  points.reduce((sum, p) => sum + p[2], 0) / points.length,
];

const mm = (metres: number): string => `${Number((1000 * metres).toFixed(1))} mm`;
