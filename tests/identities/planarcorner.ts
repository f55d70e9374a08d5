/**
 * A corner whose wheel moves in one cross-plane: every hinge is along x and the toe link lies beside the lower
 * wishbone, as long and as steep as it. In front view it is a four-bar linkage and nothing else.
 */
import type { CornerGeometry } from '../../src/loadpath/corner/geometry.ts';
import type { Vec3 } from '../../src/maths/vec3.ts';

export interface FrontViewPoint {
  readonly y: number;
  readonly z: number;
}

export interface PlanarLinkage {
  readonly lowerInner: FrontViewPoint;
  readonly lowerOuter: FrontViewPoint;
  readonly upperInner: FrontViewPoint;
  readonly upperOuter: FrontViewPoint;
  readonly rodInner: FrontViewPoint;
  readonly rockerPivot: FrontViewPoint;
}

export function planarCorner(p: PlanarLinkage): CornerGeometry {
  const at = (x: number, q: FrontViewPoint): Vec3 => [x, q.y, q.z];
  return {
    side: 'left',
    lowerFront: at(0.15, p.lowerInner),
    lowerRear: at(-0.15, p.lowerInner),
    lowerOuter: at(0, p.lowerOuter),
    upperFront: at(0.15, p.upperInner),
    upperRear: at(-0.15, p.upperInner),
    upperOuter: at(0, p.upperOuter),
    toeInner: at(0.1, p.lowerInner),
    toeOuter: at(0.1, p.lowerOuter),
    rodOuter: at(0, p.lowerOuter),
    rodInner: at(0, p.rodInner),
    rodOn: 'lower wishbone',
    rockerPivot: at(0, p.rockerPivot),
    rockerAxis: [1, 0, 0],
    wheelCentre: [0, p.lowerOuter.y + 0.06, 0.3],
    wheelAxis: [0, 1, 0],
    loadedRadius: 0.3,
    rockerPoints: {},
    elements: {},
  };
}
