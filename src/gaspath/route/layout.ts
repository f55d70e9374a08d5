/** What a search has laid, as plain numbers: to be kept, compared, put down in a file and taken up again. */
import type { Rig } from './rig.ts';

export interface LaidPipe {
  readonly inlet: number;
  readonly corners: number;
  readonly radius: readonly number[];
  readonly x: readonly number[];
  /** The straight on which each step of the tube stands; left out where there are none. */
  readonly stepOn?: readonly number[];
}

export interface Layout {
  readonly origin: readonly number[];
  readonly axis: readonly number[];
  readonly ref: readonly number[];
  readonly pipes: readonly LaidPipe[];
}

export const layoutOf = (rig: Rig): Layout => ({
  origin: [...rig.origin],
  axis: [...rig.axis],
  ref: [...rig.ref],
  pipes: rig.pipes.map((_, i) => laidPipe(rig, i)),
});

export function laidPipe(rig: Rig, i: number): LaidPipe {
  const pipe = rig.pipes[i]!;
  const { steps } = rig.site;
  return {
    inlet: rig.inlets[i]!,
    corners: pipe.corners,
    radius: [...pipe.radius.subarray(1, pipe.corners + 1)],
    x: pipe.corners === 0 ? [] : [...pipe.x.subarray(0, pipe.numbers)],
    ...(steps.length === 0 ? {} : { stepOn: [...pipe.stepOn.subarray(0, steps.length)] }),
  };
}

export function putPipe(rig: Rig, i: number, laid: LaidPipe): void {
  const pipe = rig.pipes[i]!;
  rig.inlets[i] = laid.inlet;
  pipe.corners = laid.corners;
  pipe.radius.set(laid.radius, 1);
  pipe.x.set(laid.x);
  if (laid.stepOn !== undefined) pipe.stepOn.set(laid.stepOn);
}

export function putLayout(rig: Rig, layout: Layout): void {
  rig.setPose(layout.origin, layout.axis, layout.ref);
  layout.pipes.forEach((laid, i) => {
    putPipe(rig, i, laid);
  });
  rig.seat();
}
