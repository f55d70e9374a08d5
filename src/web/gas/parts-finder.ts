/** Finds the parts of an exhaust beside the page, in short pieces, so that it can be held at any time. */
import {
  easePart,
  type FindingParts,
  findParts,
  foundExhaust,
  lookedFor,
  type MirroredBank,
  type PartPut,
  type PartSet,
  partByHand,
  partHandTold,
  partSets,
  partsProblem,
  primariesScene,
  type RouteSolution,
  readPrimaries,
  type ScanInCar,
} from '../../questions/index.ts';
import { EaseBeside } from './ease-beside.ts';
import { HandBeside } from './hand-beside.ts';
import { layScans } from './lay-scans.ts';
import type { AnsweredParts, PartsProgress, PartTold, ToldParts, WantedParts } from './parts-protocol.ts';
import type { HandAnswer } from './protocol.ts';
import { THREADS } from './strand-threads.ts';

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<ToldParts>) => void;
  postMessage: (answer: AnsweredParts) => void;
};

/** Work between two looks at what the page says, ms; and between two words of how it goes. */
const PIECE = 60;
const WORD = 300;
/** While other threads work and there is nothing to do here, ms. */
const WAIT = 10;

let parts: readonly PartPut[] | undefined;
let scans: readonly ScanInCar[] = [];
let finding: FindingParts | undefined;
let mirror: WantedParts['mirror'];
let going = false;
/** Sets as a hand has moved them, in the order of the parts that are looked for; undefined while none has. */
let moved: readonly RouteSolution[] | undefined;
let hand: { readonly at: number; readonly of: HandBeside } | undefined;
let stood: PartsProgress['stands'] = 'held';
let shown = 0;

function refusal({ source, banks, scans: bytes }: Extract<ToldParts, { kind: 'open' }>): readonly string[] {
  const laid = layScans(source, bytes);
  if (!laid.ok) return laid.messages;
  const put = partsProblem(laid.car, banks, laid.scans);
  if (!put.reached) return [put.message];
  parts = put.parts;
  scans = laid.scans;
  const scenes = put.parts.map((each) => primariesScene(each.put));
  const solids = scenes.flatMap((each) => each.solids);
  scope.postMessage({
    kind: 'opened',
    // the bodywork is one for all; what is stood clear of once for each that stands by it
    scene: {
      ...scenes[0]!,
      solids: [...new Map(solids.map((each) => [JSON.stringify(each), each])).values()],
    },
    parts: put.parts.map(({ part, put: of }) => partTold(part, of)),
    notes: [...put.notes, ...laid.doubts],
  });
  return [];
}

function partTold(
  { side, name, title, stage, cylinders, from }: PartPut['part'],
  put: PartPut['put'],
  set?: PartSet['set'],
): PartTold {
  const { ports, od, collector } = primariesScene(put);
  return {
    side,
    title,
    stage,
    cylinders,
    ...(name === undefined ? {} : { name }),
    ...(from === undefined ? {} : { from }),
    // where it begins is known once what stands before it is found
    ports: stage === 'primaries' || set !== undefined ? ports : [],
    od,
    collector,
    ...(set === undefined ? {} : { set }),
  };
}

function tell(stands: PartsProgress['stands']): void {
  if (finding === undefined || parts === undefined) return;
  stood = stands;
  const { sets, mirrored, isImage, file } = foundExhaust(parts, asItLies(finding, parts), mirror);
  const now = finding.now();
  const lacking = finding.lacking();
  const nearest = sets === undefined ? finding.nearest() : undefined;
  scope.postMessage({
    kind: 'progress',
    stands,
    isEnded: finding.stands() !== 'searching',
    ...(lacking === undefined ? {} : { lacks: lacking.reduce<number>((sum, each) => sum + (each ?? 0), 0) }),
    ...(now === undefined ? {} : { now }),
    ...(nearest === undefined ? {} : { nearest }),
    ...(sets === undefined ? {} : { sets: sets.map(({ part, put, set }) => partTold(part, put, set)) }),
    ...(file === undefined ? {} : { file }),
    ...(mirrored === undefined ? {} : { image: { suits: isImage, says: imageSays(mirrored) } }),
    saved: finding.saved(),
    ...(moved === undefined ? {} : { moved }),
  });
}

/** As found, or as a hand has moved it since. */
function asItLies(of: FindingParts, all: readonly PartPut[]): Pick<FindingParts, 'solutions' | 'sets'> {
  const lies = moved;
  if (lies === undefined) return of;
  return { solutions: () => lies, sets: () => partSets(lookedFor(all, mirror), lies) };
}

function doByHand({ title, does }: Extract<ToldParts, { kind: 'hand' }>): void {
  const found = moved ?? finding?.solutions();
  if (found === undefined || parts === undefined || going) return;
  const looked = lookedFor(parts, mirror);
  const at = looked.findIndex(({ part }) => part.title === title);
  if (at < 0) return;
  if (hand?.at !== at) {
    hand?.of.forget();
    hand = { at, of: new HandBeside((answer) => handTold(looked, at, found, answer)) };
  }
  hand.of.do({ byHand: (saved) => partByHand(looked, found, at, saved) }, does);
}

/** @param before  all sets as they lay when the hand came */
function handTold(
  looked: readonly PartPut[],
  at: number,
  before: readonly RouteSolution[],
  answer: HandAnswer,
): void {
  const told = partHandTold(looked, at, answer.told);
  scope.postMessage({ ...answer, told, title: looked[at]!.part.title });
  if (answer.live || answer.file === undefined) return;
  const read = readPrimaries(answer.file);
  if (!read.ok || (told.asFound && moved === undefined)) return;
  const lies = before.map((set, k) => (k === at && !told.asFound ? read.solution : set));
  const found = finding?.solutions();
  moved = lies.every((set, k) => set === found?.[k]) ? undefined : lies;
  tell(stood);
}

const imageSays = (mirrored: MirroredBank): readonly string[] =>
  !mirrored.reached
    ? [mirrored.message]
    : mirrored.inTheWay.length > 0
      ? mirrored.inTheWay
      : [
          `Its flanges stand off the measured ports: ${mirrored.misfits
            .map(
              ({ cylinder, off, leans }) =>
                `cylinder ${cylinder} by ${(1000 * off).toFixed(1)} mm and ${((180 / Math.PI) * leans).toFixed(1)}°`,
            )
            .join(', ')}.`,
        ];

function go(): void {
  if (!going || finding === undefined) return;
  const until = performance.now() + PIECE;
  let stands = finding.advance();
  while (stands === 'searching' && !finding.waits() && performance.now() < until) {
    stands = finding.advance();
  }
  if (stands === 'impossible') {
    halt();
    scope.postMessage({ kind: 'impossible', causes: finding.causes() });
    return;
  }
  if (stands !== 'searching') halt();
  if (!going || performance.now() - shown > WORD) {
    shown = performance.now();
    tell(stands);
  }
  if (going) setTimeout(go, finding.waits() ? WAIT : 0);
}

function halt(): void {
  going = false;
  void finding?.end();
}

function begin(of: readonly PartPut[], wanted: WantedParts): void {
  hand?.of.forget();
  hand = undefined;
  moved = wanted.moved;
  mirror = wanted.mirror;
  void finding?.end();
  finding = findParts(lookedFor(of, mirror), wanted.seed, wanted.saved, {
    hold: { scans },
    threads: THREADS,
  });
}

const easing = new EaseBeside((told) => scope.postMessage(told));

scope.onmessage = ({ data }) => {
  if (data.kind === 'ease') {
    const toEase = going ? undefined : finding?.toEase();
    if (toEase === undefined) return;
    easing.begin(easePart(toEase, data.seed), data.speech, toEase.part.title);
    return;
  }
  if (data.kind === 'hold' && easing.hold()) return;
  // whatever else is asked ends the looking for what would do
  easing.forget();
  if (data.kind === 'open') {
    const messages = refusal(data);
    if (messages.length > 0) scope.postMessage({ kind: 'refused', messages });
    else if (data.saved !== undefined && parts !== undefined) {
      begin(parts, data);
      tell('held');
    }
  } else if (data.kind === 'hold') {
    halt();
    tell('held');
  } else if (data.kind === 'hand') doByHand(data);
  else if (parts !== undefined) {
    begin(parts, data);
    going = true;
    go();
  }
};
