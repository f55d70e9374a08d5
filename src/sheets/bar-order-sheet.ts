/**
 * The order sheet of a torsion bar: drawing, tolerances, material, marks, inspection, test on receipt.
 *
 * In    a bar as ordered, the head of the sheet
 * Out   the laid-out document
 */

import { CRACK_TEST_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from '../questions/cautions.ts';
import { type Speech, show } from '../units/show.ts';
import { barDrawing } from './bar-drawing.ts';
import {
  BAR_TOLERANCE,
  type BarOrder,
  type OrderedFigures,
  orderedFigures,
  receiptTest,
} from './bar-order.ts';
import { BAR_SKIN, RECEIPT_TEST } from './cautions.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, gap, heading, layOut, paragraph, steps } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { bothWords, fixedLength, inUnit, otherWay, otherWords, ownWords, wheelWords } from './words.ts';

export function barOrderSheet(
  order: BarOrder,
  head: Omit<SheetHead, 'title' | 'of'>,
  measure: TextMeasure,
): SheetDocument {
  const full: SheetHead = {
    ...head,
    title: 'Torsion bar order',
    of: `${wheelWords(order.wheel)} · ${order.partNumber} · ${order.quantity} off`,
  };
  const width = borderOf(head.paper).width - 4;
  const figures = orderedFigures(order);
  const sheet = { order, figures, head: full, width, measure };
  const blocks: Block[] = [
    barDrawing({ shape: order, name: order.partNumber, toleranced: true }, head.speech, width, measure),
    gap(2),
    ...requirements(sheet),
    gap(1.5),
    ...figuresTable(sheet),
    gap(1.5),
    ...marksToMake(sheet),
    gap(1.5),
    ...receipt(sheet),
    gap(1.5),
    ...sources(sheet),
  ];
  return layOut({ head: full, cautions: CAUTIONS, blocks }, measure);
}

const CAUTIONS = [WOUND_BAR_CAUTION, BAR_SKIN, RECEIPT_TEST, CRACK_TEST_CAUTION, STANDING_CAUTION];

interface Sheet {
  readonly order: BarOrder;
  readonly figures: OrderedFigures;
  readonly head: SheetHead;
  readonly width: number;
  readonly measure: TextMeasure;
}

function requirements({ order, head, width, measure }: Sheet): Block[] {
  const { material } = order;
  const strength = material.tensileStrength;
  const { speech } = head;
  const length = (metres: number): string => fixedLength(metres, 2, speech);
  const rows: Row[] = [
    row('Material', `${material.name}: ${material.means}`),
    row(
      'Heat treatment',
      strength === undefined
        ? 'As the certificate of the stock; tensile strength to be stated by the maker: ________'
        : `Quenched and tempered, or aged, to a tensile strength of ${inUnit(strength.low, 'MPa', 0)} to ${inUnit(strength.high, 'MPa', 0)} [${inUnit(strength.low, 'ksi', 0)} to ${inUnit(strength.high, 'ksi', 0)}]; hardness and certificate with the bar.`,
    ),
    row(
      'Surface',
      `${capital(order.surface)}; shank Ra ${inUnit(BAR_TOLERANCE.roughness, 'µm', 1)} or better, no tool mark across it, transitions blended without a step; not plated.`,
    ),
    row(
      'Tolerances',
      `Shank diameter ±${length(BAR_TOLERANCE.diameter)}, parallel length ±${length(BAR_TOLERANCE.length)}, run-out of the shank between heads ${length(BAR_TOLERANCE.runOut)}${order.bore > 0 ? `, bore ±${length(BAR_TOLERANCE.bore)}` : ''}. The rate goes with the fourth power of the diameter. Common practice, no source; the maker's closer ones rule.`,
    ),
    row('Splines', 'Form, fit and blank tooth as the sample or drawing sent with this order: ____________'),
    row('Presetting', presettingWords(order)),
    row(
      'Inspection',
      'After all work and after presetting: crack test over the whole length (magnetic particle for steel, penetrant for titanium) by an inspector certified for the method; report with the bar, by part number.',
    ),
  ];
  return [heading('What is ordered'), ...table(TWO, rows, width, measure)];
}

const row = (...cells: string[]): Row => ({ cells });

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

const bare = (value: number, unit: string, speech: Speech): string => show(value, unit, speech).text;

const TWO = [
  { title: 'What', part: 1 },
  { title: 'Required', part: 5.6 },
] as const;

const backwards = (order: BarOrder): number => order.reversedTorque ?? 0;

function presettingWords(order: BarOrder): string {
  if (order.hand === 'not preset') return 'None. The bar may be worked either way.';
  const sense =
    order.hand === 'right'
      ? 'anticlockwise, seen on the face of the rocker end'
      : 'clockwise, seen on the face of the rocker end';
  const reversal =
    backwards(order) === 0
      ? ''
      : ` The car twists it backwards by up to ${bothWords({ value: backwards(order), unit: 'N m' }, 'mm-N')} at full droop, which undoes presetting: bring the droop stop up to it, or order the bar not preset.`;
  const depth =
    order.presetting === undefined
      ? "to the maker's own torque: ________"
      : `to ${ownWords({ value: order.presetting.torque, unit: 'N m' }, 'mm-N')}, leaving ${inUnit(order.presetting.permanentTwist, 'deg', 1)} of twist`;
  return `${capital(order.hand)} hand: the rocker end is turned ${sense}, ${depth}. From then on the bar belongs on a corner that works it ${order.hand} hand, and nowhere else.${reversal}`;
}

function figuresTable({ order, figures, head, width, measure }: Sheet): Block[] {
  const { speech } = head;
  const both = (means: string, value: number, unit: string): Row =>
    row(means, ownWords({ value, unit }, speech), otherWords({ value, unit }, speech));
  const gigapascals = inUnit(order.material.shearModulus, 'GPa', 1);
  const ksi = inUnit(order.material.shearModulus, 'ksi', 0);
  const rows: Row[] = [
    both('Torsional rate', figures.rate, 'N m/rad'),
    row(
      'Rate within tolerances and range of modulus',
      `${bare(figures.least, 'N m/rad', speech)} to ${ownWords({ value: figures.most, unit: 'N m/rad' }, speech)}`,
      `${bare(figures.least, 'N m/rad', otherWay(speech))} to ${otherWords({ value: figures.most, unit: 'N m/rad' }, speech)}`,
    ),
    both('Active length', figures.activeLength, 'm'),
    row('Shear modulus taken', ...(speech === 'mm-N' ? [gigapascals, ksi] : [ksi, gigapascals])),
    ...(order.staticTorque === undefined
      ? []
      : [both('Torque as the car stands', order.staticTorque, 'N m')]),
    both('Torque at full bump', order.fullTorque, 'N m'),
    ...(backwards(order) === 0
      ? []
      : [both('Torque backwards, against the hand, at full droop', backwards(order), 'N m')]),
    both('Twist at full bump', figures.fullTwist, 'rad'),
    both('Shear stress at the skin at full bump, shank', figures.fullStress, 'Pa'),
    row('Energy held at full bump', inUnit(figures.energy, 'J', 0), `${inUnit(figures.energy, 'lbf ft', 0)}`),
    row(
      order.rockerEnd.length === undefined || order.anchorEnd.length === undefined
        ? 'Mass without the splined heads'
        : 'Mass',
      ownWords({ value: figures.mass, unit: 'kg' }, speech),
      otherWords({ value: figures.mass, unit: 'kg' }, speech),
    ),
  ];
  const columns = [
    { title: 'Worked from this sheet', part: 3 },
    { title: 'Figure', part: 1.4, align: 'right' as const },
    { title: 'Other units', part: 1.4, align: 'right' as const },
  ];
  return [heading('What it is worked to'), ...table(columns, rows, width, measure)];
}

function marksToMake({ order, width, measure }: Sheet): Block[] {
  const hand =
    order.hand === 'not preset'
      ? 'no hand: the words NOT PRESET'
      : `an arrow in the sense of bump (${order.hand === 'right' ? 'anticlockwise' : 'clockwise'} on the rocker end) and the words ${wheelWords(order.wheel).toUpperCase()}`;
  return [
    heading('Marks'),
    ...paragraph(
      `By etching or vibro-engraving on the face of the rocker end only, never on the shank, a transition or a spline: part number ${order.partNumber}, serial number ________, ${hand}. On the face of the anchor end: a line through the blank tooth, if there is one.`,
      { width, size: SIZE.small },
      measure,
    ),
  ];
}

function receipt({ order, head, width, measure }: Sheet): Block[] {
  const test = receiptTest(order);
  const { speech } = head;
  const most = test.points.at(-1)!;
  const columns = [
    { title: 'Mass', part: 1.5, align: 'right' as const },
    { title: 'Torque', part: 2.5, align: 'right' as const },
    { title: 'Expected twist', part: 1.2, align: 'right' as const },
    { title: 'At least', part: 1, align: 'right' as const },
    { title: 'At most', part: 1, align: 'right' as const },
    { title: 'Read going up', part: 1.4, blank: true },
    { title: 'Read coming down', part: 1.4, blank: true },
  ];
  const rows: Row[] = test.points.map((point) => ({
    height: 7,
    cells: [
      `${inUnit(point.mass, 'kg', 1)} [${inUnit(point.mass, 'lb', 1)}]`,
      bothWords({ value: point.torque, unit: 'N m' }, speech),
      inUnit(point.twist, 'deg', 2),
      inUnit(point.least, 'deg', 2),
      inUnit(point.most, 'deg', 2),
      '',
      '',
    ],
  }));
  return [
    heading('Test on receipt'),
    ...steps(
      [
        'Certificate, hardness and crack test report are there and name this part number.',
        'Shank diameter by micrometer at three places, two ways round: ______ ______ ______ ______ ______ ______. Parallel length: ______. Run-out between centres: ______.',
        'Skin looked over in good light, the transitions with a glass: no nick, no step, no rust.',
        `Rocker end held so that it cannot turn, anchor end carried in a bearing; lever ${fixedLength(test.lever, 0, speech)} from the axis to the hanger, clinometer on the lever and another on the held end. Zero with the lever alone.`,
        'Hang the masses one after another in the working hand; bring the lever level again at the holding end before each reading (a lever turned by 10° loses 1.5 % of the torque). Twist is the difference of the two clinometers.',
        `Read up to ${inUnit(most.mass, 'kg', 1)} and down again. Back at nothing the clinometers must come back to within 0.1° of zero: a bar that keeps a twist is not fitted.`,
        'A reading outside the limits: measure lever, masses and shank again before blaming the bar; then back to the maker. Five readings also give its own rate for the car file.',
      ],
      width,
      measure,
    ),
    gap(1),
    ...table(columns, rows, width, measure),
    gap(2),
    ...paragraph(
      'Tested by: ____________________   Initials: ______   Date: ____________   Serial number: ____________   Taken / sent back: ____________',
      { width, size: SIZE.small },
      measure,
    ),
  ];
}

function sources({ order, width, measure }: Sheet): Block[] {
  const { material } = order;
  const { low, high } = material.shearModulusRange;
  return [
    heading('Where the figures come from'),
    ...[
      'Rate, stress and twist of a round bar: Gere & Goodno, Mechanics of Materials, 7th ed., ch. 3 (equations SP-18 to SP-25 of the load path paper); transitions by the integral of J over the run-out.',
      `Shear modulus ${inUnit(material.shearModulus, 'GPa', 1)}, range ${inUnit(low, 'GPa', 1)} to ${inUnit(high, 'GPa', 1)}: ${material.source}.${material.note === undefined ? '' : ` ${capital(material.note)}.`}`,
      'Limits of the test: every dimension at the end of its tolerance and the modulus at the end of its range, at once, and 0.1° of reading. Tolerances and test: common practice, no source.',
    ].flatMap((words) => paragraph(words, { width, size: SIZE.small }, measure)),
  ];
}
