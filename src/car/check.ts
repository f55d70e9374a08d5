/**
 * What the fields cannot know alone: whether the points of a corner can be a suspension at all.
 *
 * These are the slips that a tape and a tired hand make: a point on the wrong side, two points swapped, a rod
 * that ends where it begins, a coil that is said to have no spring.
 */

import { distance, type Vec3 } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import { checkDayOut } from './check-day-out.ts';
import { checkExhaust } from './check-exhaust.ts';
import { checkFloor } from './check-floor.ts';
import { checkGearbox } from './check-gearbox.ts';
import { checkEngine, checkJoints } from './check-joints.ts';
import { checkLogs } from './check-logs.ts';
import { checkParts } from './check-parts.ts';
import { checkStrength } from './check-strength.ts';
import type { RawCar } from './form/car.ts';
import type { Placed } from './place.ts';

type Form = Placed<RawCar>;
export type CornerForm = Form['front']['left'];
type PointName = keyof CornerForm['points'];

const LEAST_ARM = 0.001;

/** Pairs of points between which there is a member: of no length, there is none. */
const MEMBERS: readonly (readonly [PointName, PointName, string])[] = [
  ['upperFront', 'upperRear', 'the upper wishbone has no width at its inner end'],
  ['lowerFront', 'lowerRear', 'the lower wishbone has no width at its inner end'],
  ['upperFront', 'upperOuter', 'the front leg of the upper wishbone has no length'],
  ['lowerFront', 'lowerOuter', 'the front leg of the lower wishbone has no length'],
  ['upperRear', 'upperOuter', 'the rear leg of the upper wishbone has no length'],
  ['lowerRear', 'lowerOuter', 'the rear leg of the lower wishbone has no length'],
  ['upperOuter', 'lowerOuter', 'the upright has no height'],
  ['toeInner', 'toeOuter', 'the track rod or toe link has no length'],
  ['rodInner', 'rodOuter', 'the rod has no length'],
  ['rodInner', 'rockerPivot', 'the rocker has no arm to the rod'],
  ['rockerPivot', 'rockerAxis', 'the rocker axis has no direction'],
  ['damperRocker', 'damperTub', 'the damper has no length'],
];

export function checkCar(form: Form): readonly Problem[] {
  return [
    ...(['front', 'rear'] as const).flatMap((end) =>
      (['left', 'right'] as const).flatMap((side) => checkCorner(form[end][side], `${end}.${side}`, side)),
    ),
    ...checkParts(form),
    ...checkJoints(form),
    ...checkLogs(form),
    ...checkStrength(form),
    ...checkEngine(form),
    ...checkExhaust(form),
    ...checkFloor(form),
    ...checkGearbox(form),
    ...checkDayOut(form),
    ...wheelbase(form),
  ];
}

function checkCorner(corner: CornerForm, path: string, side: 'left' | 'right'): Problem[] {
  const problems: Problem[] = [];
  const tell = (
    code: string,
    at: string,
    message: string,
    remedy?: string,
    weight: Problem['weight'] = 'error',
  ): void => {
    problems.push({
      code,
      path: `${path}.${at}`,
      message: `${place(path)}: ${message}.`,
      ...(remedy === undefined ? {} : { remedy }),
      weight,
    });
  };
  const { points } = corner;
  const at = (name: PointName): Vec3 | undefined => points[name]?.value;
  const missing = Object.values(points).some((each) => each?.value.some(Number.isNaN));
  // a survey that did not give a point has told so itself
  if (missing) return problems;

  for (const [name, other, what] of MEMBERS) {
    const a = at(name);
    const b = at(other);
    if (a !== undefined && b !== undefined && distance(a, b) < LEAST_ARM) {
      tell('points/no-length', `points.${name}`, `${what} (${name} and ${other} are less than 1 mm apart)`);
    }
  }
  const outboard = side === 'left' ? 1 : -1;
  for (const name of ['upperOuter', 'lowerOuter', 'toeOuter', 'wheelCentre'] as const) {
    if (points[name].value[1] * outboard <= 0) {
      tell(
        'points/wrong-side',
        `points.${name}`,
        `${points[name].means} has y = ${(points[name].value[1] * 1000).toFixed(1)} mm; on the ${side} y is ${side === 'left' ? 'positive' : 'negative'}`,
        'y is positive to the left (ISO 8855).',
      );
    }
  }
  if (points.upperOuter.value[2] <= points.lowerOuter.value[2]) {
    tell(
      'points/upside-down',
      'points.upperOuter',
      'the upper outer ball joint is not above the lower one',
      'Have upper and lower been swapped?',
    );
  }
  if (
    points.wheelCentre.value[2] < 0.5 * corner.wheel.loadedRadius.value ||
    points.wheelCentre.value[2] > 1.5 * corner.wheel.loadedRadius.value
  ) {
    tell(
      'points/wheel-height',
      'points.wheelCentre',
      `the wheel centre stands ${(points.wheelCentre.value[2] * 1000).toFixed(0)} mm above the ground, with a loaded radius of ${(corner.wheel.loadedRadius.value * 1000).toFixed(0)} mm`,
      'z is counted from the flat patch.',
    );
  }
  checkSpringing(corner, tell);
  checkWorth(corner, tell);
  return problems;
}

type Tell = (code: string, at: string, message: string, remedy?: string, weight?: Problem['weight']) => void;

function checkSpringing(corner: CornerForm, tell: Tell): void {
  const { points, coil, bar, damper, bumpRubber } = corner;
  const unit = points.damperRocker !== undefined && points.damperTub !== undefined;
  if (coil === undefined && bar === undefined) {
    tell('spring/none', '', 'has neither a coil nor a torsion bar', 'Describe one under coil or bar.');
  }
  for (const [there, what] of [
    [coil, 'coil'],
    [damper, 'damper'],
    [bumpRubber, 'bumpRubber'],
  ] as const) {
    if (there !== undefined && !unit) {
      tell(
        'spring/no-eyes',
        what,
        `has a ${what}, but the points damperRocker and damperTub are not both there`,
      );
    }
  }
  if (coil !== undefined) {
    if (coil.meanDiameter.value < 2 * coil.wireDiameter.value) {
      tell(
        'coil/index',
        'coil.meanDiameter',
        'the mean coil diameter is less than twice the wire diameter',
        'Outside diameter less one wire diameter.',
      );
    }
    if (coil.activeCoils.value > coil.totalCoils.value) {
      tell('coil/coils', 'coil.activeCoils', 'there are more active coils than coils');
    }
    if (coil.rate === undefined && coil.material === undefined && coil.shearModulus === undefined) {
      tell(
        'coil/no-rate',
        'coil',
        'the coil has no measured rate, no material and no shear modulus',
        'One of the three is needed.',
      );
    }
  }
  if (bar !== undefined) {
    if (bar.bore !== undefined && bar.bore.value >= bar.diameter.value) {
      tell('bar/bore', 'bar.bore', 'the bore is not smaller than the bar');
    }
    if (bar.rate === undefined && bar.material === undefined && bar.shearModulus === undefined) {
      tell(
        'bar/no-rate',
        'bar',
        'the bar has no measured rate, no material and no shear modulus',
        'One of the three is needed.',
      );
    }
    for (const end of ['rockerEnd', 'anchorEnd'] as const) {
      const { form, headDiameter, size } = bar[end];
      if (form === 'square') continue;
      if (headDiameter === undefined || size === undefined) {
        tell(
          'bar/end',
          `bar.${end}`,
          `the ${form} at the ${end === 'rockerEnd' ? 'rocker' : 'anchor'} end needs headDiameter and size`,
        );
      } else if (headDiameter.value <= bar.diameter.value) {
        tell('bar/end', `bar.${end}.headDiameter`, 'the head is not thicker than the bar');
      }
    }
  }
  if (damper !== undefined && damper.closedLength.value >= damper.openLength.value) {
    tell('damper/lengths', 'damper.closedLength', 'the damper is not shorter closed than open');
  }
}

/** Warnings: what is possible and yet mostly a slip. */
function checkWorth(corner: CornerForm, tell: Tell): void {
  const { damper, points } = corner;
  if (damper !== undefined && points.damperRocker !== undefined && points.damperTub !== undefined) {
    const eyes = distance(points.damperRocker.value, points.damperTub.value);
    if (eyes > damper.openLength.value + LEAST_ARM || eyes < damper.closedLength.value - LEAST_ARM) {
      tell(
        'damper/outside-stroke',
        'damper.openLength',
        `in the surveyed position the damper eyes stand ${(eyes * 1000).toFixed(1)} mm apart, which is outside its stroke of ${(damper.closedLength.value * 1000).toFixed(1)} to ${(damper.openLength.value * 1000).toFixed(1)} mm`,
        'Measure the two eyes and the damper again.',
      );
    }
  }
  if (corner.unsprung.value >= corner.scale.value) {
    tell('masses/unsprung', 'unsprung', 'the unsprung mass is not less than the mass on the scale');
  }
}

function wheelbase(form: Form): Problem[] {
  const base = form.front.left.points.wheelCentre.value[0] - form.rear.left.points.wheelCentre.value[0];
  if (Number.isNaN(base) || base > 1) return [];
  return [
    {
      code: 'points/axles',
      path: 'rear.left.points.wheelCentre',
      message: `The rear wheel centre stands ${(base * 1000).toFixed(0)} mm behind the front one; a car has more than 1 m.`,
      remedy: 'x is positive forward, so the rear axle has negative x.',
      weight: 'error',
    },
  ];
}

const place = (path: string): string => {
  const [end, side] = path.split('.');
  return `${end!.slice(0, 1).toUpperCase()}${end!.slice(1)} ${side}`;
};
