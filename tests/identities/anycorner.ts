/**
 * An invented front corner of plausible size, and a generator of corners around it.
 * Track 1490 mm, wishbones 400 to 455 mm, pushrod near 40°, rocker arms near 75 mm, loaded radius 310 mm.
 */
import fc from 'fast-check';
import { type CornerGeometry, type RodCarrier, wheelAxisFrom } from '../../src/loadpath/corner/geometry.ts';
import { add, mirrored, unit, type Vec3 } from '../../src/maths/vec3.ts';
import { real } from '../draw.ts';

const degree = Math.PI / 180;

export const frontLeft: CornerGeometry = {
  side: 'left',
  upperFront: [0.16, 0.27, 0.382],
  upperRear: [-0.2, 0.272, 0.374],
  upperOuter: [-0.016, 0.665, 0.395],
  lowerFront: [0.2, 0.235, 0.176],
  lowerRear: [-0.22, 0.238, 0.172],
  lowerOuter: [0.006, 0.69, 0.162],
  toeInner: [0.09, 0.248, 0.214],
  toeOuter: [0.1, 0.672, 0.207],
  rackDirection: [0, 1, 0],
  rodOuter: [0.005, 0.64, 0.19],
  rodInner: [0.002, 0.27, 0.53],
  rodOn: 'lower wishbone',
  rockerPivot: [0, 0.215, 0.478],
  rockerAxis: unit([0.98, 0.08, -0.05]),
  wheelCentre: [0, 0.7315, 0.3097],
  wheelAxis: wheelAxisFrom({ side: 'left', camber: -2.5 * degree, toe: -0.15 * degree }),
  loadedRadius: 0.31,
  rockerPoints: {
    unit: [0.004, 0.165, 0.535],
    dropLink: [0.03, 0.19, 0.54],
    heave: [0.002, 0.17, 0.52],
  },
  elements: { unit: { rockerPoint: 'unit', tub: [0.01, 0.03, 0.35] } },
};

/** The same corner on the other side of the car. */
export function mirroredCorner(g: CornerGeometry): CornerGeometry {
  const m = mirrored;
  const all = <T, U>(record: Readonly<Record<string, T>>, f: (t: T) => U): Record<string, U> =>
    Object.fromEntries(Object.entries(record).map(([name, t]) => [name, f(t)]));
  return {
    ...g,
    side: g.side === 'left' ? 'right' : 'left',
    upperFront: m(g.upperFront),
    upperRear: m(g.upperRear),
    upperOuter: m(g.upperOuter),
    lowerFront: m(g.lowerFront),
    lowerRear: m(g.lowerRear),
    lowerOuter: m(g.lowerOuter),
    toeInner: m(g.toeInner),
    toeOuter: m(g.toeOuter),
    ...(g.rackDirection === undefined ? {} : { rackDirection: m(g.rackDirection) }),
    rodOuter: m(g.rodOuter),
    rodInner: m(g.rodInner),
    rockerPivot: m(g.rockerPivot),
    rockerAxis: m(g.rockerAxis),
    wheelCentre: m(g.wheelCentre),
    wheelAxis: m(g.wheelAxis),
    rockerPoints: all(g.rockerPoints, m),
    elements: all(g.elements, (e) => ({ ...e, tub: m(e.tub) })),
  };
}

const off = (mm: number): fc.Arbitrary<Vec3> => {
  const one = real(-mm / 1000, mm / 1000);
  return fc.tuple(one, one, one);
};

/** The rod's outer end on another carrier: near that body's outer joint, where the rod still has leverage. */
function withRodOn(g: CornerGeometry, rodOn: RodCarrier): CornerGeometry {
  if (rodOn === 'lower wishbone') return { ...g, rodOn };
  if (rodOn === 'upright') return { ...g, rodOn, rodOuter: add(g.lowerOuter, [0.01, -0.03, 0.04]) };
  // A pullrod: from the upper wishbone down to a rocker low on the tub.
  const shift: Vec3 = [0, -0.02, -0.33];
  return {
    ...g,
    rodOn,
    rodOuter: add(g.upperOuter, [0, -0.03, -0.01]),
    rodInner: add(g.rodInner, shift),
    rockerPivot: add(g.rodInner, add(shift, [0, 0.045, -0.05])),
    rockerPoints: Object.fromEntries(Object.entries(g.rockerPoints).map(([n, p]) => [n, add(p, shift)])),
    elements: Object.fromEntries(
      Object.entries(g.elements).map(([n, e]) => [n, { ...e, tub: add(e.tub, [0, -0.02, -0.25]) }]),
    ),
  };
}

export const anyCorner: fc.Arbitrary<CornerGeometry> = fc
  .record({
    moves: fc.array(off(12), { minLength: 14, maxLength: 14 }),
    tilt: off(200),
    camber: real(-4, 0),
    toe: real(-0.5, 0.5),
    rodOn: fc.constantFrom<RodCarrier>('lower wishbone', 'upper wishbone', 'upright'),
    right: fc.boolean(),
  })
  .map(({ moves, tilt, camber, toe, rodOn, right }) => {
    const g = withRodOn(frontLeft, rodOn);
    const by = (p: Vec3, i: number): Vec3 => add(p, moves[i] ?? [0, 0, 0]);
    const left: CornerGeometry = {
      ...g,
      upperFront: by(g.upperFront, 0),
      upperRear: by(g.upperRear, 1),
      upperOuter: by(g.upperOuter, 2),
      lowerFront: by(g.lowerFront, 3),
      lowerRear: by(g.lowerRear, 4),
      lowerOuter: by(g.lowerOuter, 5),
      toeInner: by(g.toeInner, 6),
      toeOuter: by(g.toeOuter, 7),
      rodOuter: by(g.rodOuter, 8),
      rodInner: by(g.rodInner, 9),
      rockerPivot: by(g.rockerPivot, 10),
      rockerAxis: unit(add(g.rockerAxis, tilt)),
      wheelCentre: by(g.wheelCentre, 11),
      wheelAxis: wheelAxisFrom({ side: 'left', camber: camber * degree, toe: toe * degree }),
      rockerPoints: { ...g.rockerPoints, unit: by(g.rockerPoints.unit ?? [0, 0, 0], 12) },
    };
    return right ? mirroredCorner(left) : left;
  });
