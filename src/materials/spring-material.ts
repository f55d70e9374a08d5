/**
 * Spring wire and torsion-bar stock: density, moduli, strength, temperature.
 *
 * In    a name as the trade writes it
 * Out   the row of the table, or undefined (then `springMaterialsLike` names the nearest)
 * Not   a certificate: the strength of the piece in hand is what its own certificate or hardness says
 *
 * A strength range is what a sound piece to the standard may have; the low end is the one to lean on. The shear
 * modulus belongs to the material and its heat treatment: take it once, and keep it for all parts of that stock.
 *
 * [EN10270-2]  EN 10270-2:2011, oil hardened and tempered spring wire, as printed in a wire mill's data sheet
 * [EN13906-1]  EN 13906-1:2013, table of moduli (from memory)
 * [Shigley10]  Budynas & Nisbett, Shigley's Mechanical Engineering Design, 10th ed., tables 10-4 and 10-5
 */
import type { Metre, Pascal } from '../units/quantity.ts';
import { nearestNames, type Property, type Range } from './property.ts';

/** Tensile strength as the source gives it. Diameters in metres, strengths in pascals. */
export type Strength =
  | {
      readonly kind: 'one';
      readonly low: Pascal;
      readonly high: Pascal;
      readonly source: string;
      readonly known: Property['known'];
    }
  | {
      readonly kind: 'by diameter';
      readonly rows: readonly { readonly diameter: Metre; readonly low: Pascal; readonly high: Pascal }[];
      readonly source: string;
      readonly known: Property['known'];
    }
  | {
      /** A/d^m with A in MPa·mm^m and d in mm, as the table prints it. */
      readonly kind: 'power law';
      readonly A: number;
      readonly m: number;
      readonly thinnest: Metre;
      readonly thickest: Metre;
      readonly source: string;
      readonly known: Property['known'];
    };

export interface SpringMaterial {
  readonly name: string;
  readonly kind: 'wire' | 'bar';
  readonly means: string;
  readonly density: Property;
  readonly youngsModulus: Property;
  readonly shearModulus: Property;
  readonly tensileStrength: Strength;
  /** Yield in shear as a part of the tensile strength. */
  readonly shearYieldShare: Property;
  /** Highest working temperature, kelvin. */
  readonly hottest: Property;
  readonly note?: string;
}

const MPa = 1e6;
const GPa = 1e9;
const MM = 1e-3;
const degC = (celsius: number): number => celsius + 273.15;

const seen = (value: number, source: string, range: Partial<Range> = {}): Property => ({
  value,
  source,
  known: 'seen',
  ...range,
});
const memory = (value: number, source: string, range: Partial<Range> = {}): Property => ({
  value,
  source,
  known: 'from memory',
  ...range,
});

const TORSION_OF_TENSION = 'von Mises: 0.577 of the tensile yield, and yield 0.85 to 0.92 of the strength';
const WIRE_SHEAR_YIELD = memory(0.45, 'Shigley10 table 10-6, before set removed', { low: 0.45, high: 0.5 });

export const SPRING_MATERIALS: readonly SpringMaterial[] = [
  {
    name: 'VDSiCr wire',
    kind: 'wire',
    means: 'chrome-silicon valve-spring wire, oil hardened and tempered (EN 10270-2)',
    density: memory(7850, 'EN13906-1'),
    youngsModulus: seen(206 * GPa, 'EN10270-2, mill data sheet'),
    shearModulus: memory(79.5 * GPa, 'EN13906-1', { low: 77.2 * GPa, high: 79.5 * GPa }),
    tensileStrength: {
      kind: 'by diameter',
      source: 'EN10270-2, mill data sheet',
      known: 'seen',
      rows: [
        { diameter: 3 * MM, low: 1910 * MPa, high: 2010 * MPa },
        { diameter: 4 * MM, low: 1860 * MPa, high: 1960 * MPa },
        { diameter: 5 * MM, low: 1810 * MPa, high: 1910 * MPa },
        { diameter: 6 * MM, low: 1760 * MPa, high: 1860 * MPa },
      ],
    },
    shearYieldShare: memory(0.5, 'Shigley10 table 10-6, before set removed', { low: 0.45, high: 0.5 }),
    hottest: memory(degC(220), 'common practice for chrome-silicon wire', {
      low: degC(175),
      high: degC(250),
    }),
    note: 'tabulated from 3 to 6 mm; for thicker wire give the certificate',
  },
  {
    name: 'music wire',
    kind: 'wire',
    means: 'patented cold-drawn high-carbon wire (ASTM A228 kind)',
    density: memory(7850, 'Shigley10'),
    youngsModulus: memory(196.5 * GPa, 'Shigley10 table 10-5', { low: 193 * GPa, high: 203.4 * GPa }),
    shearModulus: seen(81 * GPa, 'Shigley10 prob. 10-3', { low: 80 * GPa, high: 82.7 * GPa }),
    tensileStrength: {
      kind: 'power law',
      A: 2211,
      m: 0.145,
      thinnest: 0.1 * MM,
      thickest: 6.5 * MM,
      source: 'Shigley10 table 10-4 (A and m seen in prob. 10-3, range from memory)',
      known: 'seen',
    },
    shearYieldShare: seen(0.45, 'Shigley10 prob. 10-3'),
    hottest: memory(degC(120), 'common practice for patented wire'),
  },
  {
    name: 'patented wire SH/DH',
    kind: 'wire',
    means: 'patented cold-drawn unalloyed spring wire (EN 10270-1)',
    density: memory(7850, 'EN13906-1'),
    youngsModulus: memory(206 * GPa, 'EN13906-1'),
    shearModulus: memory(81.5 * GPa, 'EN13906-1', { low: 80 * GPa, high: 82.7 * GPa }),
    tensileStrength: {
      kind: 'power law',
      A: 2211,
      m: 0.145,
      thinnest: 0.3 * MM,
      thickest: 6.5 * MM,
      source: 'taken as music wire, Shigley10 table 10-4',
      known: 'assumed',
    },
    shearYieldShare: WIRE_SHEAR_YIELD,
    hottest: memory(degC(80), 'EN13906-1: relaxation counts above this', { low: degC(80), high: degC(150) }),
  },
  {
    name: 'chrome-vanadium wire',
    kind: 'wire',
    means: 'chrome-vanadium wire, oil hardened and tempered (ASTM A232 kind)',
    density: memory(7850, 'Shigley10'),
    youngsModulus: memory(203.4 * GPa, 'Shigley10 table 10-5'),
    shearModulus: memory(77.2 * GPa, 'Shigley10 table 10-5', { low: 77.2 * GPa, high: 79.5 * GPa }),
    tensileStrength: {
      kind: 'power law',
      A: 2005,
      m: 0.168,
      thinnest: 0.8 * MM,
      thickest: 11.1 * MM,
      source: 'Shigley10 table 10-4',
      known: 'from memory',
    },
    shearYieldShare: memory(0.5, 'Shigley10 table 10-6'),
    hottest: memory(degC(190), 'common practice for chrome-vanadium wire'),
  },
  {
    name: 'chrome-silicon wire',
    kind: 'wire',
    means: 'chrome-silicon wire, oil hardened and tempered (ASTM A401 kind)',
    density: memory(7850, 'Shigley10'),
    youngsModulus: memory(203.4 * GPa, 'Shigley10 table 10-5'),
    shearModulus: memory(77.2 * GPa, 'Shigley10 table 10-5', { low: 77.2 * GPa, high: 79.5 * GPa }),
    tensileStrength: {
      kind: 'power law',
      A: 1974,
      m: 0.108,
      thinnest: 1.6 * MM,
      thickest: 9.5 * MM,
      source: 'Shigley10 table 10-4',
      known: 'from memory',
    },
    shearYieldShare: memory(0.5, 'Shigley10 table 10-6'),
    hottest: memory(degC(220), 'common practice for chrome-silicon wire', {
      low: degC(175),
      high: degC(250),
    }),
    note: 'racing coils are often thicker than the table goes: give the certificate',
  },
  {
    name: '51CrV4 bar',
    kind: 'bar',
    means: 'chrome-vanadium spring steel bar, quenched and tempered (EN 10089)',
    density: memory(7850, 'EN 10089'),
    youngsModulus: memory(206 * GPa, 'EN 10089'),
    shearModulus: memory(78.5 * GPa, 'EN 10089', { low: 78 * GPa, high: 79.3 * GPa }),
    tensileStrength: {
      kind: 'one',
      low: 1400 * MPa,
      high: 1650 * MPa,
      source: 'EN 10089',
      known: 'from memory',
    },
    shearYieldShare: memory(0.51, TORSION_OF_TENSION, { low: 0.49, high: 0.53 }),
    hottest: memory(degC(150), 'common practice for tempered spring steel'),
  },
  {
    name: '300M bar',
    kind: 'bar',
    means: '4340 with silicon, vacuum remelted, tempered at about 300 °C',
    density: seen(7850, 'supplier sheet', { low: 7830, high: 7850 }),
    youngsModulus: memory(205 * GPa, 'supplier sheets'),
    shearModulus: memory(79 * GPa, 'supplier sheets', { low: 77 * GPa, high: 80 * GPa }),
    tensileStrength: {
      kind: 'one',
      low: 1862 * MPa,
      high: 1981 * MPa,
      source: 'two supplier sheets that disagree on the minimum (270 or 280 ksi)',
      known: 'seen',
    },
    shearYieldShare: memory(0.48, TORSION_OF_TENSION, { low: 0.46, high: 0.49 }),
    hottest: memory(degC(200), 'well below the tempering temperature'),
    note: 'takes hydrogen when plated or pickled; a corrosion pit breaks it: keep it dry and whole-skinned',
  },
  {
    name: '4340 bar',
    kind: 'bar',
    means: 'nickel-chrome-molybdenum steel, quenched and tempered to about 45 to 48 HRC',
    density: memory(7850, 'common data'),
    youngsModulus: memory(205 * GPa, 'common data'),
    shearModulus: memory(79.3 * GPa, 'common data', { low: 77 * GPa, high: 80 * GPa }),
    tensileStrength: {
      kind: 'one',
      low: 1450 * MPa,
      high: 1600 * MPa,
      source: 'hardness conversion',
      known: 'from memory',
    },
    shearYieldShare: memory(0.51, TORSION_OF_TENSION, { low: 0.49, high: 0.53 }),
    hottest: memory(degC(200), 'well below the tempering temperature'),
  },
  {
    name: 'maraging 18Ni300 bar',
    kind: 'bar',
    means: '18 % nickel maraging steel, aged',
    density: memory(8000, 'common data', { low: 8000, high: 8100 }),
    youngsModulus: memory(190 * GPa, 'common data', { low: 186 * GPa, high: 200 * GPa }),
    shearModulus: memory(72.5 * GPa, 'common data', { low: 71 * GPa, high: 76 * GPa }),
    tensileStrength: {
      kind: 'one',
      low: 1930 * MPa,
      high: 2070 * MPa,
      source: 'common data',
      known: 'from memory',
    },
    shearYieldShare: memory(0.56, TORSION_OF_TENSION, { low: 0.54, high: 0.57 }),
    hottest: memory(degC(350), 'common data'),
  },
  {
    name: 'Ti-6Al-4V bar',
    kind: 'bar',
    means: 'titanium alloy grade 5, annealed',
    density: seen(4420, 'supplier sheet, grade 5'),
    youngsModulus: seen(114 * GPa, 'supplier sheet, grade 5'),
    shearModulus: memory(43 * GPa, 'common data', { low: 42 * GPa, high: 44 * GPa }),
    tensileStrength: {
      kind: 'one',
      low: 897 * MPa,
      high: 1000 * MPa,
      source: 'supplier sheet, grade 5',
      known: 'seen',
    },
    shearYieldShare: memory(0.53, TORSION_OF_TENSION, { low: 0.52, high: 0.54 }),
    hottest: memory(degC(300), 'common data'),
    note: 'very sensitive to notches and fretting: steel rules of thumb for splines and radii do not carry over',
  },
];

const NAMES = SPRING_MATERIALS.map((each) => each.name);

export const springMaterial = (name: string): SpringMaterial | undefined =>
  SPRING_MATERIALS.find((each) => each.name.toLowerCase() === name.trim().toLowerCase());

/** Names in the table most like one that is not. */
export const springMaterialsLike = (name: string): readonly string[] => nearestNames(name, NAMES);

/**
 * Tensile strength at a diameter, low and high end, or undefined where the source does not go.
 *
 * Between two tabulated diameters the straight line is taken; past the table's ends nothing is.
 */
export function tensileStrength(material: SpringMaterial, diameter: Metre): Range | undefined {
  const strength = material.tensileStrength;
  switch (strength.kind) {
    case 'one':
      return { low: strength.low, high: strength.high };
    case 'power law': {
      if (diameter < strength.thinnest || diameter > strength.thickest) return undefined;
      const value = (strength.A / (diameter / MM) ** strength.m) * MPa;
      return { low: value, high: value };
    }
    case 'by diameter': {
      const above = strength.rows.findIndex((row) => row.diameter >= diameter);
      if (above < 0) return undefined;
      const to = strength.rows[above]!;
      if (to.diameter === diameter) return { low: to.low, high: to.high };
      if (above === 0) return undefined;
      const from = strength.rows[above - 1]!;
      const part = (diameter - from.diameter) / (to.diameter - from.diameter);
      return {
        low: from.low + part * (to.low - from.low),
        high: from.high + part * (to.high - from.high),
      };
    }
  }
}

/** Yield in shear at a diameter by the low end of the strength, or undefined where that is not known. */
export function shearYield(material: SpringMaterial, diameter: Metre): Pascal | undefined {
  const strength = tensileStrength(material, diameter);
  return strength === undefined ? undefined : material.shearYieldShare.value * strength.low;
}
