/**
 * What speaks against making a bar as it is ordered.
 *
 * In    a bar as ordered
 * Out   the sentence that refuses the order, or the sentences that stand in bold at its head
 * Not   a strength calculation: shank only, one load, no notch, no fatigue; the maker and the certificate rule
 *
 * Three shares of the tensile strength part what can be made from what cannot. The yield in shear is that of the
 * material table, low end, before presetting. A preset bar may work above it, but not above its strength in
 * torsion, 0.67 of the tensile strength of spring steel (Budynas & Nisbett, Shigley's Mechanical Engineering
 * Design, 10th ed., equation 10-30, from memory). Above 0.8, the strength in shear of any steel (Juvinall &
 * Marshek, Fundamentals of Machine Component Design, from memory), there is no such bar.
 */
import { SPRING_MATERIALS, tensileStrength } from '../materials/spring-material.ts';
import type { Pascal } from '../units/quantity.ts';
import type { Speech } from '../units/show.ts';
import { type BarOrder, type OrderedFigures, orderedFigures } from './bar-order.ts';
import { bothWords, inUnit, travelWords, wheelWords } from './words.ts';

/** Strength in torsion of spring steel over its tensile strength. */
const TORSION_SHARE = 0.67;
/** No steel has a strength in shear above this share of its tensile strength. */
const SHEAR_SHARE = 0.8;

export interface AgainstMaking {
  /** There must be no sheet at all. */
  readonly refused?: string;
  /** To stand in bold at the head of the sheet, each after "Not to be made as it stands". */
  readonly notAsItStands: readonly string[];
}

export function againstMaking(order: BarOrder, speech: Speech): AgainstMaking {
  const figures = orderedFigures(order);
  const refused = refusal(order, figures, speech);
  return {
    ...(refused === undefined ? {} : { refused }),
    notAsItStands: [...stressWords(order, figures, speech), ...rateWords(order, figures, speech)],
  };
}

/** By what full bump is given; where it is the linkage's own end, that a stop is missing in the file. */
export function fullBumpWords({ fullBump }: BarOrder, speech: Speech): string {
  const { travel, by, stopped } = fullBump;
  return stopped
    ? `Full bump is ${travelWords(travel, speech)}: ${by}.`
    : `Full bump is taken as ${travelWords(travel, speech)}, the end of the linkage (${by}): the file has no bump stop before it. Give the damper with its closed length; till then torque, twist and stress at full bump are those of the linkage and not of the car.`;
}

const megapascals = (value: Pascal, speech: Speech): string => bothWords({ value, unit: 'Pa' }, speech);

function refusal(order: BarOrder, figures: OrderedFigures, speech: Speech): string | undefined {
  const { material, wheel } = order;
  const known = material.tensileStrength?.low;
  const strongest = known ?? strongestOfAll();
  if (figures.fullStress <= SHEAR_SHARE * strongest) return undefined;
  const of = known === undefined ? 'the strongest bar in the material table' : material.name;
  return (
    `The ${wheelWords(wheel)} bar is not ordered: at full bump its skin would stand at ${megapascals(figures.fullStress, speech)} ` +
    `with ${inUnit(figures.fullTwist, 'deg', 1)} of twist, above ${SHEAR_SHARE} of the tensile strength of ${of} ` +
    `(${megapascals(strongest, speech)}). No such bar can be made. ${fullBumpWords(order, speech)} ` +
    'Look at the travel, the diameter and the lengths in the file.'
  );
}

const strongestOfAll = (): Pascal =>
  Math.max(
    ...SPRING_MATERIALS.filter(({ kind }) => kind === 'bar').map(
      // no bar in the table has a strength by diameter, so any diameter will do
      (material) => tensileStrength(material, 0.02)?.high ?? 0,
    ),
  );

function stressWords({ material, hand }: BarOrder, { fullStress }: OrderedFigures, speech: Speech): string[] {
  const { tensileStrength: strength, shearYield } = material;
  const stress = `the stress at full bump (${megapascals(fullStress, speech)})`;
  if (strength === undefined || shearYield === undefined) {
    return [
      `the strength of ${material.name} is not in the table here, so ${stress} is not judged. The maker states the strength and the stress it may bear before the bar is made.`,
    ];
  }
  if (fullStress <= shearYield) return [];
  const yields = `above the yield in shear of ${material.name} (${megapascals(shearYield, speech)}, table, before presetting)`;
  if (hand === 'not preset') return [`${stress} is ${yields}, and the bar is not preset.`];
  if (fullStress < TORSION_SHARE * strength.low) return [];
  return [
    `${stress} is ${yields}, and above ${TORSION_SHARE} of its tensile strength (${megapascals(strength.low, speech)}), which presetting does not mend.`,
  ];
}

/** A bar whose rate was measured, and whose dimensions do not give that rate, is not the bar of these dimensions. */
function rateWords({ measuredRate }: BarOrder, figures: OrderedFigures, speech: Speech): string[] {
  if (measuredRate === undefined) return [];
  if (measuredRate >= figures.least && measuredRate <= figures.most) return [];
  const part = figures.rate / measuredRate - 1;
  const words = (value: number): string => bothWords({ value, unit: 'N m/rad' }, speech);
  return [
    `the bar in the car was measured at ${words(measuredRate)} and its dimensions give ${words(figures.rate)}, ${Math.abs(100 * part).toPrecision(2)} % ${part > 0 ? 'stiffer' : 'softer'}, which tolerances and range of modulus do not explain. Measure diameter, bore and length again, and the rate.`,
  ];
}
