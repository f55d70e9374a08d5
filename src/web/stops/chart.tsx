/** One small chart: lines over one axis, with marks where something happens. Drawn by uPlot, fetched when needed. */
import { useEffect, useRef } from 'react';
import type uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { plain } from '../../units/show.ts';
import { useColours } from '../scene/colours.ts';

export interface ChartLine {
  readonly name: string;
  readonly values: readonly (number | null)[];
  readonly dashed?: boolean;
  /** In ink rather than in the accent. */
  readonly plain?: boolean;
}

interface Props {
  /** What a listener is told in place of the picture. */
  readonly told: string;
  readonly across: readonly number[];
  readonly acrossName: string;
  readonly lines: readonly ChartLine[];
  readonly marks?: readonly { readonly at: number; readonly words: string }[];
  /** Where the wheel stands now. */
  readonly now?: number | undefined;
  readonly height?: number;
  /** The names of the lines, which are short, stand at their ends. */
  readonly ends?: boolean;
}

const FONT = '17px "Atkinson Hyperlegible Mono", monospace';

/** Where each named line ends, the highest first. */
const endsOf = (across: readonly number[], lines: readonly ChartLine[]) =>
  lines
    .flatMap(({ name, values }) => {
      const k = values.findLastIndex((value) => value !== null);
      return name === '' || k < 0 ? [] : [{ name, x: across[k]!, y: values[k]! }];
    })
    .sort((a, b) => b.y - a.y);

/** Room for the figures of the upright axis, px: as wide as the longest of them asks for. */
const roomFor = (_: uPlot, figures: readonly string[] | null): number =>
  Math.max(74, 20 + 10.4 * Math.max(0, ...(figures ?? []).map(({ length }) => length)));

/** No more digits than the axis needs, a true minus, thin spaces. */
const axisNumber = (value: number): string => {
  const digits = Number(value.toPrecision(6)).toString().split('.')[1]?.length ?? 0;
  return plain(value, Math.min(digits, 5));
};

export function Chart({
  told,
  across,
  acrossName,
  lines,
  marks = [],
  now,
  height = 190,
  ends = false,
}: Props) {
  const holder = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot>(undefined);
  const standing = useRef(now);
  const { ink, hair, accent, paper } = useColours();
  standing.current = now;

  const shape = JSON.stringify([across, lines, marks, ink, hair, accent, height, acrossName, ends]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the shape stands for all that the chart is made of
  useEffect(() => {
    let current = true;
    let watching: ResizeObserver | undefined;
    void import('uplot').then(({ default: UPlot }) => {
      const element = holder.current;
      if (!current || element === null) return;
      const strokes = (self: uPlot): void => {
        const { ctx } = self;
        const { top, height: tall } = self.bbox;
        ctx.save();
        ctx.lineWidth = devicePixelRatio;
        const stroke = (at: number, colour: string, dash: number[]): void => {
          const x = self.valToPos(at, 'x', true);
          ctx.strokeStyle = colour;
          ctx.setLineDash(dash.map((each) => each * devicePixelRatio));
          ctx.beginPath();
          ctx.moveTo(x, top);
          ctx.lineTo(x, top + tall);
          ctx.stroke();
        };
        for (const mark of marks) stroke(mark.at, hair, [3, 3]);
        if (standing.current !== undefined) stroke(standing.current, ink, []);
        ctx.restore();
      };
      const names = (self: uPlot): void => {
        const { ctx } = self;
        ctx.save();
        ctx.font = FONT.replace('17px', `${17 * devicePixelRatio}px`);
        ctx.fillStyle = ink;
        ctx.textAlign = 'left';
        ctx.textBaseline = 'middle';
        let last = Number.POSITIVE_INFINITY;
        for (const { name, x, y } of endsOf(across, lines)) {
          // from the top down, none on another
          const at = self.valToPos(y, 'y', true);
          last = Number.isFinite(last) ? Math.max(at, last + 19 * devicePixelRatio) : at;
          ctx.fillText(name, self.valToPos(x, 'x', true) + 6 * devicePixelRatio, last);
        }
        ctx.restore();
      };
      const values = (_: uPlot, splits: number[]): string[] => splits.map(axisNumber);
      const axis = {
        values,
        stroke: ink,
        font: FONT,
        grid: { stroke: hair, width: 0.5 },
        ticks: { stroke: hair, width: 1 },
      };
      plot.current = new UPlot(
        {
          width: element.clientWidth,
          height,
          legend: { show: false },
          cursor: { show: false },
          scales: { x: { time: false } },
          axes: [
            { ...axis, size: 32, space: 60 },
            { ...axis, size: roomFor, space: 34 },
          ],
          series: [
            { label: acrossName },
            ...lines.map(({ name, dashed, plain }) => ({
              label: name,
              stroke: plain ? ink : accent,
              width: 2,
              ...(dashed ? { dash: [7, 5] } : {}),
              points: { show: false },
            })),
          ],
          hooks: { draw: ends ? [strokes, names] : [strokes] },
          ...(ends ? { padding: [12, 30, 0, 0] as [number, number, number, number] } : {}),
        },
        [across as number[], ...lines.map((line) => line.values as (number | null)[])],
        element,
      );
      watching = new ResizeObserver(() => plot.current?.setSize({ width: element.clientWidth, height }));
      watching.observe(element);
    });
    return () => {
      current = false;
      watching?.disconnect();
      plot.current?.destroy();
      plot.current = undefined;
    };
  }, [shape, paper]);

  // biome-ignore lint/correctness/useExhaustiveDependencies: where the wheel stands is drawn over the same lines
  useEffect(() => plot.current?.redraw(false), [now]);

  return <div ref={holder} className="chart" role="img" aria-label={told} style={{ minHeight: height }} />;
}
