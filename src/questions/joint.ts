/** How a bolted joint of the load path stands what the car does: studs, face, dowels, and what would break first. */
import type { Car } from '../car/read.ts';
import { putJointFigures } from '../loadpath/figures/joint.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import { crankTorque } from '../loadpath/joint/crank.ts';
import { FaceParted } from '../loadpath/joint/face.ts';
import type { JointName } from '../loadpath/joint/joint-of-car.ts';
import type { JointUnderLoad } from '../loadpath/joint/joint-under.ts';
import { NoTorque } from '../loadpath/joint/tightened.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { STANDING } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { along, type Vec3 } from '../maths/vec3.ts';
import { show } from '../units/show.ts';
import { CRACK_TEST_CAUTION, JOINT_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { Figure } from './figure.ts';
import { firstToBreak, leastLeft, nearestToBreaking, worstOf } from './joint-breaks.ts';
import { crankNote, dryNotes, plateNotes, SCOPE_NOTE, warmNotes } from './joint-notes.ts';
import { isRefusal } from './refusal.ts';
import { figuresOf, figuresWithSpread, type Pass } from './spread-of-figures.ts';
import { type WorkingAnswer, workingOfPass } from './working.ts';

export type { JointName };
export const JOINT_NAMES: readonly JointName[] = ['caseToEngine', 'engineToTub'];
export const JOINT_WORDS: Readonly<Record<JointName, string>> = {
  caseToEngine: 'gear case to engine',
  engineToTub: 'engine to tub',
};

/** A stud on its face, seen from behind the car: y to the left, z up, metres from the studs' centre. */
export interface DrawnStud {
  readonly name: string;
  readonly y: number;
  readonly z: number;
  readonly hole: number;
  readonly pad: number;
  /** Left on its pad at the low end of the preload, and what pressed it before the load. */
  readonly left: number;
  readonly pressed: number;
  readonly tension: number;
  /** Where it passes the face, car axes, m. */
  readonly at: Vec3;
  /** Where its pad has opened, at the low end of the preload. */
  readonly open: readonly { readonly y: number; readonly z: number }[];
}

export interface DrawnFace {
  readonly studs: readonly DrawnStud[];
  readonly dowels: readonly { readonly name: string; readonly y: number; readonly z: number }[];
}

export interface JointReached {
  readonly reached: true;
  readonly joint: JointName;
  readonly doing: Doing;
  readonly figures: readonly Figure[];
  readonly face: DrawnFace;
  /** Name of the stud whose pad keeps least. */
  readonly worst: string;
  /** What is left there, in words. */
  readonly left: string;
  /** What breaks first, sort by sort, and which stud this load brings nearest to it. */
  readonly breaksFirst: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type JointAnswer =
  | JointReached
  | { readonly reached: false; readonly joint: JointName; readonly doing: Doing; readonly message: string };

export function jointOf(
  car: Car,
  joint: JointName,
  doing: Doing,
  options: { readonly spread?: boolean } = {},
): JointAnswer {
  const no = (message: string): JointAnswer => ({ reached: false, joint, doing, message });
  if (car.form.body === undefined) {
    return no('The file has no body: without the height of the centre of gravity the loads are not known.');
  }
  if (car.form.joints?.[joint] === undefined) {
    return no(
      `The file does not describe the joint ${JOINT_WORDS[joint]}: write its studs, what they clamp, torque and lubricant under joints, ${joint}.`,
    );
  }
  if (car.form.masses === undefined) {
    return no(
      'The file tells no masses of gear case and engine: without them what hangs behind the face is not known. Weigh them and write them under masses.',
    );
  }
  const pass: Pass = (numbers, put) => {
    putJointFigures(car.form, joint, doing, numbers, put);
  };
  try {
    const figures = options.spread === false ? figuresOf(car, pass) : figuresWithSpread(car, pass);
    const numbers = new Numbers(car.values);
    const under = putJointFigures(car.form, joint, doing, numbers, () => undefined);
    const still = putJointFigures(car.form, joint, STANDING, numbers, () => undefined);
    const crank = crankTorque(car.form, standingOf(car.form, doing, numbers), numbers);
    return {
      reached: true,
      joint,
      doing,
      figures,
      face: drawnFace(under),
      worst: worstOf(under).name,
      left: leastLeft(under),
      breaksFirst: [...firstToBreak(under), nearestToBreaking(under)],
      notes: notesOn(under, still, {
        joint,
        doing,
        ...(crank === undefined ? {} : { crank }),
      }),
      cautions: [JOINT_CAUTION, CRACK_TEST_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason) || reason instanceof NoTorque || reason instanceof FaceParted)
      return no(reason.message);
    throw reason;
  }
}

export interface JointWorkingAsked {
  readonly joint: JointName;
  readonly doing: Doing;
  readonly figure: string;
}

export function workingOfJoint(car: Car, { joint, doing, figure }: JointWorkingAsked): WorkingAnswer {
  const pass: Pass = (numbers, put) => {
    putJointFigures(car.form, joint, doing, numbers, put);
  };
  return workingOfPass(car, figure, pass, (put, working) => {
    putJointFigures(car.form, joint, doing, new Numbers(car.values), put, working);
  });
}

const drawnFace = ({ studs, dowels, frame }: JointUnderLoad): DrawnFace => ({
  studs: studs.map(({ name, place, size, sort, pad, force, open }) => ({
    name,
    ...place,
    ...size,
    left: pad.low,
    pressed: sort.preload.low,
    tension: force.middle,
    at: along(along(frame.origin, frame.left, place.y), frame.up, place.z),
    open,
  })),
  dowels: dowels.map(({ name, place }) => ({ name, ...place })),
});

const percent = (share: number): string => `${show(share, 'share').text} %`;
const list = (names: readonly string[]): string => names.join(', ');

/** Off the plane of the others by more than a face can be, m. */
const UNEVEN = 0.003;

function notesOn(
  of: JointUnderLoad,
  still: JointUnderLoad,
  { joint, doing, crank }: { readonly joint: JointName; readonly doing: Doing; readonly crank?: number },
): string[] {
  const notes: string[] = [];
  notes.push(leastLeft(of));
  if (of.opened.low > 0) {
    const more =
      of.opened.middle > 0 ? `and ${percent(of.opened.middle)} at the middle` : 'and nothing at the middle';
    notes.push(`Open: ${percent(of.opened.low)} of the face at the low end of the preload, ${more}.`);
  }
  if (of.slip < 1) {
    notes.push(
      of.dowels.length === 0
        ? 'Friction alone does not hold this, and the file has no dowel: the studs would be in shear, which is not their work.'
        : `Friction alone does not hold this (${of.slip.toFixed(2)} of what is needed): the dowels carry. See that both are home before a nut goes on.`,
    );
  }
  notes.push(...firstToBreak(of));
  const past = of.studs.filter(({ sort }) => sort.tightening > 0.9 * sort.material.yield);
  if (past.length > 0) {
    notes.push(
      `At the high end of the preload ${list(past.map(({ name }) => name))} is past nine tenths of yield while the wrench turns (VDI 2230 goes up to there).`,
    );
  }
  notes.push(...dryNotes(of), ...warmNotes(of), ...plateNotes(of), ...swing(of, still));
  if (of.frame.uneven > UNEVEN) {
    notes.push(
      `The studs do not lie in one plane: one is ${show(of.frame.uneven, 'm').text} mm off it. Read their points again.`,
    );
  }
  if (doing.longitudinal > 0) notes.push(crankNote(joint, crank));
  notes.push(SCOPE_NOTE);
  return notes;
}

/** Stress that swings between standing and this load, against what a rolled thread bears for ever. */
function swing(of: JointUnderLoad, still: JointUnderLoad): string[] {
  const rows = of.studs.map((stud, k) => ({
    stud,
    amplitude: Math.abs(stud.force.low - still.studs[k]!.force.low) / 2 / stud.sort.area,
  }));
  const worst = rows.reduce((a, b) =>
    b.amplitude / b.stud.sort.endurance > a.amplitude / a.stud.sort.endurance ? b : a,
  );
  if (worst.amplitude === 0) return [];
  const { stud, amplitude } = worst;
  return [
    `Between standing and this load the stress in ${stud.name} swings by ± ${(amplitude / 1e6).toFixed(1)} MPa; a rolled thread of its size bears ± ${(stud.sort.endurance / 1e6).toFixed(0)} MPa for ever (VDI 2230, from memory).`,
  ];
}
