/**
 * The corners of the demo cars at several travels under several loads, solved: what the finite-element checks compare.
 */
import { axleState } from '../../src/loadpath/axle-of-car.ts';
import type { RodCarrier } from '../../src/loadpath/corner/geometry.ts';
import type { CornerState } from '../../src/loadpath/corner/state.ts';
import { type MemberForces, memberForces } from '../../src/loadpath/loads/members.ts';
import type { AppliedForce } from '../../src/loadpath/loads/wrench.ts';
import { Numbers } from '../../src/loadpath/numbers.ts';
import type { Vec3 } from '../../src/maths/vec3.ts';
import { DEMO_CARS, demo, WHEELS } from '../cars/demo.ts';

/** Travel and rack, m. */
const PLACES = [
  [-0.012, 0],
  [0, 0],
  [0.02, 0.004],
] as const;

/** At the contact, at the wheel centre, and a shaft's moment: a kerb in a corner, braking, drive. N, N m. */
export const LOADS: readonly (readonly [Vec3, Vec3, Vec3])[] = [
  [
    [-1800, -2600, 5200],
    [40, 30, -310],
    [0, 0, 0],
  ],
  [
    [-4100, 350, 3600],
    [0, 0, -180],
    [0, 0, 0],
  ],
  [
    [2600, 900, 3100],
    [-25, 0, -180],
    [12, -760, -31],
  ],
];

export interface Corner {
  readonly what: string;
  readonly state: CornerState;
  readonly rodOn: RodCarrier;
  readonly loads: readonly (readonly AppliedForce[])[];
  readonly found: readonly MemberForces[];
}

export const corners: readonly Corner[] = DEMO_CARS.flatMap((name) => {
  const car = demo(name);
  const numbers = new Numbers(car.values);
  return WHEELS.flatMap(({ end, side }) =>
    PLACES.map(([travel, rack]): Corner => {
      const axle = car.form[end];
      const at = { left: travel, right: travel, rack: end === 'front' ? rack : 0 };
      const { state } = axleState(axle, at, numbers)[side];
      const { rod } = axle[side];
      const loads = LOADS.map(([contact, centre, moment]): readonly AppliedForce[] => [
        { at: state.points.contact, force: contact },
        { at: state.points.wheelCentre, force: centre, moment },
      ]);
      const found = loads.map((each) => memberForces(state, rod.on, each));
      return { what: `${name} ${end} ${side} at ${travel}`, state, rodOn: rod.on, loads, found };
    }),
  );
});

/** Which wishbone carries the rod. */
export const carrierOf = (rodOn: RodCarrier): 'upper' | 'lower' | undefined =>
  rodOn === 'upright' ? undefined : rodOn === 'upper wishbone' ? 'upper' : 'lower';
