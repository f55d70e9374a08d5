/**
 * Moduli that the file leaves to the material table, as readings like any other.
 *
 * A property from a table is known to a per cent or so, and every part of the same stock shares it. Taken as one
 * reading for each material it comes into every spread once, under its own name.
 */
import { springMaterial } from '../materials/spring-material.ts';
import type { Reading } from '../measured/reading.ts';
import type { RawCar } from './form/car.ts';
import type { Placed, Placing } from './place.ts';

type Form = Placed<RawCar>;

interface Stock {
  readonly material?: string | undefined;
  readonly shearModulus?: Reading | undefined;
}

/** Standard uncertainty where the table gives no range: one per cent, common practice, no source. */
const USUAL_PART = 0.01;

export function withTableModuli(placing: Placing<RawCar>): Placing<RawCar> {
  const byMaterial = new Map<string, Reading>();
  const modulus = (name: string): Reading | undefined => {
    const known = springMaterial(name)?.shearModulus;
    if (known === undefined) return undefined;
    const found = byMaterial.get(name);
    if (found !== undefined) return found;
    const { value, low, high, source } = known;
    const reading: Reading = {
      index: placing.readings.length + byMaterial.size,
      path: `materials.${name}.shearModulus`,
      means: `shear modulus of ${name}`,
      value,
      // a range with nothing to choose inside it: GUM 4.3.7
      u: low === undefined || high === undefined ? USUAL_PART * value : (high - low) / Math.sqrt(12),
      shared: 0,
      unit: 'Pa',
      text: `material table: ${source}`,
      spread: { kind: 'usual', class: 'table' },
      mirrored: false,
    };
    byMaterial.set(name, reading);
    return reading;
  };
  const filled = <S extends Stock | undefined>(stock: S): S => {
    if (stock?.material === undefined || stock.shearModulus !== undefined) return stock;
    const shearModulus = modulus(stock.material);
    return shearModulus === undefined ? stock : { ...stock, shearModulus };
  };
  const corner = (of: Form['front']['left']): Form['front']['left'] => ({
    ...of,
    ...(of.coil === undefined ? {} : { coil: filled(of.coil) }),
    ...(of.bar === undefined ? {} : { bar: filled(of.bar) }),
  });
  const axle = (of: Form['front']): Form['front'] => ({
    ...of,
    left: corner(of.left),
    right: corner(of.right),
    ...(of.antiRollBar === undefined
      ? {}
      : { antiRollBar: { ...of.antiRollBar, bar: filled(of.antiRollBar.bar) } }),
  });
  const car = { ...placing.car, front: axle(placing.car.front), rear: axle(placing.car.rear) };
  const readings = [...placing.readings, ...byMaterial.values()];
  return { ...placing, car, readings, values: Float64Array.from(readings, (each) => each.value) };
}
