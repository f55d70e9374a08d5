/**
 * Four small tables where the wheels are, the car in plan between them: readings as the car lies.
 *
 * In    for each wheel rows of cells; a cell that is not there is a box to write in
 * Out   one block
 */
import { WHEEL_NAMES, type WheelName, type Wheels } from '../loadpath/loads/doing.ts';
import type { Drawing } from '../questions/drawing-types.ts';
import { type BoxColumn, type BoxRow, boxTableHeight, boxTableMarks } from './box-table.ts';
import type { Block } from './lay-out.ts';
import { SIZE, text } from './page.ts';
import { planOfCar } from './plan-of-car.ts';
import type { TextMeasure } from './text-measure.ts';

export interface WheelBoxes {
  /** That of the names first. */
  readonly columns: readonly BoxColumn[];
  readonly wheels: Wheels<readonly BoxRow[]>;
  readonly drawing: Drawing;
  readonly rowHeight: number;
}

const WORDS: Wheels<string> = {
  frontLeft: 'Front left',
  frontRight: 'Front right',
  rearLeft: 'Rear left',
  rearRight: 'Rear right',
};

/** Room for the car between the tables, for the title of each, and between front and rear. */
const CAR = 36;
const TITLE = 4.6;
const BETWEEN = 3;

export function wheelBoxes(of: WheelBoxes, width: number, measure: TextMeasure): Block {
  const tableOf = (wheel: WheelName) => ({ ...of, rows: of.wheels[wheel] });
  const high = (wheels: readonly WheelName[]): number =>
    TITLE + Math.max(...wheels.map((wheel) => boxTableHeight(tableOf(wheel))));
  const front = high(['frontLeft', 'frontRight']);
  const rear = high(['rearLeft', 'rearRight']);
  const own = (width - CAR) / 2;
  return {
    height: front + BETWEEN + rear,
    marks: (at) => [
      ...planOfCar(of.drawing, {
        middle: at.x + width / 2,
        front: at.y + front / 2,
        rear: at.y + front + BETWEEN + rear / 2,
        width: CAR - 2,
      }),
      ...WHEEL_NAMES.flatMap((wheel) => {
        const x = wheel.endsWith('Left') ? at.x : at.x + width - own;
        const y = wheel.startsWith('front') ? at.y : at.y + front + BETWEEN;
        return [
          text({ x, y: y + 3.4 }, WORDS[wheel], { size: SIZE.body, weight: 'bold' }),
          ...boxTableMarks(tableOf(wheel), { x, y: y + TITLE }, own, measure),
        ];
      }),
    ],
  };
}
