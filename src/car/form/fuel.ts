/** The fuel: how much goes in, how much of it can be used, what the car burns, where it sits. */
import { z } from 'zod';
import { amount, point } from '../field.ts';

const volume = (means: string, measure: string, max: number, usual = 'estimate') =>
  amount({ means, measure, unit: 'l', si: 'm^3', min: 0, max, usual });

export const fuel = z.strictObject({
  at: point('centre of the fuel as it is used', 'Middle of the cell at half its height.'),
  surveyed: volume(
    'fuel aboard when the car was weighed and surveyed',
    'Drained to the last and filled by the can.',
    250,
    'measuring can',
  ),
  tank: volume(
    'all that the cell holds',
    'Filled by the can from empty, foam in.',
    250,
    'measuring can',
  ).optional(),
  unusable: volume(
    'what the pick-up cannot reach',
    'Run dry on the lift pumps, then drained: what comes out.',
    30,
    'measuring can',
  ).optional(),
  density: amount({
    means: 'density of the fuel',
    measure: 'A litre on the scale, or the maker’s sheet.',
    unit: 'kg/l',
    si: 'kg/m^3',
    min: 0.65,
    max: 1.1,
    usual: 'table',
  }).optional(),
  densityAt: amount({
    means: 'temperature at which it has that density',
    measure: 'Thermometer in the can; the maker’s sheet says 15 °C.',
    unit: 'degC',
    si: 'K',
    min: -20,
    max: 50,
    usual: 'counted',
  }).optional(),
  perLap: volume(
    'fuel burnt in a lap at racing speed',
    'Fuel in less fuel out over the laps of a run, each by the can.',
    30,
    'measuring can',
  ).optional(),
  lap: amount({
    means: 'length of that lap',
    measure: 'The circuit’s papers.',
    unit: 'km',
    si: 'm',
    min: 0.5,
    max: 30,
    usual: 'counted',
  }).optional(),
  specific: amount({
    means: 'fuel burnt for the work done, at full throttle',
    measure: 'The builder’s brake sheet; a racing engine on petrol mostly burns 280 to 350 g/kW h.',
    unit: 'g/kW h',
    si: 'kg/J',
    min: 150,
    max: 900,
    usual: 'brake',
  }).optional(),
});
