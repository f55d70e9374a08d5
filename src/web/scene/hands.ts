/**
 * What a hand does on the drawing: takes a wheel and moves it, turns the view on empty paper, zooms.
 *
 * A wheel that is taken moves with the pointer, pixel for millimetre at the drawing's scale. Where the view looks
 * down on the car there is no up and down: a front wheel is then steered instead.
 */
import { useRef } from 'react';
import type { Drawing } from '../../questions/drawing-types.ts';
import type { End, Wheel } from '../../questions/figure.ts';
import { tyrePoints } from './bodies.ts';
import { type Frame, inside, outline, projected, type Spot, type Turn } from './look.ts';

export interface Hands {
  readonly drawing: Drawing;
  readonly frame: Frame;
  readonly only?: End | undefined;
  readonly turn: Turn;
  readonly onTake: (wheel: Wheel) => void;
  readonly onLift: (wheel: Wheel, by: number) => void;
  readonly onSteer: (by: number) => void;
  readonly onTurn: (turn: Turn) => void;
  readonly onZoom: (factor: number) => void;
}

type Hold =
  | { readonly kind: 'lift' | 'steer'; readonly wheel: Wheel }
  | { readonly kind: 'turn' }
  | { readonly kind: 'pinch'; readonly apart: number };

/** The wheel under the spot, the one nearest to the eye. */
export function wheelAt(
  spot: Spot,
  { drawing, frame, only }: Pick<Hands, 'drawing' | 'frame' | 'only'>,
): Wheel | undefined {
  const depth = (centre: readonly number[]): number =>
    centre.reduce((sum, each, k) => sum + each * frame.toward[k]!, 0);
  return drawing.corners
    .filter((corner) => only === undefined || corner.wheel.end === only)
    .filter((corner) =>
      inside(outline(tyrePoints(corner.tyre, 16).map((point) => projected(frame, point))), spot),
    )
    .sort((a, b) => depth(b.tyre.centre) - depth(a.tyre.centre))[0]?.wheel;
}

const spotOf = (event: React.PointerEvent<HTMLElement>): Spot => {
  const box = event.currentTarget.getBoundingClientRect();
  return { x: event.clientX - box.left, y: event.clientY - box.top };
};

/** A view in which a metre of travel is less than this many of its pixels is a view from above. */
const FLAT = 0.35;
const RAD_PER_PIXEL = 0.006;

export function useHands(hands: Hands) {
  const hold = useRef<Hold>(undefined);
  const pointers = useRef(new Map<number, Spot>());

  const down = (event: React.PointerEvent<HTMLElement>): void => {
    if (event.button !== 0 && event.pointerType === 'mouse') return;
    event.currentTarget.setPointerCapture(event.pointerId);
    const spot = spotOf(event);
    pointers.current.set(event.pointerId, spot);
    if (pointers.current.size === 2) {
      hold.current = { kind: 'pinch', apart: apart(pointers.current) };
      return;
    }
    const wheel = wheelAt(spot, hands);
    if (wheel === undefined) hold.current = { kind: 'turn' };
    else {
      hands.onTake(wheel);
      const level = Math.abs(hands.frame.up[2]) < FLAT;
      hold.current = { kind: level && wheel.end === 'front' ? 'steer' : 'lift', wheel };
    }
  };

  const move = (event: React.PointerEvent<HTMLElement>): void => {
    const before = pointers.current.get(event.pointerId);
    const held = hold.current;
    if (before === undefined || held === undefined) return;
    const spot = spotOf(event);
    pointers.current.set(event.pointerId, spot);
    const [dx, dy] = [spot.x - before.x, spot.y - before.y];
    const { frame } = hands;
    if (held.kind === 'pinch') {
      const now = apart(pointers.current);
      if (held.apart > 0 && now > 0) hands.onZoom(now / held.apart);
      hold.current = { kind: 'pinch', apart: now };
    } else if (held.kind === 'turn') {
      const azimuth = hands.turn.azimuth - dx * RAD_PER_PIXEL;
      const elevation = Math.min(1.5, Math.max(-0.3, hands.turn.elevation + dy * RAD_PER_PIXEL));
      hands.onTurn({ azimuth: Math.atan2(Math.sin(azimuth), Math.cos(azimuth)), elevation });
    } else if (held.kind === 'lift') {
      const up = frame.up[2];
      if (Math.abs(up) >= FLAT) hands.onLift(held.wheel, -dy / frame.scale / up);
    } else {
      // the rack goes the way that the hand does on the paper
      hands.onSteer((dx * frame.right[1] - dy * frame.up[1]) / frame.scale / 4);
    }
  };

  const up = (event: React.PointerEvent<HTMLElement>): void => {
    pointers.current.delete(event.pointerId);
    hold.current = undefined;
  };

  return { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: up };
}

function apart(pointers: ReadonlyMap<number, Spot>): number {
  const [a, b] = [...pointers.values()];
  return a === undefined || b === undefined ? 0 : Math.hypot(a.x - b.x, a.y - b.y);
}
