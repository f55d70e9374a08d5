/**
 * A torsion bar as it is ordered, and the test that it has to pass when it arrives.
 *
 * In    dimensions, material, hand, the torque it works to (SI)
 * Out   its rate and mass; the twist that known masses on a known lever must give, with limits
 * Not   the choice of the bar (that is asked of the questions) nor the form of its splines
 *
 * The limits are the bar's rate with every dimension at the end of its tolerance and the shear modulus at the
 * end of its range, both at once, and the error of the reading on top: the worst case, so that a good bar is
 * not sent back. Tolerances are common practice, no source; the maker's own rule where they are closer.
 */
import {
  activeLength,
  barMass,
  type EndTransition,
  skinStress,
  type TorsionBar,
  torsionBarRate,
} from '../loadpath/spring/torsion-bar.ts';
import type { Wheel } from '../questions/figure.ts';
import type {
  Kilogram,
  KilogramPerCubicMetre,
  Metre,
  NewtonMetre,
  NewtonMetrePerRadian,
  Pascal,
  Radian,
} from '../units/quantity.ts';
import { STANDARD_GRAVITY } from '../units/quantity.ts';

export interface OrderedHead {
  readonly form: 'radius' | 'taper' | 'square';
  readonly headDiameter?: Metre;
  /** Radius, or length of the taper. */
  readonly size?: Metre;
  readonly splines?: number;
  /** Length of the splined head; left out, a blank to be filled in from the sample. */
  readonly length?: Metre;
}

export interface OrderedMaterial {
  readonly name: string;
  readonly means: string;
  readonly shearModulus: Pascal;
  readonly shearModulusRange: { readonly low: Pascal; readonly high: Pascal };
  readonly density: KilogramPerCubicMetre;
  readonly tensileStrength?: { readonly low: Pascal; readonly high: Pascal };
  /** By the low end of the strength, before presetting. */
  readonly shearYield?: Pascal;
  readonly source: string;
  readonly note?: string;
}

/** Where full bump is, and what gives it. */
export interface FullBump {
  readonly travel: Metre;
  /** `damper closed`, or what binds in the linkage. */
  readonly by: string;
  /** False where nothing but the linkage's own end stops the wheel. */
  readonly stopped: boolean;
}

/** What a drawing needs to know of a bar. */
export type BarShape = Pick<BarOrder, 'diameter' | 'bore' | 'parallelLength' | 'rockerEnd' | 'anchorEnd'> & {
  /** As of the order, or `not known` where the file does not say where the anchor is. */
  readonly hand: BarOrder['hand'] | 'not known';
};

export interface BarOrder {
  readonly partNumber: string;
  readonly wheel: Wheel;
  readonly quantity: number;
  readonly diameter: Metre;
  /** 0 for a solid bar. */
  readonly bore: Metre;
  readonly parallelLength: Metre;
  readonly rockerEnd: OrderedHead;
  readonly anchorEnd: OrderedHead;
  readonly material: OrderedMaterial;
  readonly surface: string;
  /** Hand of the helix in which bump twists it; `not preset` where it may be worked either way. */
  readonly hand: 'left' | 'right' | 'not preset';
  /** Greatest torque in use, at full bump. */
  readonly fullTorque: NewtonMetre;
  readonly fullBump: FullBump;
  /** Rate measured on the bar that is in the car, where it was. */
  readonly measuredRate?: NewtonMetrePerRadian;
  /** Torque as the car stands. */
  readonly staticTorque?: NewtonMetre;
  /** Greatest torque against the working hand within the travel; 0 or left out where there is none. */
  readonly reversedTorque?: NewtonMetre;
  /** Presetting torque and the twist that must stay, when the maker is to preset it. */
  readonly presetting?: { readonly torque: NewtonMetre; readonly permanentTwist: Radian };
}

export const BAR_TOLERANCE = {
  diameter: 0.02e-3,
  bore: 0.05e-3,
  length: 0.5e-3,
  runOut: 0.1e-3,
  /** Roughness Ra of the shank, m. */
  roughness: 0.4e-6,
  /** Reading of a clinometer on the lever, rad. */
  reading: (0.1 * Math.PI) / 180,
} as const;

const transition = (end: OrderedHead): EndTransition => {
  if (end.headDiameter === undefined || end.size === undefined || end.form === 'square')
    return { kind: 'none' };
  return end.form === 'radius'
    ? { kind: 'fillet', radius: end.size, headDiameter: end.headDiameter }
    : { kind: 'taper', length: end.size, headDiameter: end.headDiameter };
};

/** How both ends run out into their heads, the rocker end first. */
export const endsOf = (shape: BarShape): TorsionBar['ends'] => [
  transition(shape.rockerEnd),
  transition(shape.anchorEnd),
];

export const barOf = (order: BarOrder): TorsionBar => ({
  diameter: order.diameter,
  bore: order.bore,
  parallelLength: order.parallelLength,
  ends: endsOf(order),
  shearModulus: order.material.shearModulus,
  density: order.material.density,
  heads: [order.rockerEnd, order.anchorEnd].flatMap((end) =>
    end.headDiameter === undefined || end.length === undefined
      ? []
      : [{ diameter: end.headDiameter, length: end.length }],
  ),
});

export interface OrderedFigures {
  readonly rate: NewtonMetrePerRadian;
  readonly least: NewtonMetrePerRadian;
  readonly most: NewtonMetrePerRadian;
  readonly activeLength: Metre;
  readonly mass: Kilogram;
  readonly fullTwist: Radian;
  readonly fullStress: Pascal;
  /** Joules held at full torque. */
  readonly energy: number;
}

export function orderedFigures(order: BarOrder): OrderedFigures {
  const bar = barOf(order);
  const rate = torsionBarRate(bar);
  const { low, high } = order.material.shearModulusRange;
  const fullTwist = order.fullTorque / rate;
  return {
    rate,
    least: torsionBarRate(atTheEnd(bar, -1, low)),
    most: torsionBarRate(atTheEnd(bar, 1, high)),
    activeLength: activeLength(bar),
    mass: barMass(bar),
    fullTwist,
    fullStress: skinStress(bar, order.fullTorque),
    energy: (order.fullTorque * fullTwist) / 2,
  };
}

/** The stiffest (+1) or the softest (−1) bar that the tolerances let through. */
function atTheEnd(bar: TorsionBar, sign: 1 | -1, shearModulus: Pascal): TorsionBar {
  return {
    ...bar,
    shearModulus,
    diameter: bar.diameter + sign * BAR_TOLERANCE.diameter,
    bore: bar.bore === 0 ? 0 : bar.bore - sign * BAR_TOLERANCE.bore,
    parallelLength: bar.parallelLength - sign * BAR_TOLERANCE.length,
  };
}

export interface ReceiptPoint {
  readonly mass: Kilogram;
  readonly torque: NewtonMetre;
  readonly twist: Radian;
  readonly least: Radian;
  readonly most: Radian;
}

export interface ReceiptTest {
  /** From the axis of the bar to the hanger, level. */
  readonly lever: Metre;
  readonly points: readonly ReceiptPoint[];
}

const LEVERS: readonly Metre[] = [0.25, 0.5, 1];
/** More than this is not hung on by hand. */
const HEAVIEST: Kilogram = 100;
const POINTS = 5;

/** Five equal steps of mass that stay at or below the greatest working torque. */
export function receiptTest(order: BarOrder): ReceiptTest {
  const figures = orderedFigures(order);
  const massAt = (lever: Metre): Kilogram => order.fullTorque / (STANDARD_GRAVITY * lever);
  const lever = LEVERS.find((each) => massAt(each) <= HEAVIEST) ?? LEVERS.at(-1)!;
  const step = roundDown(Math.min(massAt(lever), HEAVIEST) / POINTS);
  const points = Array.from({ length: POINTS }, (_, k): ReceiptPoint => {
    const mass = step * (k + 1);
    const torque = mass * STANDARD_GRAVITY * lever;
    return {
      mass,
      torque,
      twist: torque / figures.rate,
      least: torque / figures.most - BAR_TOLERANCE.reading,
      most: torque / figures.least + BAR_TOLERANCE.reading,
    };
  });
  return { lever, points };
}

/** Down to 1, 2, 2.5 or 5 times a power of ten: masses that a workshop has. */
function roundDown(value: number): number {
  const ten = 10 ** Math.floor(Math.log10(value));
  return ten * [5, 2.5, 2, 1].find((each) => each * ten <= value * (1 + 1e-9))!;
}
