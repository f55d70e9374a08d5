/** Primaries of several parts looked for and told: both banks, several collectors on one, secondaries behind them. */
import type { BankName } from '../car/check-exhaust.ts';
import {
  type Banks,
  type CarPart,
  EXHAUST_CAUTION,
  easePart,
  foundExhaust,
  holdsTold,
  lookedFor,
  type MirroredBank,
  type PartSet,
  type PartsHold,
  partHot,
  partInCar,
  partsProblem,
  STANDING_CAUTION,
  sidesOf,
} from '../questions/index.ts';
import type { Speech } from '../units/show.ts';
import { type CarOptions, carOut, complain, header, headLines, tailLines } from './command.ts';
import { type HandOptions, isHandAsked } from './hand-asked.ts';
import { askedHold } from './hold-asked.ts';
import { hotLines, inCarLines } from './in-car-lines.ts';
import { hotOut, inCarOut } from './in-car-out.ts';
import { badAsk, NotReached } from './outcome.ts';
import { sizeText } from './pipe-words.ts';
import { askedBank, partOut, scansInCar } from './primaries-asked.ts';
import { table } from './print.ts';
import { type PartsRunEnded, runParts } from './run-parts.ts';
import { setLines } from './set-lines.ts';
import { setOut } from './set-out.ts';
import type { Found, Telling } from './tell.ts';
import { askedThreads } from './threads/asked.ts';
import { writeWhole } from './whole-file.ts';
import { wouldDo, wouldDoLines } from './would-do.ts';

export interface PartsOptions extends CarOptions, HandOptions {
  readonly bank: Banks;
  readonly mirror?: BankName;
  readonly from?: string;
  readonly solution?: string;
  readonly saved?: string;
  readonly sets: string;
  readonly hold?: string;
  readonly threads?: string;
  readonly units: Speech;
}

export interface PartsTime {
  readonly seconds: number;
  readonly seed: number;
}

/** @throws BadInput where it is asked what is asked of one part alone; NotReached where a part cannot be put */
export async function tellParts(found: Found, options: PartsOptions, time: PartsTime): Promise<Telling> {
  const { car } = found;
  const { bank, mirror, solution: file, units } = options;
  only(options);
  for (const side of sidesOf(bank)) askedBank(car, side);
  const scans = await scansInCar(found, options);
  const put = partsProblem(car, bank, scans);
  if (!put.reached) throw new NotReached(put.message);
  const kinds: PartsHold['kinds'] = (of, side) => askedHold(options.hold, of, side);
  const ended = await runParts(lookedFor(put.parts, mirror), {
    ...time,
    threads: askedThreads(options.threads),
    hold: { scans, kinds },
    ...(options.saved === undefined ? {} : { saved: options.saved }),
  });
  const { finding } = ended;
  const { sets, mirrored, isImage, file: written } = foundExhaust(put.parts, finding, mirror);
  const other = mirror === undefined ? undefined : sidesOf('both').find((side) => side !== mirror);
  const toEase = ended.stopped ? undefined : finding.toEase();
  const would =
    toEase === undefined
      ? undefined
      : await wouldDo(easePart(toEase, time.seed), { seconds: time.seconds, units });
  const refusal =
    sets === undefined
      ? [
          notFound(ended, time.seconds),
          ...(would === undefined ? [] : [`Of the ${toEase!.part.title}:`, ...wouldDoLines(would)]),
        ].join('\n')
      : mirrored === undefined || isImage
        ? undefined
        : notMirrored(mirrored, mirror!, other!);
  if (sets !== undefined && file !== undefined) {
    await writeWhole(file, written!);
    complain(`${file}: ${sets.map(({ part }) => part.title).join('; ')}.`);
  }
  const inCar = (sets ?? []).map(({ part }, k) =>
    part.stage === 'primaries' ? partInCar(sets!, k, scans, kinds(part.car, part.side)) : undefined,
  );
  const behind = (sets ?? []).map((_, k) => partHot(sets!, k));
  const notes = [
    ...put.notes,
    ...(sets !== undefined && finding.stands() === 'searching'
      ? ['The looking was ended before its end: longer may hold more of what is asked.']
      : []),
    ...(put.parts.some(({ part }) => part.stage !== 'primaries')
      ? [
          'What stands behind a collector is taken to hang on its own pipes, and comes off before its primaries.',
        ]
      : []),
  ];
  const cautions = [EXHAUST_CAUTION, STANDING_CAUTION];
  const nearest = finding.nearest();
  return {
    json: {
      ...header('primaries'),
      car: carOut(car, found.file),
      bank,
      seed: time.seed,
      reached: refusal === undefined,
      stands: finding.stands(),
      causes: [...finding.causes()],
      ...(nearest === undefined || sets !== undefined ? {} : { nearest }),
      ...(would === undefined
        ? {}
        : {
            wouldDo: would.eased.map(({ solution: _, ...each }) => each),
            wouldDoOf: { bank: toEase!.part.side, ...partOut(toEase!.part) },
          }),
      ...(sets === undefined
        ? {}
        : { parts: sets.map((each, k) => partSetOut(each, inCar[k], behind[k], units)) }),
      ...(mirrored === undefined ? {} : { mirrored: mirroredOut(mirrored, mirror!) }),
      notes,
      cautions,
    },
    lines: () => [
      ...headLines(car, bank === 'both' ? 'primaries of both banks' : `primaries of the ${bank} bank`),
      ...(isImage && mirrored?.reached === true
        ? ['', ...mirroredLines(mirrored, mirror!, other!, units)]
        : []),
      ...sets!.flatMap((each, k) => partLines(each, inCar[k], behind[k], units)),
      ...tailLines(notes, cautions),
    ],
    refusal,
  };
}

/** What is done to one set is not done to several. */
function only({ bank, mirror, from, sets, ...hand }: PartsOptions): void {
  if (mirror !== undefined && bank !== 'both') {
    throw badAsk(
      'asked/mirror',
      '--mirror goes with --bank both: one bank is found, the other is its image.',
    );
  }
  if (from !== undefined || isHandAsked(hand)) {
    throw badAsk(
      'asked/parts',
      '--from, --move, --keep and --mend are for a bank that is one part, and for that bank alone.',
      'Say --bank left or --bank right.',
    );
  }
  if (sets !== '1') {
    throw badAsk(
      'asked/parts',
      '--sets is for a bank that is one part, and for that bank alone.',
      'Another --seed gives other sets.',
    );
  }
}

function notFound({ finding, stopped }: PartsRunEnded, seconds: number): string {
  const causes = finding.causes();
  if (causes.length > 0) {
    return ['Primaries as they are asked for cannot be:', ...causes.map((each) => `- ${each}`)].join('\n');
  }
  const within = stopped ? 'until it was stopped' : `in ${seconds} s`;
  const nearest = finding.nearest();
  return [
    finding.stands() === 'stuck'
      ? `No sets that stay clear of each other were found with ${finding.work()} evaluations; the search was given up.`
      : `No sets that stay clear of each other were found ${within}.`,
    ...(nearest === undefined ? [] : [`Where it came no further: ${nearest}`]),
    'Longer or another seed may do. That there are none is not proved.',
  ].join('\n');
}

function notMirrored(mirrored: MirroredBank, from: BankName, other: BankName): string {
  if (!mirrored.reached) return mirrored.message;
  return [
    `The ${from} bank was found. Its mirror image does not suit the ${other} bank:`,
    ...mirrored.inTheWay.map((each) => `- ${each}`),
    'Without --mirror each bank is found for itself.',
  ].join('\n');
}

function mirroredLines(
  { misfits }: Extract<MirroredBank, { reached: true }>,
  from: BankName,
  other: BankName,
  speech: Speech,
): string[] {
  const length = sizeText(speech);
  return [
    `The ${other} bank is the mirror image of the ${from}, laid on its ports as a whole and checked there. It is made`,
    'from the same cuts with every clock angle turned round. Its flanges stand off the measured ports by:',
    ...table([
      ['Cylinder', 'off', 'leans'],
      ...misfits.map(({ cylinder, off, leans }) => [
        String(cylinder),
        length(off),
        `${((leans * 180) / Math.PI).toFixed(1)}°`,
      ]),
    ]),
  ];
}

const mirroredOut = (mirrored: MirroredBank, from: BankName) => ({
  from,
  misfits: mirrored.reached ? mirrored.misfits.map((each) => ({ ...each })) : [],
  inTheWay: mirrored.reached ? [...mirrored.inTheWay] : [mirrored.message],
});

const partSetOut = (
  { part, set }: PartSet,
  inCar: ReturnType<typeof partInCar>,
  hot: ReturnType<typeof partHot>,
  speech: Speech,
) => ({
  bank: part.side,
  ...partOut(part),
  stage: part.stage,
  cylinders: [...part.cylinders],
  set: setOut(set),
  ...(inCar === undefined
    ? {}
    : {
        holds: holdsTold(inCar, speech).map(({ kind, asked, holds, words }) => ({
          kind,
          asked,
          holds,
          words,
        })),
        inCar: inCarOut(inCar),
      }),
  ...(hot === undefined ? {} : { hot: hotOut(hot) }),
});

const capital = (text: string): string => `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;

function partLines(
  { part, set }: PartSet,
  inCar: ReturnType<typeof partInCar>,
  hot: ReturnType<typeof partHot>,
  speech: Speech,
): string[] {
  return [
    '',
    capital(whose(part)),
    ...setLines(set, speech, part.stage),
    ...(inCar === undefined ? [] : ['', ...inCarLines(inCar, { side: part.side, speech })]),
    ...(hot === undefined ? [] : ['', ...hotLines(part, hot, speech)]),
  ];
}

const whose = ({ title, stage, cylinders }: CarPart): string =>
  stage !== 'primaries' ? `${title}, behind cylinders ${cylinders.join(', ')}` : title;
