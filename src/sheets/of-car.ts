/**
 * Sheets of a car: asks the questions that a sheet needs and hands their answers to it.
 *
 * In    a car; which wheel and where it stands, or what the car is doing and which joint; the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import type { Reading } from '../measured/reading.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import { cornerCurves } from '../questions/curves.ts';
import { drawCorner } from '../questions/drawing.ts';
import type { RatiosReached } from '../questions/ratios.ts';
import { stateOfReadings } from '../questions/readings.ts';
import { againstMaking } from './against-making.ts';
import type { SheetAnswer } from './answer.ts';
import { type AskedCorner, stanceOf } from './asked-corner.ts';
import type { FloorSheetAsked, LoadSheetAsked, SheetOn } from './asked-sheet.ts';
import type { BarOrder } from './bar-order.ts';
import { barOrderSheet } from './bar-order-sheet.ts';
import { cornerSheet } from './corner-sheet.ts';
import { adjustmentCardOfCar, setUpSheetOfCar } from './floor-of-car.ts';
import type { SheetHead } from './frame.ts';
import { jointSheetOf, loadSheetOf, tighteningCardOf } from './loads-of-car.ts';
import { orderOfOwnBar, shapeOf } from './order-of-car.ts';
import type { SheetDocument } from './page.ts';
import { type PrimariesSheetMatter, primariesSheet } from './primaries-sheet.ts';
import { ratioSheet } from './ratio-sheet.ts';
import { springSheet } from './spring-sheet.ts';
import type { TextMeasure } from './text-measure.ts';
import { wheelWords } from './words.ts';

/** Sheets of one wheel where it stands. */
export const CORNER_SHEETS = ['corner', 'spring', 'bar-order'] as const;
/** Sheets of the whole car under what it is doing, and of its bolted joints. */
export const LOAD_SHEETS = ['load', 'joint', 'tightening'] as const;
/** Sheets of the car on its pads: what was read, and what to change. */
export const FLOOR_SHEETS = ['set-up', 'adjustments'] as const;
export const SHEET_KINDS = [...CORNER_SHEETS, ...LOAD_SHEETS, ...FLOOR_SHEETS] as const;
export type CornerSheet = (typeof CORNER_SHEETS)[number];
export type LoadSheet = (typeof LOAD_SHEETS)[number];
export type FloorSheet = (typeof FLOOR_SHEETS)[number];
export type SheetKind = (typeof SHEET_KINDS)[number];

export const isCornerSheet = (kind: SheetKind): kind is CornerSheet =>
  (CORNER_SHEETS as readonly string[]).includes(kind);

export const isFloorSheet = (kind: SheetKind): kind is FloorSheet =>
  (FLOOR_SHEETS as readonly string[]).includes(kind);

export interface SheetAsked extends AskedCorner, SheetOn {
  /** For an order: what differs from the bar of the car file, and the part number. */
  readonly order?: Partial<BarOrder>;
}

const CURVE_POINTS = 81;

/** What each kind is asked with. */
export type AskedOf = Readonly<
  Record<CornerSheet, SheetAsked> & Record<LoadSheet, LoadSheetAsked> & Record<FloorSheet, FloorSheetAsked>
>;

type Makers = {
  readonly [K in SheetKind]: (asked: AskedOf[K], measure: TextMeasure) => SheetAnswer;
};

const MAKERS: Makers = {
  corner: (asked, measure) => cornerSheetOf('corner', asked, measure),
  spring: (asked, measure) => cornerSheetOf('spring', asked, measure),
  'bar-order': (asked, measure) => cornerSheetOf('bar-order', asked, measure),
  load: (asked, measure) => loadSheetOf(asked, headOf(asked), measure),
  joint: (asked, measure) => jointSheetOf(asked, headOf(asked), measure),
  tightening: (asked, measure) => tighteningCardOf(asked, headOf(asked), measure),
  'set-up': (asked, measure) => setUpSheetOfCar(asked, floorHead(asked), measure),
  adjustments: (asked, measure) => adjustmentCardOfCar(asked, floorHead(asked), measure),
};

export const sheetOf = <K extends SheetKind>(kind: K, asked: AskedOf[K], measure: TextMeasure): SheetAnswer =>
  MAKERS[kind](asked, measure);

/** Of a set that was found and checked: no question of the car alone, so no kind among the others. */
export const primariesSheetOf = (
  asked: SheetOn & { readonly matter: PrimariesSheetMatter },
  measure: TextMeasure,
): SheetDocument => primariesSheet(asked.matter, headOf(asked), measure);

/** Of gears that were asked for by more than the car alone. */
export const ratioSheetOf = (
  asked: SheetOn & { readonly matter: RatiosReached },
  measure: TextMeasure,
): SheetDocument => ratioSheet(asked.matter, headOf(asked), measure);

function cornerSheetOf(kind: CornerSheet, asked: SheetAsked, measure: TextMeasure): SheetAnswer {
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

function headOf({ car, workshop, date, version, paper, speech }: SheetOn): Omit<SheetHead, 'title' | 'of'> {
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

/** Hexadecimal digits of the version that stand on paper: enough to tell the states of one file apart. */
const VERSION_DIGITS = 8;

const floorHead = (asked: FloorSheetAsked): Omit<SheetHead, 'title' | 'of'> => ({
  ...headOf(asked),
  ...(asked.fileVersion === undefined ? {} : { file: asked.fileVersion.slice(0, VERSION_DIGITS) }),
});

const curvesOf = ({ car, wheel, at }: SheetAsked, { range }: CornerReached) =>
  cornerCurves(car, wheel, { rack: at.rack, from: range.droop, to: range.bump, count: CURVE_POINTS });

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
  preset: 'preset',
} as const;

function wordsIn(part: Readonly<Record<string, unknown>> | undefined): { what: string; is: string }[] {
  return Object.entries(WORD_FIELDS).flatMap(([key, what]) => {
    const is = part?.[key];
    return typeof is === 'string' ? [{ what, is }] : [];
  });
}

function orderSheetOf(
  asked: SheetAsked,
  answer: CornerReached,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetAnswer {
  const found = orderOfOwnBar(asked, answer);
  if (typeof found === 'string') return { made: false, message: found };
  const order = { ...found, ...asked.order };
  const { refused } = againstMaking(order, asked.speech);
  if (refused !== undefined) return { made: false, message: refused };
  return { made: true, document: barOrderSheet(order, head, measure) };
}
