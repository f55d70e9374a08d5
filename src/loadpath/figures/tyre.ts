/** Figures of the tyre: where it stands, what it carries, and the rate and frequency it makes with the springing. */

import { STANDARD_GRAVITY } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import type { Attitude } from '../corner/attitude.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import type { SprungCorner, WheelForce } from '../sprung-corner.ts';
import { NO_BAR, NO_UNIT, notesOf, type Put } from './note.ts';

const note = notesOf('tyre');

const load = note({
  id: 'wheelLoad',
  lead: true,
  means: 'load at the ground that the springing holds at this travel',
  symbol: 'F_z',
  unit: 'N',
  anchor: 'contact',
  rank: 1,
  say: 'this wheel alone; anti-roll bar and heave element not counted',
});
const halfTrack = note({
  id: 'halfTrack',
  means: 'contact point to centre plane',
  symbol: 'b',
  unit: 'm',
  anchor: 'contact',
  rank: 1,
  method: 'the linkage closed at this travel',
  source: 'LP-10',
});
const rideRate = note({
  id: 'rideRate',
  means: 'ride rate: wheel rate with the tyre in series',
  symbol: 'k_s',
  unit: 'N/m',
  anchor: 'contact',
  rank: 1,
});
const frequency = note({
  id: 'rideFrequency',
  means: 'frequency of the sprung mass on this corner',
  symbol: 'f',
  unit: 'Hz',
  anchor: 'contact',
  rank: 1,
});
const hop = note({
  id: 'hopFrequency',
  means: 'frequency of the unsprung mass between tyre and springing',
  symbol: 'f_h',
  unit: 'Hz',
  anchor: 'contact',
  rank: 2,
});

const loadOf = formula({
  symbol: 'F_z',
  means: 'load at the ground that the springing holds at this travel',
  is: 'F_w + m_u*g',
  unit: 'N',
  terms: {
    F_w: { unit: 'N', means: 'force of the springing at the wheel' },
    m_u: { unit: 'kg', means: 'unsprung mass of the corner' },
    g: { unit: 'm/s^2', means: 'standard acceleration of free fall' },
  },
  source: 'LP-49',
});

const wheelForce = formula({
  symbol: 'F_w',
  means: 'force of the springing at the wheel',
  is: 'F_u*r + T*s',
  unit: 'N',
  terms: {
    F_u: { unit: 'N', means: 'force of the damper unit' },
    r: { unit: '1', means: 'spring per wheel' },
    T: { unit: 'N m', means: 'torque of the bar' },
    s: { unit: 'rad/m', means: 'rocker turn per wheel travel' },
  },
  source: 'LP-44',
  holds: 'without friction',
});

const series = formula({
  symbol: 'k_s',
  means: 'ride rate',
  is: 'k_w*k_y/(k_w + k_y)',
  unit: 'N/m',
  terms: {
    k_w: { unit: 'N/m', means: 'wheel rate' },
    k_y: { unit: 'N/m', means: 'vertical rate of the tyre' },
  },
  source: 'LP-50',
});

const sprung = formula({
  symbol: 'm_s',
  means: 'sprung mass on this corner',
  is: 'm_w - m_u',
  unit: 'kg',
  terms: {
    m_w: { unit: 'kg', means: 'mass on the wheel scale' },
    m_u: { unit: 'kg', means: 'unsprung mass of the corner' },
  },
  source: 'LP-40',
});

const natural = formula({
  symbol: 'f',
  means: 'frequency of the sprung mass on this corner',
  is: 'sqrt(k_s/m_s)/(2*π)',
  unit: 'Hz',
  terms: {
    k_s: { unit: 'N/m', means: 'ride rate' },
    m_s: { unit: 'kg', means: 'sprung mass on this corner' },
  },
  source: 'LP-51',
  holds: 'undamped, this corner alone',
});

const hopOf = formula({
  symbol: 'f_h',
  means: 'frequency of the unsprung mass',
  is: 'sqrt((k_w + k_y)/m_u)/(2*π)',
  unit: 'Hz',
  terms: {
    k_w: { unit: 'N/m', means: 'wheel rate' },
    k_y: { unit: 'N/m', means: 'vertical rate of the tyre' },
    m_u: { unit: 'kg', means: 'unsprung mass of the corner' },
  },
  source: 'LP-52',
  holds: 'undamped, the body standing still',
});

export function tyreFigures(
  of: SprungCorner,
  numbers: Numbers,
  now: WheelForce,
  attitude: Attitude,
  put: Put,
  working?: Working,
): void {
  const { form } = of;
  const m_u = numbers.of(form.unsprung);
  const k_y = numbers.of(form.wheel.tyreRate);
  const from = { m_u: fromReading(form.unsprung), k_y: fromReading(form.wheel.tyreRate) };
  const F_w = wheelForce(
    { F_u: now.unit.total, r: now.ratios.unit, T: now.torque, s: now.ratios.turn },
    working,
    { ...(of.hasUnit ? {} : { F_u: NO_UNIT, r: NO_UNIT }), ...(form.bar === undefined ? { T: NO_BAR } : {}) },
  );
  put(
    load,
    loadOf({ F_w, m_u, g: STANDARD_GRAVITY }, working, {
      m_u: from.m_u,
      g: { kind: 'constant', what: 'standard acceleration of free fall' },
    }),
  );
  put(halfTrack, attitude.halfTrack.value);
  const k_w = now.elastic + now.byForce;
  const k_s = series({ k_w, k_y }, working, { k_y: from.k_y });
  put(rideRate, k_s);
  const m_s = sprung({ m_w: numbers.of(form.scale), m_u }, working, {
    m_w: fromReading(form.scale),
    m_u: from.m_u,
  });
  put(frequency, natural({ k_s, m_s }, working));
  put(hop, hopOf({ k_w, k_y, m_u }, working, from));
}
