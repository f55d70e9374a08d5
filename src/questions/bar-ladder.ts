/** A set of bars that steps the wheel rate evenly between two rates, as bars that can be ground. */
import type { Car } from '../car/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type Ladder, ladder, RungOutOfReach } from '../loadpath/spring/ladder.ts';
import { barMass, skinStress, type TorsionBar } from '../loadpath/spring/torsion-bar.ts';
import { barOf } from '../loadpath/spring-of-car.ts';
import { sprungCorner } from '../loadpath/sprung-corner.ts';
import { springMaterial, springMaterialsLike } from '../materials/spring-material.ts';
import type { NoProposal } from './bar-for-coil.ts';
import { STANDING_CAUTION, WOUND_BAR_CAUTION } from './cautions.ts';
import type { Wheel } from './figure.ts';

export interface LadderAsked {
  /** Wheel rates of the softest and stiffest bar, N/m. */
  readonly from: number;
  readonly to: number;
  readonly count: number;
  readonly even: 'difference' | 'ratio';
  /** What the grinder holds, m. */
  readonly step?: number;
  /** For a corner without a bar: what the bars are to be made of, and how long they are active, m. */
  readonly material?: string;
  readonly activeLength?: number;
}

export interface LadderAnswer {
  readonly reached: true;
  readonly wheel: Wheel;
  readonly rungs: readonly (Omit<Ladder['rungs'][number], 'bar'> & {
    readonly mass: number;
    /** Twist and stress as the car stands. */
    readonly twist: number;
    readonly stress: number;
  })[];
  readonly evenStep: number;
  readonly unevenness: number;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

const DIAMETERS = { from: 0.006, to: 0.06 } as const;
/** What no grinder holds, and what no rung would then be apart from the next. */
const STEPS = { least: 1e-6, most: 5e-3 } as const;

export function barLadder(car: Car, wheel: Wheel, asked: LadderAsked): LadderAnswer | NoProposal {
  const { from, to, count } = asked;
  if (!(from > 0 && to > from && Number.isFinite(to)))
    return no('The ladder must run from a softer to a stiffer wheel rate.');
  if (!(Number.isInteger(count) && count >= 2 && count <= 40)) return no('A ladder has from 2 to 40 bars.');
  const { step = 5e-5, activeLength } = asked;
  if (!(step >= STEPS.least && step <= STEPS.most))
    return no('The grinding step must be from 0.001 mm to 5 mm.');
  if (activeLength !== undefined && !(activeLength > 0 && Number.isFinite(activeLength)))
    return no('The active length must be more than nothing, such as 300 mm.');
  const numbers = new Numbers(car.values);
  const axle = car.form[wheel.end];
  const of = sprungCorner(axle, wheel.side, numbers);
  const pattern = patternOf(axle[wheel.side].bar, numbers, asked);
  if (typeof pattern === 'string') return no(pattern);
  const { turn, turnChange, unit, unitChange } = of.ratiosAt(0);
  const now = of.wheelAt(0);
  // the bar carries what the scale says less what the damper unit does without its coil
  const others = now.unit.total - now.unit.coil;
  const torque = (of.springing.sprungLoad - others * unit) / turn;
  const rest = (now.unit.rate - (of.springing.coil?.rate(0) ?? 0)) * unit ** 2 + others * unitChange;
  try {
    const found = ladder({
      softest: from,
      stiffest: to,
      count,
      steps: asked.even === 'ratio' ? 'equal ratio' : 'equal difference',
      barOf: (diameter) => ({ ...pattern, diameter, bore: (pattern.bore / pattern.diameter) * diameter }),
      wheelRateOf: (rate) => rate * turn ** 2 + torque * turnChange + rest,
      diameters: DIAMETERS,
      grindingStep: step,
    });
    return {
      reached: true,
      wheel,
      rungs: found.rungs.map(({ bar, ...rung }) => ({
        ...rung,
        mass: barMass(bar),
        twist: torque / rung.rate,
        stress: skinStress(bar, torque),
      })),
      evenStep: found.evenStep,
      unevenness: found.unevenness,
      notes: [
        'Wheel rates as the car stands, with the anchor moved so that it stands at the same height.',
        ...of.springing.notes,
      ],
      cautions: [WOUND_BAR_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (reason instanceof RungOutOfReach)
      return cannot(`${reason.message.slice(0, 1).toUpperCase()}${reason.message.slice(1)}.`);
    throw reason;
  }
}

/** The bar whose other sizes the ladder keeps. */
function patternOf(
  form: Parameters<typeof barOf>[0] | undefined,
  numbers: Numbers,
  asked: LadderAsked,
): TorsionBar | string {
  if (form !== undefined) {
    const { bar } = barOf(form, numbers);
    // a thinner bar keeps its heads; a bar as thick as its head has no transition left
    return asked.activeLength === undefined
      ? bar
      : { ...bar, parallelLength: asked.activeLength, ends: [{ kind: 'none' }, { kind: 'none' }] };
  }
  if (asked.material === undefined || asked.activeLength === undefined) {
    return 'This corner has no torsion bar: say of what material and with what active length the bars are to be made.';
  }
  const material = springMaterial(asked.material);
  if (material === undefined)
    return `There is no material "${asked.material}". Near to it: ${springMaterialsLike(asked.material).join(', ')}.`;
  return {
    diameter: 0.02,
    bore: 0,
    parallelLength: asked.activeLength,
    ends: [{ kind: 'none' }, { kind: 'none' }],
    shearModulus: material.shearModulus.value,
    density: material.density.value,
  };
}

const cannot = (message: string): NoProposal => ({ reached: false, because: 'cannot be', message });
const no = (message: string): NoProposal => ({ reached: false, because: 'asked wrongly', message });
