/**
 * Slips in the description of a bolted joint: names that no table knows, a torque without its lubricant, two studs in
 * one place, a stud that the file does not sort.
 */
import {
  clampedMaterial,
  clampedMaterialsLike,
  fastenerMaterial,
  fastenerMaterialsLike,
} from '../materials/fastener-material.ts';
import { lubricant, lubricantsLike } from '../materials/lubricant.ts';
import { threadNamed, threadsLike } from '../materials/thread.ts';
import { distance } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type Form = Placed<RawCar>;
type JointForm = NonNullable<NonNullable<Form['joints']>['engineToTub']>;
type SortForm = JointForm['sorts'][string];

const WORDS = { caseToEngine: 'Gear case to engine', engineToTub: 'Engine to tub' } as const;

/** A crank that turns and twists by nothing. */
export const checkEngine = ({ engine }: Form): readonly Problem[] =>
  engine === undefined ||
  engine.overall !== undefined ||
  engine.torque !== undefined ||
  engine.brakeSheet !== undefined ||
  engine.limit !== undefined
    ? []
    : [
        {
          code: 'engine/no-torque',
          path: 'engine',
          message: 'The engine has a way of turning and no torque.',
          remedy: 'Write overall, the turns of the crank for one of the wheel, or torque.',
          weight: 'error',
        },
      ];

export const checkJoints = ({ joints }: Form): readonly Problem[] =>
  (['caseToEngine', 'engineToTub'] as const).flatMap((name) => {
    const joint = joints?.[name];
    if (joint === undefined) return [];
    const path = `joints.${name}`;
    const tell: Tell = (code, at, message, remedy) => ({
      code,
      path: `${path}.${at}`,
      message: `${WORDS[name]}: ${message}.`,
      remedy,
      weight: 'error',
    });
    return [
      ...Object.entries(joint.sorts).flatMap(([sort, of]) => checkSort(sort, of, tell)),
      ...checkStuds(joint, tell),
      ...checkPlates(joint, tell),
    ];
  });

type Tell = (code: string, at: string, message: string, remedy: string) => Problem;

const meant = (names: readonly string[]): string =>
  `Did you mean ${names.map((name) => `"${name}"`).join(' or ')}?`;

function checkSort(sort: string, of: SortForm, tell: Tell): Problem[] {
  const problems: Problem[] = [];
  const at = (key: string): string => `sorts.${sort}.${key}`;
  const unknown = (key: string, word: string | undefined, known: boolean, like: readonly string[]): void => {
    if (word === undefined || known) return;
    problems.push(tell('joint/unknown-name', at(key), `"${word}" is not in the table`, meant(like)));
  };
  const thread = threadNamed(of.thread);
  unknown('thread', of.thread, thread !== undefined, threadsLike(of.thread));
  unknown(
    'material',
    of.material,
    fastenerMaterial(of.material) !== undefined,
    fastenerMaterialsLike(of.material),
  );
  unknown('parent', of.parent, clampedMaterial(of.parent) !== undefined, clampedMaterialsLike(of.parent));
  of.layers.forEach(({ material }, k) => {
    unknown(
      `layers.${k}.material`,
      material,
      clampedMaterial(material) !== undefined,
      clampedMaterialsLike(material),
    );
  });
  if (of.lubricant !== undefined) {
    unknown('lubricant', of.lubricant, lubricant(of.lubricant) !== undefined, lubricantsLike(of.lubricant));
  }
  const builders = of.builder?.lubricant;
  if (builders !== undefined) {
    unknown('builder.lubricant', builders, lubricant(builders) !== undefined, lubricantsLike(builders));
  }
  problems.push(...checkTightening(sort, of, at, tell));
  if (of.crowfoot !== undefined && of.wrench === undefined) {
    problems.push(
      tell(
        'joint/crowfoot',
        at('crowfoot'),
        `sort "${sort}" has a crowfoot and no wrench length`,
        'Measure the wrench from the square drive to the middle of the grip.',
      ),
    );
  }
  if (thread !== undefined) problems.push(...checkSizes(sort, of, thread.major, at, tell));
  return problems;
}

const WAYS = ['torque', 'stretch', 'angle'] as const;

/** One way of tightening, with all that it needs: which of two would count nobody could tell. */
function checkTightening(sort: string, of: SortForm, at: (key: string) => string, tell: Tell): Problem[] {
  const problems: Problem[] = [];
  const given = WAYS.filter((way) => of[way] !== undefined);
  if (given.length > 1) {
    problems.push(
      tell(
        'joint/two-ways',
        at(given[1]!),
        `sort "${sort}" has ${given.join(' and ')}`,
        'Leave the one by which the nut is set: a preload comes from one of them.',
      ),
    );
  }
  const torque = (['torque', 'snug'] as const).find((key) => of[key] !== undefined);
  if (torque !== undefined && of.lubricant === undefined) {
    problems.push(
      tell(
        'joint/no-lubricant',
        at(torque),
        `sort "${sort}" has a ${torque === 'snug' ? 'snug torque' : 'torque'} and no lubricant`,
        'Name what is on thread and nut face: oil or paste changes the preload by half and more.',
      ),
    );
  }
  const snugs = (['snug', 'snugPreload'] as const).filter((key) => of[key] !== undefined);
  if (of.angle !== undefined && snugs.length !== 1) {
    problems.push(
      tell(
        'joint/snug',
        at('angle'),
        `sort "${sort}" has an angle and ${snugs.length === 0 ? 'nothing from which it is turned' : 'both a snug torque and a snug preload'}`,
        'Write snug with its lubricant, or snugPreload: one of them.',
      ),
    );
  }
  if (of.angle === undefined && snugs.length > 0) {
    problems.push(
      tell(
        'joint/snug',
        at(snugs[0]!),
        `sort "${sort}" has ${snugs[0]} and no angle`,
        'Write the angle turned from there, or take it out.',
      ),
    );
  }
  return problems;
}

/** Sizes that cannot stand beside one another. */
function checkSizes(
  sort: string,
  of: SortForm,
  major: number,
  at: (key: string) => string,
  tell: Tell,
): Problem[] {
  const grip = of.layers.reduce((sum, { thickness }) => sum + thickness.value, 0);
  const cases: readonly (readonly [boolean, string, string, string])[] = [
    [
      of.hole.value < major,
      'hole',
      'the hole is smaller than its thread',
      'Measure the hole again, or look at the thread.',
    ],
    [
      of.nutFace.value <= of.hole.value,
      'nutFace',
      'the nut face is not larger than the hole',
      'Outer diameter of the ring that bears.',
    ],
    [
      of.pad.value <= of.hole.value,
      'pad',
      'the pad is not larger than the hole',
      'Diameter of the metal round the stud at the face.',
    ],
    [
      of.shankLength !== undefined && of.shankLength.value > grip,
      'shankLength',
      'the shank is longer than what is clamped',
      'Only the part of the shank within the grip counts.',
    ],
    [
      of.shankDiameter !== undefined && of.shankLength === undefined,
      'shankDiameter',
      'the shank has a diameter and no length',
      'Give shankLength beside it.',
    ],
  ];
  return [
    ...cases
      .filter(([holds]) => holds)
      .map(([, key, what, remedy]) => tell('joint/sizes', at(key), `sort "${sort}": ${what}`, remedy)),
    ...checkLengths(sort, of, grip, at, tell),
  ];
}

/** Two tellings of one length may differ by this much, m. */
const SAME_LENGTH = 0.0015;

/** The stud along itself: what is in the parent, what is clamped, what is left for the nut. */
function checkLengths(
  sort: string,
  of: SortForm,
  grip: number,
  at: (key: string) => string,
  tell: Tell,
): Problem[] {
  const problems: Problem[] = [];
  const mm = (value: number): string => `${(value * 1e3).toFixed(1)} mm`;
  const say = (code: string, key: string, what: string, remedy: string): void => {
    problems.push(tell(code, at(key), `sort "${sort}": ${what}`, remedy));
  };
  const engaged = of.engaged.value;
  const { depth, length, free } = of;
  if (depth !== undefined && engaged > depth.value) {
    say(
      'joint/too-deep',
      'engaged',
      `${mm(engaged)} of thread is engaged in a hole of ${mm(depth.value)}`,
      'The stud would be longer than its hole and stand on its end. Measure the depth, and what stands free.',
    );
  }
  const out = free?.value ?? (length === undefined ? undefined : length.value - engaged);
  if (out !== undefined && out < grip) {
    say(
      'joint/short-stud',
      free === undefined ? 'length' : 'free',
      `${mm(out)} stands out of the parent and ${mm(grip)} is clamped: no thread is left for the nut`,
      'Measure the stud and each layer again.',
    );
  }
  if (
    length !== undefined &&
    free !== undefined &&
    Math.abs(length.value - engaged - free.value) > SAME_LENGTH
  ) {
    say(
      'joint/stud-length',
      'length',
      `${mm(engaged)} engaged and ${mm(free.value)} free are not the ${mm(length.value)} of the stud`,
      'One of the three is another stud\u2019s, or the stud is not home.',
    );
  }
  return problems;
}

/** Closer than this two studs are one, m. */
const ONE_PLACE = 0.008;

function checkStuds({ studs, sorts }: JointForm, tell: Tell): Problem[] {
  const problems: Problem[] = [];
  studs.forEach((stud, k) => {
    if (!Object.hasOwn(sorts, stud.sort)) {
      problems.push(
        tell(
          'joint/no-sort',
          `studs.${k}.sort`,
          `stud "${stud.name}" is of sort "${stud.sort}", which the joint does not describe`,
          `It describes ${Object.keys(sorts).join(', ')}.`,
        ),
      );
    }
    const same = studs.slice(0, k).find(({ at }) => distance(at.value, stud.at.value) < ONE_PLACE);
    if (same !== undefined) {
      problems.push(
        tell(
          'joint/one-place',
          `studs.${k}.at`,
          `studs "${same.name}" and "${stud.name}" stand in one place`,
          'Read the points again: a copied line?',
        ),
      );
    }
    if (studs.slice(0, k).some(({ name }) => name === stud.name)) {
      problems.push(
        tell(
          'joint/one-name',
          `studs.${k}.name`,
          `two studs are called "${stud.name}"`,
          'Each has a name of its own.',
        ),
      );
    }
  });
  return problems;
}

/** A plate that bends needs all that its bending comes from. */
function checkPlates({ plates = [] }: JointForm, tell: Tell): Problem[] {
  return plates.flatMap((plate, k) => {
    const problems: Problem[] = [];
    for (const key of ['material', 'grows'] as const) {
      const word = plate[key];
      if (word !== undefined && clampedMaterial(word) === undefined) {
        problems.push(
          tell(
            'joint/unknown-name',
            `plates.${k}.${key}`,
            `"${word}" is not in the table`,
            meant(clampedMaterialsLike(word)),
          ),
        );
      }
    }
    const all = BENDING.filter((key) => plate[key] !== undefined);
    if (all.length > 0 && all.length < BENDING.length) {
      problems.push(
        tell(
          'joint/plate',
          `plates.${k}.${all[0]!}`,
          `plate "${plate.name}" has ${all.join(', ')} and not ${BENDING.filter((key) => plate[key] === undefined).join(', ')}`,
          'How far the engine bends it comes from all five.',
        ),
      );
    }
    return problems;
  });
}

const BENDING = ['thickness', 'free', 'across', 'material', 'grows'] as const;
