/**
 * A bar on the bench: from torque and angle readings to its rate, and from the rate to what the bar is.
 *
 * In    readings of torque and twist, going on and coming off; what instruments share
 * Out   rate with its interval, whether the line is bent, how far on and off lie apart, and the diameter, length
 *       or modulus that the rate implies
 * Axes  torque and twist positive the way the bar is loaded
 * Not   a test of strength; the lever's own bending is to be taken off the angles first
 *
 * [GUM]    JCGM 100:2008, H.3: a straight line through readings
 * [Draper] Draper & Smith, Applied Regression Analysis, 3rd ed., ch. 1 and 2 (from memory)
 */
import { studentQuantileUpper, studentUpper } from '../../maths/distributions.ts';
import type {
  Metre,
  NewtonMetre,
  NewtonMetrePerRadian,
  Pascal,
  Radian,
  Ratio,
} from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { polarSecondMoment } from './torsion-bar.ts';

export interface BenchReading {
  readonly torque: NewtonMetre;
  readonly twist: Radian;
  readonly way: 'on' | 'off';
  /** Standard uncertainty of the torque; all alike when none has one. */
  readonly u?: NewtonMetre;
}

export interface StraightLine {
  readonly slope: number;
  readonly offset: number;
  /** Standard uncertainties from the scatter about the line. */
  readonly uSlope: number;
  readonly uOffset: number;
  /** Standard deviation of the readings about the line (of unit weight). */
  readonly scatter: number;
  readonly freedom: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
  readonly weight: number;
}

/**
 * Weighted straight line with offset.  [SP-58, SP-59; GUM H.3]
 *
 * @throws Error with fewer than three points, or when x does not differ
 */
export function straightLine(points: readonly Point[]): StraightLine {
  if (points.length < 3) throw new Error('a line with an interval needs three readings');
  const total = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + point.weight * of(point), 0);
  const W = total(() => 1);
  const x = total((point) => point.x) / W;
  const y = total((point) => point.y) / W;
  const xx = total((point) => (point.x - x) ** 2);
  if (!(xx > 0)) throw new Error('the readings of a line must differ in x');
  const slope = total((point) => (point.x - x) * (point.y - y)) / xx;
  const offset = y - slope * x;
  const freedom = points.length - 2;
  const square = total((point) => (point.y - y - slope * (point.x - x)) ** 2);
  const scatter = Math.sqrt(square / freedom);
  return {
    slope,
    offset,
    uSlope: scatter / Math.sqrt(xx),
    uOffset: scatter * Math.sqrt(1 / W + (x * x) / xx),
    scatter,
    freedom,
  };
}

export interface BenchRate {
  readonly rate: NewtonMetrePerRadian;
  /** One standard uncertainty, with what the instruments share. */
  readonly u: NewtonMetrePerRadian;
  /** The interval at the confidence asked for: by the scatter alone, Student's t. */
  readonly interval: readonly [NewtonMetrePerRadian, NewtonMetrePerRadian];
  readonly confidence: Ratio;
  readonly line: StraightLine;
}

export interface BenchTest {
  readonly all: BenchRate;
  /** Going on and coming off apart, where each has three readings or more. */
  readonly on: BenchRate | undefined;
  readonly off: BenchRate | undefined;
  /** How far the two lines lie apart at mid twist, as a part of the greatest torque. */
  readonly hysteresis: Ratio | undefined;
  /** Bend of the line: chance of as much by scatter alone, and its size at the ends against the greatest torque. */
  readonly bend: { readonly chance: number; readonly part: Ratio } | undefined;
  readonly told: readonly string[];
}

/** What all readings have in common, as parts of the value: lever arm, mass, angle scale. One standard uncertainty. */
export interface SharedScale {
  readonly torque: Ratio;
  readonly twist: Ratio;
}

/** Rate of a bar from bench readings.  [SP-58 to SP-61] */
export function benchTest(
  readings: readonly BenchReading[],
  shared: SharedScale = { torque: 0, twist: 0 },
  confidence: Ratio = 0.95,
  working?: Working,
): BenchTest {
  const points = (of: readonly BenchReading[]): Point[] =>
    of.map((each) => ({
      x: each.twist,
      y: each.torque,
      weight: each.u === undefined ? 1 : 1 / each.u ** 2,
    }));
  const rateOf = (of: readonly BenchReading[]): BenchRate => {
    const line = straightLine(points(of));
    const reach = studentQuantileUpper((1 - confidence) / 2, line.freedom) * line.uSlope;
    const scale = Math.hypot(shared.torque, shared.twist) * line.slope;
    return {
      rate: line.slope,
      u: Math.hypot(line.uSlope, scale),
      interval: [line.slope - reach, line.slope + reach],
      confidence,
      line,
    };
  };
  const going = (way: BenchReading['way']): BenchRate | undefined => {
    const of = readings.filter((each) => each.way === way);
    return of.length < 3 ? undefined : rateOf(of);
  };
  const all = rateOf(readings);
  working?.add({
    kind: 'solved',
    symbol: 'k_t',
    means: 'torsional rate of the bar on the bench',
    method: `straight line through ${readings.length} readings, least squares`,
    value: all.rate,
    unit: 'N m/rad',
    source: 'SP-58',
    residual: { value: all.line.scatter, unit: 'N m', of: 'readings about the line, one standard deviation' },
    terms: [],
  });
  const on = going('on');
  const off = going('off');
  const greatest = Math.max(...readings.map((each) => Math.abs(each.torque)));
  const twists = readings.map((each) => each.twist);
  const middle = (Math.min(...twists) + Math.max(...twists)) / 2;
  const at = (rate: BenchRate): number => rate.line.offset + rate.line.slope * middle;
  const hysteresis = on === undefined || off === undefined ? undefined : (at(on) - at(off)) / greatest;
  const bend = bendOf(points(readings), greatest);
  return { all, on, off, hysteresis, bend, told: tell(hysteresis, bend) };
}

function tell(hysteresis: BenchTest['hysteresis'], bend: BenchTest['bend']): readonly string[] {
  const told: string[] = [];
  const percent = (part: number): string => `${(100 * Math.abs(part)).toPrecision(2)} %`;
  if (bend !== undefined && bend.chance < 0.01) {
    told.push(
      `the readings lie on a bent line (${percent(bend.part)} of the greatest torque at the ends): something slips, binds or yields, and one rate does not tell it`,
    );
  }
  if (hysteresis !== undefined && Math.abs(hysteresis) > 0.02) {
    told.push(
      `going on and coming off lie ${percent(hysteresis)} of the greatest torque apart: look for friction in splines and bearings, or lost motion`,
    );
  }
  return told;
}

/**
 * Whether a square term would help: its estimate over its own standard uncertainty, Student's t.  [SP-60]
 *
 * The square is first made orthogonal to the line, so that it stands alone.
 */
function bendOf(points: readonly Point[], greatest: number): BenchTest['bend'] {
  if (points.length < 5) return undefined;
  const line = straightLine(points);
  const total = (of: (point: Point) => number): number =>
    points.reduce((sum, point) => sum + point.weight * of(point), 0);
  const mean = total((point) => point.x) / total(() => 1);
  const parabola = points.map((point) => ({ ...point, y: (point.x - mean) ** 2 }));
  const own = straightLine(parabola);
  const rest = (point: Point): number => (point.x - mean) ** 2 - own.offset - own.slope * point.x;
  const residual = (point: Point): number => point.y - line.offset - line.slope * point.x;
  const zz = total((point) => rest(point) ** 2);
  // readings at two twists only leave nothing of a square
  if (!(zz > 1e-20 * total((point) => (point.x - mean) ** 4))) return undefined;
  const c = total((point) => rest(point) * residual(point)) / zz;
  const freedom = points.length - 3;
  const square = total((point) => (residual(point) - c * rest(point)) ** 2);
  const u = Math.sqrt(square / freedom / zz);
  const part = Math.max(...points.map((point) => Math.abs(c * rest(point)))) / greatest;
  if (u === 0) return { chance: c === 0 ? 1 : 0, part };
  return { chance: 2 * studentUpper(Math.abs(c / u), freedom), part };
}

export interface Stated {
  readonly value: number;
  readonly u: number;
}

export interface BarOnBench {
  readonly diameter: Stated;
  readonly bore: Stated;
  readonly activeLength: Stated;
  readonly shearModulus: Stated;
}

export interface Implied {
  readonly diameter: { readonly value: Metre; readonly u: Metre };
  readonly activeLength: { readonly value: Metre; readonly u: Metre };
  readonly shearModulus: { readonly value: Pascal; readonly u: Pascal };
}

const impliedDiameter = formula({
  symbol: 'D',
  means: 'diameter that the rate implies',
  is: '(32*k_t*L_e/(π*G) + d^4)^0.25',
  unit: 'm',
  terms: {
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar on the bench' },
    L_e: { unit: 'm', means: 'active length as stated' },
    G: { unit: 'Pa', means: 'shear modulus as stated' },
    d: { unit: 'm', means: 'bore of the bar' },
  },
  source: 'SP-62',
});

const impliedLength = formula({
  symbol: 'L_e',
  means: 'active length that the rate implies',
  is: 'G*J/k_t',
  unit: 'm',
  terms: {
    G: { unit: 'Pa', means: 'shear modulus as stated' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar on the bench' },
  },
  source: 'SP-62',
});

const impliedModulus = formula({
  symbol: 'G',
  means: 'shear modulus that the rate implies',
  is: 'k_t*L_e/J',
  unit: 'Pa',
  terms: {
    k_t: { unit: 'N m/rad', means: 'torsional rate of the bar on the bench' },
    L_e: { unit: 'm', means: 'active length as stated' },
    J: { unit: 'm^4', means: 'polar second moment of the bar' },
  },
  source: 'SP-62; Gere7 solution 3.3-7',
});

/**
 * What the rate says of the bar: each of diameter, active length and shear modulus from it with the other two
 * taken as stated.  [SP-62]
 *
 * The three are three readings of one fact: only one of them can be told from one rate.
 */
export function implied(
  rate: { readonly rate: number; readonly u: number },
  bar: BarOnBench,
  working?: Working,
): Implied {
  const { diameter, bore, activeLength, shearModulus } = bar;
  const [D, d] = [diameter.value, bore.value];
  const [k_t, L_e, G] = [rate.rate, activeLength.value, shearModulus.value];
  const J = polarSecondMoment({ diameter: D, bore: d }, working);
  const found = impliedDiameter({ k_t, L_e, G, d }, working);
  const length = impliedLength({ G, J, k_t }, working);
  const modulus = impliedModulus({ k_t, L_e, J }, working);
  const ofRate = rate.u / k_t;
  const ofJ = (4 * Math.hypot(D ** 3 * diameter.u, d ** 3 * bore.u)) / (D ** 4 - d ** 4);
  const ofLength = activeLength.u / L_e;
  const ofModulus = shearModulus.u / G;
  // D⁴ = X + d⁴, so u(D) is that of both over 4D³
  const X = found ** 4 - d ** 4;
  const uFourth = Math.hypot(X * Math.hypot(ofRate, ofLength, ofModulus), 4 * d ** 3 * bore.u);
  return {
    diameter: { value: found, u: uFourth / (4 * found ** 3) },
    activeLength: { value: length, u: length * Math.hypot(ofRate, ofJ, ofModulus) },
    shearModulus: { value: modulus, u: modulus * Math.hypot(ofRate, ofJ, ofLength) },
  };
}
