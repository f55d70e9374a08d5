/** Alignment by strings and plates, and bump steer by the gauge: what is read at rims and feelers turned into angles. */
import type { Car } from '../car/read.ts';
import { wantedOf } from '../flatfloor/sheet.ts';
import { bumpSteer, rimFromCentre, stringYaw, toeFromPlates, toeFromString } from '../flatfloor/strings.ts';
import type { Measured } from '../flatfloor/weighing.ts';

import { Numbers } from '../loadpath/numbers.ts';
import { linkageOf } from '../loadpath/sprung-corner.ts';
import { spreadOf } from '../measured/spread.ts';
import { spokenAmount } from '../units/show.ts';
import { SET_UP_CAUTION, STANDING_CAUTION } from './cautions.ts';
import type { End, Wheel } from './figure.ts';
import { type GaugedAnswer, type GaugedFigure, gauged, gaugedRefused } from './gauged.ts';
import { isRefusal } from './refusal.ts';

export interface RimRead {
  readonly wheel: Wheel;
  /** String to the front and to the rear edge of the rim. */
  readonly front: Measured;
  readonly rear: Measured;
}

export interface PlatesRead {
  readonly end: End;
  /** Tape in front of the wheels and behind them. */
  readonly front: Measured;
  readonly rear: Measured;
}

/** A string from the car's centre plane, at the front axle and at the rear one. */
export interface StringRead {
  readonly side: Wheel['side'];
  readonly front: Measured;
  readonly rear: Measured;
}

export interface StringsAsked {
  readonly rims: readonly RimRead[];
  /** Left out: the strings are taken as parallel to the centre plane. */
  readonly strings?: readonly StringRead[];
  readonly plates?: readonly PlatesRead[];
  /** Between the two places on a rim, or of the tape on the plates; left out, the diameter of the file. */
  readonly across?: Measured;
}

const SIDES = ['left', 'right'] as const;
const ENDS = ['front', 'rear'] as const;
const wordsOf = ({ end, side }: Wheel): string => `${end} ${side}`;
const keyOf = ({ end, side }: Wheel): string => `${end}${side === 'left' ? 'Left' : 'Right'}`;

/** Toe beyond which a reading is looked at again before it is used, rad: common practice, no source. */
const MUCH = (2 * Math.PI) / 180;
/** Readings of a rim further apart than this are of two things, m. */
const TOO_FAR = 0.05;

export function alignment(car: Car, asked: StringsAsked): GaugedAnswer {
  const numbers = new Numbers(car.values);
  const { rims, strings = [], plates = [] } = asked;
  const bad = [...rims, ...plates].find(({ front, rear }) => !(front.value > 0 && rear.value > 0));
  if (bad !== undefined) return gaugedRefused('A distance from string or tape is above nothing.');
  const far = rims.find(({ front, rear }) => Math.abs(front.value - rear.value) > TOO_FAR);
  if (far !== undefined) {
    return gaugedRefused(
      `The two distances at the ${wordsOf(far.wheel)} rim are more than 50 mm apart: that is no toe. Read both from the same string.`,
    );
  }
  const rimOf = (wheel: Wheel): Measured => {
    if (asked.across !== undefined) return asked.across;
    const reading = car.form[wheel.end][wheel.side].wheel.rimDiameter;
    return { value: numbers.of(reading), u: reading.u };
  };
  const figures: GaugedFigure[] = [];
  const toes = new Map<string, Measured>();
  const yaws = new Map(strings.map((each) => [each.side, yawOf(car, numbers, each)]));
  for (const [side, yaw] of yaws) {
    figures.push(gauged(`${side} string`, 'rad', 'yaw', 'opens forward from the centre plane', yaw));
  }
  for (const read of rims) {
    const { wheel, front, rear } = read;
    const across = rimOf(wheel);
    const raw = toeFromString({ front, rear, across });
    const yaw = yaws.get(wheel.side);
    const toe: Measured =
      yaw === undefined ? raw : { value: raw.value - yaw.value, u: Math.hypot(raw.u, yaw.u) };
    toes.set(keyOf(wheel), toe);
    figures.push(...ofWheel(wheel, toe, across));
    const string = strings.find((each) => each.side === wheel.side)?.[wheel.end];
    if (string !== undefined) {
      const words = 'middle of the rim from the centre plane';
      figures.push(gauged(wordsOf(wheel), 'm', 'fromCentre', words, rimFromCentre(string, read)));
    }
  }
  for (const end of ENDS) {
    const [left, right] = SIDES.map((side) => toes.get(keyOf({ end, side })));
    if (left === undefined || right === undefined) continue;
    const u = Math.hypot(left.u, right.u);
    figures.push(
      gauged(`${end} axle`, 'rad', 'total', 'toe of both wheels together (positive: in)', {
        value: left.value + right.value,
        u,
      }),
      gauged(`${end} axle`, 'rad', 'points', 'points to the left of the centre plane', {
        value: (right.value - left.value) / 2,
        u: u / 2,
      }),
    );
  }
  for (const { end, front, rear } of plates) {
    const apart = rimOf({ end, side: 'left' });
    const each = toeFromPlates({ front, rear, apart });
    figures.push(
      gauged(`${end} plates`, 'rad', 'toe', 'toe of each wheel, half of both (positive: in)', each),
      gauged(`${end} plates`, 'rad', 'total', 'toe of both wheels together (positive: in)', {
        value: 2 * each.value,
        u: 2 * each.u,
      }),
    );
  }
  return {
    reached: true,
    figures,
    notes: notesOn(car, asked, toes),
    cautions: [SET_UP_CAUTION, STANDING_CAUTION],
  };
}

const ofWheel = (wheel: Wheel, toe: Measured, across: Measured): GaugedFigure[] => [
  gauged(wordsOf(wheel), 'rad', 'toe', 'toe (positive: in)', toe),
  gauged(wordsOf(wheel), 'm', 'toeAtRim', 'the same over the two places on the rim', {
    value: across.value * Math.sin(toe.value),
    u: across.value * Math.cos(toe.value) * toe.u,
  }),
];

function yawOf(car: Car, numbers: Numbers, { side, front, rear }: StringRead): Measured {
  const at = (end: End) => car.form[end][side].points.wheelCentre;
  const [ahead, behind] = [at('front'), at('rear')];
  return stringYaw({
    front,
    rear,
    wheelbase: {
      value: numbers.point(ahead)[0] - numbers.point(behind)[0],
      u: Math.hypot(ahead.x.u, behind.x.u),
    },
  });
}

function notesOn(
  car: Car,
  { rims, strings, plates = [] }: StringsAsked,
  toes: ReadonlyMap<string, Measured>,
): string[] {
  const much = rims.filter(({ wheel }) => Math.abs(toes.get(keyOf(wheel))!.value) > MUCH);
  const wanted = wantedOf(car.form, new Numbers(car.values));
  const other = rims.flatMap(({ wheel }) => {
    const want = wanted.find(({ id }) => id === `toe.${keyOf(wheel)}` || id === `toeAtRim.${keyOf(wheel)}`);
    const toe = toes.get(keyOf(wheel))!;
    return want !== undefined && want.value * toe.value < 0 && Math.abs(toe.value) > 2 * toe.u
      ? [
          `${wordsOf(wheel)} (sheet ${spokenAmount(want.value, want.id.startsWith('toeAt') ? 'm' : 'rad', 2)})`,
        ]
      : [];
  });
  const taken = SIDES.filter(
    (side) =>
      rims.some(({ wheel }) => wheel.side === side) && strings?.some((each) => each.side === side) !== true,
  );
  const parallel =
    taken.length === 1 ? `The ${taken[0]} string is taken as parallel` : 'Strings are taken as parallel';
  const told: readonly (readonly [boolean, string])[] = [
    [
      much.length > 0,
      `More than 2 degrees of toe: ${much.map(({ wheel }) => wordsOf(wheel)).join(', ')}. Look at the readings again: front edge first, then rear.`,
    ],
    [
      other.length > 0,
      `The other way than the sheet wants it: ${other.join(', ')}. Was the front edge read for the rear one?`,
    ],
    [
      taken.length > 0,
      `${parallel} to the centre plane: a string that opens by 1 mm over the wheelbase moves every toe of its side by as much of an angle. Measure from the centre plane to each string at both axles, and that is taken off.`,
    ],
    [rims.length > 0, 'A front edge further from the string than the rear one is toe-in.'],
    [
      plates.length > 0,
      'Plates give the toe of an axle, half of it to each wheel; where the axle points they do not tell.',
    ],
    [
      true,
      'Rims run out: read, roll half a turn, read again and take the mean. Rack centred and held, rolled forward to settle.',
    ],
  ];
  return told.filter(([holds]) => holds).map(([, each]) => each);
}

export interface BumpSteerAsked {
  readonly wheel: Wheel;
  readonly rows: readonly { readonly travel: number; readonly front: Measured; readonly rear: Measured }[];
  /** Between the two feelers. */
  readonly apart: Measured;
}

/** A travel as a row is called: `+10 mm`. */
const travelName = (travel: number): string => `${travel > 0 ? '+' : ''}${spokenAmount(travel, 'm', 1)}`;

export function bumpSteerRead(car: Car, { wheel, rows, apart }: BumpSteerAsked): GaugedAnswer {
  if (rows.length < 2) return gaugedRefused('It takes two rows at least: standing, and one up or down.');
  if (new Set(rows.map(({ travel }) => travelName(travel))).size < rows.length)
    return gaugedRefused('Two of the rows have the same travel to 0.1 mm.');
  const numbers = new Numbers(car.values);
  try {
    const corner = linkageOf(car.form[wheel.end], wheel.side, numbers);
    const plain = rows.map(({ travel, front, rear }) => ({ travel, front: front.value, rear: rear.value }));
    const is = bumpSteer(corner, plain, apart.value);
    const standing = rows.reduce((best, row) => (Math.abs(row.travel) < Math.abs(best.travel) ? row : best));
    const byPoints = spreadOf(
      car.values,
      car.inputs,
      (values, out) => {
        const moved = linkageOf(car.form[wheel.end], wheel.side, new Numbers(values));
        out.set(bumpSteer(moved, plain, apart.value).map(({ geometry }) => geometry));
      },
      rows.length,
      { leaned: numbers.leaned },
    );
    const figures = is.flatMap((row, k): GaugedFigure[] => {
      const own = rows[k]!;
      const points = own === standing ? 0 : byPoints[k]!.u;
      const level = apart.value * Math.cos(row.read);
      const u =
        own === standing
          ? 0
          : Math.hypot(
              Math.hypot(own.front.u, own.rear.u, standing.front.u, standing.rear.u) / level,
              (Math.tan(row.read) * apart.u) / apart.value,
            );
      const of = travelName(row.travel);
      return [
        gauged(of, 'rad', 'read', 'toe from standing, as read', { value: row.read, u }),
        gauged(of, 'rad', 'geometry', 'by the points of the file', { value: row.geometry, u: points }),
        gauged(of, 'rad', 'apart', 'apart', { value: row.apart, u: Math.hypot(u, points) }),
      ];
    });
    const off = figures.filter(({ id, value, u }) => id === 'apart' && Math.abs(value) > 2 * u && u > 0);
    return {
      reached: true,
      figures,
      notes: [
        ...(off.length > 0
          ? [
              `Further apart than two spreads at ${off.map(({ of }) => of).join(', ')}: a point of the track rod or of a wishbone is not where the file has it, or something gives. The heights of the track rod’s ends tell most.`,
            ]
          : ['Gauge and points agree within two spreads of both.']),
        'Feelers are read as they grow when the plate comes nearer, both outboard of the wheel; toe in is positive, bump is positive. The row with the least travel is the one from which all others count.',
        'Spring and damper off or the spring’s load taken, bar off, rack centred and held, tub on stands that do not move.',
      ],
      cautions: [SET_UP_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isRefusal(reason)) return gaugedRefused(reason.message);
    throw reason;
  }
}
