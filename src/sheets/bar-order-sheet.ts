/**
 * The order sheet of a torsion bar: drawing, tolerances, material, marks, inspection, test on receipt.
 *
 * In    a bar as ordered, the head of the sheet
 * Out   the laid-out document
 */

import { CRACK_TEST_CAUTION, STANDING_CAUTION, WOUND_BAR_CAUTION } from '../questions/cautions.ts';
import type { Speech } from '../units/show.ts';
import { againstMaking, fullBumpWords } from './against-making.ts';
import { barDrawing } from './bar-drawing.ts';
import { BAR_TOLERANCE, type BarOrder, type OrderedFigures, orderedFigures } from './bar-order.ts';
import { barReceipt } from './bar-receipt.ts';
import { BAR_SKIN, RECEIPT_TEST } from './cautions.ts';
import { borderOf, type SheetHead } from './frame.ts';
import { type Block, gap, heading, layOut, paragraph } from './lay-out.ts';
import { type SheetDocument, SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { bothWords, fixedLength, inUnit, ownWords, wheelWords } from './words.ts';

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
    ...notAsItStands(sheet),
    barDrawing({ shape: order, name: order.partNumber, toleranced: true }, head.speech, width, measure),
    ...requirements(sheet),
    gap(1),
    ...figuresTable(sheet),
    ...barReceipt(order, head.speech, width, measure),
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

/** In bold over everything else: why no such bar should be made yet. */
function notAsItStands({ order, head, width, measure }: Sheet): Block[] {
  const { notAsItStands: reasons } = againstMaking(order, head.speech);
  if (reasons.length === 0) return [];
  return [
    ...reasons.flatMap((reason) =>
      paragraph(
        `Not to be made as it stands: ${reason}`,
        { width, size: SIZE.body, weight: 'bold' },
        measure,
      ),
    ),
    gap(1),
  ];
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
        : `To a tensile strength of ${inUnit(strength.low, 'MPa', 0)} to ${inUnit(strength.high, 'MPa', 0)} [${inUnit(strength.low, 'ksi', 0)} to ${inUnit(strength.high, 'ksi', 0)}]; hardness and certificate with the bar.`,
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
    row('Presetting', presettingWords(order, speech)),
    row(
      'Inspection',
      'After all work and after presetting: crack test over the whole length (magnetic particle for steel, penetrant for titanium) by an inspector certified for the method; report with the bar, by part number.',
    ),
    row('Marks', marksWords(order)),
  ];
  return [heading('What is ordered'), ...table(TWO, rows, width, measure)];
}

function marksWords(order: BarOrder): string {
  const hand =
    order.hand === 'not preset'
      ? 'the words NOT PRESET'
      : `an arrow in the sense of bump (${order.hand === 'right' ? 'anticlockwise' : 'clockwise'}) and the words ${wheelWords(order.wheel).toUpperCase()}`;
  return `Etched or vibro-engraved on the face of the rocker end only: part number ${order.partNumber}, serial number ________, ${hand}; on that of the anchor end a line through a blank tooth.`;
}

const row = (...cells: string[]): Row => ({ cells });

const capital = (words: string): string => words.slice(0, 1).toUpperCase() + words.slice(1);

const TWO = [
  { title: '', part: 1 },
  { title: '', part: 5.6 },
] as const;

const backwards = (order: BarOrder): number => order.reversedTorque ?? 0;

function presettingWords(order: BarOrder, speech: Speech): string {
  if (order.hand === 'not preset') return 'None. The bar may be worked either way.';
  const sense = order.hand === 'right' ? 'anticlockwise, seen on its face' : 'clockwise, seen on its face';
  const reversal =
    backwards(order) === 0
      ? ''
      : ` Full droop twists it backwards, which undoes presetting: bring the droop stop up, or order it not preset.`;
  const depth =
    order.presetting === undefined
      ? "to the maker's own torque: ________"
      : `to ${ownWords({ value: order.presetting.torque, unit: 'N m' }, speech)}, leaving ${inUnit(order.presetting.permanentTwist, 'deg', 1)} of twist`;
  return `${capital(order.hand)} hand: rocker end turned ${sense}, ${depth}. It then belongs only where it is worked ${order.hand} hand.${reversal}`;
}

function figuresTable({ order, figures, head, width, measure }: Sheet): Block[] {
  const { speech } = head;
  const { measuredRate, staticTorque, material, fullBump } = order;
  const figure = (means: string, value: number, unit: string): Pair => [
    means,
    bothWords({ value, unit }, speech),
  ];
  const rows: Pair[] = [
    figure('Torsional rate by this sheet', figures.rate, 'N m/rad'),
    figure('Softest that the limits let through', figures.least, 'N m/rad'),
    figure('Stiffest that they let through', figures.most, 'N m/rad'),
    ...(measuredRate === undefined
      ? []
      : [figure('Rate measured on the bar in the car', measuredRate, 'N m/rad')]),
    figure('Active length', figures.activeLength, 'm'),
    [
      order.rockerEnd.length === undefined || order.anchorEnd.length === undefined
        ? 'Mass without the splined heads'
        : 'Mass',
      bothWords({ value: figures.mass, unit: 'kg' }, speech),
    ],
    ...(staticTorque === undefined ? [] : [figure('Torque as the car stands', staticTorque, 'N m')]),
    figure(
      fullBump.stopped ? `Full bump: ${fullBump.by}` : 'End of the linkage in bump',
      fullBump.travel,
      'm',
    ),
    figure('Torque at full bump', order.fullTorque, 'N m'),
    figure('Twist of this bar under that torque', figures.fullTwist, 'rad'),
    ...(backwards(order) === 0 ? [] : [figure('Torque backwards at full droop', backwards(order), 'N m')]),
    figure('Shear stress at full bump, skin', figures.fullStress, 'Pa'),
    material.shearYield === undefined
      ? ['Yield in shear', 'not in the table here']
      : figure('Yield in shear, not preset', material.shearYield, 'Pa'),
    [
      'Energy held at full bump',
      `${inUnit(figures.energy, 'J', 0)} [${inUnit(figures.energy, 'lbf ft', 0)}]`,
    ],
  ];
  return [
    heading('What it is worked to'),
    ...table(FOUR, inPairs(rows), width, measure),
    ...(fullBump.stopped
      ? []
      : paragraph(fullBumpWords(order, speech), { width, size: SIZE.small, weight: 'bold' }, measure)),
  ];
}

/** What a figure means, and the figure. */
type Pair = readonly [means: string, figure: string];

const FOUR = [
  { title: '', part: 2.2 },
  { title: '', part: 2, align: 'right' },
  { title: '', part: 2.2 },
  { title: '', part: 2, align: 'right' },
] as const;

/** The first half of a list beside its second half. */
function inPairs(rows: readonly Pair[]): Row[] {
  const half = Math.ceil(rows.length / 2);
  return rows.slice(0, half).map((left, k) => row(...left, ...(rows[half + k] ?? ['', ''])));
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
