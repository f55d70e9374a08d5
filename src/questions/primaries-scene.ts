/** What stands round a bank's primaries, for the eye: ports, keep-outs, the cover as triangles. Car axes, metres. */
import { scale, type Vec3 } from '../maths/vec3.ts';
import type { ProblemPut } from './primaries-problem.ts';

export interface PrimariesScene {
  readonly ports: readonly { readonly cylinder: number; readonly at: Vec3; readonly way: Vec3 }[];
  /** Of the tube at the flange. */
  readonly od: number;
  /** Length and radius of the collector's body. */
  readonly collector: { readonly length: number; readonly radius: number };
  readonly solids: readonly (
    | { readonly kind: 'box'; readonly name: string; readonly min: Vec3; readonly max: Vec3 }
    | {
        readonly kind: 'rod';
        readonly name: string;
        readonly from: Vec3;
        readonly to: Vec3;
        readonly radius: number;
      }
  )[];
  /** Corners of the scans, three numbers each, and three corners a triangle. */
  readonly shell: { readonly corners: Float32Array; readonly triangles: Uint32Array };
}

const M = 1e-3;

export function primariesScene({
  problem,
  cylinders,
}: Extract<ProblemPut, { reached: true }>): PrimariesScene {
  const { tube, collector, collectorBody, shell } = problem;
  return {
    ports: problem.ports.map(({ p, d }, k) => ({ cylinder: cylinders[k]!, at: scale(p, M), way: d })),
    od: tube.od * M,
    collector: {
      length: collectorBody.length * M,
      radius: (collector.ringRadius + (tube.steps?.at(-1)?.od ?? tube.od) / 2) * M,
    },
    solids: problem.solids.map((solid) => {
      const name = solid.name ?? solid.kind;
      if (solid.kind === 'box') {
        const { center: c, half: h } = solid;
        return {
          kind: 'box',
          name,
          min: scale([c[0] - h[0], c[1] - h[1], c[2] - h[2]], M),
          max: scale([c[0] + h[0], c[1] + h[1], c[2] + h[2]], M),
        };
      }
      return { kind: 'rod', name, from: scale(solid.a, M), to: scale(solid.b, M), radius: solid.r * M };
    }),
    shell: { corners: Float32Array.from(shell.vertices, (value) => value * M), triangles: shell.triangles },
  };
}
