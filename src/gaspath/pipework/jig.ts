/**
 * Points for the jig: tube ends and bend corners, measured from the plate that stands for the head face.
 *
 * In    pipes in the car's axes (or any)
 * Out   the plate's frame, and points in it
 * Axes  origin at the flange point of the first pipe; z out of the plate, as the gas leaves the first port; x along
 *       the plate towards the last port; y = z × x, so that the three are right-handed
 */
import { along, cross, dot, length, sub, unit, type Vec3 } from '../../maths/vec3.ts';
import type { Metre } from '../../units/quantity.ts';
import { cornerOf, into, placeAt, stations } from './centreline.ts';
import { elementLength, NO_LENGTH, type Pipe } from './pipe.ts';
import { stepPlaces } from './stepped.ts';

export interface JigFrame {
  readonly origin: Vec3;
  readonly x: Vec3;
  readonly y: Vec3;
  readonly z: Vec3;
  /** How the axes lie, for the head of the sheet. */
  readonly told: string;
}

export interface JigPoint {
  readonly pipe: string;
  readonly what: string;
  /** In the frame of the plate. */
  readonly at: Vec3;
  /** Of the bend that the point belongs to. */
  readonly radius?: Metre;
}

/** Below this two ports stand one behind the other as seen from the plate. */
const NO_ROW: Metre = 1e-3;

/** The frame of the plate; a single pipe takes its x from its first bend, or square to z as it falls. */
export function jigFrame(pipes: readonly Pipe[]): JigFrame {
  const first = pipes[0];
  if (first === undefined) throw new Error('a jig without pipes');
  const z = first.start.d;
  const origin = first.start.p;
  const flat = (v: Vec3): Vec3 => along(v, z, -dot(v, z));
  const row = flat(sub(pipes.at(-1)!.start.p, origin));
  const byRow = length(row) > NO_ROW;
  const x = byRow ? unit(row) : unit(flat(otherThan(z)));
  const told =
    `Origin: flange point of pipe ${first.name}. z: out of the plate, as the gas leaves that port. ` +
    (byRow
      ? `x: along the plate towards pipe ${pipes.at(-1)!.name}. y: from x a quarter turn anticlockwise, seen from the tubes.`
      : 'x: square to z, as marked. y: from x a quarter turn anticlockwise, seen from the tubes.');
  return { origin, x, y: cross(z, x), z, told };
}

/** The axis that is furthest from `z`. */
function otherThan(z: Vec3): Vec3 {
  const sizes = z.map(Math.abs);
  const least = sizes.indexOf(Math.min(...sizes));
  return [least === 0 ? 1 : 0, least === 1 ? 1 : 0, least === 2 ? 1 : 0];
}

/** A point of the pipes' axes in those of the plate. */
export function inJig(frame: JigFrame, p: Vec3): Vec3 {
  const v = sub(p, frame.origin);
  return [dot(v, frame.x), dot(v, frame.y), dot(v, frame.z)];
}

/**
 * Flange, begin, corner and end of each bend, and mouth, of every pipe.
 *
 * A bend of more than 150° has its middle in place of a corner, which would lie far outside.
 */
export function jigPoints(pipes: readonly Pipe[], frame: JigFrame = jigFrame(pipes)): readonly JigPoint[] {
  return pipes.flatMap((pipe) => {
    const begins = stations(pipe);
    /** With where along the pipe it is. */
    const put = (s: Metre, what: string, p: Vec3, radius?: Metre) => ({
      s,
      point: {
        pipe: pipe.name,
        what,
        at: inJig(frame, p),
        ...(radius === undefined ? {} : { radius }),
      } satisfies JigPoint,
    });
    let bend = 0;
    const ofBends = pipe.elements.flatMap((element, k) => {
      if (element.kind === 'straight' || elementLength(element) < NO_LENGTH) return [];
      bend += 1;
      const from = begins[k]!;
      const half = from.s + elementLength(element) / 2;
      const corner = cornerOf(element, from);
      const r = element.radius;
      return [
        put(from.s, `bend ${bend} begins`, from.p, r),
        corner === undefined
          ? put(half, `bend ${bend} middle`, into(element, from, elementLength(element) / 2).p, r)
          : put(half, `bend ${bend} corner`, corner, r),
        put(begins[k + 1]!.s, `bend ${bend} ends`, begins[k + 1]!.p, r),
      ];
    });
    const ofSteps = stepPlaces(pipe).map(({ s, behind }) =>
      put(s, `${(1e3 * behind.od).toFixed(1)} mm tube begins`, placeAt(pipe, s).p),
    );
    const mouth = begins.at(-1)!;
    return [
      put(0, 'flange', pipe.start.p),
      ...[...ofBends, ...ofSteps].sort((a, b) => a.s - b.s),
      put(mouth.s, 'mouth', mouth.p),
    ].map(({ point }) => point);
  });
}
