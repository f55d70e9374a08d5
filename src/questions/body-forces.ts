/** Every force on one body of the car, gear case or tub: one by one, together, and how far they close. */
import type { CarForm } from '../car/read.ts';
import type { CarStanding } from '../loadpath/loads/car-equilibrium.ts';
import { cornerLoads } from '../loadpath/loads/corner-loads.ts';
import { type Doing, sideOf, type WheelName } from '../loadpath/loads/doing.ts';
import type { AppliedForce, Resultant } from '../loadpath/loads/wrench.ts';
import { length, type Vec3, ZERO } from '../maths/vec3.ts';

export interface BodyForce {
  readonly name: string;
  /** Car axes, m. */
  readonly at: Vec3;
  /** On the body: forward, left, up. */
  readonly force: Vec3;
  readonly size: number;
  /** Size of a couple beside it, N m. */
  readonly moment: number;
  /** The couple: about forward, left, up. */
  readonly couple: Vec3;
}

export interface BodyForcesReached {
  readonly reached: true;
  readonly doing: Doing;
  readonly forces: readonly BodyForce[];
  /** Of all of them, about the point that the question names. */
  readonly resultant: { readonly force: Vec3; readonly moment: Vec3 };
  /** How far the list is from closing, force or moment, as a share of the largest force. */
  readonly residual: number;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type BodyForcesAnswer =
  | BodyForcesReached
  | { readonly reached: false; readonly doing: Doing; readonly message: string };

export type NamedForce = AppliedForce & { readonly name: string };

/** Why a car without a body tells no forces. */
export const noBody = ({ body }: CarForm): string | undefined =>
  body === undefined
    ? 'The file has no body: without the height of the centre of gravity the loads are not known.'
    : undefined;

/** What the suspension of these wheels puts on the body that it stands on, each named by its side. */
export const suspensionOn = (standing: CarStanding, wheels: readonly WheelName[]): readonly NamedForce[] =>
  wheels.flatMap((wheel) =>
    cornerLoads(standing, wheel).onTub.map((each) => ({ ...each, name: `${each.name}, ${sideOf(wheel)}` })),
  );

export const bodyForce = ({ name, at, force, moment = ZERO }: NamedForce): BodyForce => ({
  name,
  at,
  force,
  size: length(force),
  moment: length(moment),
  couple: moment,
});

export const greatest = (forces: readonly AppliedForce[]): number =>
  Math.max(...forces.map(({ force }) => length(force)));

/** The larger of what is left of force and of moment, as a share of the largest force. */
export const leftOver = ({ force, moment }: Resultant, largest: number): number =>
  Math.max(length(force), length(moment)) / largest;
