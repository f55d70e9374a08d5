/**
 * The exhaust of a car in its parts: pipes of one length into one collector each.
 *
 * A bank with one collector is one part. With several it is as many, and the secondaries behind them are one more. Each
 * part is told as a car of its own, in which the bank has that part's cylinders and collector alone: whatever is asked
 * of a bank is asked of a part by asking it of that car.
 */
import type { BankForm, BankName, ExhaustForm } from '../car/check-exhaust.ts';
import { inFiringOrder } from '../car/firing.ts';
import type { Car } from '../car/read.ts';

export interface CarPart {
  readonly side: BankName;
  /** As it is asked for on its bank; undefined where the bank has no other. */
  readonly name?: string;
  /** For people: `left bank`, `left bank, collector 1+4`, `left bank, secondaries`. */
  readonly title: string;
  readonly stage: 'primaries' | 'secondaries';
  /** The car as if the bank had this part alone. */
  readonly car: Car;
  /** Cylinders whose gas goes through it, front to rear. */
  readonly cylinders: readonly number[];
  /** Of secondaries: the parts of this bank at whose collectors they begin, in the order of their pipes. */
  readonly from?: readonly number[];
}

export const SECONDARIES = 'secondaries';

/** @returns none where the car file tells no such bank */
export function partsOf(car: Car, side: BankName): readonly CarPart[] {
  const { exhaust } = car.form;
  const bank = exhaust?.[side];
  if (exhaust === undefined || bank === undefined) return [];
  const { collectors, secondaries } = bank;
  if (collectors === undefined) {
    return [{ side, title: `${side} bank`, stage: 'primaries', car, cylinders: bank.cylinders }];
  }
  const primaries = collectors.map((each): CarPart => {
    const name = each.name ?? each.cylinders.join('+');
    return {
      side,
      name,
      title: `${side} bank, collector ${name}`,
      stage: 'primaries',
      car: withBank(car, exhaust, side, primariesBank(bank, each)),
      cylinders: bank.cylinders.filter((cylinder) => each.cylinders.includes(cylinder)),
    };
  });
  if (secondaries === undefined) return primaries;
  return [
    ...primaries,
    {
      side,
      name: SECONDARIES,
      title: `${side} bank, ${SECONDARIES}`,
      stage: 'secondaries',
      car: secondariesCar(car, exhaust, side, { collectors, secondaries }),
      cylinders: bank.cylinders,
      from: collectors.map((_, k) => k),
    },
  ];
}

type CollectorForm = NonNullable<BankForm['collectors']>[number];

function primariesBank({ cylinders, ports }: BankForm, collector: CollectorForm): BankForm {
  const places = cylinders.flatMap((cylinder, k) => (collector.cylinders.includes(cylinder) ? [k] : []));
  return {
    cylinders: places.map((k) => cylinders[k]!),
    ports: places.map((k) => ports[k]!),
    collector,
  };
}

const withBank = (car: Car, exhaust: ExhaustForm, side: BankName, bank: BankForm): Car => ({
  ...car,
  form: { ...car.form, exhaust: { ...exhaust, [side]: bank } },
});

/** Their pipes are counted from 1 in the order of the collectors; they stand on no head. */
function secondariesCar(
  car: Car,
  { flange: _, hot: __, rack: ___, ...exhaust }: ExhaustForm,
  side: BankName,
  {
    collectors,
    secondaries: { length, within, tube, bends, collector, rack },
  }: {
    readonly collectors: readonly CollectorForm[];
    readonly secondaries: NonNullable<BankForm['secondaries']>;
  },
): Car {
  // each fires when the first of its cylinders does
  const firing = collectors
    .map(({ cylinders }, k) => ({ pipe: k + 1, first: inFiringOrder(exhaust.firing, cylinders)[0]! }))
    .sort((a, b) => exhaust.firing.indexOf(a.first) - exhaust.firing.indexOf(b.first))
    .map(({ pipe }) => pipe);
  const behind: ExhaustForm = {
    ...exhaust,
    tube,
    bends,
    given: { length, within, from: 'flange', to: 'collector entry' },
    firing,
    ...(rack === undefined ? {} : { rack }),
  };
  return withBank(car, behind, side, {
    cylinders: collectors.map((_each, k) => k + 1),
    ports: [],
    collector,
  });
}

/** The part that is asked for; undefined where there is none of that name, or several and none is named. */
export const partNamed = (parts: readonly CarPart[], name: string | undefined): CarPart | undefined =>
  name === undefined ? (parts.length === 1 ? parts[0] : undefined) : parts.find((each) => each.name === name);
