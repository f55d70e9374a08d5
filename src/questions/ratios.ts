/** What the gears do, and which pairs of the stock come nearest to what is wanted. */
import type { Car } from '../car/read.ts';
import type { Teeth } from '../car/teeth.ts';
import { type Chosen, chooseSet } from '../flatfloor/ratios/choose.ts';
import { drivingOf, resistanceAt } from '../flatfloor/ratios/driving.ts';
import { putRatios } from '../flatfloor/ratios/put-ratios.ts';
import { rollingOf, speedAt } from '../flatfloor/ratios/speed.ts';
import { gearRatio, overallRatio } from '../flatfloor/ratios/teeth.ts';
import { reachOf, thrustAt, topSpeed } from '../flatfloor/ratios/thrust.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { AskedAmount } from '../measured/asked-reading.ts';
import { GEARBOX_CAUTION, STANDING_CAUTION } from './cautions.ts';
import {
  AskedList,
  floorAnswer,
  floorRefused,
  type ToldAnswer,
  type ToldOptions,
  type ToldReached,
} from './floor-answer.ts';
import type { QuestionNumbers } from './floor-figures.ts';

export interface RatiosAsked extends ToldOptions {
  /** Engine speed at which gears are changed; left out, the limit. */
  readonly at?: AskedAmount;
  /** Speeds wanted at it, first gear first: the nearest set of the stock is then looked at. */
  readonly targets?: readonly number[];
  /** Most pairs that may be changed; left out, all. */
  readonly changes?: number;
  /** Other final drives of the stock too. */
  readonly finals?: boolean;
  /** These pairs, whatever is fitted, first gear first. */
  readonly pairs?: readonly Teeth[];
  readonly final?: Teeth;
}

export interface ChosenSet extends Chosen {
  readonly final: Teeth;
}

export interface RatiosReached extends ToldReached {
  readonly at: number;
  readonly pairs: readonly Teeth[];
  readonly final: Teeth;
  /** Where targets were asked for: the nearest set, then those with other final drives. */
  readonly chosen?: readonly ChosenSet[];
  readonly targets?: readonly number[];
  /** Road speed by engine speed, a row an engine speed, a column a gear. */
  readonly chart: readonly { readonly engine: number; readonly speeds: readonly number[] }[];
  /** Thrust along the speeds, gear by gear, and what resists; empty without a brake sheet. */
  readonly thrust: readonly ThrustLine[];
  readonly resistance: readonly ThrustPoint[];
}

export interface ThrustPoint {
  readonly speed: number;
  readonly force: number;
}

export interface ThrustLine {
  readonly gear: number;
  readonly points: readonly ThrustPoint[];
}

export type RatiosAnswer = RatiosReached | Extract<ToldAnswer, { reached: false }>;

export function ratiosOf(car: Car, asked: RatiosAsked): RatiosAnswer {
  const { gearbox, rolling, engine } = car.form;
  if (gearbox === undefined || rolling === undefined) {
    return floorRefused(
      `The file has no ${gearbox === undefined ? 'gearbox' : 'rolling'}: write ${gearbox === undefined ? 'gearbox with the pairs fitted and the final drive' : 'rolling with the distance of one turn of the driven wheels'}.`,
    );
  }
  const limit = engine?.limit;
  const last = engine?.brakeSheet?.at(-1)?.speed;
  const list = new AskedList();
  const name = list.add(asked.at, {
    name: 'at',
    means: 'engine speed at which gears are changed',
    unit: 'rad/s',
    usual: 'counted',
  });
  const { numbers: on, asked: read } = list.on(car);
  const at = read(name) ?? limit ?? last;
  if (at === undefined) {
    return floorRefused('At which engine speed? Say --at, or write limit under engine in the car file.');
  }
  const { targets } = asked;
  if (targets !== undefined && targets.length !== gearbox.fitted.length) {
    return floorRefused(
      `There are ${gearbox.fitted.length} gears and ${targets.length} speeds wanted: one for each gear, first gear first.`,
    );
  }
  if (targets?.some((speed) => speed <= 0) === true) {
    return floorRefused('A speed wanted is nothing: each gear has one above it.');
  }
  if (asked.pairs !== undefined && asked.pairs.length > 8) return floorRefused('More than eight gears.');
  const chosen = targets === undefined ? undefined : chosenSets(car, on, at.value, targets, asked);
  if (chosen?.length === 0) {
    return floorRefused(
      `No set of the stock with at most ${asked.changes ?? gearbox.fitted.length} pairs changed rises from gear to gear.`,
    );
  }
  const pairs = asked.pairs ?? chosen?.[0]?.pairs ?? gearbox.fitted;
  const final = asked.final ?? chosen?.[0]?.final ?? gearbox.final;
  const answer = floorAnswer(
    on,
    (numbers, put, working) => putRatios({ form: car.form, at, pairs, final }, numbers, put, working),
    asked,
    () => ({ notes: notesOn(car, on, pairs, final), cautions: [GEARBOX_CAUTION, STANDING_CAUTION] }),
  );
  if (!answer.reached) return answer;
  return {
    ...answer,
    at: at.value,
    pairs,
    final,
    ...(chosen === undefined ? {} : { chosen, targets: targets! }),
    ...linesOf(car, on, at.value, pairs, final),
  };
}

function overallsOf(car: Car, pairs: readonly Teeth[], final: Teeth): number[] {
  const drop = car.form.gearbox!.drop;
  return pairs.map((pair) => overallRatio({ pair, final, ...(drop === undefined ? {} : { drop }) }));
}

function chosenSets(
  car: Car,
  on: QuestionNumbers,
  at: number,
  targets: readonly number[],
  asked: RatiosAsked,
): ChosenSet[] {
  const { fitted, final, finals = [], stock = [] } = car.form.gearbox!;
  const rolling = rollingOf(car.form.rolling!, new Numbers(on.values));
  return [final, ...(asked.finals === true ? finals : [])]
    .flatMap((drive) => {
      const found = chooseSet({
        fitted,
        stock: stock.map(({ pair, gears }) => ({ pair, ...(gears === undefined ? {} : { gears }) })),
        targets,
        changes: asked.changes ?? fitted.length,
        speedOf: (pair) => speedAt(at, overallsOf(car, [pair], drive)[0]!, rolling),
      });
      return found === undefined ? [] : [{ ...found, final: drive }];
    })
    .sort((a, b) => a.miss - b.miss);
}

/** Points of a line of the chart. */
const POINTS = 60;
/** Rows of the chart: every 500 turns a minute up to the limit. */
const ROW = (500 * 2 * Math.PI) / 60;

function linesOf(car: Car, on: QuestionNumbers, at: number, pairs: readonly Teeth[], final: Teeth) {
  const numbers = new Numbers(on.values);
  const rolling = rollingOf(car.form.rolling!, numbers);
  const overalls = overallsOf(car, pairs, final);
  const driving = drivingOf(car.form, rolling, numbers);
  const top = driving === undefined ? at : Math.min(driving.limit, driving.torque.last.x);
  const least = driving?.torque.first.x ?? top * 0.4;
  const rows: number[] = [top];
  for (let engine = Math.floor((top - 1e-6) / ROW) * ROW; engine >= least - 1e-6; engine -= ROW)
    rows.push(engine);
  const chart = rows
    .reverse()
    .map((engine) => ({ engine, speeds: overalls.map((i) => speedAt(engine, i, rolling)) }));
  if (driving === undefined) return { chart, thrust: [], resistance: [] };
  const along = (from: number, to: number, f: (v: number) => number): ThrustPoint[] =>
    Array.from({ length: POINTS + 1 }, (_, k) => {
      const speed = from + ((to - from) * k) / POINTS;
      return { speed, force: f(speed) };
    }).filter(({ force }) => Number.isFinite(force));
  const thrust = overalls.map((i, gear) => {
    const [from, to] = reachOf(i, driving);
    return { gear: gear + 1, points: along(from, to, (v) => thrustAt(v, i, driving)) };
  });
  const fastest = Math.max(...overalls.map((i) => reachOf(i, driving)[1]));
  return { chart, thrust, resistance: along(0, fastest, (v) => resistanceAt(v, car.form, numbers)) };
}

function notesOn(car: Car, on: QuestionNumbers, pairs: readonly Teeth[], final: Teeth): string[] {
  const { form } = car;
  const numbers = new Numbers(on.values);
  const rolling = form.rolling!;
  const driving = drivingOf(form, rollingOf(rolling, numbers), numbers);
  const top = driving === undefined ? undefined : topSpeed(overallsOf(car, pairs, final), driving);
  const ratios = pairs.map((pair) => gearRatio(pair));
  const wider = ratios
    .slice(0, -2)
    .findIndex((i, k) => i / ratios[k + 1]! < (ratios[k + 1]! / ratios[k + 2]!) * 0.995);
  const { engine, gearbox } = form;
  const told: readonly (readonly [boolean, string])[] = [
    [
      ratios.some((i, k) => k > 0 && i >= ratios[k - 1]!),
      'A gear is no higher than the one below it: look at the teeth again.',
    ],
    [
      wider >= 0,
      `The drop from gear ${wider + 2} to ${wider + 3} is wider than that from ${wider + 1} to ${wider + 2}: mostly drops grow smaller upwards.`,
    ],
    [
      rolling.growth === undefined || rolling.growthSpeed === undefined,
      'No growth of the tyre is told: at top speed a crossply grows by 1 to 3 % and more, and the speeds are too low by as much.',
    ],
    [rolling.slip === undefined, 'No slip of the driven tyres is counted.'],
    [
      driving === undefined,
      'Without a brake sheet under engine there is no thrust, no change speed and no top speed.',
    ],
    [
      driving !== undefined && form.air === undefined,
      'The file tells no forces of the air, so the top speed is that of the gears.',
    ],
    [
      driving !== undefined && rolling.resistance === undefined,
      'Rolling resistance is taken as 1.6 % of the load, as is usual for racing tyres.',
    ],
    [
      driving !== undefined && gearbox?.efficiency === undefined,
      '93 % of the power is taken to come to the ground, as is usual for a hot box.',
    ],
    [
      top?.byLimit === true,
      `The top speed is held by the engine’s limit in gear ${(top?.gear ?? 0) + 1}: it would pull a taller gear.`,
    ],
    [
      top !== undefined && !top.byLimit && top.gear < pairs.length - 1,
      `The car is fastest in gear ${(top?.gear ?? 0) + 1}: the gears above it are too tall.`,
    ],
    [
      driving !== undefined &&
        engine?.limit !== undefined &&
        engine.limit.value > driving.torque.last.x * (1 + 1e-9),
      'The brake sheet ends below the engine’s limit: beyond it nothing is known, and gears are used up to its end.',
    ],
    ...notesOnOverall(car),
  ];
  return told.filter(([holds]) => holds).map(([, each]) => each);
}

/** The file tells turns of the crank in the gear looked at under engine too: one of the gears should be it. */
function notesOnOverall(car: Car): (readonly [boolean, string])[] {
  const { engine, gearbox } = car.form;
  const told = engine?.overall;
  if (told === undefined || gearbox === undefined) return [];
  const near = overallsOf(car, gearbox.fitted, gearbox.final).some(
    (i) => Math.abs(i / told.value - 1) < Math.max(0.005, (2 * told.u) / told.value),
  );
  return [
    [
      !near,
      `engine.overall is ${told.text}, and no gear fitted turns the crank so often: the crank’s couple on the joints is taken from it.`,
    ],
  ];
}
