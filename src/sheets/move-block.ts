/**
 * One move of the adjustment card: number, box to tick, what is turned and by how much in large letters, how, the
 * drawing, and boxes for lock and initials.
 *
 * In    the move, its number
 * Out   one block, never torn
 */
import { type Act, type CardMove, tubeWords } from '../questions/adjustment-card.ts';
import { plain, type Speech, spokenAmount } from '../units/show.ts';
import { adjusterDrawing, DRAWING_HEIGHT, DRAWING_WIDTH } from './adjuster-drawing.ts';
import { lengthSaid, pressureSaid } from './floor-words.ts';
import type { Block } from './lay-out.ts';
import { LINE, line, type Mark, type PaperPoint, rectangle, SIZE, text } from './page.ts';
import { piecesWords } from './shim-drawing.ts';
import { shortened, type TextMeasure, wrapped } from './text-measure.ts';

const HEIGHT = DRAWING_HEIGHT + 3.4;
const NUMBER = 11;
const BOXES = 15;
const LARGE = 4.6;

export function moveBlock(
  move: CardMove,
  number: number,
  speech: Speech,
  width: number,
  measure: TextMeasure,
): Block {
  const { act, adjuster } = move;
  const words = width - NUMBER - DRAWING_WIDTH - BOXES - 4;
  const drawingAt = NUMBER + words + 2;
  const boxesAt = width - BOXES;
  const [large, ...rest] = act === undefined ? [move.words] : sayings(act, move, speech);
  return {
    height: HEIGHT,
    marks: (at) => [
      text({ x: at.x + 0.5, y: at.y + 6.2 }, String(number), { size: SIZE.title, weight: 'bold' }),
      rectangle({ x: at.x + 0.8, y: at.y + 9, width: 7, height: 7 }, { weight: LINE.thick }),
      text({ x: at.x + 4.3, y: at.y + 19 }, 'done', { size: SIZE.label, align: 'middle' }),
      ...lines(at, adjuster, large!, rest, words, measure),
      ...(act === undefined
        ? []
        : adjusterDrawing(act, move.units, { x: at.x + drawingAt, y: at.y + 1.2 }, speech)),
      ...boxes({ x: at.x + boxesAt, y: at.y }, [checkOf(move), 'initials']),
      line({ x: at.x, y: at.y + HEIGHT }, { x: at.x + width, y: at.y + HEIGHT }, { weight: LINE.thin }),
    ],
  };
}

/** What is looked at before the move is done with. */
const checkOf = ({ act, locked }: CardMove): string =>
  locked ? 'locked' : act?.by === 'stack' || act?.by === 'shift' ? 'bolts tight' : 'seen by';

function lines(
  at: PaperPoint,
  name: string,
  large: string,
  rest: readonly string[],
  width: number,
  measure: TextMeasure,
): Mark[] {
  const x = at.x + NUMBER;
  const set = { size: LARGE, weight: 'bold', width } as const;
  const heads = wrapped(large, set, measure).slice(0, 2);
  const first = at.y + 10.4;
  const small = first + heads.length * LARGE * 1.15 - 0.6;
  return [
    text({ x, y: at.y + 5 }, shortened(name, { ...set, size: SIZE.figure, weight: 'regular' }, measure), {
      size: SIZE.figure,
    }),
    ...heads.map((words, k) =>
      text({ x, y: first + k * LARGE * 1.15 }, words, { size: LARGE, weight: 'bold' }),
    ),
    ...rest
      .flatMap((words) => wrapped(words, { size: SIZE.small, weight: 'regular', width }, measure))
      .slice(0, heads.length > 1 ? 2 : 3)
      .map((words, k) => text({ x, y: small + k * SIZE.small * 1.25 }, words, { size: SIZE.small })),
  ];
}

function boxes(at: PaperPoint, names: readonly string[]): Mark[] {
  return names.flatMap((name, k) => [
    rectangle({ x: at.x + 1, y: at.y + 3.6 + k * 11, width: BOXES - 1, height: 7.2 }),
    text({ x: at.x + BOXES / 2 + 0.5, y: at.y + 2.9 + k * 11 }, name, { size: SIZE.label, align: 'middle' }),
  ]);
}

const counted = (units: number, unit: string): string => {
  const n = Math.abs(units);
  return `${plain(n, 0)} ${n === 1 ? unit : `${unit}s`}`;
};

/** The first in large letters, the others below it. */
function sayings(act: Act, { units, unit }: CardMove, speech: Speech): string[] {
  switch (act.by) {
    case 'tube':
    case 'end':
      return [
        `${counted(units, unit)} ${act.longer ? 'longer' : 'shorter'}`,
        turnWords(act),
        `${act.longer ? '+' : '−'}${lengthSaid(act.length, speech)}${turnsWords(units, act.perTurn)}${act.size === undefined ? '' : `; ${act.size}`}`,
        engagedWords(act, speech),
      ];
    case 'platform':
      return [
        `${counted(units, unit)} ${act.tighter ? 'tighter' : 'slacker'}`,
        `${lengthSaid(act.length, speech)} ${act.tighter ? 'towards the spring' : 'away from the spring'}${turnsWords(units, act.perTurn)}`,
        `thread left that way, then: ${lengthSaid(act.left, speech)}`,
      ];
    case 'anchor':
      return [
        `${counted(units, unit)} ${act.tighter ? 'tighter' : 'slacker'}`,
        `${spokenAmount(act.angle, 'rad', 2)} of bar`,
        `screw left that way, then: ${lengthSaid(act.left, speech)}`,
      ];
    case 'splines':
      return [
        'bar out, and back on other teeth',
        `${spokenAmount(act.angle, 'rad', 2)} in the way that winds it; + on, − back`,
      ];
    case 'stack':
      return [
        [
          ...(act.taken.length === 0 ? [] : [`out ${piecesWords(act.taken, speech)}`]),
          ...(act.put.length === 0 ? [] : [`in ${piecesWords(act.put, speech)}`]),
        ].join('; '),
        `at the ${act.at} joint; at most ${lengthSaid(act.most, speech)} of shims`,
        'bolts by the maker’s figure',
      ];
    case 'shift':
      return [
        `shift ${lengthSaid(act.length, speech)} ${units > 0 === (act.moves === 'upper wishbone') ? 'to the front' : 'to the rear'}`,
        `${act.moves}, inner joints: ${shiftWords(act, speech)}`,
        'bolts by the maker’s figure',
      ];
    case 'pressure':
      return [`to ${pressureSaid(act.to, speech)}`, `from ${pressureSaid(act.from, speech)}, by gauge`];
    case 'ballast':
      return [
        `${act.to > act.from ? 'put in' : 'take out'} ${counted(units, unit)}`,
        'bolted as the rules ask',
      ];
  }
}

function turnWords({ by, way, longer, tube }: Extract<Act, { by: 'tube' | 'end' }>): string {
  if (way === undefined) return 'its hands are not in the file: look before you turn';
  return by === 'tube'
    ? tubeWords(way, tube?.rightHand)
    : `end ${longer ? 'out' : 'in'}, ${way} seen from its eye`;
}

/** Turns beside a count that is no longer seen at a glance. */
function turnsWords(units: number, perTurn: number): string {
  const n = Math.abs(units);
  if (n < perTurn) return '';
  const whole = Math.floor(n / perTurn);
  const rest = n - whole * perTurn;
  return ` (${whole} ${whole === 1 ? 'turn' : 'turns'}${rest === 0 ? '' : ` and ${rest}`})`;
}

function engagedWords({ ends }: Extract<Act, { by: 'tube' | 'end' }>, speech: Speech): string {
  const [first, second] = ends;
  const said = (of: NonNullable<typeof first>): string =>
    `${lengthSaid(of.engagedAfter, speech)} (least ${lengthSaid(of.least, speech)})`;
  const same = second === undefined || JSON.stringify(first) === JSON.stringify(second);
  return `thread engaged, then: ${said(first!)}${same ? '' : ` and ${said(second)}`}`;
}

function shiftWords({ forward, rearward }: Extract<Act, { by: 'shift' }>, speech: Speech): string {
  return [
    ...(forward.length === 0 ? [] : [`${piecesWords(forward, speech)} from behind them to in front`]),
    ...(rearward.length === 0 ? [] : [`${piecesWords(rearward, speech)} from in front of them to behind`]),
  ].join('; ');
}
