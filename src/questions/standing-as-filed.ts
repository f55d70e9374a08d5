/** How the car stands under a load by its readings as filed: several questions about one load ask for it in turn. */
import type { Car } from '../car/read.ts';
import { standingOf } from '../loadpath/figures/loads.ts';
import type { CarStanding } from '../loadpath/loads/car-equilibrium.ts';
import type { Doing } from '../loadpath/loads/doing.ts';
import { Numbers } from '../loadpath/numbers.ts';

const last = new WeakMap<Car, { readonly under: string; readonly standing: CarStanding }>();

/** The last answer of a car is kept, as a slider over a load asks for each place of it three or four times. */
export function standingAsFiled(car: Car, doing: Doing): CarStanding {
  const under = JSON.stringify(doing);
  const known = last.get(car);
  if (known?.under === under) return known.standing;
  const standing = standingOf(car.form, doing, new Numbers(car.values));
  last.set(car, { under, standing });
  return standing;
}
