/** `flatpatch primaries`: a bank's primaries found, all of one length, clear of all that the car file names. */
import { join, parse } from 'node:path';
import { type Command, Option } from 'commander';
import type { BankName } from '../../car/check-exhaust.ts';
import {
  askedMore,
  type Banks,
  EXHAUST_CAUTION,
  easePrimaries,
  type FindingStands,
  type Holdable,
  type HoldingStands,
  holdsTold,
  PrimariesByHand,
  type PrimariesSet,
  partsOf,
  primariesHolding,
  primariesInCar,
  type RankedSet,
  rankedSets,
  STANDING_CAUTION,
  writePrimaries,
} from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import { askedCount } from '../asked.ts';
import {
  carOut,
  command,
  complain,
  header,
  headLines,
  type MannerOptions,
  onCar,
  speaking,
  tailLines,
} from '../command.ts';
import { byHand, type HandDone, type HandOptions, handDone, handLines, isHandAsked } from '../hand-asked.ts';
import { askedHold, HOLD_HELP } from '../hold-asked.ts';
import { inCarLines } from '../in-car-lines.ts';
import { inCarOut } from '../in-car-out.ts';
import { sizeText } from '../pipe-words.ts';
import { type BankOptions, checkedSet, type Put, putBank } from '../primaries-asked.ts';
import { table } from '../print.ts';
import { type RunEnded, runFinding } from '../run-finding.ts';
import { setLines } from '../set-lines.ts';
import { setOut } from '../set-out.ts';
import { type Found, type Telling, tell } from '../tell.ts';
import { tellParts } from '../tell-parts.ts';
import { askedThreads, THREADS_HELP } from '../threads/asked.ts';
import { writeWhole } from '../whole-file.ts';
import { type WouldDo, wouldDo, wouldDoLines } from '../would-do.ts';

interface Options extends Omit<BankOptions, 'bank'>, MannerOptions, HandOptions {
  readonly bank: Banks;
  readonly mirror?: BankName;
  readonly seconds: string;
  readonly from?: string;
  readonly seed: string;
  readonly solution?: string;
  readonly saved?: string;
  readonly sets: string;
  readonly threads?: string;
  readonly hold?: string;
}

export function primariesCommand(): Command {
  const made = command(
    'primaries',
    'Primaries of a bank found: all of one length, packed into their collector, clear of bodywork and the rest',
    [
      'flatpatch primaries ashgarth-501 --bank left --solution left.json',
      'flatpatch primaries fenwold-201 --bank right --seed 3 --saved right.kept --json',
      'flatpatch primaries fenwold-201 --bank both --mirror left --solution both.json',
      'flatpatch primaries fenwold-201 --spec four-two-one --bank left --seconds 60 --solution pairs.json',
      'flatpatch primaries ashgarth-501 --bank left --from left.json --move "cylinder 3 bend 2 by 0, 0, 6 mm" --mend --solution moved.json',
    ],
  );
  return byHand(speaking(onCar(made)))
    .addOption(
      new Option('--bank <side>', 'which bank, or both, each clear of the other')
        .choices(['left', 'right', 'both'])
        .makeOptionMandatory(),
    )
    .addOption(
      new Option(
        '--mirror <side>',
        'with --bank both: finds this bank, and takes its mirror image for the other where that suits there',
      ).choices(['left', 'right']),
    )
    .option('--from <file>', 'begins with this set instead of looking for one')
    .option('--seconds <count>', 'longest time to look', '30')
    .option('--seed <number>', 'of the draw: the same seed gives the same set', '1')
    .option('--solution <file>', 'file to write the set to')
    .option('--saved <file>', 'file to keep what was done in every two seconds, and to go on from')
    .option('--sets <count>', 'how many sets to look for, 1 to 8, to choose from', '1')
    .option('--hold <what>', HOLD_HELP)
    .option('--threads <number>', THREADS_HELP)
    .addHelpText('after', '\nCtrl-C ends the looking; the best set so far is told and written.')
    .action(answer);
}

async function answer(file: string, options: Options): Promise<void> {
  const seconds = askedCount('--seconds', options.seconds, 1, 86_400);
  const seed = askedCount('--seed', options.seed, 0, 2 ** 31 - 1);
  await tell(file, options, async (found) => {
    const { bank } = options;
    if (bank === 'both' || partsOf(found.car, bank).length > 1 || options.mirror !== undefined) {
      return tellParts(found, { ...options, bank }, { seconds, seed });
    }
    return tellBank(found, { ...options, bank }, seconds, seed);
  });
}

async function tellBank(found: Found, options: OneBank, seconds: number, seed: number): Promise<Telling> {
  const { bank } = options;
  const { car } = found;
  const begun = await (options.from === undefined
    ? lookedFor(found, options, seconds, seed)
    : begunFrom(found, options, options.from));
  const { put, stands } = begun;
  const hand =
    isHandAsked(options) && begun.hand !== undefined
      ? await handDone(begun.hand, options, seed, seconds)
      : undefined;
  const solution = begun.hand?.solution;
  const set = hand?.told.set ?? begun.set;
  const { ranked } = begun;
  if (solution !== undefined && hand?.refusal === undefined && options.solution !== undefined) {
    const written = ranked.length > 1 ? ranked.map((each) => each.solution) : [solution];
    for (const [k, each] of written.entries()) {
      const path = k === 0 ? options.solution : numbered(options.solution, k + 1);
      await writeWhole(path, writePrimaries(each));
      complain(`${path}: the set of ${each.pipes.length} primaries.`);
    }
  }
  const inCar =
    solution === undefined ? undefined : primariesInCar(car, bank, put.scans, solution, begun.kinds);
  const notes = [
    ...put.notes,
    ...(set !== undefined && stands !== 'done'
      ? ['The looking was ended before its end: longer may give more room.']
      : []),
  ];
  const cautions = [EXHAUST_CAUTION, STANDING_CAUTION];
  const { causes, nearest } = begun;
  return {
    json: {
      ...header('primaries'),
      car: carOut(car, found.file),
      bank,
      seed,
      reached: set !== undefined && hand?.refusal === undefined,
      stands,
      causes: [...causes],
      ...(nearest === undefined || set !== undefined ? {} : { nearest }),
      ...(set === undefined ? {} : { set: setOut(set) }),
      ...(ranked.length < 2 ? {} : { sets: ranked.map(({ set: _, solution: __, ...each }) => each) }),
      ...(begun.would === undefined
        ? {}
        : { wouldDo: begun.would.eased.map(({ solution: _, ...each }) => each) }),
      ...(hand === undefined ? {} : { byHand: handOut(hand) }),
      ...(inCar === undefined
        ? {}
        : {
            holds: holdsTold(inCar, options.units).map(({ kind, asked, holds, words }) => ({
              kind,
              asked,
              holds,
              words,
            })),
            inCar: inCarOut(inCar),
          }),
      notes,
      cautions,
    },
    lines: () => [
      ...headLines(car, `primaries of the ${bank} bank`),
      '',
      ...(ranked.length < 2 ? [] : [...rankedLines(ranked, options.units), '', 'The first of them:']),
      ...setLines(set!, options.units),
      ...(hand === undefined ? [] : ['', ...handLines(hand, options.units)]),
      '',
      ...inCarLines(inCar!, {
        side: bank,
        speech: options.units,
        more: begun.holding === undefined ? undefined : askedMore(begun.holding, options.units),
      }),
      ...tailLines(notes, cautions),
    ],
    refusal: set === undefined ? begun.refusal : hand?.refusal,
  };
}

type OneBank = Options & BankOptions;

/** A set to show or to move by hand, or why there is none. */
interface Begun {
  readonly put: Put;
  readonly stands: FindingStands;
  readonly set: PrimariesSet | undefined;
  readonly hand: PrimariesByHand | undefined;
  /** What was asked of it in the car, and how that stands. */
  readonly kinds: readonly Holdable[];
  readonly holding?: HoldingStands;
  /** Several sets to choose from, the first of which is that one; none where one was asked for. */
  readonly ranked: readonly RankedSet[];
  readonly causes: readonly string[];
  readonly nearest?: string;
  readonly refusal?: string;
  /** What would let them fit, where nothing was found. */
  readonly would?: WouldDo;
}

async function begunFrom(found: Found, options: OneBank, file: string): Promise<Begun> {
  const { put, set, solution } = await checkedSet(found, { ...options, solution: file });
  return {
    put,
    set,
    stands: 'done',
    hand: new PrimariesByHand(put, solution),
    kinds: askedHold(options.hold, found.car, options.bank),
    ranked: [],
    causes: [],
  };
}

async function lookedFor(found: Found, options: OneBank, seconds: number, seed: number): Promise<Begun> {
  const { bank, saved } = options;
  const put = await putBank(found, options);
  const kinds = askedHold(options.hold, found.car, bank);
  const holds = primariesHolding(found.car, bank, put.scans, put, kinds);
  const ended = await runFinding(put, {
    ...(holds === undefined ? {} : { holds }),
    seconds,
    seed,
    threads: askedThreads(options.threads),
    sets: askedCount('--sets', options.sets, 1, 8),
    ...(saved === undefined ? {} : { saved }),
  });
  const { finding, stands, stopped } = ended;
  const nearest = finding.nearest();
  const ranked = finding.solutions().length < 2 ? [] : rankedSets(put, finding.solutions());
  const set = ranked[0]?.set ?? finding.set();
  const { units } = options;
  const would =
    set === undefined && !stopped
      ? await wouldDo(easePrimaries(holds?.asked ?? put, seed), { seconds, units })
      : undefined;
  return {
    put,
    stands,
    set,
    hand: ranked[0] === undefined ? finding.byHand() : new PrimariesByHand(put, ranked[0].solution),
    ranked,
    causes: finding.causes,
    kinds,
    ...(finding.holding === undefined ? {} : { holding: finding.holding }),
    ...(nearest === undefined ? {} : { nearest }),
    refusal: [notFound(ended, bank, seconds), ...(would === undefined ? [] : wouldDoLines(would))].join('\n'),
    ...(would === undefined ? {} : { would }),
  };
}

function notFound({ finding, stands, stopped }: RunEnded, bank: string, seconds: number): string {
  if (stands === 'impossible') {
    return [
      `Primaries of the ${bank} bank as they are asked for cannot be:`,
      ...finding.causes.map((each) => `- ${each}`),
    ].join('\n');
  }
  const within = stopped ? 'until it was stopped' : `in ${seconds} s`;
  const nearest = finding.nearest();
  return [
    `No set for the ${bank} bank was found ${within}, from ${finding.starts()} fresh starts.`,
    ...(nearest === undefined ? [] : [`What came nearest: ${nearest}`]),
    'Longer or another seed may do.',
  ].join('\n');
}

/** `left.json` becomes `left-2.json`. */
const numbered = (path: string, k: number): string => {
  const { dir, name, ext } = parse(path);
  return join(dir, `${name}-${k}${ext}`);
};

function rankedLines(ranked: readonly RankedSet[], speech: Speech): string[] {
  const length = sizeText(speech);
  return [
    ...table([
      ['Set', 'room beyond what was asked', 'bends', 'turned', 'welds', 'mass', ''],
      ...ranked.map(({ spare, passed, bends, turned, welds, mass, beaten }, k) => [
        String(k + 1),
        spare === undefined ? 'nothing near' : length(spare),
        String(bends),
        `${((turned * 180) / Math.PI).toFixed(0)}°`,
        String(welds),
        `${mass.toFixed(2)} kg`,
        [
          ...(passed === 0 ? [] : [`not in rotation, ${passed} passed over`]),
          ...(beaten ? ['another is better in all of it'] : []),
        ].join('; '),
      ]),
    ]),
  ];
}

const handOut = ({ told, done, refusal }: HandDone) => ({
  done: [...done],
  ...(refusal === undefined ? {} : { refused: refusal }),
  keptPipes: [...told.keptPipes],
  keptCollector: told.collector.kept,
  bends: told.bends.map(({ cylinder, bend, at, kept }) => ({ cylinder, bend, at: [...at], kept })),
});
