/**
 * What was made of a set of primaries against its drawing.
 *
 * In    the set, a length or the corners of each pipe as measured
 * Out   each pipe longer or shorter by how much, within what the set is equal, and what that is at the crank
 */
import {
  type AsBuilt,
  asBuilt,
  type CordSide,
  cornerFaults,
  crankAngleOf,
  type EqualWithin,
  equalWithin,
  lengthByCord,
  lengthByCorners,
  type Measured,
} from '../gaspath/pipework/index.ts';
import type { Vec3 } from '../maths/vec3.ts';
import type { Metre, MetrePerSecond, Radian } from '../units/quantity.ts';
import type { PrimariesSet } from './primaries-set.ts';

/** `middle`: a length that lies on the middle line already. */
export type MadeBy = CordSide | 'middle';

export type MadePipe =
  | { readonly pipe: string; readonly length: Metre; readonly u: Metre; readonly by: MadeBy }
  | {
      readonly pipe: string;
      /** Flange, corner of each bend, mouth. */
      readonly points: readonly Vec3[];
      readonly u: Metre;
    };

export interface CrankAsked {
  /** Of sound in the hot gas. */
  readonly sound: MetrePerSecond;
  /** Engine, rad/s. */
  readonly speed: number;
}

export type PrimariesMade =
  | {
      readonly reached: true;
      readonly pipes: readonly AsBuilt[];
      readonly equal: EqualWithin;
      /** By which the wave in the longest comes later than in the shortest. */
      readonly crank?: Radian;
      readonly notes: readonly string[];
    }
  | { readonly reached: false; readonly faults: readonly string[] };

export function primariesMade(
  set: PrimariesSet,
  made: readonly MadePipe[],
  crank: CrankAsked | undefined,
): PrimariesMade {
  const faults: string[] = [];
  const found: AsBuilt[] = [];
  for (const each of made) {
    const of = set.pipes.find(({ pipe }) => pipe.name === each.pipe)?.pipe;
    if (of === undefined) {
      faults.push(
        `The set has no pipe ${each.pipe}; it has ${set.pipes.map(({ pipe }) => pipe.name).join(', ')}.`,
      );
      continue;
    }
    if (found.some(({ pipe }) => pipe === each.pipe)) {
      faults.push(`Pipe ${each.pipe} is there twice.`);
      continue;
    }
    let length: Measured;
    if ('length' in each) {
      const measured = { length: each.length, u: each.u };
      length = each.by === 'middle' ? measured : lengthByCord(measured, each.by, of);
    } else {
      const radii = of.elements.flatMap((element) => (element.kind === 'bend' ? [element.radius] : []));
      const corners = { points: each.points, radii, u: { point: each.u, radius: 0 } };
      const wrong =
        each.points.length === radii.length + 2
          ? cornerFaults(corners)
          : [
              `${each.points.length} points, where its ${radii.length} bends and two ends are ${radii.length + 2}`,
            ];
      if (wrong.length > 0) {
        faults.push(...wrong.map((says) => `Pipe ${each.pipe}: ${says}.`));
        continue;
      }
      length = lengthByCorners(corners);
    }
    found.push(asBuilt(of, length));
  }
  if (found.length === 0 && faults.length === 0) faults.push('Nothing was measured.');
  if (faults.length > 0) return { reached: false, faults };
  const equal = equalWithin(found);
  const missing = set.pipes.filter(({ pipe }) => !found.some((each) => each.pipe === pipe.name));
  return {
    reached: true,
    pipes: found,
    equal,
    ...(crank === undefined ? {} : { crank: crankAngleOf(equal.within.length, crank) }),
    notes: [
      ...(missing.length === 0
        ? []
        : [`Not measured: pipe ${missing.map(({ pipe }) => pipe.name).join(', ')}.`]),
      ...(equal.notTold
        ? [
            'The readings cannot tell this set from one of equal pipes: its range is below two of its spreads.',
          ]
        : []),
    ],
  };
}
