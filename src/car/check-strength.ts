/**
 * Slips in what the file tells of strength under load: bearings in one place or the wrong way round, an angular pair
 * whose angle nobody told, a screwed end whose thread is in no table, a drop link of no length.
 */
import { clampedMaterial, clampedMaterialsLike } from '../materials/fastener-material.ts';
import { threadNamed, threadsLike } from '../materials/thread.ts';
import { distance } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type CornerForm = Placed<RawCar>['front']['left'];
type WheelBearings = NonNullable<CornerForm['wheelBearings']>;
type RockerBearings = NonNullable<CornerForm['rockerBearings']>;
type Members = NonNullable<CornerForm['members']>;

type Tell = (code: string, at: string, message: string, remedy: string, weight?: Problem['weight']) => void;

/** Two bearings nearer than this are one, m. */
const ONE_PLACE = 0.005;
/** A member shorter than this is none, m. */
const LEAST = 0.001;

export function checkStrength(form: Placed<RawCar>): readonly Problem[] {
  return (['front', 'rear'] as const).flatMap((end) =>
    (['left', 'right'] as const).flatMap((side) => {
      const found: Problem[] = [];
      const head = `${end === 'front' ? 'Front' : 'Rear'} ${side}`;
      const tell: Tell = (code, at, message, remedy, weight = 'error') => {
        found.push({
          code,
          path: `${end}.${side}.${at}`,
          message: `${head}: ${message}.`,
          remedy,
          weight,
        });
      };
      checkCorner(form[end][side], form[end].antiRollBar !== undefined, tell);
      return found;
    }),
  );
}

function checkCorner(corner: CornerForm, barred: boolean, tell: Tell): void {
  const { wheelBearings, rockerBearings, sphericals, points } = corner;
  if (wheelBearings !== undefined) checkWheel(wheelBearings, corner.unsprung.value, tell);
  if (rockerBearings !== undefined) {
    const { first, second } = rockerBearings;
    checkPair(rockerBearings, ['first', 'second'], 'rockerBearings', tell);
    if (Math.abs(first.at.value - second.at.value) < ONE_PLACE) {
      tell(
        'bearing/one-place',
        'rockerBearings.second.at',
        'the two bearings of the rocker are in one place',
        'Measure both along the bolt from the surveyed pivot; one of them is usually negative.',
      );
    }
  }
  for (const [name, spherical] of Object.entries(sphericals ?? {})) {
    if (spherical === undefined || !('axis' in spherical) || spherical.axis === undefined) continue;
    const ball = points[name as keyof CornerForm['points']];
    if (ball === undefined || !(distance(ball.value, spherical.axis.value) < LEAST)) continue;
    tell(
      'bearing/no-axis',
      `sphericals.${name}.axis`,
      'the second point on the axis of the housing is the ball itself',
      'Read a point some way along the axis, 20 mm or more from the ball.',
    );
  }
  for (const name of Object.keys(corner.members ?? {}) as (keyof Members)[]) checkEnd(corner, name, tell);
  const { dropLinkRocker, dropLinkArm } = points;
  if (corner.members?.dropLink === undefined) return;
  // joints that are missing are told with the bar, which does nothing without them
  if (!barred) {
    tell(
      'member/no-bar',
      'members.dropLink',
      'there is a drop link, but no anti-roll bar; it is left out',
      'Describe the bar under antiRollBar.',
      'warning',
    );
  } else if (
    dropLinkRocker !== undefined &&
    dropLinkArm !== undefined &&
    distance(dropLinkRocker.value, dropLinkArm.value) < LEAST
  ) {
    tell(
      'points/no-length',
      'points.dropLinkArm',
      'the drop link has no length (dropLinkRocker and dropLinkArm are less than 1 mm apart)',
      'Measure both joints again.',
    );
  }
}

function checkWheel(of: WheelBearings, unsprung: number, tell: Tell): void {
  checkPair(of, ['outer', 'inner'], 'wheelBearings', tell);
  const apart = of.inner.at.value - of.outer.at.value;
  if (Math.abs(apart) < ONE_PLACE) {
    tell(
      'bearing/one-place',
      'wheelBearings.inner.at',
      'the two wheel bearings are in one place',
      'Measure both from the middle plane of the wheel, inboard positive.',
    );
  } else if (apart < 0) {
    tell(
      'bearing/wrong-way',
      'wheelBearings.inner.at',
      'the inner wheel bearing stands outboard of the outer one',
      'Inboard of the middle plane of the wheel is positive, outboard negative.',
    );
  }
  if (of.turning.value > unsprung) {
    tell(
      'bearing/mass',
      'wheelBearings.turning',
      'more turns on the wheel bearings than the corner has unsprung',
      'The upright, the calliper and the links do not turn.',
    );
  }
}

/** What a kind of bearing needs beside it. */
function checkPair(
  of: WheelBearings | RockerBearings,
  names: readonly [string, string],
  path: string,
  tell: Tell,
): void {
  const needs = (key: string, there: unknown, remedy: string): void => {
    if (there === undefined) {
      tell('bearing/untold', path, `bearings of the kind "${of.kind}" need ${key}`, remedy);
    }
  };
  if (of.kind === 'deep groove') {
    needs('locating', of.locating, `Say which one is held both ways along the axis: ${names.join(' or ')}.`);
  }
  if (of.kind !== 'angular contact' && of.kind !== 'taper roller') return;
  needs('arrangement', of.arrangement, 'back to back, or face to face.');
  needs('turns', of.turns, 'The inner rings turn with a spindle, the outer rings with a hub on a stub axle.');
  const pair = of as unknown as Readonly<Record<string, WheelBearings['outer']>>;
  for (const name of names) {
    needs(`contactAngle of ${name}`, pair[name]!.contactAngle, 'Maker of the bearing.');
    needs(`pitchDiameter of ${name}`, pair[name]!.pitchDiameter, 'Mean of bore and outside diameter.');
  }
}

function checkEnd(corner: CornerForm, name: keyof Members, tell: Tell): void {
  const end = corner.members?.[name]?.end;
  if (end === undefined) return;
  const own = name === 'rod' || name === 'toeLink' ? corner[name]?.thread : undefined;
  const at = `members.${name}.end`;
  const meant = (names: readonly string[]): string =>
    `Did you mean ${names.map((each) => `"${each}"`).join(' or ')}?`;
  const thread = end.thread ?? own?.size;
  if (thread === undefined) {
    tell(
      'member/no-thread',
      at,
      'the screwed end has no thread',
      'Give its thread, such as thread: 3/8-24 UNF.',
    );
  } else if (threadNamed(thread) === undefined) {
    const where = end.thread === undefined ? `${name}.thread.size` : `${at}.thread`;
    tell(
      'member/unknown-name',
      where,
      `"${thread}" is not in the table of threads`,
      meant(threadsLike(thread)),
    );
  }
  if (end.engaged === undefined && own === undefined) {
    tell(
      'member/no-thread',
      at,
      'the screwed end has no engaged length',
      'Give engaged, such as engaged: 22 mm.',
    );
  }
  if (clampedMaterial(end.parent) === undefined) {
    tell(
      'member/unknown-name',
      `${at}.parent`,
      `"${end.parent}" is not in the table of clamped materials`,
      meant(clampedMaterialsLike(end.parent)),
    );
  }
}
