/**
 * What follows at once from the readings of one sheet: the whole, cross weight, shares, rake.
 *
 * In    weights of the four pads, heights of measuring points before and behind the middle of the car
 * Out   figures by the names that the readings of the car have
 *
 * Read as they stand, on the floor that they were read on; the car's own model is not asked.  [FF-15, FF-16]
 */
import type { Kilogram, Metre, Ratio } from '../units/quantity.ts';
import { formula } from '../working/working.ts';

const PADS = {
  m_fl: { unit: 'kg', means: 'mass on the front left pad' },
  m_fr: { unit: 'kg', means: 'mass on the front right pad' },
  m_rl: { unit: 'kg', means: 'mass on the rear left pad' },
  m_rr: { unit: 'kg', means: 'mass on the rear right pad' },
} as const;

const wholeOf = formula({
  symbol: 'm',
  means: 'mass on all four pads',
  is: 'm_fl + m_fr + m_rl + m_rr',
  unit: 'kg',
  terms: PADS,
  source: 'FF-15',
});

const crossOf = formula({
  symbol: 'c',
  means: 'cross weight, right front and left rear of the whole',
  is: '(m_fr + m_rl)/(m_fl + m_fr + m_rl + m_rr)',
  unit: '1',
  terms: PADS,
  source: 'FF-15',
});

const frontShareOf = formula({
  symbol: 'c_f',
  means: 'front share of the whole',
  is: '(m_fl + m_fr)/(m_fl + m_fr + m_rl + m_rr)',
  unit: '1',
  terms: PADS,
  source: 'FF-15',
});

const leftShareOf = formula({
  symbol: 'c_l',
  means: 'left share of the whole',
  is: '(m_fl + m_rl)/(m_fl + m_fr + m_rl + m_rr)',
  unit: '1',
  terms: PADS,
  source: 'FF-15',
});

export interface ReadPads {
  readonly frontLeft: Kilogram;
  readonly frontRight: Kilogram;
  readonly rearLeft: Kilogram;
  readonly rearRight: Kilogram;
}

export interface WeightSums {
  readonly total: Kilogram;
  readonly cross: Ratio;
  readonly frontShare: Ratio;
  readonly leftShare: Ratio;
}

export function weightSums({ frontLeft, frontRight, rearLeft, rearRight }: ReadPads): WeightSums {
  const pads = { m_fl: frontLeft, m_fr: frontRight, m_rl: rearLeft, m_rr: rearRight };
  return {
    total: wholeOf(pads),
    cross: crossOf(pads),
    frontShare: frontShareOf(pads),
    leftShare: leftShareOf(pads),
  };
}

const mean = (of: readonly Metre[]): Metre => of.reduce((sum, each) => sum + each, 0) / of.length;

/** Mean of the heights behind less mean of those in front; nothing where one of the two was not read.  [FF-16] */
export const rakeOf = (front: readonly Metre[], behind: readonly Metre[]): Metre | undefined =>
  front.length === 0 || behind.length === 0 ? undefined : mean(behind) - mean(front);
