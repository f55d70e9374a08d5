/** Fuel aboard that differs from what the car was surveyed with, as a mass on the tub. */
import type { CarForm } from '../../car/read.ts';
import type { Doing } from '../../loadpath/loads/doing.ts';
import type { Numbers } from '../../loadpath/numbers.ts';
import type { Reading } from '../../measured/reading.ts';
import type { Kelvin, Kilogram, KilogramPerCubicMetre } from '../../units/quantity.ts';
import { formula, type Origin, type Working } from '../../working/working.ts';

export type FuelForm = NonNullable<CarForm['fuel']>;

/** Fuel aboard now, litres as read. */
export interface CarriedOn {
  readonly form: FuelForm;
  readonly fuel: Reading;
}

/** Petrol where the file tells no density: common practice for racing petrol, no source; the table's spread is 1 %. */
export const USUAL_DENSITY: KilogramPerCubicMetre = 745;

/** Petrol expands by so much of its volume a kelvin: API gravity tables for petrol, from memory. */
export const FUEL_EXPANSION = 0.00095;

const densityOf = formula({
  symbol: 'ρ',
  means: 'density of the fuel at this temperature',
  is: 'ρ_0/(1 + ε*(T - T_0))',
  unit: 'kg/m^3',
  terms: {
    ρ_0: { unit: 'kg/m^3', means: 'density as told' },
    ε: { unit: '1/K', means: 'growth of volume a kelvin' },
    T: { unit: 'K', means: 'temperature of the fuel' },
    T_0: { unit: 'K', means: 'temperature at which it has that density' },
  },
  source: 'FU-1',
});

const EXPANSION: Origin = { kind: 'table', name: 'petrol, 0.095 % a kelvin' };

/** Density at a temperature; as told where no temperature is. [FU-1] */
export function fuelDensity(
  { density, densityAt }: FuelForm,
  T: Kelvin | undefined,
  numbers: Numbers,
  working?: Working,
  from?: Origin,
): KilogramPerCubicMetre {
  const ρ_0 = numbers.or(density, USUAL_DENSITY);
  const T_0 = numbers.or(densityAt, 288.15);
  return densityOf({ ρ_0, ε: FUEL_EXPANSION, T: T ?? T_0, T_0 }, working, {
    ε: EXPANSION,
    ρ_0:
      density === undefined
        ? { kind: 'table', name: 'racing petrol' }
        : { kind: 'reading', path: density.path },
    T_0:
      densityAt === undefined
        ? { kind: 'constant', what: '15 °C' }
        : { kind: 'reading', path: densityAt.path },
    ...(from === undefined ? {} : { T: from }),
  });
}

/** What the car does, with the fuel that is aboard now. */
export function doingWith(doing: Doing, on: CarriedOn | undefined, numbers: Numbers): Doing {
  if (on === undefined) return doing;
  const { form, fuel } = on;
  const mass: Kilogram =
    (numbers.of(fuel) - numbers.of(form.surveyed)) * fuelDensity(form, undefined, numbers);
  return { ...doing, carried: [{ mass, at: numbers.point(form.at) }] };
}
