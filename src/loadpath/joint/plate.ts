/**
 * A plate or link that lets the engine grow: how far the warm engine bends it, and what that stresses it.
 *
 * In    the plate as filed, how much warmer the engine is
 * Out   growth across the plate and the bending stress at its fixings
 * Not   the pull along it, which the face gives; a plate that turns at its ends bends less
 *
 * JT-n are the equations of docs/theory/studs.md. Both ends held, one moved sideways: Roark, Formulas for Stress and
 * Strain, beams with both ends guided or fixed (from memory).
 */
import { clampedMaterial } from '../../materials/fastener-material.ts';
import type { Kelvin, Metre, Pascal } from '../../units/quantity.ts';
import { formula, type Working } from '../../working/working.ts';
import { fromReading, type Numbers } from '../numbers.ts';
import type { JointForm } from './stud-of-car.ts';

type PlateForm = NonNullable<JointForm['plates']>[number];

const growthAcross = formula({
  symbol: 'δ_e',
  means: 'growth of the engine across the plate',
  is: 'α_e*l_e*ΔT',
  unit: 'm',
  terms: {
    α_e: { unit: '1/K', means: 'expansion of what grows' },
    l_e: { unit: 'm', means: 'length that grows, from where the engine is held' },
    ΔT: { unit: 'K', means: 'how much warmer' },
  },
  source: 'JT-12',
  holds: 'with the tub cold: one that warms too takes a part of it away',
});

const bendingStress = formula({
  symbol: 'σ_p',
  means: 'bending stress of the plate at its fixings',
  is: '3*E*t*δ_e/L_p^2',
  unit: 'Pa',
  terms: {
    E: { unit: 'Pa', means: 'modulus of the plate' },
    t: { unit: 'm', means: 'thickness of the plate' },
    δ_e: { unit: 'm', means: 'growth of the engine across the plate' },
    L_p: { unit: 'm', means: 'length of the plate that bends' },
  },
  source: 'JT-13',
  holds: 'both ends held from turning, below yield',
});

export interface BentPlate {
  readonly growth: Metre;
  readonly stress: Pascal;
}

/** Stress at the ends of a strip, both held from turning, of which one is moved sideways.  [JT-13] */
export const stressOfBentPlate = (
  of: {
    readonly youngsModulus: Pascal;
    readonly thickness: Metre;
    readonly moved: Metre;
    readonly length: Metre;
  },
  working?: Working,
  from: Parameters<typeof bendingStress>[2] = {},
): Pascal =>
  bendingStress({ E: of.youngsModulus, t: of.thickness, δ_e: of.moved, L_p: of.length }, working, from);

/** Undefined where the file does not tell how the plate bends. */
export function bentPlate(
  plate: PlateForm,
  warm: Kelvin,
  numbers: Numbers,
  working?: Working,
): BentPlate | undefined {
  const { thickness, free, across, material, grows } = plate;
  if (thickness === undefined || free === undefined || across === undefined) return undefined;
  const [own, engine] = [clampedMaterial(material ?? ''), clampedMaterial(grows ?? '')];
  if (own === undefined || engine === undefined) return undefined;
  const growth = growthAcross({ α_e: engine.expansion, l_e: numbers.of(across), ΔT: warm }, working, {
    α_e: { kind: 'table', name: engine.name },
    l_e: fromReading(across),
  });
  const stress = stressOfBentPlate(
    {
      youngsModulus: own.youngsModulus,
      thickness: numbers.of(thickness),
      moved: growth,
      length: numbers.of(free),
    },
    working,
    { E: { kind: 'table', name: own.name }, t: fromReading(thickness), L_p: fromReading(free) },
  );
  return { growth, stress };
}
