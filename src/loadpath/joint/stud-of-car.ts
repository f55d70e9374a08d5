/**
 * A sort of stud of the car file, worked: how it gives, what the hand leaves in it cold and warm, what it bears.
 *
 * In    the sort as filed, the numbers
 * Out   compliances, preload as a band, change with settling and heat, limits
 *
 * The band: low is the low end as tightened, settled; high is the high end, not yet settled; the middle is settled.
 * ST-n are the equations of docs/theory/studs.md.
 */
import type { CarForm } from '../../car/read.ts';
import {
  clampedMaterial,
  type FastenerMaterial,
  fastenerMaterial,
} from '../../materials/fastener-material.ts';
import { type Thread, threadNamed } from '../../materials/thread.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Newton, NewtonPerMetre, Pascal, Ratio } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { noteSolved } from '../figures/note.ts';
import type { Numbers } from '../numbers.ts';
import { heatChange, settling, settlingOf } from '../stud/change.ts';
import { stressArea, tighteningStress } from '../stud/preload.ts';
import { clampedCompliance, loadFactor, studCompliance } from '../stud/stiffness.ts';
import {
  type BreakingLoads,
  breakingLoads,
  enduranceRolledFirst,
  enduranceRolledLast,
} from '../stud/strength.ts';
import { threadFrictionOf, tightenedBand } from './tightened.ts';

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
  /** The same when warm. */
  readonly hot: Band;
  /** Change when warm; nothing where the file tells no warmth. */
  readonly heat: Newton;
  /** Equivalent stress at the high end while the wrench turns. */
  readonly tightening: Pascal;
  /** Whether that stress has the twist of the thread's friction in it: it has with a lubricant named. */
  readonly twistKnown: boolean;
  readonly breaking: BreakingLoads;
  /** Stress amplitude that the thread bears for ever, at the middle preload. */
  readonly endurance: Pascal;
}

const afterSettling = formula({
  symbol: 'F_V',
  means: 'preload, settled',
  is: 'max(0*F_M, F_M + F_Z)',
  unit: 'N',
  terms: {
    F_M: { unit: 'N', means: 'preload as tightened' },
    F_Z: { unit: 'N', means: 'change of preload as the faces settle' },
  },
  source: 'ST-14',
});

/** @throws NoTorque; names of thread, materials and lubricant were checked when the file was read */
export function workedSort(
  name: string,
  sort: SortForm,
  of: { readonly warm: Reading | undefined },
  numbers: Numbers,
  working?: Working,
): WorkedSort {
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

  const tight = tightenedBand(name, sort, { thread, stud, parts }, numbers, working);
  const settled = settling(
    { stud, parts, settles: settlingOf({ nutFaces: 1, interfaces: layers.length }) },
    working,
    { f_Z: { kind: 'table', name: 'settling by number of faces, VDI 2230' } },
  );
  const middle = afterSettling({ F_M: tight.middle, F_Z: settled }, working);
  const warm = numbers.or(of.warm, 0);
  const heat = heatChange({
    stud,
    parts,
    layers: layers.map(({ thickness, of }) => ({ length: thickness, expansion: of.expansion, rise: warm })),
    studPieces: [{ length: grip, expansion: material.expansion, rise: warm }],
  });
  const threads = threadFrictionOf(sort, numbers);
  const preload = { low: Math.max(0, tight.low + settled), middle, high: tight.high };
  const warmed = (cold: Newton): Newton => Math.max(0, cold + heat);
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
    preload,
    hot: { low: warmed(preload.low), middle: warmed(middle), high: warmed(preload.high) },
    heat,
    tightening: tighteningStress({
      thread,
      preload: preload.high,
      threadFriction: threads?.low ?? 0,
    }),
    twistKnown: threads !== undefined,
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
