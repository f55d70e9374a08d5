/**
 * The order of a torsion bar from what the car file or a proposal says of it.
 *
 * In    a car, which wheel, the torques over its travel as the questions answer them
 * Out   a bar as ordered, or the sentence that says why there is none
 */
import type { Car } from '../car/read.ts';
import { handOfBar } from '../loadpath/bar-hand.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Hand } from '../loadpath/spring/presetting.ts';
import { sprungCorner } from '../loadpath/sprung-corner.ts';
import { springMaterial, tensileStrength } from '../materials/spring-material.ts';
import type { Reading } from '../measured/reading.ts';
import { type CornerReached, cornerFigures } from '../questions/corner.ts';
import type { Wheel } from '../questions/figure.ts';
import type { ProposedBar } from '../questions/proposed-bar.ts';
import type { AskedCorner } from './asked-corner.ts';
import type { BarOrder, BarShape, OrderedHead, OrderedMaterial } from './bar-order.ts';
import { wheelWords } from './words.ts';

type BarForm = NonNullable<Car['form']['front']['left']['bar']>;

/** The bar of the car file as a drawing needs it. */
export function shapeOf(asked: AskedCorner, bar: BarForm): BarShape {
  return {
    diameter: bar.diameter.value,
    bore: bar.bore?.value ?? 0,
    parallelLength: bar.parallelLength.value,
    rockerEnd: headFrom(bar.rockerEnd),
    anchorEnd: headFrom(bar.anchorEnd),
    hand: bar.preset === 'not preset' ? 'not preset' : (handInBump(asked) ?? 'not preset'),
  };
}

function headFrom(end: BarForm['rockerEnd']): OrderedHead {
  return {
    form: end.form,
    ...(end.headDiameter === undefined ? {} : { headDiameter: end.headDiameter.value }),
    ...(end.size === undefined ? {} : { size: end.size.value }),
    ...(end.splines === undefined ? {} : { splines: end.splines.value }),
  };
}

/** Hand of the helix in which bump twists the bar of this corner; undefined where its direction is not known. */
function handInBump({ car, wheel }: AskedCorner): Hand | undefined {
  const numbers = new Numbers(car.values);
  return handOfBar(sprungCorner(car.form[wheel.end], wheel.side, numbers), numbers)?.works;
}

const BLANK_NUMBER = '____________';
const NO_SURFACE = 'surface as the maker proposes: ________';

/** The bar of the car file, ordered again; or the sentence that says why not. */
export function orderOfOwnBar(asked: AskedCorner, { range }: CornerReached): BarOrder | string {
  const { car, wheel, at } = asked;
  const { bar } = car.form[wheel.end][wheel.side];
  if (bar === undefined) {
    return `The ${wheelWords(wheel)} corner has no torsion bar in spec "${car.spec}". Order from a spec that has one, or from a proposal.`;
  }
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
    ...shapeOf(asked, bar),
    partNumber: BLANK_NUMBER,
    wheel,
    quantity: 1,
    material: orderedMaterial(bar.material, bar.diameter.value, bar.shearModulus),
    surface: bar.surface ?? NO_SURFACE,
    fullTorque: full,
    ...(standing === undefined ? {} : { staticTorque: standing }),
    reversedTorque: Math.max(0, -hanging),
  };
}

/** A bar that was proposed for a corner with a coil. */
export function orderOfProposal(wheel: Wheel, bar: ProposedBar): BarOrder {
  const end: OrderedHead = {
    form: bar.filletRadius === undefined ? 'square' : 'radius',
    ...(bar.headDiameter === undefined ? {} : { headDiameter: bar.headDiameter }),
    ...(bar.filletRadius === undefined ? {} : { size: bar.filletRadius }),
  };
  return {
    diameter: bar.diameter,
    bore: bar.bore,
    parallelLength: bar.parallelLength,
    rockerEnd: end,
    anchorEnd: end,
    hand: bar.hand ?? 'not preset',
    partNumber: bar.name ?? BLANK_NUMBER,
    wheel,
    quantity: 1,
    material: orderedMaterial(bar.material, bar.diameter, undefined),
    surface: NO_SURFACE,
    fullTorque: bar.fullBump.torque,
    staticTorque: bar.rate * bar.twistAsSurveyed,
    reversedTorque: bar.reversed,
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
    source:
      read === undefined
        ? `${table?.shearModulus.source ?? 'EN 13906-1, steel'} (${table?.shearModulus.known ?? 'from memory'})`
        : `the car file: ${read.text}`,
    ...(table?.note === undefined ? {} : { note: table.note }),
  };
}
