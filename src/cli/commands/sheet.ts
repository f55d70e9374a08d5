/** `flatpatch sheet`: a sheet of a corner on paper, as PDF. */
import { type Command, Option } from 'commander';
import { isDay } from '../../car/field.ts';
import { type PaperName, SHEET_KINDS, type SheetKind } from '../../sheets/index.ts';
import { VERSION } from '../../workshop/home.ts';
import { today } from '../../workshop/today.ts';
import { askedWheel } from '../asked.ts';
import { openCar } from '../car-argument.ts';
import { type CarOptions, command, type MannerOptions, onCar, speakingWords } from '../command.ts';
import { badAsk } from '../outcome.ts';
import { PAPERS, writeSheet } from '../sheet-file.ts';
import { askedPosition, atWheel, RACK_HELP, TRAVEL_HELP } from './corner.ts';

interface Options extends CarOptions, Pick<MannerOptions, 'units'> {
  readonly kind: SheetKind;
  readonly wheel: string;
  readonly travel: string;
  readonly rack: string;
  readonly out: string;
  readonly paper: PaperName;
  readonly date?: string;
}

export function sheetCommand(): Command {
  const made = command('sheet', 'A sheet to print: corner, spring, or the order of a torsion bar', [
    'flatpatch sheet fenwold-201 --kind corner --wheel front-left --out corner.pdf',
    'flatpatch sheet ashgarth-501 --kind bar-order --wheel front-left --paper Letter --out order.pdf',
    'flatpatch sheet fenwold-201 --kind spring --wheel rear-left --out - > spring.pdf',
  ]);
  return speakingWords(onCar(made))
    .addOption(new Option('--kind <kind>', 'which sheet').choices(SHEET_KINDS).makeOptionMandatory())
    .requiredOption('--wheel <wheel>', 'front-left, front-right, rear-left or rear-right')
    .requiredOption('--out <file>', 'file to write, or - for the output')
    .addOption(new Option('--paper <size>', 'paper').choices(PAPERS).default('A4'))
    .option('--travel <length>', TRAVEL_HELP, '0 mm')
    .option('--rack <length>', RACK_HELP, '0 mm')
    .option('--date <day>', 'day to print, such as 2026-03-14; left out, today')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const wheel = askedWheel(options.wheel);
  const at = atWheel(askedPosition(options), wheel);
  if (options.date !== undefined && !isDay(options.date)) {
    throw badAsk('asked/date', `--date "${options.date}" is no day; write it as 2026-03-14.`);
  }
  const { car, workshop } = await openCar(file, options);
  const { units: speech, paper, out } = options;
  const asked = { car, wheel, at, workshop, date: options.date ?? today(), version: VERSION, paper, speech };
  await writeSheet(options.kind, asked, out);
}
