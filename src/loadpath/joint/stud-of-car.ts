/**
 * A sort of stud of the car file, worked: how it gives, what the wrench leaves in it, what it bears.
 *
 * In    the sort as filed, the numbers
 * Out   compliances, preload as a band, change with settling and heat, limits
 *
 * The band: low is the low end of torque with the high end of friction, settled; high is the high end of torque with
 * the low end of friction, not yet settled; the middle has the middle of both, settled. Ends of a reading are two
 * standard uncertainties out. ST-n are the equations of docs/theory/studs.md.
 */
import type { CarForm } from '../../car/read.ts';
import {
  clampedMaterial,
  type FastenerMaterial,
  fastenerMaterial,
} from '../../materials/fastener-material.ts';
import { type FrictionBand, lubricant } from '../../materials/lubricant.ts';
import { type Thread, threadNamed } from '../../materials/thread.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Newton, NewtonMetre, NewtonPerMetre, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { noteSolved } from '../figures/note.ts';
import { fromReading, fromReadingOr, type Numbers } from '../numbers.ts';
import { heatChange, settling, settlingOf } from '../stud/change.ts';
import { preloadByTorque, stressArea, tighteningStress, torqueThroughCrowfoot } from '../stud/preload.ts';
import { clampedCompliance, loadFactor, studCompliance } from '../stud/stiffness.ts';
import {
  type BreakingLoads,
  breakingLoads,
  enduranceRolledFirst,
  enduranceRolledLast,
} from '../stud/strength.ts';

export type JointForm = NonNullable<NonNullable<CarForm['joints']>['engineToTub']>;
export type SortForm = JointForm['sorts'][string];

export interface Band {
  readonly low: Newton;
  readonly middle: Newton;
  readonly high: Newton;
}

export interface WorkedSort {
  readonly thread: Thread;
  readonly material: FastenerMaterial;
  readonly area: number;
  readonly stud: number;
  readonly parts: number;
  /** Stiffness that the face sees: stud with what lies above the place where the load enters. */
  readonly stiffness: NewtonPerMetre;
  /** Stiffness of the pad below that place. */
  readonly padStiffness: NewtonPerMetre;
  readonly loadFactor: Ratio;
  readonly preload: Band;
  /** Change when warm; nothing where the file tells no warmth. */
  readonly heat: Newton;
  /** Equivalent stress at the high end while the wrench turns. */
  readonly tightening: Pascal;
  readonly breaking: BreakingLoads;
  /** Stress amplitude that the thread bears for ever, at the middle preload. */
  readonly endurance: Pascal;
}

const NO_RUNNING = { kind: 'constant', what: 'no running torque given' } as const;
const NO_CROWFOOT = { kind: 'constant', what: 'no crowfoot' } as const;

const afterSettling = formula({
  symbol: 'F_V',
  means: 'preload, settled',
  is: 'max(0*F_M, F_M + F_Z)',
  unit: 'N',
  terms: {
    F_M: { unit: 'N', means: 'preload from torque' },
    F_Z: { unit: 'N', means: 'change of preload as the faces settle' },
  },
  source: 'ST-14',
});

/** There is no preload without a lubricant: told by the question before this is asked. */
export class NoTorque extends Error {
  constructor(sort: string) {
    super(
      `Sort "${sort}" has no torque with its lubricant in the file: without the lubricant a torque says nothing of the preload.`,
    );
    this.name = 'NoTorque';
  }
}

interface Ends {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** Standard uncertainties that the ends of a band lie from its middle. */
const ENDS = 2;

/** The ends of a reading: its number as used, and its filed spread either way. */
const endsOf = (reading: Reading, numbers: Numbers): Ends => {
  const middle = numbers.of(reading);
  return { low: middle - ENDS * reading.u, middle, high: middle + ENDS * reading.u };
};

const frictionOf = (measured: Reading | undefined, table: FrictionBand, numbers: Numbers): Ends =>
  measured === undefined ? table : endsOf(measured, numbers);

/** @throws NoTorque; names of thread, materials and lubricant were checked when the file was read */
export function workedSort(
  name: string,
  sort: SortForm,
  of: { readonly warm: Reading | undefined },
  numbers: Numbers,
  working?: Working,
): WorkedSort {
  const paste = sort.lubricant === undefined ? undefined : lubricant(sort.lubricant);
  if (sort.torque === undefined || paste === undefined) throw new NoTorque(name);
  const thread = threadNamed(sort.thread)!;
  const material = fastenerMaterial(sort.material)!;
  const area = stressArea(thread);
  const layers = sort.layers.map((layer) => ({
    thickness: numbers.of(layer.thickness),
    of: clampedMaterial(layer.material)!,
  }));
  const grip = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const hole = numbers.of(sort.hole);
  const nutFace = numbers.of(sort.nutFace);
  const shank = Math.min(grip, numbers.or(sort.shankLength, 0));
  const shankArea =
    sort.shankDiameter === undefined ? area : (Math.PI / 4) * numbers.of(sort.shankDiameter) ** 2;
  const rootArea = (Math.PI / 4) * thread.root ** 2;
  // half a diameter of thread gives in the nut and as much in the parent  (VDI 2230, from memory)
  const stud = studCompliance(
    [
      { length: shank, area: shankArea },
      { length: grip - shank, area: rootArea },
      { length: thread.major, area: rootArea },
    ],
    material.youngsModulus,
  );
  const parts = clampedCompliance({
    layers: layers.map(({ thickness, of }) => ({ thickness, youngsModulus: of.youngsModulus })),
    faces: [nutFace, nutFace],
    hole,
    edge: Math.max(nutFace, numbers.of(sort.pad)),
    tapped: true,
  });
  const entry = numbers.of(sort.entry);
  noteSolved(working, 'pieces of the stud, one behind the other', 'ST-11', () => [
    { symbol: 'δ_S', means: 'compliance of the stud', value: stud, unit: 'm/N' },
  ]);
  noteSolved(working, 'cone of pressure through the layers', 'ST-12', () => [
    { symbol: 'δ_P', means: 'compliance of the clamped parts', value: parts, unit: 'm/N' },
  ]);

  const set = endsOf(sort.torque, numbers);
  const running = numbers.or(sort.running, 0);
  const wrench = sort.wrench === undefined ? undefined : numbers.of(sort.wrench);
  const atNut = (torque: NewtonMetre, record?: Working): NewtonMetre =>
    wrench === undefined
      ? torque
      : torqueThroughCrowfoot({ set: torque, wrench, crowfoot: numbers.or(sort.crowfoot, 0) }, record, {
          M_w: fromReading(sort.torque!),
          L: fromReading(sort.wrench!),
          e: sort.crowfoot === undefined ? NO_CROWFOOT : fromReading(sort.crowfoot),
        });
  const threads = frictionOf(sort.threadFriction, paste.thread, numbers);
  const faces = frictionOf(sort.faceFriction, paste.face, numbers);
  const face = { outer: nutFace, hole };
  const left = (torque: NewtonMetre, at: 'low' | 'middle' | 'high', record?: Working): Newton =>
    Math.max(
      0,
      preloadByTorque(
        {
          thread,
          face,
          friction: { thread: threads[at], face: faces[at] },
          torque: atNut(torque, record),
          running,
        },
        record,
        {
          d_w: fromReading(sort.nutFace),
          d_h: fromReading(sort.hole),
          μ_t: fromReadingOr(sort.threadFriction, paste.name),
          μ_f: fromReadingOr(sort.faceFriction, paste.name),
          ...(wrench === undefined ? { M: fromReading(sort.torque!) } : {}),
          M_r: sort.running === undefined ? NO_RUNNING : fromReading(sort.running),
        },
      ),
    );
  const high = left(set.high, 'low');
  const unsettled = left(set.middle, 'middle', working);
  const settled = settling(
    { stud, parts, settles: settlingOf({ nutFaces: 1, interfaces: layers.length }) },
    working,
    { f_Z: { kind: 'table', name: 'settling by number of faces, VDI 2230' } },
  );
  const middle = afterSettling({ F_M: unsettled, F_Z: settled }, working);
  const warm = numbers.or(of.warm, 0);
  const heat = heatChange({
    stud,
    parts,
    layers: layers.map(({ thickness, of }) => ({ length: thickness, expansion: of.expansion, rise: warm })),
    studPieces: [{ length: grip, expansion: material.expansion, rise: warm }],
  });
  const tensionArea = Math.min(area, shank > 0 ? shankArea : area);
  return {
    thread,
    material,
    area: tensionArea,
    stud,
    parts,
    stiffness: 1 / (stud + (1 - entry) * parts),
    padStiffness: 1 / (entry * parts),
    loadFactor: loadFactor({ stud, parts, entry }),
    preload: { low: Math.max(0, left(set.low, 'high') + settled), middle, high },
    heat,
    tightening: tighteningStress({ thread, preload: high, threadFriction: threads.low }),
    breaking: breakingLoads({
      thread,
      engaged: numbers.of(sort.engaged),
      tensionArea,
      studStrength: material.strength,
      parentShearStrength: clampedMaterial(sort.parent)!.shearStrength,
    }),
    endurance:
      sort.rolled === 'after heat treatment'
        ? enduranceRolledLast({ thread, meanShare: Math.min(1, middle / (tensionArea * material.yield)) })
        : enduranceRolledFirst(thread),
  };
}
