/**
 * The exhaust of a car in its parts: pipes of one length into one collector each.
 *
 * A bank with one collector is one part. With several it is as many; the secondaries behind them are one more, and so is a tail pipe. Each
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
  readonly stage: 'primaries' | 'secondaries' | 'tail';
  /** The car as if the bank had this part alone. */
  readonly car: Car;
  /** Cylinders whose gas goes through it, front to rear. */
  readonly cylinders: readonly number[];
  /** Of secondaries: the parts of this bank at whose collectors they begin, in the order of their pipes. */
  readonly from?: readonly number[];
}

export const SECONDARIES = 'secondaries';

const TAIL = 'tail';

/** @returns none where the car file tells no such bank */
export function partsOf(car: Car, side: BankName): readonly CarPart[] {
  const { exhaust } = car.form;
  const bank = exhaust?.[side];
  if (exhaust === undefined || bank === undefined) return [];
  const { collectors, secondaries, tail } = bank;
  if (collectors === undefined && tail === undefined) {
    return [{ side, title: `${side} bank`, stage: 'primaries', car, cylinders: bank.cylinders }];
  }
  const parts =
    collectors === undefined
      ? [onlyPrimaries(car, exhaust, side, bank)]
      : byCollector(car, exhaust, side, bank, collectors);
  if (collectors !== undefined && secondaries !== undefined) {
    const { length, within, tube, bends, collector, rack } = secondaries;
    parts.push({
      side,
      name: SECONDARIES,
      title: `${side} bank, ${SECONDARIES}`,
      stage: 'secondaries',
      car: carBehind(car, exhaust, side, {
        given: { length, within },
        tube,
        bends,
        rack,
        collector,
        firing: asTheyFire(exhaust, collectors),
      }),
      cylinders: bank.cylinders,
      from: collectors.map((_, k) => k),
    });
  }
  if (tail === undefined) return parts;
  const { length, within, tube, bends, end, beyond, rack } = tail;
  return [
    ...parts,
    {
      side,
      name: TAIL,
      title: `${side} bank, tail`,
      stage: 'tail',
      car: carBehind(car, exhaust, side, {
        given: { length, within },
        tube,
        bends,
        rack,
        // it ends in the open, along its own axis
        collector: { mouth: end, downstream: beyond },
        firing: [1],
      }),
      cylinders: bank.cylinders,
      from: [parts.length - 1],
    },
  ];
}

const onlyPrimaries = (
  car: Car,
  exhaust: ExhaustForm,
  side: BankName,
  { cylinders, ports, collector }: BankForm,
): CarPart => ({
  side,
  name: 'primaries',
  title: `${side} bank, primaries`,
  stage: 'primaries',
  car: withBank(car, exhaust, side, { cylinders, ports, collector }),
  cylinders,
});

const byCollector = (
  car: Car,
  exhaust: ExhaustForm,
  side: BankName,
  bank: BankForm,
  collectors: readonly CollectorForm[],
): CarPart[] =>
  collectors.map((each): CarPart => {
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

/** Each fires when the first of its cylinders does. */
const asTheyFire = ({ firing }: ExhaustForm, collectors: readonly CollectorForm[]): number[] =>
  collectors
    .map(({ cylinders }, k) => ({ pipe: k + 1, first: inFiringOrder(firing, cylinders)[0]! }))
    .sort((a, b) => firing.indexOf(a.first) - firing.indexOf(b.first))
    .map(({ pipe }) => pipe);

type Secondaries = NonNullable<BankForm['secondaries']>;

/**
 * Pipes behind collectors are counted from 1 in the order of those; they stand on no head. They are as hot as the
 * primaries; what the primaries’ collector is held by does not hold theirs.
 */
function carBehind(
  car: Car,
  { flange: _, hot, rack: __, ...exhaust }: ExhaustForm,
  side: BankName,
  of: Pick<Secondaries, 'tube' | 'bends'> & {
    readonly given: Pick<Secondaries, 'length' | 'within'>;
    readonly rack: Secondaries['rack'] | undefined;
    readonly collector: Secondaries['collector'];
    readonly firing: number[];
  },
): Car {
  const { given, tube, bends, rack, collector, firing } = of;
  const behind: ExhaustForm = {
    ...exhaust,
    tube,
    bends,
    given: { ...given, from: 'flange', to: 'collector entry' },
    firing,
    ...(rack === undefined ? {} : { rack }),
    ...(hot === undefined ? {} : { hot: hungOnPipes(hot) }),
  };
  return withBank(car, behind, side, {
    cylinders: firing.map((_each, k) => k + 1),
    ports: [],
    collector,
  });
}

function hungOnPipes({ collector: _, ...hot }: NonNullable<ExhaustForm['hot']>): ExhaustForm['hot'] {
  return hot;
}

/** The part that is asked for; undefined where there is none of that name, or several and none is named. */
export const partNamed = (parts: readonly CarPart[], name: string | undefined): CarPart | undefined =>
  name === undefined ? (parts.length === 1 ? parts[0] : undefined) : parts.find((each) => each.name === name);
