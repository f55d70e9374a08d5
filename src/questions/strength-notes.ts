/** What the shares of strength come to, in words: what is nearest to its limit, what is past it, what is left out. */
import type { Car } from '../car/read.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { plain } from '../units/show.ts';
import type { Figure, Wheel } from './figure.ts';

interface Placed {
  readonly wheel: Wheel;
  readonly figures: readonly Figure[];
}

/** Ids of the shares, by how they begin or end, and of what they are shares. */
const SHARES: readonly (readonly [of: RegExp, limit: string])[] = [
  [/^bucklingShare\./, 'the push at which it buckles'],
  [/^yieldShare\./, 'its yield'],
  [/^endShare\./, 'the yield at the root of its thread'],
  [/^stripShare\./, 'what strips its thread'],
  [/^spherical\..*\.share$/, 'its static rating'],
  [/^(wheel|rocker)Bearing\..*\.share$/, 'its static rating'],
];

const limitOf = ({ id }: Figure): string | undefined => SHARES.find(([of]) => of.test(id))?.[1];

const named = ({ end, side }: Wheel, { means }: Figure): string => `${end} ${side} ${means.split(':')[0]}`;

/** `0.62 ± 0.05`: the share itself, to the first digit of its spread. */
export function shareWords({ value, spread }: Figure): string {
  const u = spread?.u ?? 0;
  const digits = u > 0 ? Math.min(4, Math.max(2, -Math.floor(Math.log10(u)))) : 2;
  const band = u > 0 ? ` ± ${plain(u, digits)}` : '';
  return `${plain(value, digits)}${band}`;
}

const list = (names: readonly string[]): string => names.join(', ');

/** Kinds of part, each with the one that is nearest to its limit. */
const KINDS: readonly (readonly [kind: string, of: RegExp])[] = [
  ['links', /^(bucklingShare|yieldShare|endShare|stripShare)\./],
  ['spherical bearings', /^spherical\./],
  ['wheel bearings', /^wheelBearing\./],
  ["rocker's bearings", /^rockerBearing\./],
];

export function strengthNotes(wheels: readonly Placed[]): string[] {
  const shares = wheels.flatMap(({ wheel, figures }) =>
    figures.flatMap((figure) => {
      const limit = limitOf(figure);
      return limit === undefined ? [] : [{ wheel, figure, limit }];
    }),
  );
  const past = (of: RegExp): string[] =>
    shares
      .filter(({ figure }) => of.test(figure.id) && figure.value > 1)
      .map(({ wheel, figure }) => named(wheel, figure));
  const over: readonly (readonly [string, readonly string[]])[] = [
    ['More push than they bear before they buckle', past(/^bucklingShare\./)],
    ['Past their yield', past(/^yieldShare\./)],
    ['Past the yield at the root of their thread', past(/^endShare\./)],
    ['More than strips their thread', past(/^stripShare\./)],
    ['Past their static rating', past(/^(spherical|wheelBearing|rockerBearing)\./)],
  ];
  return [
    ...over.filter(([, names]) => names.length > 0).map(([what, names]) => `${what}: ${list(names)}.`),
    ...KINDS.flatMap(([kind, of]) => {
      const own = shares.filter(({ figure }) => of.test(figure.id) && Number.isFinite(figure.value));
      if (own.length === 0) return [];
      const worst = own.reduce((a, b) => (b.figure.value > a.figure.value ? b : a));
      // nothing carries anything: nothing is near a limit
      if (worst.figure.value <= 0) return [];
      const { wheel, figure, limit } = worst;
      return [
        `Of the ${kind} the nearest to its limit: ${named(wheel, figure)} is at ${shareWords(figure)} of ${limit}.`,
      ];
    }),
  ];
}

/** What a share leaves out for want of a reading. */
export function leftOutNotes(car: Car, doing: Doing, wheels: readonly Placed[]): string[] {
  const corners = wheels.map(({ wheel }) => ({ wheel, corner: car.form[wheel.end][wheel.side] }));
  const braking =
    doing.longitudinal < 0 || Object.values(doing.contacts).some((each) => (each?.forward ?? 0) < 0);
  const noCaliper = corners.filter(
    ({ wheel, corner }) =>
      corner.wheelBearings !== undefined &&
      corner.wheelBearings.caliper === undefined &&
      car.form.brakes?.[wheel.end] !== 'inboard',
  );
  const noAxis = corners.some(({ corner }) =>
    Object.entries(corner.sphericals ?? {}).some(
      ([name, each]) => /^(upper|lower)/.test(name) && each !== undefined && !('axis' in each && each.axis),
    ),
  );
  const noAxial = corners.some(({ corner }) =>
    Object.values(corner.sphericals ?? {}).some(
      (each) => each !== undefined && 'axis' in each && each.axis && each.axialRating === undefined,
    ),
  );
  const ends = corners.some(({ corner }) =>
    Object.values(corner.members ?? {}).some((each) => each?.end !== undefined),
  );
  const told: readonly (readonly [boolean, string])[] = [
    [
      braking && noCaliper.length > 0,
      `Where the calliper stands is not in the file, so its force is not in the wheel bearings: ${list(noCaliper.map(({ wheel }) => `${wheel.end} ${wheel.side}`))}.`,
    ],
    [noAxis, 'Where the file gives no axis of a housing, the whole force counts as square to it.'],
    [noAxial, 'Where the file gives no axial rating, the force along the axis of a housing is in no share.'],
    [ends, 'Jam nuts are taken as tight, and screwed ends as not bent.'],
  ];
  return told.filter(([holds]) => holds).map(([, words]) => words);
}
