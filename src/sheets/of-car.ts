/**
 * Sheets of a car: asks the questions that a sheet needs and hands their answers to it.
 *
 * In    a car, which wheel, where it stands, the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import type { Car } from '../car/read.ts';
import { springMaterial, tensileStrength } from '../materials/spring-material.ts';
import { cross, dot, sub } from '../maths/vec3.ts';
import type { Reading } from '../measured/reading.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import { cornerCurves } from '../questions/curves.ts';
import { drawCorner } from '../questions/drawing.ts';
import type { DrawnCorner } from '../questions/drawing-types.ts';
import { AS_SURVEYED, type Position, type Stance, type Wheel } from '../questions/figure.ts';
import { stateOfReadings } from '../questions/readings.ts';
import type { Speech } from '../units/show.ts';
import type { BarOrder, BarShape, OrderedHead, OrderedMaterial } from './bar-order.ts';
import { barOrderSheet } from './bar-order-sheet.ts';
import { cornerSheet } from './corner-sheet.ts';
import type { SheetHead } from './frame.ts';
import type { PaperName, SheetDocument } from './page.ts';
import { springSheet } from './spring-sheet.ts';
import type { TextMeasure } from './text-measure.ts';
import { wheelWords } from './words.ts';

export const SHEET_KINDS = ['corner', 'spring', 'bar-order'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export interface SheetAsked {
  readonly car: Car;
  readonly wheel: Wheel;
  readonly at: Position;
  readonly workshop: string;
  /** `2004-05-06`. */
  readonly date: string;
  readonly version: string;
  readonly paper: PaperName;
  readonly speech: Speech;
  /** For an order: what differs from the bar of the car file, and the part number. */
  readonly order?: Partial<BarOrder>;
}

export type SheetAnswer =
  | { readonly made: true; readonly document: SheetDocument }
  | { readonly made: false; readonly message: string };

const CURVE_POINTS = 81;

export function sheetOf(kind: SheetKind, asked: SheetAsked, measure: TextMeasure): SheetAnswer {
  const { car, wheel, at } = asked;
  const answer = cornerFigures(car, wheel, at, { spread: kind !== 'bar-order' });
  if (!answer.reached) return { made: false, message: answer.message };
  const head = headOf(asked);
  switch (kind) {
    case 'corner': {
      const drawn = drawCorner(car, wheel, stanceOf(wheel, at));
      const matter = { answer, curves: curvesOf(asked, answer), ...(drawn === undefined ? {} : { drawn }) };
      return { made: true, document: cornerSheet(matter, head, measure) };
    }
    case 'spring':
      return springSheetOf(asked, answer, head, measure);
    case 'bar-order':
      return orderSheetOf(asked, answer, head, measure);
  }
}

function headOf({
  car,
  workshop,
  date,
  version,
  paper,
  speech,
}: SheetAsked): Omit<SheetHead, 'title' | 'of'> {
  const { name, chassis, invented } = car.form.car;
  const readings = stateOfReadings(car);
  return {
    workshop,
    car: name,
    ...(chassis === undefined ? {} : { chassis }),
    spec: car.spec,
    invented: invented === true,
    date,
    version,
    paper,
    speech,
    readings: `${readings.usual} of ${readings.total} by usual spread`,
  };
}

const curvesOf = ({ car, wheel, at }: SheetAsked, { range }: CornerReached) =>
  cornerCurves(car, wheel, { rack: at.rack, from: range.droop, to: range.bump, count: CURVE_POINTS });

function stanceOf(wheel: Wheel, at: Position): Stance {
  return { ...AS_SURVEYED, [wheel.end]: { left: at.travel, right: at.travel }, rack: at.rack };
}

function springSheetOf(
  asked: SheetAsked,
  answer: CornerReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetAnswer {
  const { car, wheel } = asked;
  const { bar, coil } = car.form[wheel.end][wheel.side];
  if (bar === undefined && coil === undefined) {
    return {
      made: false,
      message: `The ${wheelWords(wheel)} corner has neither a coil nor a torsion bar in the car file.`,
    };
  }
  const shape = bar === undefined ? undefined : shapeOf(asked, bar);
  const matter = {
    answer,
    curves: curvesOf(asked, answer),
    ...(shape === undefined ? {} : { bar: shape }),
    ...(coil === undefined
      ? {}
      : {
          coil: {
            wire: coil.wireDiameter.value,
            meanDiameter: coil.meanDiameter.value,
            totalCoils: coil.totalCoils.value,
            freeLength: coil.freeLength.value,
          },
        }),
    readings: [...readingsIn(bar), ...readingsIn(coil)],
    words: [...wordsIn(bar), ...wordsIn(coil)],
  };
  return { made: true, document: springSheet(matter, head, measure) };
}

const isReading = (node: object): node is Reading => 'index' in node && 'spread' in node && 'means' in node;

/** Every reading of a part, in the order of the file. */
function readingsIn(node: unknown): Reading[] {
  if (typeof node !== 'object' || node === null) return [];
  if (isReading(node)) return [node];
  return Object.values(node).flatMap(readingsIn);
}

const WORD_FIELDS = {
  material: 'material',
  ends: 'form of the ends',
  surface: 'surface',
  hand: 'hand',
} as const;

function wordsIn(part: Readonly<Record<string, unknown>> | undefined): { what: string; is: string }[] {
  return Object.entries(WORD_FIELDS).flatMap(([key, what]) => {
    const is = part?.[key];
    return typeof is === 'string' ? [{ what, is }] : [];
  });
}

type BarForm = NonNullable<Car['form']['front']['left']['bar']>;

function shapeOf(asked: SheetAsked, bar: BarForm): BarShape {
  return {
    diameter: bar.diameter.value,
    bore: bar.bore?.value ?? 0,
    parallelLength: bar.parallelLength.value,
    rockerEnd: headFrom(bar.rockerEnd),
    anchorEnd: headFrom(bar.anchorEnd),
    hand: bar.hand === 'not preset' ? 'not preset' : handInBump(asked),
  };
}

function headFrom(end: BarForm['rockerEnd']): OrderedHead {
  return {
    form: end.form,
    ...(end.headDiameter === undefined ? {} : { headDiameter: end.headDiameter.value }),
    ...(end.size === undefined ? {} : { size: end.size.value }),
    ...(end.splines === undefined ? {} : { splines: end.splines.value }),
  };
}

const A_LITTLE = 1e-3;

/**
 * Hand of the helix in which bump twists the bar: how the rocker turns about the direction from anchor to rocker
 * end. Read off two drawings a millimetre of travel apart; only the sign is used.
 */
function handInBump({ car, wheel, at }: SheetAsked): 'left' | 'right' {
  const drawn = (travel: number): DrawnCorner | undefined =>
    drawCorner(car, wheel, stanceOf(wheel, { ...at, travel }));
  const [before, after] = [drawn(0), drawn(A_LITTLE)];
  const [joint, moved] = [before?.rocker.joints[0], after?.rocker.joints[0]];
  if (before?.bar === undefined || joint === undefined || moved === undefined) {
    throw new Error('the hand of a bar was asked of a corner without one');
  }
  const direction = sub(before.bar.from, before.bar.to);
  return dot(direction, cross(sub(joint, before.rocker.pivot), sub(moved, joint))) > 0 ? 'right' : 'left';
}

function orderSheetOf(
  asked: SheetAsked,
  answer: CornerReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetAnswer {
  const { car, wheel, at } = asked;
  const { bar } = car.form[wheel.end][wheel.side];
  if (bar === undefined) {
    return {
      made: false,
      message: `The ${wheelWords(wheel)} corner has no torsion bar in spec "${car.spec}". Order from a spec that has one, such as a proposal.`,
    };
  }
  const torqueAt = (travel: number): number | undefined => {
    const there = cornerFigures(car, wheel, { ...at, travel });
    return there.reached ? there.figures.find((figure) => figure.id === 'barTorque')?.value : undefined;
  };
  const full = torqueAt(answer.range.bump);
  if (full === undefined || !(full > 0)) {
    return {
      made: false,
      message: `The ${wheelWords(wheel)} bar carries no torque at full bump: there is nothing to order it by.`,
    };
  }
  const standing = torqueAt(0);
  const order: BarOrder = {
    ...shapeOf(asked, bar),
    partNumber: '____________',
    wheel,
    quantity: 1,
    material: materialOf(bar),
    surface: bar.surface ?? 'surface as the maker proposes: ________',
    fullTorque: full,
    ...(standing === undefined ? {} : { staticTorque: standing }),
    ...asked.order,
  };
  return { made: true, document: barOrderSheet(order, head, measure) };
}

/** Share of the modulus that is taken as its range where the table has none. */
const MODULUS_RANGE = 0.02;

function materialOf(bar: BarForm): OrderedMaterial {
  const name = bar.material ?? 'spring steel';
  const table = springMaterial(name);
  const strength = table === undefined ? undefined : tensileStrength(table, bar.diameter.value);
  const modulus = bar.shearModulus?.value ?? table?.shearModulus.value ?? 79.5e9;
  return {
    name,
    means: table?.means ?? 'as the certificate of the stock says',
    shearModulus: modulus,
    shearModulusRange: {
      low: Math.min(modulus, table?.shearModulus.low ?? modulus * (1 - MODULUS_RANGE)),
      high: Math.max(modulus, table?.shearModulus.high ?? modulus * (1 + MODULUS_RANGE)),
    },
    density: table?.density.value ?? 7850,
    ...(strength === undefined ? {} : { tensileStrength: strength }),
    source:
      bar.shearModulus === undefined
        ? `${table?.shearModulus.source ?? 'EN 13906-1, steel'} (${table?.shearModulus.known ?? 'from memory'})`
        : `the car file: ${bar.shearModulus.text}`,
    ...(table?.note === undefined ? {} : { note: table.note }),
  };
}
