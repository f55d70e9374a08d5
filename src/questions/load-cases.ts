/** Every default case and every case of the car's own at every wheel, and of each member the largest pull and the largest push, with their cases. */
import type { Car } from '../car/read.ts';
import { MEMBERS, type MemberName } from '../loadpath/loads/members.ts';
import type { BodyForcesReached } from './body-forces.ts';
import { caseForces } from './case-forces.ts';
import { doingsOf, type NamedDoing } from './doing-words.ts';
import type { Figure, Wheel } from './figure.ts';
import { type LoadsReached, loadsOf } from './loads.ts';

export { MEMBERS, type MemberName };

export const MEMBER_WORDS: Readonly<Record<MemberName, string>> = {
  upperFront: 'upper wishbone, front leg',
  upperRear: 'upper wishbone, rear leg',
  lowerFront: 'lower wishbone, front leg',
  lowerRear: 'lower wishbone, rear leg',
  toeLink: 'track rod or toe link',
  rod: 'pushrod or pullrod',
};

export interface LoadsInCase {
  readonly doing: NamedDoing;
  readonly loads: LoadsReached;
  /** Forces on the gear case; nothing where they have no answer. */
  readonly gearCase?: BodyForcesReached;
}

export interface LoadCases {
  readonly cases: readonly LoadsInCase[];
  /** Cases that have no answer, with the reason. */
  readonly without: readonly { readonly doing: NamedDoing; readonly message: string }[];
}

/** @param options.spread each figure with its spread: some seconds for nine cases */
export function loadCases(
  car: Car,
  options: { readonly spread?: boolean; readonly doings?: readonly NamedDoing[] } = {},
): LoadCases {
  const doings = options.doings ?? doingsOf(car);
  const answers = doings.map((doing) => ({
    doing,
    is: loadsOf(car, doing.doing, { spread: options.spread === true }),
  }));
  return {
    cases: answers.flatMap(({ doing, is }) => {
      if (!is.reached) return [];
      const gearCase = caseForces(car, doing.doing);
      return [{ doing, loads: is, ...(gearCase.reached ? { gearCase } : {}) }];
    }),
    without: answers.flatMap(({ doing, is }) => (is.reached ? [] : [{ doing, message: is.message }])),
  };
}

export const figuresAt = (of: LoadsReached, { end, side }: Wheel): readonly Figure[] =>
  of.wheels.find(({ wheel }) => wheel.end === end && wheel.side === side)?.figures ?? [];

export const figureNamed = (figures: readonly Figure[], id: string): Figure | undefined =>
  figures.find((each) => each.id === id);

export interface InCase {
  readonly figure: Figure;
  readonly doing: NamedDoing;
}

export interface LargestOfMember {
  readonly member: MemberName;
  /** Nothing where it is never pulled, or never pushed. */
  readonly pull?: InCase;
  readonly push?: InCase;
  /** The case that takes most of its yield, and most of the push at which it buckles; nothing without its section. */
  readonly yields?: InCase;
  readonly buckles?: InCase;
}

/** Of each member of one corner: its largest pull and push over the cases. */
export function largestOf({ cases }: LoadCases, wheel: Wheel): LargestOfMember[] {
  return MEMBERS.map((member) => {
    const over = (id: string): InCase[] =>
      cases.flatMap(({ doing, loads }) => {
        const figure = figureNamed(figuresAt(loads, wheel), `${id}.${member}`);
        return figure === undefined ? [] : [{ figure, doing }];
      });
    const most = (of: readonly InCase[]): InCase | undefined =>
      of.reduce<InCase | undefined>(
        (found, each) => (found === undefined || each.figure.value > found.figure.value ? each : found),
        undefined,
      );
    const forces = over('tension');
    const pull = most(forces.filter(({ figure }) => figure.value > 0));
    const least = most(
      forces
        .filter(({ figure }) => figure.value < 0)
        .map(({ figure, doing }) => ({ doing, figure: { ...figure, value: -figure.value } })),
    );
    const push =
      least === undefined ? undefined : { ...least, figure: { ...least.figure, value: -least.figure.value } };
    const [yields, buckles] = [most(over('yieldShare')), most(over('bucklingShare'))];
    return {
      member,
      ...(pull === undefined ? {} : { pull }),
      ...(push === undefined ? {} : { push }),
      ...(yields === undefined ? {} : { yields }),
      ...(buckles === undefined ? {} : { buckles }),
    };
  });
}
