/** `flatpatch bench-test`: the rate of a bar from torque and angle readings, and what it says of the bar. */
import type { Command } from 'commander';
import { type BenchAnswer, type BenchAsked, benchTest } from '../../questions/bench-test.ts';
import { readWithSpread } from '../../units/read.ts';
import { askedAmount } from '../asked.ts';
import { benchReadings } from '../bench-file.ts';
import { textOf } from '../car-argument.ts';
import { command, header, type MannerOptions, sayJson, sayLines, speaking, tailLines } from '../command.ts';
import { badAsk, unanswered } from '../outcome.ts';
import { type Quantity, quantityLines, quantityOf } from '../quantity.ts';

interface Options extends MannerOptions {
  readonly diameter?: string;
  readonly bore: string;
  readonly length?: string;
  readonly modulus?: string;
  readonly confidence: string;
  readonly torqueScale: string;
  readonly angleScale: string;
}

export function benchTestCommand(): Command {
  const made = command('bench-test', 'Rate of a torsion bar from readings on the bench, with its interval', [
    'printf "torque N m,angle deg,way\\n0,0,on\\n60,2.01,on\\n120,4.02,on\\n180,5.98,on\\n" | flatpatch bench-test -',
    'printf "torque N m,angle deg\\n0,0\\n60,2.01\\n120,4.02\\n180,5.98\\n" | flatpatch bench-test - --diameter "16.02 mm ± 0.01 mm" --length "300 mm ± 2 mm" --modulus "79 GPa ± 1 GPa" --json',
  ]);
  return speaking(made)
    .argument('<file>', 'CSV with a heading row "torque N m, angle deg, way", or - for standard input')
    .option(
      '--diameter <length>',
      'diameter as measured, with its spread; then what the rate implies is told',
    )
    .option('--bore <length>', 'bore as measured', '0 mm')
    .option('--length <length>', 'active length, with its spread')
    .option('--modulus <modulus>', 'shear modulus, with its spread')
    .option('--confidence <share>', 'of the interval', '95 %')
    .option(
      '--torque-scale <share>',
      'standard uncertainty that all torques share: lever and masses',
      '0.5 %',
    )
    .option('--angle-scale <share>', 'standard uncertainty that all angles share', '0.5 %')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const shared = {
    torque: askedAmount('--torque-scale', options.torqueScale, '1'),
    twist: askedAmount('--angle-scale', options.angleScale, '1'),
  };
  const confidence = askedAmount('--confidence', options.confidence, '1');
  if (!(confidence > 0.5 && confidence < 1))
    throw badAsk('asked/confidence', '--confidence must lie between 50 % and 100 %.');
  const bar = askedBar(options);
  const readings = benchReadings(await textOf(file), file === '-' ? 'standard input' : file);
  const found = benchTest({ readings, shared, confidence, ...(bar === undefined ? {} : { bar }) });
  if (!found.reached) throw unanswered(found);
  const { test, cautions } = found;
  const of = testQuantities(found);
  const implied = impliedQuantities(found);
  if (options.json) {
    sayJson({
      ...header('bench-test'),
      quantities: of,
      confidence,
      told: [...test.told],
      ...(implied === undefined ? {} : { implied }),
      cautions: [...cautions],
    });
    return;
  }
  sayLines([
    `Torsion bar on the bench, ${readings.length} readings`,
    ...quantityLines(of, options.units),
    ...(implied === undefined
      ? []
      : [
          '',
          'For this rate it would have to be, the others as stated',
          ...quantityLines(implied, options.units),
        ]),
    ...tailLines(test.told, cautions),
  ]);
}

/** The bar as it is believed to be, when all of it is stated. @throws BadInput */
function askedBar(options: Options): BenchAsked['bar'] {
  const { diameter, length, modulus, bore } = options;
  if (diameter === undefined && length === undefined && modulus === undefined) return undefined;
  if (diameter === undefined || length === undefined || modulus === undefined) {
    throw badAsk('asked/bar', 'What the rate implies needs all of --diameter, --length and --modulus.');
  }
  const stated = (option: string, text: string, like: string) => {
    const read = readWithSpread(text, like);
    if (!read.ok) throw badAsk('asked/amount', `${option}: ${read.why}.`);
    return { value: read.is.value, u: read.is.u ?? 0 };
  };
  const bar = {
    diameter: stated('--diameter', diameter, 'm'),
    bore: stated('--bore', bore, 'm'),
    activeLength: stated('--length', length, 'm'),
    shearModulus: stated('--modulus', modulus, 'Pa'),
  };
  const good =
    bar.diameter.value > bar.bore.value &&
    bar.bore.value >= 0 &&
    bar.activeLength.value > 0 &&
    bar.shearModulus.value > 0;
  if (!good)
    throw badAsk('asked/bar', 'The diameter must be above the bore, and length and modulus above nothing.');
  return bar;
}

function testQuantities({ test }: BenchAnswer): Quantity[] {
  const unit = 'N m/rad';
  const { all, on, off, hysteresis, bend } = test;
  const rate = (id: string, means: string, of: typeof on): Quantity[] =>
    of === undefined ? [] : [quantityOf({ id, means, unit }, of.rate, of.u)];
  const share = (id: string, means: string, value: number | undefined): Quantity[] =>
    value === undefined ? [] : [quantityOf({ id, means, unit: 'share' }, value)];
  return [
    ...rate('rate', 'torsional rate', all),
    quantityOf({ id: 'rateLow', means: 'interval by the scatter alone, from', unit }, all.interval[0]),
    quantityOf({ id: 'rateHigh', means: 'to', unit }, all.interval[1]),
    ...rate('rateOn', 'rate going on', on),
    ...rate('rateOff', 'rate coming off', off),
    ...share('hysteresis', 'on and off apart, of the greatest torque', hysteresis),
    ...share('bend', 'bend of the line at its ends, of the greatest torque', bend?.part),
    ...share('bendChance', 'chance of as much bend by scatter', bend?.chance),
  ];
}

function impliedQuantities({ implied }: BenchAnswer): Quantity[] | undefined {
  if (implied === undefined) return undefined;
  const { diameter, activeLength, shearModulus } = implied;
  return [
    quantityOf({ id: 'diameter', means: 'diameter', unit: 'm' }, diameter.value, diameter.u),
    quantityOf(
      { id: 'activeLength', means: 'or active length', unit: 'm' },
      activeLength.value,
      activeLength.u,
    ),
    quantityOf(
      { id: 'shearModulus', means: 'or shear modulus', unit: 'Pa' },
      shearModulus.value,
      shearModulus.u,
    ),
  ];
}
