/** How pipes are looked at: which way, how near, and how the view follows the hands. */
import { useMemo, useState } from 'react';
import { add, scale, type Vec3 } from '../../maths/vec3.ts';
import type { Drawing } from '../../questions/drawing-types.ts';
import { useHands } from '../scene/hands.ts';
import { type Frame, framed, lookOf } from '../scene/look.ts';
import { useSize } from '../sheet/use-size.ts';
import { usePage } from '../state.tsx';
import type { PipeGroup } from './shown.ts';

/** No wheel stands here for a hand to take: it only turns the view. */
const NO_WHEELS: Drawing = { corners: [], antiRollBars: [], sections: [], ground: 0 };
const nothing = (): void => undefined;

export interface Paper {
  readonly paper: ReturnType<typeof useSize>[0];
  readonly size: ReturnType<typeof useSize>[1];
  readonly frame: Frame;
  /** Hands on the view. */
  readonly pointers: ReturnType<typeof useHands>;
  readonly zoom: number;
  /** Nearer by a factor; all of it again where none is given. */
  readonly nearer: (factor?: number) => void;
}

/**
 * @param fit    what the paper holds; a hand that pulls at what is drawn does not move the paper
 * @param bends  held as well
 */
export function usePaper(fit: readonly PipeGroup[], bends?: readonly Vec3[]): Paper {
  const { place, go } = usePage();
  const [paper, size] = useSize();
  const [zoom, setZoom] = useState(1);
  const { azimuth, elevation } = place.turn;
  const round = place.view === 'free' || place.view === 'car';
  const frame = useMemo(() => {
    // seen from the bank's own side: what is to the left for the one is to the right for the other
    const turn = { azimuth: place.bank === 'left' ? azimuth : -azimuth, elevation };
    const look = lookOf(place.view, turn, place.bank, size.width > size.height);
    const area = {
      left: 40,
      top: 30,
      width: Math.max(80, size.width - 80),
      height: Math.max(60, size.height - 70),
    };
    return framed(look, pointsOf(fit, bends, round), area, zoom);
  }, [place.view, place.bank, azimuth, elevation, round, size, fit, bends, zoom]);
  const nearer = (factor?: number): void =>
    setZoom((before) => (factor === undefined ? 1 : Math.min(8, Math.max(0.6, before * factor))));
  const pointers = useHands({
    drawing: NO_WHEELS,
    frame,
    turn: { azimuth, elevation },
    onTake: nothing,
    onLift: nothing,
    onSteer: nothing,
    onTurn: (turn) => go({ turn, view: 'free' }),
    onZoom: nearer,
  });
  return { paper, size, frame, pointers, zoom, nearer };
}

/** Room round the pipes, metres. */
const ROOM = 0.09;

/** What must be on the paper: ports, pipes and collectors, with some room; a ball of it in views that turn. */
function pointsOf(
  groups: readonly PipeGroup[],
  bends: readonly Vec3[] | undefined,
  round: boolean,
): readonly Vec3[] {
  const points = [
    ...groups.flatMap(({ ports, collector, set }) => [
      ...ports.flatMap(({ at, way }) => [at, add(at, scale(way, 0.15))]),
      ...(set?.pipes.flatMap(({ line }) => line) ?? []),
      ...(set === undefined
        ? []
        : [set.collector.mouth, add(set.collector.mouth, scale(set.collector.axis, collector.length))]),
    ]),
    ...(bends ?? []),
  ];
  if (points.length === 0) return [];
  const bound = (of: (...values: number[]) => number): Vec3 => {
    const at = (k: 0 | 1 | 2): number => points.reduce((held, point) => of(held, point[k]), points[0]![k]);
    return [at(0), at(1), at(2)];
  };
  const [low, high] = [bound(Math.min), bound(Math.max)];
  const around = ([x, y, z]: Vec3, by: number): Vec3 => [x + by, y + by, z + by];
  if (!round) return [around(low, -ROOM), around(high, ROOM)];
  const middle = scale(add(low, high), 0.5);
  const radius = 0.36 * Math.hypot(high[0] - low[0], high[1] - low[1], high[2] - low[2]) + ROOM;
  return [0, 1, 2].flatMap((axis): Vec3[] =>
    [radius, -radius].map(
      (by) => middle.map((value, k) => (k === axis ? value + by : value)) as unknown as Vec3,
    ),
  );
}
