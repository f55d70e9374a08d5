/**
 * Bar for coil: the torsion bar whose torque at the rocker comes nearest to the coil's over the whole travel.
 *
 * In    the coil's torque about the rocker axis over the rocker's angle (the caller works out force × arm), what
 *       bars there are or can be ground, how finely the anchor can be set
 * Out   the best bars, each with both curves, what cannot be matched, twist, stress and life, mass
 * Axes  angle and torque positive in bump
 * Not   the wheel rate: two torques that agree at the rocker agree at the wheel, so it is compared there
 *
 * A bar on the rocker's axis gives a straight line, torque = k_t·(θ − θ_0). A coil's arm changes with the angle,
 * so its line is bent, and the bend cannot be had from a bar. See docs/theory/springs.md, SP-50 to SP-52.
 */
import { type SpringMaterial, shearYield, tensileStrength } from '../../materials/spring-material.ts';
import type {
  Kilogram,
  Metre,
  NewtonMetre,
  NewtonMetrePerRadian,
  Pascal,
  Radian,
  Ratio,
} from '../../units/quantity.ts';
import type { SolvedStep, Working } from '../../working/working.ts';
import { type BarLife, type BarSurface, barLife, dutyFromParts } from './bar-life.ts';
import { nearestSetting, type SplineSetting, type Splines, vernierStep } from './spline.ts';
import { fitWithin, type TorquePoint } from './torque-fit.ts';
import {
  barMass,
  type EndTransition,
  equivalentLength,
  polarSecondMoment,
  skinStress,
  type TorsionBar,
  torsionBarRate,
} from './torsion-bar.ts';

/** A bar that hangs on the rack. A rate measured on the bench rules over the computed one. */
export interface RackBar {
  readonly name: string;
  readonly bar: TorsionBar;
  readonly material: SpringMaterial;
  readonly measuredRate?: NewtonMetrePerRadian;
}

/** Bars that can be made: limits, and the step in diameter that the grinder holds. */
export interface BarsToMake {
  readonly material: SpringMaterial;
  readonly diameter: { readonly from: Metre; readonly to: Metre };
  /** Bore over diameter, 0 for solid. */
  readonly boreRatio: Ratio;
  readonly activeLength: { readonly from: Metre; readonly to: Metre };
  readonly ends: readonly [EndTransition, EndTransition];
  readonly splineLength?: Metre;
  readonly heads?: TorsionBar['heads'];
  /** 0.05 mm unless stated. */
  readonly grindingStep?: Metre;
}

export interface BarDuty {
  readonly surface: BarSurface;
  /** Negative when preset towards bump, 0 when not preset. */
  readonly residualAtSkin: Pascal;
  /** Parts of the stress at full bump. */
  readonly blocks: Parameters<typeof dutyFromParts>[1];
}

export interface BarWanted {
  /** From full droop to full bump. */
  readonly coil: readonly TorquePoint[];
  readonly from:
    | { readonly kind: 'rack'; readonly bars: readonly RackBar[] }
    | ({ readonly kind: 'to make' } & BarsToMake);
  /** Teeth of both ends and the rocker angle at which the bar is slack with the marks in line. */
  readonly anchor?: { readonly splines: Splines; readonly slackAtMarks: Radian };
  /** Rocker angle past full bump that the bar must still bear: stops give, and somebody will hit a kerb. */
  readonly overtravel: Radian;
  readonly duty?: BarDuty;
  readonly coilMass?: Kilogram;
}

export interface BarFit {
  readonly name?: string;
  readonly bar: TorsionBar;
  readonly rate: NewtonMetrePerRadian;
  /** Rocker angle at which the bar is slack: the best one, and the one the splines allow. */
  readonly slackWanted: Radian;
  readonly slackAt: Radian;
  readonly setting?: SplineSetting;
  /** Torque that the nearest spline setting is off by, N m. */
  readonly splineError: NewtonMetre;
  readonly points: readonly {
    readonly rockerAngle: Radian;
    readonly coil: NewtonMetre;
    readonly bar: NewtonMetre;
    readonly difference: NewtonMetre;
  }[];
  /** Where bar and coil differ most, in N m and as a part of the coil's greatest torque. */
  readonly worst: {
    readonly rockerAngle: Radian;
    readonly difference: NewtonMetre;
    readonly part: Ratio;
  };
  readonly rms: NewtonMetre;
  readonly fullBump: BarState;
  readonly overtravel: BarState;
  /** Yield in shear of the material at this diameter, by the low end of its strength; undefined if not known. */
  readonly shearYield: Pascal | undefined;
  /** Torque against the working direction at droop, N m; 0 when the bar never reverses. */
  readonly reversed: NewtonMetre;
  readonly life: BarLife | undefined;
  readonly mass: Kilogram;
  readonly massOverCoil: Ratio | undefined;
}

export interface BarState {
  readonly twist: Radian;
  readonly torque: NewtonMetre;
  readonly stress: Pascal;
}

export interface BarForCoil {
  /** Torsional rate and slack angle that fit best, if any bar could be had. */
  readonly ideal: {
    readonly rate: NewtonMetrePerRadian;
    readonly slackAt: Radian;
    readonly rms: NewtonMetre;
    readonly worst: NewtonMetre;
  };
  /** Best first: by what is not matched, then those that do not yield, then by stress. At most `most`. */
  readonly fits: readonly BarFit[];
}

/**
 * The bars nearest to the coil.  [SP-50 to SP-52]
 *
 * Bars to make: for every diameter that can be ground the length that gives the ideal rate; where that length
 * cannot be had, the nearest length that can. The longest bar has the lowest stress and comes first among equals.
 *
 * @throws Error with fewer than two angles in the coil's curve: the caller has checked it
 */
export function barForCoil(wanted: BarWanted, most = 5): BarForCoil {
  const ideal = fitWithin(wanted.coil);
  const candidates =
    wanted.from.kind === 'rack'
      ? wanted.from.bars.map((each) => ({
          name: each.name,
          bar: each.bar,
          material: each.material,
          rate: each.measuredRate ?? torsionBarRate(each.bar),
        }))
      : barsToMake(wanted.from, ideal.rate);
  const fits = candidates.map((each) => fitBar(wanted, each));
  // bars to make that have the ideal rate differ in rounding only: below a millionth they are equal; and so are
  // they below what half a step of the splines is worth, which falls out for each bar as it may
  const grain = Math.max(
    1e-6 * Math.max(...wanted.coil.map((point) => Math.abs(point.torque))),
    wanted.anchor === undefined || wanted.from.kind === 'rack'
      ? 0
      : (ideal.rate * vernierStep(wanted.anchor.splines)) / 2,
  );
  const least = Math.min(...fits.map((fit) => fit.rms));
  const rank = (fit: BarFit): number => Math.floor((fit.rms - least) / grain);
  // of those that match alike, one that would yield past full bump comes last
  const yields = (fit: BarFit): number =>
    fit.shearYield !== undefined && Math.abs(fit.overtravel.stress) > fit.shearYield ? 1 : 0;
  fits.sort(
    (a, b) =>
      rank(a) - rank(b) ||
      yields(a) - yields(b) ||
      Math.abs(a.overtravel.stress) - Math.abs(b.overtravel.stress),
  );
  return {
    ideal: { rate: ideal.rate, slackAt: ideal.slackAt, rms: ideal.rms, worst: ideal.worst.difference },
    fits: fits.slice(0, most),
  };
}

interface Candidate {
  readonly name?: string;
  readonly bar: TorsionBar;
  readonly material: SpringMaterial;
  readonly rate: NewtonMetrePerRadian;
}

function barsToMake(limits: BarsToMake, rate: NewtonMetrePerRadian): Candidate[] {
  const step = limits.grindingStep ?? 0.05e-3;
  const first = Math.ceil(limits.diameter.from / step - 1e-9);
  const last = Math.floor(limits.diameter.to / step + 1e-9);
  const found: Candidate[] = [];
  const G = limits.material.shearModulus.value;
  for (let i = first; i <= last; i += 1) {
    const diameter = i * step;
    const bore = limits.boreRatio * diameter;
    const wantedLength = (G * polarSecondMoment({ diameter, bore })) / rate;
    const active = Math.min(limits.activeLength.to, Math.max(limits.activeLength.from, wantedLength));
    const taken = limits.ends.reduce(
      (sum, end) => sum + equivalentLength(end, { diameter, bore }),
      limits.splineLength ?? 0,
    );
    if (active <= taken) continue;
    const bar: TorsionBar = {
      diameter,
      bore,
      parallelLength: active - taken,
      ends: limits.ends,
      ...(limits.splineLength === undefined ? {} : { splineLength: limits.splineLength }),
      ...(limits.heads === undefined ? {} : { heads: limits.heads }),
      shearModulus: G,
      density: limits.material.density.value,
    };
    found.push({ bar, material: limits.material, rate: torsionBarRate(bar) });
  }
  return found;
}

function fitBar(wanted: BarWanted, candidate: Candidate): BarFit {
  const { bar, rate, material } = candidate;
  const best = fitWithin(wanted.coil, { rate });
  const anchor = wanted.anchor;
  const setting =
    anchor === undefined ? undefined : nearestSetting(anchor.splines, best.slackAt - anchor.slackAtMarks);
  const slackAt = setting === undefined ? best.slackAt : anchor!.slackAtMarks + setting.angle;
  const fit = fitWithin(wanted.coil, { rate, slackAt });
  const end = Math.max(...wanted.coil.map((point) => point.rockerAngle));
  const state = (angle: Radian): BarState => {
    const twist = angle - slackAt;
    return { twist, torque: rate * twist, stress: skinStress(bar, rate * twist) };
  };
  const fullBump = state(end);
  const strength = tensileStrength(material, bar.diameter);
  const mass = barMass(bar);
  return {
    ...(candidate.name === undefined ? {} : { name: candidate.name }),
    bar,
    rate,
    slackWanted: best.slackAt,
    slackAt,
    ...(setting === undefined ? {} : { setting }),
    splineError: rate * (best.slackAt - slackAt),
    points: fit.points.map((point) => ({
      rockerAngle: point.rockerAngle,
      coil: point.torque,
      bar: point.fitted,
      difference: point.difference,
    })),
    worst: fit.worst,
    rms: fit.rms,
    fullBump,
    overtravel: state(end + wanted.overtravel),
    shearYield: shearYield(material, bar.diameter),
    reversed: Math.max(0, ...fit.points.map((point) => -point.fitted)),
    life:
      wanted.duty === undefined || strength === undefined
        ? undefined
        : barLife({
            tensileStrength: strength.low,
            diameter: bar.diameter,
            surface: wanted.duty.surface,
            residualAtSkin: wanted.duty.residualAtSkin,
            duty: dutyFromParts(fullBump.stress, wanted.duty.blocks),
          }),
    mass,
    massOverCoil: wanted.coilMass === undefined ? undefined : mass / wanted.coilMass,
  };
}

/**
 * How a fitted bar was reached: the ideal rate, then the bar's own rate, and twist, stress and mass at the end of
 * the travel and past it.
 */
export function workBarFit(found: BarForCoil, fit: BarFit, working: Working): void {
  const solved = (step: Omit<SolvedStep, 'kind' | 'terms'>): void =>
    working.add({ kind: 'solved', terms: [], ...step });
  solved({
    symbol: 'k_i',
    means: "torsional rate that lies nearest to the coil's torque",
    method: 'straight line through the torque over the travel, weighted least squares',
    value: found.ideal.rate,
    unit: 'N m/rad',
    source: 'SP-50',
    residual: {
      value: found.ideal.rms,
      unit: 'N m',
      of: 'torque that no bar can match, root mean square over the travel',
    },
  });
  torsionBarRate(fit.bar, working);
  solved({
    symbol: 'θ_0',
    means: 'rocker angle at which the bar is slack',
    method: fit.setting === undefined ? 'least squares' : 'least squares, then the nearest spline setting',
    value: fit.slackAt,
    unit: 'rad',
    source: 'SP-51',
    residual: { value: fit.splineError, unit: 'N m', of: 'torque that the setting is off by' },
  });
  skinStress(fit.bar, fit.fullBump.torque, working);
  skinStress(fit.bar, fit.overtravel.torque, working);
  barMass(fit.bar, working);
}
