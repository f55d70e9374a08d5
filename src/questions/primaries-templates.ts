/**
 * Templates in true size for a set of primaries: strips for the cuts of its bends, merge cut of the collector, flange.
 *
 * In    the car, a bank of it, a set that stands and what the shop makes of it
 * Out   templates, and what could not be drawn for want of a figure in the car file
 */
import type { BankForm, BankName, ExhaustForm } from '../car/check-exhaust.ts';
import type { Car } from '../car/read.ts';
import {
  type BendCut,
  bendWrap,
  type Flange,
  flangeFaults,
  flangeTemplate,
  mergeFault,
  mergeWrap,
  type PortShape,
  type Template,
} from '../gaspath/pipework/index.ts';
import { Numbers } from '../loadpath/numbers.ts';
import type { Metre, Radian } from '../units/quantity.ts';
import { formula, type Working } from '../working/working.ts';
import type { PrimariesSet } from './primaries-set.ts';
import type { PrimariesShop } from './primaries-shop.ts';

export interface TemplatesOfSet {
  readonly templates: readonly Template[];
  readonly notes: readonly string[];
}

const NONE: TemplatesOfSet = { templates: [], notes: [] };

/** Of printing paper; a wrap lies outside the skin. */
const PAPER: Metre = 0.0001;

export function primariesTemplates(
  car: Car,
  side: BankName,
  set: PrimariesSet,
  { cuts }: Pick<PrimariesShop, 'cuts'>,
): TemplatesOfSet {
  const exhaust = car.form.exhaust!;
  const numbers = new Numbers(car.values);
  // the collector is made of the tube that comes in
  const { od } = set.pipes[0]!.tubes.at(-1)!;
  const bank = exhaust[side]!;
  const merge = mergeOf(bank.collector!, bank.cylinders.length, od, numbers);
  // secondaries stand on no head
  const flange = bank.ports.length === 0 ? NONE : flangeOf(exhaust, numbers);
  return {
    templates: [
      ...cuts.rows.flatMap((row) =>
        // a piece that is its whole stock bend is cut nowhere
        row.kind === 'bend' && !isWhole(row)
          ? [
              bendWrap({
                name: `pipe ${row.pipe}, piece ${row.place}`,
                od: row.tube.od,
                radius: row.radius,
                angle: row.angle,
                paper: PAPER,
              }),
            ]
          : [],
      ),
      ...merge.templates,
      ...flange.templates,
    ],
    notes: [...merge.notes, ...flange.notes],
  };
}

const isWhole = ({ angle, from }: BendCut): boolean =>
  from !== undefined && Math.abs(angle - from.stock.angle) < 1e-9;

const squareCut = formula({
  symbol: 'q',
  means: 'square cut of the outlet before the point where the axes of its tubes meet',
  is: '(D_o/2 - D/2/cos(γ))/tan(γ)',
  unit: 'm',
  terms: {
    D_o: { unit: 'm', means: 'outer diameter of the outlet' },
    D: { unit: 'm', means: 'outer diameter of a tube' },
    γ: { unit: 'rad', means: 'lean of a tube to the axis of the collector' },
  },
  source: 'PW-30',
  holds: 'where the outermost skins of the tubes meet the outlet',
});

/** Where the tubes of a collector reach the outlet's diameter.  [PW-30] */
export const outletCut = (
  of: { readonly outlet: Metre; readonly od: Metre; readonly lean: Radian },
  working?: Working,
): Metre => squareCut({ D_o: of.outlet, D: of.od, γ: of.lean }, working);

function mergeOf(
  collector: NonNullable<BankForm['collector']>,
  tubes: number,
  od: Metre,
  numbers: Numbers,
): TemplatesOfSet {
  const { lean } = collector;
  if (collector.rows !== undefined) {
    return { templates: [], notes: ['No merge cut: it is known for inlets on a ring, not in rows.'] };
  }
  if (lean === undefined) {
    return {
      templates: [],
      notes: ['No merge cut: the car file tells no lean of the tubes under collector.'],
    };
  }
  const outlet =
    collector.outlet === undefined
      ? undefined
      : outletCut({ outlet: numbers.of(collector.outlet), od, lean });
  const of = { tubes, od, lean, ...(outlet === undefined ? {} : { outlet }) };
  const fault = mergeFault(of);
  if (fault !== undefined) return { templates: [], notes: [`No merge cut: ${fault}.`] };
  return {
    templates: [mergeWrap({ ...of, name: 'collector, merge cut', paper: PAPER })],
    notes:
      outlet === undefined
        ? [
            'The merge cut has no outlet: the car file tells no outlet under collector, so the tips are left long.',
          ]
        : [],
  };
}

function flangeOf({ flange }: ExhaustForm, numbers: Numbers): TemplatesOfSet {
  if (flange === undefined) {
    return { templates: [], notes: ['No flange: the car file tells none under exhaust.'] };
  }
  const width = numbers.of(flange.width);
  const height = numbers.or(flange.height, width);
  const shapes: Readonly<Record<typeof flange.form, PortShape>> = {
    round: { kind: 'round', diameter: width },
    oval: { kind: 'oval', width, height },
    D: { kind: 'D', width, height, corner: numbers.or(flange.corner, 0) },
  };
  const of: Flange = {
    name: 'flange',
    port: shapes[flange.form],
    bolts: flange.bolts.map(({ across, up, hole }) => ({
      at: { x: numbers.of(across), y: numbers.of(up) },
      hole: numbers.of(hole),
    })),
    land: { port: flange.land, bolt: flange.boltLand },
  };
  const faults = flangeFaults(of);
  return faults.length > 0
    ? { templates: [], notes: faults.map((each) => `No flange drawn: ${each}.`) }
    : { templates: [flangeTemplate(of)], notes: [] };
}
