/** `flatpatch compare`: two specs of one car, figure by figure, at a travel or under a load. */
import type { Command } from 'commander';
import type { z } from 'zod';
import {
  type ComparedRow,
  type Comparison,
  compareEvery,
  compareJoints,
  compareLoads,
  compareSpecs,
  differenceWords,
  type Figure,
  JOINT_WORDS,
  type JointInSpec,
  SAME,
  type UnderLoadComparison,
} from '../../questions/index.ts';
import { printedUnit, type Speech, spokenUnit, unitAfter } from '../../units/show.ts';
import type { compareForm } from '../answers/curves.ts';
import { figureOut } from '../answers/form.ts';
import { askedWheel, WHEELS, wheelWords } from '../asked.ts';
import { type AskedDoing, askedDoing, isDoingAsked, takingDoing } from '../asked-doing.ts';
import { askedJoint, JOINT_HELP } from '../asked-joint.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  sayJson,
  sayLines,
  speaking,
  tailLines,
} from '../command.ts';
import { BadInput, badAsk, NotReached } from '../outcome.ts';
import { amountText, figureText, plainSpaces, remarkLines, table } from '../print.ts';
import type { Found } from '../tell.ts';
import { askedPosition, atWheel, TRAVEL_HELP } from './corner.ts';

interface Options extends Omit<CarOptions, 'spec'>, MannerOptions, AskedDoing {
  readonly wheel?: string;
  readonly joint?: string;
  readonly travel?: string;
  readonly spread: boolean;
  readonly all?: true;
}

export function compareCommand(): Command {
  const made = command(
    'compare',
    'Two specs of a car side by side: at one wheel and travel, in every figure, or under a load',
    [
      'flatpatch compare fenwold-201 "as arrived" "as run"',
      'flatpatch compare fenwold-201 "as arrived" "as run" --wheel front-left',
      'flatpatch compare fenwold-201 "as arrived" "as run" --wheel rear-left --travel "10 mm" --json',
      'flatpatch compare fenwold-201 "as arrived" "as run" --doing braking --wheel front-left --no-spread',
      'flatpatch compare fenwold-201 "as arrived" "proposal, six studs to the tub" --joint engine-to-tub --doing rear-kerb --no-spread',
    ],
  );
  made.argument('<file>', "a car's folder, a car.yaml, a car's name, or - for standard input");
  return takingDoing(speaking(made))
    .argument('<first>', 'name of a spec')
    .argument('<second>', 'name of the other')
    .option('--wheel <wheel>', 'one wheel alone: front-left, front-right, rear-left or rear-right')
    .option('--files <folder>', 'folder of the files that a car file from standard input names')
    .option('--joint <joint>', `a bolted joint under the load: ${JOINT_HELP}`)
    .option('--travel <length>', `${TRAVEL_HELP}; under a load the load says where the wheel stands`)
    .option('--all', 'also the figures that are the same in both')
    .option('--no-spread', 'without the spread, which takes most of the time')
    .action(answer);
}

/** What is compared, how it is headed, and what of the asking goes into the answer. */
interface Asked {
  readonly heading: string;
  readonly asked: Pick<z.input<typeof compareForm>, 'wheel' | 'at' | 'doing' | 'joint'>;
  readonly compared: Comparison;
  readonly load?: UnderLoadComparison & { readonly joints?: readonly JointInSpec[] };
}

function askedOf(
  found: Pick<Found, 'car' | 'source'>,
  specs: readonly [string, string],
  options: Options,
): Asked {
  // the rack alone is a place of the wheels, and no load
  const { rack: _, ...others } = options;
  return options.joint !== undefined || isDoingAsked(others)
    ? underLoad(found, specs, options)
    : byHand(found, specs, options);
}

function byHand(
  { source }: Pick<Found, 'source'>,
  [a, b]: readonly [string, string],
  options: Options,
): Asked {
  if (options.wheel === undefined) {
    return { heading: 'every figure, as surveyed', asked: {}, compared: compareEvery(source, a, b) };
  }
  const wheel = askedWheel(options.wheel);
  const { travel = '0 mm', rack = '0 mm', spread, units } = options;
  const at = atWheel(askedPosition({ travel, rack }), wheel);
  return {
    heading: `${wheelWords(wheel)} wheel at ${amountText(at.travel, 'm', units)}`,
    asked: { wheel, at },
    compared: compareSpecs(source, a, b, wheel, at, { spread }),
  };
}

/** @throws BadInput */
function underLoad(
  { car, source }: Pick<Found, 'car' | 'source'>,
  specs: readonly [string, string],
  options: Options,
): Asked {
  if (options.travel !== undefined)
    throw badAsk('asked/travel', '--travel and a load both say where the wheel stands; write one.');
  if (options.joint !== undefined && options.wheel !== undefined)
    throw badAsk('asked/joint', '--joint and --wheel both say what is compared; write one.');
  const { doing, means, notes } = askedDoing(options, { car, source });
  const { spread } = options;
  const on = { source, specs, doing };
  const noted = <T extends UnderLoadComparison>(load: T) => {
    const is = { ...load, notes: [...load.notes, ...notes] };
    return { compared: is, load: is };
  };
  if (options.joint !== undefined) {
    const joint = askedJoint(options.joint);
    return {
      heading: `${JOINT_WORDS[joint]}, ${means}`,
      asked: { doing, joint },
      ...noted(compareJoints(on, joint, { spread })),
    };
  }
  const wheel = options.wheel === undefined ? undefined : askedWheel(options.wheel);
  return {
    heading: wheel === undefined ? means : `${wheelWords(wheel)} wheel, ${means}`,
    asked: { doing, ...(wheel === undefined ? {} : { wheel }) },
    ...noted(compareLoads(on, wheel === undefined ? WHEELS : [wheel], { spread })),
  };
}

async function answer(file: string, first: string, second: string, options: Options): Promise<void> {
  const { car, source, file: named } = await openCar(file, options);
  const { heading, asked, compared, load } = askedOf({ car, source }, [first, second], options);
  if (compared.problems.length > 0) throw new BadInput(compared.problems);
  if (options.json) {
    sayJson({
      ...header('compare'),
      car: carOut(car, named),
      ...asked,
      specs: [first, second],
      rows: compared.rows.map(({ a, b, ...rest }) => ({
        ...rest,
        ...(a === undefined ? {} : { a: figureOut(a) }),
        ...(b === undefined ? {} : { b: figureOut(b) }),
      })),
      ...(load?.joints === undefined
        ? {}
        : { joints: load.joints.map((each) => ({ ...each, breaksFirst: [...each.breaksFirst] })) }),
      ...(load === undefined ? {} : { notes: [...load.notes], cautions: [...load.cautions] }),
      problems: [...compared.problems],
      notReached: [...compared.notReached],
    });
  } else if (compared.notReached.length < 2) {
    const { units } = options;
    const shown = options.all ? compared.rows : compared.rows.filter((row) => differs(row, units));
    const rows = shown.map((row) => [
      row.of === undefined ? row.means : `${row.of}: ${row.means}`,
      cell(row.a, units),
      cell(row.b, units),
      change(row, units),
    ]);
    sayLines([
      ...headLines(car, heading).map(withoutSpec),
      '',
      ...(rows.length === 0
        ? ['No figure differs between the two.']
        : table([['', first, second, 'difference'], ...rows])),
      ...(load?.joints ?? []).flatMap(({ spec, left, breaksFirst }) =>
        remarkLines(`What breaks first, ${spec}`, [left, ...breaksFirst]),
      ),
      ...(load === undefined ? [] : tailLines(load.notes, load.cautions)),
    ]);
  }
  if (compared.notReached.length > 0) throw new NotReached(compared.notReached.join('\n'));
}

/** What only one of them has is told where it has a value. */
const differs = (row: ComparedRow, speech: Speech): boolean =>
  row.difference === undefined
    ? Number.isFinite(row.a?.value) || Number.isFinite(row.b?.value)
    : differenceWords(row, speech) !== SAME;

const cell = (figure: Figure | undefined, speech: Speech): string =>
  figure === undefined ? 'not there' : figureText(figure, speech);

function change(row: ComparedRow, speech: Speech): string {
  const words = differenceWords(row, speech);
  if (row.difference === undefined || words === SAME) return words;
  return plainSpaces(`${words}${unitAfter(printedUnit(spokenUnit(row.unit, speech)))}`);
}

const withoutSpec = (line: string): string => line.replace(/, spec "[^"]*": /, ': ');
