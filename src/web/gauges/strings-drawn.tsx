/**
 * Strings beside the wheels in plan, with the distances where the rule is put.
 *
 * A string stands where it was measured from the centre plane, or else a hand's breadth outside the wheels: that
 * distance is not to scale, the figure beside it is what was read.
 */
import type { Vec3 } from '../../maths/vec3.ts';
import type { drawCar, GaugeQuestion } from '../../questions/index.ts';
import { plain, type Speech, spokenUnit } from '../../units/show.ts';
import { fromSI } from '../../units/unit.ts';
import type { OwnedFigure } from '../day/figures.tsx';
import type { PlanLabel } from '../patch/plan-drawing.tsx';
import { WHEEL_KEYS, WHEEL_WORDS, type WheelKey } from '../patch/words.ts';
import type { Spot } from '../scene/look.ts';
import { spoken } from '../spoken.ts';
import { toeSide, toeWords } from './gauge-drawing.tsx';

type Asked = Extract<GaugeQuestion, { name: 'strings' }>['asked'] | undefined;

/** Outside the outermost wheel of its side, m. */
const BREADTH = 0.16;
/** How far a string goes on beyond the wheel centres, m. */
const BEYOND = 0.5;

interface AtWheel {
  readonly key: WheelKey;
  /** Outer face of the rim at its front and its rear edge, and the string beside each. */
  readonly rims: readonly [Vec3, Vec3];
  readonly strings: readonly [Vec3, Vec3];
}

export interface StringsAt {
  readonly ends: readonly (readonly [Vec3, Vec3])[];
  readonly wheels: readonly AtWheel[];
  /** Where the words of each wheel stand. */
  readonly labels: Readonly<Record<string, Vec3>>;
}

const besideName = (wheel: WheelKey): string => `beside ${wheel}`;

export function stringsAt({ corners }: ReturnType<typeof drawCar>, asked: Asked): StringsAt {
  const face = (tyre: (typeof corners)[number]['tyre']): number =>
    Math.abs(tyre.centre[1]) + tyre.tyreWidth / 2;
  const ends: [Vec3, Vec3][] = [];
  const wheels: AtWheel[] = [];
  for (const side of ['left', 'right'] as const) {
    const own = corners.filter(({ wheel }) => wheel.side === side);
    const sign = side === 'left' ? 1 : -1;
    const [front, rear] = (['front', 'rear'] as const).map(
      (end) => own.find(({ wheel }) => wheel.end === end)!.tyre,
    ) as [(typeof own)[number]['tyre'], (typeof own)[number]['tyre']];
    const outermost = Math.max(face(front), face(rear));
    const read = asked?.strings?.find((each) => each.side === side);
    const stands = read !== undefined && Math.min(read.front.value, read.rear.value) > outermost;
    const [atFront, atRear] = stands
      ? [read.front.value, read.rear.value]
      : [outermost + BREADTH, outermost + BREADTH];
    const [ahead, behind] = [front.centre[0], rear.centre[0]];
    const at = (x: number, z: number): Vec3 => {
      const part = (x - behind) / (ahead - behind);
      return [x, sign * (atRear + part * (atFront - atRear)), z];
    };
    ends.push([at(ahead + BEYOND, front.centre[2]), at(behind - BEYOND, rear.centre[2])]);
    for (const [end, tyre] of [['front', front] as const, ['rear', rear] as const]) {
      const [x, , z] = tyre.centre;
      const places = [x + tyre.rimDiameter / 2, x - tyre.rimDiameter / 2] as const;
      wheels.push({
        key: `${end}${side === 'left' ? 'Left' : 'Right'}`,
        rims: [
          [places[0], sign * face(tyre), z],
          [places[1], sign * face(tyre), z],
        ],
        strings: [at(places[0], z), at(places[1], z)],
      });
    }
  }
  const labels = Object.fromEntries(
    wheels.map(({ key, strings: [a, b] }) => [
      besideName(key),
      [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2, a[2]] as Vec3,
    ]),
  );
  return { ends, wheels, labels };
}

const readAt = (asked: Asked, key: WheelKey) =>
  asked?.rims.find(({ wheel }) => `${wheel.end} ${wheel.side}` === WHEEL_WORDS[key]);

const distance = (metres: number, speech: Speech): string =>
  plain(fromSI(metres, spokenUnit('m', speech)), speech === 'mm-N' ? 1 : 3);

/** Outboard of the string: the toe, and on tall paper, nose up, the two distances over and under it. */
export const besideStrings = (
  figures: readonly OwnedFigure[],
  asked: Asked,
  speech: Speech,
): readonly PlanLabel[] =>
  WHEEL_KEYS.flatMap((key) => {
    const toe = figures.find(({ of, id }) => of === WHEEL_WORDS[key] && id === 'toeAtRim');
    const read = readAt(asked, key);
    const words = toeWords(toe, speech);
    if (read === undefined || toe === undefined || words === undefined) return [];
    const { value, unit, spread } = toe;
    const lines: PlanLabel['lines'] = [
      { text: words, large: true, only: 'wide' },
      { text: distance(read.front.value, speech), only: 'tall' },
      { text: toeSide(toe), only: 'tall' },
      { text: spoken(Math.abs(value), unit, speech, spread?.u).text, large: true, only: 'tall' },
      { text: distance(read.rear.value, speech), only: 'tall' },
    ];
    return [{ of: besideName(key), lines }];
  });

interface Props {
  readonly strings: StringsAt;
  readonly asked: Asked;
  readonly at: (point: Vec3) => Spot;
  readonly wide: boolean;
  readonly speech: Speech;
}

export function Strings({ strings, asked, at, wide, speech }: Props) {
  return (
    <g className="strings">
      {strings.ends.map(([from, to], k) => {
        const [a, b] = [at(from), at(to)];
        return (
          <line key={k === 0 ? 'left' : 'right'} className="string" x1={a.x} y1={a.y} x2={b.x} y2={b.y} />
        );
      })}
      {strings.wheels.map(({ key, rims, strings: beside }) => {
        const read = readAt(asked, key);
        return ([0, 1] as const).map((k) => {
          const [rim, string] = [at(rims[k]), at(beside[k])];
          return (
            <g key={`${key} ${k}`}>
              <line className="string-distance" x1={rim.x} y1={rim.y} x2={string.x} y2={string.y} />
              {wide && read !== undefined && (
                // nose to the left: forward of the front edge, behind the rear one
                <text
                  x={string.x + (k === 0 ? -8 : 8)}
                  y={(rim.y + string.y) / 2 + 6}
                  textAnchor={k === 0 ? 'end' : 'start'}
                >
                  {distance((k === 0 ? read.front : read.rear).value, speech)}
                </text>
              )}
            </g>
          );
        });
      })}
    </g>
  );
}
