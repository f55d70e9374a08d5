/** A bolted joint under every default case and every case of the car's own: in which one each stud keeps least and carries most. */
import type { Car } from '../car/read.ts';
import { doingsOf, type NamedDoing } from './doing-words.ts';
import { type JointName, type JointReached, jointOf } from './joint.ts';

export interface StudInCase {
  readonly stud: string;
  /** Left on its pad at the low end of the preload, and what pressed it before the load, N. */
  readonly left: number;
  readonly pressed: number;
  /** Tension at the middle of the preload, N. */
  readonly tension: number;
}

export interface JointInCase {
  readonly doing: NamedDoing;
  readonly studs: readonly StudInCase[];
  /** Name of the stud whose pad keeps least. */
  readonly worst: string;
  /** Part of the face that is open at the low end of the preload. */
  readonly opened: number;
  readonly slip: number;
  /** Of the most loaded dowel if friction held nothing, N; nothing without dowels. */
  readonly dowel?: number;
}

export interface JointCases {
  readonly cases: readonly JointInCase[];
  /** Cases that have no answer, with the reason. */
  readonly without: readonly { readonly doing: NamedDoing; readonly message: string }[];
  /** The case in which a pad keeps least of what pressed it; nothing where no case has an answer. */
  readonly hardest?: JointInCase;
}

export function jointCases(
  car: Car,
  joint: JointName,
  doings: readonly NamedDoing[] = doingsOf(car),
): JointCases {
  const answers = doings.map((doing) => ({ doing, is: jointOf(car, joint, doing.doing, { spread: false }) }));
  const cases = answers.flatMap(({ doing, is }) => (is.reached ? [inCase(doing, is)] : []));
  const hardest = cases.reduce<JointInCase | undefined>(
    (found, each) => (found === undefined || leastShare(each) < leastShare(found) ? each : found),
    undefined,
  );
  return {
    cases,
    without: answers.flatMap(({ doing, is }) => (is.reached ? [] : [{ doing, message: is.message }])),
    ...(hardest === undefined ? {} : { hardest }),
  };
}

export const shareLeft = ({ left, pressed }: StudInCase): number => (pressed === 0 ? 0 : left / pressed);

const leastShare = ({ studs }: JointInCase): number => Math.min(...studs.map(shareLeft));

function inCase(doing: NamedDoing, of: JointReached): JointInCase {
  const value = (id: string): number => of.figures.find((each) => each.id === id)!.value;
  const dowels = of.figures.filter(({ id }) => id.startsWith('dowel.')).map((each) => each.value);
  return {
    doing,
    studs: of.face.studs.map(({ name, left, pressed, tension }) => ({ stud: name, left, pressed, tension })),
    worst: of.worst,
    opened: value('openedLow'),
    slip: value('slipMargin'),
    ...(dowels.length === 0 ? {} : { dowel: Math.max(...dowels) }),
  };
}
