/**
 * Shims drawn: a stack with what goes in and comes out, or pieces that go from one side of the joints to the other.
 *
 * In    the pieces, the corner of the room
 * Out   marks; thicknesses are larger than they are, in proportion
 */
import type { Act } from '../questions/adjustment-card.ts';
import type { Speech } from '../units/show.ts';
import { arrow, label } from './arrow.ts';
import { lengthSaid } from './floor-words.ts';
import { circle, LINE, line, type Mark, type PaperPoint, rectangle, SIZE, text } from './page.ts';

type Stack = Extract<Act, { by: 'stack' }>;
type Shift = Extract<Act, { by: 'shift' }>;
type Pieces = Stack['put'];

/** Millimetres of paper for a millimetre of shim, and the thinnest that is still seen as a plate. */
const GROWN = 3;
const THIN = 1;

const drawn = (thickness: number): number => Math.max(THIN, 1e3 * thickness * GROWN);

export const piecesWords = (of: Pieces, speech: Speech): string =>
  of.map(({ thickness, pieces }) => `${pieces} × ${lengthSaid(thickness, speech)}`).join(', ');

const plates = (of: Pieces): readonly number[] =>
  of.flatMap(({ thickness, pieces }) => Array.from({ length: pieces }, () => drawn(thickness)));

/** Plates side by side about a middle. */
function row(of: readonly number[], middle: number, top: number, height: number, fill: number): Mark[] {
  let x = middle - of.reduce((sum, each) => sum + each, 0) / 2;
  return of.map((width) => {
    const plate = rectangle({ x, y: top, width, height }, { weight: LINE.thin, fill });
    x += width;
    return plate;
  });
}

export function stackDrawing({ put, taken, before, after }: Stack, at: PaperPoint, speech: Speech): Mark[] {
  const stays = before - taken.reduce((sum, { thickness, pieces }) => sum + thickness * pieces, 0);
  const own = [...(stays > 1e-6 ? [drawn(stays)] : [])];
  const going = plates(put);
  const wide = [...own, ...going].reduce((sum, each) => sum + each, 0);
  const middle = at.x + 20;
  const [left, right] = [middle - wide / 2, middle + wide / 2];
  const top = at.y + 8;
  const lug = (x: number): Mark => rectangle({ x, y: top - 1, width: 5, height: 10 }, { weight: LINE.thick });
  const outer = plates(taken);
  const away = at.x + 42;
  return [
    lug(left - 5),
    lug(right),
    line({ x: left - 8, y: top + 4 }, { x: right + 8, y: top + 4 }, { weight: LINE.hair }),
    ...row(own, left + (own[0] ?? 0) / 2, top, 8, 1),
    ...row(going, right - going.reduce((sum, each) => sum + each, 0) / 2, top, 8, 0.75),
    ...(put.length === 0
      ? []
      : [
          ...arrow(
            { x: right - drawn(put[0]!.thickness) / 2, y: at.y + 1.5 },
            { x: right - drawn(put[0]!.thickness) / 2, y: top - 0.2 },
          ),
          text({ x: right - drawn(put[0]!.thickness) / 2 - 1.5, y: at.y + 3.4 }, 'in', {
            size: SIZE.label,
            align: 'right',
          }),
        ]),
    ...(taken.length === 0
      ? []
      : [
          ...row(outer, away + 6, top, 8, 1),
          ...arrow({ x: right + 6, y: at.y + 4.4 }, { x: away + 6, y: at.y + 4.4 }),
          text({ x: (right + 6 + away + 6) / 2, y: at.y + 3.2 }, 'out', {
            size: SIZE.label,
            align: 'middle',
          }),
        ]),
    label(
      { x: middle, y: at.y + 21.4 },
      `stack ${lengthSaid(before, speech)}, then ${lengthSaid(after, speech)}`,
    ),
  ];
}

export function shiftDrawing({ forward, rearward }: Shift, at: PaperPoint, speech: Speech): Mark[] {
  const y = at.y + 11;
  const middle = at.x + 31;
  const [front, behind] = [middle - 13, middle + 13];
  const stack = (x: number): Mark[] => row([1.6, 1.6, 1.6], x, y - 4, 8, 1);
  return [
    line({ x: at.x + 2, y }, { x: at.x + 60, y }, { weight: LINE.thick }),
    ...stack(front),
    ...stack(behind),
    circle({ x: middle, y }, 4, { weight: LINE.thick }),
    circle({ x: middle, y }, 1.4),
    text({ x: at.x + 1, y: y - 1.4 }, 'front', { size: SIZE.label }),
    text({ x: at.x + 61, y: y - 1.4 }, 'rear', { size: SIZE.label, align: 'right' }),
    ...(rearward.length === 0
      ? []
      : [
          ...arrow({ x: front, y: y - 6.2 }, { x: behind, y: y - 6.2 }),
          label({ x: middle, y: y - 7.6 }, piecesWords(rearward, speech)),
        ]),
    ...(forward.length === 0
      ? []
      : [
          ...arrow({ x: behind, y: y + 6.2 }, { x: front, y: y + 6.2 }),
          label({ x: middle, y: y + 9.6 }, piecesWords(forward, speech)),
        ]),
  ];
}
