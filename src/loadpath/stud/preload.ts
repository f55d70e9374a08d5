/**
 * Preload of a stud from what the hands do: torque, stretch or angle; and the stress that it leaves.
 *
 * In    the thread, friction of thread and nut face, diameters of the nut's face, torque at the fastener
 * Out   preload, thread torque, equivalent stress
 * Axes  tension positive
 * Not   its scatter: the caller hands over the low, middle or high friction
 *
 * ST-n are the equations of docs/theory/studs.md. The torque equation is that of VDI 2230 Part 1 (from memory)
 * with the flank angle of the thread in hand.
 */
import type { Thread } from '../../materials/thread.ts';
import type { Metre, Newton, NewtonMetre, Pascal, Radian, Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

export interface Friction {
  readonly thread: Ratio;
  readonly face: Ratio;
}

/** Ring on which the nut or its washer turns. */
export interface NutFace {
  readonly outer: Metre;
  readonly hole: Metre;
}

const areaOf = formula({
  symbol: 'A_s',
  means: 'stress area of the thread',
  is: 'π/4*d_s^2',
  unit: 'm^2',
  terms: { d_s: { unit: 'm', means: 'diameter of the stress area' } },
  source: 'ST-1; ISO 898-1, ASME B1.1',
});

export const stressArea = (thread: Thread, working?: Working): number =>
  areaOf({ d_s: thread.stressDiameter }, working, { d_s: { kind: 'table', name: thread.name } });

const faceDiameter = formula({
  symbol: 'D_f',
  means: 'mean diameter of the nut face',
  is: '(d_w + d_h)/2',
  unit: 'm',
  terms: {
    d_w: { unit: 'm', means: 'outer diameter of the nut face' },
    d_h: { unit: 'm', means: 'hole under it' },
  },
  source: 'ST-2',
});

const torquePerLoad = formula({
  symbol: 'q',
  means: 'torque for each newton of preload',
  is: 'P/(2*π) + μ_t*d_2/(2*cos(α)) + μ_f*D_f/2',
  unit: 'm',
  terms: {
    P: { unit: 'm', means: 'pitch' },
    μ_t: { unit: '1', means: 'friction of the thread' },
    d_2: { unit: 'm', means: 'pitch diameter' },
    α: { unit: 'rad', means: 'half the flank angle' },
    μ_f: { unit: '1', means: 'friction of the nut face' },
    D_f: { unit: 'm', means: 'mean diameter of the nut face' },
  },
  source: 'ST-3; VDI 2230',
  holds: 'while the nut slides and nothing yields',
});

const fromTorque = (symbol: 'F_M' | 'F_0', means: string) =>
  formula({
    symbol,
    means,
    is: '(M - M_r)/q',
    unit: 'N',
    terms: {
      M: { unit: 'N m', means: 'torque at the nut' },
      M_r: { unit: 'N m', means: 'running torque of the nut' },
      q: { unit: 'm', means: 'torque for each newton of preload' },
    },
    source: 'ST-4',
  });

const preloadFromTorque = fromTorque('F_M', 'preload from torque');
const snugFromTorque = fromTorque('F_0', 'preload at the snug torque');

export interface Tightened {
  readonly thread: Thread;
  readonly face: NutFace;
  readonly friction: Friction;
}

const fromThread = (thread: Thread): Origin => ({ kind: 'table', name: thread.name });

/** Torque for each newton of preload, metres.  [ST-3] */
export function torqueForLoad(of: Tightened, working?: Working, from: TorqueOrigins = {}): Metre {
  const { thread, face, friction } = of;
  const D_f = faceDiameter({ d_w: face.outer, d_h: face.hole }, working, from);
  return torquePerLoad(
    {
      P: thread.pitch,
      μ_t: friction.thread,
      d_2: thread.pitchDiameter,
      α: thread.flank,
      μ_f: friction.face,
      D_f,
    },
    working,
    { P: fromThread(thread), d_2: fromThread(thread), α: fromThread(thread), ...from },
  );
}

type TorqueOrigins = Readonly<Partial<Record<'d_w' | 'd_h' | 'μ_t' | 'μ_f' | 'M' | 'M_r', Origin>>>;

/** Preload that a torque at the nut leaves, less what the nut needs to run.  [ST-4] */
export function preloadByTorque(
  of: Tightened & {
    readonly torque: NewtonMetre;
    readonly running: NewtonMetre;
    /** The torque only brings the nut to snug, and an angle follows. */
    readonly snug?: boolean;
  },
  working?: Working,
  from: TorqueOrigins = {},
): Newton {
  const q = torqueForLoad(of, working, from);
  return (of.snug === true ? snugFromTorque : preloadFromTorque)(
    { M: of.torque, M_r: of.running, q },
    working,
    from,
  );
}

/** Torque at the nut for a wanted preload.  [ST-4] */
export const torqueForPreload = (
  of: Tightened & { readonly running: NewtonMetre },
  preload: Newton,
): NewtonMetre => torqueForLoad(of) * preload + of.running;

const torqueAtNut = formula({
  symbol: 'M',
  means: 'torque at the nut',
  is: 'M_w*(L + e)/L',
  unit: 'N m',
  terms: {
    M_w: { unit: 'N m', means: 'torque set on the wrench' },
    L: { unit: 'm', means: 'length of the wrench, square drive to middle of the grip' },
    e: { unit: 'm', means: 'how far a crowfoot stands beyond the square drive' },
  },
  source: 'ST-5',
  holds: 'with the crowfoot in line with the wrench; square to it, it adds nothing',
});

/** Torque at the nut where a crowfoot lengthens the wrench.  [ST-5] */
export const torqueThroughCrowfoot = (
  of: { readonly set: NewtonMetre; readonly wrench: Metre; readonly crowfoot: Metre },
  working?: Working,
  from: Readonly<Partial<Record<'M_w' | 'L' | 'e', Origin>>> = {},
): NewtonMetre => torqueAtNut({ M_w: of.set, L: of.wrench, e: of.crowfoot }, working, from);

const threadTorque = formula({
  symbol: 'M_t',
  means: 'torque in the thread',
  is: 'F*(P/(2*π) + μ_t*d_2/(2*cos(α)))',
  unit: 'N m',
  terms: {
    F: { unit: 'N', means: 'preload' },
    P: { unit: 'm', means: 'pitch' },
    μ_t: { unit: '1', means: 'friction of the thread' },
    d_2: { unit: 'm', means: 'pitch diameter' },
    α: { unit: 'rad', means: 'half the flank angle' },
  },
  source: 'ST-6',
});

const equivalentStress = formula({
  symbol: 'σ_v',
  means: 'equivalent stress while tightening',
  is: 'sqrt((F/A_s)^2 + 3*(12*M_t/(π*d_s^3))^2)',
  unit: 'Pa',
  terms: {
    F: { unit: 'N', means: 'preload' },
    A_s: { unit: 'm^2', means: 'stress area of the thread' },
    M_t: { unit: 'N m', means: 'torque in the thread' },
    d_s: { unit: 'm', means: 'diameter of the stress area' },
  },
  source: 'ST-7; VDI 2230',
  holds: 'with the shear taken as even over the section, as at its yield',
});

/** Equivalent stress in the thread while the wrench still turns it (von Mises).  [ST-6, ST-7] */
export function tighteningStress(
  of: { readonly thread: Thread; readonly preload: Newton; readonly threadFriction: Ratio },
  working?: Working,
  from: Readonly<Partial<Record<'μ_t' | 'F', Origin>>> = {},
): Pascal {
  const { thread, preload, threadFriction } = of;
  const own = fromThread(thread);
  const M_t = threadTorque(
    { F: preload, P: thread.pitch, μ_t: threadFriction, d_2: thread.pitchDiameter, α: thread.flank },
    working,
    { P: own, d_2: own, α: own, ...from },
  );
  const A_s = stressArea(thread, working);
  return equivalentStress({ F: preload, A_s, M_t, d_s: thread.stressDiameter }, working, {
    d_s: own,
    ...from,
  });
}

/**
 * Preload at which the equivalent stress while tightening reaches a stress: 0.9 of yield is usual.  [ST-8]
 * Stress and thread torque are both in proportion to the preload, so one division does it.
 */
export const preloadAtStress = (of: {
  readonly thread: Thread;
  readonly threadFriction: Ratio;
  readonly stress: Pascal;
}): Newton =>
  of.stress / tighteningStress({ thread: of.thread, preload: 1, threadFriction: of.threadFriction });

const preloadFromStretch = formula({
  symbol: 'F_M',
  means: 'preload from stretch',
  is: 'ΔL/δ_f',
  unit: 'N',
  terms: {
    ΔL: { unit: 'm', means: 'stretch of the stud, end to end' },
    δ_f: { unit: 'm/N', means: 'compliance of the length that stretches' },
  },
  source: 'ST-9',
});

/** Preload from the stud's stretch by micrometer.  [ST-9] */
export const preloadByStretch = (
  of: { readonly stretch: Metre; readonly compliance: number },
  working?: Working,
  from: Readonly<Partial<Record<'ΔL' | 'δ_f', Origin>>> = {},
): Newton => preloadFromStretch({ ΔL: of.stretch, δ_f: of.compliance }, working, from);

const preloadFromAngle = formula({
  symbol: 'F_M',
  means: 'preload from the angle turned',
  is: 'F_0 + θ/(2*π)*P/(δ_S + δ_P)',
  unit: 'N',
  terms: {
    F_0: { unit: 'N', means: 'preload at the snug torque' },
    θ: { unit: 'rad', means: 'angle turned from snug' },
    P: { unit: 'm', means: 'pitch' },
    δ_S: { unit: 'm/N', means: 'compliance of the stud' },
    δ_P: { unit: 'm/N', means: 'compliance of the clamped parts' },
  },
  source: 'ST-10',
  holds: 'while stud and parts are elastic',
});

/** Preload from the angle turned past snug.  [ST-10] */
export const preloadByAngle = (
  of: {
    readonly snug: Newton;
    readonly angle: Radian;
    readonly pitch: Metre;
    readonly stud: number;
    readonly parts: number;
  },
  working?: Working,
  from: Readonly<Partial<Record<'F_0' | 'θ' | 'P', Origin>>> = {},
): Newton =>
  preloadFromAngle({ F_0: of.snug, θ: of.angle, P: of.pitch, δ_S: of.stud, δ_P: of.parts }, working, from);
