/** Figures of a bolted joint under what the car is doing: its resultant, each stud, the face, dowels and slip. */
import type { CarForm } from '../../car/read.ts';
import { ZERO } from '../../maths/vec3.ts';
import type { Working } from '../../working/working.ts';
import { forcesBehind, type JointName } from '../joint/joint-of-car.ts';
import { type Behind, type JointUnderLoad, jointHolding, type StudUnderLoad } from '../joint/joint-under.ts';
import type { CarStanding } from '../loads/car-equilibrium.ts';
import type { Doing } from '../loads/doing.ts';
import { askedOfStanding } from '../loads/standing-slopes.ts';
import { resultantAt } from '../loads/wrench.ts';
import type { Numbers } from '../numbers.ts';
import { askedOf, standingOf } from './loads.ts';
import { type FigureNote, notesOf, type Put, recorded } from './note.ts';

const studs = notesOf('studs');

const onFace = { method: 'sum of all that acts behind the face', source: 'JT-8' } as const;
const solved = { method: 'the face solved, in contact only where it is pressed', source: 'JT-1' } as const;
const tightened = { method: 'torque and friction, settled', source: 'ST-4, ST-14' } as const;

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

const dowelNote = (name: string): FigureNote =>
  studs({
    id: `dowel.${name}`,
    means: `${name}, if friction held nothing`,
    symbol: 'F_d',
    unit: 'N',
    rank: 2,
    method: 'stiff group of equal dowels',
    source: 'JT-5',
  });

const studNote = (
  name: string,
  what: string,
  note: Omit<FigureNote, 'id' | 'stop' | 'means'> & { means: string },
) => studs({ ...note, id: `stud.${name}.${what}`, means: `${name}: ${note.means}` });

function putStud(stud: StudUnderLoad, put: Put): void {
  const { name, sort } = stud;
  const note = (what: string, rest: Parameters<typeof studNote>[2]): FigureNote => studNote(name, what, rest);
  const N = { symbol: 'F', unit: 'N' } as const;
  put(note('preloadLow', { means: 'preload, low end', ...N, rank: 3, ...tightened }), sort.preload.low);
  put(note('preload', { means: 'preload', symbol: 'F_V', unit: 'N', rank: 2 }), sort.preload.middle);
  put(
    note('preloadHigh', { means: 'preload, high end, not settled', ...N, rank: 3, ...tightened }),
    sort.preload.high,
  );
  put(note('force', { means: 'tension under the load', ...N, rank: 2, ...solved }), stud.force.middle);
  put(
    note('forceHigh', { means: 'tension under the load, high end', ...N, rank: 3, ...solved }),
    stud.force.high,
  );
  put(note('pad', { means: 'left on its pad, low end', ...N, rank: 1, ...solved }), stud.pad.low);
  put(
    note('yieldShare', {
      means: 'stress over yield while tightening, high end',
      symbol: 'σ',
      unit: 'share',
      rank: 2,
      method: 'equivalent stress of pull and thread torque',
      source: 'ST-7',
    }),
    sort.tightening / sort.material.yield,
  );
  put(
    note('loadFactor', {
      means: 'part of an outside load that the stud feels while closed',
      symbol: 'Φ',
      unit: '1',
      rank: 3,
      method: 'compliances of stud and parts',
      source: 'ST-13',
    }),
    sort.loadFactor,
  );
  put(
    note('heat', {
      means: 'change of preload when warm',
      ...N,
      rank: 3,
      method: 'growth of stud and parts',
      source: 'ST-15',
    }),
    sort.heat,
  );
}

const JOINTS: readonly JointName[] = ['caseToEngine', 'engineToTub'];

/** All that acts behind both faces about the car's origin: the car is made to stand once for the two. */
const behindBoth =
  (car: CarForm) =>
  (standing: CarStanding, numbers: Numbers): readonly number[] =>
    JOINTS.flatMap((joint) => {
      const { force, moment } = resultantAt(ZERO, forcesBehind(joint, car, standing, numbers));
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
  const of = jointHolding(car.joints![joint]!, behindJoint(car, joint, doing), numbers, working);
  const { load } = of;
  put(RESULTANT.pull, load.pull);
  put(RESULTANT.bending, load.byZ);
  put(RESULTANT.sideways, load.byY);
  put(RESULTANT.shear, Math.hypot(load.y, load.z));
  put(RESULTANT.turning, load.turning);
  put(WHOLE.opened, of.opened.low);
  put(WHOLE.slip, of.slip);
  for (const stud of of.studs) putStud(stud, put);
  for (const dowel of of.dowels) put(dowelNote(dowel.name), dowel.force);
  return of;
}
