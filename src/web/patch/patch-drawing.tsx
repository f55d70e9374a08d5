/** The car in plan on the patch, with what was read standing at its wheels or at the points where a gauge was put. */
import { useMemo } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import { AS_SURVEYED } from '../../questions/figure.ts';
import { drawCar, type FloorSheetRead, type FloorSheets } from '../../questions/index.ts';
import type { Speech } from '../../units/show.ts';
import { extent } from '../scene/bodies.ts';
import { FlatDrawing } from '../scene/flat-drawing.tsx';
import { FIRST_TURN, framed, lookOf, projected } from '../scene/look.ts';
import { useCar } from '../sheet/car-file.tsx';
import { useSize } from '../sheet/use-size.ts';
import { usePage } from '../state.tsx';
import type { MoveAtWheel } from './moves.ts';
import {
  FLOOR_WORDS,
  type FloorStop,
  KINDS_AT,
  said,
  stopOf,
  TYPED,
  WHEEL_KEYS,
  type WheelKey,
} from './words.ts';

interface Props {
  readonly sheets: FloorSheets;
  readonly read: FloorSheetRead | undefined;
  readonly moves: readonly MoveAtWheel[] | undefined;
  /** The reading that is asked for now. */
  readonly asked: string | undefined;
}

export function PatchDrawing({ sheets, read, moves, asked }: Props) {
  const { place, speech } = usePage();
  const { car } = useCar();
  const [paper, size] = useSize();
  const drawing = useMemo(() => drawCar(car, AS_SURVEYED), [car]);
  // on a phone nose up: the wheels have room beside them for their figures
  const wide = size.width > 1.25 * size.height && size.width > 620;
  const stop = asked === undefined ? place.floor : stopOf(asked);
  const labels = labelsOf({ stop, sheets, read, moves, speech });
  const frame = useMemo(() => {
    const look = lookOf('plan', FIRST_TURN, 'left', wide);
    // room for what stands outboard of the wheels
    const side = wide
      ? { left: 30, top: 96 }
      : { left: Math.min(stop === 'changes' ? 230 : 150, size.width * 0.33), top: 16 };
    const area = {
      ...side,
      width: Math.max(60, size.width - 2 * side.left),
      height: Math.max(60, size.height - 2 * side.top),
    };
    return framed(look, extent(drawing), area);
  }, [drawing, wide, size, stop]);
  const spots = useMemo(() => {
    const wheels = Object.fromEntries(
      drawing.corners.map(({ wheel, tyre }) => [
        `${wheel.end}${wheel.side === 'left' ? 'Left' : 'Right'}`,
        projected(frame, outboard(tyre.centre, tyre.tyreWidth)),
      ]),
    );
    const points = Object.fromEntries(
      Object.entries(sheets.heightsAt).map(([name, at]) => [name, projected(frame, at)]),
    );
    return { ...points, ...wheels } as Readonly<Record<string, { readonly x: number; readonly y: number }>>;
  }, [drawing, frame, sheets]);
  return (
    <main className="drawing patch" aria-label="Drawing">
      <header className="drawing-head">
        <h1>
          {FLOOR_WORDS[stop].title}
          <span className="more">{read === undefined ? '' : `, ${read.name}`}</span>
        </h1>
      </header>
      <div className="paper" ref={paper}>
        {size.width > 0 && (
          <>
            <svg className="flat-paper" width={size.width} height={size.height} aria-hidden="true">
              <FlatDrawing drawing={drawing} frame={frame} />
              {stop === 'heights' &&
                sheets.heights.map((name) => (
                  <circle key={name} className="gauge-point" cx={spots[name]!.x} cy={spots[name]!.y} r={5} />
                ))}
            </svg>
            {labels.map(({ of, lines }) => {
              const spot = spots[of];
              if (spot === undefined) return null;
              const left = isLeft(of, sheets);
              return (
                <div
                  key={of}
                  className="patch-label"
                  data-side={wide ? (left ? 'below' : 'above') : left ? 'left' : 'right'}
                  data-asked={asked?.endsWith(`.${of}`) === true}
                  style={{ left: spot.x, top: spot.y }}
                >
                  {lines.map((line, k) => (
                    <p
                      key={line.text}
                      className={k === 0 && stop !== 'changes' ? 'patch-large' : 'patch-small'}
                      data-off={line.off}
                    >
                      {line.text}
                    </p>
                  ))}
                </div>
              );
            })}
            <Middle stop={stop} read={read} sheets={sheets} speech={speech} />
          </>
        )}
      </div>
    </main>
  );
}

const outboard = ([x, y, z]: Vec3, width: number): Vec3 => [x, y + Math.sign(y) * (width / 2 + 0.03), z];

const isLeft = (of: string, { heightsAt }: FloorSheets): boolean =>
  of in heightsAt ? heightsAt[of]![1] > 0 : of.endsWith('Left');

interface Label {
  readonly of: string;
  readonly lines: readonly { readonly text: string; readonly off?: boolean }[];
}

interface LabelsAsked {
  readonly stop: FloorStop;
  readonly sheets: FloorSheets;
  readonly read: FloorSheetRead | undefined;
  readonly moves: readonly MoveAtWheel[] | undefined;
  readonly speech: Speech;
}

function labelsOf({ stop, sheets, read, moves, speech }: LabelsAsked): readonly Label[] {
  if (stop === 'changes') {
    return WHEEL_KEYS.map((wheel) => ({
      of: wheel,
      lines: (moves ?? []).filter(({ at }) => at === wheel).map(({ text }) => ({ text })),
    })).filter(({ lines }) => lines.length > 0);
  }
  const places = stop === 'heights' ? sheets.heights : WHEEL_KEYS;
  return places.map((of) => ({
    of,
    lines: KINDS_AT[stop].flatMap((kind) => {
      const id = `${kind}.${of}`;
      const value = read?.readings.find((each) => each.id === id)?.value;
      const wanted = sheets.wanted.find((each) => each.id === id);
      if (value === undefined && wanted === undefined && kind !== KINDS_AT[stop][0]) return [];
      const off =
        value !== undefined && wanted !== undefined && Math.abs(value - wanted.value) > wanted.tolerance;
      const name = KINDS_AT[stop].length > 1 ? `${TYPED[kind]!.name} ` : '';
      const now = `${name}${value === undefined ? 'not read' : said(kind, value, speech)}`;
      // the sign says it beside the colour
      const mark = off ? (value > wanted.value ? ' ▲' : ' ▼') : '';
      return [
        { text: `${now}${mark}`, off },
        ...(wanted === undefined ? [] : [{ text: `sheet ${said(kind, wanted.value, speech)}` }]),
      ];
    }),
  }));
}

/** What belongs to no wheel: the cross weight and shares, the rake. */
function Middle({
  stop,
  read,
  sheets,
  speech,
}: {
  readonly stop: FloorStop;
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
