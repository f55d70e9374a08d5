/**
 * What all commands have in common: their options, how they answer, and how a failure becomes an exit code.
 *
 * Answers go to the output, what is wrong to the error stream.
 */
import { Command, Option } from 'commander';
import type { z } from 'zod';
import type { Car } from '../car/read.ts';
import { problemText } from '../measured/problem.ts';
import type { Speech } from '../units/show.ts';
import { VERSION } from '../workshop/home.ts';
import type { carNamed } from './answers/form.ts';
import type { AnswerOut } from './answers/index.ts';
import { askedUnits } from './asked.ts';
import { FILE_HELP } from './car-argument.ts';
import { type EXIT, EXIT_HELP } from './outcome.ts';
import type { Manner } from './print.ts';
import { remarkLines } from './print.ts';

export interface CarOptions {
  readonly spec?: string;
  readonly files?: string;
}

export interface MannerOptions {
  readonly units: Speech;
  readonly shares?: true;
  readonly json?: true;
}

/** A command with its examples; each example is one that the tests run. */
export function command(name: string, summary: string, examples: readonly string[]): Command {
  const made = new Command(name).summary(summary).description(summary).exitOverride();
  made.configureOutput({ writeErr: () => undefined });
  made.helpOption('-h, --help', 'this help');
  made.addHelpText('after', `\nExamples:\n${examples.map((each) => `  ${each}`).join('\n')}\n\n${EXIT_HELP}`);
  return made;
}

export const onCar = (of: Command): Command =>
  of
    .argument('<file>', FILE_HELP)
    .option('--spec <name>', 'the state of the car that is meant; left out, the file as it stands')
    .option('--files <folder>', 'folder of the files that a car file from standard input names');

export const speakingWords = (of: Command): Command =>
  of.addOption(new Option('--units <way>', 'mm-N or in-lbf').default('mm-N').argParser(askedUnits));

export const speaking = (of: Command): Command =>
  speakingWords(of).option('--json', 'the answer in SI as JSON (its form: flatpatch schema --of answers)');

export const withShares = (of: Command): Command =>
  of.option('--shares', 'also what each spread is made of, worst first');

export const mannerOf = (options: MannerOptions): Manner => ({
  speech: options.units,
  shares: options.shares === true,
});

export const sayLines = (lines: readonly string[]): void => {
  process.stdout.write(`${lines.join('\n')}\n`);
};

export const sayJson = (answer: AnswerOut): void => {
  process.stdout.write(`${JSON.stringify(answer, null, 1)}\n`);
};

export const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

/** Warnings of a car that reads: they stand beside the answer, not in it. */
export function sayWarnings(car: Car): void {
  for (const warning of car.warnings) complain(`Mind: ${problemText(warning)}`);
}

export const carOut = (car: Car, file: string): z.input<typeof carNamed> => ({
  file,
  name: car.form.car.name,
  spec: car.spec,
  specs: [...car.specs],
  invented: car.form.car.invented === true,
});

export const header = <const N extends AnswerOut['answer']>(answer: N): { flatpatch: string; answer: N } => ({
  flatpatch: VERSION,
  answer,
});

/** First lines of an answer: the car, what it is doing, and that it is invented where it is. */
export const headLines = (car: Car, doing: string): string[] => [
  `${car.form.car.name}, spec "${car.spec}": ${doing}`,
  ...(car.form.car.invented === true ? ['An invented example, not a real car.'] : []),
];

export const tailLines = (notes: readonly string[], cautions: readonly string[]): string[] => [
  ...remarkLines('Notes', notes),
  ...remarkLines('Cautions', cautions),
];

/** Sets the exit code of a run that goes on to its end. */
export const endWith = (code: (typeof EXIT)[keyof typeof EXIT]): void => {
  process.exitCode = code;
};
