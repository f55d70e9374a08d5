/** Figures of a bolted joint under what the car is doing: its resultant, the face, dowels and slip, and its parts. */
import type { CarForm } from '../../car/read.ts';
import { ZERO } from '../../maths/vec3.ts';
import type { Working } from '../../working/working.ts';
import { crankBehind } from '../joint/crank.ts';
import { forcesBehind, type JointName } from '../joint/joint-of-car.ts';
import { type Behind, type JointUnderLoad, jointHolding } from '../joint/joint-under.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import type { Doing } from '../loads/doing.ts';
import { askedOfStanding } from '../loads/standing-slopes.ts';
import { resultantAt } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import { putPlate, putStud } from './joint-parts.ts';
import { askedOf, standingOf } from './loads.ts';
import { notesOf, type Put, recorded } from './note.ts';

const studs = notesOf('studs');

const onFace = { method: 'sum of all that acts behind the face', source: 'JT-8' } as const;
const solved = { method: 'the face solved, in contact only where it is pressed', source: 'JT-1' } as const;

const RESULTANT = {
  pull: studs({
    id: 'pull',
    means: 'pull that would part the face',
    symbol: 'N',
    unit: 'N',
    rank: 1,
    ...onFace,
  }),
  bending: studs({
    id: 'bending',
    means: 'bending in the side view',
    symbol: 'M_y',
    unit: 'N m',
    rank: 1,
    say: 'opens the lower side where it is negative',
    ...onFace,
  }),
  sideways: studs({
    id: 'sideways',
    means: 'bending in the plan view',
    symbol: 'M_z',
    unit: 'N m',
    rank: 2,
    say: 'opens the left side where it is positive',
    ...onFace,
  }),
  shear: studs({ id: 'shear', means: 'force along the face', symbol: 'V', unit: 'N', rank: 1, ...onFace }),
  turning: studs({
    id: 'turning',
    means: 'torsion about the axis of the car',
    symbol: 'M_x',
    unit: 'N m',
    rank: 1,
    ...onFace,
  }),
} as const;

const WHOLE = {
  opened: studs({
    id: 'openedLow',
    means: 'part of the face that is open, at the low end of the preload',
    symbol: 'o',
    unit: 'share',
    rank: 1,
    lead: true,
    ...solved,
  }),
  openedHot: studs({
    id: 'openedHotLow',
    means: 'part of the face that is open when warm, at the low end of the preload',
    symbol: 'o_h',
    unit: 'share',
    rank: 2,
    ...solved,
  }),
  slip: studs({
    id: 'slipMargin',
    means: 'friction over what it would have to hold without dowels, low end of the preload',
    symbol: 'S_G',
    unit: '1',
    rank: 1,
    say: 'below 1 the dowels carry',
    method: 'stiff group, weighed by what presses each pad',
    source: 'JT-6',
  }),
} as const;

const dowelNote = (name: string) =>
  studs({
    id: `dowel.${name}`,
    means: `${name}, if friction held nothing`,
    symbol: 'F_d',
    unit: 'N',
    rank: 2,
    method: 'stiff group of equal dowels',
    source: 'JT-5',
  });

const JOINTS: readonly JointName[] = ['caseToEngine', 'engineToTub'];

/** All that acts behind both faces about the car's origin: the car is made to stand once for the two. */
const behindBoth =
  (car: CarForm) =>
  (standing: CarStanding, numbers: Numbers): readonly number[] =>
    JOINTS.flatMap((joint) => {
      const { force, moment } = resultantAt(ZERO, [
        ...forcesBehind(joint, car, standing, numbers),
        ...crankBehind(joint, car, standing, numbers),
      ]);
      return [...force, ...moment];
    });

/** What acts behind one face; with a reading moved, by slopes about the place of the car.  [LL-40] */
function behindJoint(car: CarForm, joint: JointName, doing: Doing): Behind {
  const name = `behind the faces, car doing ${JSON.stringify(doing)}`;
  const row = behindBoth(car);
  return {
    name,
    of: (numbers) => {
      const both = askedOfStanding(name, car, doing, numbers, {
        asFiled: () => row(standingOf(car, doing, numbers), numbers),
        of: row,
      });
      const [x, y, z, mx, my, mz] = both.slice(6 * JOINTS.indexOf(joint));
      return { force: [x!, y!, z!], moment: [mx!, my!, mz!] };
    },
  };
}

/** @throws NotSettled, Unreachable, DegenerateCorner, BarOpen, NoTorque, FaceParted */
export function putJointFigures(
  car: CarForm,
  joint: JointName,
  doing: Doing,
  numbers: Numbers,
  into: Put,
  working?: Working,
): JointUnderLoad {
  const put = working === undefined ? into : recorded(into, working, askedOf(doing));
  const form = car.joints![joint]!;
  const of = jointHolding(form, behindJoint(car, joint, doing), numbers, working);
  const { load } = of;
  put(RESULTANT.pull, load.pull);
  put(RESULTANT.bending, load.byZ);
  put(RESULTANT.sideways, load.byY);
  put(RESULTANT.shear, Math.hypot(load.y, load.z));
  put(RESULTANT.turning, load.turning);
  put(WHOLE.opened, of.opened.low);
  if (form.warm !== undefined) put(WHOLE.openedHot, of.openedHot.low);
  put(WHOLE.slip, of.slip);
  for (const stud of of.studs) putStud(stud, form.warm !== undefined, put);
  for (const plate of of.plates) putPlate(plate, put);
  for (const dowel of of.dowels) put(dowelNote(dowel.name), dowel.force);
  return of;
}
