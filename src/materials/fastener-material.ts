/**
 * Stud and nut stock: strength by property class or by material, moduli, expansion.
 *
 * In    a property class or material as the trade writes it: `10.9`, `grade 8`, `Ti-6Al-4V`
 * Out   the row of the table, or undefined (then `fastenerMaterialsLike` names the nearest)
 * Not   a certificate. Studs of these cars were seldom of a standard class: hardness and drawing rule
 *
 * [ISO898-1]   ISO 898-1:2013, minimum properties, nominal sizes to 16 mm, as reproduced by fastener distributors
 * [J429]       SAE J429, grades 5 and 8, 1/4 to 1 in (Shigley, 9th ed., table 8-9)
 */
import type { Pascal, Ratio } from '../units/quantity.ts';
import { type Known, nearestNames } from './property.ts';

export interface FastenerMaterial {
  readonly name: string;
  readonly means: string;
  readonly proof: Pascal;
  /** Stress at 0.2 % lasting strain. */
  readonly yield: Pascal;
  readonly strength: Pascal;
  readonly youngsModulus: Pascal;
  /** Linear expansion, 1/K. */
  readonly expansion: Ratio;
  readonly source: string;
  readonly known: Known;
}

const MPa = 1e6;
const KSI = 6.894757e6;
const STEEL = { youngsModulus: 205e9, expansion: 11.5e-6 } as const;

const isoClass = (name: string, proof: number, yields: number, strength: number): FastenerMaterial => ({
  name,
  means: `steel of property class ${name}, to 16 mm`,
  proof: proof * MPa,
  yield: yields * MPa,
  strength: strength * MPa,
  ...STEEL,
  source: 'ISO 898-1:2013 minimum values, as reproduced by fastener distributors',
  known: 'seen',
});

const gradeOf = (name: string, proof: number, yields: number, strength: number): FastenerMaterial => ({
  name,
  means: `steel, SAE J429 ${name}, 1/4 to 1 in`,
  proof: proof * KSI,
  yield: yields * KSI,
  strength: strength * KSI,
  ...STEEL,
  source: 'SAE J429 as printed in Shigley, 9th ed., table 8-9',
  known: 'from memory',
});

export const FASTENER_MATERIALS: readonly FastenerMaterial[] = [
  isoClass('8.8', 580, 640, 800),
  isoClass('10.9', 830, 940, 1040),
  isoClass('12.9', 970, 1100, 1220),
  gradeOf('grade 5', 85, 92, 120),
  gradeOf('grade 8', 120, 130, 150),
  {
    name: '4340 stud',
    means: 'nickel-chromium-molybdenum steel, hardened and tempered to 1240 MPa at the least (180 ksi)',
    proof: 960 * MPa,
    yield: 1070 * MPa,
    strength: 1240 * MPa,
    ...STEEL,
    source: 'common practice for studs of this time, no source; the certificate rules',
    known: 'assumed',
  },
  {
    name: 'Ti-6Al-4V',
    means: 'titanium alloy, solution treated and aged, bar to 25 mm',
    proof: 830 * MPa,
    yield: 970 * MPa,
    strength: 1100 * MPa,
    youngsModulus: 114e9,
    expansion: 8.6e-6,
    source: 'aerospace fastener stock at 160 ksi class, general handbook values',
    known: 'from memory',
  },
];

export const fastenerMaterial = (name: string): FastenerMaterial | undefined =>
  FASTENER_MATERIALS.find((each) => each.name.toLowerCase() === name.trim().toLowerCase());

export const fastenerMaterialsLike = (name: string): readonly string[] =>
  nearestNames(
    name,
    FASTENER_MATERIALS.map((each) => each.name),
  );

/** What a clamped part or a threaded parent is made of. */
export interface ClampedMaterial {
  readonly name: string;
  readonly youngsModulus: Pascal;
  readonly expansion: Ratio;
  /** Shear strength at which its threads strip. */
  readonly shearStrength: Pascal;
  /** Pressure under a nut or washer that it bears without creeping. */
  readonly bearing: Pascal;
  readonly source: string;
  readonly known: Known;
}

const clamped = (
  name: string,
  E: number,
  expansion: number,
  shear: number,
  bearing: number,
): ClampedMaterial => ({
  name,
  youngsModulus: E * 1e9,
  expansion: expansion * 1e-6,
  shearStrength: shear * MPa,
  bearing: bearing * MPa,
  source: 'general handbook values, low end; the maker’s sheet rules',
  known: 'from memory',
});

export const CLAMPED_MATERIALS: readonly ClampedMaterial[] = [
  clamped('cast aluminium', 72, 21.5, 130, 220),
  clamped('wrought aluminium', 71, 23, 190, 300),
  clamped('cast magnesium', 45, 26, 100, 140),
  clamped('steel', 205, 11.5, 400, 500),
  clamped('titanium', 114, 8.6, 500, 900),
  clamped('cast iron', 110, 10.5, 200, 600),
];

export const clampedMaterial = (name: string): ClampedMaterial | undefined =>
  CLAMPED_MATERIALS.find((each) => each.name === name.trim().toLowerCase());

export const clampedMaterialsLike = (name: string): readonly string[] =>
  nearestNames(
    name,
    CLAMPED_MATERIALS.map((each) => each.name),
  );
