/** Weight of the whole and its shares, from four pads: one declaration for what is read and what is forecast. */
import type { Kilogram, Ratio } from '../units/quantity.ts';
import { formula, type Origin, type Working } from '../working/working.ts';

const PADS = {
  m_fl: { unit: 'kg', means: 'mass on the front left pad' },
  m_fr: { unit: 'kg', means: 'mass on the front right pad' },
  m_rl: { unit: 'kg', means: 'mass on the rear left pad' },
  m_rr: { unit: 'kg', means: 'mass on the rear right pad' },
} as const;

export type Pads = Readonly<Record<keyof typeof PADS, Kilogram>>;
/** Where each pad's number comes from. */
export type PadOrigins = Readonly<Partial<Record<keyof typeof PADS, Origin>>>;

const totalOf = formula({
  symbol: 'm',
  means: 'mass on all four pads',
  is: 'm_fl + m_fr + m_rl + m_rr',
  unit: 'kg',
  terms: PADS,
  source: 'FF-15',
});

const share = (symbol: string, means: string, first: keyof typeof PADS, second: keyof typeof PADS) =>
  formula({
    symbol,
    means,
    is: `(${first} + ${second})/m`,
    unit: '1',
    terms: {
      [first]: PADS[first],
      [second]: PADS[second],
      m: { unit: 'kg', means: 'mass on all four pads' },
    } as Record<string, { unit: string; means: string }>,
    source: 'FF-15',
  });

const SHARES = {
  cross: ['m_fr', 'm_rl', share('C', 'cross weight, right front and left rear', 'm_fr', 'm_rl')],
  frontShare: ['m_fl', 'm_fr', share('p_f', 'front share', 'm_fl', 'm_fr')],
  leftShare: ['m_fl', 'm_rl', share('p_l', 'left share', 'm_fl', 'm_rl')],
} as const;

export const wholeOf = (pads: Pads, working?: Working, from?: PadOrigins): Kilogram =>
  totalOf(pads, working, from);

/** [FF-15] */
export function shareOf(
  which: keyof typeof SHARES,
  pads: Pads,
  working?: Working,
  from: PadOrigins = {},
): Ratio {
  const [first, second, of] = SHARES[which];
  const m = wholeOf(pads, working, from);
  return of({ [first]: pads[first], [second]: pads[second], m }, working, {
    ...(from[first] && { [first]: from[first] }),
    ...(from[second] && { [second]: from[second] }),
  });
}
