/** How much room a point of a centre line has to what stands still, and whether a pipe can get away from an end. */
import { along, cross, turned, unit, type Vec3 } from '../../maths/vec3.ts';
import { SHELL_EXEMPT } from './problem.ts';
import type { Site } from './site.ts';
import { toSolid } from './solids.ts';
import { leastMoreAt } from './steps.ts';

export interface Lack {
  /** Needed less had: above nothing where room is lacking, mm. */
  readonly lack: number;
  readonly needs: number;
  readonly has: number;
  readonly what: string;
}

export const PLENTY: Lack = { lack: -Infinity, needs: 0, has: 0, what: '' };

/** By how much a centre-line point lacks room; `arc` is its length from the flange. */
export function roomAt(site: Site, x: number, y: number, z: number, arc: number): Lack {
  const { problem, field, solids } = site;
  const more = leastMoreAt(site.steps, arc);
  const needShell = site.needShell + more;
  const needSolid = site.needSolid + more;
  let worst: Lack = PLENTY;
  const put = (needs: number, has: number, what: string): void => {
    if (needs - has > worst.lack) worst = { lack: needs - has, needs, has, what };
  };
  const { min, max } = problem.bounds;
  put(0, Math.min(x - min[0], max[0] - x, y - min[1], max[1] - y, z - min[2], max[2] - z), 'the bounds');
  if (arc > SHELL_EXEMPT) {
    const d = field.tree.nearest(x, y, z, needShell + 1);
    if (d < needShell) put(needShell, d, 'the shell');
  }
  for (const solid of solids) {
    const exempt = solid.flangeExempt || solid.leaves >= 0;
    if (exempt && arc <= problem.clearance.flangeZone) continue;
    put(needSolid, toSolid(solid, x, y, z), solid.name);
  }
  return worst;
}

/** One step of the walk, mm, and how far a pipe must get to have got away. */
const STEP = 12;
const AWAY = 144;
const WAYS = 16;
/** Steps are coarse: so much lack is overlooked, mm. */
const OVERLOOKED = 2;

/**
 * Walks away from an end by short straights and arcs of the smallest radius to any side, and says what is in the
 * way where no walk gets through. Places are looked at once for each voxel and direction.
 */
export function blocked(
  site: Site,
  from: Vec3,
  way: Vec3,
  arcAt: (gone: number) => number,
): Lack | undefined {
  const radius = site.radii[0]!;
  const seen = new Set<string>();
  let nearest: Lack = PLENTY;
  let farthest = -1;
  const todo: { readonly p: Vec3; readonly d: Vec3; readonly gone: number }[] = [
    { p: from, d: way, gone: 0 },
  ];
  for (let looks = 0; todo.length > 0 && looks < 40_000; looks++) {
    const { p, d, gone } = todo.pop()!;
    if (gone >= AWAY) return undefined;
    const side = unit(cross(d, Math.abs(d[0]) < 0.7 ? [1, 0, 0] : [0, 1, 0]));
    for (let k = WAYS; k >= 0; k--) {
      // the straight on is pushed last, so that it is tried first
      let q = along(p, d, STEP);
      let e = d;
      let middle = along(p, d, STEP / 2);
      if (k > 0) {
        const normal = turned(side, d, (2 * Math.PI * k) / WAYS);
        const inward = cross(normal, d);
        const at = (s: number): Vec3 =>
          along(along(p, d, radius * Math.sin(s / radius)), inward, radius * (1 - Math.cos(s / radius)));
        q = at(STEP);
        middle = at(STEP / 2);
        e = unit(turned(d, normal, STEP / radius));
      }
      const key = [...q.map((v) => Math.round(v / 6)), ...e.map((v) => Math.round(v * 6)), gone].join();
      if (seen.has(key)) continue;
      seen.add(key);
      const half = roomAt(site, middle[0], middle[1], middle[2], arcAt(gone + STEP / 2));
      const whole = roomAt(site, q[0], q[1], q[2], arcAt(gone + STEP));
      const worse = half.lack > whole.lack ? half : whole;
      if (worse.lack > OVERLOOKED) {
        if (gone > farthest || (gone === farthest && worse.lack < nearest.lack)) {
          farthest = gone;
          nearest = worse;
        }
        continue;
      }
      todo.push({ p: q, d: e, gone: gone + STEP });
    }
  }
  return todo.length > 0 ? undefined : nearest;
}
