/**
 * A scan laid into the car by datum points: places that can be found both on the scan and on the car.
 *
 * In    the surface as written, its unit, and at least three datum points, each as it stands in the scan and in the car
 * Out   the surface in metres in car axes, and how well the datum points meet; or why they do not
 * Axes  of the car, ISO 8855
 */
import { fitRigid, type MatchedPoint, moved } from '../geometry/rigid-fit.ts';
import { length, scale, type Vec3 } from '../maths/vec3.ts';
import type { Metre } from '../units/quantity.ts';
import type { Mesh } from './mesh.ts';
import { SCAN_UNITS, type ScanUnit } from './unit.ts';

export interface Datum {
  readonly name: string;
  /** In the unit of the scan. */
  readonly onScan: Vec3;
  /** In car axes, metres. */
  readonly onCar: Vec3;
}

export interface LaidIn {
  readonly ok: true;
  /** In car axes, metres. */
  readonly mesh: Mesh;
  /** What each datum point is off, in the order given. */
  readonly off: readonly { readonly name: string; readonly by: Metre }[];
  readonly rms: Metre;
}

export type LaidInResult = LaidIn | { readonly ok: false; readonly message: string; readonly remedy: string };

/** Scale between scan and car that datum points read by hand can explain. */
const SCALE_SLACK = 0.02;

export function laidIn(mesh: Mesh, unit: ScanUnit, datums: readonly Datum[]): LaidInResult {
  const size = SCAN_UNITS[unit];
  const matched: MatchedPoint[] = datums.map(({ onScan, onCar }) => ({
    from: scale(onScan, size),
    to: onCar,
  }));
  const fit = fitRigid(matched);
  if (!fit.ok) {
    return fit.why === 'too-few'
      ? no(
          `Has ${datums.length} datum points; three are needed.`,
          'Name three places that stand on scan and car.',
        )
      : no('The datum points lie on one line, so the scan can turn about it.', 'Add one well off that line.');
  }
  const { is } = fit;
  if (Math.abs(is.scale - 1) > SCALE_SLACK) {
    const other = unitBy(is.scale * size);
    return no(
      `On the car the datum points stand ${is.scale.toPrecision(3)} times as far apart as on the scan in ${unit}.`,
      other === undefined ? 'Look at the datum points once more.' : `The scan is in ${other}, it seems.`,
    );
  }
  if (is.looksMirrored) {
    return no(
      'The scan is the mirror image of the car.',
      'Scan it anew with a right-handed frame, or turn its y round.',
    );
  }
  const corners = new Float64Array(mesh.corners.length);
  for (let n = 0; n < corners.length; n += 3) {
    const at = moved(is, [mesh.corners[n]! * size, mesh.corners[n + 1]! * size, mesh.corners[n + 2]! * size]);
    corners.set(at, n);
  }
  return {
    ok: true,
    mesh: { corners, triangles: mesh.triangles },
    off: datums.map(({ name }, k) => ({ name, by: length(is.residuals[k]!) })),
    rms: is.rms,
  };
}

const no = (message: string, remedy: string) => ({ ok: false, message, remedy }) as const;

/** The unit of this size, as far as the datum points can tell. */
const unitBy = (size: Metre): ScanUnit | undefined =>
  (Object.keys(SCAN_UNITS) as ScanUnit[]).find(
    (unit) => Math.abs(SCAN_UNITS[unit] / size - 1) < 2 * SCALE_SLACK,
  );
