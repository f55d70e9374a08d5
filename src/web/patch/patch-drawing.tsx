/** The car in plan on the patch, with what was read standing at its wheels or at the points where a gauge was put. */
import type { FloorSheetRead, FloorSheets } from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import { usePage } from '../state.tsx';
import type { MoveAtWheel } from './moves.ts';
import { PlanDrawing, type PlanLabel } from './plan-drawing.tsx';
import {
  KINDS_AT,
  kindOf,
  PAD_WORDS,
  type PadStop,
  said,
  stopOf,
  TYPED,
  WHEEL_KEYS,
  type WheelKey,
} from './words.ts';

interface Props {
  readonly stop: PadStop;
  readonly sheets: FloorSheets;
  readonly read: FloorSheetRead | undefined;
  readonly moves: readonly MoveAtWheel[] | undefined;
  /** The reading that is asked for now. */
  readonly asked: string | undefined;
}

export function PatchDrawing({ stop: at, sheets, read, moves, asked }: Props) {
  const { speech } = usePage();
  const stop = asked === undefined ? at : stopOf(asked);
  // while one kind is read it stands alone: two hands at the wheel need one number
  const kinds = asked === undefined ? KINDS_AT[stop] : [kindOf(asked)];
  return (
    <PlanDrawing
      title={asked === undefined ? PAD_WORDS[stop].title : capital(TYPED[kindOf(asked)]!.name)}
      more={read === undefined ? '' : `, ${read.name}`}
      labels={labelsOf({ stop, kinds, sheets, read, moves, speech })}
      chief={stop !== 'changes'}
      room={stop === 'changes' ? 230 : 150}
      gauges={sheets.heightsAt}
      dots={stop === 'heights' ? sheets.heights : []}
      asked={asked}
    >
      <Middle stop={stop} read={read} sheets={sheets} speech={speech} />
    </PlanDrawing>
  );
}

const capital = (words: string): string => `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;

/** Kinds that stand at no wheel and no gauge. */
const NO_PLACE = ['track', 'wheelbase'];

interface LabelsAsked {
  readonly stop: PadStop;
  readonly kinds: readonly string[];
  readonly sheets: FloorSheets;
  readonly read: FloorSheetRead | undefined;
  readonly moves: readonly MoveAtWheel[] | undefined;
  readonly speech: Speech;
}

function labelsOf({ stop, kinds, sheets, read, moves, speech }: LabelsAsked): readonly PlanLabel[] {
  if (stop === 'changes') {
    return WHEEL_KEYS.map((wheel) => ({
      of: wheel,
      lines: (moves ?? [])
        .filter(({ at }) => at === wheel)
        .flatMap(({ text, short }) => [
          { text, only: 'wide' as const },
          { text: short, only: 'tall' as const },
        ]),
    })).filter(({ lines }) => lines.length > 0);
  }
  const own = kinds.filter((kind) => !NO_PLACE.includes(kind));
  if (own.length === 0) return [];
  const places = stop === 'heights' ? sheets.heights : WHEEL_KEYS;
  return places.map((of) => ({
    of,
    lines: own.flatMap((kind) => {
      const id = `${kind}.${of}`;
      const value = read?.readings.find((each) => each.id === id)?.value;
      const wanted = sheets.wanted.find((each) => each.id === id);
      if (value === undefined && wanted === undefined && kind !== own[0]) return [];
      const off =
        value !== undefined && wanted !== undefined && Math.abs(value - wanted.value) > wanted.tolerance;
      const now = value === undefined ? 'not read' : said(kind, value, speech);
      // the sign says it beside the colour
      const mark = off ? (value > wanted.value ? ' ▲' : ' ▼') : '';
      const sheet = wanted === undefined ? [] : [`sheet ${said(kind, wanted.value, speech)}`];
      if (own.length === 1) return [{ text: `${now}${mark}`, off }, ...sheet.map((text) => ({ text }))];
      const tall = TALL[kind];
      return [
        { text: `${TYPED[kind]!.name} ${now}${mark}`, off, only: 'wide' as const },
        ...sheet.map((text) => ({ text, only: 'wide' as const })),
        ...(tall === undefined ? [] : [{ text: tall, large: false, only: 'tall' as const }]),
        ...(tall === undefined ? [] : [{ text: `${now}${mark}`, off, only: 'tall' as const }]),
      ];
    }),
  }));
}

/** Of several kinds there is room for these on tall paper, under short names; the card below has them all. */
const TALL: Readonly<Record<string, string>> = { camber: 'camber', toe: 'toe', toeAtRim: 'toe at rim' };

/** What belongs to no wheel: the cross weight and shares, the rake. */
function Middle({
  stop,
  read,
  sheets,
  speech,
}: {
  readonly stop: PadStop;
  readonly read: FloorSheetRead | undefined;
  readonly sheets: FloorSheets;
  readonly speech: Speech;
}) {
  if (stop !== 'weights' || read === undefined) return null;
  const weight = (wheel: WheelKey): number | undefined =>
    read.readings.find(({ id }) => id === `weight.${wheel}`)?.value;
  const all = WHEEL_KEYS.map(weight);
  if (all.some((each) => each === undefined)) return null;
  const [fl, fr, rl, rr] = all as [number, number, number, number];
  const total = fl + fr + rl + rr;
  const share = (of: number): string => `${((100 * of) / total).toFixed(1)} %`;
  const cross = sheets.wanted.find(({ id }) => id === 'cross');
  const off = cross !== undefined && Math.abs((fr + rl) / total - cross.value) > cross.tolerance;
  return (
    <div className="patch-middle">
      <p className="patch-large" data-off={off}>
        cross {share(fr + rl)}
        {off && ((fr + rl) / total > cross.value ? ' ▲' : ' ▼')}
      </p>
      {cross !== undefined && <p className="patch-small">sheet {(100 * cross.value).toFixed(1)} %</p>}
      <p className="patch-small">
        front {share(fl + fr)}, {said('weight', total, speech)}
      </p>
    </div>
  );
}
