/** What stands on the drawing of the primaries: numbers at the ports, the tightest place, pulses in firing order. */
import { useEffect, useState } from 'react';
import { distance, type Vec3 } from '../../maths/vec3.ts';
import type { PrimaryOfSet } from '../../questions/index.ts';
import { type Frame, projected, type Spot } from '../scene/look.ts';
import { isLit, type Lit, type PipeGroup } from './shown.ts';

export interface MarksShown {
  readonly groups: readonly PipeGroup[];
  readonly lit: Lit | undefined;
  readonly frame: Frame;
  readonly pulses: boolean;
  /** Lines along which pulses run, in the order in which they set out. */
  readonly runs: readonly (readonly Vec3[])[];
  /** Of what a hand moves, in the place of the set's. */
  readonly moved?: PrimaryOfSet['tightest'];
}

export function Marks({ groups, lit, frame, pulses, runs, moved }: MarksShown) {
  const tight = moved ?? tightestOf(groups, lit);
  const balloons = groups.flatMap(({ name, ports, label }) =>
    ports.map(({ cylinder, at }) => ({
      key: `${name} ${cylinder}`,
      isLit: lit?.group === name && lit.cylinder === cylinder,
      words: label(cylinder),
      spot: projected(frame, at),
    })),
  );
  return (
    <svg className="over" aria-hidden="true">
      {balloons.map(({ key, isLit: is, words, spot: { x, y } }) => (
        <g key={key} className="balloon" data-lit={is}>
          <circle cx={x} cy={y} r={BALLOON} />
          <text x={x} y={y + 6} textAnchor="middle">
            {words}
          </text>
        </g>
      ))}
      {tight !== undefined && <Tight {...tight} frame={frame} clearOf={balloons.map(({ spot }) => spot)} />}
      {pulses && <Pulses runs={runs} frame={frame} />}
    </svg>
  );
}

/** Radius of a balloon, px. */
const BALLOON = 13;

/** What the check lets a gap lack, metres. */
const CHECKED = 1e-5;

/** The least spare of the pipe that is looked at, or of all. */
function tightestOf(groups: readonly PipeGroup[], lit: Lit | undefined): PrimaryOfSet['tightest'] {
  return groups
    .filter(({ name }) => isLit(lit, name))
    .flatMap(({ set }) => set?.pipes ?? [])
    .filter(({ cylinder }) => lit?.cylinder === undefined || cylinder === lit.cylinder)
    .flatMap(({ tightest }) => (tightest === undefined ? [] : [tightest]))
    .sort((a, b) => a.spare - b.spare)[0];
}

interface TightProps extends NonNullable<PrimaryOfSet['tightest']> {
  readonly frame: Frame;
  /** Middles of the balloons. */
  readonly clearOf: readonly Spot[];
}

function Tight({ at, gap, spare, frame, clearOf }: TightProps) {
  const { x, y } = projected(frame, at);
  const breached = spare < -CHECKED;
  const words = breached ? `${(-1000 * spare).toFixed(1)} mm too near` : `${(1000 * gap).toFixed(1)} mm`;
  const [way, up] = cornerFor({ x, y }, LETTER * words.length, frame, clearOf);
  return (
    <g className="tight" data-breached={breached}>
      <circle cx={x} cy={y} r={9} />
      {breached && <path d={`M${x - 6} ${y - 6}l12 12m0 -12l-12 12`} />}
      <line x1={x + 7 * way} y1={y + 7 * up} x2={x + 34 * way} y2={y + 34 * up} />
      <text x={x + 38 * way} y={y + 36 * up + (up > 0 ? 14 : 0)} textAnchor={way < 0 ? 'end' : 'start'}>
        {words}
      </text>
    </g>
  );
}

/** Wide and high as a letter of the figure is, px. */
const LETTER = 11.6;
const HIGH = 19;

/** To the right and left, up and down: as it is written where nothing lies in the way. */
const CORNERS = [
  [1, -1],
  [-1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** The first corner in which the figure is on the paper and on no balloon; where there is none, the first on the paper. */
function cornerFor(
  { x, y }: Spot,
  wide: number,
  frame: Frame,
  clearOf: readonly Spot[],
): (typeof CORNERS)[number] {
  const onPaper = CORNERS.filter(([way]) => {
    const end = x + way * (38 + wide);
    // the middle of the paper is the frame's
    return end > 0 && end < 2 * frame.x;
  });
  const isClear = ([way, up]: (typeof CORNERS)[number]): boolean => {
    const [middle, height] = [x + way * (38 + wide / 2), y + 36 * up + (up > 0 ? 14 : 0) - HIGH / 3];
    return clearOf.every(
      (spot) =>
        Math.abs(spot.x - middle) > wide / 2 + BALLOON || Math.abs(spot.y - height) > HIGH / 2 + BALLOON,
    );
  };
  return onPaper.find(isClear) ?? onPaper[0] ?? CORNERS[0];
}

/** One firing after another takes this long on the page, ms: slow enough for the eye to follow. */
const APART = 420;
/** From one end of its run to the other, ms. */
const RUN = 1100;

function Pulses({ runs, frame }: Pick<MarksShown, 'runs' | 'frame'>) {
  const [now, setNow] = useState(0);
  useEffect(() => {
    let waiting = 0;
    const turn = (time: number): void => {
      setNow(time);
      waiting = requestAnimationFrame(turn);
    };
    waiting = requestAnimationFrame(turn);
    return () => cancelAnimationFrame(waiting);
  }, []);
  const cycle = APART * runs.length;
  return (
    <>
      {runs.flatMap((line, k) => {
        const since = (((now - k * APART) % cycle) + cycle) % cycle;
        if (since > RUN) return [];
        const { x, y } = projected(frame, along(line, since / RUN));
        // the same pulse all along its run, and no two runs are alike
        return [<circle key={line[0]!.join()} className="pulse" cx={x} cy={y} r={8} />];
      })}
    </>
  );
}

function along(line: readonly Vec3[], share: number): Vec3 {
  const steps = line.slice(1).map((point, k) => distance(point, line[k]!));
  let left = share * steps.reduce((sum, step) => sum + step, 0);
  for (const [k, step] of steps.entries()) {
    if (left <= step) {
      const [a, b] = [line[k]!, line[k + 1]!];
      const t = step === 0 ? 0 : left / step;
      return [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1]), a[2] + t * (b[2] - a[2])];
    }
    left -= step;
  }
  return line.at(-1)!;
}
