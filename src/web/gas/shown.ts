/** What is drawn of pipes: groups of them, each with a collector of its own, and what of it is looked at. */
import type { Vec3 } from '../../maths/vec3.ts';
import type { PrimariesScene, PrimariesSet } from '../../questions/index.ts';

export interface PipeGroup extends Pick<PrimariesScene, 'ports' | 'od' | 'collector'> {
  /** No two alike. */
  readonly name: string;
  /** As it is written at a port: the cylinder, or what the shop calls a pipe that begins at none. */
  readonly label: (cylinder: number) => string;
  readonly set: PrimariesSet | undefined;
}

export interface Lit {
  readonly group: string;
  readonly cylinder?: number;
}

/** What one looks at of a group: all of it where nothing is looked at. */
export const isLit = (lit: Lit | undefined, group: string): boolean =>
  lit === undefined || lit.group === group;

/** The lines along which the pulses of a set run, in firing order. */
export const runsOf = (set: PrimariesSet | undefined): readonly (readonly Vec3[])[] =>
  (set?.order ?? []).flatMap(({ cylinder }) => {
    const pipe = set!.pipes.find((each) => each.cylinder === cylinder);
    return pipe === undefined ? [] : [pipe.line];
  });
