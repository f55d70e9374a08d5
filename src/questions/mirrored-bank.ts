/**
 * The one bank found, the other its mirror image: laid on the other bank's ports as a whole, and then checked there.
 *
 * Left and right are two cars: where the image does not suit its own side that is told, and nothing is bent to suit.
 */
import type { BankName } from '../car/check-exhaust.ts';
import { type Misfit, mirrorImages, misfit } from '../gaspath/parts/mirror.ts';
import type { RouteProblem, RouteSolution } from '../gaspath/route/problem.ts';
import type { Metre, Radian } from '../units/quantity.ts';
import type { PartPut } from './parts-put.ts';
import { type PartSet, partSets } from './primaries-parts.ts';

export interface PortMisfit {
  readonly cylinder: number;
  /** Middle of the image's flange from the measured port. */
  readonly off: Metre;
  readonly leans: Radian;
}

export type MirroredBank =
  | {
      readonly reached: true;
      /** Of both banks, in the order of the parts. */
      readonly sets: readonly PartSet[];
      readonly misfits: readonly PortMisfit[];
      /** What is in the way of the image; none where it suits its side. */
      readonly inTheWay: readonly string[];
    }
  | { readonly reached: false; readonly message: string };

const MM = 1000;
/** What flange and gasket take up between a pipe and its port (common practice, no source): mm, degrees. */
export const PORT_FIT = { off: 1, leans: 1 } as const;

/**
 * @param parts      of both banks
 * @param found      a set of each part of the one bank, in the order of its parts
 * @param from       that bank
 */
export function mirroredBank(
  parts: readonly PartPut[],
  found: readonly RouteSolution[],
  from: BankName,
): MirroredBank {
  const [own, others] = [
    parts.filter(({ part }) => part.side === from),
    parts.filter(({ part }) => part.side !== from),
  ];
  const alike =
    own.length === others.length &&
    own.every(
      ({ part, put }, k) =>
        part.stage === others[k]!.part.stage && put.cylinders.length === others[k]!.put.cylinders.length,
    );
  const images = alike
    ? mirrorImages(
        own.map(({ part, put }, k) => ({
          solution: found[k]!,
          inlets: put.problem.collector,
          ...(part.from === undefined ? { ports: others[k]!.put.problem.ports } : {}),
        })),
      )
    : undefined;
  if (images === undefined) {
    return {
      reached: false,
      message: 'The two banks have not the same parts: the one cannot be the mirror image of the other.',
    };
  }
  const image = new Map(others.map((each, k) => [each, images[k]!]));
  const laid = parts.map((each) => {
    const is = image.get(each);
    return is === undefined ? each : onImage(each, is.solution);
  });
  const solutions = parts.map((each) => image.get(each)?.solution ?? found[own.indexOf(each)]!);
  const sets = partSets(laid, solutions);
  const misfits = others.flatMap((each, k) => images[k]!.misfits.map((of) => ({ of, put: each.put })));
  return {
    reached: true,
    sets,
    misfits: misfits.map(({ of, put }) => ({
      cylinder: put.cylinders[of.port]!,
      off: of.off / MM,
      leans: (of.leans * Math.PI) / 180,
    })),
    inTheWay: [
      ...misfits.flatMap(({ of, put }) => misfitWords(of, put.cylinders)),
      ...sets.flatMap(({ part, set }) => (part.side === from ? [] : set.breaches)),
    ],
  };
}

/** The part as it is made: its pipes begin where the image has them, not where the ports were measured. */
export const onImage = (of: PartPut, image: RouteSolution): PartPut => {
  const problem: RouteProblem = {
    ...of.put.problem,
    ports: of.put.problem.ports.map((port, k) => image.pipes.find((each) => each.port === k)?.start ?? port),
  };
  return { ...of, put: { ...of.put, problem }, gas: { ...of.gas, problem } };
};

function misfitWords({ port, off, leans }: Misfit, cylinders: readonly number[]): readonly string[] {
  if (off <= PORT_FIT.off && leans <= PORT_FIT.leans) return [];
  return [
    `Cylinder ${cylinders[port]}: the image stands ${off.toFixed(1)} mm and ${leans.toFixed(1)}° off its port; a flange takes up ${PORT_FIT.off} mm and ${PORT_FIT.leans}°.`,
  ];
}

/** How each pipe of an image stands to the port that was measured, and in words where a flange does not take that up. */
export function portMisfits(
  { put: { problem, cylinders } }: PartPut,
  { pipes }: RouteSolution,
): readonly string[] {
  return pipes.flatMap(({ port, start }) => {
    const to = problem.ports[port];
    return to === undefined ? [] : misfitWords(misfit(port, start, to), cylinders);
  });
}
