/**
 * Finds primaries beside the page: works in short pieces, so that it can be held at any time, and opens more threads
 * beside itself where a hard problem has work for them.
 */
import {
  easePrimaries,
  type FindingPrimaries,
  findSets,
  type Holdable,
  type Holds,
  type PrimariesSet,
  type ProblemPut,
  primariesHolding,
  primariesProblem,
  primariesScene,
  type SavedFinding,
  writePrimaries,
} from '../../questions/index.ts';
import { EaseBeside } from './ease-beside.ts';
import { HandBeside } from './hand-beside.ts';
import { layScans } from './lay-scans.ts';
import type { Answered, Told, Wanted } from './protocol.ts';
import { THREADS } from './strand-threads.ts';

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<Told>) => void;
  postMessage: (answer: Answered) => void;
};

/** Work between two looks at what the page says, ms; and between two pictures. */
const PIECE = 60;
const PICTURE = 300;
/** Between two pictures of what came nearest, which take longer than others. */
const NEAR = 2000;
/** While other threads work and there is nothing to do here, ms. */
const WAIT = 10;

type Put = Extract<ProblemPut, { reached: true }>;
let put: Put | undefined;
/** What a set can be asked to hold in the car: looked up for what is asked, once for each. */
let holdsFor: ((kinds: readonly Holdable[]) => Holds | undefined) | undefined;
/** What was asked of the finder last, to ease. */
let asked: Holds['asked'] | undefined;
let finding: FindingPrimaries | undefined;
let going = false;
let wanted = 1;
const hand = new HandBeside((answer) => scope.postMessage(answer));

/** Puts the problem; what keeps it from being put, where something does. */
function refusal({ source, side, scans }: Extract<Told, { kind: 'open' }>): readonly string[] {
  const laid = layScans(source, scans);
  if (!laid.ok) return laid.messages;
  const { car } = laid;
  const is = primariesProblem(car, side, laid.scans);
  if (!is.reached) return [is.message];
  put = is;
  holdsFor = (kinds) => primariesHolding(car, side, laid.scans, is, kinds);
  scope.postMessage({ kind: 'opened', scene: primariesScene(is), notes: [...is.notes, ...laid.doubts] });
  return [];
}

function open(told: Extract<Told, { kind: 'open' }>): void {
  const messages = refusal(told);
  if (messages.length > 0) scope.postMessage({ kind: 'refused', messages });
  if (put === undefined || told.saved === undefined) return;
  begin(put, told);
  tell('held');
  if (told.hand !== undefined) hand.open(finding!, told.hand);
}

function begin(
  of: Put,
  { seed, sets, hold, saved, chosen }: Wanted & { readonly saved?: SavedFinding },
): void {
  void finding?.end();
  wanted = sets;
  const holds = hold.length === 0 ? undefined : holdsFor?.(hold);
  asked = holds?.asked ?? of;
  finding = findSets(of, { seed, sets, saved, threads: THREADS, ...(holds === undefined ? {} : { holds }) });
  finding.choose(chosen);
}

type Stands = 'held' | 'searching' | 'improving' | 'done';

function tell(stands: Stands): void {
  if (finding === undefined) return;
  const sets = finding.sets();
  // what was asked for is looked at when it comes
  const newest = sets.find(({ number }) => number > told && number === sets.length);
  if (newest !== undefined && told > 0) finding.choose(newest.strand);
  told = sets.length;
  const chosen = finding.chosen();
  const set = finding.set();
  const solution = finding.solution();
  const nearest = finding.nearest();
  if (set === undefined && (stands === 'held' || performance.now() - drawn > NEAR)) {
    drawn = performance.now();
    near = finding.nearestSet();
  }
  stood = stands;
  scope.postMessage({
    kind: 'progress',
    stands,
    starts: finding.starts(),
    ...(nearest === undefined ? {} : { nearest }),
    ...(finding.holding === undefined ? {} : { holding: finding.holding }),
    ...(set !== undefined || near === undefined ? {} : { near }),
    ...(set === undefined || solution === undefined ? {} : { set, file: writePrimaries(solution) }),
    sets,
    ...(chosen === undefined ? {} : { chosen }),
    wanted,
    saved: finding.saved(),
  });
}

/** Sets that were told, and how the finding stood. */
let told = 0;
let stood: Stands = 'held';
let shown = 0;
let drawn = 0;
let near: PrimariesSet | undefined;

function go(): void {
  if (!going || finding === undefined) return;
  const until = performance.now() + PIECE;
  let stands = finding.advance();
  while (
    performance.now() < until &&
    !finding.waits() &&
    (stands === 'searching' || stands === 'improving')
  ) {
    stands = finding.advance();
  }
  if (stands === 'impossible') {
    going = false;
    scope.postMessage({ kind: 'impossible', causes: finding.causes });
    return;
  }
  if (stands === 'done' || performance.now() - shown > PICTURE) {
    shown = performance.now();
    tell(stands);
  }
  if (stands === 'done') halt();
  else setTimeout(go, finding.waits() ? WAIT : 0);
}

function halt(): void {
  going = false;
  void finding?.end();
}

const easing = new EaseBeside((told) => scope.postMessage(told));

scope.onmessage = ({ data }) => {
  if (data.kind === 'ease') {
    if (put === undefined || going) return;
    easing.begin(easePrimaries(asked ?? put, data.seed), data.speech);
    return;
  }
  if (data.kind === 'hold' && easing.hold()) return;
  // whatever else is asked ends the looking for what would do
  easing.forget();
  if (data.kind === 'open') open(data);
  else if (data.kind === 'hold') {
    halt();
    tell('held');
  } else if (data.kind === 'choose') {
    hand.forget();
    finding?.choose(data.strand);
    tell(stood);
  } else if (data.kind === 'hand') {
    if (finding !== undefined && !going) hand.do(finding, data.does);
  } else if (put !== undefined) {
    hand.forget();
    near = undefined;
    begin(put, data);
    going = true;
    go();
  }
};
