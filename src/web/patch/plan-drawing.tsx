/** The car in plan, nose to the left or on a phone up, with lines of words standing at its wheels or at other places. */
import { type ReactNode, useMemo } from 'react';
import type { Vec3 } from '../../maths/vec3.ts';
import { AS_SURVEYED } from '../../questions/figure.ts';
import { drawCar } from '../../questions/index.ts';
import { extent } from '../scene/bodies.ts';
import { FlatDrawing } from '../scene/flat-drawing.tsx';
import { FIRST_TURN, framed, lookOf, projected, type Spot } from '../scene/look.ts';
import { useCar } from '../sheet/car-file.tsx';
import { useSize } from '../sheet/use-size.ts';

export interface PlanLabel {
  /** A wheel, or a place by its name. */
  readonly of: string;
  readonly lines: readonly PlanLine[];
}

interface PlanLine {
  readonly text: string;
  readonly off?: boolean;
  /** Set where another than the first is the large one. */
  readonly large?: boolean;
  /** Left out on the other paper: tall has the nose up and little room beside the wheels. */
  readonly only?: 'tall' | 'wide';
}

interface Props {
  readonly title: string;
  /** Softer, behind the title. */
  readonly more: string;
  readonly labels: readonly PlanLabel[];
  /** Whether the first line of each label is the large one. */
  readonly chief: boolean;
  /** Room outboard of the wheels for the labels, px. */
  readonly room: number;
  /** Places beside the wheels at which a label may stand. */
  readonly gauges?: Readonly<Record<string, Vec3>>;
  /** Those of them that are marked. */
  readonly dots?: readonly string[];
  /** Name of the reading that is asked for now. */
  readonly asked?: string | undefined;
  /** Whether long lines are broken where there is little room. */
  readonly broken?: boolean;
  /** What is drawn over the car, put on the paper by the same look. */
  readonly over?: (at: (point: Vec3) => Spot, wide: boolean) => ReactNode;
  /** What stands in the middle of the car. */
  readonly children?: ReactNode;
}

/** Height of a line of a label, px. */
const LINE = 22;

const NO_PLACES: Readonly<Record<string, Vec3>> = {};

export function PlanDrawing({
  title,
  more,
  labels,
  chief,
  room,
  gauges = NO_PLACES,
  dots = [],
  asked,
  broken = false,
  over,
  children,
}: Props) {
  const { car } = useCar();
  const [paper, size] = useSize();
  const drawing = useMemo(() => drawCar(car, AS_SURVEYED), [car]);
  // on a phone nose up: the wheels have room beside them for their figures
  const wide = size.width > 1.25 * size.height && size.width > 620;
  const deep = Math.max(
    96,
    28 + LINE * Math.max(0, ...labels.map(({ lines }) => lines.filter(({ only }) => only !== 'tall').length)),
  );
  const frame = useMemo(() => {
    const look = lookOf('plan', FIRST_TURN, 'left', wide);
    // room for what stands outboard of the wheels
    const side = wide ? { left: 30, top: deep } : { left: Math.min(room, size.width * 0.33), top: 16 };
    const area = {
      ...side,
      width: Math.max(60, size.width - 2 * side.left),
      height: Math.max(60, size.height - 2 * side.top),
    };
    return framed(look, extent(drawing), area);
  }, [drawing, wide, size, room, deep]);
  const spots = useMemo(() => {
    const wheels = Object.fromEntries(
      drawing.corners.map(({ wheel, tyre }) => [
        `${wheel.end}${wheel.side === 'left' ? 'Left' : 'Right'}`,
        projected(frame, outboard(tyre.centre, tyre.tyreWidth)),
      ]),
    );
    const points = Object.fromEntries(
      Object.entries(gauges).map(([name, at]) => [name, projected(frame, at)]),
    );
    return { ...points, ...wheels } as Readonly<Record<string, { readonly x: number; readonly y: number }>>;
  }, [drawing, frame, gauges]);
  return (
    <main className="drawing patch" aria-label="Drawing">
      <header className="drawing-head">
        <h1>
          {title}
          <span className="more">{more}</span>
        </h1>
      </header>
      <div className="paper" ref={paper}>
        {size.width > 0 && (
          <>
            <svg className="flat-paper" width={size.width} height={size.height} aria-hidden="true">
              <FlatDrawing drawing={drawing} frame={frame} />
              {dots.map((name) => (
                <circle key={name} className="gauge-point" cx={spots[name]!.x} cy={spots[name]!.y} r={5} />
              ))}
              {over?.((point) => projected(frame, point), wide)}
            </svg>
            {labels.map(({ of, lines }) => {
              const spot = spots[of];
              if (spot === undefined) return null;
              const left = of in gauges ? gauges[of]![1] > 0 : of.endsWith('Left');
              return (
                <div
                  key={of}
                  className="patch-label"
                  data-side={wide ? (left ? 'below' : 'above') : left ? 'left' : 'right'}
                  data-broken={broken}
                  data-asked={asked?.endsWith(`.${of}`) === true}
                  style={{ left: spot.x, top: spot.y }}
                >
                  {lines
                    .filter(({ only }) => only === undefined || (only === 'wide') === wide)
                    .map((line, k) => (
                      <p
                        key={line.text}
                        className={(line.large ?? (k === 0 && chief)) ? 'patch-large' : 'patch-small'}
                        data-off={line.off}
                      >
                        {line.text}
                      </p>
                    ))}
                </div>
              );
            })}
            {children}
          </>
        )}
      </div>
    </main>
  );
}

const outboard = ([x, y, z]: Vec3, width: number): Vec3 => [x, y + Math.sign(y) * (width / 2 + 0.03), z];
