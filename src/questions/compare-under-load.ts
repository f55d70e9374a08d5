/** Two specs of one car while it does the same: what its corners carry, and how a bolted joint stands it. */
import type { Car, CarSource } from '../car/read.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { type Comparison, compared, type Placed } from './compare.ts';
import type { Wheel } from './figure.ts';
import { type JointName, type JointReached, jointOf } from './joint.ts';
import { loadsOf } from './loads.ts';

export interface UnderLoadComparison extends Comparison {
  /** What is said of either, with the spec's name before it where the other does not say the same. */
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

/** How a joint stands the load in one of the specs, in words. */
export type JointInSpec = Pick<JointReached, 'worst' | 'left' | 'breaksFirst'> & { readonly spec: string };

interface Said {
  readonly spec: string;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

interface Asked {
  readonly source: CarSource;
  readonly specs: readonly [string, string];
  readonly doing: Doing;
}

interface Options {
  readonly spread?: boolean;
}

/** What tyres, members, rockers and springs carry in both, at the wheels asked for. */
export function compareLoads(
  { source, specs, doing }: Asked,
  wheels: readonly Wheel[],
  options: Options = {},
): UnderLoadComparison {
  const said: Said[] = [];
  const comparison = compared(source, specs, (car) => {
    const is = loadsOf(car, doing, { ...options, wheels });
    if (!is.reached) return is.message;
    said.push(saidOf(car, is));
    return is.wheels.flatMap(({ wheel, figures }) =>
      figures.map((figure): Placed => {
        const of = `${wheel.end} ${wheel.side}`;
        return wheels.length > 1 ? { of, figure } : { figure };
      }),
    );
  });
  return { ...comparison, ...together(said) };
}

/** One bolted joint in both; a stud that only one of them has stands alone. */
export function compareJoints(
  { source, specs, doing }: Asked,
  joint: JointName,
  options: Options = {},
): UnderLoadComparison & { readonly joints: readonly JointInSpec[] } {
  const said: Said[] = [];
  const joints: JointInSpec[] = [];
  const comparison = compared(source, specs, (car) => {
    const is = jointOf(car, joint, doing, options);
    if (!is.reached) return is.message;
    // what is left and what breaks first is told by itself, spec by spec
    const apart = new Set([is.left, ...is.breaksFirst]);
    said.push(saidOf(car, { ...is, notes: is.notes.filter((note) => !apart.has(note)) }));
    joints.push({ spec: car.spec, worst: is.worst, left: is.left, breaksFirst: is.breaksFirst });
    return is.figures.map((figure) => ({ figure }));
  });
  return { ...comparison, ...together(said), joints };
}

const saidOf = ({ spec }: Car, { notes, cautions }: Omit<Said, 'spec'>): Said => ({ spec, notes, cautions });

/** What both say is said once. */
function together(said: readonly Said[]): Pick<UnderLoadComparison, 'notes' | 'cautions'> {
  const everyone = (note: string): boolean =>
    said.length > 1 && said.every(({ notes }) => notes.includes(note));
  const notes = said.flatMap(({ spec, notes: own }) =>
    own.map((note) => (everyone(note) ? note : `${spec}: ${note}`)),
  );
  return { notes: [...new Set(notes)], cautions: [...new Set(said.flatMap(({ cautions }) => cautions))] };
}
