/** Which torsion bar does the coil's work at this wheel: the bar, both curves, what cannot be matched, the mass. */
import type { Car } from '../car/read.ts';
import type { Plain } from '../car/spec.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type BarFit, barForCoil as fitBars, type RackBar } from '../loadpath/spring/bar-for-coil.ts';
import type { BarSurface } from '../loadpath/spring/bar-life.ts';
import { coilMass } from '../loadpath/spring/coil-spring.ts';
import { type Hand, workingHand } from '../loadpath/spring/presetting.ts';
import { vernierStep } from '../loadpath/spring/spline.ts';
import { activeLength, type EndTransition } from '../loadpath/spring/torsion-bar.ts';
import { coilOf } from '../loadpath/spring-of-car.ts';
import { type SprungCorner, sprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import { torqueSamples, turnInBump, wheelRateOfBar, wheelRateOfCoil } from '../loadpath/torque-curves.ts';
import {
  SPRING_MATERIALS,
  springMaterial,
  springMaterialsLike,
  tensileStrength,
} from '../materials/spring-material.ts';
import { sub } from '../maths/vec3.ts';
import { CRACK_TEST_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';
import { DEMONSTRATION_DAY } from './duty.ts';
import type { Wheel } from './figure.ts';
import { rangeOf } from './travel-range.ts';

export interface BarAsked {
  /** Name in the material table. */
  readonly material: string;
  /** Bore over diameter, 0 for a solid bar. */
  readonly boreRatio?: number;
  /** Active length, m. */
  readonly lengthFrom?: number;
  readonly lengthTo?: number;
  /** m */
  readonly diameterFrom?: number;
  readonly diameterTo?: number;
  /** What the grinder holds, m; 0.05 mm unless asked otherwise. */
  readonly diameterStep?: number;
  /** Rocker angle past full bump that the bar must still bear, rad; 10 % of its twist in use unless asked. */
  readonly overtravel?: number;
  /** Teeth at rocker and anchor. */
  readonly splines?: { readonly rocker: number; readonly anchor: number };
  readonly surface?: BarSurface;
  readonly preset?: boolean;
  /** Bars that hang on the rack: then these alone are weighed. */
  readonly rack?: readonly RackBar[];
}

export interface ProposedBar {
  readonly name?: string;
  readonly diameter: number;
  readonly bore: number;
  readonly parallelLength: number;
  readonly activeLength: number;
  readonly headDiameter?: number;
  readonly filletRadius?: number;
  readonly material: string;
  readonly hand: Hand;
  readonly rate: number;
  /** Twist and stress as surveyed, at full bump, and past it. */
  readonly twistAsSurveyed: number;
  readonly fullBump: BarFit['fullBump'];
  readonly overtravel: BarFit['overtravel'];
  /** Least tensile strength and yield in shear of the material at this diameter, where the table goes. */
  readonly tensileStrength?: number;
  readonly shearYield?: number;
  readonly mass: number;
  readonly massOverCoil: number;
  readonly life?: { readonly low: number; readonly middle: number; readonly high: number };
  readonly splineStep?: number;
  readonly splineError: number;
  readonly setting?: BarFit['setting'];
  readonly worst: BarFit['worst'];
  readonly rms: number;
  /** Torque against the working direction within the travel. */
  readonly reversed: number;
  /** How far the car would stand higher at this wheel with the bar set to fit best, m. */
  readonly standsHigher: number;
  /** Along `travel` of the answer. */
  readonly torque: readonly number[];
  readonly wheelRate: readonly number[];
}

export interface BarProposal {
  readonly reached: true;
  readonly wheel: Wheel;
  readonly travel: readonly number[];
  readonly rockerAngle: readonly number[];
  readonly torqueCoil: readonly number[];
  readonly wheelRateCoil: readonly number[];
  readonly idealRate: number;
  /** Torque that no bar can match, root mean square. */
  readonly cannotMatch: number;
  readonly coilMass: number;
  /** Best first. */
  readonly bars: readonly ProposedBar[];
  /** The change that puts the first bar in the coil's place, as the part of the car file that differs. */
  readonly change: Plain;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export interface NoProposal {
  readonly reached: false;
  readonly message: string;
}

const SAMPLES = 41;
const DEFAULTS = {
  lengthFrom: 0.2,
  lengthTo: 0.45,
  diameterFrom: 0.01,
  diameterTo: 0.03,
  filletRadius: 0.02,
} as const;
/** Head over bar: common practice, no source, 1.15 to 1.25 at the least. */
const HEAD_OVER_BAR = 1.3;

export function barForCoil(car: Car, wheel: Wheel, asked: BarAsked): BarProposal | NoProposal {
  const numbers = new Numbers(car.values);
  const axle = car.form[wheel.end];
  const form = axle[wheel.side];
  if (form.coil === undefined)
    return no(`The ${wheel.end} ${wheel.side} corner of this spec has no coil to be replaced.`);
  const material = springMaterial(asked.material);
  if (material === undefined) {
    return no(
      `There is no material "${asked.material}". Near to it: ${springMaterialsLike(asked.material).join(', ')}. The table has: ${SPRING_MATERIALS.map((each) => each.name).join(', ')}.`,
    );
  }
  const of = sprungCorner(axle, wheel.side, numbers);
  const range = rangeOf(of, 0);
  const marks = travelMarks(of);
  const notes = [...of.springing.notes];
  const lowest = Math.max(range.droop, marks.coilFree);
  if (marks.coilFree > range.droop) {
    notes.push(
      `The coil is loose from ${mm(marks.coilFree)} down; a splined bar would twist backwards there. Bring the droop stop up to it, or leave the bar unpreset.`,
    );
  }
  // past its solid length a coil is steel on steel, and no bar is asked to do that
  const highest = Number.isFinite(marks.coilSolid) ? Math.min(range.bump, marks.coilSolid) : range.bump;
  if (highest < range.bump) {
    notes.push(
      `The coil goes solid at ${mm(highest)}; the bar is matched up to there, and its stress beyond is that of the overtravel.`,
    );
  }
  if (!(highest > lowest)) return no('There is no travel in which the coil carries.');
  // a hair inside the ends, where the linkage still closes
  const samples = torqueSamples(of, lowest * 0.999, highest * 0.999, SAMPLES);
  const coil = coilOf(form.coil, numbers).coil;
  const massOfCoil = coilMass(coil);
  const points = samples.map((sample) => ({ rockerAngle: sample.ratios.angle, torque: sample.coil }));
  const angles = points.map((point) => point.rockerAngle);
  const overtravel = asked.overtravel ?? 0.1 * (Math.max(...angles) - Math.min(...angles));
  const wanted = {
    coil: points,
    overtravel,
    coilMass: massOfCoil,
    duty: { surface: asked.surface ?? 'ground', residualAtSkin: 0, blocks: DEMONSTRATION_DAY },
    ...(asked.splines === undefined
      ? {}
      : {
          anchor: { splines: { first: asked.splines.rocker, second: asked.splines.anchor }, slackAtMarks: 0 },
        }),
  } as const;
  const limits = {
    kind: 'to make',
    material,
    diameter: {
      from: asked.diameterFrom ?? DEFAULTS.diameterFrom,
      to: asked.diameterTo ?? DEFAULTS.diameterTo,
    },
    boreRatio: asked.boreRatio ?? 0,
    activeLength: { from: asked.lengthFrom ?? DEFAULTS.lengthFrom, to: asked.lengthTo ?? DEFAULTS.lengthTo },
    ...(asked.diameterStep === undefined ? {} : { grindingStep: asked.diameterStep }),
  } as const;
  const wrong = limitsWrong(limits) ?? askedWrong(asked);
  if (wrong !== undefined) return no(wrong);
  const none: EndTransition = { kind: 'none' };
  let found = fitBars({
    ...wanted,
    from: asked.rack === undefined ? { ...limits, ends: [none, none] } : { kind: 'rack', bars: asked.rack },
  });
  const first = found.fits[0];
  if (first === undefined) return no('No bar within these limits: widen the diameters or the lengths.');
  if (asked.rack === undefined) {
    // once more with heads on, as thick as the best bar wants them
    const headDiameter = Math.ceil((HEAD_OVER_BAR * first.bar.diameter) / 5e-4) * 5e-4;
    const end: EndTransition = { kind: 'fillet', radius: DEFAULTS.filletRadius, headDiameter };
    const near = { from: limits.diameter.from, to: Math.min(limits.diameter.to, headDiameter / 1.15) };
    found = fitBars({ ...wanted, from: { ...limits, diameter: near, ends: [end, end] } });
  }
  const towardsAnchor = sub(numbers.point(form.points.rockerAxis), numbers.point(form.points.rockerPivot));
  const hand = workingHand(turnInBump(of.corner.rockerAxis, towardsAnchor));
  const bars = found.fits.map((fit) =>
    proposed(fit, of, samples, { hand, material: asked.material, splines: asked.splines }),
  );
  if (bars.length === 0) return no('No bar within these limits: widen the diameters or the lengths.');
  const coilRate = of.springing.coilRate!;
  return {
    reached: true,
    wheel,
    travel: samples.map((sample) => sample.travel),
    rockerAngle: angles,
    torqueCoil: samples.map((sample) => sample.coil),
    wheelRateCoil: samples.map(({ ratios, compression }) =>
      wheelRateOfCoil(ratios, coilRate, of.springing.coil!.force(compression)),
    ),
    idealRate: found.ideal.rate,
    cannotMatch: found.ideal.rms,
    coilMass: massOfCoil,
    bars,
    change: changeTo(bars[0]!, wheel, asked),
    notes: [...notes, ...barNotes(bars[0]!, form.coil.rate === undefined)],
    cautions: [WOUND_BAR_CAUTION, CRACK_TEST_CAUTION, STANDING_CAUTION],
  };
}

const no = (message: string): NoProposal => ({ reached: false, message });
const mm = (value: number): string => `${(value * 1000).toFixed(1)} mm`;

function limitsWrong(limits: {
  readonly diameter: { readonly from: number; readonly to: number };
  readonly activeLength: { readonly from: number; readonly to: number };
  readonly boreRatio: number;
  readonly grindingStep?: number;
}): string | undefined {
  const { diameter, activeLength: length, boreRatio, grindingStep } = limits;
  if (!(diameter.from > 0 && diameter.to >= diameter.from))
    return 'The diameters must run from a smaller to a larger one.';
  if (!(length.from > 0 && length.to >= length.from))
    return 'The lengths must run from a shorter to a longer one.';
  if (!(boreRatio >= 0 && boreRatio < 0.95)) return 'The bore must be less than 0.95 of the diameter.';
  if (grindingStep !== undefined && !(grindingStep >= 1e-6))
    return 'The grinding step must be a micrometre or more.';
  if (grindingStep !== undefined && (diameter.to - diameter.from) / grindingStep > 20000)
    return 'The grinding step is too fine for so wide a range of diameters.';
  return undefined;
}

/** More teeth than this on a bar are no splines. */
const MOST_TEETH = 200;

function askedWrong({ overtravel, splines }: BarAsked): string | undefined {
  if (overtravel !== undefined && !(overtravel >= 0 && overtravel <= Math.PI))
    return 'The rocker angle past full bump must be from nothing to half a turn.';
  const teeth = splines === undefined ? [] : [splines.rocker, splines.anchor];
  if (!teeth.every((each) => Number.isInteger(each) && each >= 3 && each <= MOST_TEETH))
    return `The splines must be whole numbers of teeth, from 3 to ${MOST_TEETH}.`;
  return undefined;
}

function proposed(
  fit: BarFit,
  of: SprungCorner,
  samples: ReturnType<typeof torqueSamples>,
  about: { readonly hand: Hand; readonly material: string; readonly splines: BarAsked['splines'] },
): ProposedBar {
  const { bar, rate, slackAt } = fit;
  const torque = samples.map(({ ratios }) => rate * (ratios.angle - slackAt));
  const end = bar.ends[0];
  const material = springMaterial(about.material)!;
  const strength = tensileStrength(material, bar.diameter);
  const now = of.wheelAt(0);
  const coilNow = now.unit.coil * now.ratios.unit;
  const barNow = -rate * slackAt * now.ratios.turn;
  return {
    ...(fit.name === undefined ? {} : { name: fit.name }),
    diameter: bar.diameter,
    bore: bar.bore,
    parallelLength: bar.parallelLength,
    activeLength: activeLength(bar),
    ...(end.kind === 'none' ? {} : { headDiameter: end.headDiameter }),
    ...(end.kind === 'fillet' ? { filletRadius: end.radius } : {}),
    material: about.material,
    hand: about.hand,
    rate,
    twistAsSurveyed: -slackAt,
    fullBump: fit.fullBump,
    overtravel: fit.overtravel,
    ...(strength === undefined ? {} : { tensileStrength: strength.low }),
    ...(fit.shearYield === undefined ? {} : { shearYield: fit.shearYield }),
    mass: fit.mass,
    massOverCoil: fit.massOverCoil ?? Number.NaN,
    ...(fit.life === undefined ? {} : { life: fit.life.repeats }),
    ...(about.splines === undefined
      ? {}
      : { splineStep: vernierStep({ first: about.splines.rocker, second: about.splines.anchor }) }),
    splineError: fit.splineError,
    ...(fit.setting === undefined ? {} : { setting: fit.setting }),
    worst: fit.worst,
    rms: fit.rms,
    reversed: fit.reversed,
    standsHigher: (barNow - coilNow) / (now.elastic + now.byForce),
    torque,
    wheelRate: samples.map(({ ratios }, k) => wheelRateOfBar(ratios, rate, torque[k]!)),
  };
}

function barNotes(bar: ProposedBar, coilComputed: boolean): string[] {
  const notes: string[] = [];
  if (bar.shearYield !== undefined && bar.overtravel.stress > bar.shearYield) {
    notes.push(
      'Past full bump the best bar would yield: take a longer or a bored one, a stronger material, or have it preset by its maker.',
    );
  }
  if (bar.tensileStrength === undefined)
    notes.push(
      'The strength of this material at this diameter is not in the table: ask for the certificate.',
    );
  if (bar.reversed > 0)
    notes.push('The bar is twisted backwards at the droop end; a preset bar must not be.');
  if (Math.abs(bar.standsHigher) > 1e-4) {
    notes.push(
      `Set to fit best over the travel, the car stands ${mm(Math.abs(bar.standsHigher))} ${bar.standsHigher > 0 ? 'higher' : 'lower'} at this wheel; set to the same height, the curves shift by as much.`,
    );
  }
  if (coilComputed)
    notes.push('The coil’s rate is computed and not measured: put it on the press before a bar is ordered.');
  notes.push(
    'Life is by class of surface, for an assumed demonstration day, with its honest band; crack tests rule.',
  );
  return notes;
}

const text = (value: number): string => `${Number((value * 1000).toFixed(3))} mm`;

function changeTo(bar: ProposedBar, wheel: Wheel, asked: BarAsked): Plain {
  const end = (splines: number | undefined) => ({
    form: bar.headDiameter === undefined ? 'square' : 'radius',
    ...(bar.headDiameter === undefined ? {} : { headDiameter: text(bar.headDiameter) }),
    ...(bar.filletRadius === undefined ? {} : { size: text(bar.filletRadius) }),
    ...(splines === undefined ? {} : { splines }),
  });
  const surfaces = {
    'as turned': 'turned',
    ground: 'ground',
    'ground and peened': 'ground and shot-peened',
  } as const;
  return {
    [wheel.end]: {
      [wheel.side]: {
        coil: null,
        bar: {
          diameter: text(bar.diameter),
          ...(bar.bore === 0 ? {} : { bore: text(bar.bore) }),
          parallelLength: text(bar.parallelLength),
          rockerEnd: end(asked.splines?.rocker),
          anchorEnd: end(asked.splines?.anchor),
          material: bar.material,
          hand: asked.preset ? wheel.side : 'not preset',
          surface: surfaces[asked.surface ?? 'ground'],
        },
      },
    },
  };
}
