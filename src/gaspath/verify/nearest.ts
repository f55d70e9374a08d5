/** The least gap of each pipe to each thing about it, told like a breach of more than was asked. */
import type { Vec3 } from '../../maths/vec3.ts';
import type { RouteProblem } from '../route/problem.ts';
import { gapBreaches, type Laid } from './gaps.ts';

export interface NearPlace {
  readonly pipe: number;
  /** Port of the other pipe, where it is one. */
  readonly other?: number;
  /** What it is, as the checker names it. */
  readonly against: string;
  readonly kind: 'shell' | 'solid' | 'collector body' | 'pipe to pipe';
  /** Metal to metal, mm. */
  readonly gap: number;
  /** What the problem asks of it, mm. */
  readonly asked: number;
  /** Both within the collector's zone, where the ring has them near. */
  readonly inZone: boolean;
  /** On the centre line, mm. */
  readonly at: Vec3;
}

/** How much farther than asked is looked, mm. */
export const LOOK = 30;

export function nearPlaces(
  problem: RouteProblem,
  pose: { readonly origin: Vec3; readonly axis: Vec3 },
  pipes: readonly Laid[],
  look = LOOK,
): readonly NearPlace[] {
  const { clearance } = problem;
  const wide: RouteProblem = {
    ...problem,
    solids: problem.solids.map((each) => (each.gap === undefined ? each : { ...each, gap: each.gap + look })),
    clearance: {
      ...clearance,
      shell: clearance.shell + look,
      solid: clearance.solid + look,
      pipe: clearance.pipe + look,
      pipeInZone: clearance.pipeInZone + look,
    },
  };
  const asked = { shell: clearance.shell, 'collector body': clearance.solid };
  return gapBreaches(wide, pose, pipes).flatMap(
    ({ code, pipe, other, needs, has, at, says, metal = 0, inZone = false }): NearPlace[] => {
      if (pipe === undefined || needs === undefined || has === undefined || at === undefined) return [];
      const against = /Too near (.*), \d+ mm/.exec(says)?.[1] ?? code;
      const gap = has - metal;
      if (code === 'shell' || code === 'solid' || code === 'collector body') {
        // a solid may ask another gap than all
        const of = code === 'solid' ? needs - look - metal : asked[code];
        return [{ pipe, against, kind: code, gap, asked: of, inZone: false, at }];
      }
      if (code !== 'pipe to pipe' || other === undefined) return [];
      return [{ pipe, other, against, kind: code, gap, asked: needs - look - metal, inZone, at }];
    },
  );
}
