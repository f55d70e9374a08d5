/** Which torsion bar does the coil's work at this wheel: the bar, both curves, what cannot be matched, the mass. */
import type { Car } from '../car/read.ts';
import type { Plain } from '../car/spec.ts';
import { handOfBar } from '../loadpath/bar-hand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { barForCoil as fitBars, type RackBar } from '../loadpath/spring/bar-for-coil.ts';
import type { BarSurface } from '../loadpath/spring/bar-life.ts';
import { coilMass } from '../loadpath/spring/coil-spring.ts';
import type { EndTransition } from '../loadpath/spring/torsion-bar.ts';
import { coilOf } from '../loadpath/spring-of-car.ts';
import { sprungCorner, travelMarks } from '../loadpath/sprung-corner.ts';
import { torqueSamples, wheelRateOfCoil } from '../loadpath/torque-curves.ts';
import { SPRING_MATERIALS, springMaterial, springMaterialsLike } from '../materials/spring-material.ts';
import { along, sub, unit } from '../maths/vec3.ts';
import { spokenAmount } from '../units/show.ts';
import { CRACK_TEST_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';
import { DEMONSTRATION_DAY } from './duty.ts';
import type { Wheel } from './figure.ts';
import { barNotes, changeTo, type ProposedBar, proposed } from './proposed-bar.ts';
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
  /**
   * What the bar should come nearest to: the coil's torque over all its travel, or about the height at which the
   * car stands, where the wheel rate then agrees and the ends of the travel do not.
   */
  readonly match?: 'the whole travel' | 'about standing';
  /** Bars that hang on the rack: then these alone are weighed. */
  readonly rack?: readonly RackBar[];
}

export interface BarProposal {
  readonly reached: true;
  readonly wheel: Wheel;
  readonly travel: readonly number[];
  readonly rockerAngle: readonly number[];
  readonly torqueCoil: readonly number[];
  readonly wheelRateCoil: readonly number[];
  /** Wheel rate of the coil in the surveyed position. */
  readonly wheelRateCoilStanding: number;
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
  /** Whether the question was put wrongly, or has no answer on this car. */
  readonly because: 'asked wrongly' | 'cannot be';
  readonly message: string;
}

const SAMPLES = 41;
/** Half-width of what counts as about standing: most of the running of a stiff car. Common practice, no source. */
const ABOUT_STANDING = 0.006;

/** How much a travel counts in the fit. */
const weightOf =
  (match: NonNullable<BarAsked['match']>) =>
  (travel: number): number =>
    match === 'the whole travel' ? 1 : Math.exp(-0.5 * (travel / ABOUT_STANDING) ** 2);

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
    return wronglyAsked(`The ${wheel.end} ${wheel.side} corner of this spec has no coil to be replaced.`);
  const material = springMaterial(asked.material);
  if (material === undefined) {
    return wronglyAsked(
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
  const weight = weightOf(asked.match ?? 'the whole travel');
  const points = samples.map(({ travel, ratios, coil }) => ({
    rockerAngle: ratios.angle,
    torque: coil,
    weight: weight(travel),
  }));
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
  if (wrong !== undefined) return wronglyAsked(wrong);
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
  const hand = handOfBar(of, numbers)?.works;
  const bars = found.fits.map((fit) =>
    proposed(fit, of, samples, {
      ...(hand === undefined ? {} : { hand }),
      material: asked.material,
      splines: asked.splines,
    }),
  );
  if (bars.length === 0) return no('No bar within these limits: widen the diameters or the lengths.');
  const coilRate = of.springing.coilRate!;
  const now = of.wheelAt(0);
  const pivot = numbers.point(form.points.rockerPivot);
  const best = bars[0]!;
  // where the file has no anchor yet one is proposed, so that the change can be drawn and has a direction
  const anchor =
    form.points.barAnchor === undefined
      ? {
          anchor: along(
            pivot,
            unit(sub(numbers.point(form.points.rockerAxis), pivot)),
            best.activeLength * 1.1,
          ),
        }
      : {};
  if (hand === undefined) {
    notes.push(
      'Which way the bar runs from the rocker is not in the file (barAnchor): measure it before a preset bar is ordered.',
    );
  }
  return {
    reached: true,
    wheel,
    travel: samples.map((sample) => sample.travel),
    rockerAngle: angles,
    torqueCoil: samples.map((sample) => sample.coil),
    wheelRateCoil: samples.map(({ ratios, compression }) =>
      wheelRateOfCoil(ratios, coilRate, of.springing.coil!.force(compression)),
    ),
    wheelRateCoilStanding: wheelRateOfCoil(now.ratios, coilRate, now.unit.coil),
    idealRate: found.ideal.rate,
    cannotMatch: found.ideal.rms,
    coilMass: massOfCoil,
    bars,
    change: changeTo(best, wheel, { ...asked, ...anchor }),
    notes: [...notes, ...barNotes(best, form.coil.rate === undefined)],
    cautions: [WOUND_BAR_CAUTION, CRACK_TEST_CAUTION, STANDING_CAUTION],
  };
}

const no = (message: string): NoProposal => ({ reached: false, because: 'cannot be', message });
const wronglyAsked = (message: string): NoProposal => ({ reached: false, because: 'asked wrongly', message });
const mm = (value: number): string => spokenAmount(value, 'm', 1);

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
