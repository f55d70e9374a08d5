/** The car weighed: centre of gravity from the pads of a sheet, and its height where an axle was raised. */
import type { Car } from '../car/read.ts';
import { emptyPads, wrongTotal } from '../flatfloor/doubts.ts';
import { floorCarOf } from '../flatfloor/floor-car.ts';
import type { Pads } from '../flatfloor/shares.ts';
import { sheetsOf } from '../flatfloor/sheet.ts';
import { Floor } from '../flatfloor/stand.ts';
import { heightByRaisedAxle, type Measured, type PadMasses, weighedOnPads } from '../flatfloor/weighing.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Problem } from '../measured/problem.ts';
import { spokenAmount } from '../units/show.ts';
import type { Origin, Working } from '../working/working.ts';
import { JACKING_CAUTION, STANDING_CAUTION } from './cautions.ts';
import { type ReadingWorking, readingWorking } from './floor.ts';
import { isFloorRefusal, problemOfDoubt } from './floor-refusal.ts';

export interface WeighingAsked {
  /** Sheet whose pads are meant; left out, the wheel scales of the survey. */
  readonly sheet?: string;
  /** Raised axle: mass on both front pads with the rear ones raised by the lift; spreads beside. */
  readonly raised?: { readonly front: Measured; readonly lift: Measured };
  /** Name of a figure whose working is wanted: `cross`, `behindFront`. */
  readonly working?: string;
}

export interface WeighingFigure extends Measured {
  readonly id: string;
  readonly words: string;
  readonly unit: string;
}

export interface WeighingReached {
  readonly reached: true;
  readonly figures: readonly WeighingFigure[];
  /** Of the figure that was asked for by name, if there is one of that name. */
  readonly working?: ReadingWorking;
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export type WeighingAnswer =
  | WeighingReached
  | { readonly reached: false; readonly message: string; readonly problems?: readonly Problem[] };

const PAD = { frontLeft: 'm_fl', frontRight: 'm_fr', rearLeft: 'm_rl', rearRight: 'm_rr' } as const;

/** Lengths that the standing car gives. */
const SURVEYED: Origin = { kind: 'constant', what: 'the car as surveyed, on its wheels' };

const WHEELS = ['frontLeft', 'frontRight', 'rearLeft', 'rearRight'] as const;

/** Spread of wheelbase and track from the survey's points, m: common practice, no source. */
const LENGTH_SPREAD = 1e-3;

export function weighing(car: Car, asked: WeighingAsked): WeighingAnswer {
  const numbers = new Numbers(car.values);
  try {
    const prepared = floorCarOf(car.form, numbers);
    const sheet = sheetsOf(car.form, prepared, [], numbers).find(({ name }) => name === asked.sheet);
    const readings = sheet?.readings;
    const empty = sheet === undefined ? [] : emptyPads(sheet);
    if (empty.length > 0)
      return {
        reached: false,
        message: empty.map(({ message, remedy }) => `${message} ${remedy}`).join(' '),
        problems: empty.map(problemOfDoubt),
      };
    const pads: Partial<Record<(typeof WHEELS)[number], Measured>> = {};
    const from: Partial<Record<keyof Pads, Origin>> = {};
    for (const wheel of WHEELS) {
      const end = wheel.startsWith('front') ? car.form.front : car.form.rear;
      const { scale } = end[wheel.endsWith('Left') ? 'left' : 'right'];
      const read =
        readings === undefined
          ? { value: numbers.of(scale), u: scale.u, path: scale.path }
          : readings.find(({ id }) => id === `weight.${wheel}`);
      if (read === undefined)
        return { reached: false, message: `The sheet has no weight for ${wheel}: all four are needed.` };
      pads[wheel] = read;
      from[PAD[wheel]] = { kind: 'reading', path: read.path };
    }
    const bars = { front: false, rear: false };
    const floor = new Floor(prepared);
    const standing = floor.stand({ changes: prepared.changes.none(), bars });
    const off = sheet === undefined ? [] : wrongTotal(sheet, floor.stand(sheet.state));
    const length = (id: string): Measured => ({ value: standing.readings.get(id)!.value, u: LENGTH_SPREAD });
    const wheelbase = {
      value: (length('wheelbase.left').value + length('wheelbase.right').value) / 2,
      u: LENGTH_SPREAD,
    };
    const whole = pads as PadMasses<Measured>;
    const lengths = { wheelbase, frontTrack: length('track.front'), rearTrack: length('track.rear') };
    const weighed = (working?: Working) =>
      weighedOnPads(whole, lengths, working, { ...from, L: SURVEYED, t_f: SURVEYED, t_r: SURVEYED });
    const is = weighed();
    const { raised } = asked;
    const cannot = raised === undefined ? undefined : raisedWrong(raised, whole, wheelbase);
    if (cannot !== undefined) return { reached: false, message: cannot };
    const raisedBy =
      raised === undefined
        ? undefined
        : (working?: Working) => heightOf(car, numbers, { pads: whole, wheelbase, ...raised }, working);
    const height = raisedBy?.();
    const figures: readonly WeighingFigure[] = [
      { id: 'total', words: 'weight of the whole', unit: 'kg', ...is.total },
      { id: 'behindFront', words: 'centre of gravity behind the front axle', unit: 'm', ...is.behindFront },
      { id: 'leftOfMiddle', words: 'centre of gravity left of the middle', unit: 'm', ...is.leftOfMiddle },
      { id: 'cross', words: 'cross weight (right front and left rear)', unit: 'share', ...is.cross },
      { id: 'frontShare', words: 'front share', unit: 'share', ...is.frontShare },
      { id: 'leftShare', words: 'left share', unit: 'share', ...is.leftShare },
      ...(height === undefined
        ? []
        : [
            {
              id: 'height',
              words: 'height of the centre of gravity',
              unit: 'm',
              value: height.value,
              u: height.u,
            },
            { id: 'tilt', words: 'tilt with the axle raised', unit: 'rad', ...height.tilt },
          ]),
    ];
    const figure = figures.find(({ id }) => id === asked.working);
    const working =
      figure === undefined
        ? undefined
        : readingWorking(car, figure.id, (steps) => {
            (figure.id === 'height' || figure.id === 'tilt' ? raisedBy! : weighed)(steps);
            return figure.value;
          });
    return {
      reached: true,
      figures,
      ...(working === undefined ? {} : { working }),
      notes: [
        ...(asked.raised === undefined
          ? [
              'The height needs a raised axle: solid links for dampers, tanks full or empty, wheels free to roll, lift as far as stands allow.',
            ]
          : ['Links in place of dampers, or the car sinks on its springs and the height comes out wrong.']),
        ...off.map(({ message, remedy }) => `${message} ${remedy}`),
        'Spreads take each reading for itself; an error that all pads share leaves the centre where it is.',
      ],
      cautions: [JACKING_CAUTION, STANDING_CAUTION],
    };
  } catch (reason) {
    if (isFloorRefusal(reason)) return { reached: false, message: reason.message };
    throw reason;
  }
}

/** Steeper than this no stand holds a car, and no shop lifts one: part of the wheelbase. */
const STEEPEST = 0.5;

/** What a raised rear axle cannot read, in words. */
function raisedWrong(
  { front, lift }: NonNullable<WeighingAsked['raised']>,
  { frontLeft, frontRight, rearLeft, rearRight }: PadMasses<Measured>,
  wheelbase: Measured,
): string | undefined {
  const kg = (mass: number): string => spokenAmount(mass, 'kg', 1);
  const [level, total] = [frontLeft.value + frontRight.value, rearLeft.value + rearRight.value];
  if (lift.value > STEEPEST * wheelbase.value)
    return `A lift of ${spokenAmount(lift.value, 'm', 0)} on a wheelbase of ${spokenAmount(wheelbase.value, 'm', 0)} cannot be meant: raise by 250 to 600 mm, and type it in its unit.`;
  if (front.value > level + total)
    return `The front pads cannot show ${kg(front.value)}: the whole car is ${kg(level + total)}.`;
  const u = Math.hypot(front.u, frontLeft.u, frontRight.u);
  if (front.value < level - 3 * u)
    return `With the rear raised the front pads show more than on the level, ${kg(level)}; ${kg(front.value)} was read. Was the front raised, or a pad not free underneath?`;
  return undefined;
}

function heightOf(
  car: Car,
  numbers: Numbers,
  test: {
    readonly pads: PadMasses<Measured>;
    readonly wheelbase: Measured;
    readonly front: Measured;
    readonly lift: Measured;
  },
  working?: Working,
) {
  const { front, rear } = car.form;
  const radius = ({ left, right }: typeof front): Measured => ({
    value: (numbers.of(left.wheel.loadedRadius) + numbers.of(right.wheel.loadedRadius)) / 2,
    u: Math.hypot(left.wheel.loadedRadius.u, right.wheel.loadedRadius.u) / 2,
  });
  const { frontLeft, frontRight, rearLeft, rearRight } = test.pads;
  const sum = (...of: readonly Measured[]): Measured => ({
    value: of.reduce((all, each) => all + each.value, 0),
    u: Math.hypot(...of.map(({ u }) => u)),
  });
  const radii: Origin = { kind: 'constant', what: 'mean of the loaded radii of the axle, from the file' };
  return heightByRaisedAxle(
    {
      wheelbase: test.wheelbase,
      frontRadius: radius(front),
      rearRadius: radius(rear),
      total: sum(frontLeft, frontRight, rearLeft, rearRight),
      frontLevel: sum(frontLeft, frontRight),
      frontRaised: test.front,
      lift: test.lift,
    },
    working,
    {
      L: SURVEYED,
      r_f: radii,
      r_r: radii,
      m: { kind: 'constant', what: 'sum of the four pads' },
      m_r: { kind: 'constant', what: 'sum of the rear pads' },
      m_f: { kind: 'asked', what: 'front pads, rear axle raised' },
      H: { kind: 'asked', what: 'lift' },
    },
  );
}
