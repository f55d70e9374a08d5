/**
 * Where a pipe has least to spare beyond what is asked of its surroundings: for the eye while it is moved.
 *
 * Samples of the pipe against the triangles of the shell, solids in closed form, and chords of the other pipes, all as
 * the search takes them; between samples up to spacing^2 / 8 times the curvature may be overlooked. What comes to rest
 * is checked by other means.
 */
import type { Vec3 } from '../../maths/vec3.ts';
import { near, nearestChord } from './chords.ts';
import { SHELL_EXEMPT } from './problem.ts';
import type { Rig } from './rig.ts';
import { BLOCK, type Breach } from './rows.ts';
import { toCylinderOn, toSolid } from './solids.ts';

export interface Spare {
  /** Had less needed, mm; below nothing where it is breached. */
  readonly spare: number;
  /** Metal to metal, mm; of bounds, from the middle line. */
  readonly gap: number;
  readonly what: Extract<Breach, 'shell' | 'solid' | 'bounds' | 'collector body' | 'pipe to pipe' | 'self'>;
  /** The other pipe, by its port; or the solid. */
  readonly other: number;
  /** On the middle line of the pipe, mm. */
  readonly at: Vec3;
}

/** In the zone before the mouth pipes stand as the ring has them: only what is breached by more is told, mm. */
const RING = 0.005;

/** The least spare of pipe i below `look`, mm; all shapes laid and sampled. */
export function leastSpare(rig: Rig, i: number, look: number): Spare | undefined {
  const { site } = rig;
  const { problem, field, solids } = site;
  const { clearance, bounds, tube } = problem;
  const pipe = rig.pipes[i]!;
  const { at, arc, count, more } = pipe;
  let best: Spare | undefined;
  let least = look;
  let place: Vec3 = [0, 0, 0];
  const put = (what: Spare['what'], spare: number, gap: number, other = -1): void => {
    least = spare;
    best = { spare, gap, what, other, at: place };
  };
  for (let m = 0; m < count; m++) {
    const [x, y, z] = [at[3 * m]!, at[3 * m + 1]!, at[3 * m + 2]!];
    place = [x, y, z];
    const radius = tube.od / 2 + more[m]!;
    const needShell = site.needShell + more[m]!;
    const needSolid = site.needSolid + more[m]!;
    for (let c = 0; c < 3; c++) {
      const inside = Math.min(at[3 * m + c]! - bounds.min[c]!, bounds.max[c]! - at[3 * m + c]!);
      // only what is breached: the bounds are no metal
      if (inside < Math.min(0, least)) put('bounds', inside, inside);
    }
    if (arc[m]! > SHELL_EXEMPT) {
      const d = field.exact(x, y, z, needShell + least);
      if (d - needShell < least) put('shell', d - needShell, d - radius);
    }
    solids.forEach((solid, s) => {
      const far = solid.ball[3]! + needSolid + least;
      const [dx, dy, dz] = [x - solid.ball[0]!, y - solid.ball[1]!, z - solid.ball[2]!];
      if (far < 0 || dx * dx + dy * dy + dz * dz > far * far) return;
      if ((solid.flangeExempt || solid.leaves === i) && arc[m]! < clearance.flangeZone) return;
      const d = toSolid(solid, x, y, z);
      if (d - needSolid < least) put('solid', d - needSolid, d + solid.nearer - radius, s);
    });
    if (pipe.length - arc[m]! >= site.zone) {
      const [o, a] = [rig.origin, rig.axis];
      const long = problem.collectorBody.length;
      const d = toCylinderOn(x - o[0]!, y - o[1]!, z - o[2]!, a, long, site.bodyRadius, needSolid + look);
      if (d - needSolid < least) put('collector body', d - needSolid, d - radius);
    }
  }
  for (let j = 0; j < rig.pipes.length; j++) {
    if (j === i || rig.inlets[j]! < 0) continue;
    const other = rig.pipes[j]!;
    const most = site.needPipe + 2 * site.mostMore;
    for (let m = 0; m < count; m++) {
      const ends = pipe.length - arc[m]! <= site.zone;
      for (let k0 = 0, b = 0; k0 < other.count - 1; k0 += BLOCK, b++) {
        if (rig.blockGap(j, b, at[3 * m]!, at[3 * m + 1]!, at[3 * m + 2]!) >= most + least) continue;
        const k1 = Math.min(other.count - 1, k0 + BLOCK);
        const k = nearestChord(other.at, k0, k1, at[3 * m]!, at[3 * m + 1]!, at[3 * m + 2]!);
        const along = other.arc[k]! + near.share * (other.arc[k + 1]! - other.arc[k]!);
        const inZone = ends && other.length - along <= site.zone;
        const both = more[m]! + other.more[near.share < 0.5 ? k : k + 1]!;
        const spare = near.gap - both - (inZone ? site.needInZone : site.needPipe);
        if (spare >= Math.min(least, inZone ? -RING : least)) continue;
        place = [at[3 * m]!, at[3 * m + 1]!, at[3 * m + 2]!];
        put('pipe to pipe', spare, near.gap - tube.od - both, j);
      }
    }
  }
  const apart = site.selfApart;
  for (let m = 0; m < count; m++)
    for (let k = m + 1; k < count; k++) {
      if (arc[k]! - arc[m]! <= apart) continue;
      const [dx, dy, dz] = [
        at[3 * k]! - at[3 * m]!,
        at[3 * k + 1]! - at[3 * m + 1]!,
        at[3 * k + 2]! - at[3 * m + 2]!,
      ];
      const d = Math.hypot(dx, dy, dz);
      const both = more[m]! + more[k]!;
      const over = d - site.needSelf - both - Math.min(0, least);
      if (over < 0) {
        place = [at[3 * m]!, at[3 * m + 1]!, at[3 * m + 2]!];
        put('self', d - site.needSelf - both, d - tube.od - both);
        continue;
      }
      // a distance changes no faster than one goes: nothing before so much farther along is near enough
      const next = arc[k]! + over - site.mostMore;
      while (k + 1 < count && arc[k + 1]! < next) k++;
    }
  return best;
}
