/**
 * How a bolted joint is tightened: the order of its studs, the rounds, the value with its lubricant, the builder's
 * own figure beside it, and where the hand stops until something is seen.
 *
 * In    a car, which joint
 * Out   the matter of the tightening card, or the sentence that says why there is none
 * Not   the loads: what the preload has to hold is asked of `jointOf`
 */
import type { Car } from '../car/read.ts';
import { type FaceFrame, frameOf } from '../loadpath/joint/joint-of-car.ts';
import { type Band, type JointForm, type SortForm, workedSort } from '../loadpath/joint/stud-of-car.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { ROUNDS, roundTorque, tighteningOrder } from '../loadpath/stud/tightening-order.ts';
import { fastenerMaterial } from '../materials/fastener-material.ts';
import { lubricant } from '../materials/lubricant.ts';
import { dot, sub } from '../maths/vec3.ts';
import type { Metre, NewtonMetre, Ratio } from '../units/quantity.ts';
import { JOINT_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { JOINT_WORDS, type JointName } from './joint.ts';

/** One figure for a sort of stud, with what it leaves. */
export interface TorqueFigure {
  readonly atNut: NewtonMetre;
  /** On the wrench, with the crowfoot of the file where there is one. */
  readonly setting: NewtonMetre;
  /** On the wrench in each round. */
  readonly rounds: readonly NewtonMetre[];
  readonly lubricant: string;
  readonly preload: Band;
  /** Stress over yield while the wrench turns, at the high end. */
  readonly yieldShare: Ratio;
  /** As it was written. */
  readonly text: string;
}

/** What the engine builder says: a torque without its lubricant is told and is no value to set. */
export interface BuilderFigure {
  readonly atNut: NewtonMetre;
  readonly text: string;
  readonly source: string;
  readonly lubricant?: string;
  readonly figure?: TorqueFigure;
}

/**
 * Which figure is to be set.
 *
 * `file`: the file has the only one. `builder`: his, and the file has none or the same. `choose`: they differ, and
 * whoever signs the card crosses one of them out.
 */
export type ToSet = 'file' | 'builder' | 'choose';

export interface TightenedSort {
  readonly name: string;
  /** Names of its studs, in the order of tightening. */
  readonly studs: readonly string[];
  readonly thread: string;
  readonly material: string;
  readonly materialMeans: string;
  readonly parent: string;
  readonly engaged: Metre;
  readonly running: NewtonMetre;
  readonly wrench?: Metre;
  readonly crowfoot?: Metre;
  readonly file?: TorqueFigure;
  readonly builder?: BuilderFigure;
  readonly toSet: ToSet;
  /** In words: how builder and file stand to one another. */
  readonly compared: string;
}

/** The figures of a sort that may be set, the builder's first; two where a person has to choose. */
export function figuresToSet({
  file,
  builder,
  toSet,
}: TightenedSort): readonly { readonly whose: 'builder' | 'file'; readonly figure: TorqueFigure }[] {
  const his = builder?.figure === undefined ? [] : [{ whose: 'builder' as const, figure: builder.figure }];
  const own = file === undefined ? [] : [{ whose: 'file' as const, figure: file }];
  return toSet === 'file' ? own : toSet === 'builder' ? his : [...his, ...own];
}

export interface TightenedStud {
  /** 1 for the first. */
  readonly number: number;
  readonly name: string;
  readonly sort: string;
  /** On the face seen from behind the car, m: y to the left, z up, from the studs' centre. */
  readonly y: Metre;
  readonly z: Metre;
  readonly pad: Metre;
  readonly hole: Metre;
}

export interface TighteningReached {
  readonly reached: true;
  readonly joint: JointName;
  readonly sorts: readonly TightenedSort[];
  /** In the order of tightening. */
  readonly studs: readonly TightenedStud[];
  readonly dowels: readonly { readonly name: string; readonly y: Metre; readonly z: Metre }[];
  /** Parts of the value. */
  readonly rounds: readonly Ratio[];
  readonly holdPoints: readonly string[];
  readonly afterwards: readonly string[];
  readonly rule: string;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type TighteningAnswer =
  | TighteningReached
  | { readonly reached: false; readonly joint: JointName; readonly message: string };

export const ORDER_RULE =
  'Order: begins at a dowel; then the stud opposite across the centre; each next pair begins where most of the face is still free (crosswise, common practice, no source). An order of the maker rules.';

export function tighteningOf(car: Car, joint: JointName): TighteningAnswer {
  const no = (message: string): TighteningAnswer => ({ reached: false, joint, message });
  const form = car.form.joints?.[joint];
  if (form === undefined) {
    return no(
      `The file does not describe the joint ${JOINT_WORDS[joint]}: write its studs, what they clamp, torque and lubricant under joints, ${joint}.`,
    );
  }
  const numbers = new Numbers(car.values);
  const used = Object.keys(form.sorts).filter((name) => form.studs.some(({ sort }) => sort === name));
  const without = used.filter((name) => !hasFigure(form.sorts[name]!));
  if (without.length > 0) {
    return no(
      `There is no card without torque and lubricant: ${without.map((name) => `joints.${joint}.sorts.${name}`).join(' and ')} has neither a torque with its lubricant nor a builder's torque with his. Without the lubricant a torque says nothing of the preload.`,
    );
  }
  const frame = frameOf(form.studs.map(({ at }) => numbers.point(at)));
  const places = form.studs.map(({ at }) => inFace(frame, numbers.point(at)));
  const dowels = (form.dowels ?? []).map(({ name, at }) => ({ name, ...inFace(frame, numbers.point(at)) }));
  const order = tighteningOrder(places, dowels);
  const studs = order.map((place, k): TightenedStud => {
    const { name, sort } = form.studs[place]!;
    const { pad, hole } = form.sorts[sort]!;
    return { number: k + 1, name, sort, ...places[place]!, pad: numbers.of(pad), hole: numbers.of(hole) };
  });
  const sorts = used.map((name) =>
    sortOf(
      name,
      form,
      studs.filter(({ sort }) => sort === name).map((stud) => stud.name),
      numbers,
    ),
  );
  return {
    reached: true,
    joint,
    sorts,
    studs,
    dowels,
    rounds: ROUNDS,
    holdPoints: holdPointsOf(form, sorts),
    afterwards: afterwardsOf(form),
    rule: ORDER_RULE,
    notes: notesOn(sorts),
    cautions: [JOINT_CAUTION, STANDING_CAUTION],
  };
}

const hasFigure = ({ torque, lubricant: paste, builder }: SortForm): boolean =>
  (torque !== undefined && paste !== undefined) || builder?.lubricant !== undefined;

function inFace(
  frame: FaceFrame,
  place: Parameters<typeof sub>[0],
): { readonly y: Metre; readonly z: Metre } {
  const arm = sub(place, frame.origin);
  return { y: dot(arm, frame.left), z: dot(arm, frame.up) };
}

/** Nearer than this part of it two torques are one. */
const SAME = 0.01;

function sortOf(name: string, form: JointForm, studs: readonly string[], numbers: Numbers): TightenedSort {
  const filed = form.sorts[name]!;
  const wrench = filed.wrench === undefined ? undefined : numbers.of(filed.wrench);
  const crowfoot = filed.crowfoot === undefined ? 0 : numbers.of(filed.crowfoot);
  /** On the wrench over at the nut.  [ST-5] */
  const lever = wrench === undefined ? 1 : wrench / (wrench + crowfoot);
  const running = numbers.or(filed.running, 0);
  const figure = (of: SortForm, atNut: NewtonMetre, text: string): TorqueFigure => {
    const worked = workedSort(name, of, { warm: form.warm }, numbers);
    const setting = atNut * lever;
    return {
      atNut,
      setting,
      rounds: ROUNDS.map((share) => roundTorque(setting, running * lever, share)),
      lubricant: lubricant(of.lubricant!)!.name,
      preload: worked.preload,
      yieldShare: worked.tightening / worked.material.yield,
      text,
    };
  };
  const { torque, builder } = filed;
  const file =
    torque === undefined || filed.lubricant === undefined
      ? undefined
      : figure(filed, numbers.of(torque) / lever, torque.text);
  const his = builder === undefined ? undefined : builderOf(filed, builder, figure, numbers);
  return {
    name,
    studs,
    thread: filed.thread,
    material: filed.material,
    materialMeans: fastenerMaterial(filed.material)!.means,
    parent: filed.parent,
    engaged: numbers.of(filed.engaged),
    running,
    ...(wrench === undefined ? {} : { wrench }),
    ...(crowfoot === 0 ? {} : { crowfoot }),
    ...(file === undefined ? {} : { file }),
    ...(his === undefined ? {} : { builder: his }),
    ...compared(file, his),
  };
}

function builderOf(
  filed: SortForm,
  builder: NonNullable<SortForm['builder']>,
  figure: (of: SortForm, atNut: NewtonMetre, text: string) => TorqueFigure,
  numbers: Numbers,
): BuilderFigure {
  const atNut = numbers.of(builder.torque);
  const told = { atNut, text: builder.torque.text, source: builder.source };
  if (builder.lubricant === undefined) return told;
  // his figure is at the nut, and friction that was measured with another paste is not his
  const { wrench: _, crowfoot: __, threadFriction, faceFriction, ...rest } = filed;
  const measured =
    builder.lubricant === filed.lubricant
      ? {
          ...(threadFriction === undefined ? {} : { threadFriction }),
          ...(faceFriction === undefined ? {} : { faceFriction }),
        }
      : {};
  const of: SortForm = { ...rest, ...measured, torque: builder.torque, lubricant: builder.lubricant };
  const worked = figure(of, atNut, builder.torque.text);
  return { ...told, lubricant: worked.lubricant, figure: worked };
}

function compared(
  file: TorqueFigure | undefined,
  builder: BuilderFigure | undefined,
): { readonly toSet: ToSet; readonly compared: string } {
  if (builder === undefined)
    return { toSet: 'file', compared: "Builder's figure: none in the file. Ask him before the first build." };
  if (builder.figure === undefined) {
    return {
      toSet: 'choose',
      compared:
        "The builder's figure names no lubricant, so nobody knows what it leaves in the stud: ask him, and write it in the file.",
    };
  }
  if (file === undefined)
    return { toSet: 'builder', compared: "The builder's figure; the file has none of its own." };
  if (file.lubricant !== builder.figure.lubricant) {
    return {
      toSet: 'choose',
      compared: `Builder and file name different lubricants (${builder.figure.lubricant}; ${file.lubricant}): two torques that cannot be put beside one another, only what they leave in the stud.`,
    };
  }
  const more = file.atNut / builder.atNut - 1;
  if (Math.abs(more) <= SAME)
    return { toSet: 'builder', compared: "The builder's figure; the file's is the same." };
  return {
    toSet: 'choose',
    compared: `At the nut the file's figure is ${Math.abs(100 * more).toPrecision(2)} % ${more > 0 ? 'above' : 'below'} the builder's, with the same lubricant.`,
  };
}

function holdPointsOf(form: JointForm, sorts: readonly TightenedSort[]): string[] {
  const choose = sorts.filter(({ toSet }) => toSet === 'choose');
  const crowfoot = sorts.filter((sort) => sort.crowfoot !== undefined);
  const names = (of: readonly { readonly name: string }[]): string => of.map(({ name }) => name).join(', ');
  return [
    ...(choose.length === 0
      ? []
      : [`Builder and file differ (${names(choose)}): settled, crossed out and initialled.`]),
    'COLD: engine, case and studs at shop temperature.',
    'Faces clean and dry, no burr, no paint; threads run free by hand.',
    'Studs home in the parent by their own setting, not bottomed.',
    (form.dowels ?? []).length === 0
      ? 'No dowel in the file: what locates the face is found first.'
      : `Dowels home, by hand: ${names(form.dowels!)}.`,
    'Lubricant as named on thread and under the nut, no other; washers flat, new nuts.',
    'Face closed BY HAND, not by the nuts: a 0.04 mm feeler goes in nowhere.',
    ...(crowfoot.length === 0
      ? []
      : [`Crowfoot in line with the wrench (${names(crowfoot)}): the setting is for it.`]),
  ];
}

function afterwardsOf(form: JointForm): string[] {
  return [
    ...(form.plates === undefined
      ? []
      : [`Last, and with no load in them: ${form.plates.map(({ name }) => name).join(', ')}.`]),
    'Witness mark over stud, nut and face of each, in paint.',
    'After the first run, COLD again: every mark looked at. A mark that has moved: stop, find out why, start this card anew.',
  ];
}

function notesOn(sorts: readonly TightenedSort[]): string[] {
  return sorts.flatMap(({ name, file, builder, toSet }) => {
    const used = toSet === 'builder' ? builder?.figure : file;
    if (used === undefined) return [];
    const { preload, yieldShare } = used;
    const way = (end: number): string => `${Math.round(100 * Math.abs(end / preload.middle - 1))} %`;
    return [
      `${name}: friction and wrench alone put the preload up to ${way(preload.low)} below and ${way(preload.high)} above its middle. Another lubricant moves all of it.`,
      ...(yieldShare > 0.9
        ? [
            `${name}: at the high end ${Math.round(100 * yieldShare)} % of yield while the wrench turns; VDI 2230 goes up to 90 %.`,
          ]
        : []),
    ];
  });
}
