/** `flatpatch sheet`: a sheet on paper, as PDF: of a wheel, of what the car carries, of a bolted joint. */
import { type Command, Option } from 'commander';
import type { BankName } from '../../car/check-exhaust.ts';
import { isDay } from '../../car/field.ts';
import { primariesShop, ratiosOf } from '../../questions/index.ts';
import {
  isCornerSheet,
  isFloorSheet,
  type PaperName,
  SHEET_KINDS,
  type SheetKind,
  type SheetOn,
} from '../../sheets/index.ts';
import { versionOf } from '../../workshop/folder.ts';
import { VERSION } from '../../workshop/home.ts';
import { today } from '../../workshop/today.ts';
import { askedWheel } from '../asked.ts';
import { type AskedDoing, askedDoing, isDoingAsked, takingDoing } from '../asked-doing.ts';
import { askedJoint, JOINT_HELP, USUAL_JOINT } from '../asked-joint.ts';
import { openCar } from '../car-argument.ts';
import { type CarOptions, command, type MannerOptions, onCar, speakingWords } from '../command.ts';
import { badAsk, NotReached } from '../outcome.ts';
import { checkedSet } from '../primaries-asked.ts';
import { PAPERS, writePdf, writeSheet } from '../sheet-file.ts';
import { askedPosition, atWheel, TRAVEL_HELP } from './corner.ts';
import { askedRatios } from './ratios.ts';
import { type AskedMoves, askedMoves, takingMoves, writtenAgain } from './set-up.ts';

interface Options extends CarOptions, Pick<MannerOptions, 'units'>, AskedDoing, AskedMoves {
  readonly kind: SheetKind | 'primaries' | 'ratios';
  readonly targets?: string;
  readonly changes?: string;
  readonly read?: readonly string[];
  readonly bank?: BankName;
  readonly solution?: string;
  readonly part?: string;
  readonly wheel?: string;
  readonly travel: string;
  readonly joint: string;
  readonly out: string;
  readonly paper: PaperName;
  readonly date?: string;
}

export function sheetCommand(): Command {
  const made = command(
    'sheet',
    'A sheet to print: corner, spring, order of a torsion bar, loads, a bolted joint, its tightening card, primaries, gears, set-up, adjustments',
    [
      'flatpatch sheet fenwold-201 --kind corner --wheel front-left --out corner.pdf',
      'flatpatch sheet ashgarth-501 --kind bar-order --wheel front-left --paper Letter --out order.pdf',
      'flatpatch sheet fenwold-201 --kind spring --wheel rear-left --out - > spring.pdf',
      'flatpatch sheet fenwold-201 --kind load --out loads.pdf',
      'flatpatch sheet fenwold-201 --kind load --doing braking --out braking.pdf',
      'flatpatch sheet fenwold-201 --kind joint --joint case-to-engine --doing rear-kerb --out joint.pdf',
      'flatpatch sheet fenwold-201 --kind tightening --joint engine-to-tub --out card.pdf',
      'flatpatch primaries fenwold-201 --bank left --solution left.json && flatpatch sheet fenwold-201 --kind primaries --bank left --solution left.json --out primaries.pdf',
      'flatpatch sheet fenwold-201 --kind set-up --out set-up.pdf',
      'flatpatch sheet fenwold-201 --kind adjustments --leave "front left pushrod" --out adjustments.pdf',
      'flatpatch sheet fenwold-201 --kind ratios --targets "105, 140, 175, 210, 245, 285 km/h" --out ratios.pdf',
    ],
  );
  return takingMoves(takingDoing(speakingWords(onCar(made))))
    .addOption(
      new Option('--kind <kind>', 'which sheet')
        .choices([...SHEET_KINDS, 'primaries', 'ratios'])
        .makeOptionMandatory(),
    )
    .option('--wheel <wheel>', 'of a corner: front-left, front-right, rear-left or rear-right')
    .option('--joint <joint>', `of a joint or its card: ${JOINT_HELP}`, USUAL_JOINT)
    .addOption(new Option('--bank <side>', 'of primaries: which bank').choices(['left', 'right']))
    .option('--solution <file>', 'of primaries: the set, as flatpatch primaries writes it')
    .option('--part <name>', 'of primaries: which part of the bank, where it has several')
    .option('--targets <speeds>', 'of gears: road speeds wanted, as for flatpatch ratios')
    .option('--changes <count>', 'of gears: most pairs that may be changed for them')
    .option(
      '--read <name>',
      'of a set-up sheet: a sheet that was read, for the column of its state; may be written again; left out, the last',
      writtenAgain,
      [],
    )
    .requiredOption('--out <file>', 'file to write, or - for the output')
    .addOption(new Option('--paper <size>', 'paper').choices(PAPERS).default('A4'))
    .option('--travel <length>', TRAVEL_HELP, '0 mm')
    .option('--date <day>', 'day to print, such as 2026-03-14; left out, today')
    .addHelpText(
      'after',
      '\nWithout a word of what the car is doing a load sheet tells all cases, and a joint sheet the hardest of them.',
    )
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const { kind, wheel, units: speech, paper, out, rack = '0 mm' } = options;
  if (options.date !== undefined && !isDay(options.date)) {
    throw badAsk('asked/date', `--date "${options.date}" is no day; write it as 2026-03-14.`);
  }
  const on = { date: options.date ?? today(), version: VERSION, paper, speech };
  if (kind === 'primaries') {
    await primariesSheet(file, options, on);
    return;
  }
  if (kind === 'ratios') {
    await ratioChart(file, options, on);
    return;
  }
  if (isCornerSheet(kind)) {
    if (wheel === undefined)
      throw badAsk('asked/wheel', `--kind ${kind} is of one wheel: say which by --wheel.`);
    const which = askedWheel(wheel);
    const at = atWheel(askedPosition({ ...options, rack }), which);
    const { car, workshop } = await openCar(file, options);
    await writeSheet(kind, { ...on, car, workshop, wheel: which, at }, out);
    return;
  }
  if (isFloorSheet(kind)) {
    const moves = askedMoves(options);
    const { car, source, workshop } = await openCar(file, options);
    const fileVersion = versionOf(source.text);
    await writeSheet(kind, { ...on, car, workshop, fileVersion, moves, read: options.read ?? [] }, out);
    return;
  }
  const joint = askedJoint(options.joint);
  const { car, source, workshop } = await openCar(file, options);
  const doing = isDoingAsked(options) ? askedDoing(options, { car, source }) : undefined;
  await writeSheet(kind, { ...on, car, workshop, joint, ...(doing === undefined ? {} : { doing }) }, out);
}

async function ratioChart(
  file: string,
  { targets, changes, out, ...options }: Options,
  on: Omit<SheetOn, 'car' | 'workshop'>,
): Promise<void> {
  const { car, workshop } = await openCar(file, options);
  const matter = ratiosOf(
    car,
    askedRatios({
      ...(targets === undefined ? {} : { targets }),
      ...(changes === undefined ? {} : { changes }),
    }),
  );
  if (!matter.reached) throw new NotReached(matter.message);
  const { ratioPdf } = await import('../../paper/index.ts');
  await writePdf(await ratioPdf({ ...on, car, workshop, matter }), on.paper, out);
}

async function primariesSheet(
  file: string,
  { bank, solution, out, ...options }: Options,
  on: Omit<SheetOn, 'car' | 'workshop'>,
): Promise<void> {
  if (bank === undefined || solution === undefined) {
    throw badAsk(
      'asked/solution',
      '--kind primaries is of a set of one bank: say which by --bank and --solution.',
    );
  }
  const found = await openCar(file, options);
  const { put, set, car, part, looked: look } = await checkedSet(found, { ...options, bank, solution });
  const shop = primariesShop(car, bank, set);
  const looked = look();
  const { primariesPdf } = await import('../../paper/index.ts');
  const pdf = await primariesPdf({
    ...on,
    car,
    workshop: found.workshop,
    matter: {
      side: bank,
      ...(part.name === undefined ? {} : { part }),
      set,
      shop,
      notes: put.notes,
      ...(looked === undefined ? {} : { looked }),
    },
  });
  await writePdf(pdf, on.paper, out);
}
