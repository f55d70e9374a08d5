/**
 * Coils and bars of the car file as the spring room takes them, with where each number came from.
 *
 * What the file leaves out comes from the material table; the working then says so.
 */
import { springMaterial } from '../materials/spring-material.ts';
import type { NewtonMetrePerRadian, NewtonPerMetre } from '../units/quantity.ts';
import type { Origin, Working } from '../working/working.ts';
import type { CornerForm } from './corner-of-car.ts';
import { fromReading, fromReadingOr, type Numbers } from './numbers.ts';
import { type CoilSpring, computedRate, type Origins } from './spring/coil-spring.ts';
import { type EndTransition, type TorsionBar, torsionBarRate } from './spring/torsion-bar.ts';

export type CoilForm = NonNullable<CornerForm['coil']>;
export type BarForm = NonNullable<CornerForm['bar']>;

/** Steel, where the file names no material: EN 13906-1 (from memory). A measured rate does not lean on these. */
const STEEL = { shearModulus: 79.5e9, youngsModulus: 206e9, density: 7850 } as const;

const stock = (name: string | undefined) => (name === undefined ? undefined : springMaterial(name));

/** A coil with the origins of its numbers. */
export function coilOf(
  form: CoilForm,
  numbers: Numbers,
): { readonly coil: CoilSpring; readonly from: Origins } {
  const material = stock(form.material);
  const table = form.material ?? 'spring steel';
  return {
    coil: {
      wire: numbers.of(form.wireDiameter),
      meanDiameter: numbers.of(form.meanDiameter),
      activeCoils: numbers.of(form.activeCoils),
      countedCoils: numbers.of(form.totalCoils),
      ends: form.ends,
      freeLength: numbers.of(form.freeLength),
      shearModulus: numbers.or(form.shearModulus, material?.shearModulus.value ?? STEEL.shearModulus),
      youngsModulus: material?.youngsModulus.value ?? STEEL.youngsModulus,
      density: material?.density.value ?? STEEL.density,
      ...(form.rate === undefined ? {} : { measuredRate: numbers.of(form.rate) }),
    },
    from: {
      d: fromReading(form.wireDiameter),
      D: fromReading(form.meanDiameter),
      n: fromReading(form.activeCoils),
      n_t: fromReading(form.totalCoils),
      L_0: fromReading(form.freeLength),
      G: fromReadingOr(form.shearModulus, table),
      E: { kind: 'table', name: table },
      ρ: { kind: 'table', name: table },
    },
  };
}

/** Rate of the coil: measured when the file has it, else from wire and coils. */
export function rateOfCoil(form: CoilForm, numbers: Numbers, working?: Working): NewtonPerMetre {
  const { coil, from } = coilOf(form, numbers);
  if (form.rate === undefined) return computedRate(coil, working, from);
  const value = numbers.of(form.rate);
  working?.add(asMeasured('R', 'rate of the coil spring', value, 'N/m', fromReading(form.rate), 'SP-1'));
  return value;
}

function endOf(form: BarForm['rockerEnd'], numbers: Numbers): EndTransition {
  if (form.form === 'square' || form.headDiameter === undefined || form.size === undefined)
    return { kind: 'none' };
  const headDiameter = numbers.of(form.headDiameter);
  const size = numbers.of(form.size);
  return form.form === 'taper'
    ? { kind: 'taper', length: size, headDiameter }
    : { kind: 'fillet', radius: size, headDiameter };
}

function originsOfEnd({ form, headDiameter, size }: BarForm['rockerEnd']): Origins {
  if (headDiameter === undefined || size === undefined) return {};
  return { H: fromReading(headDiameter), [form === 'taper' ? 'l' : 'R']: fromReading(size) };
}

/** A bar with the origins of its numbers, and of those of its two ends. */
export function barOf(
  form: BarForm,
  numbers: Numbers,
): { readonly bar: TorsionBar; readonly from: Origins; readonly ofEnds: readonly [Origins, Origins] } {
  const material = stock(form.material);
  return {
    bar: {
      diameter: numbers.of(form.diameter),
      bore: numbers.or(form.bore, 0),
      parallelLength: numbers.of(form.parallelLength),
      ends: [endOf(form.rockerEnd, numbers), endOf(form.anchorEnd, numbers)],
      shearModulus: numbers.or(form.shearModulus, material?.shearModulus.value ?? STEEL.shearModulus),
      density: material?.density.value ?? STEEL.density,
    },
    from: {
      D: fromReading(form.diameter),
      d: form.bore === undefined ? { kind: 'constant', what: 'a solid bar' } : fromReading(form.bore),
      L_p: fromReading(form.parallelLength),
      G: fromReadingOr(form.shearModulus, form.material ?? 'spring steel'),
    },
    ofEnds: [originsOfEnd(form.rockerEnd), originsOfEnd(form.anchorEnd)],
  };
}

/** Rate of the bar: measured when the file has it, else from its dimensions. */
export function rateOfBar(form: BarForm, numbers: Numbers, working?: Working): NewtonMetrePerRadian {
  const { bar, from, ofEnds } = barOf(form, numbers);
  if (form.rate === undefined) return torsionBarRate(bar, working, from, ofEnds);
  const value = numbers.of(form.rate);
  working?.add(
    asMeasured('k_t', 'torsional rate of the bar', value, 'N m/rad', fromReading(form.rate), 'SP-22'),
  );
  return value;
}

const asMeasured = (
  symbol: string,
  means: string,
  value: number,
  unit: string,
  from: Origin,
  source: string,
) =>
  ({
    kind: 'solved',
    symbol,
    means,
    method: 'as measured; it rules over the rate from the dimensions',
    value,
    unit,
    source,
    terms: [{ symbol, means, value, unit, from }],
  }) as const;
