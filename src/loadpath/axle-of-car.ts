/**
 * An axle of the car file: its two corners at their own travel, and what joins them.
 *
 * In    the axle's form, the numbers, travel of both wheels, rack
 * Out   both solved corners, twist and rate of the anti-roll bar, length and force of the heave element, and the
 *       2 × 2 stiffness at the wheels
 * Axes  travel positive in bump, each wheel its own
 */

import type { PointReading } from '../car/place.ts';
import { springMaterial } from '../materials/spring-material.ts';
import { along, cross, distance, dot, length, sub, unit, type Vec3 } from '../maths/vec3.ts';
import type { Metre, Newton } from '../units/quantity.ts';
import { formula, type Working } from '../working/working.ts';
import {
  type BarEnds,
  barRate,
  type DropLink,
  type FlexibleArm,
  solveTBar,
  solveUBar,
} from './axle/anti-roll-bar.ts';
import { bladeTipStiffness } from './axle/blade.ts';
import { heaveElement } from './axle/heave.ts';
import { type AxleStiffness, type Pair, pairStiffness } from './axle/pair.ts';
import { type CornerState, solveCorner } from './corner/solve.ts';
import type { AxleForm } from './corner-of-car.ts';
import { fromReading, fromReadingOr, type Numbers } from './numbers.ts';
import { HelperInSeries, LinearSpring, type SpringElement } from './spring/elements.ts';
import { polarSecondMoment } from './spring/torsion-bar.ts';
import { type SprungCorner, sprungCorner, type WheelForce } from './sprung-corner.ts';

export interface AxleAt {
  readonly left: Metre;
  readonly right: Metre;
  readonly rack: Metre;
}

export interface AxleSide {
  readonly of: SprungCorner;
  readonly state: CornerState;
  readonly now: WheelForce;
}

export interface BarAtWheels {
  readonly twist: Pair;
  /** Rate about the bar's axis, arms in series, N m/rad. */
  readonly rate: number;
  readonly torque: number;
  readonly stiffness: AxleStiffness;
  /** Where the drop links meet the bar. */
  readonly ends: BarEnds;
}

export interface HeaveAtWheels {
  readonly length: Pair;
  readonly compression: Metre;
  readonly force: Newton;
  readonly stiffness: AxleStiffness;
}

export interface AxleState {
  readonly left: AxleSide;
  readonly right: AxleSide;
  readonly bar?: BarAtWheels;
  readonly heave?: HeaveAtWheels;
}

/** @throws Unreachable, DegenerateCorner, BarOpen */
export const axleState = (axle: AxleForm, at: AxleAt, numbers: Numbers, working?: Working): AxleState =>
  working === undefined
    ? // the path of one of its readings tells this axle from the other
      numbers.part(`axle of ${axle.left.scale.path} at ${at.left}, ${at.right}, rack ${at.rack}`, () =>
        workedAxle(axle, at, numbers),
      )
    : workedAxle(axle, at, numbers, working);

/** One corner of an axle at its travel. @throws Unreachable, DegenerateCorner */
export const axleSide = (axle: AxleForm, name: 'left' | 'right', at: AxleAt, numbers: Numbers): AxleSide =>
  // the path of one of its readings tells this corner from the other axle's
  numbers.part(`${axle[name].scale.path} at ${at[name]}, rack ${at.rack}`, () => {
    const of = sprungCorner(axle, name, numbers);
    return {
      of,
      state: solveCorner(of.corner, { travel: at[name], rack: at.rack }),
      now: of.wheelAt(at[name], at.rack),
    };
  });

function workedAxle(axle: AxleForm, at: AxleAt, numbers: Numbers, working?: Working): AxleState {
  const left = axleSide(axle, 'left', at, numbers);
  const right = axleSide(axle, 'right', at, numbers);
  const bar = barAtWheels(axle, left, right, numbers, working);
  const heave = heaveAtWheels(axle, left, right, numbers);
  return {
    left,
    right,
    ...(bar === undefined ? {} : { bar }),
    ...(heave === undefined ? {} : { heave }),
  };
}

const torsion = formula({
  symbol: 'k_b0',
  means: 'rate of the anti-roll bar, arms rigid',
  is: 'G*J/L',
  unit: 'N m/rad',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
    L: { unit: 'm', means: 'length that twists' },
  },
  source: 'SP-22',
});

/** Steel, where neither modulus nor material is given. */
const STEEL_G = 79.5e9;

function torsionOf(axle: AxleForm, numbers: Numbers, working?: Working): number {
  const { bar } = axle.antiRollBar!;
  if (bar.rate !== undefined) return numbers.of(bar.rate);
  const table = bar.material === undefined ? undefined : springMaterial(bar.material);
  const section = { diameter: numbers.of(bar.diameter), bore: numbers.or(bar.bore, 0) };
  const from = {
    D: fromReading(bar.diameter),
    d: bar.bore === undefined ? ({ kind: 'constant', what: 'a solid bar' } as const) : fromReading(bar.bore),
  };
  return torsion(
    {
      G: numbers.or(bar.shearModulus, table?.shearModulus.value ?? STEEL_G),
      J: polarSecondMoment(section, working, from),
      L: numbers.of(bar.activeLength),
    },
    working,
    { G: fromReadingOr(bar.shearModulus, bar.material ?? 'spring steel'), L: fromReading(bar.activeLength) },
  );
}

/** The drop link of a side needs all three: its rocker end, its arm end, and a bar. */
const linked = (side: AxleSide): boolean =>
  side.of.form.points.dropLinkArm !== undefined && side.state.rockerPoints.dropLink !== undefined;

function barAtWheels(
  axle: AxleForm,
  left: AxleSide,
  right: AxleSide,
  numbers: Numbers,
  working?: Working,
): BarAtWheels | undefined {
  const { antiRollBar } = axle;
  if (antiRollBar === undefined || !linked(left) || !linked(right)) return undefined;
  const { twist, ends } = barStanding(axle, left, right, numbers);
  const rate = barRate({
    torsion: torsionOf(axle, numbers, working),
    arms: [blade(axle, left, numbers), blade(axle, right, numbers)].filter((arm) => arm !== undefined),
  });
  const torque = rate * twist.value;
  return { twist, rate, torque, stiffness: pairStiffness(twist, { rate, effort: torque }), ends };
}

/** Twist from the surveyed position: the bar is taken as free when the car stood for its survey. */
function barStanding(
  axle: AxleForm,
  left: AxleSide,
  right: AxleSide,
  numbers: Numbers,
): { readonly twist: Pair; readonly ends: BarEnds } {
  const antiRollBar = axle.antiRollBar!;
  const ends = linksOf(left, right, numbers);
  const axisLeft = numbers.point(antiRollBar.axisLeft);
  const direction = unit(sub(numbers.point(antiRollBar.axisRight), axisLeft));
  const moving = [left.state.rockerPoints.dropLink!, right.state.rockerPoints.dropLink!] as const;
  if (antiRollBar.kind === 'U-bar') {
    return solveUBar({ axisPoint: axisLeft, axisDirection: direction, ...ends }, ...moving);
  }
  const top = numbers.point(antiRollBar.stemTop!);
  const foot = numbers.point(antiRollBar.axisLeft);
  const other = numbers.point(antiRollBar.axisRight);
  const middle = [(foot[0] + other[0]) / 2, (foot[1] + other[1]) / 2, (foot[2] + other[2]) / 2] as const;
  return solveTBar(
    {
      nodPoint: axisLeft,
      nodDirection: direction,
      stemPoint: top,
      stemDirection: unit(sub(top, middle)),
      ...ends,
    },
    ...moving,
  );
}

/** The bar as lines: drop link, arm, bar, arm, drop link; and how thick it is. Empty without a bar. */
export function drawnBar(
  axle: AxleForm,
  at: AxleAt,
  numbers: Numbers,
): readonly { readonly line: readonly Vec3[]; readonly diameter: Metre }[] {
  const { antiRollBar } = axle;
  if (antiRollBar === undefined) return [];
  const { left, right, bar } = axleState(axle, at, numbers);
  if (bar === undefined) return [];
  const { ends } = bar;
  const from = numbers.point(antiRollBar.axisLeft);
  const direction = unit(sub(numbers.point(antiRollBar.axisRight), from));
  const diameter = numbers.of(antiRollBar.bar.diameter);
  const rocker = (side: AxleSide): Vec3 => side.state.rockerPoints.dropLink!.value;
  const foot = (end: Vec3): Vec3 => along(from, direction, dot(sub(end, from), direction));
  if (antiRollBar.kind === 'T-bar') {
    const top = stemTop(antiRollBar.stemTop!, left, right, ends, numbers);
    return [
      { line: [rocker(left), ends.left, top, ends.right, rocker(right)], diameter },
      { line: [top, foot(top)], diameter },
    ];
  }
  return [
    {
      line: [rocker(left), ends.left, foot(ends.left), foot(ends.right), ends.right, rocker(right)],
      diameter,
    },
  ];
}

/** Where the stem of a T-bar now meets the cross arm: as far along the arm as it was surveyed. */
function stemTop(
  surveyed: PointReading,
  left: AxleSide,
  right: AxleSide,
  ends: BarEnds,
  numbers: Numbers,
): Vec3 {
  const arm = (side: AxleSide): Vec3 => numbers.point(side.of.form.points.dropLinkArm!);
  const across = sub(arm(right), arm(left));
  const share = dot(sub(numbers.point(surveyed), arm(left)), across) / dot(across, across);
  return along(ends.left, sub(ends.right, ends.left), share);
}

function linksOf(
  left: AxleSide,
  right: AxleSide,
  numbers: Numbers,
): { readonly left: DropLink; readonly right: DropLink } {
  const link = (side: AxleSide): DropLink => ({
    rockerEnd: numbers.point(side.of.form.points.dropLinkRocker!),
    barEnd: numbers.point(side.of.form.points.dropLinkArm!),
  });
  return { left: link(left), right: link(right) };
}

/**
 * The blade of one arm. The lever is the distance of the drop link's joint from the bar's axis; the length that
 * bends is shorter. The file counts a blade's setting from flat, the blade room from on edge.
 */
function blade(axle: AxleForm, side: AxleSide, numbers: Numbers): FlexibleArm | undefined {
  const { leftBlade, rightBlade, axisLeft, axisRight } = axle.antiRollBar!;
  const form = side.of.side === 'left' ? leftBlade : rightBlade;
  if (form === undefined) return undefined;
  const on = numbers.point(axisLeft);
  const direction = unit(sub(numbers.point(axisRight), on));
  const joint = sub(numbers.point(side.of.form.points.dropLinkArm!), on);
  return {
    armLength: length(cross(direction, joint)),
    tipStiffness: bladeTipStiffness(
      {
        width: numbers.of(form.width),
        thickness: numbers.of(form.thickness),
        length: numbers.of(form.length),
        youngsModulus: numbers.of(form.youngsModulus),
        tip: 'free',
      },
      Math.PI / 2 - numbers.of(form.setting),
    ),
  };
}

function heaveAtWheels(
  axle: AxleForm,
  left: AxleSide,
  right: AxleSide,
  numbers: Numbers,
): HeaveAtWheels | undefined {
  const { heave } = axle;
  const leftEnd = left.state.rockerPoints.heave;
  const rightEnd = right.state.rockerPoints.heave;
  if (heave === undefined || leftEnd === undefined || rightEnd === undefined) return undefined;
  const reach = heaveElement(leftEnd, rightEnd);
  const asSurveyed = distance(
    numbers.point(left.of.form.points.heaveRocker!),
    numbers.point(right.of.form.points.heaveRocker!),
  );
  // some lay-outs close the element in bump and some draw it out; the spring is pressed in bump either way
  const closing = reach.byLeft + reach.byRight <= 0 ? 1 : -1;
  const compression = closing * (asSurveyed - reach.value);
  const spring = heaveSpring(heave, numbers);
  const force = spring.force(compression);
  return {
    length: reach,
    compression,
    force,
    stiffness: pairStiffness(reach, { rate: spring.rate(compression), effort: -closing * force }),
  };
}

/** The spring of a heave element, its compression counted from the survey. */
export function heaveSpring(heave: NonNullable<AxleForm['heave']>, numbers: Numbers): SpringElement {
  const [rate, freeAt] = [numbers.of(heave.rate), numbers.of(heave.gap)];
  return heave.helper === undefined
    ? LinearSpring({ rate, freeAt })
    : HelperInSeries({
        mainRate: rate,
        helperRate: numbers.of(heave.helper.rate),
        helperTravel: numbers.of(heave.helper.travel),
        freeAt,
      });
}
