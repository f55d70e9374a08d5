/** `flatpatch bar-for-coil`: which torsion bar does the coil's work at a wheel. */
import { type Command, Option } from 'commander';
import { type BarAsked, type BarProposal, barForCoil } from '../../questions/bar-for-coil.ts';
import { asSpec, carWithBar, figuresWithBar } from '../../questions/bar-in-place.ts';
import { BAR_SURFACES, readBarWords } from '../../questions/bar-words.ts';
import type { Figure, Wheel } from '../../questions/figure.ts';
import type { ProposedBar } from '../../questions/proposed-bar.ts';
import type { PaperName } from '../../sheets/index.ts';
import { VERSION } from '../../workshop/home.ts';
import { today } from '../../workshop/today.ts';
import { figureOut, finite } from '../answers/form.ts';
import { askedWheel, wheelWords } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import {
  type CarOptions,
  carOut,
  command,
  header,
  headLines,
  type MannerOptions,
  onCar,
  sayJson,
  sayLines,
  sayWarnings,
  speaking,
  tailLines,
} from '../command.ts';
import { keepAsSpec } from '../keep.ts';
import { BadInput, badAsk, unanswered } from '../outcome.ts';
import { type Quantity, quantities, quantityLines, quantityOf, sideBySide } from '../quantity.ts';
import { PAPERS, writeSheet } from '../sheet-file.ts';
import { atTheWheel, topOf, WHEEL_RATES } from '../wheel-rates.ts';

interface Options extends CarOptions, MannerOptions {
  readonly wheel: string;
  readonly material: string;
  readonly lengthFrom?: string;
  readonly lengthTo?: string;
  readonly diameterFrom?: string;
  readonly diameterTo?: string;
  readonly step?: string;
  readonly bore?: string;
  readonly overtravel?: string;
  readonly splines?: string;
  readonly surface?: NonNullable<BarAsked['surface']>;
  readonly preset?: true;
  readonly match: 'travel' | 'standing';
  readonly keepAs?: string;
  readonly order?: string;
  readonly paper: PaperName;
}

export function barForCoilCommand(): Command {
  const made = command(
    'bar-for-coil',
    'Which torsion bar does the work of the coil, and what it cannot match',
    [
      'flatpatch bar-for-coil fenwold-201 --wheel front-left --material "300M bar"',
      'flatpatch bar-for-coil fenwold-201 --wheel front-left --material "300M bar" --length-to "380 mm" --splines 48/47 --json',
      'flatpatch bar-for-coil cars/fenwold-201 --wheel front-left --material "300M bar" --keep-as "bar, front left"',
      'flatpatch bar-for-coil fenwold-201 --wheel front-left --material "300M bar" --order order.pdf',
    ],
  );
  return speaking(onCar(made))
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption(
      '--material <name>',
      'material of the bar by its name in the table, such as "300M bar" or "51CrV4 bar"',
    )
    .option('--length-from <length>', 'shortest active length (200 mm)')
    .option('--length-to <length>', 'longest active length (450 mm)')
    .option('--diameter-from <length>', 'thinnest bar (10 mm)')
    .option('--diameter-to <length>', 'thickest bar (30 mm)')
    .option('--step <length>', 'step in diameter that the grinder holds (0.05 mm)')
    .option('--bore <share>', 'bore as a share of the diameter, such as "40 %"; left out, a solid bar')
    .option(
      '--overtravel <angle>',
      'rocker angle past full bump that the bar must still bear (a tenth of its twist in use)',
    )
    .option('--splines <teeth>', 'teeth at rocker and anchor, such as 48/47')
    .addOption(new Option('--surface <surface>', 'surface of the bar').choices(BAR_SURFACES))
    .option('--preset', 'the bar is to be preset')
    .addOption(
      new Option(
        '--match <what>',
        'what the bar comes nearest to: the torque of the coil over the whole travel, or the wheel rate as the car stands',
      )
        .choices(['travel', 'standing'])
        .default('travel'),
    )
    .option('--keep-as <spec>', 'keep the first bar as a spec of this name in the car file')
    .option('--order <file>', 'write the order sheet of the first bar to this file, as PDF')
    .addOption(new Option('--paper <size>', 'paper of the order').choices(PAPERS).default('A4'))
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { order } = options;
  if (order === '-')
    throw badAsk('asked/order', '--order needs the name of a file: the output has the answer.');
  const wheel = askedWheel(options.wheel);
  const asked = askedBar(options);
  const found = await openCar(file, options);
  const proposal = barForCoil(found.car, wheel, asked);
  if (!proposal.reached) throw unanswered(proposal);
  if (options.keepAs !== undefined) await keepAsSpec(found, { name: options.keepAs, ...asSpec(proposal) });
  sayWarnings(found.car);
  sayAnswer(found, wheel, proposal, options);
  if (order !== undefined) await writeOrder(found, proposal, options, order);
}

/** @throws NotReached where the bar must not be ordered so; BadInput where the file with it in does not read */
async function writeOrder(
  { source, car, workshop }: Found,
  proposal: BarProposal,
  { keepAs, paper, units: speech }: Options,
  out: string,
): Promise<void> {
  const read = carWithBar(source, car, proposal, keepAs);
  if (!read.ok) throw new BadInput(read.problems);
  const at = { travel: 0, rack: 0 };
  const head = { workshop, date: today(), version: VERSION, paper, speech };
  await writeSheet('bar-order', { car: read.car, wheel: proposal.wheel, at, ...head }, out);
}

type Found = Awaited<ReturnType<typeof openCar>>;

function sayAnswer(found: Found, wheel: Wheel, proposal: BarProposal, options: Options): void {
  const coil = coilQuantities(proposal);
  const figures = figuresWithBar(found.source, found.car, proposal);
  if (options.json) {
    const { travel, rockerAngle, torqueCoil, wheelRateCoil, change, notes, cautions } = proposal;
    sayJson({
      ...header('bar-for-coil'),
      car: carOut(found.car, found.file),
      wheel,
      travel: [...travel],
      rockerAngle: [...rockerAngle],
      coil: { quantities: coil, torque: torqueCoil.map(finite), wheelRate: wheelRateCoil.map(finite) },
      bars: proposal.bars.map(barOut),
      figures: figures.map(figureOut),
      change,
      notes: [...notes],
      cautions: [...cautions],
    });
    return;
  }
  const bars = proposal.bars.map((bar, index) => ({
    name: bar.name ?? `bar ${index + 1}`,
    of: barQuantities(bar),
  }));
  const [best] = proposal.bars;
  sayLines([
    ...headLines(found.car, `torsion bar for the coil, ${wheelWords(wheel)}`),
    '',
    'The coil',
    ...quantityLines(coil, options.units),
    '',
    `Bars of ${best!.material}, best first${best!.hand === undefined ? '' : `; bump twists them ${best!.hand} hand`}`,
    ...sideBySide(bars, options.units),
    '',
    ...atTheWheel(
      { name: 'coil', standing: proposal.wheelRateCoilStanding, ...topOf(proposal, proposal.wheelRateCoil) },
      { name: bars[0]!.name, standing: best!.wheelRateStanding, ...topOf(proposal, best!.wheelRate) },
      options.units,
    ),
    '',
    `The corner with ${bars[0]!.name} in, standing at the height of the survey`,
    ...quantityLines(figures.map(quantityOfFigure), options.units),
    ...tailLines(proposal.notes, proposal.cautions),
  ]);
}

const quantityOfFigure = ({ id, means, unit, value, spread }: Figure): Quantity =>
  quantityOf({ id, means, unit }, value, spread?.u);

/** @throws BadInput */
function askedBar({ preset, ...options }: Options): BarAsked {
  const read = readBarWords({ ...options, ...(preset === undefined ? {} : { preset: 'yes' }) });
  if (read.ok) return read.is;
  const option = read.at.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
  throw badAsk(`asked/${option}`, `--${option}: ${read.why}.`);
}

const coilQuantities = (of: BarProposal): Quantity[] =>
  quantities(
    {
      ...WHEEL_RATES,
      mass: ['mass of the coil', 'kg'],
      idealRate: ['torsional rate that comes nearest to it', 'N m/rad'],
      cannotMatch: ['torque that no bar can match, root mean square', 'N m'],
    },
    {
      wheelRateStanding: of.wheelRateCoilStanding,
      wheelRateFullBump: of.wheelRateCoil.at(-1),
      mass: of.coilMass,
      idealRate: of.idealRate,
      cannotMatch: of.cannotMatch,
    },
  );

const BAR = {
  diameter: ['diameter', 'm'],
  bore: ['bore', 'm'],
  parallelLength: ['parallel length', 'm'],
  activeLength: ['active length', 'm'],
  headDiameter: ['diameter of the heads', 'm'],
  filletRadius: ['radius at the heads', 'm'],
  rate: ['torsional rate', 'N m/rad'],
  ...WHEEL_RATES,
  twistAsSurveyed: ['twist as surveyed', 'rad'],
  twistFullBump: ['twist at full bump', 'rad'],
  stressFullBump: ['shear stress at full bump', 'Pa'],
  stressOvertravel: ['shear stress with the overtravel', 'Pa'],
  shearYield: ['yield in shear, low end', 'Pa'],
  worst: ['greatest difference of torque', 'N m'],
  worstPart: ['the same, of the greatest torque', 'share'],
  rms: ['difference, root mean square', 'N m'],
  standsHigher: ['the car then stands', 'm'],
  reversed: ['torque the wrong way at droop', 'N m'],
  splineStep: ['step of the splines', 'rad'],
  splineError: ['torque that the nearest setting is off by', 'N m'],
  mass: ['mass', 'kg'],
  massOverCoil: ['mass against that of the coil', 'share'],
  lifeLow: ['life in demonstration days, low', '1'],
  lifeMiddle: ['life, middle', '1'],
  lifeHigh: ['life, high', '1'],
} as const;

function barQuantities(bar: ProposedBar): Quantity[] {
  const { fullBump, overtravel, worst, life } = bar;
  return quantities(BAR, {
    ...numbersOf(bar),
    bore: bar.bore === 0 ? undefined : bar.bore,
    wheelRateFullBump: bar.wheelRate.at(-1),
    twistFullBump: fullBump.twist,
    stressFullBump: fullBump.stress,
    stressOvertravel: overtravel.stress,
    worst: worst.difference,
    worstPart: worst.part,
    reversed: bar.reversed === 0 ? undefined : bar.reversed,
    splineError: bar.splineStep === undefined ? undefined : bar.splineError,
    lifeLow: life?.low,
    lifeMiddle: life?.middle,
    lifeHigh: life?.high,
  });
}

const numbersOf = (bar: ProposedBar): Partial<Record<keyof typeof BAR, number>> =>
  Object.fromEntries(Object.entries(bar).filter(([id, value]) => id in BAR && typeof value === 'number'));

function barOut(bar: ProposedBar) {
  const { name, material, hand, setting, torque, wheelRate } = bar;
  return {
    ...(name === undefined ? {} : { name }),
    material,
    ...(hand === undefined ? {} : { hand }),
    quantities: barQuantities(bar),
    ...(setting === undefined ? {} : { teeth: { rocker: setting.moveFirst, anchor: setting.moveSecond } }),
    torque: torque.map(finite),
    wheelRate: wheelRate.map(finite),
  };
}
