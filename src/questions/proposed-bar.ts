/** A bar as it is proposed in a coil's place: its sizes, what it does at the wheel, and the change that fits it. */
import type { Plain } from '../car/spec.ts';
import type { BarFit } from '../loadpath/spring/bar-for-coil.ts';
import type { BarSurface } from '../loadpath/spring/bar-life.ts';
import type { Hand } from '../loadpath/spring/presetting.ts';
import { vernierStep } from '../loadpath/spring/spline.ts';
import { activeLength } from '../loadpath/spring/torsion-bar.ts';
import type { SprungCorner } from '../loadpath/sprung-corner.ts';
import { type torqueSamples, wheelRateOfBar } from '../loadpath/torque-curves.ts';
import { springMaterial, tensileStrength } from '../materials/spring-material.ts';
import type { Vec3 } from '../maths/vec3.ts';
import { spokenAmount } from '../units/show.ts';
import type { Wheel } from './figure.ts';

const mm = (value: number): string => spokenAmount(value, 'm', 1);

export interface ProposedBar {
  readonly name?: string;
  readonly diameter: number;
  readonly bore: number;
  readonly parallelLength: number;
  readonly activeLength: number;
  readonly headDiameter?: number;
  readonly filletRadius?: number;
  readonly material: string;
  /** Hand in bump; absent where the file does not say which way the bar runs. */
  readonly hand?: Hand;
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
  /** Wheel rate in the surveyed position, N/m, with the bar set to fit best. */
  readonly wheelRateStanding: number;
  /** Along `travel` of the answer. */
  readonly torque: readonly number[];
  readonly wheelRate: readonly number[];
}

/** A fitted bar with what the workshop wants to know of it. */
export function proposed(
  fit: BarFit,
  of: SprungCorner,
  samples: ReturnType<typeof torqueSamples>,
  about: {
    readonly hand?: Hand;
    readonly material: string;
    readonly splines: ChangeAsked['splines'];
  },
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
    ...(about.hand === undefined ? {} : { hand: about.hand }),
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
    wheelRateStanding: wheelRateOfBar(now.ratios, rate, -rate * slackAt),
    torque,
    wheelRate: samples.map(({ ratios }, k) => wheelRateOfBar(ratios, rate, torque[k]!)),
  };
}

/** What must be said of the best bar. */
export function barNotes(bar: ProposedBar, coilComputed: boolean): string[] {
  const notes: string[] = [];
  const yields = bar.shearYield ?? Number.POSITIVE_INFINITY;
  if (bar.overtravel.stress > yields) {
    notes.push(
      `${bar.fullBump.stress > yields ? 'At' : 'Past'} full bump the best bar would yield: take a longer or a bored one, a stronger material, or have it preset by its maker.`,
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

const anchorText = (anchor: Vec3): Plain => ({
  is: `${anchor.map((value) => (value * 1000).toFixed(1)).join(', ')} mm`,
  with: 'estimate',
  note: 'proposed along the rocker axis; measure where the anchor can stand',
});

const text = (value: number): string => `${Number((value * 1000).toFixed(3))} mm`;

/** The bar's surface as the car file calls it. */
const SURFACES = {
  'as turned': 'turned',
  ground: 'ground',
  'ground and peened': 'ground and shot-peened',
} as const;

/** What goes into the file besides the bar itself. */
export interface ChangeAsked {
  readonly splines?: { readonly rocker: number; readonly anchor: number };
  readonly surface?: BarSurface;
  readonly preset?: boolean;
  /** Where the anchor could stand, for a corner whose file has none yet. */
  readonly anchor?: Vec3;
}

/** The change that puts the bar in the coil's place, as the part of the car file that differs. */
export function changeTo(bar: ProposedBar, wheel: Wheel, asked: ChangeAsked): Plain {
  const end = (splines: number | undefined) => ({
    form: bar.headDiameter === undefined ? 'square' : 'radius',
    ...(bar.headDiameter === undefined ? {} : { headDiameter: text(bar.headDiameter) }),
    ...(bar.filletRadius === undefined ? {} : { size: text(bar.filletRadius) }),
    ...(splines === undefined ? {} : { splines }),
  });
  return {
    [wheel.end]: {
      [wheel.side]: {
        coil: null,
        ...(asked.anchor === undefined ? {} : { points: { barAnchor: anchorText(asked.anchor) } }),
        bar: {
          diameter: text(bar.diameter),
          ...(bar.bore === 0 ? {} : { bore: text(bar.bore) }),
          parallelLength: text(bar.parallelLength),
          rockerEnd: end(asked.splines?.rocker),
          anchorEnd: end(asked.splines?.anchor),
          material: bar.material,
          preset: asked.preset ? `for the ${wheel.side} side` : 'not preset',
          surface: SURFACES[asked.surface ?? 'ground'],
        },
      },
    },
  };
}
