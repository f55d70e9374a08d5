/** Figures of an axle on its springs and tyres: rates in heave and roll, frequency, damping. */
import type { Working } from '../../working/working.ts';
import { formula } from '../../working/working.ts';
import type { AxleState } from '../axle-of-car.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import { stiffnessAtWheels } from './axle-stiffness.ts';
import { damperSlopes } from './damper-slopes.ts';
import { noteSolved, notesOf, type Put } from './note.ts';

const tyre = notesOf('tyre');
const mean = (a: number, b: number): number => (a + b) / 2;

const spring = notesOf('spring');

const barRateNote = spring({
  id: 'antiRollBarRate',
  means: 'rate of the anti-roll bar about its axis, arms in series',
  symbol: 'k_b',
  unit: 'N m/rad',
  rank: 2,
  method: 'bar and blades in series',
  source: 'LP-37',
});

const barOne = spring({
  id: 'antiRollBarOneWheel',
  means: 'anti-roll bar at one wheel alone',
  symbol: 'k_b1',
  unit: 'N/m',
  rank: 2,
  method: 'rate times twist per wheel travel squared, and torque times its change; mean of left and right',
  source: 'LP-31',
});

const barRoll = spring({
  id: 'antiRollBarRoll',
  means: 'anti-roll bar, each wheel in roll',
  symbol: 'k_b2',
  unit: 'N/m',
  rank: 1,
  method: 'stiffness of the pair with the wheels moving opposite ways',
  source: 'LP-31',
});

const heaveForce = spring({
  id: 'heaveForce',
  means: 'force of the heave spring',
  symbol: 'F_h',
  unit: 'N',
  rank: 2,
  method: 'law of the heave spring behind its gap',
  source: 'LP-32',
});

const heaveRate = spring({
  id: 'heaveRate',
  means: 'rate of the axle in heave, both wheels together',
  symbol: 'K_h',
  unit: 'N/m',
  rank: 1,
});

const rollRate = spring({
  id: 'rollRate',
  means: 'roll rate of the springing, tyres rigid',
  symbol: 'K_φ',
  unit: 'N m/rad',
  rank: 1,
});

const rollRateTyre = tyre({
  id: 'rollRateTyre',
  means: 'roll rate at the ground, tyres in series',
  symbol: 'K_φy',
  unit: 'N m/rad',
  rank: 1,
});

const heaveRide = tyre({
  id: 'heaveRide',
  means: 'rate of the axle in heave at the ground, tyres in series',
  symbol: 'K_s',
  unit: 'N/m',
  rank: 2,
});

const heaveFrequency = tyre({
  id: 'heaveFrequency',
  means: 'frequency of the axle in heave',
  symbol: 'f_a',
  unit: 'Hz',
  rank: 1,
});

const dampingLow = tyre({
  id: 'dampingLow',
  means: 'damping ratio in heave below the knee of the dampers',
  symbol: 'ζ_l',
  unit: '1',
  rank: 1,
});

const dampingHigh = tyre({
  id: 'dampingHigh',
  means: 'damping ratio in heave above the knee of the dampers',
  symbol: 'ζ_h',
  unit: '1',
  rank: 2,
});

const K_TERMS = {
  K_ll: { unit: 'N/m', means: 'stiffness of the left wheel' },
  K_lr: { unit: 'N/m', means: 'stiffness between left and right' },
  K_rr: { unit: 'N/m', means: 'stiffness of the right wheel' },
} as const;

export const heaveOf = formula({
  symbol: 'K_h',
  means: 'rate of the axle in heave, both wheels together',
  is: 'K_ll + 2*K_lr + K_rr',
  unit: 'N/m',
  terms: K_TERMS,
  source: 'LP-31',
});

export const rollOf = formula({
  symbol: 'K_φ',
  means: 'roll rate of the springing, tyres rigid',
  is: 't^2/4*(K_ll - 2*K_lr + K_rr)',
  unit: 'N m/rad',
  terms: {
    t: { unit: 'm', means: 'track' },
    ...K_TERMS,
  },
  source: 'LP-54',
});

export const tyreRoll = formula({
  symbol: 'K_y',
  means: 'roll rate of the tyres alone',
  is: 't^2/4*(k_yl + k_yr)',
  unit: 'N m/rad',
  terms: {
    t: { unit: 'm', means: 'track' },
    k_yl: { unit: 'N/m', means: 'vertical rate of the left tyre' },
    k_yr: { unit: 'N/m', means: 'vertical rate of the right tyre' },
  },
  source: 'LP-54',
});

export const rollSeries = formula({
  symbol: 'K_φy',
  means: 'roll rate at the ground, tyres in series',
  is: 'K_φ*K_y/(K_φ + K_y)',
  unit: 'N m/rad',
  terms: {
    K_φ: { unit: 'N m/rad', means: 'roll rate of the springing' },
    K_y: { unit: 'N m/rad', means: 'roll rate of the tyres' },
  },
  source: 'LP-54',
});

export const heaveSeries = formula({
  symbol: 'K_s',
  means: 'rate of the axle in heave at the ground',
  is: 'K_h*(k_yl + k_yr)/(K_h + k_yl + k_yr)',
  unit: 'N/m',
  terms: {
    K_h: { unit: 'N/m', means: 'rate of the axle in heave' },
    k_yl: { unit: 'N/m', means: 'vertical rate of the left tyre' },
    k_yr: { unit: 'N/m', means: 'vertical rate of the right tyre' },
  },
  source: 'LP-50',
});

export const axleMass = formula({
  symbol: 'm_a',
  means: 'sprung mass on this axle',
  is: 'm_wl + m_wr - m_ul - m_ur',
  unit: 'kg',
  terms: {
    m_wl: { unit: 'kg', means: 'mass on the left scale' },
    m_wr: { unit: 'kg', means: 'mass on the right scale' },
    m_ul: { unit: 'kg', means: 'left unsprung mass' },
    m_ur: { unit: 'kg', means: 'right unsprung mass' },
  },
  source: 'LP-40',
});

export const axleFrequency = formula({
  symbol: 'f_a',
  means: 'frequency of the axle in heave',
  is: 'sqrt(K_s/m_a)/(2*π)',
  unit: 'Hz',
  terms: {
    K_s: { unit: 'N/m', means: 'rate of the axle in heave at the ground' },
    m_a: { unit: 'kg', means: 'sprung mass on this axle' },
  },
  source: 'LP-51',
  holds: 'undamped, this axle alone',
});

const ratioOf = (symbol: 'ζ_l' | 'ζ_h', means: string) =>
  formula({
    symbol,
    means,
    is: '(c_l*r_l^2 + c_r*r_r^2)/(2*sqrt(K_h*m_a))',
    unit: '1',
    terms: {
      c_l: { unit: 'N s/m', means: 'slope of the left damper, mean of bump and rebound' },
      r_l: { unit: '1', means: 'spring per wheel, left' },
      c_r: { unit: 'N s/m', means: 'slope of the right damper, mean of bump and rebound' },
      r_r: { unit: '1', means: 'spring per wheel, right' },
      K_h: { unit: 'N/m', means: 'rate of the axle in heave' },
      m_a: { unit: 'kg', means: 'sprung mass on this axle' },
    },
    source: 'LP-55',
    holds: 'with rigid tyres; critical damping is that of this axle in heave; velocity counts at the damper',
  });

const ratioLow = ratioOf('ζ_l', 'damping ratio in heave below the knee');

const ratioHigh = ratioOf('ζ_h', 'damping ratio in heave above the knee');

export function putRates(state: AxleState, t: number, numbers: Numbers, put: Put, working?: Working): void {
  const { left, right, bar, heave } = state;
  const K = stiffnessAtWheels(state, working);
  if (bar !== undefined) {
    const { leftLeft, leftRight, rightRight } = bar.stiffness;
    put(barRateNote, bar.rate);
    put(barOne, mean(leftLeft, rightRight));
    put(barRoll, (leftLeft - 2 * leftRight + rightRight) / 2);
  }
  if (heave !== undefined) put(heaveForce, heave.force);
  const K_h = heaveOf({ K_ll: K.leftLeft, K_lr: K.leftRight, K_rr: K.rightRight }, working);
  put(heaveRate, K_h);
  const K_φ = rollOf({ t, K_ll: K.leftLeft, K_lr: K.leftRight, K_rr: K.rightRight }, working);
  put(rollRate, K_φ);
  const tyres = {
    k_yl: numbers.of(left.of.form.wheel.tyreRate),
    k_yr: numbers.of(right.of.form.wheel.tyreRate),
  };
  const fromTyres = {
    k_yl: fromReading(left.of.form.wheel.tyreRate),
    k_yr: fromReading(right.of.form.wheel.tyreRate),
  };
  put(rollRateTyre, rollSeries({ K_φ, K_y: tyreRoll({ t, ...tyres }, working, fromTyres) }, working));
  const K_s = heaveSeries({ K_h, ...tyres }, working, fromTyres);
  put(heaveRide, K_s);
  const masses = {
    m_wl: left.of.form.scale,
    m_wr: right.of.form.scale,
    m_ul: left.of.form.unsprung,
    m_ur: right.of.form.unsprung,
  };
  const m_a = axleMass(
    {
      m_wl: numbers.of(masses.m_wl),
      m_wr: numbers.of(masses.m_wr),
      m_ul: numbers.of(masses.m_ul),
      m_ur: numbers.of(masses.m_ur),
    },
    working,
    {
      m_wl: fromReading(masses.m_wl),
      m_wr: fromReading(masses.m_wr),
      m_ul: fromReading(masses.m_ul),
      m_ur: fromReading(masses.m_ur),
    },
  );
  put(heaveFrequency, axleFrequency({ K_s, m_a }, working));
  const [l, r] = [damperSlopes(left, numbers), damperSlopes(right, numbers)];
  if (l === undefined || r === undefined) return;
  const ratios = { r_l: left.now.ratios.unit, r_r: right.now.ratios.unit };
  noteSolved(working, 'first derivative of the closed linkage', 'LP-13', () => [
    { symbol: 'r_l', means: 'spring per wheel, left', value: ratios.r_l, unit: '1' },
    { symbol: 'r_r', means: 'spring per wheel, right', value: ratios.r_r, unit: '1' },
  ]);
  for (const speed of ['low', 'high'] as const) {
    noteSolved(
      working,
      'damper curve as measured, two straight lines; mean of bump and rebound',
      'SP-57',
      () => [
        { symbol: 'c_l', means: `slope of the left damper, ${speed} speed`, value: l[speed], unit: 'N s/m' },
        { symbol: 'c_r', means: `slope of the right damper, ${speed} speed`, value: r[speed], unit: 'N s/m' },
      ],
    );
  }
  put(dampingLow, ratioLow({ c_l: l.low, c_r: r.low, ...ratios, K_h, m_a }, working));
  put(dampingHigh, ratioHigh({ c_l: l.high, c_r: r.high, ...ratios, K_h, m_a }, working));
}
