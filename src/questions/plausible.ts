/**
 * Whether the points of a car can be what the file says they are: what only shows once the linkage moves.
 *
 * In    a car that reads
 * Out   warnings, each with what was found and what to look at; nothing here stops a figure
 * Not   slips that a field or two points show alone: src/car checks those
 *
 * The bands are wide: common practice, no source. What lies outside is nearly always a swapped point, an inch read
 * as a millimetre, or a rod said to stand on the wrong body.
 */
import type { Car } from '../car/read.ts';
import { DegenerateCorner } from '../loadpath/corner/prepare.ts';
import { type CornerState, solveCorner } from '../loadpath/corner/solve.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { solidLength } from '../loadpath/spring/coil-spring.ts';
import { coilOf } from '../loadpath/spring-of-car.ts';
import { type SprungCorner, sprungCorner } from '../loadpath/sprung-corner.ts';
import { distance, dot, sub } from '../maths/vec3.ts';
import type { Problem } from '../measured/problem.ts';
import { spokenAmount } from '../units/show.ts';
import { WHEELS } from './drawing.ts';
import type { Wheel } from './figure.ts';

/** What a ratio or rate of such a car lies within, SI. */
const BANDS = {
  unit: { low: 0.25, high: 2, unit: '', factor: 1 },
  turn: { low: 2, high: 40, unit: '°/mm', factor: 180 / Math.PI / 1000 },
  rate: { low: 15e3, high: 1500e3, unit: ' N/mm', factor: 1e-3 },
} as const;

/** The contact point of the surveyed car lies on the flat patch; a loaded radius is read to a few millimetres. */
const OFF_GROUND = 0.004;
/** Part of the load by which springing as fitted and scale may differ before it is told. */
const UNBALANCED = 0.15;

export function plausibility(car: Car): readonly Problem[] {
  return WHEELS.flatMap((wheel) => cornerDoubts(car, wheel));
}

type Tell = (code: string, at: string, message: string, remedy: string) => void;

function cornerDoubts(car: Car, wheel: Wheel): Problem[] {
  const found: Problem[] = [];
  const head = `${wheel.end === 'front' ? 'Front' : 'Rear'} ${wheel.side}`;
  const tell: Tell = (code, at, message, remedy) => {
    const path = [wheel.end, wheel.side, at].filter((part) => part !== '').join('.');
    found.push({ code, path, message: `${head}: ${message}.`, remedy, weight: 'warning' });
  };
  const numbers = new Numbers(car.values);
  try {
    const of = sprungCorner(car.form[wheel.end], wheel.side, numbers);
    const state = solveCorner(of.corner, { travel: 0, rack: 0 });
    ground(of, tell);
    rod(of, state, tell);
    ratios(of, tell);
    springing(of, numbers, tell);
  } catch (reason) {
    if (!(reason instanceof DegenerateCorner)) throw reason;
    for (const problem of reason.problems) {
      tell(
        problem.code,
        'points',
        problem.message.replace(/\.$/, ''),
        `Look at ${problem.points.join(', ')}.`,
      );
    }
  }
  return found;
}

const mm = (value: number): string => spokenAmount(value, 'm', 1);

function ground({ corner }: SprungCorner, tell: Tell): void {
  if (Math.abs(corner.ground) <= OFF_GROUND) return;
  tell(
    'corner/off-ground',
    'wheel.loadedRadius',
    `the wheel's lowest point stands ${mm(Math.abs(corner.ground))} ${corner.ground > 0 ? 'above' : 'below'} the flat patch`,
    'Wheel centre, camber and loaded radius do not agree; z is counted from the flat patch.',
  );
}

function rod(of: SprungCorner, state: CornerState, tell: Tell): void {
  const { points, moving } = state;
  const { kind, on } = of.form.rod;
  const pushes = dot(moving.rodOuter.perTravel, sub(points.rodInner, points.rodOuter)) > 0;
  if (pushes !== (kind === 'pushrod')) {
    tell(
      'rod/kind',
      'rod.kind',
      `the rod is called a ${kind}, but in bump it is ${pushes ? 'pushed' : 'pulled'}`,
      'Change the kind, or look at the two ends of the rod.',
    );
  }
  const toUpper = distance(points.rodOuter, points.upperOuter);
  const toLower = distance(points.rodOuter, points.lowerOuter);
  const nearer = toUpper < toLower ? 'upper wishbone' : 'lower wishbone';
  if (on !== 'upright' && on !== nearer) {
    tell(
      'rod/carrier',
      'rod.on',
      `the rod is said to stand on the ${on}, but its outer end is ${mm(toUpper)} from the upper and ${mm(toLower)} from the lower outer joint`,
      'Look again at what carries the rod.',
    );
  }
  const inward = of.side === 'left' ? 1 : -1;
  for (const name of ['rodInner', 'rockerPivot'] as const) {
    if (points[name][1] * inward < 0) {
      tell(
        'points/inner-side',
        `points.${name}`,
        `the ${name === 'rodInner' ? 'rod’s joint at the rocker' : 'rocker pivot'} stands on the other side of the car`,
        'Look at the sign of y.',
      );
    }
  }
}

function ratios(of: SprungCorner, tell: Tell): void {
  const { unit, turn } = of.ratiosAt(0);
  const outside = (
    band: keyof typeof BANDS,
    value: number,
    code: string,
    at: string,
    what: string,
    remedy: string,
  ): void => {
    const { low, high, unit: name, factor } = BANDS[band];
    if (value >= low && value <= high) return;
    const shown = (each: number): string => `${Number((each * factor).toPrecision(3))}${name}`;
    tell(
      code,
      at,
      `${what} is ${shown(value)}; on such a car it lies between ${shown(low)} and ${shown(high)}`,
      remedy,
    );
  };
  outside(
    'turn',
    turn,
    'rocker/turn',
    'points.rockerAxis',
    'the turn of the rocker per wheel travel',
    'Look at rocker pivot, the second point on its axis, and both ends of the rod.',
  );
  if (of.hasUnit && unit <= 0) {
    tell(
      'unit/lengthens',
      'points.damperRocker',
      'the damper gets longer as the wheel goes into bump',
      'Look at the two eyes of the damper and at which side of the pivot it stands.',
    );
  } else if (of.hasUnit) {
    outside(
      'unit',
      unit,
      'unit/ratio',
      'points.damperRocker',
      'spring per wheel',
      'Look at the eyes of the damper and the points of the rocker; an inch written as a millimetre?',
    );
  }
  const { elastic, byForce } = of.wheelAt(0);
  outside(
    'rate',
    elastic + byForce,
    'wheel/rate',
    '',
    'the wheel rate',
    'Look at the points of rocker and rod, and at the rate of the spring.',
  );
}

function springing(of: SprungCorner, numbers: Numbers, tell: Tell): void {
  const { coil, bar } = of.form;
  if (coil?.fittedLength !== undefined) {
    const solid = solidLength(coilOf(coil, numbers).coil);
    if (numbers.of(coil.fittedLength) < solid) {
      tell(
        'coil/fitted-solid',
        'coil.fittedLength',
        `the coil is said to be fitted at ${mm(numbers.of(coil.fittedLength))}, less than its solid length of ${mm(solid)}`,
        'Measure between the spring seats again.',
      );
    }
  }
  if (coil?.fittedLength === undefined && bar?.twist === undefined) return;
  const { sprungLoad } = of.springing;
  const part = of.wheelAt(0).force / sprungLoad - 1;
  if (Math.abs(part) <= UNBALANCED) return;
  tell(
    'spring/not-balanced',
    bar?.twist === undefined ? 'coil.fittedLength' : 'bar.twist',
    `as fitted the springing carries ${((1 + part) * 100).toFixed(0)} % of what the scale says it must`,
    'Twist or length as fitted, rate, scale and unsprung mass do not agree; measure the one you trust least again.',
  );
}
