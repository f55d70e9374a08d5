/**
 * Tube stock for exhaust primaries: density and growth.
 *
 * In    a material as the trade writes it
 * Out   the row of the table, or undefined (then `tubeMaterialsLike` names the nearest)
 * Not   strength hot: how long a primary lasts is no sum of this table
 *
 * Expansion is the mean from 20 °C to about the heat of a primary in use, 540 to 600 °C. Moduli hot are of producers'
 * data, from memory, to a tenth or so: they decide forces and leave places and strains as they are.
 *
 * [321]  Producers' data for types 321 and 347: density 7.92 g/cm³, mean expansion 20–600 °C 18.9e-6 1/K, as
 *        reproduced by tube distributors (seen)
 * [625]  Density 0.305 lb/in³ as reproduced by distributors (seen); 12.8e-6 1/K at 20–100 °C in Callister,
 *        Fundamentals of Materials Science and Engineering, 3rd ed., table B.6 (seen); 14.0e-6 to 538 °C from memory
 */
import type { Pascal, Ratio } from '../units/quantity.ts';
import { type Known, nearestNames } from './property.ts';

export interface TubeMaterial {
  readonly name: string;
  readonly means: string;
  /** kg/m³ */
  readonly density: number;
  /** Mean linear expansion from cold to the heat of a primary in use, 1/K. */
  readonly expansion: Ratio;
  /** Young's modulus at about the heat of a primary in use, 600 to 650 °C. */
  readonly hotModulus: Pascal;
  readonly source: string;
  readonly known: Known;
}

export const TUBE_MATERIALS: readonly TubeMaterial[] = [
  {
    name: 'nickel alloy 625',
    means: 'nickel-chromium-molybdenum, UNS N06625',
    density: 8440,
    expansion: 14.0e-6,
    hotModulus: 170e9,
    source: 'distributors’ data and Callister, table B.6, cold; expansion to 538 °C from memory',
    known: 'from memory',
  },
  {
    name: 'stainless 321',
    means: 'titanium-stabilised austenitic, UNS S32100',
    density: 7920,
    expansion: 18.9e-6,
    hotModulus: 150e9,
    source: 'producers’ data as reproduced by tube distributors, 20 to 600 °C',
    known: 'seen',
  },
  {
    name: 'stainless 304',
    means: 'austenitic, UNS S30400',
    density: 8000,
    expansion: 18.4e-6,
    hotModulus: 150e9,
    source: 'producers’ data, 0 to 538 °C',
    known: 'from memory',
  },
  {
    name: 'mild steel',
    means: 'low carbon, for mock-ups and for plain cars',
    density: 7850,
    expansion: 14.4e-6,
    hotModulus: 145e9,
    source: 'handbook mean for low-carbon steel, 20 to 540 °C',
    known: 'from memory',
  },
  {
    name: 'titanium grade 2',
    means: 'commercially pure; not for the hottest part of a primary',
    density: 4510,
    expansion: 9.7e-6,
    hotModulus: 70e9,
    source: 'producers’ data, 20 to 540 °C',
    known: 'from memory',
  },
];

export const tubeMaterial = (name: string): TubeMaterial | undefined =>
  TUBE_MATERIALS.find((each) => each.name === name.trim().toLowerCase());

export const tubeMaterialsLike = (name: string): readonly string[] =>
  nearestNames(
    name,
    TUBE_MATERIALS.map((each) => each.name),
  );
