/**
 * Sheets of a car: asks the questions that a sheet needs and hands their answers to it.
 *
 * In    a car, which wheel, where it stands, the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import type { Car } from '../car/read.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { type Hand, workingHand } from '../loadpath/spring/presetting.ts';
import { sprungCorner } from '../loadpath/sprung-corner.ts';
import { turnInBump } from '../loadpath/torque-curves.ts';
import { springMaterial, tensileStrength } from '../materials/spring-material.ts';
import { sub } from '../maths/vec3.ts';
import type { Reading } from '../measured/reading.ts';
import type { ProposedBar } from '../questions/bar-for-coil.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import { cornerCurves } from '../questions/curves.ts';
import { drawCorner } from '../questions/drawing.ts';
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
  /** For an order: a bar proposed for a corner that runs a coil. */
  readonly proposal?: ProposedBar;
  /** For an order: what differs from the bar of the car file or the proposal, and the part number. */
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

/** Hand of the helix in which bump twists the bar of this corner. */
function handInBump({ car, wheel, at }: SheetAsked): Hand {
  const drawn = drawCorner(car, wheel, stanceOf(wheel, at))?.bar;
  if (drawn === undefined) throw new Error('the hand of a bar was asked of a corner without one');
  const { corner } = sprungCorner(car.form[wheel.end], wheel.side, new Numbers(car.values));
  return workingHand(turnInBump(corner.rockerAxis, sub(drawn.to, drawn.from)));
}

function orderSheetOf(
  asked: SheetAsked,
  answer: CornerReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetAnswer {
  const order =
    asked.proposal === undefined
      ? orderOfOwnBar(asked, answer)
      : orderOfProposal(asked.wheel, asked.proposal);
  if (typeof order === 'string') return { made: false, message: order };
  return { made: true, document: barOrderSheet({ ...order, ...asked.order }, head, measure) };
}

const BLANK_NUMBER = '____________';
const NO_SURFACE = 'surface as the maker proposes: ________';

/** The bar of the car file, ordered again; or the sentence that says why not. */
function orderOfOwnBar(asked: SheetAsked, { range }: CornerReached): BarOrder | string {
  const { car, wheel, at } = asked;
  const { bar } = car.form[wheel.end][wheel.side];
  if (bar === undefined) {
    return `The ${wheelWords(wheel)} corner has no torsion bar in spec "${car.spec}". Order from a spec that has one, or from a proposal.`;
  }
  const torqueAt = (travel: number): number | undefined => {
    const there = cornerFigures(car, wheel, { ...at, travel });
    return there.reached ? there.figures.find((figure) => figure.id === 'barTorque')?.value : undefined;
  };
  const full = torqueAt(range.bump);
  if (full === undefined || !(full > 0)) {
    return `The ${wheelWords(wheel)} bar carries no torque at full bump: there is nothing to order it by.`;
  }
  const standing = torqueAt(0);
  const hanging = torqueAt(range.droop) ?? 0;
  return {
    ...shapeOf(asked, bar),
    partNumber: BLANK_NUMBER,
    wheel,
    quantity: 1,
    material: orderedMaterial(bar.material, bar.diameter.value, bar.shearModulus),
    surface: bar.surface ?? NO_SURFACE,
    fullTorque: full,
    ...(standing === undefined ? {} : { staticTorque: standing }),
    reversedTorque: Math.max(0, -hanging),
  };
}

function orderOfProposal(wheel: Wheel, bar: ProposedBar): BarOrder {
  const end: OrderedHead = {
    form: bar.filletRadius === undefined ? 'square' : 'radius',
    ...(bar.headDiameter === undefined ? {} : { headDiameter: bar.headDiameter }),
    ...(bar.filletRadius === undefined ? {} : { size: bar.filletRadius }),
  };
  return {
    diameter: bar.diameter,
    bore: bar.bore,
    parallelLength: bar.parallelLength,
    rockerEnd: end,
    anchorEnd: end,
    hand: bar.hand,
    partNumber: bar.name ?? BLANK_NUMBER,
    wheel,
    quantity: 1,
    material: orderedMaterial(bar.material, bar.diameter, undefined),
    surface: NO_SURFACE,
    fullTorque: bar.fullBump.torque,
    staticTorque: bar.rate * bar.twistAsSurveyed,
    reversedTorque: bar.reversed,
  };
}

/** Share of the modulus that is taken as its range where the table has none. */
const MODULUS_RANGE = 0.02;

function orderedMaterial(
  named: string | undefined,
  diameter: number,
  read: Reading | undefined,
): OrderedMaterial {
  const name = named ?? 'spring steel';
  const table = springMaterial(name);
  const strength = table === undefined ? undefined : tensileStrength(table, diameter);
  const modulus = read?.value ?? table?.shearModulus.value ?? 79.5e9;
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
      read === undefined
        ? `${table?.shearModulus.source ?? 'EN 13906-1, steel'} (${table?.shearModulus.known ?? 'from memory'})`
        : `the car file: ${read.text}`,
    ...(table?.note === undefined ? {} : { note: table.note }),
  };
}
