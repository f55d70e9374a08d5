/** What stands on the drawing of the primaries: numbers at the ports, the tightest place, pulses in firing order. */
import { useEffect, useState } from 'react';
import { distance, type Vec3 } from '../../maths/vec3.ts';
import type { PrimariesScene, PrimariesSet, PrimaryOfSet } from '../../questions/index.ts';
import { type Frame, projected } from '../scene/look.ts';

interface Props {
  readonly scene: PrimariesScene;
  readonly set: PrimariesSet | undefined;
  readonly lit: number | undefined;
  readonly frame: Frame;
  readonly pulses: boolean;
  /** Of what a hand moves, in the place of the set's. */
  readonly moved?: PrimaryOfSet['tightest'];
}

export function Marks({ scene, set, lit, frame, pulses, moved }: Props) {
  const tight = moved ?? tightestOf(set, lit);
  return (
    <svg className="over" aria-hidden="true">
      {scene.ports.map(({ cylinder, at }) => {
        const { x, y } = projected(frame, at);
        return (
          <g key={cylinder} className="balloon" data-lit={lit === cylinder}>
            <circle cx={x} cy={y} r={13} />
            <text x={x} y={y + 6} textAnchor="middle">
              {cylinder}
            </text>
          </g>
        );
      })}
      {tight !== undefined && <Tight {...tight} frame={frame} />}
      {pulses && set !== undefined && <Pulses set={set} frame={frame} />}
    </svg>
  );
}

/** As wide as the words of a breach are, with their line, px. */
const TOLD = 225;

/** What the check lets a gap lack, metres. */
const CHECKED = 1e-5;

/** The least spare of the pipe that is looked at, or of all. */
export function tightestOf(set: PrimariesSet | undefined, lit: number | undefined): PrimaryOfSet['tightest'] {
  const among = (set?.pipes ?? []).filter(({ cylinder }) => lit === undefined || cylinder === lit);
  return among
    .flatMap(({ tightest }) => (tightest === undefined ? [] : [tightest]))
    .sort((a, b) => a.spare - b.spare)[0];
}

function Tight({ at, gap, spare, frame }: NonNullable<PrimaryOfSet['tightest']> & { readonly frame: Frame }) {
  const { x, y } = projected(frame, at);
  const breached = spare < -CHECKED;
  // the middle of the paper is the frame's: what would run out of it to the right is written to the left
  const way = breached && x + TOLD > 2 * frame.x ? -1 : 1;
  return (
    <g className="tight" data-breached={breached}>
      <circle cx={x} cy={y} r={9} />
      {breached && <path d={`M${x - 6} ${y - 6}l12 12m0 -12l-12 12`} />}
      <line x1={x + 7 * way} y1={y - 7} x2={x + 34 * way} y2={y - 34} />
      <text x={x + 38 * way} y={y - 36} textAnchor={way < 0 ? 'end' : 'start'}>
        {breached ? `${(-1000 * spare).toFixed(1)} mm too near` : `${(1000 * gap).toFixed(1)} mm`}
      </text>
    </g>
  );
}

/** One firing after another takes this long on the page, ms: slow enough for the eye to follow. */
const APART = 420;
/** From port to collector, ms. */
const RUN = 1100;

function Pulses({ set, frame }: { readonly set: PrimariesSet; readonly frame: Frame }) {
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
  const cycle = APART * set.order.length;
  return (
    <>
      {set.order.flatMap(({ cylinder }, k) => {
        const since = (((now - k * APART) % cycle) + cycle) % cycle;
        const pipe = set.pipes.find((each) => each.cylinder === cylinder);
        if (since > RUN || pipe === undefined) return [];
        const { x, y } = projected(frame, along(pipe.line, since / RUN));
        return [<circle key={cylinder} className="pulse" cx={x} cy={y} r={8} />];
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
