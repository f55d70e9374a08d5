/**
 * Fuel for a session: litres and mass, from what a lap burns or from the work of the engine.
 *
 * In    laps, what a lap burns (read, by distance, or by power), laps out and in, reserve
 * Out   what to put in, how far it goes, what it weighs, and the weights of the wheels full and empty
 *
 * FU-n are the equations of docs/theory/fuel.md.
 */
import type { CarForm } from '../../car/read.ts';
import { carStanding } from '../../loadpath/loads/car-equilibrium.ts';
import { STANDING, WHEEL_NAMES } from '../../loadpath/loads/doing.ts';
import { fromReading, type Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import { type Kilogram, STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';
import { type FloorNote, type PutFloor, recordedFloor, SAY_VOLUME } from '../floor-figure.ts';
import { type FuelForm, fuelDensity } from '../under-way/carried.ts';

/** What a lap burns. */
export type Burn =
  | { readonly kind: 'read'; readonly perLap: Reading }
  | { readonly kind: 'scaled'; readonly perLap: Reading; readonly lap: Reading; readonly here: Reading }
  | {
      readonly kind: 'power';
      readonly specific: Reading;
      readonly power: Reading;
      readonly open: Reading;
      readonly time: Reading;
    };

export interface FuelOn {
  readonly car: CarForm;
  readonly form: FuelForm;
  readonly burn: Burn;
  readonly laps: number;
  /** Laps out and in, each counted as this part of a lap. */
  readonly slow: { readonly count: number; readonly part: Reading };
  readonly reserve: Reading;
  readonly temperature?: Reading;
  readonly aboard?: Reading;
}

const litres = (id: string, means: string, symbol: string): FloorNote => ({
  id,
  means,
  symbol,
  unit: 'm^3',
  spoken: SAY_VOLUME,
});

const NOTES = {
  perLap: litres('perLap', 'burnt in a lap', 'V_l'),
  burnt: litres('burnt', 'burnt in the session', 'V_b'),
  needed: litres('needed', 'needed in the cell at the start', 'V_n'),
  toAdd: litres('toAdd', 'to put in', 'V_a'),
  left: litres('left', 'left in the cell at the end', 'V_e'),
  density: { id: 'density', means: 'density at its temperature', symbol: 'ρ', unit: 'kg/m^3' },
  mass: { id: 'mass', means: 'mass of what is needed', symbol: 'm_f', unit: 'kg' },
  burntMass: { id: 'burntMass', means: 'mass that is burnt', symbol: 'm_b', unit: 'kg' },
  range: { id: 'range', means: 'racing laps that a full cell gives', symbol: 'n_f', unit: '1' },
} as const satisfies Readonly<Record<string, FloorNote>>;

const V = (means: string) => ({ unit: 'm^3', means });

const scaledLap = formula({
  symbol: 'V_l',
  means: 'burnt in a lap, by its length',
  is: 'V_0*s/s_0',
  unit: 'm^3',
  terms: {
    V_0: V('burnt in a lap elsewhere'),
    s: { unit: 'm', means: 'length of a lap here' },
    s_0: { unit: 'm', means: 'length of that lap' },
  },
  source: 'FU-2',
  holds: 'a circuit of the same kind: slow corners and hills burn more for their length',
});

const readLap = formula({
  symbol: 'V_l',
  means: 'burnt in a lap',
  is: 'V_0',
  unit: 'm^3',
  terms: { V_0: V('burnt in a lap, as read') },
  source: 'FU-2',
});

const byPower = formula({
  symbol: 'V_l',
  means: 'burnt in a lap, by the work of the engine',
  is: 'b*P*o*τ/ρ',
  unit: 'm^3',
  terms: {
    b: { unit: 'kg/J', means: 'fuel burnt for the work done' },
    P: { unit: 'W', means: 'mean power while the throttle is open' },
    o: { unit: '1', means: 'part of the lap with the throttle open' },
    τ: { unit: 's', means: 'time of a lap' },
    ρ: { unit: 'kg/m^3', means: 'density of the fuel' },
  },
  source: 'FU-3',
  holds: 'overrun, idling and cranking left out: some per cent more',
});

const burntOf = formula({
  symbol: 'V_b',
  means: 'burnt in the session',
  is: 'V_l*(n + n_s*q)',
  unit: 'm^3',
  terms: {
    V_l: V('burnt in a lap'),
    n: { unit: '1', means: 'racing laps' },
    n_s: { unit: '1', means: 'laps out and in' },
    q: { unit: '1', means: 'what one of them burns, of a racing lap' },
  },
  source: 'FU-4',
});

const neededOf = formula({
  symbol: 'V_n',
  means: 'needed in the cell at the start',
  is: 'V_b + V_r + V_u',
  unit: 'm^3',
  terms: { V_b: V('burnt in the session'), V_r: V('reserve'), V_u: V('what the pick-up cannot reach') },
  source: 'FU-5',
});

const toAddOf = formula({
  symbol: 'V_a',
  means: 'to put in',
  is: 'V_n - V_c',
  unit: 'm^3',
  terms: { V_n: V('needed'), V_c: V('in the cell now') },
  source: 'FU-5',
});

const leftOf = formula({
  symbol: 'V_e',
  means: 'left in the cell at the end',
  is: 'V_n - V_b',
  unit: 'm^3',
  terms: { V_n: V('at the start'), V_b: V('burnt') },
  source: 'FU-5',
});

const massOf = (symbol: string, means: string) =>
  formula({
    symbol,
    means,
    is: 'V*ρ',
    unit: 'kg',
    terms: { V: V('volume'), ρ: { unit: 'kg/m^3', means: 'density of the fuel' } },
    source: 'FU-1',
  });

const NEEDED_MASS = massOf('m_f', 'mass of what is needed');
const BURNT_MASS = massOf('m_b', 'mass that is burnt');

const rangeOf = formula({
  symbol: 'n_f',
  means: 'racing laps that a full cell gives',
  is: '(V_t - V_u - V_r)/V_l - n_s*q',
  unit: '1',
  terms: {
    V_t: V('all that the cell holds'),
    V_u: V('what the pick-up cannot reach'),
    V_r: V('reserve'),
    V_l: V('burnt in a lap'),
    n_s: { unit: '1', means: 'laps out and in' },
    q: { unit: '1', means: 'what one of them burns, of a racing lap' },
  },
  source: 'FU-6',
});

const asked = (what: string): Origin => ({ kind: 'asked', what });

export function putFuel(on: FuelOn, numbers: Numbers, putting: PutFloor, working?: Working): void {
  const put = recordedFloor(putting, working);
  const { form, burn, laps, slow, reserve, temperature, aboard } = on;
  const ρ = fuelDensity(
    form,
    temperature === undefined ? undefined : numbers.of(temperature),
    numbers,
    working,
    temperature === undefined ? undefined : fromReading(temperature),
  );
  put('session', NOTES.density, ρ);
  const V_l = lapOf(burn, ρ, numbers, working);
  put('session', NOTES.perLap, V_l);
  const q = numbers.of(slow.part);
  const outAndIn = { n_s: slow.count, q };
  const slowOrigin = { n_s: asked('laps out and in'), q: fromReading(slow.part) };
  const V_b = burntOf({ V_l, n: laps, ...outAndIn }, working, { n: asked('laps'), ...slowOrigin });
  put('session', NOTES.burnt, V_b);
  const V_u = numbers.or(form.unusable, 0);
  const V_r = numbers.of(reserve);
  const unusable: Origin =
    form.unusable === undefined
      ? { kind: 'constant', what: 'the file tells none' }
      : fromReading(form.unusable);
  const V_n = neededOf({ V_b, V_r, V_u }, working, { V_r: fromReading(reserve), V_u: unusable });
  put('session', NOTES.needed, V_n);
  if (aboard !== undefined) {
    put(
      'session',
      NOTES.toAdd,
      toAddOf({ V_n, V_c: numbers.of(aboard) }, working, { V_c: fromReading(aboard) }),
    );
  }
  put('session', NOTES.left, leftOf({ V_n, V_b }, working));
  put('session', NOTES.mass, NEEDED_MASS({ V: V_n, ρ }, working, { V: { kind: 'step', symbol: 'V_n' } }));
  const burntMass = BURNT_MASS({ V: V_b, ρ }, working, { V: { kind: 'step', symbol: 'V_b' } });
  put('session', NOTES.burntMass, burntMass);
  if (form.tank !== undefined) {
    const terms = { V_t: numbers.of(form.tank), V_u, V_r, V_l, ...outAndIn };
    put('session', NOTES.range, rangeOf(terms, working, { V_t: fromReading(form.tank), ...slowOrigin }));
  }
  if (on.car.body === undefined) return;
  const atSurvey = numbers.of(form.surveyed);
  putWeights('at the start', (V_n - atSurvey) * ρ, on, numbers, put, working);
  putWeights('at the end', (V_n - V_b - atSurvey) * ρ, on, numbers, put, working);
}

/** What a lap burns, m³. */
function lapOf(burn: Burn, ρ: number, numbers: Numbers, working?: Working): number {
  switch (burn.kind) {
    case 'read':
      return readLap({ V_0: numbers.of(burn.perLap) }, working, { V_0: fromReading(burn.perLap) });
    case 'scaled':
      return scaledLap(
        { V_0: numbers.of(burn.perLap), s: numbers.of(burn.here), s_0: numbers.of(burn.lap) },
        working,
        { V_0: fromReading(burn.perLap), s: fromReading(burn.here), s_0: fromReading(burn.lap) },
      );
    case 'power':
      return byPower(
        {
          b: numbers.of(burn.specific),
          P: numbers.of(burn.power),
          o: numbers.of(burn.open),
          τ: numbers.of(burn.time),
          ρ,
        },
        working,
        {
          b: fromReading(burn.specific),
          P: fromReading(burn.power),
          o: fromReading(burn.open),
          τ: fromReading(burn.time),
        },
      );
  }
}

const shareOf = (symbol: string, means: string, above: string) =>
  formula({
    symbol,
    means,
    is: `(${above})/(F_1 + F_2 + F_3 + F_4)`,
    unit: '1',
    terms: {
      F_1: { unit: 'N', means: 'front left' },
      F_2: { unit: 'N', means: 'front right' },
      F_3: { unit: 'N', means: 'rear left' },
      F_4: { unit: 'N', means: 'rear right' },
    },
    source: 'FU-7',
  });

const FRONT = shareOf('w_f', 'share of the weight on the front axle', 'F_1 + F_2');
const CROSS = shareOf('w_x', 'cross weight, right front and left rear', 'F_2 + F_3');

const onPad = formula({
  symbol: 'm_w',
  means: 'mass on the scale',
  is: 'F/g_0',
  unit: 'kg',
  terms: {
    F: { unit: 'N', means: 'load on the ground' },
    g_0: { unit: 'm/s^2', means: 'acceleration of free fall' },
  },
  source: 'FU-7',
});

const PADS = ['front left', 'front right', 'rear left', 'rear right'] as const;

/** Weights of the car at rest with so much more fuel than at the survey. */
function putWeights(
  of: string,
  more: Kilogram,
  { car, form }: FuelOn,
  numbers: Numbers,
  put: PutFloor,
  working?: Working,
): void {
  const doing = { ...STANDING, carried: [{ mass: more, at: numbers.point(form.at) }] };
  const standing = carStanding(car, doing, numbers);
  const loads = WHEEL_NAMES.map((wheel) => standing.wheels[wheel].ground[2]);
  const terms = { F_1: loads[0]!, F_2: loads[1]!, F_3: loads[2]!, F_4: loads[3]! };
  for (const [k, value] of loads.entries()) {
    for (const symbol of ['F', `F_${k + 1}`]) {
      working?.add({
        kind: 'solved',
        symbol,
        means: `load of the ${PADS[k]} tyre at rest`,
        method: 'equilibrium of the whole car, fuel at its place',
        value,
        unit: 'N',
        source: 'LL-9',
        terms: [],
      });
    }
    const note = { id: PADS[k]!, means: PADS[k]!, symbol: 'm_w', unit: 'kg' };
    put(
      of,
      note,
      onPad({ F: value, g_0: STANDARD_GRAVITY }, working, { g_0: { kind: 'constant', what: 'standard' } }),
    );
  }
  put(
    of,
    { id: 'frontShare', means: 'share on the front axle', symbol: 'w_f', unit: 'share' },
    FRONT(terms, working),
  );
  put(
    of,
    { id: 'cross', means: 'cross weight, right front and left rear', symbol: 'w_x', unit: 'share' },
    CROSS(terms, working),
  );
}
