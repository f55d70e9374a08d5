/**
 * The order of a torsion bar from what the car file says of it.
 *
 * In    a car, which wheel, the torques over its travel as the questions answer them
 * Out   a bar as ordered, or the sentence that says why there is none
 */
import type { Car } from '../car/read.ts';
import { handOfBar } from '../loadpath/bar-hand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import { sprungCorner } from '../loadpath/sprung-corner.ts';
import { shearYield, springMaterial, tensileStrength } from '../materials/spring-material.ts';
import type { Reading } from '../measured/reading.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import { DAMPER_CLOSED } from '../questions/travel-range.ts';
import type { AskedCorner } from './asked-corner.ts';
import type { BarOrder, BarShape, OrderedHead, OrderedMaterial } from './bar-order.ts';
import { wheelWords } from './words.ts';

type BarForm = NonNullable<Car['form']['front']['left']['bar']>;

/** The bar of the car file as a drawing needs it. */
export function shapeOf({ car, wheel }: AskedCorner, bar: BarForm): BarShape {
  const numbers = new Numbers(car.values);
  const hand = handOfBar(sprungCorner(car.form[wheel.end], wheel.side, numbers), numbers);
  return {
    ...bareShape(bar),
    hand: bar.preset === 'not preset' ? 'not preset' : (hand?.works ?? 'not known'),
  };
}

const bareShape = (bar: BarForm): Omit<BarShape, 'hand'> => ({
  diameter: bar.diameter.value,
  bore: bar.bore?.value ?? 0,
  parallelLength: bar.parallelLength.value,
  rockerEnd: headFrom(bar.rockerEnd),
  anchorEnd: headFrom(bar.anchorEnd),
});

function headFrom(end: BarForm['rockerEnd']): OrderedHead {
  return {
    form: end.form,
    ...(end.headDiameter === undefined ? {} : { headDiameter: end.headDiameter.value }),
    ...(end.size === undefined ? {} : { size: end.size.value }),
    ...(end.splines === undefined ? {} : { splines: end.splines.value }),
  };
}

/** Judged and not measured, by the word that the file says it was read with. */
const isEstimate = ({ instrument, spread }: Reading): boolean =>
  instrument === 'estimate' || (spread.kind === 'instrument' && spread.class === 'estimate');

/** The hand that the order prints, or the sentence that says why none can be printed. */
function handToOrder({ car, wheel }: AskedCorner, bar: BarForm): { is: BarOrder['hand'] } | string {
  if (bar.preset === 'not preset') return { is: 'not preset' };
  const where = wheelWords(wheel);
  const numbers = new Numbers(car.values);
  const hand = handOfBar(sprungCorner(car.form[wheel.end], wheel.side, numbers), numbers);
  if (hand === undefined) {
    return `The ${where} bar is to be preset, and the car file does not say where the anchor holds it, so its hand is not known. Measure the point barAnchor, or order the bar not preset.`;
  }
  if (!hand.agrees) {
    return `The file says that the ${where} bar is preset ${bar.preset}, and this corner works it ${hand.works} hand: a preset bar belongs on its own side only. Put the preset side right in the file, or order the bar for the other corner.`;
  }
  const { barAnchor } = car.form[wheel.end][wheel.side].points;
  const guessed = barAnchor === undefined ? [] : [barAnchor.x, barAnchor.y, barAnchor.z].filter(isEstimate);
  if (guessed.length > 0) {
    return `The ${where} bar is to be preset, and the point barAnchor is an estimate: its hand would be one too. Measure where the anchor stands, or order the bar not preset.`;
  }
  return { is: hand.works };
}

const BLANK_NUMBER = '____________';
const NO_SURFACE = 'surface as the maker proposes: ________';

/** The bar of the car file, ordered again; or the sentence that says why not. */
export function orderOfOwnBar(asked: AskedCorner, { range }: CornerReached): BarOrder | string {
  const { car, wheel, at } = asked;
  const { bar } = car.form[wheel.end][wheel.side];
  if (bar === undefined) {
    return `The ${wheelWords(wheel)} corner has no torsion bar in spec "${car.spec}". Order from a spec that has one, or ask for a bar in the place of its coil and order that.`;
  }
  const hand = handToOrder(asked, bar);
  if (typeof hand === 'string') return hand;
  const torqueAt = (travel: number): number | undefined => {
    const there = cornerFigures(car, wheel, { ...at, travel });
    return there.reached ? there.figures.find((figure) => figure.id === 'barTorque')?.value : undefined;
  };
  const full = torqueAt(range.bump);
  if (full === undefined || !(full > 0)) {
    return `The ${wheelWords(wheel)} bar carries no torque at full bump: there is nothing to order it by.`;
  }
  const standing = torqueAt(0);
  const hanging = torqueAt(range.droop) ?? 0;
  return {
    ...bareShape(bar),
    hand: hand.is,
    partNumber: BLANK_NUMBER,
    wheel,
    quantity: 1,
    material: orderedMaterial(bar.material, bar.diameter.value, bar.shearModulus),
    surface: bar.surface ?? NO_SURFACE,
    fullTorque: full,
    fullBump: { travel: range.bump, by: range.bumpBy, stopped: range.bumpBy === DAMPER_CLOSED },
    ...(bar.rate === undefined ? {} : { measuredRate: bar.rate.value }),
    ...(standing === undefined ? {} : { staticTorque: standing }),
    reversedTorque: Math.max(0, -hanging),
  };
}

/** Share of the modulus that is taken as its range where the table has none. */
const MODULUS_RANGE = 0.02;

function orderedMaterial(
  named: string | undefined,
  diameter: number,
  read: Reading | undefined,
): OrderedMaterial {
  const name = named ?? 'spring steel';
  const table = springMaterial(name);
  const strength = table === undefined ? undefined : tensileStrength(table, diameter);
  const yields = table === undefined ? undefined : shearYield(table, diameter);
  const modulus = read?.value ?? table?.shearModulus.value ?? 79.5e9;
  return {
    name,
    means: table?.means ?? 'as the certificate of the stock says',
    shearModulus: modulus,
    shearModulusRange: {
      low: Math.min(modulus, table?.shearModulus.low ?? modulus * (1 - MODULUS_RANGE)),
      high: Math.max(modulus, table?.shearModulus.high ?? modulus * (1 + MODULUS_RANGE)),
    },
    density: table?.density.value ?? 7850,
    ...(strength === undefined ? {} : { tensileStrength: strength }),
    ...(yields === undefined ? {} : { shearYield: yields }),
    source:
      read === undefined
        ? `${table?.shearModulus.source ?? 'EN 13906-1, steel'} (${table?.shearModulus.known ?? 'from memory'})`
        : `the car file: ${read.text}`,
    ...(table?.note === undefined ? {} : { note: table.note }),
  };
}
