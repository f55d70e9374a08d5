/**
 * Names of units and what they are worth in SI.
 *
 * In    a unit as a mechanic or a formula writes it: `mm`, `N/mm`, `lbf·in/deg`, `kg m^2`, `N m/rad`
 * Out   its factor to SI, its zero shift (temperatures alone have one), and its dimension
 *
 * The plane angle counts as a pure number (SI Brochure, 9th ed., 2.3.3), so that `G*J/L` may be called N m/rad.
 *
 * [BIPM]  The International System of Units, 9th ed., 2019: prefixes, units accepted for use with the SI
 * [SP811] NIST Special Publication 811, 2008 ed., appendix B: inch 0.0254 m, pound 0.453 592 37 kg (both exact)
 */

/** Powers of metre, kilogram, second and kelvin. */
export type Dimension = readonly [length: number, mass: number, time: number, temperature: number];

export interface Unit {
  /** One of this unit is `factor` SI units. */
  readonly factor: number;
  /** Added after the factor: SI = value × factor + shift. Only temperatures have one. */
  readonly shift: number;
  readonly dimension: Dimension;
}

const INCH = 0.0254;
const POUND = 0.45359237;
const POUND_FORCE = POUND * 9.80665;

const PURE: Dimension = [0, 0, 0, 0];
const LENGTH: Dimension = [1, 0, 0, 0];
const VOLUME: Dimension = [3, 0, 0, 0];
const MASS: Dimension = [0, 1, 0, 0];
const FORCE: Dimension = [1, 1, -2, 0];
const PRESSURE: Dimension = [-1, 1, -2, 0];
const ENERGY: Dimension = [2, 1, -2, 0];
const TIME: Dimension = [0, 0, 1, 0];
const KELVIN: Dimension = [0, 0, 0, 1];

const simple = (factor: number, dimension: Dimension, shift = 0): Unit => ({ factor, shift, dimension });

const NAMED: Readonly<Record<string, Unit>> = {
  '1': simple(1, PURE),
  '%': simple(0.01, PURE),
  /** Part of a whole: 1 is all of it. Spoken in per cent. */
  share: simple(1, PURE),
  rad: simple(1, PURE),
  mrad: simple(1e-3, PURE),
  deg: simple(Math.PI / 180, PURE),
  '°': simple(Math.PI / 180, PURE),
  arcmin: simple(Math.PI / 10800, PURE),
  turn: simple(2 * Math.PI, PURE),
  m: simple(1, LENGTH),
  cm: simple(1e-2, LENGTH),
  mm: simple(1e-3, LENGTH),
  um: simple(1e-6, LENGTH),
  µm: simple(1e-6, LENGTH),
  km: simple(1e3, LENGTH),
  in: simple(INCH, LENGTH),
  thou: simple(INCH / 1000, LENGTH),
  ft: simple(12 * INCH, LENGTH),
  mile: simple(5280 * 12 * INCH, LENGTH),
  l: simple(1e-3, VOLUME),
  ml: simple(1e-6, VOLUME),
  kg: simple(1, MASS),
  g: simple(1e-3, MASS),
  lb: simple(POUND, MASS),
  N: simple(1, FORCE),
  kN: simple(1e3, FORCE),
  kgf: simple(9.80665, FORCE),
  lbf: simple(POUND_FORCE, FORCE),
  Pa: simple(1, PRESSURE),
  kPa: simple(1e3, PRESSURE),
  MPa: simple(1e6, PRESSURE),
  GPa: simple(1e9, PRESSURE),
  bar: simple(1e5, PRESSURE),
  mbar: simple(1e2, PRESSURE),
  hPa: simple(1e2, PRESSURE),
  psi: simple(POUND_FORCE / INCH ** 2, PRESSURE),
  ksi: simple((1e3 * POUND_FORCE) / INCH ** 2, PRESSURE),
  J: simple(1, ENERGY),
  kJ: simple(1e3, ENERGY),
  s: simple(1, TIME),
  ms: simple(1e-3, TIME),
  min: simple(60, TIME),
  h: simple(3600, TIME),
  mph: simple((5280 * 12 * INCH) / 3600, [1, 0, -1, 0]),
  /** Standard acceleration of free fall, which the trade writes g; that letter alone is the gram. */
  gn: simple(9.80665, [1, 0, -2, 0]),
  Hz: simple(1, [0, 0, -1, 0]),
  /** Turning: an angle over time, so that torque times it is power. */
  rpm: simple((2 * Math.PI) / 60, [0, 0, -1, 0]),
  W: simple(1, [2, 1, -3, 0]),
  kW: simple(1e3, [2, 1, -3, 0]),
  /** 550 foot-pounds a second, and the metric horsepower of 75 kilogram-force metres a second. */
  hp: simple(550 * 12 * INCH * POUND_FORCE, [2, 1, -3, 0]),
  PS: simple(75 * 9.80665, [2, 1, -3, 0]),
  K: simple(1, KELVIN),
  degC: simple(1, KELVIN, 273.15),
  '°C': simple(1, KELVIN, 273.15),
  degF: simple(5 / 9, KELVIN, 273.15 - (32 * 5) / 9),
  '°F': simple(5 / 9, KELVIN, 273.15 - (32 * 5) / 9),
};

const SUPERSCRIPTS: Readonly<Record<string, string>> = { '²': '^2', '³': '^3', '⁴': '^4', '⁻': '^-' };

const cache = new Map<string, Unit | undefined>();

/**
 * The unit of this name, or undefined when it is not one we know.
 *
 * Factors are joined by a space, `·` or `*`; everything after the first `/` divides, as it is printed:
 * `kg/m^3`, `N m/rad`, `lbf/in`.
 */
export function unitNamed(name: string): Unit | undefined {
  if (!cache.has(name)) cache.set(name, compound(name));
  return cache.get(name);
}

function compound(name: string): Unit | undefined {
  const plain = name.trim().replace(/[²³⁴⁻]/g, (mark) => SUPERSCRIPTS[mark]!);
  const [above, ...below] = plain.split('/');
  if (above === undefined || below.length > 1) return undefined;
  const parts: { word: string; sign: 1 | -1 }[] = [];
  for (const word of words(above)) parts.push({ word, sign: 1 });
  for (const word of below.flatMap(words)) parts.push({ word, sign: -1 });
  if (parts.length === 0) return undefined;
  let factor = 1;
  let dimension: Dimension = PURE;
  for (const { word, sign } of parts) {
    const matched = /^(.*?)(?:\^(-?\d+))?$/.exec(word)!;
    const unit = NAMED[matched[1]!];
    if (unit === undefined) return undefined;
    if (parts.length === 1 && matched[2] === undefined) return unit;
    // a temperature inside a compound unit is a difference: its zero shift does not take part
    const power = sign * Number(matched[2] ?? 1);
    factor *= unit.factor ** power;
    dimension = combine(dimension, unit.dimension, power);
  }
  return { factor, shift: 0, dimension };
}

const words = (text: string): string[] => text.split(/[\s·*]+/).filter((word) => word !== '');

/** Dimension of a × b^power. */
export function combine(a: Dimension, b: Dimension, power: number): Dimension {
  return [a[0] + power * b[0], a[1] + power * b[1], a[2] + power * b[2], a[3] + power * b[3]];
}

export function sameDimension(a: Dimension, b: Dimension): boolean {
  return a.every((power, index) => Math.abs(power - b[index]!) < 1e-9);
}

/** The unit of a name that the program itself wrote: an unknown one is our own mistake. */
export function ownUnit(name: string): Unit {
  const unit = unitNamed(name);
  if (unit === undefined) throw new Error(`no such unit: "${name}"`);
  return unit;
}

/** SI value of `value` in the unit `name`. */
export const toSI = (value: number, name: string): number => {
  const unit = ownUnit(name);
  return value * unit.factor + unit.shift;
};

/** What an SI value is in the unit `name`. */
export const fromSI = (value: number, name: string): number => {
  const unit = ownUnit(name);
  return (value - unit.shift) / unit.factor;
};

/** Names of all single units of the same dimension, for "write it in …" messages. */
export function unitsLike(name: string): readonly string[] {
  const wanted = ownUnit(name).dimension;
  return Object.keys(NAMED).filter((key) => sameDimension(NAMED[key]!.dimension, wanted));
}
