/** Figures of the links: where the wheel swings about, how far the joints have turned, what thread is left. */

import { formula, type Working } from '../../working/working.ts';
import type { Attitude } from '../corner/attitude.ts';
import type { JointName, jointSwings } from '../corner/joints.ts';
import type { CornerState } from '../corner/solve.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import type { SprungCorner } from '../sprung-corner.ts';
import { type FigureNote, notesOf, type Put } from './note.ts';

const note = notesOf('links');

const frontSlope = note({
  id: 'frontSlope',
  means: 'outboard movement of the contact point per bump travel',
  symbol: 'y_z',
  unit: '1',
  anchor: 'contact',
  rank: 1,
  say: 'positive: the track grows in bump',
  method: 'first derivative of the lowest point of the wheel in the closed linkage',
  source: 'LP-13',
});
const centreAcross = note({
  id: 'instantCentreAcross',
  means: 'instant centre of the upright in front view, from the centre plane towards this wheel',
  symbol: 'y_ic',
  unit: 'm',
  rank: 3,
  method: 'velocity and rotation of the upright, front view',
  source: 'LP-19',
});
const centreHeight = note({
  id: 'instantCentreHeight',
  means: 'instant centre of the upright in front view, height above the ground',
  symbol: 'z_ic',
  unit: 'm',
  rank: 2,
  method: 'velocity and rotation of the upright, front view',
  source: 'LP-19',
});
const sideSlope = note({
  id: 'sideSlope',
  means: 'rearward movement of the contact point per bump travel, hub locked',
  symbol: 'x_z',
  unit: '1',
  anchor: 'contact',
  rank: 2,
  method: 'velocity of the contact point in the closed linkage',
  source: 'LP-20',
});

const JOINTS: readonly { readonly name: JointName; readonly means: string; readonly mark: string }[] = [
  { name: 'upperOuter', means: 'upper outer ball joint', mark: 'uo' },
  { name: 'lowerOuter', means: 'lower outer ball joint', mark: 'lo' },
  { name: 'toeInner', means: 'inner joint of track rod or toe link', mark: 'ti' },
  { name: 'toeOuter', means: 'outer joint of track rod or toe link', mark: 'to' },
  { name: 'rodOuter', means: 'outer joint of the rod', mark: 'ro' },
  { name: 'rodInner', means: 'rocker joint of the rod', mark: 'ri' },
];

interface JointNotes {
  readonly turned: FigureNote;
  readonly left: FigureNote;
  readonly leftOf: ReturnType<typeof leftFormula>;
}

const leftFormula = (mark: string) =>
  formula({
    symbol: `β_l_${mark}`,
    means: 'angle left in the bearing',
    is: `β_m - β_0 - β_${mark}`,
    unit: 'rad',
    terms: {
      β_m: { unit: 'rad', means: 'angle that the bearing allows to each side' },
      β_0: { unit: 'rad', means: 'angle already turned as surveyed' },
      [`β_${mark}`]: { unit: 'rad', means: 'angle turned since the survey, taken as all to one side' },
    },
    source: 'LP-21',
    holds: 'as a lower bound: the turn may also go the other way than what was there',
  });

const JOINT_NOTES: ReadonlyMap<JointName, JointNotes> = new Map(
  JOINTS.map(({ name, means, mark }) => [
    name,
    {
      turned: note({
        id: `jointAngle.${name}`,
        means: `${means}: turned from the surveyed position`,
        symbol: `β_${mark}`,
        unit: 'rad',
        anchor: name,
        rank: 3,
        method: 'rotation of the two bodies against one another in the closed linkage',
        source: 'LP-21',
      }),
      left: note({
        id: `jointLeft.${name}`,
        means: `${means}: angle left in the bearing`,
        symbol: `β_l_${mark}`,
        unit: 'rad',
        anchor: name,
        rank: 2,
      }),
      leftOf: leftFormula(mark),
    },
  ]),
);

const threadLeft = (mark: string) =>
  formula({
    symbol: `s_${mark}`,
    means: 'thread that may still be screwed out',
    is: 'l_e - l_m',
    unit: 'm',
    terms: {
      l_e: { unit: 'm', means: 'thread engaged in the tube' },
      l_m: { unit: 'm', means: 'least thread that must stay engaged' },
    },
    source: 'LP-46',
  });

const turnsLeft = (mark: string) =>
  formula({
    symbol: `N_${mark}`,
    means: 'turns out before the least engagement',
    is: `s_${mark}/P`,
    unit: '1',
    terms: {
      [`s_${mark}`]: { unit: 'm', means: 'thread that may still be screwed out' },
      P: { unit: 'm', means: 'thread pitch' },
    },
    source: 'LP-46',
  });

const THREADS = (['rod', 'toeLink'] as const).map((name) => {
  const mark = name === 'rod' ? 'rod' : 'toe';
  const what = name === 'rod' ? 'rod' : 'track rod or toe link';
  const anchor = name === 'rod' ? 'rodOuter' : 'toeOuter';
  return {
    name,
    mark,
    left: note({
      id: `threadLeft.${name}`,
      means: `${what}: thread that may still be screwed out`,
      symbol: `s_${mark}`,
      unit: 'm',
      anchor,
      rank: 2,
    }),
    turns: note({
      id: `turnsLeft.${name}`,
      means: `${what}: turns out before the least engagement`,
      symbol: `N_${mark}`,
      unit: '1',
      anchor,
      rank: 2,
    }),
    visible: note({
      id: `threadVisible.${name}`,
      means: `${what}: visible thread, that may still be screwed in`,
      symbol: `v_${mark}`,
      unit: 'm',
      anchor,
      rank: 3,
      method: 'as read',
      source: 'LP-46',
    }),
    leftOf: threadLeft(mark),
    turnsOf: turnsLeft(mark),
  };
});

/** The linkage at the position asked for. */
export interface SolvedLinkage {
  readonly state: CornerState;
  readonly attitude: Attitude;
  readonly swings: ReturnType<typeof jointSwings>;
}

export function linkFigures(
  of: SprungCorner,
  numbers: Numbers,
  { state, attitude, swings }: SolvedLinkage,
  put: Put,
  working?: Working,
): void {
  put(frontSlope, attitude.halfTrack.perTravel);
  put(centreAcross, attitude.frontView.at?.across ?? Number.NaN);
  put(
    centreHeight,
    attitude.frontView.at === undefined ? Number.NaN : attitude.frontView.at.height - state.points.contact[2],
  );
  put(sideSlope, attitude.sideView.slope);
  for (const { name, mark } of JOINTS) {
    const notes = JOINT_NOTES.get(name)!;
    const { swing } = swings[name];
    put(notes.turned, swing);
    const bearing = of.form.joints?.[name];
    if (bearing === undefined) continue;
    const β_0 = numbers.or(bearing.asSurveyed, 0);
    put(
      notes.left,
      notes.leftOf({ β_m: numbers.of(bearing.limit), β_0, [`β_${mark}`]: swing }, working, {
        β_m: fromReading(bearing.limit),
        β_0:
          bearing.asSurveyed === undefined
            ? { kind: 'constant', what: 'taken as square as surveyed' }
            : fromReading(bearing.asSurveyed),
      }),
    );
  }
  for (const { name, mark, left, turns, visible, leftOf, turnsOf } of THREADS) {
    const thread = name === 'rod' ? of.form.rod.thread : of.form.toeLink?.thread;
    if (thread === undefined) continue;
    const s = leftOf({ l_e: numbers.of(thread.engaged), l_m: numbers.of(thread.least) }, working, {
      l_e: fromReading(thread.engaged),
      l_m: fromReading(thread.least),
    });
    put(left, s);
    put(
      turns,
      turnsOf({ [`s_${mark}`]: s, P: numbers.of(thread.pitch) }, working, { P: fromReading(thread.pitch) }),
    );
    put(visible, numbers.of(thread.visible));
  }
}
