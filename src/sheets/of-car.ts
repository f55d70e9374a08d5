/**
 * Sheets of a car: asks the questions that a sheet needs and hands their answers to it.
 *
 * In    a car, which wheel, where it stands, the head of the sheet
 * Out   a laid-out document, or the sentence that says why there is none
 */
import type { Reading } from '../measured/reading.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import { cornerCurves } from '../questions/curves.ts';
import { drawCorner } from '../questions/drawing.ts';
import { stateOfReadings } from '../questions/readings.ts';
import type { Speech } from '../units/show.ts';
import { againstMaking } from './against-making.ts';
import { type AskedCorner, stanceOf } from './asked-corner.ts';
import type { BarOrder } from './bar-order.ts';
import { barOrderSheet } from './bar-order-sheet.ts';
import { cornerSheet } from './corner-sheet.ts';
import type { SheetHead } from './frame.ts';
import { orderOfOwnBar, shapeOf } from './order-of-car.ts';
import type { PaperName, SheetDocument } from './page.ts';
import { springSheet } from './spring-sheet.ts';
import type { TextMeasure } from './text-measure.ts';
import { wheelWords } from './words.ts';

export const SHEET_KINDS = ['corner', 'spring', 'bar-order'] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

export interface SheetAsked extends AskedCorner {
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
