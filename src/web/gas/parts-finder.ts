/** Finds the parts of an exhaust beside the page, in short pieces, so that it can be held at any time. */
import {
  type FindingParts,
  findParts,
  foundExhaust,
  lookedFor,
  type MirroredBank,
  openCar,
  type PartPut,
  type PartSet,
  partsProblem,
  primariesScene,
  type ScanInCar,
  scanForms,
  scanOf,
} from '../../questions/index.ts';
import type { AnsweredParts, PartTold, ToldParts, WantedParts } from './parts-protocol.ts';

const scope = globalThis as unknown as {
  onmessage: (event: MessageEvent<ToldParts>) => void;
  postMessage: (answer: AnsweredParts) => void;
};

/** Work between two looks at what the page says, ms; and between two words of how it goes. */
const PIECE = 60;
const WORD = 300;

let parts: readonly PartPut[] | undefined;
let finding: FindingParts | undefined;
let mirror: WantedParts['mirror'];
let going = false;
let shown = 0;

function refusal({ source, banks, scans }: Extract<ToldParts, { kind: 'open' }>): readonly string[] {
  const read = openCar(source);
  if (!read.ok) return read.problems.map(({ message }) => message);
  const doubts: string[] = [];
  const laid: ScanInCar[] = [];
  for (const name of Object.keys(scanForms(read.car))) {
    const is = scanOf(read.car, name, scans[name]);
    if (!is.reached) {
      return is.problems.map(({ message, remedy }) => `Scan ${name}: ${message} ${remedy ?? ''}`);
    }
    laid.push(is);
    doubts.push(...is.doubts.map((each) => `Scan ${name}: ${each}`));
  }
  const put = partsProblem(read.car, banks, laid);
  if (!put.reached) return [put.message];
  parts = put.parts;
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
    notes: [...put.notes, ...doubts],
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

function tell(stands: ReturnType<FindingParts['stands']> | 'held'): void {
  if (finding === undefined || parts === undefined) return;
  const { sets, mirrored, isImage, file } = foundExhaust(parts, finding, mirror);
  const now = finding.now();
  const nearest = sets === undefined ? finding.nearest() : undefined;
  scope.postMessage({
    kind: 'progress',
    stands,
    ...(now === undefined ? {} : { now }),
    ...(nearest === undefined ? {} : { nearest }),
    ...(sets === undefined ? {} : { sets: sets.map(({ part, put, set }) => partTold(part, put, set)) }),
    ...(file === undefined ? {} : { file }),
    ...(mirrored === undefined ? {} : { image: { suits: isImage, says: imageSays(mirrored) } }),
    saved: finding.saved(),
  });
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
  while (stands === 'searching' && performance.now() < until) stands = finding.advance();
  if (stands === 'impossible') {
    going = false;
    scope.postMessage({ kind: 'impossible', causes: finding.causes() });
    return;
  }
  if (stands !== 'searching') going = false;
  if (!going || performance.now() - shown > WORD) {
    shown = performance.now();
    tell(stands);
  }
  if (going) setTimeout(go);
}

function begin(of: readonly PartPut[], wanted: WantedParts): void {
  mirror = wanted.mirror;
  finding = findParts(lookedFor(of, mirror), wanted.seed, wanted.saved);
}

scope.onmessage = ({ data }) => {
  if (data.kind === 'open') {
    const messages = refusal(data);
    if (messages.length > 0) scope.postMessage({ kind: 'refused', messages });
    else if (data.saved !== undefined && parts !== undefined) {
      begin(parts, data);
      tell('held');
    }
  } else if (data.kind === 'hold') {
    going = false;
    tell('held');
  } else if (parts !== undefined) {
    begin(parts, data);
    going = true;
    go();
  }
};
