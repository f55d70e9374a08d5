/**
 * Figures of the gears: speeds, drops, where to change, how fast at most.
 *
 * In    the car's gearbox and rolling, brake sheet and air where they are there
 * Out   figures, gear by gear, then of the car
 *
 * RA-n are the equations of docs/theory/ratios.md.
 */
import type { CarForm } from '../../car/read.ts';
import type { Teeth } from '../../car/teeth.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Ratio } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import {
  type FloorNote,
  type PutFloor,
  recordedFloor,
  SAY_ENGINE_SPEED,
  SAY_POWER,
  SAY_SPEED,
} from '../floor-figure.ts';
import { drivingOf, resistanceAt } from './driving.ts';
import { type Rolling, type RollingForm, rollingOf, slipOrigin, speedAt } from './speed.ts';
import { gearRatio, overallRatio, profileShift } from './teeth.ts';
import { changeSpeed, type Driving, topSpeed } from './thrust.ts';
import { CHANGE, TOP, thrustWorked, workChange, workTop } from './worked.ts';

export interface RatiosOn {
  readonly form: CarForm;
  /** Engine speed at which gears are changed and speeds told. */
  readonly at: Reading;
  /** The pairs looked at, first gear first, and their final drive. */
  readonly pairs: readonly Teeth[];
  readonly final: Teeth;
}

/** Forms that are there: the question has looked. */
interface Forms {
  readonly gearbox: NonNullable<CarForm['gearbox']>;
  readonly rolling: RollingForm;
}

const note = (of: FloorNote): FloorNote => of;

const NOTES = {
  gear: note({ id: 'ratio', means: 'ratio of the pair', symbol: 'i_g', unit: '1' }),
  overall: note({ id: 'overall', means: 'turns of the crank for one of the wheel', symbol: 'i', unit: '1' }),
  shift: note({
    id: 'profileShift',
    means: 'profile shift of both wheels for the distance of the shafts, in modules',
    symbol: 'x_Σ',
    unit: '1',
  }),
  speed: note({ id: 'speed', means: 'road speed at it', symbol: 'v', unit: 'm/s', spoken: SAY_SPEED }),
  per1000: note({
    id: 'perThousand',
    means: 'road speed for 1000 turns a minute',
    symbol: 'v_1000',
    unit: 'm/s',
    spoken: SAY_SPEED,
  }),
  after: note({
    id: 'after',
    means: 'engine speed after changing up at it',
    symbol: 'ω_a',
    unit: 'rad/s',
    spoken: SAY_ENGINE_SPEED,
  }),
  drop: note({
    id: 'drop',
    means: 'drop of engine speed',
    symbol: 'Δω',
    unit: 'rad/s',
    spoken: SAY_ENGINE_SPEED,
  }),
  change: CHANGE,
  changeAt: note({
    id: 'changeAt',
    means: 'that is at an engine speed of',
    symbol: 'ω_c',
    unit: 'rad/s',
    spoken: SAY_ENGINE_SPEED,
  }),
  thrust: note({ id: 'thrust', means: 'thrust there', symbol: 'F', unit: 'N' }),
  top: TOP,
  topAt: note({
    id: 'topAt',
    means: 'engine speed at it',
    symbol: 'ω_t',
    unit: 'rad/s',
    spoken: SAY_ENGINE_SPEED,
  }),
  resistance: note({ id: 'resistance', means: 'resistance at it', symbol: 'R', unit: 'N' }),
  power: note({
    id: 'peakPower',
    means: 'most power of the brake sheet',
    symbol: 'P_m',
    unit: 'W',
    spoken: SAY_POWER,
    method: 'torque times engine speed along the sheet’s curve, the greatest of 2000 places',
    source: 'RA-10',
  }),
  powerAt: note({
    id: 'peakPowerAt',
    means: 'engine speed at it',
    symbol: 'ω_m',
    unit: 'rad/s',
    spoken: SAY_ENGINE_SPEED,
    method: 'where torque times engine speed is greatest',
    source: 'RA-10',
  }),
};

const perThousandOf = formula({
  symbol: 'v_1000',
  means: 'road speed for 1000 turns a minute, tyre not grown',
  is: 'ω_1000*r_0*(1 - s)/i',
  unit: 'm/s',
  terms: {
    ω_1000: { unit: 'rad/s', means: '1000 turns a minute' },
    r_0: { unit: 'm', means: 'rolling radius at a walk' },
    s: { unit: '1', means: 'slip of the driven tyres' },
    i: { unit: '1', means: 'turns of the crank for one of the wheel' },
  },
  source: 'RA-4',
});

const afterOf = formula({
  symbol: 'ω_a',
  means: 'engine speed after changing up',
  is: 'ω*i_n/i',
  unit: 'rad/s',
  terms: {
    ω: { unit: 'rad/s', means: 'engine speed before' },
    i_n: { unit: '1', means: 'turns of the crank for one of the wheel, next gear' },
    i: { unit: '1', means: 'the same, this gear' },
  },
  source: 'RA-5',
  holds: 'the car does not slow while it is changed',
});

const dropOf = formula({
  symbol: 'Δω',
  means: 'drop of engine speed',
  is: 'ω - ω_a',
  unit: 'rad/s',
  terms: {
    ω: { unit: 'rad/s', means: 'engine speed before' },
    ω_a: { unit: 'rad/s', means: 'engine speed after' },
  },
  source: 'RA-5',
});

const engineSpeed = (symbol: string, v: string) =>
  formula({
    symbol,
    means: 'engine speed there',
    is: `${v}*i/(r_0*(1 + κ*${v}^2)*(1 - s))`,
    unit: 'rad/s',
    terms: {
      [v]: { unit: 'm/s', means: 'road speed' },
      i: { unit: '1', means: 'turns of the crank for one of the wheel' },
      r_0: { unit: 'm', means: 'rolling radius at a walk' },
      κ: { unit: 's^2/m^2', means: 'growth of the tyre over speed squared' },
      s: { unit: '1', means: 'slip of the driven tyres' },
    } as Record<string, { unit: string; means: string }>,
    source: 'RA-4',
  });

const CHANGE_AT = engineSpeed('ω_c', 'v_c');
const TOP_AT = engineSpeed('ω_t', 'v_t');

const THOUSAND = (2000 * Math.PI) / 60;
const ASKED_THOUSAND: Origin = { kind: 'constant', what: '1000 rpm' };

export function putRatios(on: RatiosOn, numbers: Numbers, putting: PutFloor, working?: Working): void {
  const put = recordedFloor(putting, working);
  const forms: Forms = { gearbox: on.form.gearbox!, rolling: on.form.rolling! };
  const rolling = rollingOf(forms.rolling, numbers, working);
  const overalls = on.pairs.map((pair) => overallOf(pair, on, working));
  const driving = drivingOf(on.form, rolling, numbers);
  on.pairs.forEach((pair, gear) => {
    putGear(
      pair,
      gear,
      { on, forms, rolling, overalls, ...(driving === undefined ? {} : { driving }) },
      numbers,
      put,
      working,
    );
  });
  if (driving !== undefined) putCar(on, overalls, driving, numbers, put, working);
}

const overallOf = (pair: Teeth, { form, final }: RatiosOn, working?: Working): Ratio => {
  const drop = form.gearbox?.drop;
  return overallRatio({ pair, final, ...(drop === undefined ? {} : { drop }) }, working);
};

interface Around {
  readonly on: RatiosOn;
  readonly forms: Forms;
  readonly rolling: Rolling;
  readonly overalls: readonly Ratio[];
  readonly driving?: Driving;
}

function putGear(
  pair: Teeth,
  gear: number,
  { on, forms, rolling, overalls, driving }: Around,
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): void {
  const of = `gear ${gear + 1}`;
  const { centreDistance, module } = forms.gearbox;
  put(of, NOTES.gear, gearRatio(pair, working));
  const i = overallOf(pair, on, working);
  put(of, NOTES.overall, i);
  const ω = numbers.of(on.at);
  const s = slipOrigin(forms.rolling);
  put(of, NOTES.speed, speedAt(ω, i, rolling, working, { ω: fromReading(on.at), s }));
  put(
    of,
    NOTES.per1000,
    perThousandOf({ ω_1000: THOUSAND, r_0: rolling.radius, s: rolling.slip, i }, working, {
      s,
      ω_1000: ASKED_THOUSAND,
    }),
  );
  const next = overalls[gear + 1];
  if (next !== undefined) {
    const ω_a = afterOf({ ω, i_n: next, i }, working, { ω: fromReading(on.at) });
    put(of, NOTES.after, ω_a);
    put(of, NOTES.drop, dropOf({ ω, ω_a }, working, { ω: fromReading(on.at) }));
    if (driving !== undefined) {
      const v = changeSpeed(i, next, driving);
      if (working !== undefined) workChange(v, i, next, driving, working);
      put(of, NOTES.change, v);
      const terms = { v_c: v, i, r_0: rolling.radius, κ: rolling.growth, s: rolling.slip };
      put(of, NOTES.changeAt, CHANGE_AT(terms, working, { s }));
      put(of, NOTES.thrust, thrustWorked(v, i, driving, working));
    }
  }
  if (centreDistance !== undefined && module !== undefined) {
    const distance = numbers.of(centreDistance);
    put(of, NOTES.shift, profileShift({ pair, module: moduleOf(pair, forms, numbers), distance }, working));
  }
}

/** Module of a pair: its own where the stock tells one. */
const moduleOf = (pair: Teeth, { gearbox }: Forms, numbers: Numbers): number =>
  numbers.of(gearbox.stock?.find((each) => each.pair.text === pair.text)?.module ?? gearbox.module!);

const PLACES = 2000;

function putCar(
  on: RatiosOn,
  overalls: readonly Ratio[],
  driving: Driving,
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): void {
  const { first, last } = driving.torque;
  const end = Math.min(last.x, driving.limit);
  const places = Array.from({ length: PLACES + 1 }, (_, k) => first.x + ((end - first.x) * k) / PLACES);
  const best = places.reduce((a, b) => (b * driving.torque.value(b) > a * driving.torque.value(a) ? b : a));
  put('car', NOTES.power, best * driving.torque.value(best));
  put('car', NOTES.powerAt, best);
  const { speed: v_t, gear } = topSpeed(overalls, driving);
  if (working !== undefined) workTop(v_t, overalls[gear]!, on.form, driving, numbers, working);
  put('car', NOTES.top, v_t);
  const { radius: r_0, growth: κ, slip: s } = driving.rolling;
  put(
    'car',
    NOTES.topAt,
    TOP_AT({ v_t, i: overalls[gear]!, r_0, κ, s }, working, { s: slipOrigin(on.form.rolling!) }),
  );
  put('car', NOTES.resistance, resistanceAt(v_t, on.form, numbers, working));
}
