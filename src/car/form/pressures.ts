/** Tyre pressures: what is wanted hot, how hot the gas then is, what the tyres are filled with. */
import { z } from 'zod';
import { amount, choice } from '../field.ts';

export const FILLS = ['compressed air', 'dry nitrogen'] as const;

const gauge = (means: string, measure: string) =>
  amount({ means, measure, unit: 'bar', si: 'Pa', min: 0.3, max: 6, usual: 'pressure gauge' });

const tyres = z.strictObject({
  hot: gauge(
    'gauge pressure wanted hot',
    'The tyre maker’s figure, or what the tyres liked by their temperatures.',
  ),
  gas: amount({
    means: 'temperature of the gas in the tyre, hot',
    measure: 'Learnt from a run: cold and hot pressure of one tyre give it (pressures --run).',
    unit: 'degC',
    si: 'K',
    min: 10,
    max: 160,
    usual: 'thermometer',
  }),
  least: gauge('least cold pressure that the tyre maker allows', 'The tyre maker’s sheet.').optional(),
  volume: amount({
    means: 'volume of the gas in the tyre',
    measure:
      'Fill with water by a measured can, or judge it from the sizes. Needed with water in the tyre alone.',
    unit: 'l',
    si: 'm^3',
    min: 5,
    max: 150,
    usual: 'estimate',
  }).optional(),
  grown: amount({
    means: 'growth of the volume from cold to hot',
    measure: 'Mostly under 1 %; left out, none.',
    unit: '%',
    si: '1',
    min: -2,
    max: 10,
    usual: 'estimate',
  }).optional(),
});

export const pressures = z.strictObject({
  fill: choice('filled with', FILLS).optional(),
  front: tyres.meta({ title: 'front tyres' }),
  rear: tyres.meta({ title: 'rear tyres' }),
});
