/**
 * The test of a torsion bar when it arrives: steps to tick, masses and limits, blanks for what is read.
 *
 * In    the bar as ordered
 * Out   blocks that start a sheet of their own: the order goes to the maker, the test stays in the workshop
 */
import type { Speech } from '../units/show.ts';
import { type BarOrder, receiptTest } from './bar-order.ts';
import { type Block, gap, heading, paragraph, steps } from './lay-out.ts';
import { SIZE } from './page.ts';
import { type Row, table } from './table.ts';
import type { TextMeasure } from './text-measure.ts';
import { bothWords, fixedLength, inUnit } from './words.ts';

export function barReceipt(order: BarOrder, speech: Speech, width: number, measure: TextMeasure): Block[] {
  const test = receiptTest(order);
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
    { ...heading('Test on receipt'), opensSheet: true },
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
