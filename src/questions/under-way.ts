/** Load transfer, attitude, heights against speed: the car under way, with what each hangs on. */
import type { Car } from '../car/read.ts';
import type { CarriedOn } from '../flatfloor/under-way/carried.ts';
import { putHeights, speedName } from '../flatfloor/under-way/put-heights.ts';
import { putTransfer } from '../flatfloor/under-way/put-transfer.ts';
import { type Doing, isThrown } from '../loadpath/loads/doing.ts';
import type { AskedAmount } from '../measured/asked-reading.ts';
import { LOAD_CAUTION, STANDING_CAUTION, UNDERSIDE_CAUTION } from './cautions.ts';
import { AskedList, floorAnswer, floorRefused, type ToldAnswer, type ToldOptions } from './floor-answer.ts';

export interface UnderWayAsked extends ToldOptions {
  readonly doing: Doing;
  /** Fuel aboard, where it is not that of the survey. */
  readonly fuel?: AskedAmount;
}

const NO_HEIGHT =
  'The file has no body: without the height of the centre of gravity no load moves from wheel to wheel. Measure it by the raised axle and write it under body, centreOfGravityHeight.';

function aboard(car: Car, fuel: AskedAmount | undefined) {
  const list = new AskedList();
  const name = list.add(fuel, { name: 'fuel', means: 'fuel aboard', unit: 'm^3', usual: 'measuring can' });
  const { numbers, asked } = list.on(car);
  const reading = asked(name);
  const form = car.form.fuel;
  const carried: CarriedOn | undefined =
    reading === undefined || form === undefined ? undefined : { form, fuel: reading };
  return { numbers, carried };
}

const noFuel = (car: Car, fuel: AskedAmount | undefined): boolean =>
  fuel !== undefined && car.form.fuel === undefined;

const NO_FUEL =
  'The file has no fuel: where it sits and how much was aboard at the survey must be known. Write both under fuel in the car file.';

const THROWN =
  'A strike or forces typed at tyres throw the car: load transfer is asked of a car that settles. Leave out --kerb and --contact.';

export function transferUnder(car: Car, asked: UnderWayAsked): ToldAnswer {
  if (car.form.body === undefined) return floorRefused(NO_HEIGHT);
  if (noFuel(car, asked.fuel)) return floorRefused(NO_FUEL);
  if (isThrown(asked.doing)) return floorRefused(THROWN);
  const { numbers, carried } = aboard(car, asked.fuel);
  const { doing } = asked;
  return floorAnswer(
    numbers,
    (each, put, working) => putTransfer(car.form, doing, carried, each, put, working),
    asked,
    (figures) => {
      const lifted = figures.filter(({ id, value }) => id === 'tyreLoad' && value === 0).map(({ of }) => of);
      const turns = doing.lateral !== 0;
      return {
        notes: [
          ...(lifted.length > 0
            ? [`Off the ground: ${lifted.join(', ')}. Its axle can move no more load.`]
            : []),
          ...(turns
            ? [
                'The handbook lets each axle’s tyres bear the couple of its unsprung mass, as a beam axle does, and squash under the springs’ load alone. With links most of that couple leans the tub, and tyres squash under all that they carry: both are told as more roll. Where the car in equilibrium differs by more than these two, a stop, a lifted wheel, the jacking of the links or the car having sunk under downforce is why.',
              ]
            : []),
          'What goes through the links comes at once, what goes by springs and bars comes as the body leans: only the second part is changed by springs, bars and dampers.',
          ...airNote(car, doing.speed),
        ],
        cautions: [LOAD_CAUTION, STANDING_CAUTION],
      };
    },
  );
}

const airNote = (car: Car, speed: number): string[] =>
  speed > 0 && car.form.air === undefined
    ? ['The file tells no forces of the air, so the speed adds neither downforce nor drag.']
    : [];

export interface HeightsAsked extends UnderWayAsked {
  readonly speeds: readonly number[];
  /** A point counts as touching at this height above the road. */
  readonly clearance: number;
}

/** Speeds that are looked at where none are asked for, m/s. */
export const USUAL_SPEEDS: readonly number[] = [0, 100, 150, 200, 250].map((each) => each / 3.6);

export function heightsAgainstSpeed(car: Car, asked: HeightsAsked): ToldAnswer {
  if (car.form.body === undefined) return floorRefused(NO_HEIGHT);
  if (noFuel(car, asked.fuel)) return floorRefused(NO_FUEL);
  if (isThrown(asked.doing)) return floorRefused(THROWN);
  if (new Set(asked.speeds.map(speedName)).size < asked.speeds.length) {
    return floorRefused('Two of the speeds are the same to 1 km/h.');
  }
  const { numbers, carried } = aboard(car, asked.fuel);
  const { doing, speeds, clearance } = asked;
  if (!(clearance >= 0))
    return floorRefused(
      'What counts as touching is a height above the road: not below nothing, such as 3 mm.',
    );
  return floorAnswer(
    numbers,
    (each, put, working) =>
      putHeights(
        { car: car.form, doing, speeds, clearance, ...(carried === undefined ? {} : { carried }) },
        each,
        put,
        working,
      ),
    asked,
    (figures) => {
      const low = figures.filter(
        ({ of, id, value }) =>
          of.endsWith('km/h') && id in (car.form.underside?.points ?? {}) && value <= clearance,
      );
      return {
        notes: [
          ...(car.form.underside === undefined
            ? [
                'The file tells no points of the underside, so no heights: write them under underside, points.',
              ]
            : []),
          ...low.map(({ of, id }) => `At ${of} ${id} is on the road.`),
          ...airNote(car, Math.max(...speeds)),
          'Downforce and its front share are taken by the square of speed at any height. Near the road both change with height and rake, and a sealed floor may lose all of it at once: leave room.',
          'The road is flat and the wheels stand still on it: bumps, kerbs and the body’s swing come on top.',
        ],
        cautions: [UNDERSIDE_CAUTION, STANDING_CAUTION],
      };
    },
  );
}
